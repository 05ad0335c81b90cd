/** Sums that carry the rounding of each addition along (Neumaier's form of compensated summation). */
export interface Sums {
  add(index: number, value: number): void;
  of(index: number): number;
}

export function createSums(count: number): Sums {
  const sums = new Float64Array(count);
  const lost = new Float64Array(count);
  return {
    add: (index, value) => {
      const before = sums[index]!;
      const after = before + value;
      sums[index] = after;
      lost[index]! += Math.abs(before) >= Math.abs(value) ? before - after + value : value - after + before;
    },
    of: (index) => sums[index]! + lost[index]!,
  };
}
