/**
 * Which room may import which. A test plants a breach of every rule here and sees it caught.
 * @typedef {object} LayerRule
 * @property {string} name
 * @property {string} why said to whoever breaks it
 * @property {RegExp} from the files that the rule is about
 * @property {RegExp} [but] files that it leaves alone
 * @property {(to: string, from: string) => boolean} forbids
 */

/** Rooms of src/shared in the order in which data flows; each may import only itself and those before it. */
const rooms = [
  'base',
  'quantity',
  'formula',
  'tables',
  'build',
  'drawing',
  'solid',
  'sheet',
  'plan',
  'pattern',
  'foundry',
  'machining',
  'fitting',
  'erecting',
  'check',
  'ipc',
];

/** Tables are data and look-ups: everything from quantities upward may read them. */
const alsoReadable = { quantity: ['tables'], formula: ['tables'] };

const test = /\.test\.tsx?$/;

/** @param {string} text @param {readonly string[]} starts */
const startsWithAny = (text, starts) => starts.some((start) => text.startsWith(start));

const isFile = (to) =>
  to.startsWith('src/') || to.startsWith('tests/') || to.startsWith('scripts/') || to.startsWith('bench/');

/** @returns {readonly LayerRule[]} one per room */
const roomRules = rooms.map((room, place) => {
  const allowed = [...rooms.slice(0, place + 1), ...(alsoReadable[room] ?? [])];
  return {
    name: `room-${room}`,
    why: `src/shared/${room} may import only: ${allowed.join(', ')}.`,
    from: new RegExp(`^src/shared/${room}/`),
    but: test,
    forbids: (to) =>
      to.startsWith('src/shared/') &&
      !startsWithAny(
        to,
        allowed.map((other) => `src/shared/${other}/`),
      ),
  };
});

/** @param {string} name @param {string} only the one folder that may @param {readonly string[]} packages */
const keptTo = (name, only, packages) => ({
  name,
  why: `Only ${only} knows ${packages[0]}.`,
  from: /^src\//,
  but: new RegExp(`^${only}(/|[-.])|${test.source}`),
  forbids: (to) => packages.some((one) => to === `package:${one}`),
});

/** Packages that one room of the engine may have; the rules below name the room. */
const ofOneRoom = ['papaparse', 'fflate', 'manifold-3d'];

const departmentOf = (file) => /^src\/renderer\/(departments\/[^/]+\/|works\/)/.exec(file)?.[1];

/** @type {readonly LayerRule[]} */
export const rules = [
  {
    name: 'there',
    why: 'The file that is imported is not there. Imports of ours are relative and carry their ending.',
    from: /^src\//,
    forbids: (to) => to.startsWith('missing:'),
  },
  {
    name: 'known-room',
    why: 'A new room of src/shared needs its place in the order of rooms (scripts/layers/rules.mjs).',
    from: /^src\/shared\//,
    but: new RegExp(`^src/shared/((${rooms.join('|')})/|[^/]+\\.d\\.ts$)`),
    forbids: () => true,
  },
  ...roomRules,
  {
    name: 'shared-is-closed',
    why: 'The engine imports nothing of ours from outside src/shared.',
    from: /^src\/shared\//,
    but: test,
    forbids: (to) => isFile(to) && !to.startsWith('src/shared/'),
  },
  {
    name: 'shared-is-pure',
    why: 'The engine knows no Node, no Electron, no React; of packages only zod and those that one room may have.',
    from: /^src\/shared\//,
    but: test,
    forbids: (to) =>
      to.startsWith('node:') ||
      (to.startsWith('package:') && !['package:zod', ...ofOneRoom.map((name) => `package:${name}`)].includes(to)),
  },
  keptTo('papaparse-only-in-csv', 'src/shared/build/csv', ['papaparse']),
  keptTo('zip-only-in-formats', 'src/shared/solid/formats', ['fflate']),
  keptTo('kernel-only-in-manifold', 'src/shared/solid/manifold', ['manifold-3d']),
  keptTo('step-only-in-solids', 'src/main/files/solids', ['occt-import-js']),
  keptTo('three-only-in-view', 'src/renderer/view', ['three']),
  keptTo('store-only', 'src/main/store', ['sqlite3', 'kysely']),
  {
    name: 'renderer-not-main',
    why: 'The window speaks to the main process only through the contract in src/shared/ipc.',
    from: /^src\/renderer\//,
    forbids: (to) => to.startsWith('src/main/'),
  },
  {
    name: 'main-not-renderer',
    why: 'The main process knows the window only through the contract in src/shared/ipc.',
    from: /^src\/main\//,
    forbids: (to) => to.startsWith('src/renderer/'),
  },
  {
    name: 'renderer-no-node',
    why: 'The window has no Node and no Electron.',
    from: /^src\/renderer\//,
    but: test,
    forbids: (to) => to.startsWith('node:') || to === 'package:electron',
  },
  {
    name: 'main-no-page',
    why: 'The main process draws nothing.',
    from: /^src\/main\//,
    forbids: (to) => to === 'package:react' || to === 'package:react-dom',
  },
  {
    name: 'plain-node',
    why: 'The store and the command line run without Electron.',
    from: /^src\/main\/(cli|store)\//,
    but: test,
    forbids: (to) =>
      to === 'package:electron' ||
      startsWithAny(to, ['src/main/app/', 'src/main/menu/', 'src/main/ipc/', 'src/main/print/', 'src/main/preload']),
  },
  {
    name: 'preload-is-thin',
    why: 'What runs beside the page is the contract and nothing else.',
    from: /^src\/main\/preload\.ts$/,
    forbids: (to) => to !== 'package:electron' && !to.startsWith('src/shared/ipc/'),
  },
  {
    name: 'departments-apart',
    why: 'A department of the window does not reach into another; what two share lies in the kit or the engine.',
    from: /^src\/renderer\/(departments\/[^/]+|works)\//,
    forbids: (to, from) => departmentOf(to) !== undefined && departmentOf(to) !== departmentOf(from),
  },
  {
    name: 'kit-is-plain',
    why: 'The widgets know nothing of what is shown in them.',
    from: /^src\/renderer\/kit\//,
    but: test,
    forbids: (to) => to.startsWith('src/renderer/') && !to.startsWith('src/renderer/kit/'),
  },
  {
    name: 'engine-below-screens',
    why: 'The worker and its client know nothing of the screens.',
    from: /^src\/renderer\/engine\//,
    but: test,
    forbids: (to) =>
      startsWithAny(
        to,
        ['app/', 'departments/', 'works/', 'kit/', 'view/', 'findings/', 'materials/', 'parts/'].map(
          (folder) => `src/renderer/${folder}`,
        ),
      ),
  },
  {
    name: 'rules-apart',
    why: 'A rule does not import another; what two share becomes a fact of the department.',
    from: /^src\/shared\/check\/rules\//,
    but: test,
    forbids: (to) => to.startsWith('src/shared/check/rules/'),
  },
  {
    name: 'no-tests-in-the-program',
    why: 'The program does not import its tests.',
    from: /^src\//,
    but: test,
    forbids: (to) => to.startsWith('tests/') || test.test(to),
  },
];

export const RING = { name: 'no-rings', why: 'Files that need each other are one thought cut in the wrong place.' };
