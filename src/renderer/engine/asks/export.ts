import { writeBuildJson } from '../../../shared/build/build-json.ts';
import { writeCsv } from '../../../shared/build/csv.ts';
import type { Ask } from '../view.ts';

/** The whole build as text, to be put into a file. */
export const exportAsk: Ask<{ readonly kind: 'csv' | 'json' }, { readonly name: string; readonly text: string }> = (
  scene,
  { kind },
) => {
  const { build } = scene.works;
  return {
    name: scene.index.settings().name,
    text: kind === 'csv' ? writeCsv(build) : writeBuildJson({ records: [...build.values()], issues: [] }),
  };
};
