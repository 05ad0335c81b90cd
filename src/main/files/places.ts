import path from 'node:path';
import { z } from 'zod';
import type { ExampleState } from '../app/launch.ts';
import { type Kept, keepJson } from './kept-json.ts';

/** Where the program keeps and finds files. */
export interface Places {
  /** Backup copies, made by the store on opening. */
  readonly backups: string;
  /** Builds made from JSON files that were named on the command line. */
  readonly opened: string;
  exampleSource(state: ExampleState): string;
  /** The user's own copy of an example. */
  exampleCopy(state: ExampleState): string;
  /** The folder in which the user last opened or saved something. */
  readonly lastFolder: Kept<string>;
}

const EXAMPLE = 'bench-filing-machine';

/**
 * @param dataFolder the program's data folder of this user
 * @param resources the folder of what comes with the program
 * @param documents where a first save dialog opens
 */
export function places(
  dataFolder: string,
  resources: string,
  documents: string,
  onTrouble: (error: unknown) => void = () => {},
): Places {
  const lastFolder = z.string().min(1).max(4_096);
  return {
    backups: path.join(dataFolder, 'backups'),
    opened: path.join(dataFolder, 'opened'),
    exampleSource: (state) => path.join(resources, 'examples', `${EXAMPLE}-${state}.json`),
    exampleCopy: (state) => path.join(dataFolder, 'examples', `${EXAMPLE}-${state}.wayw`),
    lastFolder: keepJson(path.join(dataFolder, 'last-folder.json'), lastFolder, documents, onTrouble),
  };
}
