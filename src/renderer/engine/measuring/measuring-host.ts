import type { PartId } from '../../../shared/base/ids.ts';
import type { Pieces } from '../../../shared/base/pieces.ts';
import { drawingSheet } from '../../../shared/sheet/draw-sheet.ts';
import type { Sheet } from '../../../shared/sheet/sheet.ts';
import { createSolids } from '../../../shared/solid/create-solids.ts';
import type { Kernel } from '../../../shared/solid/manifold/kernel.ts';
import type { PlacedBody } from '../../../shared/solid/placed.ts';
import { makePatch } from '../patch.ts';
import { createMeshKeeper } from '../solid/mesh-keeper.ts';
import { pictureOf } from '../solid/picture.ts';
import { transferOf } from '../transfer.ts';
import type { FromMeasuring, SentBody, ToMeasuring } from './protocol.ts';

/** Something that is worked out a piece at a time; another of the same name takes its place. */
interface Job {
  readonly name: string;
  readonly part: PartId;
  readonly pieces: Pieces<void>;
}

interface Tools {
  /** Runs something after the messages that wait. */
  readonly later: (run: () => void) => void;
  /** Fetches the kernel; without it sheets are drawn without solids. */
  readonly loadKernel: () => Promise<Kernel | undefined>;
}

const noBodies: readonly PlacedBody[] = [];

/**
 * Measures solids and draws sheets, a piece at a time: what a newer message makes needless is left where it stands. Nothing is
 * said of it then.
 */
export function createMeasuringHost(
  post: (message: FromMeasuring, transfer?: readonly ArrayBuffer[]) => void,
  { later, loadKernel }: Tools,
): (message: ToMeasuring) => void {
  const lists = new Map<PartId, readonly PlacedBody[]>();
  const numbered = new Map<PartId, ReadonlyMap<number, PlacedBody>>();
  const sheets = new Map<string, Sheet>();
  let kernel: Kernel | undefined;
  let isAsked = false;
  let isSettled = false;
  let jobs: readonly Job[] = [];
  let isPlanned = false;
  const solids = createSolids(
    { parts: () => [...lists.keys()], bodiesOf: (part) => lists.get(part) ?? noBodies },
    () => kernel,
  );
  const meshOf = createMeshKeeper(solids);

  const broken = (error: unknown) =>
    post({ type: 'broken', message: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  const plan = () => {
    if (isPlanned || jobs.length === 0 || !isSettled) return;
    isPlanned = true;
    later(() => {
      isPlanned = false;
      const [job] = jobs;
      if (job === undefined) return;
      try {
        if (job.pieces.next().done) jobs = jobs.filter((other) => other !== job);
      } catch (error) {
        jobs = jobs.filter((other) => other !== job);
        broken(error);
      }
      plan();
    });
  };
  const begin = (job: Job) => {
    // The latest first: it is what someone looks at.
    jobs = [job, ...jobs.filter(({ name }) => name !== job.name)];
    if (!isAsked) {
      isAsked = true;
      loadKernel()
        .then((loaded) => {
          kernel = loaded;
        }, broken)
        .finally(() => {
          isSettled = true;
          plan();
        });
    }
    plan();
  };

  /** Takes a list in. Whatever was begun of another list of the part is left. */
  function receive(part: PartId, list: readonly SentBody[]): void {
    const before = numbered.get(part);
    const now = new Map<number, PlacedBody>();
    for (const sent of list) {
      if (typeof sent === 'number') now.set(sent, before!.get(sent)!);
      else now.set(sent[0], sent[1]);
    }
    numbered.set(part, now);
    const bodies = [...now.values()];
    const earlier = lists.get(part);
    if (earlier?.length === bodies.length && earlier.every((one, i) => one === bodies[i])) return;
    lists.set(part, bodies);
    jobs = jobs.filter((job) => job.part !== part);
  }

  function* measure(part: PartId, ticket: number): Pieces<void> {
    yield* solids.computing(part);
    post({ type: 'measured', ticket, measured: solids.measuredOf(part) });
  }

  function* draw({ part, key, ticket, subject, options, anew }: ToMeasuring & { type: 'draw' }): Pieces<void> {
    yield* solids.computing(part);
    const mesh = meshOf(part, subject.state);
    yield;
    const sheet = yield* drawingSheet({ ...subject, bodies: solids.bodiesOf(part), mesh }, options);
    const before = anew ? undefined : sheets.get(key);
    sheets.set(key, sheet);
    post({ type: 'drawn', ticket, key, patch: makePatch(before, sheet) });
  }

  function handle(message: ToMeasuring): void {
    switch (message.type) {
      case 'measure':
        receive(message.part, message.list);
        begin({ name: `measure ${message.part}`, part: message.part, pieces: measure(message.part, message.ticket) });
        return;
      case 'draw':
        receive(message.part, message.list);
        begin({ name: `draw ${message.key}`, part: message.part, pieces: draw(message) });
        return;
      case 'leave':
        sheets.delete(message.key);
        jobs = jobs.filter(({ name }) => name !== `draw ${message.key}`);
        return;
      case 'mesh':
      case 'picture': {
        // What is not measured now is shown as it is elsewhere; to wait for it here would hold everything up.
        const found = solids.solidOf(message.part) && meshOf(message.part, message.state);
        const value = found && message.type === 'picture' ? pictureOf(found) : found;
        // The mesh itself stays here; a picture's arrays are its own.
        post({ type: 'got', call: message.call, value }, message.type === 'picture' ? transferOf(value) : []);
        return;
      }
      case 'forget':
        for (const part of message.parts) {
          lists.delete(part);
          numbered.delete(part);
        }
        jobs = jobs.filter(({ part }) => lists.has(part));
        // What is kept of parts that are gone goes with the next look at what is pending.
        solids.pending();
        if (lists.size === 0) solids.drop();
        return;
    }
  }
  return (message) => {
    try {
      handle(message);
    } catch (error) {
      if (message.type === 'mesh' || message.type === 'picture')
        post({ type: 'got', call: message.call, value: undefined });
      broken(error);
    }
  };
}
