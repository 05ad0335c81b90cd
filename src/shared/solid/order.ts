import { type Box, overlap } from './solid-leaf.ts';

/** What a body does, and where. */
export interface Acting extends Box {
  readonly adds: boolean;
}

/**
 * Bodies gathered into runs that only add or only take, the runs to act one after another; within a run the order does not
 * matter. It comes to the same as the order of the list: only a body that adds and one that takes can get into each other's
 * way, and those whose boxes meet keep their order. A drilled plate has two runs however its bosses and holes are listed.
 */
export function runsOf<T extends Acting>(bodies: readonly T[]): readonly (readonly T[])[] {
  // Runs that add have even places, those that take odd ones: what stands first must add.
  const places: number[] = [];
  const runs: T[][] = [];
  bodies.forEach((body, i) => {
    let place = body.adds ? 0 : 1;
    for (let j = 0; j < i; j++) {
      if (places[j]! >= place && bodies[j]!.adds !== body.adds && overlap(bodies[j]!, body)) place = places[j]! + 1;
    }
    places.push(place);
    while (runs.length <= place) runs.push([]);
    runs[place]!.push(body);
  });
  return runs.filter((run) => run.length > 0);
}
