import { machineFigure } from '../tables/machine-figures.ts';
import type { Amount, Place } from './amount.ts';
import type { Machine } from './machine.ts';
import type { Operation } from './operation.ts';
import type { Fixture, Holding, Setup } from './setup.ts';

/** What is done to each length as written. */
export type Each = (text: string) => string;

const ofAmount = <A extends Amount>(amount: A, each: Each): A => ({ ...amount, written: each(amount.written) });
export const ofPlace = (place: Place, each: Each): Place => ({ ...place, beyond: each(place.beyond) });
export const ofEnds = ([a, b]: readonly [Place, Place], each: Each): [Place, Place] => [
  ofPlace(a, each),
  ofPlace(b, each),
];

/** The machine with each length among its figures and along its bed as `each` makes it. */
export function withMachineLengths(machine: Machine, each: Each): Machine {
  const figures = Object.entries(machine.figures).map(([key, text]) => {
    const isLength = machineFigure(machine.type, key)?.measures === 'length';
    return [key, isLength ? each(text) : text] as const;
  });
  return {
    ...machine,
    figures: Object.fromEntries(figures),
    bed: machine.bed.map(({ across, down }) => ({ across: each(across), down: each(down) })),
  };
}

/** The set-up with each length that is written in it as `each` makes it. */
export function withSetupLengths(setup: Setup, each: Each): Setup {
  return {
    ...setup,
    allowance: each(setup.allowance),
    fixtures: setup.fixtures.map((fixture) => ofFixture(fixture, each)),
    holding: ofHolding(setup.holding, each),
  };
}

function ofFixture(fixture: Fixture, each: Each): Setup['fixtures'][number] {
  const { shape } = fixture;
  const ends = ofEnds(fixture.ends, each);
  if (shape.is === 'round') return { ...fixture, ends, shape: { ...shape, diameter: ofAmount(shape.diameter, each) } };
  const [[a, b], [c, d]] = shape.across;
  return {
    ...fixture,
    ends,
    shape: {
      ...shape,
      across: [
        [each(a), each(b)],
        [each(c), each(d)],
      ],
    },
  };
}

function ofHolding(holding: Holding, each: Each): Holding {
  switch (holding.as) {
    case 'three-jaw chuck':
    case 'four-jaw chuck':
      return {
        ...holding,
        ...(holding.ends ? { ends: ofEnds(holding.ends, each) } : {}),
        diameter: ofAmount(holding.diameter, each),
      };
    case 'vise':
      return {
        ...holding,
        ...(holding.ends ? { ends: ofEnds(holding.ends, each) } : {}),
        depth: ofAmount(holding.depth, each),
      };
    case 'steady':
      return {
        ...holding,
        ...(holding.at ? { at: ofPlace(holding.at, each) } : {}),
        diameter: ofAmount(holding.diameter, each),
      };
    case 'face plate':
    case 'clamped to the table':
      return holding.seat ? { ...holding, seat: ofPlace(holding.seat, each) } : holding;
    case 'between centres':
      return holding;
  }
}

/** The operation with each length that is written in it as `each` makes it; a feed is a length for each turn. */
export function withOperationLengths(operation: Operation, each: Each): Operation {
  const { cut, tool, chosen } = operation;
  return {
    ...operation,
    leaves: each(operation.leaves),
    ...(cut
      ? {
          cut: {
            ...cut,
            ends: ofEnds(cut.ends, each),
            diameter: ofAmount(cut.diameter, each),
            inner: ofAmount(cut.inner, each),
          },
        }
      : {}),
    tool: { ...tool, diameter: ofAmount(tool.diameter, each), overhang: each(tool.overhang) },
    chosen: { ...chosen, feed: ofFeed(chosen.feed, each), depth: each(chosen.depth) },
  };
}

/** `0.1 mm/rev`, `0.004 per tooth`: only what stands before the turn, tooth or stroke is a length. */
function ofFeed(text: string, each: Each): string {
  const per = /\s*(?:\/|per)\s*[a-z]+\s*$/i.exec(text);
  return per ? `${each(text.slice(0, per.index))}${text.slice(per.index)}` : each(text);
}
