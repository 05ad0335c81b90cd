import './machining.css';
import { MachiningIcon } from '../../kit/icons.tsx';
import { defineDepartment } from '../department.ts';
import { MachineShop } from './machine-shop.tsx';

export default defineDepartment({
  id: 'machining',
  title: 'Machine Shop',
  order: 4,
  Icon: MachiningIcon,
  View: MachineShop,
});
