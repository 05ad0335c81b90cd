import type { ComponentType } from 'react';

/** A room of the works as the window shows it. */
export interface DepartmentView {
  /** Same as its folder's name. */
  readonly id: string;
  readonly title: string;
  /** Place down the side. */
  readonly order: number;
  readonly Icon: ComponentType;
  /** Fills all of the window right of the departments. Shown only while a build is open. */
  readonly View: ComponentType;
  /** Brings what the room needs, if it comes by itself: called when the window has nothing else to do. */
  readonly prepare?: () => void;
}

export const defineDepartment = (department: DepartmentView): DepartmentView => department;
