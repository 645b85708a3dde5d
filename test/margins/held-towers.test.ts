import { describe, expect, it } from 'vitest';
import { FOOT } from '../../src/foundation/index.ts';
import { answerText, headlineSays } from '../../src/worksheet/index.ts';
import { sheetOf } from '../worksheet/sheet-of.ts';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

const LATTICE = {
  shape: 'lattice',
  faces: 3,
  width: 15,
  members: 'round',
  leg: 1.25,
  brace: 0.5,
  panel: 18,
  pattern: 'zigzag',
};
const BEAM = { name: 'b', above: 2, front: 5, side: 3, areaKind: 'effective', turns: true, weight: 30 };
const AREA = {
  of: 'tower',
  area: 12,
  areaKind: 'effective',
  above: 0,
  top: 80,
  supportedAt: [38, 72],
  wind: { speed: 90, method: 'eia222-f' },
};
const WEIGHT = { of: 'tower', kind: 'weight', weight: 300 };
const GUYS = [
  { height: 38, by: 'guys' },
  { height: 72, by: 'guys' },
];
const SITE = { wind: { speed: 75, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' };

/** A lattice of 80 ft and what it is held by, if by anything; its rating is for guys at 38 and 72 ft. */
const plan = (tower: Document, ratings: readonly Document[] = [AREA, WEIGHT], loads: readonly Document[] = [BEAM]) => ({
  units: 'us',
  method: 'tia222-g',
  site: SITE,
  tower: { top: 80, ...LATTICE, ...tower },
  mast: {
    outside: 2,
    wall: 0.25,
    length: 10,
    inside: 4,
    yield: 50,
    bearing: (tower['top'] as number | undefined) ?? 80,
  },
  loads,
  cables: [{ count: 2, diameter: 0.4, weight: 0.1 }],
  ratings,
});
const guyed = { support: 'guyed', asDrawn: true };

const checkOf = (document: Document, id: string) => assessed(document).checks.find((check) => check.id === id);
const codesOf = (document: Document) => assessed(document).cautions.map(({ code }) => code);
const wordsOf = (document: Document) => assessed(document).cautions.flatMap(({ word }) => (word ? [word] : []));

describe('a rating that names supports', () => {
  it.each([
    ['stands by itself', { support: 'free' }],
    ['stands on a roof', { support: 'roof', base: 20 }],
  ])('says nothing of a tower that %s', (_, tower) => {
    const free = plan(tower);
    const check = checkOf(free, 'tower');
    expect(check).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/ratings/0/supportedAt'] });
    expect(check?.result).toBeUndefined();
    expect(checkOf(free, 'tower-top')?.verdict).toBe('open');
    expect(codesOf(free)).toContain('rating-for-other-height');
    expect(headlineSays(assessed(free))).toContain('Its rating is for supports at 38 and 72 ft; this tower is ');
  });

  it('says nothing of it by force, by moment or by weight either', () => {
    for (const kind of [{ kind: 'force', force: 500 }, { kind: 'moment', moment: 90_000 }, WEIGHT]) {
      const free = plan({ support: 'free' }, [{ of: 'tower', supportedAt: [38, 72], ...kind }]);
      expect(checkOf(free, 'tower')?.result).toBeUndefined();
      expect(checkOf(free, 'tower')?.verdict).toBe('open');
    }
    const weighed = checkOf(plan({ support: 'free' }, [AREA, { ...WEIGHT, supportedAt: [38, 72] }]), 'weight:2');
    expect(weighed).toMatchObject({ verdict: 'open', needs: ['/ratings/1/supportedAt'] });
  });

  it('says nothing of a tower held elsewhere, and tells both', () => {
    const elsewhere = plan({ ...guyed, supportedAt: [GUYS[0] as Document, { height: 70, by: 'guys' }] });
    expect(checkOf(elsewhere, 'tower')).toMatchObject({ verdict: 'open', needs: ['/ratings/0/supportedAt'] });
    expect(headlineSays(assessed(elsewhere))).toMatch(
      /^Open: tower\. Its rating is for supports at 38 and 72 ft; those of this tower are at 38 and 70 ft\./,
    );
  });

  it('speaks of the tower it is for: 1000.6 of 2558.7 lbf·ft at the highest guy, by hand', () => {
    // Summed over thin slices: the beam 10 ft above the guy, mast 76 to 86 ft, lattice and lines 72 to 80 ft.
    const { result, verdict } = checkOf(plan({ ...guyed, supportedAt: GUYS }), 'tower') ?? {};
    expect(verdict).toBe('within');
    expect(result?.ratio).toBeCloseTo(0.39107, 3);
    expect((result?.height as number) / FOOT).toBeCloseTo(72, 6);
  });
});

describe('a rating for another height', () => {
  const { supportedAt: _, ...rating } = AREA;

  it('is told with both heights, and not as one without a wind', () => {
    const other = plan({ support: 'free' }, [{ ...rating, top: 60 }]);
    expect(checkOf(other, 'tower')?.needs).toEqual(['/ratings/0/top']);
    expect(headlineSays(assessed(other))).toMatch(
      /^Open: tower\. Its rating is for a top at 60 ft; this one is at 80 ft\./,
    );
  });

  it('is told once of several', () => {
    const other = plan({ support: 'free' }, [
      { ...rating, top: 60 },
      { ...rating, top: 72.5 },
    ]);
    expect(headlineSays(assessed(other))).toContain(
      'Its ratings are for tops at 60 and 72.5 ft; this one is at 80 ft.',
    );
  });

  it('leaves the question for the wind to a rating that has none', () => {
    const windless = plan({ support: 'free' }, [{ of: 'tower', area: 12, areaKind: 'effective' }]);
    expect(checkOf(windless, 'tower')?.needs).toEqual(['/ratings/0/wind']);
  });
});

describe('a tower whose supports are not given', () => {
  it('is held as its rating has it, with a caution', () => {
    const [told, rated] = [plan({ ...guyed, supportedAt: GUYS }), plan(guyed)];
    expect(checkOf(rated, 'tower')?.result?.ratio).toBeCloseTo(checkOf(told, 'tower')?.result?.ratio as number, 12);
    expect(checkOf(rated, 'tower')).toMatchObject({ verdict: 'within', needs: [] });
    expect(codesOf(told)).not.toContain('supports-not-given');
    expect(wordsOf(rated)).toContain('rated-guyed');
    expect(wordsOf(plan({ support: 'bracketed' }))).toContain('rated-bracketed');
    // A rating for another height tells nothing of this tower's supports.
    expect(wordsOf(plan(guyed, [{ ...AREA, top: 60, supportedAt: [20, 50] }, AREA]))).toContain('rated-guyed');
  });

  const APART = [AREA, { ...AREA, supportedAt: [40, 70] }];
  const { supportedAt: _, ...unheld } = AREA;

  it.each([
    ['where its ratings differ', APART, 'rated-apart', '38 and 72 ft; 40 and 70 ft. Give those of this tower.'],
    [
      'where no rating names any',
      [unheld],
      'not-given',
      'Heights of guys or brackets not given; the manufacturer’s drawing has them.',
    ],
  ])('is compared nowhere %s: no use, no gust, no levels', (_, ratings, word, words) => {
    for (const support of ['guyed', 'bracketed']) {
      const answer = assessed(plan({ support }, ratings));
      expect(answer.checks[0]).toMatchObject({
        verdict: 'open',
        because: 'missing',
        needs: ['/tower/supportedAt'],
      });
      for (const id of ['tower', 'tower-top']) {
        expect(answer.checks.find((check) => check.id === id)?.result).toBeUndefined();
      }
      expect(answer.ratios).toEqual([]);
      expect(answer.roomLeft).toEqual([]);
      expect(answer.cautions.find(({ code }) => code === 'supports-not-given')?.word).toBe(word);
      expect(answer.cautions.map(({ code }) => code)).not.toContain('rating-for-other-height');
      expect(headlineSays(answer)).toContain(words);
    }
  });

  it('still has a sheet, drawings and working, as one held at its very top has', () => {
    const top = [{ height: 80, by: 'guys' }];
    for (const tower of [guyed, { ...guyed, supportedAt: top }]) {
      const notGiven = plan(tower, [{ ...unheld, ...('supportedAt' in tower ? { supportedAt: [80] } : {}) }]);
      expect(checkOf(notGiven, 'tower')?.result).toBeUndefined();
      expect(sheetOf(notGiven, 'full').sheet.parts.length).toBeGreaterThan(5);
    }
    expect(headlineSays(assessed(plan({ ...guyed, supportedAt: top }, [unheld])))).toContain(
      'Its highest support is at its very top',
    );
  });

  it('is not over as the cantilever that it is not', () => {
    const heavy = plan(guyed, [unheld], [{ ...BEAM, front: 90 }]);
    expect(checkOf(heavy, 'tower')?.verdict).toBe('open');
  });
});

describe('a rating that names no supports', () => {
  const { supportedAt: _, ...unheld } = AREA;

  it('is taken to be for the tower as it is held, with a caution', () => {
    expect(codesOf(plan({ ...guyed, supportedAt: GUYS }, [unheld]))).toContain('rating-supports-assumed');
    expect(codesOf(plan({ ...guyed, supportedAt: GUYS }))).not.toContain('rating-supports-assumed');
    expect(codesOf(plan({ support: 'free' }, [unheld]))).not.toContain('rating-supports-assumed');
    expect(codesOf(plan(guyed, [unheld]))).not.toContain('rating-supports-assumed');
  });
});

/** 50 ft, held to a house at 40 ft and nowhere else. */
const bracketed = (loads: readonly Document[], more: Document = {}, speed = 90) => ({
  ...plan({ support: 'bracketed', top: 50, supportedAt: [{ height: 40, by: 'bracket' }] }, [], [BEAM, ...loads]),
  ratings: [{ ...AREA, top: 50, supportedAt: [40], wind: { speed, method: 'eia222-f' } }],
  ...more,
});
const LOW = { name: 'low', height: 20, area: 150, areaKind: 'effective', on: 'tower', weight: 20, offset: 0 };

describe('below the highest bracket', () => {
  it('nothing may hang, for nothing there is compared', () => {
    const low = bracketed([LOW]);
    expect(checkOf(low, 'tower')).toMatchObject({ verdict: 'open', because: 'held', needs: ['/loads/1/height'] });
    expect(checkOf(low, 'tower')?.result?.ratio).toBeGreaterThan(0.3);
    expect(assessed(low).roomLeft).toEqual([]);
    const said = '“low” is below the highest bracket, where nothing is compared.';
    expect(headlineSays(assessed(low))).toContain(said);
    expect(answerText(assessed(low), [])).toMatch(new RegExp(`^- Tower: open\\. .* ${said}$`, 'm'));
  });

  it('what hangs at the bracket or above it is compared', () => {
    expect(checkOf(bracketed([{ ...LOW, height: 40, area: 0.5 }]), 'tower')?.verdict).toBe('within');
    expect(checkOf(bracketed([{ ...LOW, height: [39, 41], area: 0.5 }]), 'tower')?.because).toBe('held');
  });

  it('lines and its own drag may be, as far as the rated own drag goes', () => {
    /*
     * A foot of lattice presents 0.3800 ft² by TIA-222-G and 0.3906 ft² by TIA/EIA-222-F, each line 0.04 ft². It is tightest
     * between 30 and 40 ft: asked 0.96·0.85·0.00256·1.0149·0.85·75² = 10.136 psf, rated 0.75·0.00256·1.017·90²·1.2154 =
     * 19.22 psf, so (7.508 − 3.852)/(10.136·0.04) = 9.0 lines. Rated at 62 mph it is 3.563 lbf, less than the tower alone.
     */
    const lines = (count: number, speed?: number) =>
      checkOf(bracketed([], { cables: count > 0 ? [{ count, diameter: 0.4 }] : [] }, speed), 'tower');
    expect(lines(8)).toMatchObject({ verdict: 'within', needs: [] });
    expect(lines(10)).toMatchObject({ verdict: 'open', because: 'held', needs: ['/cables'] });
    expect(lines(0, 62)).toMatchObject({ verdict: 'open', because: 'held', needs: ['/tower'] });
    expect(lines(0, 66)?.because).not.toBe('held');
  });

  it('ice makes more drag than any rating shows', () => {
    const iced = {
      ...bracketed([], { site: { ...SITE, ice: { thickness: 0.5, gust: 40 } }, cables: [] }),
      loads: [{ ...BEAM, icedArea: 7 }],
    };
    expect(checkOf(iced, 'ice')).toMatchObject({ verdict: 'open', because: 'held' });
    expect(answerText(assessed(iced), [])).toMatch(/^- Tower with ice: open\. .* Ice there could catch more wind/m);
    const { supportedAt: _, ...unheld } = iced.ratings[0] as Document;
    const free = { ...iced, tower: { support: 'free', top: 50, ...LATTICE }, ratings: [unheld] };
    expect(checkOf(free, 'ice')?.verdict).toBe('within');
  });

  it('leaves the crank-up on the gable not shown once its lines run on to the ground, for which its maker did not allow', () => {
    const gable = demoPlan('house-bracket');
    const [rating] = gable['ratings'] as Document[];
    const [lines] = gable['cables'] as Document[];
    const down = { ...gable, cables: [{ ...lines, from: 0 }] };
    const withCables = { count: 2, diameter: 0.405, arrangement: 'flat' };
    expect(checkOf(gable, 'tower')?.verdict).toBe('within');
    expect(checkOf(down, 'tower')).toMatchObject({ verdict: 'open', because: 'held', needs: ['/cables'] });
    expect(checkOf({ ...down, ratings: [{ ...rating, withCables }] }, 'tower')?.verdict).toBe('within');
  });
});
