/**
 * Finds the rings of files that need each other: the strongly connected components of more than one file, and files
 * that import themselves (Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1972).
 * @param {readonly string[]} files
 * @param {readonly { readonly from: string, readonly to: string }[]} imports
 * @returns {string[][]}
 */
export function findRings(files, imports) {
  /** @type {Map<string, string[]>} */
  const next = new Map(files.map((file) => [file, []]));
  for (const { from, to } of imports) if (next.has(to)) next.get(from)?.push(to);

  /** @type {Map<string, { index: number, low: number, onStack: boolean }>} */
  const marks = new Map();
  const stack = [];
  const rings = [];
  /** @param {string} file */
  const visit = (file) => {
    const mark = { index: marks.size, low: marks.size, onStack: true };
    marks.set(file, mark);
    stack.push(file);
    for (const target of next.get(file) ?? []) {
      const seen = marks.get(target);
      if (seen === undefined) mark.low = Math.min(mark.low, visit(target).low);
      else if (seen.onStack) mark.low = Math.min(mark.low, seen.index);
    }
    if (mark.low === mark.index) {
      const ring = stack.splice(stack.indexOf(file));
      for (const member of ring) marks.get(member).onStack = false;
      if (ring.length > 1 || next.get(file)?.includes(file)) rings.push(ring);
    }
    return mark;
  };
  for (const file of files) if (!marks.has(file)) visit(file);
  return rings;
}
