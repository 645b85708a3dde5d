const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** HTML that is written as it stands. */
export class Markup {
  readonly html: string;

  constructor(html: string) {
    this.html = html;
  }
}

type Piece = string | number | Markup | undefined | readonly Piece[];

/** HTML of a template: what is put into it comes out as letters, save what is markup already; lists are joined. */
export function markup(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  return new Markup(parts.map((part, index) => (index === 0 ? part : written(pieces[index - 1]) + part)).join(''));
}

function written(piece: Piece): string {
  if (piece === undefined) return '';
  if (piece instanceof Markup) return piece.html;
  if (typeof piece === 'object') return piece.map(written).join('');
  return String(piece).replace(/[&<>"']/g, (sign) => ENTITIES[sign] as string);
}
