import type { DepartmentView } from '../departments/department.ts';

const found = import.meta.glob<DepartmentView>('../departments/*/department.tsx', { eager: true, import: 'default' });

/** Every department there is, in order. A new one is a new folder. */
export const departments: readonly DepartmentView[] = Object.values(found).sort((a, b) => a.order - b.order);
