import './drawing.css';
import { DrawingIcon } from '../../kit/icons.tsx';
import { defineDepartment } from '../department.ts';
import { DrawingOffice } from './drawing-office.tsx';

export default defineDepartment({
  id: 'drawing',
  title: 'Drawing Office',
  order: 1,
  Icon: DrawingIcon,
  View: DrawingOffice,
});
