import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import type { DimensionId, PartId, StationId } from '../../src/shared/base/ids.ts';
import { createDrawing } from '../../src/shared/drawing/create-drawing.ts';
import { anyHistory, buildFrom } from '../support/random-build.ts';

vi.setConfig({ testTimeout: 120_000 });

test('what touches what, and what hangs on what, is what following every arrow finds', () => {
  let reached = 0;
  fc.assert(
    fc.property(anyHistory, ({ start }) => {
      const build = buildFrom(start);
      const drawing = createDrawing(build);
      const records = [...build.values()];
      const dimensions = records.filter(({ kind }) => kind === 'dimension').map(({ id }) => id as DimensionId);
      const parts = new Set(records.flatMap((record) => (record.kind === 'station' ? [record.part as PartId] : [])));
      const placed = [...parts].flatMap((part) => drawing.axesOf(part).flatMap(({ stations }) => stations));
      // Everything that a dimension names, followed as often as there are dimensions.
      const named = new Map(dimensions.map((id) => [id, new Set(drawing.dimension(id).references)]));
      for (const _ of dimensions) {
        for (const set of named.values()) for (const id of [...set]) for (const next of named.get(id)!) set.add(next);
      }
      const onPath = new Map(
        placed.map(({ id, path }) => [id, new Set(path.flatMap((edge) => [edge, ...named.get(edge)!]))]),
      );
      for (const id of dimensions) {
        expect(drawing.hangsOn(id)).toEqual({
          dimensions: [...named.get(id)!].filter((other) => other !== id).sort(),
          stations: [],
        });
        expect(drawing.touches(id)).toEqual({
          dimensions: dimensions.filter((other) => other !== id && named.get(other)!.has(id)).sort(),
          stations: placed.flatMap((station) => (onPath.get(station.id)!.has(id) ? [station.id] : [])).sort(),
        });
        reached += named.get(id)!.size;
      }
      for (const { id, path } of placed) {
        expect(drawing.hangsOn(id as StationId).dimensions).toEqual([...onPath.get(id)!].sort());
        expect(drawing.hangsOn(id as StationId).stations).toHaveLength(path.length);
      }
    }),
    { numRuns: 300 },
  );
  expect(reached).toBeGreaterThan(50);
});
