/** One element as it begins. */
export interface XmlElement {
  /** Name without its prefix. */
  readonly name: string;
  /** The namespace that its prefix stands for; empty for none. */
  readonly space: string;
  /** Line on which it begins, counted from 1. */
  readonly line: () => number;
  /** An attribute by its name as written, prefix and all. */
  attribute(name: string): string | undefined;
  /** An attribute by namespace and name. */
  attributeOf(space: string, name: string): string | undefined;
  /** The namespace that a prefix stands for here. */
  spaceOf(prefix: string): string | undefined;
}

export interface XmlReader {
  /** @returns a sentence to stop with, or undefined to go on. */
  open(element: XmlElement): string | undefined;
  close(name: string, space: string): void;
}

export interface XmlProblem {
  readonly line: number;
  readonly sentence: string;
}

const NAME = /[^\s=/>"'<]+/y;
const ATTRIBUTE = /\s+([^\s=/>"'<]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y;
const TAG_END = /\s*(\/?)>/y;
const DEEPEST = 64;

/** Only the names that every XML has: a document that brings its own is refused with its DOCTYPE. */
const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const decoded = (text: string): string =>
  text.includes('&')
    ? text.replace(/&(?:#(\d{1,7})|#x([0-9a-fA-F]{1,6})|(\w+));/g, (whole, decimal, hexadecimal, name) => {
        const code = decimal ? Number(decimal) : hexadecimal ? Number.parseInt(hexadecimal, 16) : undefined;
        if (code !== undefined) return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
        return entities[name] ?? whole;
      })
    : text;

type Spaces = ReadonlyMap<string, string>;

/**
 * Goes through the elements of an XML text (XML 1.0 with namespaces) in one pass. Text between elements, comments and
 * instructions are passed over. Document types are refused: they can blow up a short text without end.
 */
export function scanXml(text: string, reader: XmlReader): XmlProblem | undefined {
  const stack: { readonly written: string; readonly name: string; readonly space: string; readonly spaces: Spaces }[] =
    [];
  let spaces: Spaces = new Map([['', '']]);
  let at = 0;
  let isEmpty = true;

  const lineAt = (place: number): number => {
    let line = 1;
    for (let i = text.indexOf('\n'); i >= 0 && i < place; i = text.indexOf('\n', i + 1)) line++;
    return line;
  };
  const fault = (sentence: string): XmlProblem => ({ line: lineAt(at), sentence });
  const skipTo = (end: string): boolean => {
    const found = text.indexOf(end, at);
    if (found >= 0) at = found + end.length;
    return found >= 0;
  };

  for (;;) {
    const from = text.indexOf('<', at);
    if (from < 0) break;
    at = from;
    if (text.startsWith('<!--', at)) {
      if (!skipTo('-->')) return fault('A comment does not end.');
    } else if (text.startsWith('<?', at)) {
      if (!skipTo('?>')) return fault('An instruction does not end.');
    } else if (text.startsWith('<![CDATA[', at)) {
      if (!skipTo(']]>')) return fault('A text does not end.');
    } else if (text.startsWith('<!', at)) {
      return fault('The text declares a document type, which is not read.');
    } else if (text.startsWith('</', at)) {
      const element = stack.pop();
      const end = text.indexOf('>', at);
      if (element === undefined || end < 0 || text.slice(at + 2, end).trim() !== element.written) {
        return fault('An element ends that did not begin.');
      }
      at = end + 1;
      spaces = element.spaces;
      reader.close(element.name, element.space);
    } else {
      NAME.lastIndex = at + 1;
      const [written] = NAME.exec(text) ?? [];
      if (written === undefined) return fault('An element has no name.');
      let next = NAME.lastIndex;
      const attributes: (readonly [name: string, value: string])[] = [];
      ATTRIBUTE.lastIndex = next;
      for (let match = ATTRIBUTE.exec(text); match !== null; match = ATTRIBUTE.exec(text)) {
        attributes.push([match[1]!, match[2] ?? match[3] ?? '']);
        next = ATTRIBUTE.lastIndex;
      }
      TAG_END.lastIndex = next;
      const end = TAG_END.exec(text);
      if (end === null) return fault(`The element "${written.slice(0, 40)}" does not end well.`);
      const outer = spaces;
      spaces = withDeclared(outer, attributes);
      const [prefix, name] = split(written);
      const space = spaces.get(prefix);
      if (space === undefined) return fault(`The prefix "${prefix.slice(0, 40)}" stands for nothing.`);
      isEmpty = false;
      const stop = reader.open(elementOf(name, space, attributes, spaces, () => lineAt(from)));
      if (stop !== undefined) return fault(stop);
      at = TAG_END.lastIndex;
      if (end[1] === '/') {
        spaces = outer;
        reader.close(name, space);
      } else if (stack.push({ written, name, space, spaces: outer }) > DEEPEST) {
        return fault('Elements are nested too deep.');
      }
    }
  }
  const open = stack.at(-1);
  at = text.length;
  if (open !== undefined) return fault(`The text ends within the element "${open.name}".`);
  return isEmpty ? fault('The text has no element.') : undefined;
}

const split = (written: string): readonly [prefix: string, name: string] => {
  const colon = written.indexOf(':');
  return colon < 0 ? ['', written] : [written.slice(0, colon), written.slice(colon + 1)];
};

function withDeclared(spaces: Spaces, attributes: readonly (readonly [string, string])[]): Spaces {
  let declared: Map<string, string> | undefined;
  for (const [name, value] of attributes) {
    if (name !== 'xmlns' && !name.startsWith('xmlns:')) continue;
    declared ??= new Map(spaces);
    declared.set(name.slice(6), decoded(value));
  }
  return declared ?? spaces;
}

function elementOf(
  name: string,
  space: string,
  attributes: readonly (readonly [string, string])[],
  spaces: Spaces,
  line: () => number,
): XmlElement {
  const value = (isIt: (written: string) => boolean): string | undefined => {
    const found = attributes.find(([written]) => isIt(written));
    return found && decoded(found[1]);
  };
  return {
    name,
    space,
    line,
    attribute: (wanted) => value((written) => written === wanted),
    attributeOf: (wantedSpace, wanted) =>
      value((written) => {
        const [prefix, local] = split(written);
        return prefix !== '' && local === wanted && spaces.get(prefix) === wantedSpace;
      }),
    spaceOf: (prefix) => spaces.get(prefix),
  };
}
