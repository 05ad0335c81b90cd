import { ok, type Result } from '../../../shared/base/result.ts';
import { stationsOf } from '../../../shared/build/look-up.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Build } from '../../../shared/build/records.ts';
import { createWorks } from '../../../shared/check/create-works.ts';
import { drawSheet } from '../../../shared/sheet/draw-sheet.ts';
import { type Paper, papers, type SectionChoice } from '../../../shared/sheet/sheet.ts';
import { sheetSubject } from '../../../shared/sheet/sheet-subject.ts';
import { sheetSvg } from '../../../shared/sheet/svg.ts';
import { loadKernel } from '../../../shared/solid/manifold/load-kernel.ts';
import { findStation } from '../find-named.ts';
import { type CallProblem, problem, type ReadCall } from '../verb.ts';

/** Options of a sheet beside those of every export. */
export const sheetOptions = {
  svg: { type: 'boolean' },
  third: { type: 'boolean' },
  paper: { type: 'string' },
  section: { type: 'string' },
  from: { type: 'string' },
} as const;

export interface WrittenSheet {
  readonly text: string;
  /** One sentence for each thing that the views do not show. */
  readonly unplaced: readonly string[];
  /** Whether all that has a place in the views is in them; a size that no body uses has none. */
  readonly isWhole: boolean;
}

/** The drawing of a part as an SVG file. */
export async function sheetFile(
  build: Build,
  part: Part,
  values: ReadCall['values'],
): Promise<Result<WrittenSheet, CallProblem>> {
  const paper = paperOf(values.paper);
  if (!paper.ok) return paper;
  const section = sectionOf(build, part, values.section, values.from);
  if (!section.ok) return section;
  const kernel = await loadKernel();
  const works = createWorks(build, () => kernel);
  works.computeSolid(part.id);
  const state = values['as-cast'] === true ? 'as cast' : 'finished';
  const subject = sheetSubject(build, works.drawing, works.solids, part.id, state);
  if (!subject) return problem(part.name, 'The build has no such part.', 'Check the name.');
  if (subject.stations.length === 0 && subject.dimensions.length === 0) {
    return problem(part.name, 'The part has nothing to draw.', 'Give it stations and dimensions first.');
  }
  const projection = values.third === true ? 'third' : 'first';
  const sheet = drawSheet(subject, { projection, paper: paper.value, section: section.value });
  if (section.value && !sheet.views.some(({ cutAt }) => cutAt !== undefined)) {
    return problem(
      String(values.section),
      'This station has no place yet, so nothing can be cut there.',
      'Tie it to the datum of its axis by a dimension.',
    );
  }
  return ok({
    text: sheetSvg(sheet, part.name),
    unplaced: sheet.unplaced.map(({ words }) => words),
    isWhole: sheet.unplaced.every(({ of }) => of.why === 'no-body'),
  });
}

function paperOf(text: unknown): Result<Paper | undefined, CallProblem> {
  if (text === undefined) return ok(undefined);
  const paper = papers.find((one) => one === String(text).toUpperCase());
  return paper
    ? ok(paper)
    : problem(`--paper ${text}`, 'There is no such paper.', `Choose one of ${papers.join(', ')}.`);
}

/** Ends of an axis as seen from the part, and the way that the eye then looks. */
const looks = { start: '+', end: '-' } as const;

function sectionOf(
  build: Build,
  part: Part,
  text: unknown,
  from: unknown,
): Result<SectionChoice | undefined, CallProblem> {
  if (text === undefined) {
    return from === undefined
      ? ok(undefined)
      : problem(
          '--from',
          'It says from where a section is looked at, and there is none.',
          'Add --section AXIS/STATION.',
        );
  }
  const look = from === undefined ? '+' : looks[String(from) as keyof typeof looks];
  if (look === undefined) {
    return problem(
      `--from ${from}`,
      'A section is looked at from the start or the end of its axis.',
      'Write start or end.',
    );
  }
  const found = findStation(build, `${part.name}/${text}`);
  if (found.ok) return ok({ station: found.value.station.id, look });
  // Two parts may share a name; the station of this one is meant.
  const own = stationsOf(build, part.id).find(
    ({ axis, name }) => `${axis}/${name}`.toLowerCase() === String(text).toLowerCase(),
  );
  return own ? ok({ station: own.id, look }) : found;
}
