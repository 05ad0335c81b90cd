import { reamStock } from '../../tables/cutting-practice.ts';
import { type Drill, type DrillSeries, drillCalled, nearestDrills } from '../../tables/drills.ts';
import { type TableTapDrill, tableTapDrill } from '../../tables/tap-drill.ts';

/** Drills for a hole. */
export interface DrillChoice {
  /** What is to be drilled, mm. */
  readonly wantedMm: number;
  /** Of both the nearest to what is wanted; undefined where no series comes near. */
  readonly best: Drill | undefined;
  /** The metric drill next to it. */
  readonly metric: Drill | undefined;
  /** The number, letter or fractional drill next to it. */
  readonly inch: Drill | undefined;
  /** What the published table gives for the thread. */
  readonly table: TableTapDrill | undefined;
}

const inchSeries: readonly DrillSeries[] = ['number', 'letter', 'fraction'];

/** The drills next to a diameter in mm, of each system one. */
export function drillsFor(wantedMm: number): DrillChoice {
  const [metric] = nearestDrills('metric', wantedMm);
  const inch = nearest(
    inchSeries.flatMap((series) => nearestDrills(series, wantedMm).slice(0, 1)),
    wantedMm,
  );
  const both = [metric, inch].filter((drill) => drill !== undefined);
  return { wantedMm, best: nearest(both, wantedMm), metric, inch, table: undefined };
}

/** The drills for a listed thread: the table's own first; else those next to major diameter less pitch. */
export function tapDrillsFor(name: string | undefined, holeMm: number): DrillChoice {
  const choice = drillsFor(holeMm);
  const table = name === undefined ? undefined : tableTapDrill(name);
  const drill = table && drillCalled(table.drill);
  if (!table || !drill) return choice;
  return drill.series === 'metric'
    ? { ...choice, best: drill, metric: drill, table }
    : { ...choice, best: drill, inch: drill, table };
}

/** The drills before a reamer: thinner by what a reamer is left to take. */
export function reamDrillsFor(diameterMm: number): DrillChoice {
  const stock = reamStock.find(({ upToMm }) => diameterMm <= upToMm) ?? reamStock.at(-1)!;
  const wanted = diameterMm - (stock.least + stock.most) / 2;
  const below = (series: readonly DrillSeries[]): Drill | undefined =>
    nearest(
      series
        .flatMap((one) => nearestDrills(one, wanted))
        .filter((drill) => drill.diameterMm <= diameterMm - stock.least / 2),
      wanted,
    );
  const [metric, inch] = [below(['metric']), below(inchSeries)];
  const both = [metric, inch].filter((drill) => drill !== undefined);
  return { wantedMm: wanted, best: nearest(both, wanted), metric, inch, table: undefined };
}

/** Equally near the metric one, which stands first. */
function nearest(list: readonly Drill[], wantedMm: number): Drill | undefined {
  let best: Drill | undefined;
  for (const drill of list) {
    if (!best || Math.abs(drill.diameterMm - wantedMm) < Math.abs(best.diameterMm - wantedMm) - 1e-9) best = drill;
  }
  return best;
}
