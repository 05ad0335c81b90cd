/** Whether three signed axes are what a turn in right angles makes of X, Y, Z: each once, and right-handed. */
export function isProperTurn(turn: readonly string[]): boolean {
  const columns = turn.map((axis) => ({ at: 'XYZ'.indexOf(axis[1]!), sign: axis[0] === '-' ? -1 : 1 }));
  const [a, b, c] = columns.map(({ at }) => at) as [number, number, number];
  if (new Set([a, b, c]).size < 3) return false;
  const even = (b - a + 3) % 3 === 1;
  return columns.reduce((product, { sign }) => product * sign, even ? 1 : -1) > 0;
}
