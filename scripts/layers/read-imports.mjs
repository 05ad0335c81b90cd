import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import path from 'node:path';
import { parseSync } from 'oxc-parser';

/**
 * What a file imports, in one of four forms:
 * - `src/…/x.ts` a file of ours (or the folder of an `import.meta.glob`, ending in a slash);
 * - `package:zod` a package, whatever part of it;
 * - `node:fs` a module of Node's own;
 * - `missing:./x.ts` something of ours that is not there.
 * @typedef {{ readonly from: string, readonly to: string, readonly line: number }} Import
 */

/** @param {unknown} node @param {(node: any) => void} see */
function walk(node, see) {
  if (Array.isArray(node)) {
    for (const item of node) walk(item, see);
  } else if (typeof node === 'object' && node !== null) {
    if (typeof node.type === 'string') see(node);
    for (const value of Object.values(node)) if (typeof value === 'object') walk(value, see);
  }
}

const isMetaGlob = ({ callee }) =>
  callee?.type === 'MemberExpression' && callee.object?.type === 'MetaProperty' && callee.property?.name === 'glob';

const isAddressBesideFile = ({ callee, arguments: args }) =>
  callee?.name === 'URL' && args?.[1]?.object?.type === 'MetaProperty' && typeof args[0]?.value === 'string';

/** @param {string} file named in complaints @param {string} text @returns {{ to: string, at: number }[]} as written */
function requestsOf(file, text) {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file} cannot be read: ${errors[0]?.message}`);
  const found = [];
  const take = (source) => {
    if (typeof source?.value === 'string') found.push({ to: source.value, at: source.start });
  };
  walk(program, (node) => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'ExportNamedDeclaration':
      case 'ImportExpression':
      case 'TSImportType':
        take(node.source);
        break;
      case 'CallExpression':
        if (isMetaGlob(node)) {
          const [patterns] = node.arguments;
          for (const pattern of patterns?.type === 'ArrayExpression' ? patterns.elements : [patterns]) {
            // The folder before the first wildcard says where a glob reaches; patterns after `!` only take away.
            const folder = pattern?.value?.replace(/[^/]*\*.*$/, '');
            if (folder !== undefined && !folder.startsWith('!')) found.push({ to: folder, at: pattern.start });
          }
        } else if (node.callee?.name === 'require') take(node.arguments[0]);
        break;
      case 'NewExpression':
        if (isAddressBesideFile(node)) take(node.arguments[0]);
        break;
    }
  });
  return found;
}

/** @param {string} request @returns {string} the package's name without the path inside it */
const packageOf = (request) =>
  request
    .split('/')
    .slice(0, request.startsWith('@') ? 2 : 1)
    .join('/');

/** @param {string} root @param {string} from @param {string} request */
function resolve(root, from, request) {
  if (isBuiltin(request)) return request.startsWith('node:') ? request : `node:${request}`;
  if (!request.startsWith('.')) return `package:${packageOf(request)}`;
  const [bare = ''] = request.split('?');
  const target = path.posix.join(path.posix.dirname(from), bare);
  // Imports carry their endings, so what is written is what is meant; the bundler's `?worker` and the like come off.
  return existsSync(path.join(root, target)) || bare.endsWith('/') ? target : `missing:${request}`;
}

/** @param {string} root @returns {string[]} the source files of src, as `src/…` with forward slashes */
const sourceFiles = (root) =>
  readdirSync(path.join(root, 'src'), { recursive: true })
    .map((name) => `src/${String(name).split(path.sep).join('/')}`)
    .filter((name) => /\.tsx?$/.test(name))
    .sort();

/**
 * Reads every import of every source file.
 * @param {string} root the folder that holds src
 * @returns {{ files: readonly string[], imports: readonly Import[] }}
 */
export function readImports(root) {
  const files = sourceFiles(root);
  const imports = files.flatMap((from) => {
    const text = readFileSync(path.join(root, from), 'utf8');
    return requestsOf(from, text).map(({ to, at }) => ({
      from,
      to: resolve(root, from, to),
      line: text.slice(0, at).split('\n').length,
    }));
  });
  return { files, imports };
}
