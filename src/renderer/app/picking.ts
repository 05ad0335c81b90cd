import { shell } from './shell.ts';

type Picked =
  | { readonly ok: true; readonly name: string; readonly text: string }
  | { readonly ok: false; readonly sentence: string };

/** Asks for a file and reads it. Undefined: the user thought better of it. */
export async function pickText(kind: 'csv' | 'json'): Promise<Picked | undefined> {
  const answer = await shell.invoke('files:pick-text', { kind });
  if (!answer.ok) {
    return answer.error.code === 'too-large'
      ? { ok: false, sentence: `The file is too large to be a build: ${answer.error.detail}. Choose a smaller one.` }
      : { ok: false, sentence: `The file cannot be read: ${answer.error.detail}. Choose another.` };
  }
  return answer.value === undefined ? undefined : { ok: true, ...answer.value };
}
