import { describe, expect, it } from 'vitest';
import { remediesOf, standardTubesFor } from '../../src/margins/index.ts';
import { METHOD_BY_ID } from '../../src/methods/index.ts';
import { answerDocument, answerSheet, answerText, remediesLines } from '../../src/worksheet/index.ts';
import { assessed, type Document } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { blocksOf, givenFor, sheetOf, wordsOf } from './sheet-of.ts';

const bluff = demoPlan('river-bluff');
const loadsOf = (plan: Document) => plan['loads'] as Document[];
const first = (plan: Document, more: Document): Document => ({
  ...plan,
  loads: loadsOf(plan).map((load, index) => (index === 0 ? { ...load, ...more } : load)),
});

/** A beam whose tubes are bent far beyond what they are allowed, since its wind is. */
const bent: Document = {
  units: 'us',
  method: 'asce7-16',
  site: { wind: { speed: 250, basis: 'gust3-strength' }, exposure: 'C' },
  tower: { support: 'free', top: 40, shape: 'pole', width: 12, sides: 0, frequency: 2 },
  mast: { outside: 2, wall: 0.25, length: 10, inside: 4, yield: 36, bearing: 40 },
  loads: [
    {
      name: 'tube beam',
      height: 44,
      shape: 'tubes',
      weight: 40,
      tubes: [
        {
          along: 'element',
          count: 3,
          material: 'aluminium',
          yield: 35,
          ultimate: 42,
          taper: [
            [0.75, 72, 0.049],
            [0.5, 120, 0.049],
          ],
        },
      ],
      offset: 0,
    },
  ],
  ratings: [
    {
      of: 'tower',
      area: 400,
      areaKind: 'effective',
      wind: { speed: 250, method: 'asce7-16', basis: 'gust3-strength', exposure: 'C', riskCategory: 'II' },
      top: 40,
    },
  ],
  cables: [],
};

describe('an antenna against its rated wind', () => {
  const plan = first(bluff, { ratedWind: { speed: 90, basis: 'gust3-nominal' } });
  const { sheet, document } = sheetOf(plan);
  const check = document.checks.find(
    ({ id }) => id.startsWith('antenna:') && document.checks[0],
  ) as (typeof document.checks)[0];

  it('says that its ratio is a square, and of which type both speeds are', () => {
    const [demand, capacity] = [check.demand?.value ?? 0, check.capacity?.value ?? 0];
    expect(capacity).toBeCloseTo(90, 9);
    expect(check.ratio).toBeCloseTo((demand / capacity) ** 2, 9);
    expect(check.says).toMatch(
      /Demand [\d.]+ mph nominal gust, capacity 90 mph nominal gust, ratio [\d.]+; square of the gusts at 50\.5 ft governs\./,
    );
    const [note] = wordsOf(sheet).filter((line) => line.startsWith('Ratio: demand over capacity'));
    expect(note).toContain('For two gusts it is the square of demand over capacity');
    expect(wordsOf(sheetOf(bluff).sheet).join()).not.toContain('For two gusts');
  });

  it('has its rated wind among the ratings', () => {
    const made = (more: Document) => {
      const tables = blocksOf(sheetOf(first(bluff, more)).sheet, 'structure', 'table');
      const table = tables.find(({ caption }) => caption === 'Manufacturers’ ratings, as entered');
      return table?.rows.map((row) => row.map(({ text }) => text)).find(([name]) => name === 'four-element beam');
    };
    expect(made({})).toBeUndefined();
    expect(made({ ratedWind: { speed: 90, basis: 'fastest-mile' }, source: 'its manual' })).toEqual([
      'four-element beam',
      'rated wind',
      '90 mph (fastest mile)',
      'its manual',
    ]);
    expect(made({ ratedWind: 90 })?.[2]).toBe(
      '90 mph (type not stated; strength-level gust assumed, which gives the lowest capacity)',
    );
  });
});

describe('the reactions of a tower that a wire pulls', () => {
  const given = givenFor(demoPlan('light-mast'));
  const [table] = blocksOf(answerSheet(given), 'reactions', 'table');
  const names = table?.rows.map(([name]) => name?.text);

  it('do not call wind loads what is more than they are', () => {
    const { reactions, windLoads } = given.document;
    expect(reactions.allowable.shear.value).toBeGreaterThan(windLoads.total.force + 10);
    expect(names?.[0]).toBe('Allowable: wind loads and what is present without wind');
    const still = blocksOf(sheetOf(demoPlan('ten-numbers')).sheet, 'reactions', 'table')[0];
    expect(still?.rows[0]?.[0]?.text).toBe('Allowable, as in the wind loads');
  });

  it.each(['tia222-h', 'en1991-1-4'] as const)('name the factor on what stays at strength level, by %s', (method) => {
    const plan: Document = { ...demoPlan('light-mast'), method };
    const site = { ...(plan['site'] as Document), exposure: method === 'tia222-h' ? 'C' : undefined };
    const ground = method === 'tia222-h' ? site : { wind: 30, terrain: 'II' };
    const own = givenFor({ ...plan, site: JSON.parse(JSON.stringify(ground)) });
    const { allowable, withoutWind: steady, strength, nominal } = own.assessment.reactions;
    const { toStrengthFactor: factor = 0, toNominalFactor: toNominal } = METHOD_BY_ID[method];
    const wind = (nominal.shear - steady.shear) * (factor / toNominal);
    const used = ((strength?.shear ?? 0) - wind) / steady.shear;
    expect(allowable.shear).toBeGreaterThan(steady.shear);
    const rows = blocksOf(answerSheet(own), 'reactions', 'table')[0]?.rows.map(([name]) => name?.text) ?? [];
    const [, said] = /^Strength, with ([\d.]+) times what is present without wind$/.exec(rows[2] ?? '') ?? [];
    expect(Number(said)).toBeCloseTo(used, 9);
  });
});

describe('open questions on a sheet', () => {
  it('have answers in words, not identifiers', () => {
    const { sheet, document } = sheetOf(demoPlan('ten-numbers'));
    const [, table] = blocksOf(sheet, 'verdict', 'table');
    const said = table?.rows.map((row) => row.map(({ text }) => text).join(' | ')).join('\n') ?? '';
    expect(document.toFindOut.some(({ ratioIf }) => 'projected-round' in ratioIf)).toBe(true);
    expect(said).toContain('if projected area of round members');
    expect(said).toContain('D, open water or flats upwind');
    expect(said).not.toMatch(
      /projected-|flat-plate(?! equivalent)|asce7|tia222|if (effective(?! area)|I+|[BCD])\b(?!,)/,
    );
  });
});

describe('tubes, which are more than one', () => {
  const own = assessed(bent);
  const text = answerText(own, []);

  it('have verbs of their number', () => {
    expect(own.checks.find(({ kind }) => kind === 'elements')?.verdict).toBe('over');
    expect(text).toMatch(
      /^Tubes of the tube beam over: at [\d.]+ of their allowable capacity in a 250 mph strength-level gust; bending [\d.]+ ft from the support governs\. One of them is bent beyond/m,
    );
    expect(text).toMatch(/^- Tubes of the tube beam: over\. .* Hold to an actual gust/m);
    expect(text).toContain('Demand on the tubes of the tube beam exceeds their allowable capacity.');
    // On the side of a taller tower it can go down far enough to hold to 2 mph more.
    const [beam] = bent['loads'] as Document[];
    const tower = { ...(bent['tower'] as Document), top: 80 };
    const remedies = remediesOf(
      assessed({
        ...bent,
        tower,
        mast: { ...(bent['mast'] as Document), bearing: 80 },
        loads: [{ ...beam, height: 78 }],
      }),
    );
    if (!remedies) throw new Error('nothing helps');
    expect(remediesLines(remedies, 'us').join('\n')).toContain('the tubes of the tube beam hold to');
    expect(text).not.toMatch(/tubes of the tube beam (takes|is|keeps|holds)/);
  });
});

describe('cautions of several things', () => {
  const plan: Document = {
    ...bluff,
    loads: ['arm', 'panel', 'box'].map((name, index) => ({
      name,
      height: 20 + index,
      area: 1,
      areaKind: 'effective',
      offset: 2,
    })),
  };
  const all = 'Arm, panel and box are mounted beside the tower. Bending of the leg they are fixed to is not checked.';

  it('are one sentence for who reads them, and one each in JSON', () => {
    const text = answerText(assessed(plan), []);
    expect(text).toContain(`- ${all} Fix each at two points near the ends of a panel.`);
    expect(text).toContain('Arm, panel and box are off the axis and twist the tower.');
    expect(text.match(/mounted beside the tower/g)).toHaveLength(1);
    const { sheet, document } = sheetOf(plan);
    expect(wordsOf(sheet).filter((line) => line.includes('mounted beside the tower'))).toHaveLength(1);
    expect(wordsOf(sheet).join('\n')).toContain(all);
    const apart = document.cautions.filter(({ code }) => code === 'side-load');
    expect(apart.map(({ says }) => says.split(' ')[0])).toEqual(['Arm', 'Panel', 'Box']);
    expect(apart.map(({ at }) => at)).toEqual(['/loads/0', '/loads/1', '/loads/2']);
  });

  it('name no more than are read', () => {
    const many = Array.from({ length: 15 }, (_, index) => ({
      name: `box ${index}`,
      height: 20,
      area: 0.1,
      areaKind: 'effective',
      offset: 0,
    }));
    expect(answerText(assessed({ ...bluff, loads: many }), [])).toContain('box 11 and 3 more are mounted beside');
  });

  it('speak of no leg and no panel where the tower is a pole', () => {
    const mast = demoPlan('light-mast');
    const [said] = answerText(assessed(mast), [])
      .split('\n')
      .filter((line) => line.includes('mounted beside the tower'));
    expect(said).toContain('the pole’s wall');
    expect(said).not.toMatch(/\bleg\b|panel/);
  });

  it('do not ask again for what is given of the mast', () => {
    const said = (mast: Document | undefined) =>
      answerText(assessed({ ...demoPlan('headland-ridge'), ...(mast ? { mast } : {}) }), [])
        .split('\n')
        .find((line) => line.includes('with a couple')) ?? '';
    expect(said(undefined)).toMatch(/Let the mast reach farther inside; ask the manufacturer/);
    const { inside, ...rest } = demoPlan('headland-ridge')['mast'] as Document;
    expect(inside).toBeDefined();
    expect(said(rest)).toContain('Give the mast, how far it reaches inside');
  });
});

describe('an answer in SI', () => {
  it('has no feet and no miles in what it says itself', () => {
    for (const id of ['light-mast', 'headland-ridge']) {
      const own = assessed(demoPlan(id));
      expect(answerText(own, [])).not.toMatch(/\b(ft|feet|mile|miles|mph)\b/);
      const { sheet } = sheetOf(demoPlan(id));
      const words = wordsOf({
        ...sheet,
        parts: sheet.parts.filter((part) => !['working', 'sources'].includes(part.id)),
      });
      expect(words.filter((line) => /\b(ft|feet|mile|miles)\b/.test(line))).toEqual([]);
    }
    expect(answerText(assessed(demoPlan('ten-numbers')), [])).toContain('within half a mile');
  });
});

describe('entries to check', () => {
  const low = first(bluff, { boom: 40 });

  it('says its thing by name, and its place in JSON only', () => {
    const given = givenFor(low);
    const { entryWarnings } = given.document;
    expect(entryWarnings.map(({ pointer }) => pointer)).toEqual(['#/loads/0/boom']);
    for (const { says } of entryWarnings) expect(says).toMatch(/^Four-element beam: /);
    const told = [answerText(given.assessment, entryWarnings), wordsOf(answerSheet(given)).join('\n')];
    for (const text of told) {
      expect(text).toContain('Four-element beam: lowered flat');
      expect(text).not.toContain('#/');
    }
  });
});

describe('what would help', () => {
  it('is said once on a sheet', () => {
    const given = givenFor({ ...demoPlan('ten-numbers'), wanted: { margin: 0.2 } });
    const remedies = remediesOf(given.assessment);
    const document = answerDocument(given.assessment, given.document.plan, [], 'full', { remedies });
    const words = wordsOf(answerSheet({ ...given, document }));
    const [best] = document.remedies?.rows ?? [];
    expect(best?.says).toMatch(/^Arrange lines as a bundle \(cable run 1\): /);
    expect(words.filter((line) => line.includes(best?.says ?? '-'))).toHaveLength(1);
  });

  it('offers no other tube for a mast that will do', () => {
    const told = (plan: Document) => {
      const own = assessed(plan);
      return answerText(own, [], { remedies: remediesOf(own), tubes: standardTubesFor(own) });
    };
    expect(told(bluff)).not.toContain('standard pipe');
    const mast = { ...(bluff['mast'] as Document), wall: 0.05 };
    expect(told({ ...bluff, mast })).toContain(
      'The lightest standard pipe of the mast’s yield that keeps the margin set',
    );
  });
});
