import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { apply, invert } from '../../src/shared/build/diff.ts';
import type { Build } from '../../src/shared/build/records.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import type { Drawing } from '../../src/shared/drawing/drawing.ts';
import { anyHistory, buildFrom, diffOf } from '../support/random-build.ts';

interface Answers {
  readonly dimensions: ReadonlyMap<DimensionId, unknown>;
  readonly axes: ReadonlyMap<PartId, readonly unknown[]>;
}

const idsOf = <I extends string>(build: Build, kind: string): I[] =>
  [...build.values()].filter((record) => record.kind === kind).map((record) => record.id as string as I);

function handedOut(drawing: Drawing, build: Build): Answers {
  return {
    dimensions: new Map(idsOf<DimensionId>(build, 'dimension').map((id) => [id, drawing.dimension(id)])),
    axes: new Map(idsOf<PartId>(build, 'part').map((id) => [id, drawing.axesOf(id)])),
  };
}

function otherAnswers(drawing: Drawing, build: Build): unknown {
  const dimensions = idsOf<DimensionId>(build, 'dimension');
  const stations = idsOf<StationId>(build, 'station');
  return {
    rings: drawing.rings(),
    namedBy: dimensions.map((id) => drawing.namedBy(id)),
    touches: dimensions.map((id) => drawing.touches(id)),
    hangsOn: [...dimensions, ...stations].map((id) => drawing.hangsOn(id)),
    distances: stations.map((from) => stations.map((to) => drawing.distance(from, to))),
  };
}

// Random histories take their time on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

test('after any changes the graph answers as a fresh one does, and keeps the identity of what did not change', () => {
  fc.assert(
    fc.property(anyHistory, fc.boolean(), ({ start, steps }, undoes) => {
      let build = buildFrom(start);
      const drawing = createDrawing(build);
      for (const wishes of steps) {
        const before = handedOut(drawing, build);
        const diff = diffOf(build, wishes);
        for (const step of undoes ? [diff, invert(diff)] : [diff]) {
          build = apply(build, step);
          const change = drawing.update(step);
          const fresh = createDrawing(build);
          const now = handedOut(drawing, build);
          const cold = handedOut(fresh, build);
          expect(now).toEqual(cold);
          expect(otherAnswers(drawing, build)).toEqual(otherAnswers(fresh, build));
          if (undoes) continue;
          const changed = new Set(change.dimensions);
          for (const [id, answer] of now.dimensions) {
            if (!before.dimensions.has(id)) continue;
            const same = JSON.stringify(before.dimensions.get(id)) === JSON.stringify(answer);
            expect(before.dimensions.get(id) === answer, `identity of ${id}`).toBe(same);
            expect(changed.has(id), `change of ${id}`).toBe(!same);
          }
          for (const [id, answer] of now.axes) {
            const same = JSON.stringify(before.axes.get(id) ?? []) === JSON.stringify(answer);
            if (before.axes.has(id)) expect(before.axes.get(id) === answer, `identity of the axes of ${id}`).toBe(same);
          }
        }
      }
    }),
    { numRuns: 150 },
  );
});

test('it does so when nobody looked at it between the changes', () => {
  fc.assert(
    fc.property(anyHistory, ({ start, steps }) => {
      let build = buildFrom(start);
      const drawing = createDrawing(build);
      for (const wishes of steps) {
        const diff = diffOf(build, wishes);
        build = apply(build, diff);
        drawing.update(diff);
      }
      const fresh = createDrawing(build);
      expect(handedOut(drawing, build)).toEqual(handedOut(fresh, build));
      expect(otherAnswers(drawing, build)).toEqual(otherAnswers(fresh, build));
    }),
    { numRuns: 150 },
  );
});

test('the order in which records come makes no difference', () => {
  fc.assert(
    fc.property(anyHistory, ({ start }) => {
      const build = buildFrom(start);
      const turned: Build = new Map([...build].reverse());
      const one = createDrawing(build);
      const other = createDrawing(turned);
      expect(handedOut(other, build)).toEqual(handedOut(one, build));
      expect(otherAnswers(other, build)).toEqual(otherAnswers(one, build));
    }),
    { numRuns: 150 },
  );
});
