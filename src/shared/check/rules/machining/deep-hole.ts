import { TOO_DEEP_HOLE } from '../../../tables/cutting-practice.ts';
import { partNames } from '../../part-names.ts';
import { figures } from '../../rate-words.ts';
import { definePartRule, type Said } from '../../rule.ts';

type Message = 'deep' | 'beyond' | 'thread';

export default definePartRule({
  id: 'deep-hole',
  title: 'Deep hole',
  department: 'machining',
  severity: 'note',
  shuts: [],
  acceptable: true,
  needs: ['part', 'bodies', 'operations'],
  messages: {
    deep: '{operation} of {part} drills {hole} {ratio} times its diameter deep.',
    beyond:
      '{operation} of {part} drills {hole} {ratio} times its diameter deep: no common drill reaches beyond {limit} ({source}).',
    thread:
      '{operation} of {part} taps {hole} {ratio} times its diameter deep; beyond {limit} a thread holds no more ({source}).',
  },
  remedies: {
    deep: 'Draw the drill back often to clear it; start true, for it wanders.',
    beyond: 'Use a long drill after a common one, drill from both ends, or bore it.',
    thread: 'Open the far part of the hole to clear the thread, or tap no deeper than the screw needs.',
  },

  check({ part, bodies, operations }) {
    const nameOf = partNames({ bodies });
    return operations.flatMap(({ record, warnings }) =>
      warnings.flatMap((warning): readonly Said<Message>[] => {
        if (warning.is !== 'deep-hole' && warning.is !== 'deep-thread') return [];
        const { body, ratio, limit } = warning;
        const message =
          warning.is === 'deep-thread' ? 'thread' : limit.value === TOO_DEEP_HOLE.value ? 'beyond' : 'deep';
        const data = {
          operation: record.name,
          part: part.name,
          hole: nameOf(body),
          ratio: figures(ratio),
          ...(message !== 'deep' && { limit: limit.value, source: limit.source }),
        };
        return [{ message, at: [record.id, body], data }];
      }),
    );
  },
});
