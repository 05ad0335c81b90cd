import type { Edge, Process } from '../../../src/shared/build/operation.ts';
import type { Fixture } from '../../../src/shared/build/setup.ts';
import type { Axis } from '../../../src/shared/build/station.ts';
import type { MachineType } from '../../../src/shared/tables/machine-figures.ts';

/** A machine of the shop, or a fixed piece of it. Figures as written, by their keys. */
export interface MachineSketch {
  readonly name: string;
  readonly type: MachineType;
  readonly figures: Readonly<Record<string, string>>;
  readonly note: string;
}

/** A station by its name, and how far beyond it. */
export interface Spot {
  readonly is: 'spot';
  readonly axis: Axis;
  readonly station: string;
  readonly beyond: string;
}
export const at = (axis: Axis, station: string, beyond = ''): Spot => ({ is: 'spot', axis, station, beyond });

/** A dimension of the part by its name. */
export interface SizeOf {
  readonly is: 'size';
  readonly dimension: string;
}
export const size = (dimension: string): SizeOf => ({ is: 'size', dimension });

/** A body of the part by its name. */
export interface BodyOf {
  readonly is: 'body';
  readonly body: string;
}
export const body = (name: string): BodyOf => ({ is: 'body', body: name });

/** A dimension of the part, or a size as written. */
export type AmountSketch = SizeOf | string;
export type Ends = readonly [Spot, Spot];

/** Where a part stands in its route: `after` the operation of that name, or after all that stand before it in the sketch. */
export type StateSketch = 'as cast' | 'finished' | 'after the last' | { readonly after: string };

export interface FixtureSketch {
  readonly name: string;
  readonly what: Fixture['what'];
  readonly ends: Ends;
  /** A diameter about the line, else from and to along both axes across, from the line, mm. */
  readonly shape: AmountSketch | readonly [readonly [number, number], readonly [number, number]];
  readonly material: string;
}

export interface FellowSketch {
  readonly part: string;
  readonly state: StateSketch;
  /** Along X, Y and Z: a station of the set-up's part, and the one of the fellow that lies there. Never turned. */
  readonly meets: readonly [Two, Two, Two];
}
type Two = readonly [string, string];

interface Grip {
  readonly ends: Ends;
  readonly diameter: AmountSketch;
  readonly inside?: true;
  readonly tailCentre?: true;
}
export type HoldingSketch =
  | { readonly as: 'between centres' }
  | ({ readonly as: 'three-jaw chuck' } & Grip)
  | ({ readonly as: 'four-jaw chuck' } & Grip)
  | { readonly as: 'face plate'; readonly seat: Spot; readonly tailCentre?: true }
  | { readonly as: 'vise'; readonly ends: Ends; readonly depth: AmountSketch }
  | { readonly as: 'clamped to the table'; readonly seat: Spot };

export interface SetupSketch {
  readonly name: string;
  readonly machine: string;
  /** `after the last` when nothing is said. */
  readonly state?: StateSketch;
  readonly allowance?: string;
  readonly fellows?: readonly FellowSketch[];
  readonly fixtures?: readonly FixtureSketch[];
  readonly axis: Axis;
  /** Stations on the two axes across, in the order of the alphabet. */
  readonly through: Two;
  readonly headEnd?: 'low' | 'high';
  readonly holding: HoldingSketch;
  readonly note?: string;
}

/** What an operation says beyond its process and name. */
export interface OperationMore {
  readonly makes?: readonly (Spot | SizeOf | BodyOf)[];
  readonly from?: readonly (Spot | SizeOf)[];
  /** Names of operations of the same part. */
  readonly after?: readonly string[];
  readonly leaves?: string;
  readonly cut?: { readonly ends: Ends; readonly diameter?: AmountSketch; readonly inner?: AmountSketch };
  readonly edge?: Edge;
  /** Diameter of the tool; of a turning tool the width of its shank. */
  readonly tool?: AmountSketch;
  readonly overhang?: string;
  readonly teeth?: number;
  readonly chosen?: Readonly<Partial<Record<'speed' | 'rpm' | 'feed' | 'depth' | 'minutes', string>>>;
  readonly note?: string;
}
export interface OperationSketch extends OperationMore {
  readonly process: Process;
  readonly name: string;
}
export const operation = (process: Process, name: string, more: OperationMore): OperationSketch => ({
  process,
  name,
  ...more,
});

/** A stretch of the route: what is done in one holding, at the bench, or in a set-up that is there already. */
export interface Stretch {
  readonly in: SetupSketch | 'bench' | { readonly part: string; readonly setup: string };
  readonly operations: readonly OperationSketch[];
}
export const hold = (setup: SetupSketch, ...operations: readonly OperationSketch[]): Stretch => ({
  in: setup,
  operations,
});
export const atBench = (...operations: readonly OperationSketch[]): Stretch => ({ in: 'bench', operations });
export const inSetupOf = (part: string, setup: string, ...operations: readonly OperationSketch[]): Stretch => ({
  in: { part, setup },
  operations,
});

/** How a part is machined, in order. */
export interface RouteSketch {
  readonly part: string;
  readonly stretches: readonly Stretch[];
}
export const route = (part: string, ...stretches: readonly Stretch[]): RouteSketch => ({ part, stretches });
