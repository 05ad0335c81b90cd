import type { Pour } from '../../build/pour.ts';
import type { LengthUnit } from '../../quantity/kind.ts';
import type { Figure } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import { writtenReader } from './written-reader.ts';

/** A pour with its texts read. What is not written is undefined. */
export interface ReadPour {
  readonly temperature: Figure | undefined;
  readonly ambient: Figure | undefined;
  readonly gating: {
    readonly sprueHeight: Figure | undefined;
    readonly sprueTop: Figure | undefined;
    readonly sprueFoot: Figure | undefined;
    readonly runnerWidth: Figure | undefined;
    readonly runnerHeight: Figure | undefined;
    readonly runnerLength: Figure | undefined;
    readonly gateWidth: Figure | undefined;
    readonly gateHeight: Figure | undefined;
    readonly gateLength: Figure | undefined;
    readonly cup: Figure | undefined;
  };
  readonly risers: readonly { readonly diameter: Figure | undefined; readonly height: Figure | undefined }[];
  readonly inserts: readonly {
    readonly mass: Figure | undefined;
    readonly preheat: Figure | undefined;
    readonly length: Figure | undefined;
  }[];
  readonly overflow: Figure | undefined;
  readonly loss: Figure | undefined;
  readonly heel: Figure | undefined;
  readonly copeWeight: Figure | undefined;
  readonly coverAbove: Figure | undefined;
  readonly coverAround: Figure | undefined;
  readonly sandDensity: Figure | undefined;
  readonly journal: ReadJournal | undefined;
  /** Texts that cannot be read. */
  readonly unknown: readonly FoundryUnknown[];
}

/** What was really done. */
export interface ReadJournal {
  readonly temperature: Figure | undefined;
  readonly ambient: Figure | undefined;
  readonly insertTemperature: Figure | undefined;
  readonly charged: Figure | undefined;
  readonly left: Figure | undefined;
  readonly meltMinutes: Figure | undefined;
  readonly fillSeconds: Figure | undefined;
}

const known: Readonly<Record<LengthUnit, WeakMap<Pour, ReadPour>>> = { mm: new WeakMap(), in: new WeakMap() };

/** Read once for each record. */
export function readPour(pour: Pour, lengthUnit: LengthUnit): ReadPour {
  const before = known[lengthUnit].get(pour);
  if (before) return before;
  const unknown: FoundryUnknown[] = [];
  const read = writtenReader(lengthUnit, unknown);
  const { gating } = pour;
  const result: ReadPour = {
    temperature: read.temperature(pour.temperature, 'temperature'),
    ambient: read.temperature(pour.ambient, 'ambient'),
    gating: {
      sprueHeight: read.length(gating.sprueHeight, 'gating/sprueHeight'),
      sprueTop: read.length(gating.sprueTop, 'gating/sprueTop'),
      sprueFoot: read.length(gating.sprueFoot, 'gating/sprueFoot'),
      runnerWidth: read.length(gating.runnerWidth, 'gating/runnerWidth'),
      runnerHeight: read.length(gating.runnerHeight, 'gating/runnerHeight'),
      runnerLength: read.length(gating.runnerLength, 'gating/runnerLength'),
      gateWidth: read.length(gating.gateWidth, 'gating/gateWidth'),
      gateHeight: read.length(gating.gateHeight, 'gating/gateHeight'),
      gateLength: read.length(gating.gateLength, 'gating/gateLength'),
      cup: read.volume(gating.cupVolume, 'gating/cupVolume'),
    },
    risers: pour.risers.map(({ diameter, height }, i) => ({
      diameter: read.length(diameter, `risers/${i}/diameter`),
      height: read.length(height, `risers/${i}/height`),
    })),
    inserts: pour.inserts.map(({ mass, preheat, length }, i) => ({
      mass: read.mass(mass, `inserts/${i}/mass`),
      preheat: read.temperature(preheat, `inserts/${i}/preheat`),
      length: read.length(length, `inserts/${i}/length`),
    })),
    overflow: read.mass(pour.overflow, 'overflow'),
    loss: read.percent(pour.loss, 'loss'),
    heel: read.mass(pour.heel, 'heel'),
    copeWeight: read.mass(pour.copeWeight, 'copeWeight'),
    coverAbove: read.length(pour.coverAbove, 'coverAbove'),
    coverAround: read.length(pour.coverAround, 'coverAround'),
    sandDensity: read.density(pour.sandDensity, 'sandDensity'),
    journal: pour.journal && {
      temperature: read.temperature(pour.journal.temperature, 'journal/temperature'),
      ambient: read.temperature(pour.journal.ambient, 'journal/ambient'),
      insertTemperature: read.temperature(pour.journal.insertTemperature, 'journal/insertTemperature'),
      charged: read.mass(pour.journal.charged, 'journal/charged'),
      left: read.mass(pour.journal.left, 'journal/left'),
      meltMinutes: read.minutes(pour.journal.meltMinutes, 'journal/meltMinutes'),
      fillSeconds: read.seconds(pour.journal.fillSeconds, 'journal/fillSeconds'),
    },
    unknown,
  };
  known[lengthUnit].set(pour, result);
  return result;
}
