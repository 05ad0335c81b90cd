import type { PartId } from '../../../shared/base/ids.ts';
import type { SheetOptions } from '../../../shared/sheet/sheet.ts';
import type { PartMesh, PartState, PlacedBody } from '../../../shared/solid/placed.ts';
import type { MeasuredPart } from '../../../shared/solid/solids.ts';
import type { Patch } from '../patch.ts';
import type { Picture } from '../solid/picture.ts';
import type { FromMeasuring, SentBody, SentSubject, ToMeasuring } from './protocol.ts';

/** The measuring worker as the engine speaks to it; a test may put its host itself behind it. */
export interface MeasuringPort {
  post(message: ToMeasuring): void;
}

/** What is done when something comes from the measuring worker. */
interface Heard {
  measured(part: PartId, bodies: readonly PlacedBody[], measured: MeasuredPart): void;
  /** The sheet under a key is what was last asked for. */
  drawn(key: string, patch: Patch | undefined): void;
  broken(message: string): void;
}

/** Solids measured and sheets drawn beside the engine, so that no edit waits for them. */
export interface Measuring {
  /** Asks for the solid of a part, unless that was done for these very bodies. @returns whether it was. */
  measure(part: PartId, bodies: readonly PlacedBody[]): boolean;
  /** Whether they were asked for; measured or not. */
  isAsked(part: PartId, bodies: readonly PlacedBody[]): boolean;
  /** Asks for a sheet; what was asked for before under the key is called off. */
  draw(key: string, subject: SentSubject, bodies: readonly PlacedBody[], options: SheetOptions): void;
  isDrawn(key: string): boolean;
  /** The window has no sheet under the key any more. */
  leave(key: string): void;
  /** As last measured; undefined where the part is not measured as it is now. */
  meshOf(part: PartId, state: PartState): Promise<PartMesh | undefined>;
  pictureOf(part: PartId, state: PartState): Promise<Picture | undefined>;
  /** The build is closed. */
  forgetAll(): void;
}

interface Sent {
  readonly bodies: readonly PlacedBody[];
  readonly numbers: ReadonlySet<number>;
}

/** @param start brings the worker up, when it is first needed. */
export function createMeasuring(
  start: (listener: (message: FromMeasuring) => void) => MeasuringPort,
  heard: Heard,
): Measuring {
  let port: MeasuringPort | undefined;
  let tickets = 0;
  const lists = new Map<PartId, Sent>();
  const numberOf = new WeakMap<PlacedBody, number>();
  let bodies = 0;
  /** The list that each part is being measured with. */
  const asked = new Map<number, { readonly part: PartId; readonly bodies: readonly PlacedBody[] }>();
  const askedFor = new Map<PartId, readonly PlacedBody[]>();
  const sheets = new Map<
    string,
    { readonly first: number; readonly ticket: number; isDrawn: boolean; isHeld: boolean }
  >();
  const waiting = new Map<number, (value: never) => void>();

  const listen = (message: FromMeasuring) => {
    switch (message.type) {
      case 'measured': {
        const of = asked.get(message.ticket);
        asked.delete(message.ticket);
        if (of !== undefined) heard.measured(of.part, of.bodies, message.measured);
        return;
      }
      case 'drawn': {
        const sheet = sheets.get(message.key);
        // What was drawn before the key was left tells no difference from what the window holds now.
        if (sheet === undefined || message.ticket < sheet.first) return;
        sheet.isHeld = true;
        sheet.isDrawn = sheet.ticket === message.ticket;
        return heard.drawn(message.key, message.patch);
      }
      case 'got':
        waiting.get(message.call)?.(message.value as never);
        waiting.delete(message.call);
        return;
      case 'broken':
        return heard.broken(message.message);
    }
  };
  const post = (message: ToMeasuring) => {
    port ??= start(listen);
    port.post(message);
  };
  /** The list in few words: bodies that went with the last one go as their numbers. */
  function coded(part: PartId, list: readonly PlacedBody[]): readonly SentBody[] {
    const known = lists.get(part)?.numbers;
    const numbers = new Set<number>();
    const sent = list.map((body): SentBody => {
      let number = numberOf.get(body);
      if (number === undefined) {
        number = ++bodies;
        numberOf.set(body, number);
      }
      numbers.add(number);
      return known?.has(number) ? number : [number, body];
    });
    lists.set(part, { bodies: list, numbers });
    return sent;
  }
  const get = (type: 'mesh' | 'picture', part: PartId, state: PartState): Promise<never> =>
    new Promise((resolve) => {
      const call = ++tickets;
      waiting.set(call, resolve);
      post({ type, call, part, state });
    });

  const isAsked = (part: PartId, list: readonly PlacedBody[]): boolean => {
    const before = askedFor.get(part);
    return before !== undefined && sameList(before, list);
  };

  return {
    measure(part, list) {
      if (isAsked(part, list)) return false;
      askedFor.set(part, list);
      for (const [ticket, of] of asked) if (of.part === part) asked.delete(ticket);
      const ticket = ++tickets;
      asked.set(ticket, { part, bodies: list });
      post({ type: 'measure', ticket, part, list: coded(part, list) });
      return true;
    },
    isAsked,
    draw(key, subject, list, options) {
      const ticket = ++tickets;
      const before = sheets.get(key);
      sheets.set(key, { first: before?.first ?? ticket, ticket, isDrawn: false, isHeld: before?.isHeld ?? false });
      const { id } = subject.part;
      const anew = before?.isHeld !== true;
      post({ type: 'draw', ticket, key, subject, options, anew, part: id, list: coded(id, list) });
    },
    isDrawn: (key) => sheets.get(key)?.isDrawn ?? false,
    leave(key) {
      if (sheets.delete(key)) post({ type: 'leave', key });
    },
    meshOf: (part, state) => get('mesh', part, state),
    pictureOf: (part, state) => get('picture', part, state),
    forgetAll() {
      if (lists.size > 0) post({ type: 'forget', parts: [...lists.keys()] });
      for (const key of [...sheets.keys()]) post({ type: 'leave', key });
      lists.clear();
      asked.clear();
      askedFor.clear();
      sheets.clear();
    },
  };
}

const sameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a === b || (a.length === b.length && a.every((one, i) => one === b[i]));
