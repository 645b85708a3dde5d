import { describe, expect, it } from 'vitest';
import { additionsOf, couldBeOver, type Verdict } from '../../src/margins/index.ts';
import { headline } from '../../src/worksheet/says.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

type Document = Record<string, unknown>;

const RANK: readonly Verdict[] = ['within', 'low-margin', 'open', 'over'];
const bluff = demoPlan('river-bluff');
const withoutRated = (plan: Document): Document => ({
  ...plan,
  loads: (plan['loads'] as Document[]).map(({ ratedWind: _, ...load }) => load),
});

/** Every verdict that the whole is said to have anywhere. */
function saidOfTheWhole(plan: unknown): readonly (Verdict | undefined)[] {
  const assessment = assessed(plan);
  return [assessment.decided.verdict, headline(assessment).find(({ as }) => as === 'verdict')?.verdict];
}

describe('the parts of a plan', () => {
  it('keep what is known of the tower where an antenna has no rated wind', () => {
    const { parts, verdict, decided } = assessed(withoutRated(bluff));
    const verdictOf = new Map(parts.map(({ id, verdict: of }) => [id, of]));
    expect(verdictOf.get('load:four-element beam')).toBe('open');
    expect(verdictOf.get('tower')).toBe('low-margin');
    expect(verdict).toBe('open');
    expect(decided).toMatchObject({ verdict: 'low-margin' });
    expect(decided.parts).toBeLessThan(decided.of);
  });

  it('stand from what is aloft down, each check in one of them', () => {
    for (const { plan } of demoPlans()) {
      const { parts, checks } = assessed(plan);
      expect(parts.flatMap((part) => part.checks.map(({ id }) => id)).sort()).toEqual(
        checks.map(({ id }) => id).sort(),
      );
      const [first] = parts;
      expect(['load', 'mast', 'tower-top', 'tower', 'rotator']).toContain(first?.kind);
    }
  });

  it('have none that waits for an answer no one can give', () => {
    const balanced = {
      ...bluff,
      loads: (bluff['loads'] as Document[]).map(({ offset: _, ...load }) => ({ ...load, offset: 0 })),
      ratings: [...(bluff['ratings'] as Document[]), { of: 'rotator', kind: 'torque', torque: 100 }],
    };
    const { parts, checks } = assessed(balanced);
    expect(checks.filter(({ because }) => because === 'balanced').length).toBeGreaterThan(0);
    expect(parts.find(({ kind }) => kind === 'rotator')?.verdict).toBeUndefined();
  });
});

describe('what is said of the whole', () => {
  it('is not within where an open part could be over', () => {
    const doubted = { ...bluff, ratings: [{ of: 'tower', top: 48, area: 38, wind: { speed: 90 } }] };
    const { parts, decided } = assessed(doubted);
    expect(parts.some(couldBeOver)).toBe(true);
    expect(decided.verdict).toBeUndefined();
    expect(saidOfTheWhole(doubted)).toEqual([undefined, 'open']);
  });

  it('is that of the worst part, and no better than what is open lets it be', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { parts, verdict, decided } = assessed(plan);
        const worst = parts.reduce((most, part) => Math.max(most, RANK.indexOf(part.verdict ?? 'within')), 0);
        expect(RANK.indexOf(verdict)).toBe(worst);
        const counted = parts.filter((part) => part.verdict !== undefined);
        expect(decided.of).toBe(counted.length);
        expect(decided.parts).toBe(counted.filter((part) => part.verdict !== 'open').length);
        const towerOpen = parts.some((part) => part.kind === 'tower' && part.verdict === 'open');
        if (!towerOpen && !parts.some(couldBeOver)) return;
        for (const said of saidOfTheWhole(plan)) expect(said ?? 'open').toMatch(/^(open|over)$/);
      }),
      { numRuns: 60 },
    );
  });

  it('lets a proposal of which nothing is known win no rank', () => {
    const known = { ratedWind: 120 };
    const loads = (bluff['loads'] as Document[]).map((load) => ({ ...load, ...known }));
    const before = { ...bluff, loads };
    const added = (load: Document): Document => ({
      ...before,
      loads: [...loads, { above: 1, areaKind: 'effective', ...load }],
    });
    const { after } = additionsOf(assessed(before), [
      { name: 'small, unrated', assessment: assessed(added({ name: 'small', area: 0.1 })) },
      { name: 'larger, rated', assessment: assessed(added({ name: 'larger', area: 0.3, ...known })) },
    ]);
    expect(after.map(({ rank }) => rank)).toEqual([2, 1]);
  });
});

describe('a tower rated by area', () => {
  /*
   * 48 ft lattice, 5.5 ft² effective at 50 ft, three lines of 0.405 in, TIA-222-H at 105 mph, exposure C. What is not the tower
   * itself makes a shear of F; the same wind on one square foot at 48 ft makes f; F/f square feet are used.
   */
  it('says what of the rated area is used, its own drag apart', () => {
    const plan = {
      units: 'us',
      method: 'tia222-h',
      site: { wind: 105, exposure: 'C' },
      tower: { support: 'free', top: 48, shape: 'lattice', faces: 3, width: 18, members: 'round' },
      loads: [{ name: 'beam', above: 2, on: 'tower', area: 5.5, areaKind: 'effective' }],
      cables: [],
      ratings: [{ of: 'tower', top: 48, area: 18, areaKind: 'effective', wind: { speed: 100, method: 'tia222-h' } }],
    };
    const used = (of: Document) => assessed(of).checks[0]?.result;
    const result = used(plan);
    // q at 50 ft over q at 48 ft is (50/48)^(2/9.5); no line and no mast beside it.
    expect((result?.areaUsed?.area ?? 0) / 0.09290304).toBeCloseTo(5.5 * (50 / 48) ** (2 / 9.5), 6);
    expect((result?.areaUsed?.rated ?? 0) / 0.09290304).toBeCloseTo(18, 9);
    expect(result?.of).toBe('shear');
    const bare = used({ ...plan, loads: [] })?.demand ?? Number.NaN;
    expect(result?.areaUsed?.ofTower).toBeCloseTo(bare, 6);
  });
});

describe('a tripod on a roof', () => {
  const tripod = (more: Document = {}): Document => ({
    units: 'us',
    method: 'tia222-h',
    site: { wind: 100, exposure: 'C' },
    tower: { support: 'roof', base: 25, top: 35, shape: 'lattice', faces: 3, width: 12, members: 'round', ...more },
    loads: [{ name: 'beam', above: 1, area: 3, areaKind: 'effective' }],
    cables: [],
    ratings: [{ of: 'tower', top: 35, area: 9, areaKind: 'effective', wind: { speed: 100, method: 'tia222-h' } }],
  });

  it('has no footing in soil, and one that is given is not passed over', () => {
    const kinds = (plan: Document) => assessed(plan).parts.map(({ kind }) => kind);
    expect(kinds(tripod())).toContain('tower');
    expect(kinds(tripod())).not.toContain('footing');
    expect(kinds(tripod({ foundation: { kind: 'manufacturer' } }))).toContain('footing');
  });
});
