const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const STRANGE = /[^A-Za-z0-9+/]/;

const VALUES = new Uint8Array(128);
for (let i = 0; i < DIGITS.length; i++) VALUES[DIGITS.charCodeAt(i)] = i;

/** Bytes as base64 (RFC 4648, section 4), padded. */
export function toBase64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  let piece = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const three = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    piece += DIGITS[three >> 18]! + DIGITS[(three >> 12) & 63]!;
    piece += i + 1 < bytes.length ? DIGITS[(three >> 6) & 63]! : '=';
    piece += i + 2 < bytes.length ? DIGITS[three & 63]! : '=';
    if (piece.length >= 8192) {
      pieces.push(piece);
      piece = '';
    }
  }
  pieces.push(piece);
  return pieces.join('');
}

/** Number of bytes that a base64 text holds. */
export const base64Length = (text: string): number => (text.length / 4) * 3 - paddingOf(text);

const paddingOf = (text: string): number => (text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0);

/** Whether the text is base64 with its padding and nothing else. */
export const isBase64 = (text: string): boolean =>
  text.length % 4 === 0 && !STRANGE.test(text.slice(0, text.length - paddingOf(text)));

/** The bytes of a text for which `isBase64` holds. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(base64Length(text));
  let at = 0;
  for (let i = 0; i < text.length; i += 4) {
    const four =
      (VALUES[text.charCodeAt(i)]! << 18) |
      (VALUES[text.charCodeAt(i + 1)]! << 12) |
      (VALUES[text.charCodeAt(i + 2)]! << 6) |
      VALUES[text.charCodeAt(i + 3)]!;
    bytes[at++] = four >> 16;
    if (at < bytes.length) bytes[at++] = (four >> 8) & 255;
    if (at < bytes.length) bytes[at++] = four & 255;
  }
  return bytes;
}
