import type { Kind } from '../quantity/kind.ts';

/** Every kind by the number that instructions carry. */
export const kinds: readonly Kind[] = ['number', 'length', 'angle', 'mass', 'temperature'];
