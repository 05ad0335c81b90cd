import { describe, expect, test } from 'vitest';
import { partId, sketch } from '../../../../tests/support/sketch-build.ts';
import type { BuildDiff } from '../../../shared/build/diff.ts';
import type { Dimension } from '../../../shared/build/dimension.ts';
import type { Build } from '../../../shared/build/records.ts';
import { createWorks } from '../../../shared/check/create-works.ts';
import { createBuildIndex } from '../build-index.ts';
import { createMeasuring } from '../measuring/measuring.ts';
import type { Scene, View } from '../view.ts';
import { linksView } from './links.ts';
import { openedView } from './opened.ts';
import { reachView } from './reach.ts';

const sceneOf = (build: Build): Scene => {
  const works = createWorks(build);
  const never = (): never => {
    throw new Error('Links measure nothing.');
  };
  const measuring = createMeasuring(never, { measured: never, drawn: never, broken: never });
  return { works, index: createBuildIndex(build), solids: works.solids, measuring, kernel: 'failed' };
};

/** Keeps a view over a scene as the worker does. */
function watch<P, M>(scene: Scene, view: View<P, M>, params: P) {
  const compute = view.open('');
  let model = compute(scene, params, undefined);
  return {
    model: () => model,
    edit(diff: BuildDiff): M {
      const change = scene.works.update(diff);
      scene.index.update(diff);
      model = compute(scene, params, { ...change, diff });
      return model;
    },
  };
}

/** A column whose bore three other parts hang on, straight or through one another. */
const machine = () =>
  sketch()
    .part('column')
    .stations('foot', 'guide', 'head')
    .between('rise', 'foot', 'guide', '100')
    .between('reach', 'guide', 'head', 'rise / 2')
    .size('bore', 'diameter', '20')
    .part('ram')
    .size('shaft', 'diameter', 'bore of column')
    .size('length', 'length', 'rise of column + bore of column')
    .part('yoke')
    .stations('left', 'right')
    .between('span', 'left', 'right', 'shaft of ram + 10 mm')
    .part('base')
    .size('slot', 'length', '12');

const dimension = (build: Build, name: string) => build.get(`dimension:${name}` as never) as Dimension;
const rewrite = (build: Build, name: string, value: string): BuildDiff => {
  const from = dimension(build, name);
  return { added: [], removed: [], updated: [[from, { ...from, value }]] };
};
const short = (links: ReturnType<ReturnType<typeof watchLinks>['model']>) =>
  links.map(({ from, to, pairs }) => [from, to, pairs.map(({ name, byName }) => `${name} → ${byName}`)]);
const watchLinks = (scene: Scene) => watch(scene, linksView, null);

describe('links between parts', () => {
  test('are what formulas name of other parts, with names', () => {
    expect(short(watchLinks(sceneOf(machine().build())).model())).toEqual([
      ['part:column', 'part:ram', ['bore → shaft', 'rise → length', 'bore → length']],
      ['part:ram', 'part:yoke', ['shaft → span']],
    ]);
  });

  test('follow an edit, and what it does not touch keeps its identity', () => {
    const build = machine().build();
    const scene = sceneOf(build);
    const links = watchLinks(scene);
    const [columnRam, ramYoke] = links.model();
    const before = links.model();
    expect(links.edit(rewrite(build, 'rise', '110'))).toBe(before);
    const after = links.edit(rewrite(scene.works.build, 'slot', 'span of yoke'));
    expect(short(after).at(-1)).toEqual(['part:yoke', 'part:base', ['span → slot']]);
    expect(after[0]).toBe(columnRam);
    expect(after[1]).toBe(ramYoke);
    expect(short(links.edit(rewrite(scene.works.build, 'slot', '3')))).toEqual(short(before));
  });

  test('a renamed dimension is renamed on the link', () => {
    const build = machine().build();
    const scene = sceneOf(build);
    const links = watchLinks(scene);
    const bore = dimension(build, 'bore');
    const named = ['shaft', 'length'].map((name) => dimension(build, name));
    const after = links.edit({
      added: [],
      removed: [],
      updated: [
        [bore, { ...bore, name: 'hole' }],
        ...named.map((from) => [from, { ...from, value: from.value.replaceAll('bore', 'hole') }] as const),
      ],
    });
    expect(short(after)[0]?.[2]).toEqual(['hole → shaft', 'rise → length', 'hole → length']);
  });

  test('a name that the other part lacks is kept as a link that leads nowhere, and counted as a stop', () => {
    const build = machine().size('hook', 'length', 'boar of column + rise of column').build();
    const links = watchLinks(sceneOf(build)).model();
    const broken = links.find(({ to }) => to === partId('base'));
    expect(broken?.from).toBe('part:column');
    expect(broken?.pairs.map(({ dimension, name, byName }) => [dimension, name, byName])).toEqual([
      ['dimension:rise', 'rise', 'hook'],
      [undefined, 'boar', 'hook'],
    ]);
    expect(broken?.marks.stop).toBe(1);
    expect(links.find(({ to }) => to === partId('ram'))?.marks.stop).toBe(0);
  });

  test('a part that goes takes its links along; one that comes mends those that sought it', () => {
    const build = machine().build();
    const scene = sceneOf(build);
    const links = watchLinks(scene);
    const ram = [...build.values()].filter((r) => r.id === partId('ram') || ('part' in r && r.part === partId('ram')));
    expect(links.edit({ added: [], removed: ram, updated: [] })).toEqual([]);
    expect(short(links.edit({ added: ram, removed: [], updated: [] }))).toHaveLength(2);
  });

  test('says after any edits what it says of the same build afresh', () => {
    const build = machine().build();
    const scene = sceneOf(build);
    const links = watchLinks(scene);
    for (const [name, value] of [
      ['span', 'lenght of ram'],
      ['shaft', 'slot of base'],
      ['slot', '1 +'],
      ['span', 'length of ram + bore of column'],
      ['slot', 'span of yoke'],
    ] as const) {
      links.edit(rewrite(scene.works.build, name, value));
      expect(links.model()).toEqual(watchLinks(sceneOf(scene.works.build)).model());
    }
  });
});

describe('how far something reaches', () => {
  const reach = (id: string, way: 'touches' | 'hangs on') =>
    watch(sceneOf(machine().build()), reachView, { id: id as never, way }).model();

  test('a dimension touches what names it, through other parts, and the stations placed by those', () => {
    expect(reach('dimension:bore', 'touches')).toEqual({
      id: 'dimension:bore',
      way: 'touches',
      parts: ['part:column', 'part:ram', 'part:yoke'],
      ids: ['dimension:bore', 'dimension:length', 'dimension:shaft', 'dimension:span', 'station:right'],
      links: ['part:column>part:ram', 'part:ram>part:yoke'],
      sentence: 'bore of column touches 3 dimensions and 1 station in 2 other parts (ram 2, yoke 2).',
    });
  });

  test('a dimension hangs on what it names', () => {
    expect(reach('dimension:span', 'hangs on')?.sentence).toBe(
      'span of yoke hangs on 2 dimensions in 2 other parts (column 1, ram 1).',
    );
    expect(reach('dimension:slot', 'hangs on')?.sentence).toBe(
      'slot of base hangs on nothing: its value is written out.',
    );
  });

  test('a station hangs on its chain and carries those placed from it', () => {
    expect(reach('station:guide', 'hangs on')?.ids).toEqual(['station:guide', 'dimension:rise', 'station:foot']);
    expect(reach('station:guide', 'touches')?.sentence).toBe('guide of column touches 1 station, all in column.');
  });

  test('a part reaches other parts; its own stations and dimensions are not counted', () => {
    expect(reach('part:column', 'touches')?.sentence).toBe(
      'column touches 3 dimensions and 1 station in 2 other parts (ram 2, yoke 2).',
    );
    expect(reach('part:yoke', 'hangs on')).toMatchObject({ parts: ['part:column', 'part:ram', 'part:yoke'] });
    expect(reach('part:base', 'touches')?.sentence).toBe(
      'base touches no other part: no formula elsewhere names its dimensions.',
    );
  });

  test('what is not there reaches nothing', () => expect(reach('dimension:gone', 'touches')).toBeUndefined());
});

describe('a part opened', () => {
  test('shows its axes and sizes, each line with what it is tied to', () => {
    const { model } = watch(sceneOf(machine().build()), openedView, { parts: [partId('column'), partId('gone')] });
    expect(Object.keys(model())).toEqual(['part:column']);
    const [along, sizes] = model()['part:column']!.groups;
    expect(along?.stations.map(({ name, value }) => [name, value])).toEqual([
      ['foot', '0 mm'],
      ['guide', '100 mm'],
      ['head', '150 mm'],
    ]);
    expect(along?.dimensions).toMatchObject([
      { name: 'rise', value: '100 mm', places: 'station:guide' },
      { name: 'reach', value: '50 mm', places: 'station:head', hangsOn: [{ name: 'rise' }] },
    ]);
    expect(along?.stations[1]).toMatchObject({
      touches: [{ name: 'head' }],
      hangsOn: [{ name: 'rise' }, { name: 'foot' }],
    });
    expect(sizes).toMatchObject({ axis: undefined, stations: [] });
    expect(sizes?.dimensions[0]?.touches.map(({ name }) => name).sort()).toEqual(['length of ram', 'shaft of ram']);
  });
});
