import { foundryPractice, handlingLimit } from '../../tables/foundry-practice.ts';
import { type Figure, fromTable, weakest } from '../figure.ts';
import type { FoundryUnknown } from '../foundry-unknown.ts';
import type { PourAlloy } from './pour-alloy.ts';
import type { PreparedInsert } from './prepare-inserts.ts';
import { type PourVerdict, verdict } from './verdict.ts';

/** One thing that moves the band, in the order in which it does. */
export interface BandReason {
  readonly code: 'alloy' | 'foam' | 'thin' | 'insert' | 'handling' | 'furnace';
  /** What it makes of the band. */
  readonly leastC: number;
  readonly mostC: number;
  readonly because: Figure;
  /** Place in the pour's list. */
  readonly insert?: number | undefined;
  /** It asks for more than the band can give: the band stays as it was. */
  readonly beyond?: boolean | undefined;
}

/** Between which temperatures to pour, and why. */
export interface TemperatureBand {
  readonly least: Figure | undefined;
  readonly most: Figure | undefined;
  /** Middle of the band to five degrees. */
  readonly proposed: Figure | undefined;
  readonly reasons: readonly BandReason[];
  /** What it is worked out with: as written, else as proposed. */
  readonly chosen: Figure | undefined;
  readonly isProposed: boolean;
  readonly verdicts: readonly PourVerdict[];
  readonly unknown: readonly FoundryUnknown[];
}

export interface BandGiven {
  readonly alloy: PourAlloy | undefined;
  readonly written: Figure | undefined;
  readonly foam: boolean;
  /** Of the thinnest wall of all castings. */
  readonly thinnest: Figure | undefined;
  readonly inserts: readonly PreparedInsert[];
  /** Hottest that the furnace keeps. */
  readonly furnace: Figure | undefined;
}

/** Starts from where the alloy is poured in sand; foam, thin sections and cold inserts raise it; what can be handled caps it. */
export function temperatureBand({ alloy, written, foam, thinnest, inserts, furnace }: BandGiven): TemperatureBand {
  const unknown: FoundryUnknown[] = [];
  const [usualLeast, usualMost] = [alloy?.figure('pourLeastC'), alloy?.figure('pourMostC')];
  if (!alloy || !usualLeast || !usualMost) {
    return {
      least: undefined,
      most: undefined,
      proposed: undefined,
      reasons: [],
      chosen: written,
      isProposed: false,
      verdicts: [],
      unknown,
    };
  }
  const reasons: BandReason[] = [];
  const used: Figure[] = [usualLeast, usualMost];
  let [leastC, mostC] = [usualLeast.value, usualMost.value];
  const say = (code: BandReason['code'], because: Figure, more: Partial<BandReason> = {}): void => {
    reasons.push({ code, leastC, mostC, because, ...more });
    if (!more.beyond) used.push(because);
  };
  say('alloy', usualLeast);
  if (foam) {
    leastC += foundryPractice.foamHotterLeastK.value;
    mostC += foundryPractice.foamHotterMostK.value;
    say('foam', fromTable(foundryPractice.foamHotterLeastK, 'K'));
  }
  for (const [code, cap] of [
    ['handling', handlingLimit[alloy.family] && fromTable(handlingLimit[alloy.family]!, '°C')],
    ['furnace', furnace],
  ] as const) {
    if (!cap || cap.value >= mostC) continue;
    mostC = cap.value;
    leastC = Math.min(leastC, mostC);
    say(code, cap);
  }
  if (thinnest && thinnest.value < foundryPractice.thinSectionMm.value) {
    leastC = Math.min(mostC, leastC + foundryPractice.thinHotterK.value);
    say('thin', { ...thinnest, status: weakest([thinnest.status, 'starting value']) });
  }
  for (const { masses, leastPour, given } of inserts) {
    if (!given || (leastPour && leastPour.value <= leastC)) continue;
    if (!leastPour || leastPour.value > mostC) {
      const because = leastPour ?? masses.mass;
      if (because) say('insert', because, { insert: masses.insert, beyond: true });
      continue;
    }
    leastC = Math.ceil(leastPour.value / 5 - 1e-9) * 5;
    leastC = Math.min(leastC, mostC);
    say('insert', leastPour, { insert: masses.insert });
  }
  const status = weakest(used.map((one) => one.status));
  const figure = (value: number, origin: string): Figure => ({ value, unit: '°C', origin, status });
  const words = `where ${alloy.name} is poured${reasons.length > 1 ? ', moved by what this pour needs' : ''}`;
  const [least, most] = [figure(leastC, words), figure(mostC, words)];
  const proposed = figure(Math.min(mostC, Math.round((leastC + mostC) / 10) * 5), 'the middle of the band');
  return {
    least,
    most,
    proposed,
    reasons,
    chosen: written ?? proposed,
    isProposed: written === undefined,
    verdicts: written ? [judge(written, least, most, alloy)] : [],
    unknown,
  };
}

function judge(written: Figure, least: Figure, most: Figure, alloy: PourAlloy): PourVerdict {
  const liquidus = alloy.ifKnown('liquidusC');
  const handling = handlingLimit[alloy.family];
  if (written.value < least.value) {
    const state = liquidus && written.value <= liquidus.value ? 'stop' : 'caution';
    return verdict('temperature-band', state, {
      has: written,
      needs: least,
      ways: [{ is: 'hotter', toC: least.value }],
    });
  }
  if (written.value > most.value) {
    const state = handling && written.value > handling.value ? 'stop' : 'caution';
    return verdict('temperature-band', state, { has: written, needs: most, ways: [{ is: 'cooler', toC: most.value }] });
  }
  return verdict('temperature-band', 'clear', { has: written, needs: least });
}
