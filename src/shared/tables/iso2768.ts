import type { TableTolerance } from './row.ts';

export type GeneralClass = 'f' | 'm' | 'c' | 'v';

/** `linear`: distances and diameters; `edge`: external radii and chamfer heights; `angle`: by its shorter leg. */
export type GeneralForm = 'linear' | 'edge' | 'angle';

/**
 * General tolerance of ISO 2768-1:1989.
 * @param sizeMm nominal size in mm; for `angle` the length of the shorter leg in mm.
 * @returns ± in mm (degrees for `angle`); undefined where the table has no cell and limits must be written.
 */
export function generalTolerance(klass: GeneralClass, form: GeneralForm, sizeMm: number): TableTolerance | undefined {
  void klass;
  void form;
  void sizeMm;
  return undefined;
}
