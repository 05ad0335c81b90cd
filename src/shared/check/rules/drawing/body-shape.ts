import type { ShapeProblemCode } from '../../../solid/placed.ts';
import { listed } from '../../listing.ts';
import { partNames } from '../../part-names.ts';
import { definePartRule, type Said } from '../../rule.ts';

export default definePartRule({
  id: 'body-shape',
  title: 'Body of no possible shape',
  department: 'drawing',
  severity: 'stop',
  shuts: ['cut'],
  acceptable: false,
  needs: ['part', 'stations', 'dimensions', 'bodies'],
  messages: {
    'outline-crosses': 'The outline of {body} of {part} crosses or touches itself at {names}.',
    'radius-too-large': 'A corner radius of {body} of {part} does not fit between its neighbours: {names}.',
    'bore-not-smaller': 'The bore of {body} of {part} is as wide as the body or wider: {names}.',
    'thread-without-pitch': 'The pitch of {names} is not known, so neither is the tap drill of {body} of {part}.',
    'counterbore-not-wider': 'The counterbore of {body} of {part} is no wider than its hole: {names}.',
    'counterbore-too-deep': 'The counterbore of {body} of {part} is as deep as its hole or deeper: {names}.',
    'countersink-not-wider': 'The countersink of {body} of {part} is no wider than its hole: {names}.',
    'countersink-too-deep': 'The countersink of {body} of {part} reaches as deep as its hole or deeper: {names}.',
    'angle-out-of-range': '{names} of {part} is not between 0° and 180°, and {body} is shaped by it.',
    'count-not-whole': '{names} of {part} is no whole number of at least 1, and {body} is repeated by it.',
    'too-many-copies': '{body} of {part} has more copies than can be shown: {names}.',
    'size-does-not-fit': '{names} of {part} measures something that cannot shape {body}.',
    'mesh-inside-out': 'The solid that was brought in for {body} of {part} looks inwards, or encloses nothing.',
  },
  remedies: {
    'outline-crosses': 'Put the corners of {body} in the order in which they follow one another, or move a station.',
    'radius-too-large': 'Make the radius smaller, or the side between the corners longer.',
    'bore-not-smaller': 'Make the bore smaller than the outer diameter.',
    'thread-without-pitch': 'Write the thread with its pitch, for example M8x1.',
    'counterbore-not-wider': 'Make the counterbore wider than the hole.',
    'counterbore-too-deep': 'Make the counterbore shallower, or the hole deeper.',
    'countersink-not-wider': 'Make the countersink wider than the hole.',
    'countersink-too-deep': 'Make the countersink narrower or its angle wider, or the hole deeper.',
    'angle-out-of-range': 'Write an angle between 0° and 180°; 90° for most countersinks, 118° for most drills.',
    'count-not-whole': 'Write a whole number of copies.',
    'too-many-copies': 'Look at {names}: a figure is missing its point, or a repeat stands in the list twice.',
    'size-does-not-fit':
      'Give {body} a dimension of the right kind: a diameter or radius for what is round, a count for copies.',
    'mesh-inside-out': 'Have its maker write the solid again with its faces outwards, and bring it in anew.',
  },

  check({ part, stations, dimensions, bodies }) {
    const nameOf = partNames({ stations, dimensions });
    return bodies.flatMap(({ record, problem }): readonly Said<ShapeProblemCode>[] => {
      if (problem?.why !== 'shape') return [];
      const at = [...new Set(problem.at)];
      const names = at.length === 0 ? record.name : listed(at.map(nameOf));
      return [{ message: problem.code, at: [record.id, ...at], data: { body: record.name, part: part.name, names } }];
    });
  },
});
