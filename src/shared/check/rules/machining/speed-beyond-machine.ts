import { figures, perMinute } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

type Message = 'slow' | 'fast' | 'table';

export default definePartRule({
  id: 'speed-beyond-machine',
  title: 'Speed that the machine does not have',
  department: 'machining',
  severity: 'caution',
  shuts: [],
  acceptable: true,
  needs: ['part', 'operations'],
  messages: {
    slow: '{operation} of {part} is to run at {asked} {unit}; the slowest that {machine} has is {limit}.',
    fast: '{operation} of {part} is to run at {asked} {unit}; the fastest that {machine} has is {limit}.',
    table:
      '{operation} of {part} wants about {asked} {unit}; the slowest that {machine} has is {limit}, and faster than the edge stands.',
  },
  remedies: {
    slow: 'Choose a speed that {machine} has, or a machine with a slower one.',
    fast: 'Choose a speed that {machine} has; slower is no harm but to time.',
    table: 'Take a better edge, a smaller tool, or a machine with a slower speed; a tap can be turned by hand.',
  },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, machine, warnings }) =>
      warnings.flatMap((warning): readonly Said<Message>[] => {
        if (!machine || (warning.is !== 'too-slow-for-machine' && warning.is !== 'too-fast-for-machine')) return [];
        const [message, limit]: readonly [Message, number] =
          warning.is === 'too-fast-for-machine'
            ? ['fast', warning.fastest]
            : [warning.chosen ? 'slow' : 'table', warning.slowest];
        const isBand = record.process === 'saw';
        const shown = (value: number) => (isBand ? figures(value) : perMinute(value));
        const isStroke = record.process === 'shape' || record.process === 'plane';
        const data = {
          operation: record.name,
          part: part.name,
          machine: machine.name,
          unit: isBand ? 'm/min' : isStroke ? 'strokes/min' : 'rpm',
          asked: shown(warning.asked),
          limit: shown(limit),
        };
        return [{ message, at: [record.id, machine.id], data }];
      }),
    ),
});
