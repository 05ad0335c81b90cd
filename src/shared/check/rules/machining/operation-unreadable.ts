import { definePartRule } from '../../rule.ts';

/** Fields of an operation as its form calls them. */
const fields: readonly (readonly [begins: string, words: string])[] = [
  ['cut/diameter', 'the diameter of its cut'],
  ['cut/inner', 'the inner diameter of its cut'],
  ['cut/', 'where its cut begins or ends'],
  ['tool/diameter', 'the diameter of its tool'],
  ['tool/overhang', 'how far its tool stands out'],
  ['tool/angle', 'the angle of its edge'],
  ['leaves', 'the stock that it leaves'],
  ['chosen/speed', 'its speed'],
  ['chosen/rpm', 'its turns'],
  ['chosen/feed', 'its feed'],
  ['chosen/depth', 'its depth of cut'],
  ['chosen/minutes', 'its time'],
];

export default definePartRule({
  id: 'operation-unreadable',
  title: 'Figure of an operation that cannot be read',
  department: 'machining',
  severity: 'caution',
  shuts: ['machine'],
  acceptable: false,
  needs: ['part', 'operations'],
  messages: { text: '{operation} of {part} has “{texts}” for {fields}, which cannot be read.' },
  remedies: {
    text: 'Write a number above nought with its unit: 12 mm or 1/2", 30 m/min or 100 ft/min, 450 rpm, 20 min.',
  },

  check: ({ part, operations }) =>
    operations.flatMap(({ record, read }) => {
      const unread = read.unknown.flatMap((one) => (one.is === 'written' ? [one] : []));
      if (unread.length === 0) return [];
      const data = {
        operation: record.name,
        part: part.name,
        texts: unread.map(({ text }) => text.trim()).join('”, “'),
        fields: unread.map(({ field }) => fields.find(([begins]) => field.startsWith(begins))?.[1] ?? field).join(', '),
      };
      return [{ message: 'text' as const, at: [record.id] as const, data }];
    }),
});
