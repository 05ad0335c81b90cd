import './map/map.css';
import './map/sheet.css';
import './list/list.css';
import './works.css';
import { WorksIcon } from '../../kit/icons.tsx';
import { defineDepartment } from '../department.ts';
import { WorksRoom } from './works-room.tsx';

export default defineDepartment({ id: 'works', title: 'Works', order: 0, Icon: WorksIcon, View: WorksRoom });
