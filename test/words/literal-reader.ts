/** A text between quotes in a program; what is put into a template stands as one mark. */
export interface Literal {
  readonly line: number;
  readonly text: string;
}

const INSERTED = '‹›';
/** A slash after one of these begins a regular expression. */
const BEFORE_EXPRESSION = /(?:^|[=([{,;:!&|?+}]|=>|\breturn)\s*$/;

/** The texts of a program of TypeScript or JavaScript, comments and regular expressions left out. */
export function literalsOf(program: string): readonly Literal[] {
  const found: Literal[] = [];
  let at = 0;
  const lineAt = (index: number) => program.slice(0, index).split('\n').length;

  const quoted = (mark: string): void => {
    const start = at;
    let text = '';
    at += 1;
    while (at < program.length && program[at] !== mark) {
      if (program[at] === '\\') at += 1;
      text += program[at] ?? '';
      at += 1;
    }
    at += 1;
    found.push({ line: lineAt(start), text });
  };

  const template = (): void => {
    const start = at;
    let text = '';
    at += 1;
    while (at < program.length && program[at] !== '`') {
      if (program.startsWith('${', at)) {
        at += 2;
        code('}');
        text += INSERTED;
      } else {
        if (program[at] === '\\') at += 1;
        text += program[at] ?? '';
      }
      at += 1;
    }
    at += 1;
    found.push({ line: lineAt(start), text });
  };

  const expression = (): void => {
    let inClass = false;
    at += 1;
    while (at < program.length && (inClass || program[at] !== '/')) {
      if (program[at] === '\\') at += 1;
      else if (program[at] === '[') inClass = true;
      else if (program[at] === ']') inClass = false;
      at += 1;
    }
    at += 1;
  };

  /** Up to the closing mark at this depth, which is left to the caller. */
  const code = (end: string | undefined): void => {
    let depth = 0;
    while (at < program.length) {
      const mark = program[at] as string;
      if (mark === end && depth === 0) return;
      if (program.startsWith('//', at)) at = indexOr(program.indexOf('\n', at));
      else if (program.startsWith('/*', at)) at = indexOr(program.indexOf('*/', at) + 2);
      else if (mark === "'" || mark === '"') quoted(mark);
      else if (mark === '`') template();
      else if (mark === '/' && BEFORE_EXPRESSION.test(program.slice(Math.max(0, at - 20), at))) expression();
      else {
        if (mark === '{') depth += 1;
        if (mark === '}') depth -= 1;
        at += 1;
      }
    }
  };
  const indexOr = (index: number) => (index < 0 ? program.length : index);

  code(undefined);
  return found;
}
