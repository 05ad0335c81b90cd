import bodyRemove from '../../../src/shared/build/commands/body-remove.ts';
import datumSet from '../../../src/shared/build/commands/datum-set.ts';
import dimensionRemove from '../../../src/shared/build/commands/dimension-remove.ts';
import dimensionSet from '../../../src/shared/build/commands/dimension-set.ts';
import operationRemove from '../../../src/shared/build/commands/operation-remove.ts';
import partSet from '../../../src/shared/build/commands/part-set.ts';
import setupRemove from '../../../src/shared/build/commands/setup-remove.ts';
import solidImport from '../../../src/shared/build/commands/solid-import.ts';
import stationAdd from '../../../src/shared/build/commands/station-add.ts';
import stationRemove from '../../../src/shared/build/commands/station-remove.ts';
import type { Dimension } from '../../../src/shared/build/dimension.ts';
import { bodiesOf, dimensionsOf, operationsOf, setupsOf, stationsOf } from '../../../src/shared/build/look-up.ts';
import { type CodedMesh, encodeMesh } from '../../../src/shared/build/mesh-code.ts';
import { type Board, drawBody, drawDimension } from './board.ts';
import { add, cut, cylinder, hole, mirror, rib } from './body-sketch.ts';
import { boreArmOnLathe, millKeywayEarly, spotFaceTooSlowly, turnFootOnMandrel } from './machining-faults.ts';
import { derived, length, tie } from './sketch.ts';

/** One honest slip of the first drawings. */
export interface Fault {
  /** How a draughtsman comes to make it. */
  readonly because: string;
  /** Rules that are expected to speak up about it, the one it was made for first. */
  readonly rules: readonly string[];
  readonly draw: (board: Board) => void;
}

const set =
  (part: string, dimension: string, fields: Partial<Pick<Dimension, 'name' | 'value' | 'limits' | 'source'>>) =>
  (board: Board): void =>
    board.run(dimensionSet, { changes: [{ dimension: board.dimension(part, dimension), set: fields }] });

/** A box with a corner at the origin that lacks half of its lid. */
function openBox(x: number, y: number, z: number): CodedMesh {
  const vertices = Float64Array.from([0, z].flatMap((at) => [0, 0, at, x, 0, at, x, y, at, 0, y, at]));
  const sides = [0, 1, 2, 3].flatMap((a) => [a, (a + 1) % 4, 4 + ((a + 1) % 4), a, 4 + ((a + 1) % 4), 4 + a]);
  return { vertices, triangles: Uint32Array.from([0, 2, 1, 0, 3, 2, 4, 5, 6, ...sides]) };
}

/** What a disc of six metres brings with it in a shop of this size. */
const noMachineForIt: readonly string[] = [
  'does-not-fit-machine',
  'jaws-do-not-take',
  'no-room-for-tool-block',
  'swings-into-bed',
  'swings-into-saddle',
  'travel-too-short',
  'held-too-little',
  'power-above-motor',
  'speed-above-table',
  'speed-beyond-machine',
];

/** Takes away how a part is machined: of what is not drawn nobody has thought that far. */
function removePlans(board: Board, name: string): void {
  const part = board.part(name);
  board.run(setupRemove, { setups: setupsOf(board.build(), part).map(({ id }) => id) });
  board.run(operationRemove, { operations: operationsOf(board.build(), part).map(({ id }) => id) });
}

/** In the order of the sheets. */
export const faults: readonly Fault[] = [
  {
    because:
      'The crank line is given from the bench as well, for marking out, and two digits change places: 95 is meant.',
    rules: ['contradiction', 'hole-edge-distance', 'hole-misses', 'wall-thin'],
    draw: (board) => drawDimension(board, 'base', tie('crank line over bench', 'underside', 'crank line', '59'), 'Z'),
  },
  {
    because: 'A 3 was read as a 5 in the spacing of the bolts: 132 is meant.',
    rules: ['hole-breaks-out'],
    draw: set('base', 'bench bolt spacing', { value: '152' }),
  },
  {
    because: 'Two ribs more were meant, further in; they were copied and never moved.',
    rules: ['bodies-coincide'],
    draw: (board) =>
      drawBody(
        board,
        'base',
        add(
          'inner pedestal ribs',
          rib(
            'X',
            'right pedestal rib',
            'rib thickness',
            ['front pedestal rear', 'floor top'],
            ['rear pedestal front', 'floor top'],
            ['rear pedestal front', 'pedestal rib top'],
            ['front pedestal rear', 'pedestal rib top'],
          ),
          mirror('X', 'ram line'),
        ),
      ),
  },
  {
    because: 'A lug for the belt guard, on the corner as it stood before it was rounded.',
    rules: ['detached-piece'],
    draw: (board) =>
      drawBody(
        board,
        'base',
        add('guard lug', cylinder('Z', ['underside', 'bench lug top'], ['right side', 'rear face'], 'bench bolt hole')),
      ),
  },
  {
    because: 'The pedestals were to stand on raised seats; the seats stayed, inside the metal.',
    rules: ['body-without-effect'],
    draw: (board) =>
      drawBody(
        board,
        'base',
        add(
          'pedestal seats',
          cylinder('Z', ['floor top', 'column seat'], ['right pedestal rib', 'front cap line'], 'bench bolt hole'),
          mirror('X', 'ram line'),
        ),
      ),
  },
  {
    because: 'The pedestals are split on the crank line, and the split is drawn as a face of its own beside it.',
    rules: ['zero-distance'],
    draw(board) {
      board.run(
        stationAdd,
        { part: board.part('base'), axis: 'Z', set: { name: 'cap split', form: 'face' } },
        'base/Z/cap split',
      );
      drawDimension(board, 'base', tie('split height', 'crank line', 'cap split', '0'), 'Z');
    },
  },
  {
    because: 'The skirt stays as cast, but the limits of the machined seat beside it were copied along.',
    rules: ['limits-too-narrow'],
    draw: set('base', 'skirt height', { limits: '±0.1' }),
  },
  {
    because: 'The pattern maker asks for the height over all, and it is written beside the two that make it up.',
    rules: ['redundant-dimension'],
    draw: (board) => drawDimension(board, 'guide column', tie('height over all', 'foot', 'top face', '197'), 'Z'),
  },
  {
    because: 'The column was laid out from its oil hole, and that stayed the datum.',
    rules: ['no-flat-datum'],
    draw: (board) => board.run(datumSet, { station: board.station('guide column', 'Z', 'oil hole'), datum: true }),
  },
  {
    because: 'Thought in inches, because the foam board is, and written without the mark: half an inch is meant.',
    rules: ['out-of-scale', 'wall-thin'],
    draw: set('guide column', 'flange thickness', { value: '0.50' }),
  },
  {
    because: 'So small that nobody thinks of limits for it, and the general tolerance begins at half a millimetre.',
    rules: ['limits-missing'],
    draw: set('guide column', 'running clearance', { limits: '' }),
  },
  {
    because:
      'Bored first, because the mould has an arbor for it; so the foot comes last, on the mandrel, hard by the tailstock.',
    rules: ['no-room-for-tool-block'],
    draw: turnFootOnMandrel,
  },
  {
    because: 'The speed was carried over from the lathe; the drill turns no slower than 250.',
    rules: ['speed-beyond-machine'],
    draw: spotFaceTooSlowly,
  },
  {
    because: 'How far the top stands over the pivot depends on the plate, which was not settled; 27 is a guess.',
    rules: ['assumed-in-use'],
    draw: set('table', 'pivot depth', { source: 'assumed' }),
  },
  {
    because: 'Drawn deep enough for long work to lie on; nobody swung it about its trunnions.',
    rules: ['swings-into-bed'],
    draw: set('table', 'depth', { value: '190', source: 'drawn' }),
  },
  {
    because: 'The height of the pivots was to follow from the table, and then nobody wrote it down.',
    rules: ['station-not-placed', 'body-not-placed', 'setup-not-judged', 'operation-not-said'],
    draw: (board) => board.run(dimensionRemove, { dimensions: [board.dimension('trunnion bracket', 'pivot height')] }),
  },
  {
    because:
      'The boss is the easiest thing to hold it by, and the rest of the arm was left out of the sketch of the set-up.',
    rules: ['swings-into-saddle', 'tool-does-not-reach', 'setup-at-the-limit', 'out-of-balance'],
    draw: boreArmOnLathe,
  },
  {
    because: 'Every radius that the pattern maker fills with wax is called a fillet, the large one at the elbow too.',
    rules: ['name-clash'],
    draw: set('over-arm', 'elbow radius', { name: 'fillet' }),
  },
  {
    because: 'Whatever the scrap bin gives; the founder calls it by where it came from.',
    rules: ['material-unknown-density', 'wall-minimum-unknown', 'metal-not-known', 'operation-not-said'],
    draw: (board) => board.run(partSet, { part: board.part('over-arm'), set: { material: 'melted-down pistons' } }),
  },
  {
    because: 'Two digits change places, and the oil hole is drilled over the boss: 25 is meant.',
    rules: ['hole-misses'],
    draw: set('over-arm', 'oil hole height', { value: '52' }),
  },
  {
    because: 'The oil cup came as a solid from somewhere else, and one facet of it was lost on the way.',
    rules: ['body-not-taken'],
    draw: (board) =>
      board.run(
        solidImport,
        {
          part: board.part('over-arm'),
          solid: { name: 'oil cup', fileName: 'oil cup.stl', unit: 'mm', ...encodeMesh(openBox(12, 12, 8)), note: '' },
          origin: [
            board.station('over-arm', 'X', 'rod line'),
            board.station('over-arm', 'Y', 'rod line'),
            board.station('over-arm', 'Z', 'boss upper face'),
          ],
          turn: ['+X', '+Y', '+Z'],
          source: 'assumed',
        },
        'over-arm/oil cup',
      ),
  },
  {
    because: 'The belt groove waits for the motor and its pulley to be found.',
    rules: [
      'dimension-without-value',
      'station-not-placed',
      'body-not-placed',
      'verdict-not-known',
      'operation-not-said',
    ],
    draw: set('flywheel', 'groove diameter', { value: '' }),
  },
  {
    because: 'A class from the fits chart instead of the figures that the chart gives for it.',
    rules: ['limits-unreadable'],
    draw: set('flywheel', 'bore', { limits: 'H7' }),
  },
  {
    because: 'How deep is left to whoever balances the wheel, so the hole begins and ends at one face.',
    rules: ['body-without-size', 'not-machined'],
    draw: (board) =>
      drawBody(
        board,
        'flywheel',
        cut('balance hole', hole('Y', ['rim rear', 'rim rear'], ['axis', 'hub top'], 'grub screw')),
      ),
  },
  {
    because: 'Put down as a reminder to ask, never as a figure.',
    rules: ['value-unreadable', 'body-not-placed', 'setup-not-judged'],
    draw: set('bearing cap', 'fillet', { value: 'abt 3' }),
  },
  {
    because: 'Spelt as he says it.',
    rules: ['unknown-name', 'station-not-placed', 'body-not-placed', 'verdict-not-known', 'operation-not-said'],
    draw: set('yoke', 'slot width', { value: 'diametre of "crank pin" + 0.04 mm' }),
  },
  {
    because: 'Opened with the compass until it looked right; the body is only 36 deep.',
    rules: ['body-shape', 'setup-not-judged'],
    draw: set('yoke', 'end radius', { value: '20' }),
  },
  {
    because: 'Whether the yoke is bronze or zinc alloy was left until the scrap is sorted.',
    rules: ['part-without-material', 'balance-not-known', 'metal-not-known', 'operation-not-said'],
    draw: (board) => board.run(partSet, { part: board.part('yoke'), set: { material: '' } }),
  },
  {
    because: 'The socket is measured off the ram already sketched, while the ram is cut to suit the socket.',
    rules: ['formula-ring', 'station-not-placed', 'body-not-placed', 'setup-not-judged', 'operation-not-said'],
    draw: set('yoke', 'socket floor', { value: '"length" of ram - 123 mm' }),
  },
  {
    because: 'The over-all length is read off the inch scale and written without its mark: 5.335 in is 135.5 mm.',
    rules: ['contradiction'],
    draw: (board) => drawDimension(board, 'crankshaft', tie('length over all', 'front end', 'rear end', '5.335'), 'Y'),
  },
  {
    because: 'The keyway goes down into the shaft, so its depth got a minus.',
    rules: ['size-not-positive', 'hole-misses'],
    draw: set('crankshaft', 'keyway depth', { value: '-2.5' }),
  },
  {
    because: 'Moved up to save a holding, while that end of the shaft is still bright bar.',
    rules: ['operation-order'],
    draw: millKeywayEarly,
  },
  {
    because: 'Two parts were squeezed on one sheet and took the same number.',
    rules: ['part-clash'],
    draw: (board) => board.run(partSet, { part: board.part('crank disc'), set: { number: 'BFM-10' } }),
  },
  {
    because: 'The point of 60.00 did not come out on the copy.',
    rules: ['mass-absurd', 'limits-missing', ...noMachineForIt],
    draw: set('crank disc', 'outside', { value: '6000' }),
  },
  {
    because: 'Limits in tenths of a thou by the feel of a finished pin; no lathe of this shop holds them.',
    rules: ['limits-too-narrow'],
    draw: set('crank pin', 'diameter', { limits: '0/-0.0001' }),
  },
  {
    because: 'Worked out for the old, longer stroke and used nowhere since.',
    rules: ['unused-dimension'],
    draw: (board) => drawDimension(board, 'crank pin', length('bearing length', '"side gap" + 18 mm', derived)),
  },
  {
    because: 'The rod was drawn without choosing the end that everything is measured from.',
    rules: ['axis-without-datum', 'body-not-placed', 'setup-not-judged', 'operation-not-said'],
    draw: (board) => board.run(datumSet, { station: board.station('upper rod', 'Z', 'lower end'), datum: false }),
  },
  {
    because: 'Dimensioned from an old pin in the hand, and never drawn.',
    rules: ['part-without-bodies'],
    draw(board) {
      removePlans(board, 'table pivot');
      const part = board.part('table pivot');
      board.run(bodyRemove, { bodies: bodiesOf(board.build(), part).map(({ id }) => id) });
    },
  },
  {
    because: 'Small enough to be left for a rainy day: it is in the list, but nothing of it is drawn.',
    rules: ['part-not-drawn'],
    draw(board) {
      removePlans(board, 'clamp screw');
      const part = board.part('clamp screw');
      board.run(bodyRemove, { bodies: bodiesOf(board.build(), part).map(({ id }) => id) });
      const dimensions = dimensionsOf(board.build(), part).map(({ id }) => id);
      board.run(dimensionRemove, { dimensions });
      board.run(stationRemove, { stations: stationsOf(board.build(), part).map(({ id }) => id) });
    },
  },
];
