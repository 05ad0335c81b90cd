import { bodyId, holeShape, notPlaced, placedBody, solidFact } from '../../../../../tests/support/body-facts.ts';
import { dimensionId, fact, part, size } from '../../../../../tests/support/facts.ts';
import { testRule } from '../../../../../tests/support/rule-tester.ts';
import { STAY, shiftAlong } from '../../../solid/moves.ts';
import type { HoleEdge } from '../../../solid/solids.ts';
import rule from './hole-edge-distance.ts';

const edge = (body: string, centreMm: number, radius = 5): HoleEdge => ({
  body: bodyId(body),
  copy: 0,
  beside: bodyId('plate'),
  diameterMm: 2 * radius,
  centreMm,
  metalMm: Math.max(0, centreMm - radius),
  at: [0, 30, 6],
});
const facts = {
  part: part('column'),
  dimensions: [
    fact('drill', 10, { measure: size('diameter') }),
    fact('half', 5, { measure: size('radius') }),
    fact('tap', 10, { measure: size('thread'), text: 'M10' }),
    fact('wide', 30, { measure: size('diameter') }),
  ],
  bodies: [
    placedBody('plate'),
    placedBody('plain', { adds: false, shape: holeShape('half') }),
    placedBody('row', { adds: false, shape: holeShape('drill'), moves: [STAY, shiftAlong('X', 20)] }),
    placedBody('tapped', { adds: false, shape: holeShape('tap'), moves: [STAY, shiftAlong('X', 20)] }),
    placedBody('bored', { adds: false, shape: holeShape('wide') }),
    placedBody('sunk', {
      adds: false,
      shape: holeShape('drill', { countersink: { diameter: dimensionId('wide'), angle: dimensionId('half') } }),
    }),
  ],
};
const holes = (...edges: readonly HoleEdge[]) => ({ ...facts, solid: solidFact({ faces: { holes: edges } }) });
const said = (body: string, centreMm: number, wantedMm: number, metalMm: number) => ({
  at: [bodyId(body), bodyId('plate')] as const,
  data: { body, part: 'column', beside: 'plate', diameterMm: 10, centreMm, wantedMm, metalMm },
});

// Common practice, no source: one and a half diameters for a fastener's hole, a boss twice as wide as the hole in it.
testRule(rule, {
  passes: [
    { name: 'no solid yet', facts: { ...facts, solid: undefined } },
    {
      name: 'far enough',
      facts: holes(edge('plain', 10), edge('row', 15), edge('tapped', 10, 4.25), edge('sunk', 14.95)),
    },
    {
      name: 'a part that lacks a body',
      facts: {
        ...holes(edge('plain', 8)),
        bodies: [...facts.bodies, placedBody('lug', { problem: notPlaced(['left']) })],
      },
    },
    { name: 'a bore', facts: holes(edge('bored', 17, 15)) },
    { name: 'one that breaks out, which is another finding', facts: holes(edge('plain', 3)) },
    { name: 'a body that is no hole', facts: holes(edge('plate', 6)) },
  ],
  finds: [
    {
      name: 'too near for a fastener, and too little of a boss',
      facts: holes(edge('plain', 8), edge('row', 12), edge('tapped', 9, 4.25), edge('sunk', 12)),
      findings: [
        { message: 'boss', ...said('plain', 8, 10, 3) },
        { message: 'fastener', ...said('row', 12, 15, 7) },
        { message: 'boss', ...said('tapped', 9, 10, 4.75) },
        { message: 'fastener', ...said('sunk', 12, 15, 7) },
      ],
    },
  ],
});
