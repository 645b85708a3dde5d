/** Inks of the drawings on screen, and what they are on white paper. */
const ON_PAPER: Readonly<Record<string, string>> = {
  '#f8f3e7': '#ffffff',
  '#efe7d3': '#f3f3f0',
  '#211c15': '#000000',
  '#5a5041': '#3d3a35',
  '#857960': '#77726a',
  '#cbbfa5': '#bdb8ad',
  '#17557c': '#0d4468',
  '#a52a17': '#8d1c0b',
};

/** Families that the press has; a name that ends in a figure must stand in quotes. */
const FAMILIES = "'Source Serif 4', 'Libertinus Serif', 'DejaVu Sans Mono'";

/**
 * A drawing as paper wants it: print inks, the press's own letters, no style sheet, whose custom properties only a
 * browser knows. What was typed stands escaped in a drawing and so cannot look like one of its attributes.
 */
export function printInk(svg: string): string {
  return svg
    .replace(/<style>[^<]*<\/style>/g, '')
    .replace(/ (fill|stroke)="(#[\da-f]{6})"/g, (_, what: string, ink: string) => ` ${what}="${ON_PAPER[ink] ?? ink}"`)
    .replace(/ font-family="[^"]*"/g, ` font-family="${FAMILIES}"`);
}
