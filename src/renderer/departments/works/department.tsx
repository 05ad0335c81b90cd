import './map/map.css';
import './map/sheet.css';
import './list/list.css';
import './works.css';
import { lazy } from 'react';
import { WorksIcon } from '../../kit/icons.tsx';
import { defineDepartment } from '../department.ts';

// The map and what draws it are a third of the window's program: they come when the window has come to rest.
const load = async () => ({ default: (await import('./works-room.tsx')).WorksRoom });

export default defineDepartment({
  id: 'works',
  title: 'Works',
  order: 0,
  Icon: WorksIcon,
  View: lazy(load),
  prepare: () => void load(),
});
