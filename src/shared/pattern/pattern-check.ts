import type { PartId } from '../base/ids.ts';
import type { Casting } from '../build/casting.ts';
import type { Dimension } from '../build/dimension.ts';
import type { Machine } from '../build/machine.ts';
import type { Operation } from '../build/operation.ts';
import type { Pattern } from '../build/pattern.ts';
import type { Axis } from '../build/station.ts';
import { readingOf } from '../plan/amounts.ts';
import type { Numbers } from '../plan/numbers.ts';
import { distinctUnknowns } from '../plan/unknown.ts';
import type { LengthUnit } from '../quantity/kind.ts';
import type { PlacedBody, Vec3 } from '../solid/placed.ts';
import type { Alloy } from '../tables/alloys.ts';
import { castingTolerance } from '../tables/casting.ts';
import { type PracticeFigure, patternPractice } from '../tables/pattern-practice.ts';
import { type Board, readBoards } from './boards.ts';
import { isFoam } from './closed-holes.ts';
import { type Contractions, contractionsOf } from './contraction.ts';
import { type BowFit, fitBow, kerfOf } from './fit-bow.ts';
import { type FlaskFit, fitFlask } from './fit-flask.ts';
import { type CarriedMargin, type InspectionLine, inspectionLines } from './inspection.ts';
import { type GlueStep, glueOrder } from './joints.ts';
import { judgePattern, type PatternJudgement } from './judge-pattern.ts';
import type { MadePattern, PatternOrder } from './make-pattern.ts';
import type { MeasuredContraction } from './measured-contraction.ts';
import { type Nesting, nestSections } from './nest.ts';
import { type PatternDimension, patternDimensions } from './pattern-dimensions.ts';
import { type PatternPieces, patternPieces } from './pattern-pieces.ts';
import type { PatternUnknown } from './pattern-unknown.ts';
import { factorsOf } from './solid-of-pieces.ts';
import { type StockPlan, stockOf } from './stock.ts';
import { type WoodPiece, woodPieces } from './wood-pieces.ts';

/** All that the pattern of one casting is worked out from. */
export interface PatternInput {
  readonly casting: Casting;
  readonly part: PartId;
  /** By name, as the part has it, and its row; undefined where neither table nor build knows it. */
  readonly material: string;
  readonly alloy: Alloy | undefined;
  /** Of the part, in list order. */
  readonly bodies: readonly PlacedBody[];
  readonly dimensions: readonly Dimension[];
  readonly operations: readonly Operation[];
  readonly numbers: Numbers;
  readonly lengthUnit: LengthUnit;
  readonly castingGrade: number;
  /** Of the build. */
  readonly machines: readonly Machine[];
  /** Patterns of this part that were made, in list order. */
  readonly patterns: readonly Pattern[];
  /** Contractions measured in this build, and in earlier ones. */
  readonly measuredHere: readonly MeasuredContraction[];
  readonly measuredBefore: readonly MeasuredContraction[];
  /** Margins of set-ups (and joints) that hang on dimensions of the part. */
  readonly margins: readonly CarriedMargin[];
}

/** What is known of a pattern without its solid. */
export interface PatternPlan {
  readonly input: PatternInput;
  readonly contractions: Contractions;
  /** From the casting to the pattern; undefined while a contraction is not known. */
  readonly factors: Vec3 | undefined;
  readonly stock: StockPlan;
  readonly pieces: PatternPieces;
  readonly dimensions: readonly PatternDimension[];
  readonly boards: readonly Board[];
  readonly bow: Machine | undefined;
  readonly flask: Machine | undefined;
  readonly kerf: PracticeFigure;
  readonly glueJoint: PracticeFigure;
  readonly coating: PracticeFigure;
  /** kg/m³; undefined where it was not measured. */
  readonly foamDensity: number | undefined;
  /** What the kernel makes its solids of. */
  readonly order: PatternOrder;
  readonly unknown: readonly PatternUnknown[];
}

/** What the pattern shop says of one casting. Immutable; whatever it does not know is in `unknown`. */
export interface PatternCheck {
  readonly casting: Casting;
  readonly contractions: Contractions;
  readonly factors: Vec3 | undefined;
  readonly stock: StockPlan;
  readonly pieces: PatternPieces;
  readonly dimensions: readonly PatternDimension[];
  readonly boards: readonly Board[];
  readonly kerf: PracticeFigure;
  readonly glueJoint: PracticeFigure;
  readonly coating: PracticeFigure;
  /** Undefined while its solids are not worked out of its present bodies. */
  readonly made: MadePattern | undefined;
  /** Of the bare foam, kg; undefined without a measured density, or a solid, and of wood. */
  readonly foamKg: number | undefined;
  /** Volume of the coating, mm³: the pattern's surface by its thickness. */
  readonly coatingMm3: number | undefined;
  /** Of foam: its sections on the boards in stock. */
  readonly nesting: Nesting | undefined;
  readonly gluing:
    | { readonly first: string | undefined; readonly steps: readonly GlueStep[]; readonly loose: readonly string[] }
    | undefined;
  readonly bowFit: BowFit | undefined;
  readonly flaskFit: FlaskFit | undefined;
  /** Of a wooden pattern: the blocks that it is built of. */
  readonly wood: readonly WoodPiece[];
  /** The sheet to measure a made pattern by, before it is coated. */
  readonly sheet: readonly InspectionLine[];
  /** The patterns that were made, held against it, in list order. */
  readonly judgements: readonly PatternJudgement[];
  readonly unknown: readonly PatternUnknown[];
}

/** Works out all of a pattern that needs no kernel. */
export function planPattern(input: PatternInput): PatternPlan {
  const { casting, bodies, operations, numbers, machines, lengthUnit, castingGrade } = input;
  const reading = readingOf(numbers, lengthUnit);
  const unknown: PatternUnknown[] = [];
  const contractions = contractionsOf({ ...input, here: input.measuredHere, before: input.measuredBefore });
  for (const axis of contractions) unknown.push(...axis.unknown);
  const percents = contractions.flatMap(({ percent }) => percent ?? []);
  const factors = percents.length === 3 ? factorsOf(percents) : undefined;
  const given = { casting, bodies, operations, numbers, reading };
  const stock = stockOf({ ...given, castingGrade });
  const pieces = patternPieces({ ...given, shifts: stock.shifts });
  const dimensions = patternDimensions({
    ...given,
    dimensions: input.dimensions,
    castingGrade,
    contractions,
    stock,
    pieces,
  });
  unknown.push(...stock.unknown, ...stock.rows.flatMap((row) => row.unknown), ...pieces.unknown);
  const orStart = (text: string, field: string, start: PracticeFigure): PracticeFigure => {
    const read = reading.plain(text, field);
    if (!read.ok) unknown.push(read.error);
    else if ((read.value ?? 0) < 0) unknown.push({ is: 'written', field, text });
    else if (read.value !== undefined) return { value: read.value, status: 'written', source: 'as written' };
    return start;
  };
  const glueJoint = orStart(casting.glueJoint, 'glueJoint', patternPractice.glueJoint);
  const coating = orStart(casting.coating, 'coating', patternPractice.coating);
  const foam = isFoam(casting);
  const stocked = foam ? readBoards(casting, reading) : { boards: [], unknown: [] };
  unknown.push(...stocked.unknown);
  if (foam && casting.boards.length === 0) unknown.push({ is: 'field', field: 'boards' });
  else if (foam && casting.sectionAxis === undefined) unknown.push({ is: 'field', field: 'sectionAxis' });
  const density = reading.plain(
    casting.foamDensity.replace(/\s*kg\s*\/\s*m(³|3|\^3)\s*$/i, ''),
    'foamDensity',
    'number',
  );
  if (!density.ok) unknown.push({ is: 'written', field: 'foamDensity', text: casting.foamDensity });
  const bow = machines.find(({ id }) => id === casting.bow);
  const flask = machines.find(({ id }) => id === casting.flask);
  const kerf = kerfOf(bow, lengthUnit);
  const isCut = foam && casting.sectionAxis !== undefined && stocked.boards.length > 0;
  const cut = isCut
    ? {
        axis: casting.sectionAxis!,
        boards: stocked.boards,
        glueMm: glueJoint.value,
        kerfMm: kerf.value,
        leastMm: patternPractice.leastSection.value,
      }
    : undefined;
  return {
    input,
    contractions,
    factors,
    stock,
    pieces,
    dimensions,
    boards: stocked.boards,
    bow,
    flask,
    kerf,
    glueJoint,
    coating,
    foamDensity: foam && density.ok && (density.value ?? 0) > 0 ? density.value : undefined,
    order: { casting: pieces.casting, pattern: pieces.pattern, factors, cut },
    unknown: distinctUnknowns(unknown),
  };
}

/**
 * All that is said of a pattern.
 *
 * @param made what the kernel made of `plan.order`; undefined while it has not.
 */
export function checkPattern(plan: PatternPlan, made: MadePattern | undefined): PatternCheck {
  const { input, factors, boards, kerf, coating, bow, flask, foamDensity, pieces, dimensions } = plan;
  const { casting, numbers, lengthUnit, bodies, castingGrade } = input;
  const reading = readingOf(numbers, lengthUnit);
  const unknown: PatternUnknown[] = [...plan.unknown];
  const sections = made?.sections ?? [];
  const nesting = sections.length > 0 ? nestSections(sections, boards, kerf.value) : undefined;
  const bowFit = bow && nesting ? fitBow(bow, sections, nesting.sliced, lengthUnit) : undefined;
  unknown.push(...(bowFit?.unknown ?? []));
  const box = made?.pattern;
  const up = casting.up?.[1] as Axis | undefined;
  if (flask && up === undefined) unknown.push({ is: 'field', field: 'up' });
  const inFlask =
    flask && box && up ? fitFlask({ flask, sizeMm: sizeOf(box), coatingMm: coating.value, up, lengthUnit }) : undefined;
  unknown.push(...(inFlask?.unknown ?? []));
  const sheet = factors
    ? inspectionLines({
        dimensions,
        bodies,
        numbers,
        margins: input.margins,
        box,
        factors,
        tolerance: (mm) => castingTolerance(castingGrade, mm)?.plusMinus,
      })
    : [];
  const judge = {
    lines: sheet,
    reading,
    sections,
    sectionAxis: casting.sectionAxis,
    bodies,
    factors: factors ?? [1, 1, 1],
  } as const;
  return {
    casting,
    contractions: plan.contractions,
    factors,
    stock: plan.stock,
    pieces,
    dimensions,
    boards,
    kerf,
    glueJoint: plan.glueJoint,
    coating,
    made,
    foamKg: foamDensity !== undefined && box ? box.volumeMm3 * 1e-9 * foamDensity : undefined,
    coatingMm3: box && box.areaMm2 * coating.value,
    nesting,
    gluing: made && sections.length > 0 ? glueOrder(sections, made.joints) : undefined,
    bowFit,
    flaskFit: inFlask?.fit,
    wood: isFoam(casting) || !factors ? [] : woodPieces(pieces.pattern, factors),
    sheet,
    judgements: input.patterns.map((pattern) => judgePattern(pattern, judge)),
    unknown: distinctUnknowns(unknown),
  };
}

const sizeOf = ({ min, max }: { readonly min: Vec3; readonly max: Vec3 }): Vec3 => [
  max[0] - min[0],
  max[1] - min[1],
  max[2] - min[2],
];
