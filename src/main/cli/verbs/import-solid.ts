import path from 'node:path';
import { idSource } from '../../../shared/base/ids.ts';
import { ok, type Result } from '../../../shared/base/result.ts';
import { type Body, bodyFinishes } from '../../../shared/build/body.ts';
import type { BuildContent } from '../../../shared/build/build-json.ts';
import type { Step } from '../../../shared/build/command.ts';
import { runCommand } from '../../../shared/build/commands/registry.ts';
import type { SolidImport } from '../../../shared/build/commands/solid-import.ts';
import { apply } from '../../../shared/build/diff.ts';
import { buildOf, settingsOf, stationsOf } from '../../../shared/build/look-up.ts';
import { encodeMesh } from '../../../shared/build/mesh-code.ts';
import type { Part } from '../../../shared/build/part.ts';
import type { Build } from '../../../shared/build/records.ts';
import { refusalWords } from '../../../shared/build/refusals.ts';
import { type MeshUnit, meshUnits } from '../../../shared/build/solid.ts';
import { axes } from '../../../shared/build/station.ts';
import { createDrawing } from '../../../shared/drawing/create-drawing.ts';
import { nameKey } from '../../../shared/formula/name-key.ts';
import { formatNumber, formatQuantity } from '../../../shared/quantity/format.ts';
import { inMm } from '../../../shared/solid/formats/in-mm.ts';
import { solidEndings } from '../../../shared/solid/formats/solid-form.ts';
import { mmPer, unitDoubt } from '../../../shared/solid/formats/unit-doubt.ts';
import { greatestSize } from '../../../shared/solid/greatest-size.ts';
import type { FileSolid } from '../../files/solids/read-solid.ts';
import { readSolidApart } from '../../files/solids/read-solid-apart.ts';
import { findPart } from '../find-named.ts';
import { type CallProblem, problem, type ReadCall, type Surroundings } from '../verb.ts';

type Values = ReadCall['values'];

/** What is said of a solid that comes in. */
export interface SolidReport {
  readonly part: string;
  readonly name: string;
  readonly form: FileSolid['form'];
  readonly unit: MeshUnit;
  readonly sizeMm: readonly [number, number, number];
  readonly volumeMm3: number;
  readonly triangles: number;
  readonly surfaces: number;
  readonly remarks: readonly string[];
}

export interface PlannedSolid {
  readonly step: Step;
  readonly after: BuildContent;
  readonly report: SolidReport;
}

/** Whether a file that is to be imported is that of a solid, by the ending of its name. */
export const isSolidName = (file: string): boolean =>
  solidEndings.some((ending) => file.toLowerCase().endsWith(`.${ending}`));

/** Reads a solid and works out the step that makes a body of it. Nothing is written. */
export async function planSolid(
  content: BuildContent,
  source: string,
  values: Values,
  surroundings: Surroundings,
): Promise<Result<PlannedSolid, CallProblem>> {
  const build = buildOf(content.records);
  if (typeof values.part !== 'string') {
    return problem(source, 'A solid becomes a body of one part, and none is named.', 'Add --part PART.');
  }
  const part = findPart(build, values.part);
  if (!part.ok) return part;
  const given = readOptions(build, part.value, values);
  if (!given.ok) return given;
  const read = await readSolidApart(source);
  if (!read.ok) {
    const { place, sentence, remedy } = read.error;
    return problem(place === '' ? source : `${source}, ${place}`, sentence, remedy);
  }
  const solid = read.value;
  const unit = chooseUnit(source, solid, given.value.unit);
  if (!unit.ok) return unit;
  const partMm = greatestSize(part.value.id, build, createDrawing(build));
  const doubted = doubt(build, source, solid, unit.value, partMm);
  if (doubted !== undefined && values.sure !== true) return doubted;
  const params: SolidImport = {
    part: part.value.id,
    solid: {
      name: given.value.name ?? path.parse(source).name,
      fileName: path.basename(source),
      unit: unit.value,
      note: '',
      ...encodeMesh(inMm(solid.mesh, unit.value)),
    },
    origin: given.value.origin,
    turn: given.value.turn,
    adds: values.take !== true,
    ...(given.value.finish === undefined ? {} : { finish: given.value.finish }),
  };
  const context = { newId: idSource(surroundings.random32), now: surroundings.now() };
  const run = runCommand(build, 'solid-import', params, context);
  if (!run.ok) {
    const { sentence, remedy } = refusalWords(run.error);
    return problem(source, sentence, remedy);
  }
  const after = { ...content, records: [...apply(build, run.value.diff).values()] };
  return ok({ step: run.value, after, report: reportOf(solid, unit.value, part.value, run.value) });
}

interface Given extends Pick<SolidImport, 'origin' | 'turn'> {
  readonly finish: Body['finish'] | undefined;
  readonly name: string | undefined;
  readonly unit: MeshUnit | undefined;
}

const TURN = /^([+-][XYZ]),([+-][XYZ]),([+-][XYZ])$/;

function readOptions(build: Build, part: Part, values: Values): Result<Given, CallProblem> {
  const text = (name: string): string | undefined => (typeof values[name] === 'string' ? values[name] : undefined);
  const unit = meshUnits.find((known) => known === text('unit'));
  if (text('unit') !== undefined && unit === undefined) {
    return problem('--unit', `"${text('unit')}" is no unit of a solid.`, `Write one of ${meshUnits.join(', ')}.`);
  }
  const finish = bodyFinishes.find((known) => known === text('finish'));
  if (text('finish') !== undefined && finish === undefined) {
    return problem('--finish', `"${text('finish')}" is no finish.`, `Write one of ${bodyFinishes.join(', ')}.`);
  }
  const turn = TURN.exec((text('turn') ?? '+X,+Y,+Z').toUpperCase());
  if (turn === null) {
    return problem(
      '--turn',
      `"${text('turn')}" does not say where the three axes go.`,
      'Write which axis of the part each of the file becomes, for example +X,+Z,-Y.',
    );
  }
  const names = text('at')?.split(',') ?? [];
  if (names.length > 3) return problem('--at', `${names.length} stations are given.`, 'Write three: along X, Y and Z.');
  const origin: SolidImport['origin'][number][] = [];
  for (const [i, axis] of axes.entries()) {
    const wanted = names[i]?.trim() ?? '';
    // Nought from the datum is the datum itself; one is made where the axis has none.
    if (wanted === '') {
      origin.push({ value: '0' });
      continue;
    }
    const station = stationsOf(build, part.id, axis).find(({ name }) => nameKey(name) === nameKey(wanted));
    if (station === undefined) {
      const there = stationsOf(build, part.id, axis).map(({ name }) => name);
      return problem(
        '--at',
        `${part.name} has no station "${wanted}" along ${axis}.`,
        `It has: ${there.join(', ') || 'none'}. Leave a place empty for the datum.`,
      );
    }
    origin.push(station.id);
  }
  const [x, y, z] = origin;
  return ok({
    name: text('name'),
    unit,
    finish,
    origin: [x!, y!, z!],
    turn: [turn[1], turn[2], turn[3]] as unknown as SolidImport['turn'],
  });
}

const sizeOf = ({ min, max }: FileSolid): readonly [number, number, number] => [
  max[0] - min[0],
  max[1] - min[1],
  max[2] - min[2],
];
const inWords = (size: readonly number[]): string => size.map((value) => formatNumber(value, 3)).join(' × ');

function chooseUnit(source: string, solid: FileSolid, given: MeshUnit | undefined): Result<MeshUnit, CallProblem> {
  if (solid.unit !== undefined && given !== undefined && given !== solid.unit) {
    return problem('--unit', `${source} says itself that it is in ${solid.unit}.`, 'Leave --unit away.');
  }
  const unit = solid.unit ?? given;
  if (unit !== undefined) return ok(unit);
  return problem(
    source,
    `The file does not say its unit. In its own numbers the solid measures ${inWords(sizeOf(solid))}.`,
    `Say what these are: add --unit ${meshUnits.join(', --unit ')}.`,
  );
}

function doubt(build: Build, source: string, solid: FileSolid, unit: MeshUnit, partMm: number | undefined) {
  const doubted = unitDoubt(Math.max(...sizeOf(solid)), unit, partMm);
  if (doubted === undefined) return undefined;
  const length = (mm: number) => formatQuantity(mm, 'length', { unit: settingsOf(build).lengthUnit });
  const beside = partMm === undefined ? '' : `, and the part ${length(partMm)}`;
  const better =
    doubted.better === undefined || solid.unit !== undefined
      ? ''
      : `In ${doubted.better} it would be ${length((doubted.sizeMm / mmPer[unit]) * mmPer[doubted.better])}: add --unit ${doubted.better}. `;
  return problem(
    source,
    `Taken in ${unit}, the solid measures ${length(doubted.sizeMm)} at its greatest${beside}.`,
    `${better}If this is right, add --sure.`,
  );
}

function reportOf(solid: FileSolid, unit: MeshUnit, part: Part, { diff }: Step): SolidReport {
  const factor = mmPer[unit];
  const [x, y, z] = sizeOf(solid);
  const body = diff.added.find(({ kind }) => kind === 'body');
  return {
    part: part.name,
    name: body?.kind === 'body' ? body.name : '',
    form: solid.form,
    unit,
    sizeMm: [x * factor, y * factor, z * factor],
    volumeMm3: solid.volume * factor ** 3,
    triangles: solid.mesh.triangles.length / 3,
    surfaces: solid.shells,
    remarks: solid.remarks,
  };
}
