import { describe, expect, it } from 'vitest';
import { paperOrder } from '../../src/worksheet/index.ts';
import { TypstPress } from '../../src/worksheet/paper/typst-press.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { wordsOfCaution } from '../worksheet/caution-said.ts';
import { HOSTILE, sheetWithEverything } from '../worksheet/every-block.ts';
import { type Printed, printed, readPdf, tagsOf, tight } from './printed.ts';

/** A number as a person would shorten it, apart from the way of the service. */
function shortened(value: number): string {
  const rounded = Math.abs(value) >= 10_000 ? Math.round(value) : Number(value.toPrecision(4));
  return rounded.toLocaleString('en-US', { maximumSignificantDigits: 10 });
}

/** With one sign for minus. */
function plainMinus(text: string): string {
  return text.replaceAll('−', '-');
}

/** Everything an answer says that a sheet must say too. */
function missingFrom({ document, text }: Printed): string[] {
  const { checks, cautions, notCovered, toFindOut, windLoads } = document;
  const texts = [
    document.says,
    ...checks.map(({ title }) => title),
    ...checks.map(({ says }) => says),
    ...cautions.flatMap((caution) => wordsOfCaution(caution)),
    ...notCovered,
    ...toFindOut.map(({ ask }) => ask),
    ...windLoads.rows.map(({ name }) => name),
  ];
  const numbers = [
    ...windLoads.rows.flatMap((row) => [row.front, row.pressure, row.force, row.momentAtBase]),
    windLoads.total.force,
    windLoads.total.momentAtBase,
    ...checks.flatMap(({ demand, capacity }) => [demand?.value, capacity?.value]),
  ].filter((value) => value !== undefined);
  const lower = plainMinus(text.toLowerCase());
  return [...texts, ...numbers.map(shortened)].filter((each) => !lower.includes(plainMinus(tight(each).toLowerCase())));
}

describe.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('the printed worksheet of %s', (_, plan) => {
  const paper = plan['units'] === 'us' ? 'letter' : 'a4';
  const sheet = printed(plan, paper);

  it('says everything the answer says: checks, cautions, open questions, loads, numbers', () => {
    expect(missingFrom(sheet)).toEqual([]);
  });

  it('is tagged PDF with letters, attachment and size as they should be', () => {
    expect(sheet.information).toMatch(/^Tagged:\s+yes$/m);
    expect(sheet.information).toContain(paper === 'letter' ? '612 x 792' : '595.276 x 841.89');
    expect(sheet.information).not.toContain('CreationDate');
    expect(sheet.fonts.length).toBeGreaterThan(3);
    for (const font of sheet.fonts) expect(font).toMatch(/^[A-Z]{6}\+\S+ .* yes yes yes /);
    expect(JSON.parse(sheet.attached)).toEqual(sheet.document.plan);
  });

  it('keeps on one page what is read at one glance', () => {
    const last = sheet.seen.find((page) => /^\s*Who decides$/m.test(page))?.replaceAll(/\s+/g, ' ');
    expect(last).toContain('steps were recomputed by a second, general-purpose program');
    expect(last).toContain('Not covered by this service');
    const drawn = sheet.seen.find((page) => /^\s*Drawings$/m.test(page));
    expect(drawn).toContain('From above: areas by heading');
    const linksOn = sheet.seen.filter((page) =>
      sheet.document.checks.some(({ says }) => page.includes(`– ${says.slice(0, 40)}`)),
    );
    expect(linksOn.length).toBeLessThanOrEqual(2);
  });

  it('numbers its pages, and says on each whose it is and who decides', () => {
    sheet.seen.forEach((page, index) => {
      expect(page).toContain(`sheet ${index + 1} of ${sheet.pages}`);
      expect(page).toContain('licensed engineer decide');
      expect(page).toContain(sheet.sheet.version);
    });
  });
});

describe('the working on paper', () => {
  it('holds every step: what it is, its numbers, where it is from', () => {
    const { document, text } = printed(demoPlan('river-bluff'), 'letter', 'full');
    const steps = document.working ?? [];
    expect(steps.length).toBeGreaterThan(100);
    const missing = steps.filter(
      ({ title, clause, value }) =>
        !text.includes(tight(title)) || !text.includes(tight(clause)) || !plainMinus(text).includes(shortened(value)),
    );
    expect(missing.map(({ title, clause, value }) => `${title}, ${clause}: ${value}`)).toEqual([]);
  });

  it('is tagged by what it is: headings, tables with their heads, figures, lists, formulas', () => {
    const tags = tagsOf(new TypstPress().print(paperOrder(sheetWithEverything('plain words', 6), 'letter')));
    for (const role of ['H1', 'H2', 'P', 'L', 'Table', 'TH', 'TD', 'Caption', 'Figure', 'Code', 'Formula']) {
      expect(tags).toMatch(new RegExp(`^ *${role}\\b`, 'm'));
    }
  });
});

describe('a plan with a hundred loads', () => {
  const loads = Array.from({ length: 100 }, (_, index) => ({
    name: `load ${index + 1}`,
    height: 10 + (index % 30),
    area: 0.2 + index / 100,
    areaKind: 'effective',
    offset: 0,
  }));
  const sheet = printed({ ...demoPlan('river-bluff'), loads });

  it('says all of them', () => {
    expect(missingFrom(sheet)).toEqual([]);
  });

  it('repeats the head of the wind loads on every page it goes over', () => {
    const first = sheet.seen.findIndex((page) => page.includes('Wind loads by item'));
    const last = sheet.seen.findIndex((page) => page.includes('Wind by height above'));
    expect(last).toBeGreaterThan(first + 1);
    const rows = /^\s*load \d+ +[\d.]+ +[\d.]+ +[\d.]+ +[\d.]+ /m;
    const pages = sheet.seen.slice(first, last + 1).filter((page) => rows.test(page));
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(page).toMatch(/^item +.*coefficient/m);
  });
});

describe('a plan with gaps', () => {
  it('says of each what is missing', () => {
    const bare = {
      ...demoPlan('ten-numbers'),
      mast: { outside: 2, length: 10 },
      loads: [
        { name: 'beam of unknown area', above: 2, area: 5, ratedWind: 80 },
        { name: 'panel', height: 30, shape: 'plate', wide: 10, tall: 20, offset: 0 },
      ],
      ratings: [
        { of: 'tower', area: 18 },
        { of: 'rotator', kind: 'torque', torque: 100 },
        { of: 'bearing', kind: 'force', force: 300, level: 'allowable' },
      ],
    };
    const sheet = printed(bare);
    expect(sheet.document.checks.filter(({ verdict }) => verdict === 'open').length).toBeGreaterThan(2);
    expect(missingFrom(sheet)).toEqual([]);
  });
});

describe('what an owner may type', () => {
  it('goes over the page rather than off it where a name fills one', () => {
    const name = '🗼'.repeat(90);
    const code = '(U+1F5FC)'.repeat(90);
    const { text } = printed({ ...demoPlan('river-bluff'), loads: [{ name, above: 2, area: 5 }] });
    // Among the open questions, checks and cautions, and in the wind loads and the lines by hand.
    expect(text.split(code).length - 1).toBeGreaterThan(4);
  });

  const press = new TypstPress();
  const readOf = (text: string) => readPdf(press.print(paperOrder(sheetWithEverything(text, 6), 'letter'))).text;

  it.each(HOSTILE)('%j comes out as letters', (text) => {
    // In the title, in the verdict, in every kind of block.
    expect(readOf(text).split(tight(text)).length - 1).toBeGreaterThan(25);
  });

  it.each([
    ['🗼', '(U+1F5FC)'],
    ['a\u0007b', 'a(U+0007)b'],
    ['\u202eabc', '(U+202E)abc'],
    ['漢', '(U+6F22)'],
    ['Ünï Ελλάδα Жук ½ ≤ √', 'Ünï Ελλάδα Жук ½ ≤ √'],
    ['x'.repeat(200), 'x'.repeat(200)],
  ])('%j stands as %s', (text, expected) => {
    const read = readOf(text);
    expect(read).toContain(tight(expected));
    expect(read.includes('are printed as their code'.replaceAll(' ', ''))).toBe(expected.includes('U+'));
  });
});
