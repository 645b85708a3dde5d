import { describe, expect, it } from 'vitest';
import { gathered } from '../../src/words/index.ts';
import { answerSheet, cautionDocuments } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { worksheetFigures, worksheetUse } from '../http/exact-rounding.ts';
import { anyPlan } from '../margins/any-plan.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { blocksOf, crowded, GAPS, givenFor, sheetOf, wordsOf } from './sheet-of.ts';

const PLANS: readonly (readonly [string, Record<string, unknown>])[] = [
  ...demoPlans().map(({ id, plan }) => [id, plan] as const),
  ['of gaps', GAPS],
  ['of 40 loads', crowded(demoPlan('river-bluff'), 40)],
];

const number = (text: string) => Number(text.replaceAll(',', ''));
/** Half a unit in the last of four figures. */
const within = (value: number) => 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value) || 1)) - 3) * 1.0001;

describe.each(PLANS)('the worksheet of the plan %s', (_, plan) => {
  const given = givenFor(plan);
  const { document } = given;
  const sheet = answerSheet(given);
  const words = wordsOf(sheet);

  it('has its parts in the order a plan checker reads', () => {
    expect(sheet.parts.map(({ id }) => id)).toEqual([
      'cautions',
      'verdict',
      'title-block',
      'design',
      'structure',
      'wind-loads',
      'wind',
      'checks',
      'levels',
      'reactions',
      'drawings',
      'by-hand',
      'working',
      'sources',
      'attachments',
      'remarks',
      'plan',
      'closing',
    ]);
  });

  it('says every check, with its numbers', () => {
    const [table] = blocksOf(sheet, 'checks', 'table');
    expect(table?.rows).toHaveLength(document.checks.length);
    document.checks.forEach((check, index) => {
      const cells = table?.rows[index]?.map(({ text }) => text) ?? [];
      expect(cells[1]).toBe(check.verdict.replace('-', ' '));
      expect(cells[4]).toBe(check.ratio === undefined ? '–' : worksheetUse(check.ratio));
      const kind = check.demand?.of === 'gust' ? ' nominal gust' : '';
      expect(cells[2]).toBe(
        check.demand ? `${worksheetFigures(check.demand.value, 4)} ${check.demand.unit}${kind}` : '–',
      );
      expect(cells[3]).toBe(
        check.capacity ? `${worksheetFigures(check.capacity.value, 4)} ${check.capacity.unit}${kind}` : '–',
      );
      expect(cells[7]).toBe(check.holdsTo ? worksheetFigures(check.holdsTo.gust.value) : '–');
      expect(words).toContain(check.says);
    });
  });

  it('says the standing cautions first and last, every other one once', () => {
    const told = cautionDocuments(gathered(given.assessment.cautions), given.assessment.input.station.units);
    for (const { code } of document.cautions) expect(told.map((caution) => caution.code)).toContain(code);
    for (const caution of told) {
      const said = words.filter((line) => line === `${caution.says} ${caution.action}`);
      const alike = told.filter(({ says }) => says === caution.says).length;
      expect(said, caution.says).toHaveLength(caution.severity === 'standing' ? 2 : alike);
    }
    for (const id of ['cautions', 'closing']) {
      const standing = document.cautions.filter(({ severity }) => severity === 'standing').map(({ says }) => says);
      expect(blocksOf(sheet, id, 'caution').map(({ says }) => says)).toEqual(standing);
    }
    for (const what of document.notCovered)
      expect(words.filter((line) => line.includes(what)).length).toBeGreaterThan(1);
  });

  it('has the wind loads of the answer, a row for each item', () => {
    const [table] = blocksOf(sheet, 'wind-loads', 'table');
    const four = (value: number) => worksheetFigures(value, 4);
    expect(table?.rows.map((row) => [row[0], row[7], row[9], row[10]].map((cell) => cell?.text))).toEqual(
      document.windLoads.rows.map((row) => [row.name, four(row.pressure), four(row.force), four(row.momentAtBase)]),
    );
    const [total] = table?.totals ?? [];
    expect(total?.[9]?.text).toBe(four(document.windLoads.total.force));
    expect(total?.[10]?.text).toBe(four(document.windLoads.total.momentAtBase));
  });

  it('has six drawings, each with words beside it', () => {
    const drawings = blocksOf(sheet, 'drawings', 'drawing');
    expect(drawings.map(({ name }) => name)).toEqual(['elevation', 'rose', 'pressure', 'moment', 'ratio', 'ladder']);
    for (const { alternative } of drawings) expect(alternative.length).toBeGreaterThan(30);
  });

  it('says how many steps were recomputed', () => {
    const steps = document.working?.length ?? 0;
    const said = words.filter((line) =>
      line.includes(`${steps} of ${steps} steps were recomputed by a second, general-purpose program`),
    );
    expect(said).toHaveLength(2);
  });

  it('holds the plan so that it can be sent again', () => {
    const [block] = blocksOf(sheet, 'plan', 'plan');
    expect(JSON.parse(block?.json ?? '')).toEqual(document.plan);
    expect(block?.json).not.toMatch(/[\u202a-\u202e\u200e\u200f]/u);
  });

  it('never names a speed without its kind', () => {
    for (const line of words) {
      for (const [said] of line.matchAll(/\d (?:mph|m\/s)\b.{0,24}/g)) {
        if (/\d+ mph \(type not stated\)|\d m\/s \(type/.test(said)) continue;
        expect(
          /gust|fastest mile|mean|\(|instead of/.test(said) || /gust|rated|speed|wind|Raising|brings/.test(line),
          `${said} in: ${line}`,
        ).toBe(true);
      }
    }
  });
});

/** The pencil: every line from what is printed, then the sums, then the answer. */
function redo(plan: unknown) {
  const { sheet, document } = sheetOf(plan);
  const [table] = blocksOf(sheet, 'by-hand', 'table');
  let [shear, moment] = [0, 0];
  for (const row of table?.rows ?? []) {
    const [name, area, pressure, factor, force, height, momentText] = row.map(({ text }) => text) as [
      string,
      ...string[],
    ];
    const printedForce = number(force as string);
    if (area !== '') {
      const product = number(area as string) * number(pressure as string) * number(factor as string);
      expect(Math.abs(product - printedForce), `force of ${name}`).toBeLessThanOrEqual(within(product));
      const arm = printedForce * number(height as string);
      expect(Math.abs(arm - number(momentText as string)), `moment of ${name}`).toBeLessThanOrEqual(within(arm));
    }
    shear += printedForce;
    moment += number(momentText as string);
  }
  const [sum] = table?.totals ?? [];
  expect(Math.abs(shear - number(sum?.[4]?.text ?? ''))).toBeLessThanOrEqual(within(shear));
  expect(Math.abs(moment - number(sum?.[6]?.text ?? ''))).toBeLessThanOrEqual(within(moment));
  const { allowable } = document.reactions;
  // Each factor is off by half of its fourth figure at most: 0.0005 of it, four times over.
  const rounding = (value: number) => 0.0021 * Math.abs(value) + 1e-9;
  expect(Math.abs(shear - allowable.shear.value)).toBeLessThanOrEqual(rounding(allowable.shear.value));
  expect(Math.abs(moment - allowable.moment.value)).toBeLessThanOrEqual(rounding(allowable.moment.value));
  const ratio = blocksOf(sheet, 'by-hand', 'paragraph')
    .map(({ words }) => /([\d.,]+) ÷ ([\d.,]+) = ([\d.,]+)\.$/.exec(words.map(({ text }) => text).join('')))
    .find((found) => found !== null);
  if (ratio) {
    const [demand, capacity, quotient] = ratio.slice(1).map(number) as [number, number, number];
    expect(Math.abs(demand / capacity - quotient)).toBeLessThanOrEqual(10 * within(quotient));
    expect(Math.abs(quotient / (document.checks[0]?.ratio as number) - 1)).toBeLessThan(0.006);
  }
  return { lines: (table?.rows.length ?? 0) + 1 + (ratio ? 1 : 0), ratio: ratio !== undefined, table };
}

describe('ten lines by hand', () => {
  it.each(PLANS)('of the plan %s come to the shear and moment of the answer', (_, plan) => {
    expect(redo(plan).lines).toBeLessThanOrEqual(10);
  });

  it('end in the ratio where the base governs the tower, and not where another place does', () => {
    expect(redo(demoPlan('river-bluff')).ratio).toBe(true);
    expect(redo(demoPlan('guyed-lattice')).ratio).toBe(false);
  });

  it('name what is combined', () => {
    const { table } = redo(crowded(demoPlan('river-bluff'), 100));
    expect(table?.rows.some(([name]) => /the other \d+ combined/.test(name?.text ?? ''))).toBe(true);
  });

  it('come to the answer for any plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        expect(redo(plan).lines).toBeLessThanOrEqual(10);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a worksheet', () => {
  it('is refused where a step does not come out twice', () => {
    const given = givenFor(demoPlan('ten-numbers'));
    const [first, ...rest] = given.testimony;
    if (!first) throw new Error('there are steps');
    expect(() => answerSheet({ ...given, testimony: [{ ...first, agrees: false }, ...rest] })).toThrow(/re-evaluate/);
  });

  it('prints every step of the working where it is asked for, and none else', () => {
    const plan = demoPlan('river-bluff');
    const { sheet, document } = sheetOf(plan, 'full');
    expect(blocksOf(sheet, 'working', 'step')).toHaveLength(document.working?.length as number);
    expect(blocksOf(sheet, 'working', 'step').some(({ fromMemory }) => fromMemory)).toBe(true);
    expect(blocksOf(sheetOf(plan).sheet, 'working', 'step')).toEqual([]);
  });

  it('fills its title block from the plan and leaves the rest blank', () => {
    const sheet = { applicant: 'A. Owner', jurisdiction: 'County', attachments: ['photo of the plate'] };
    const { sheet: filled } = sheetOf({ ...demoPlan('river-bluff'), titleBlock: sheet });
    const [blanks] = blocksOf(filled, 'title-block', 'blanks');
    const byLabel = Object.fromEntries(blanks?.rows.map(({ label, filled: text }) => [label, text]) ?? []);
    expect(byLabel['Applicant']).toBe('A. Owner');
    expect(byLabel['Jurisdiction']).toBe('County');
    expect(byLabel['Permit number']).toBeUndefined();
    expect(blocksOf(filled, 'attachments', 'ticks')[0]?.items).toContain('photo of the plate');
  });

  it('names the circle that a beam sweeps, and says where it is not computed', () => {
    const facts = blocksOf(sheetOf(demoPlan('river-bluff')).sheet, 'structure', 'facts')[0]?.rows ?? [];
    // 24 ft boom, elements of 2·(48 + 48 + 40) in: √(12² + 11.333²) ft.
    expect(facts.find(({ label }) => label.startsWith('Turning circle'))?.words.text).toBe('radius 16.5 ft at 50.5 ft');
    const unknown = blocksOf(sheetOf(demoPlan('guyed-lattice')).sheet, 'structure', 'facts')[0]?.rows ?? [];
    expect(unknown.find(({ label }) => label.startsWith('Turning circle'))?.words.text).toContain('not computed at');
  });

  it('has one line in the table of wind for each height', () => {
    for (const { plan } of demoPlans()) {
      const heights = sheetOf(plan).document.wind.map(({ height }) => height.value.toFixed(6));
      expect(new Set(heights).size).toBe(heights.length);
    }
  });
});
