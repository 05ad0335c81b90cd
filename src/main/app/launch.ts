import path from 'node:path';

export const exampleStates = ['as-first-drawn', 'as-corrected'] as const;
export type ExampleState = (typeof exampleStates)[number];

/** What the program is asked to open, by its command line, a double click or a second start. */
export interface OpenRequest {
  /** Absolute paths. */
  readonly files: readonly string[];
  readonly example: ExampleState | undefined;
}

export const nothingToOpen: OpenRequest = { files: [], example: undefined };

const EXAMPLE = '--example=';

/**
 * Reads the arguments meant for the program itself.
 * @param args everything after the executable; in development it also holds the runtime's own switches and the path of
 *   the program, after which ours begin
 * @param program the path of the program when the executable is a bare runtime, else undefined
 * @param folder relative names are meant from here
 */
export function readLaunch(args: readonly string[], program: string | undefined, folder: string): OpenRequest {
  const at = program === undefined ? -1 : args.findIndex((arg) => path.resolve(folder, arg) === path.resolve(program));
  const ours = args.slice(at + 1);
  const example = ours.find((arg) => arg.startsWith(EXAMPLE))?.slice(EXAMPLE.length);
  return {
    files: ours.filter((arg) => arg !== '' && !arg.startsWith('-')).map((arg) => path.resolve(folder, arg)),
    example: exampleStates.find((state) => state === example),
  };
}
