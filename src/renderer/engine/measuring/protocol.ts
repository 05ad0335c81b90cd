import type { PartId } from '../../../shared/base/ids.ts';
import type { SheetOptions, SheetSubject } from '../../../shared/sheet/sheet.ts';
import type { PartMesh, PartState, PlacedBody } from '../../../shared/solid/placed.ts';
import type { MeasuredPart } from '../../../shared/solid/solids.ts';
import type { Patch } from '../patch.ts';
import type { Picture } from '../solid/picture.ts';

/** A body that was in the list sent last for its part, by its number, or a body with the number that it has from now on. */
export type SentBody = number | readonly [number, PlacedBody];

/** A part's list of bodies; another list of it is of no interest any more. */
interface SentList {
  readonly part: PartId;
  readonly list: readonly SentBody[];
}

/** What a sheet is drawn from, but for what the measuring worker has itself. */
export type SentSubject = Omit<SheetSubject, 'bodies' | 'mesh'>;

/** From the engine's worker to that in which solids are measured and sheets drawn. */
export type ToMeasuring =
  | ({ readonly type: 'measure'; readonly ticket: number } & SentList)
  | ({
      readonly type: 'draw';
      readonly ticket: number;
      /** What is drawn before under this key is not wanted any more. */
      readonly key: string;
      readonly subject: SentSubject;
      readonly options: SheetOptions;
      /** Whether the window holds no sheet of this key, so that it must be sent as a whole. */
      readonly anew: boolean;
    } & SentList)
  /** Nobody looks at this sheet any more. */
  | { readonly type: 'leave'; readonly key: string }
  | { readonly type: 'mesh' | 'picture'; readonly call: number; readonly part: PartId; readonly state: PartState }
  /** Of these parts nothing will be asked: they are gone, or their build is closed. */
  | { readonly type: 'forget'; readonly parts: readonly PartId[] };

export type FromMeasuring =
  | { readonly type: 'measured'; readonly ticket: number; readonly measured: MeasuredPart }
  /** The sheet as it differs from that sent before under the key. */
  | { readonly type: 'drawn'; readonly ticket: number; readonly key: string; readonly patch: Patch | undefined }
  /** Undefined when the part has other bodies by now. */
  | { readonly type: 'got'; readonly call: number; readonly value: PartMesh | Picture | undefined }
  | { readonly type: 'broken'; readonly message: string };
