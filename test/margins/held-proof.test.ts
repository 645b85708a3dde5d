import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND_FORCE } from '../../src/foundation/index.ts';
import { guyUse, heldUse, pushInLeg } from '../../src/margins/held/held-formulas.ts';
import { heldProofOf } from '../../src/margins/held/held-proof.ts';
import { guyedForcesOf } from '../../src/margins/index.ts';
import { towerModel } from '../../src/margins/tower-model.ts';
import { readPlan } from '../../src/plan/index.ts';
import { HELD_FAILURES } from '../../src/structure/index.ts';
import { answerText } from '../../src/worksheet/index.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';
import { GUYS, GUYS_IN_FULL, guyedPlan, RATED, SECTION, sideLoad, topLoad } from './guyed-tower.ts';

const checkOf = (plan: Document, kind: string) => assessed(plan).checks.find((check) => check.kind === kind);
const below = (loads: readonly Document[], tower: Document = {}, more: Document = {}) =>
  checkOf(guyedPlan(tower, { loads, ...more }), 'tower-below');
const useOf = (loads: readonly Document[], tower: Document = {}, more: Document = {}) =>
  below(loads, tower, more)?.result?.ratio ?? Number.NaN;
const heldBy = (guys: Document) => ({
  supportedAt: [
    { height: 33, ...guys },
    { height: 65, ...guys },
  ],
});

const HELD_AT_TOP = {
  supportedAt: [
    { height: 33, ...GUYS_IN_FULL },
    { height: 70, ...GUYS_IN_FULL },
  ],
};

describe('a tower between its guys', () => {
  it('in its own rated case is used whole, and no more', () => {
    const use = useOf([topLoad(12)]);
    expect(use).toBeLessThan(1.0005);
    expect(use).toBeGreaterThan(0.999);
  });

  it('with the weight of its load beside its rated case is beyond what is shown, not over, unless the rating covers the weight', () => {
    const heavy = [{ ...topLoad(12), weight: 35 }];
    expect(below(heavy)).toMatchObject({ verdict: 'open' });
    expect(useOf(heavy)).toBeGreaterThan(1);
    const covered = { of: 'tower', kind: 'weight', weight: 40, top: 70, supportedAt: [33, 65] };
    expect(useOf(heavy, {}, { ratings: [RATED, covered] })).toBeLessThan(1.0005);
  });

  it('is rated for less area as well, under which its lower guys pull no more than is shown', () => {
    for (const area of [0, 3, 6, 9]) expect(useOf([topLoad(area)])).toBeLessThan(1.0005);
  });

  it('is compared with a small load on its side, which no longer leaves all of it open', () => {
    const found = below([topLoad(6), sideLoad(0.05)]);
    expect(found?.because).toBeUndefined();
    expect(found?.result?.ratio).toBeGreaterThan(useOf([topLoad(6)]));
    expect(checkOf(guyedPlan({}, { loads: [topLoad(6), sideLoad(0.05)] }), 'tower')?.because).toBeUndefined();
  });

  it('is used more by more on its side, and beyond what is shown stays open, or is over beyond what any leg is shown to bear', () => {
    const uses = [0.05, 1, 2, 5].map((area) => useOf([topLoad(6), sideLoad(area)]));
    expect([...uses].sort((a, b) => a - b)).toEqual(uses);
    expect(below([topLoad(6), sideLoad(5)])?.because).toBe('beyond-rating');
    expect(below([topLoad(18)])?.verdict).toBe('over');
    expect(below([topLoad(60)])?.because).toBe('beyond-small-movement');
  });

  it('has no firm word where a quarter more wind finds no balance', () => {
    const slender = { ...SECTION, width: 7, leg: 0.75, brace: 0.2, panel: 12, legWall: 0.065 };
    const sections = Array.from({ length: 7 }, () => slender);
    const ratings = [{ ...RATED, wind: { ...RATED.wind, speed: 85 } }];
    const plan = (speed: number) => {
      const site = { wind: { speed, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' };
      return guyedPlan({ sections }, { loads: [topLoad(12)], ratings, site });
    };
    const failed = (speed: number) =>
      HELD_FAILURES.some((each) => each === checkOf(plan(speed), 'tower-below')?.because);
    const speeds = Array.from({ length: 5 }, (_, number) => 70 + 10 * number);
    const first = speeds.find(failed) ?? 0;
    expect(first).toBeGreaterThan(speeds[0] as number);
    expect(speeds.filter((speed) => failed(speed) !== speed >= first)).toEqual([]);
    // In that wind itself there are figures yet.
    expect(guyedForcesOf(assessed(plan(first)))?.failure).toBeUndefined();
  });

  it('that finds no balance even at rest says so beside what is compared above its guys', () => {
    const sections = Array.from({ length: 7 }, () => ({ ...SECTION, width: 4, leg: 0.5, brace: 0.2, legWall: 0.05 }));
    expect(below([topLoad(1)], { sections })).toMatchObject({ verdict: 'open', because: 'unstable' });
  });

  it('says that it is open where its guys are not the manufacturer’s own', () => {
    expect(below([topLoad(6)], { asDrawn: false })).toMatchObject({ verdict: 'open', needs: ['/tower/asDrawn'] });
  });

  it('holds to the wind in which it is used whole', () => {
    const found = below([topLoad(6), sideLoad(0.5)])?.result?.holdsTo;
    const there = { wind: { speed: (found?.design ?? 0) / MILE_PER_HOUR, basis: 'gust3-nominal' } };
    const site = { ...there, exposure: 'C', riskCategory: 'II' };
    expect(useOf([topLoad(6), sideLoad(0.5)], {}, { site })).toBeCloseTo(1, 3);
  });

  it('holds to the same wind, whatever least pressure counts in the design wind', () => {
    const holdsTo = (speed: number) => {
      const site = { wind: { speed, basis: 'gust3-strength' }, exposure: 'C', riskCategory: 'II' };
      const plan = guyedPlan({}, { method: 'asce7-16', site, loads: [topLoad(20), sideLoad(20)] });
      return ['tower-below', 'guys'].map((kind) => checkOf(plan, kind)?.result?.holdsTo?.gust ?? Number.NaN);
    };
    const [slow, fast] = [holdsTo(60), holdsTo(115)];
    for (const [index, gust] of slow.entries()) expect(gust / (fast[index] ?? 0)).toBeCloseTo(1, 5);
  });

  it('is not compared where its legs draw together below its highest guys', () => {
    const narrowing = (width: readonly [number, number], number = 2) => {
      const sections = Array.from({ length: 7 }, (_, index) =>
        index === number ? { ...SECTION, uniform: undefined, width } : SECTION,
      );
      return below([topLoad(6)], JSON.parse(JSON.stringify({ sections })));
    };
    expect(narrowing([12, 12])?.result).toBeDefined();
    expect(narrowing([12, 9])).toBeUndefined();
    expect(narrowing([9, 12])).toBeUndefined();
    // The whole of it pivots on a foot that widens.
    expect(narrowing([4, 12], 0)?.result).toBeDefined();
    expect(narrowing([12, 4], 0)).toBeUndefined();
    // The highest section ends above the highest guys, and begins below them.
    expect(narrowing([12, 9], 6)).toBeUndefined();
  });

  it('is shown no better by steel of which nobody says that it is alike', () => {
    const { make: _, ...apart } = SECTION;
    const sections = Array.from({ length: 7 }, () => apart);
    expect(useOf([topLoad(6), sideLoad(3)], { sections })).toBeGreaterThanOrEqual(useOf([topLoad(6), sideLoad(3)]));
  });

  it.each<[string, Document]>([
    ['initial tension', heldBy({ ...GUYS_IN_FULL, tension: undefined })],
    ['grade and tension', heldBy(GUYS)],
    ['how its base stands', { baseHeld: undefined }],
  ])('without %s is used no less than with it', (_, tower) => {
    const loads = [topLoad(6), sideLoad(1)];
    const given = JSON.parse(JSON.stringify(tower)) as Document;
    expect(useOf(loads, given)).toBeGreaterThanOrEqual(useOf(loads) - 1e-9);
    const open = below(loads, given)?.result;
    expect(open?.ratioRange[0]).toBeLessThanOrEqual(useOf(loads) + 1e-9);
  });

  it('held at its very top has no other comparison', () => {
    const tower = HELD_AT_TOP;
    const ratings = [{ ...RATED, supportedAt: [33, 70] }];
    const kinds = assessed(guyedPlan(tower, { ratings })).checks.map(({ kind }) => kind);
    expect(kinds).toContain('tower-below');
    expect(kinds).not.toContain('tower');
  });
});

describe('guys against their own strength', () => {
  const tension = (plan: Document) => guyedForcesOf(assessed(plan))?.levels.map((each) => each.tension) ?? [];
  const none = { ratings: [] };

  it('bear six tenths of breaking at strength level', () => {
    const plan = guyedPlan({}, none);
    const { result, verdict } = checkOf(plan, 'guys') ?? {};
    expect(result?.capacity).toBeCloseTo(0.6 * 17750, 6);
    // Strength level is 1.6 of the nominal wind: more than the nominal tension, and less than as much more.
    const most = Math.max(...tension(plan));
    expect(result?.demand).toBeGreaterThan(most);
    expect(result?.demand).toBeLessThan(1.6 * most);
    expect(result?.ratio).toBeCloseTo((result?.demand ?? 0) / (result?.capacity ?? 1), 9);
    expect(verdict).toBe('within');
  });

  it('lose a fifth to clips, and count them where nobody says what makes their ends fast', () => {
    const [grips, clips, untold] = ['grips', 'clips', undefined].map((ends) => {
      const tower = JSON.parse(JSON.stringify(heldBy({ ...GUYS_IN_FULL, ends }))) as Document;
      return checkOf(guyedPlan(tower, none), 'guys')?.result?.ratio ?? 0;
    });
    expect(clips).toBeCloseTo((grips ?? 0) / 0.8, 9);
    expect(untold).toBeCloseTo(clips ?? 0, 9);
  });

  it('of no told grade are the weakest, drawn hardest, and ask for it', () => {
    const check = checkOf(guyedPlan(heldBy(GUYS), none), 'guys');
    expect(check?.result?.capacity).toBeCloseTo(0.6 * 0.8 * 5120, 6);
    expect(check).toMatchObject({ verdict: 'open', because: 'not-given' });
    expect(check?.needs).toContain('/tower/supportedAt/0/grade');
  });

  it('beside a rating that speaks are left to it where not all is told', () => {
    expect(checkOf(guyedPlan(heldBy(GUYS), { loads: [topLoad(6)] }), 'guys')).toBeUndefined();
  });

  it('are a fault where they are drawn beyond breaking', () => {
    const reading = readPlan(guyedPlan(heldBy({ ...GUYS_IN_FULL, tension: 4000 })));
    expect(reading.ok ? [] : reading.faults.map(({ code, pointer }) => [code, pointer])).toEqual([
      ['guy-broken', '#/tower/supportedAt/0/tension'],
      ['guy-broken', '#/tower/supportedAt/1/tension'],
    ]);
  });

  it('say what they are drawn to in the answer', () => {
    const text = answerText(assessed(guyedPlan()), []);
    expect(text).toContain('Guys: within.');
    expect(text).toContain(`strand breaks at ${(17750 / POUND_FORCE / 1000).toFixed(2).replace('.', ',')}0 lbf`);
  });
});

describe('the formulas of a tower on supports', () => {
  it('give what a pencil gives', () => {
    // Three legs 0.273 m apart: 12000/3 + 2301/(0.866·0.273) − 900.
    expect(pushInLeg.of(1 / 3, 12000, 2301, 0.866 * 0.273, 900)).toBeCloseTo(12832.8, 0);
    expect(heldUse.of(300, 400)).toBe(0.75);
    expect(guyUse.of(5152, 0.6, 0.8, 17750)).toBeCloseTo(0.6047, 4);
  });
});

describe('room left on a tower between its guys', () => {
  it('put back brings it to the margin that is wanted', () => {
    const loads = [topLoad(2), sideLoad(0.2)];
    const more = { ratings: [{ ...RATED, supportedAt: [33, 70], wind: { ...RATED.wind, speed: 115 } }] };
    const tower = HELD_AT_TOP;
    const [room] = assessed(guyedPlan(tower, { loads, ...more })).roomLeft;
    expect(room?.check).toBe('tower-below');
    const added = { ...topLoad((room?.area ?? 0) / 0.09290304), name: 'more' };
    const kept = 1 - assessed(guyedPlan()).input.wanted.margin;
    expect(room?.area).toBeGreaterThan(0.1);
    expect(useOf([...loads, added], tower, more)).toBeCloseTo(kept, 3);
  });

  it('is none where more at the top slackens lower guys that are used whole already', () => {
    const supportedAt = [33, 60].map((height) => ({ height, ...GUYS_IN_FULL }));
    const ratings = [{ ...RATED, supportedAt: [33, 60] }];
    const proofWith = (...loads: Document[]) => {
      const proof = heldProofOf(towerModel(checkInputOf(guyedPlan({ supportedAt }, { loads, ratings }))));
      if (!proof || proof.failure !== undefined) throw new Error('not compared');
      return proof;
    };
    const { worst, room } = proofWith(sideLoad(0.5));
    expect(worst.of).toBe('guy-tension');
    expect(worst.ratio).toBeGreaterThan(1);
    expect(proofWith(sideLoad(0.5), topLoad(1)).worst.ratio).toBeLessThan(worst.ratio);
    const top = { height: 70 * FOOT, on: 'tower' } as const;
    expect(room(top, 1)?.area).toBe(0);
    // Nearer to the guys that rule, more only ever asks more.
    expect(room({ ...top, height: 40 * FOOT }, 1)?.area).toBeLessThan(0);
    // What another quarter of the use leaves is bounded by what comes to rule with it.
    const { area } = room(top, 1.25) ?? { area: Number.NaN };
    const filled = proofWith(sideLoad(0.5), topLoad(area / FOOT ** 2)).worst;
    expect(filled.ratio).toBeCloseTo(1.25, 3);
    expect(filled.of).not.toBe('guy-tension');
  });
});
