import path from 'node:path';
import { err, ok, type Result } from '../../shared/base/result.ts';
import type { CommitError, Request, Response } from '../../shared/ipc/contract.ts';
import { askOpen, askSave, askUser, filters } from '../app/dialogs.ts';
import type { Opening } from '../app/opening.ts';
import type { Windows } from '../app/windows.ts';
import { writeTrouble } from '../files/disk-trouble.ts';
import { freeName } from '../files/free-name.ts';
import type { Places } from '../files/places.ts';
import { readSolidApart } from '../files/solids/read-solid-apart.ts';
import { readTextFile } from '../files/text-files.ts';
import { writeAtomically } from '../files/write-atomically.ts';

const isBuildFile = (file: string): boolean => ['.wayw', '.json'].includes(path.extname(file).toLowerCase());

/** Letters that some file system gives a meaning of its own, and control characters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
const FOR_NO_FILE_NAME = /[<>:"/\\|?*\u0000-\u001f]/g;

/** A suggested name comes from what the user named a machine: it must not lead out of the folder. */
export const safeFileName = (name: string): string => {
  const safe = name
    .replace(FOR_NO_FILE_NAME, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+/, '')
    .trim();
  return safe === '' ? 'build' : safe;
};

interface Saving {
  readonly title: string;
  readonly kind: 'csv' | 'json' | 'stl' | '3mf';
  readonly suggestedName: string;
  readonly content: string | Uint8Array;
}

/** Answers the window's wishes about files that other programs write and read, and about files let fall on it. */
export function fileHandlers(windows: Windows, opening: Opening, places: Places) {
  async function save(
    sender: number,
    { title, kind, suggestedName, content }: Saving,
  ): Promise<Result<{ path: string } | undefined, CommitError>> {
    const name = safeFileName(suggestedName);
    const chosen = await askSave(windows.ofSender(sender), {
      title,
      startAt: path.join(places.lastFolder.get(), path.extname(name) === '' ? `${name}.${kind}` : name),
      filters: [filters[kind], filters.all],
    });
    if (chosen === undefined) return ok(undefined);
    // Without an ending the system asked about another name than the one that is written: never replace unasked.
    const file =
      path.extname(chosen) === '' ? freeName(path.dirname(chosen), path.basename(chosen), `.${kind}`) : chosen;
    places.lastFolder.set(path.dirname(file));
    if (path.extname(file).toLowerCase() === '.wayw') {
      const detail = 'a name that ends in .wayw belongs to a build and would be destroyed; choose another ending';
      return err({ code: 'unwritable', detail });
    }
    try {
      await writeAtomically(file, content);
      return ok({ path: file });
    } catch (error) {
      return err(writeTrouble(error));
    }
  }

  return {
    async pickText({ kind }: Request<'files:pick-text'>, sender: number): Promise<Response<'files:pick-text'>> {
      const [file] = await askOpen(windows.ofSender(sender), {
        title: kind === 'csv' ? 'Import Dimensions' : 'Import a Build',
        startAt: places.lastFolder.get(),
        filters: [filters[kind], filters.all],
      });
      if (file === undefined) return ok(undefined);
      places.lastFolder.set(path.dirname(file));
      const text = await readTextFile(file);
      return text.ok ? ok({ name: path.basename(file), text: text.value }) : err(text.error);
    },
    async saveText(
      { kind, suggestedName, text }: Request<'files:save-text'>,
      sender: number,
    ): Promise<Response<'files:save-text'>> {
      const title = kind === 'csv' ? 'Export Dimensions' : 'Export the Build';
      return save(sender, { title, kind, suggestedName, content: text });
    },
    async pickSolid(_: Request<'files:pick-solid'>, sender: number): Promise<Response<'files:pick-solid'>> {
      const [file] = await askOpen(windows.ofSender(sender), {
        title: 'Import a Solid',
        startAt: places.lastFolder.get(),
        filters: [filters.solid, filters.all],
      });
      if (file === undefined) return ok(undefined);
      places.lastFolder.set(path.dirname(file));
      const fileName = path.basename(file);
      const read = await readSolidApart(file);
      if (!read.ok) return err({ ...read.error, fileName });
      const { form, unit, mesh, volume, min, max, remarks } = read.value;
      return ok({ fileName, form, unit, volume, min, max, remarks, ...mesh });
    },
    async saveSolid(
      { kind, suggestedName, bytes }: Request<'files:save-solid'>,
      sender: number,
    ): Promise<Response<'files:save-solid'>> {
      return save(sender, { title: 'Export the Solid', kind, suggestedName, content: bytes });
    },
    async openDropped({ paths }: Request<'files:open-dropped'>, sender: number): Promise<undefined> {
      const window = windows.ofSender(sender);
      for (const file of paths.filter(isBuildFile)) await opening.open(file, window);
      const others = paths.filter((file) => !isBuildFile(file));
      if (others.length === 0) return;
      await askUser(window, 'info', {
        message: `“${path.basename(others[0] ?? '')}” cannot be opened by dropping it here.`,
        detail: 'Drop builds (.wayw) or builds in JSON form (.json). Tables of dimensions come in with File ▸ Import.',
      });
    },
  };
}
