/** One element of a drawing as read back. */
export interface Drawn {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (Drawn | string)[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/**
 * A strict reader of the XML that a drawing may be: elements, attributes in double quotes, text, five entities; no
 * declarations, comments or sections. It throws at the first thing that is not well formed.
 */
export function wellFormed(markup: string): Drawn {
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at}: ${markup.slice(Math.max(0, at - 40), at + 40)}`);
  };
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const sticky = new RegExp(pattern.source, 'yu');
    sticky.lastIndex = at;
    const found = sticky.exec(markup);
    if (found) at += found[0].length;
    return found;
  };
  const plain = (text: string): string => {
    for (const mark of text) {
      const code = mark.codePointAt(0) ?? 0;
      const allowed = code === 9 || code === 10 || code === 13 || (code >= 0x20 && code <= 0xd7ff);
      if (!allowed && !(code >= 0xe000 && code <= 0xfffd) && !(code >= 0x10000)) fail(`the character ${code}`);
    }
    return text.replace(/&([^;]*);?/g, (whole, name: string) => {
      const known = whole.endsWith(';') ? ENTITIES[name] : undefined;
      return known ?? fail(`the entity ${whole}`);
    });
  };
  const element = (): Drawn => {
    const name = take(/<([a-z][\w]*)/i)?.[1] ?? fail('no element');
    const attributes: Record<string, string> = {};
    for (let found = take(/\s+([\w:-]+)="([^"<]*)"/); found; found = take(/\s+([\w:-]+)="([^"<]*)"/)) {
      const [, key = '', value = ''] = found;
      if (key in attributes) fail(`${key} twice`);
      attributes[key] = plain(value);
    }
    if (take(/\s*\/>/)) return { name, attributes, children: [] };
    if (!take(/\s*>/)) fail('an open tag');
    const children: (Drawn | string)[] = [];
    for (;;) {
      const text = take(/[^<]+/);
      if (text) {
        if (text[0].includes(']]>')) fail('the end of a section');
        children.push(plain(text[0]));
      }
      const closing = take(/<\/([a-z][\w]*)\s*>/i);
      if (closing) {
        if (closing[1] !== name) fail(`${closing[1]} closes ${name}`);
        return { name, attributes, children };
      }
      if (at >= markup.length) fail(`${name} is never closed`);
      children.push(element());
    }
  };
  const root = element();
  if (at !== markup.length) fail('something after the end');
  return root;
}

/** All elements of one name, in the order in which they are drawn. */
export function every(drawn: Drawn, name?: string): readonly Drawn[] {
  const inside = drawn.children.flatMap((child) => (typeof child === 'string' ? [] : every(child, name)));
  return name === undefined || drawn.name === name ? [drawn, ...inside] : inside;
}

/** The text of an element and all within. */
export function textOf(drawn: Drawn): string {
  return drawn.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('');
}
