import { expect, test } from 'vitest';
import { base64Length, fromBase64, isBase64, toBase64 } from './base64.ts';

const bytesOf = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

// RFC 4648, section 10: test vectors.
test.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('%j is %j and back', (plain, coded) => {
  expect(toBase64(bytesOf(plain))).toBe(coded);
  expect(fromBase64(coded)).toEqual(bytesOf(plain));
  expect(base64Length(coded)).toBe(plain.length);
  expect(isBase64(coded)).toBe(true);
});

test('every byte, in long runs, agrees with the runtime’s own coding', () => {
  const bytes = Uint8Array.from({ length: 40_001 }, (_, i) => (i * 7919) >> 3);
  const coded = Buffer.from(bytes).toString('base64');
  expect(toBase64(bytes)).toBe(coded);
  expect(fromBase64(coded)).toEqual(bytes);
});

test.each(['Zg', 'Zg=', 'Z===', 'Zm9v\n', 'Zm-_', 'Zg==Zg=='])('%j is none', (text) => {
  expect(isBase64(text)).toBe(false);
});
