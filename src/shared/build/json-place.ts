/** Where a text stops being JSON, counted from 1, and what would have had to stand there. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly expected: string;
}

/** Deeper nesting than any build has; beyond it the text is refused rather than followed. */
const DEEPEST = 500;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;

/**
 * Finds the first place where a text breaks the grammar of JSON (RFC 8259). The runtime's own reader words its complaints
 * differently from version to version and does not always say where.
 * @returns undefined for a text that is JSON.
 */
export function findJsonFault(text: string): JsonFault | undefined {
  let at = 0;
  const match = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) at = pattern.lastIndex;
    return found !== null;
  };
  const matchString = (): boolean => {
    if (text[at] !== '"') return false;
    at++;
    for (;;) {
      const code = text.charCodeAt(at);
      // Also NaN, past the end. Control characters (below the space) must be escaped.
      if (!(code >= 0x20)) return false;
      if (text[at] === '"') break;
      if (text[at] !== '\\') at++;
      else if (!match(ESCAPE)) return false;
    }
    at++;
    return true;
  };
  const take = (mark: string): boolean => {
    match(SPACE);
    if (text[at] !== mark) return false;
    at++;
    return true;
  };
  const fault = (expected: string): JsonFault => {
    const before = text.slice(0, at).split('\n');
    return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1, expected };
  };
  const open: ('[' | '{')[] = [];
  let wants: 'value' | 'first-value' | 'key' | 'first-key' | 'after' = 'value';
  for (;;) {
    match(SPACE);
    if (open.length > DEEPEST) return fault(`at most ${DEEPEST} brackets within one another`);
    if (wants === 'after') {
      const inside = open.at(-1);
      if (inside === undefined) return at === text.length ? undefined : fault('the end of the text');
      if (take(',')) wants = inside === '[' ? 'value' : 'key';
      else if (take(inside === '[' ? ']' : '}')) open.pop();
      else return fault(inside === '[' ? 'a comma or "]"' : 'a comma or "}"');
      continue;
    }
    if (wants === 'first-value' && take(']')) {
      open.pop();
      wants = 'after';
      continue;
    }
    if (wants === 'first-key' && take('}')) {
      open.pop();
      wants = 'after';
      continue;
    }
    if (wants === 'key' || wants === 'first-key') {
      if (!matchString()) return fault('a name in double quotes');
      if (!take(':')) return fault('a colon');
      wants = 'value';
      continue;
    }
    if (take('{')) {
      open.push('{');
      wants = 'first-key';
    } else if (take('[')) {
      open.push('[');
      wants = 'first-value';
    } else if (text[at] === '"') {
      if (!matchString()) return fault('a text that ends with a double quote on its own line');
      wants = 'after';
    } else if (match(NUMBER) || match(WORD)) wants = 'after';
    else return fault('a value');
  }
}
