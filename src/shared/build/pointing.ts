import type { Draft } from './draft.ts';
import { acceptancesOf } from './look-up.ts';
import type { Build } from './records.ts';

/** The ids that a finding's key points at: the text after its `@`, parted by commas. */
const idsInKey = (key: string): readonly string[] => {
  const at = key.indexOf('@');
  return at < 0 ? [] : key.slice(at + 1).split(',');
};

/** Takes away acceptances of findings that point at something that goes. */
export function removeAcceptancesOf(build: Build, draft: Draft, gone: ReadonlySet<string>): void {
  for (const acceptance of acceptancesOf(build)) {
    if (idsInKey(acceptance.finding).some((id) => gone.has(id))) draft.remove(acceptance.id);
  }
}
