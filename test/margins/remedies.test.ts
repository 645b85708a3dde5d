import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RemedyOutcomeAnswer } from '../../src/answer/index.ts';
import {
  type Assessment,
  assess,
  changedBy,
  LOWERING_GRAIN,
  LOWERING_STEP,
  type Remedies,
  type Remedy,
  type RemedyChange,
  remediesOf,
  type Verdict,
  worstVerdict,
} from '../../src/margins/index.ts';
import { STANDARD_PIPES } from '../../src/structure/index.ts';
import {
  answerDocument,
  answerText,
  remediesDocument,
  remediesLines,
  remediesSays,
} from '../../src/worksheet/index.ts';
import { anyPlan, assessed, checkInputOf, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const bluff = demoPlan('river-bluff');
const headland = demoPlan('headland-ridge');
const orchard = demoPlan('light-mast');
const gable = demoPlan('house-bracket');
const of = (plan: Document, key: string) => plan[key] as Document;
const all = (plan: Document, key: string) => plan[key] as Document[];

/** The demo plans, and others in which each kind of remedy is among the best. */
const PLANS: Readonly<Record<string, Document>> = {
  ...Object.fromEntries(demoPlans().map(({ id, plan }) => [id, plan])),
  'lines outside a pole': {
    ...orchard,
    cables: [{ count: 6, diameter: 10.3, to: 8.8 }],
  },
  'a force of the maker’s': {
    ...gable,
    mast: { ...of(gable, 'mast'), yield: 46 },
    loads: [
      { ...all(gable, 'loads')[0], above: 4 },
      { name: 'panel', height: 50, force: 60, wind: 100, offset: 0 },
    ],
  },
  'a long thin mast': {
    ...bluff,
    mast: { outside: 1.9, wall: 0.145, length: 16, inside: 4, bearing: 48, yield: 35 },
    loads: [{ ...all(bluff, 'loads')[0], height: 57 }],
  },
  // Every larger tube catches so much wind that the tower's top then holds to less than the mast does now.
  'a mast whose larger tubes cost the tower more': {
    ...bluff,
    mast: { outside: 1.95, wall: 0.145, length: 16, inside: 4, bearing: 48, yield: 48 },
    loads: [{ ...all(bluff, 'loads')[0], height: 54 }],
  },
  // The next larger tubes leave the tower's top, shown now, not shown.
  'a mast whose larger tubes leave the top unproven': {
    ...bluff,
    mast: { outside: 2.5, wall: 0.083, length: 16, inside: 4, bearing: 48, yield: 27 },
    loads: [{ ...all(bluff, 'loads')[0], height: 52 }],
  },
  'weakness that only moves': {
    ...headland,
    mast: { ...of(headland, 'mast'), inside: 1.3 },
    cables: [{ count: 1, diameter: 40 }],
    loads: all(headland, 'loads').map((load, index) => (index === 0 ? { ...load, above: 1.25 } : load)),
  },
  'an arm that twists the braces': JSON.parse(
    readFileSync(new URL('by-hand/twisted.json', import.meta.url), 'utf8'),
  ) as Document,
  'nearly within': { ...headland, mast: { ...of(headland, 'mast'), inside: 1.2 } },
};
const plans = Object.entries(PLANS);

const asked = (own: Assessment): Remedies => remediesOf(own) as Remedies;
const lowest = ({ checks, weakest }: Assessment) => checks.find(({ id }) => id === weakest)?.result?.holdsTo?.gust;

/** The plan document as its owner would change it. */
function rewritten(plan: Document, change: RemedyChange): Document {
  const si = plan['units'] === 'si';
  const [length, diameter] = [si ? 1 : 0.3048, si ? 0.001 : 0.0254];
  const loads = all(plan, 'loads');
  const cables = all(plan, 'cables');
  const isLoad = (index: number) => 'load' in change && change.load.at === `/loads/${index}`;
  switch (change.of) {
    case 'load-off':
      return { ...plan, loads: loads.filter((_, index) => !isLoad(index)) };
    case 'load-to-axis':
      return { ...plan, loads: loads.map((load, index) => (isLoad(index) ? { ...load, offset: 0 } : load)) };
    case 'load-lower': {
      const lower = (load: Document) => {
        const key = load['height'] === undefined ? 'above' : 'height';
        const height = load[key] as number | number[];
        const by = change.by / length;
        return { ...load, [key]: Array.isArray(height) ? height.map((end) => end - by) : height - by };
      };
      return { ...plan, loads: loads.map((load, index) => (isLoad(index) ? lower(load) : load)) };
    }
    case 'load-smaller': {
      const sized = ['area', 'front', 'side', 'force', 'icedArea'];
      const smaller = (load: Document) =>
        Object.fromEntries(
          Object.entries(load).map(([key, value]) => [
            key,
            sized.includes(key) ? (value as number) * change.times : value,
          ]),
        );
      return { ...plan, loads: loads.map((load, index) => (isLoad(index) ? smaller(load) : load)) };
    }
    case 'mast-shorter': {
      const mast = of(plan, 'mast');
      return { ...plan, mast: { ...mast, length: (mast['length'] as number) - change.by / length } };
    }
    case 'mast-larger': {
      const { outside, wall } = change.pipe;
      return { ...plan, mast: { ...of(plan, 'mast'), outside: outside / diameter, wall: wall / diameter } };
    }
    case 'lines-arranged': {
      const changed = change.runs.map(({ at }) => at);
      const laid = (run: Document, index: number) =>
        changed.includes(`/cables/${index}`) ? { ...run, arrangement: change.laid } : run;
      return { ...plan, cables: cables.map(laid) };
    }
    case 'line-off': {
      const fewer = (run: Document, index: number) =>
        change.run.at === `/cables/${index}` ? { ...run, count: (run['count'] as number) - 1 } : run;
      return { ...plan, cables: cables.map(fewer).filter((run) => (run['count'] as number) > 0) };
    }
  }
}

const near = (found: number | undefined, whole: number | undefined, what: string) => {
  if (whole === undefined) expect(found, what).toBeUndefined();
  else expect((found as number) / whole, what).toBeCloseTo(1, 8);
};

/** A claim in the document against the document of the changed plan. */
function claimHolds(told: RemedyOutcomeAnswer, ofCheck: string, changed: Document) {
  const whole = answerDocument(assessed(changed), changed, [], 'none');
  const check = whole.checks.find(({ id }) => id === ofCheck);
  const next = whole.checks.find(({ id }) => id === whole.weakest);
  near(told.ratio, check?.ratio, told.says);
  near(told.holdsToGust?.value, check?.holdsTo?.gust.value, told.says);
  near(told.next?.gust.value, next?.holdsTo?.gust.value, told.says);
  expect(told.next?.check).toBe(whole.weakest);
  expect([told.verdict, told.planVerdict]).toEqual([check?.verdict, whole.verdict]);
}

const noWorse = (before: Verdict, after: Verdict) => worstVerdict([before, after]) === before;

function makesNothingWorse(own: Assessment, other: Assessment, { check, change }: Remedy, ofCheck: string) {
  const then = (id: string) => other.checks.find((each) => each.id === id);
  for (const each of own.checks) {
    const after = then(each.id);
    if (after?.because === 'balanced') continue;
    if (!after) expect(change.of === 'load-off' || each.result === undefined).toBe(true);
    else expect(noWorse(each.verdict, after.verdict), `${each.id} by ${change.of}`).toBe(true);
  }
  expect(noWorse(own.verdict, other.verdict)).toBe(true);
  const before = lowest(own);
  if (before !== undefined) expect(lowest(other) as number).toBeGreaterThanOrEqual(before * (1 - 1e-8));
  if (check)
    expect(then(ofCheck)?.result?.ratio).toBeLessThan(own.checks.find(({ id }) => id === ofCheck)?.result?.ratio ?? 0);
}

describe('remedies of the weakest link', () => {
  it.each(plans)('of %s are at most three, each of another kind, the best first', (_, plan) => {
    const own = assessed(plan);
    const { check, remedies } = asked(own);
    expect(check).toBe(own.checks.find(({ id }) => id === own.weakest));
    expect(remedies.length).toBeGreaterThan(0);
    expect(remedies.length).toBeLessThanOrEqual(3);
    const kinds = remedies.map(({ change }) => `${change.of} ${'laid' in change ? change.laid : ''}`);
    expect(new Set(kinds).size).toBe(kinds.length);
    const gusts = remedies.map(({ weakest }) => weakest?.result?.holdsTo?.gust as number);
    for (let index = 1; index < gusts.length; index += 1) {
      expect(gusts[index]).toBeLessThanOrEqual((gusts[index - 1] as number) * (1 + 1e-6));
    }
  });

  it.each(plans)('of %s make nothing worse', (_, plan) => {
    const own = assessed(plan);
    const { check, remedies } = asked(own);
    for (const remedy of remedies) makesNothingWorse(own, assessed(rewritten(plan, remedy.change)), remedy, check.id);
  });

  it.each(plans)('of %s claim what the plan says that its owner has changed so', (_, plan) => {
    const own = assessed(plan);
    const found = asked(own);
    const told = remediesDocument(found, own.input.station.units);
    const unchanged = answerDocument(own, plan, [], 'none');
    const check = unchanged.checks.find(({ id }) => id === told.ofCheck);
    expect([told.ratio, told.verdict, told.holdsToGust]).toEqual([check?.ratio, check?.verdict, check?.holdsTo?.gust]);
    found.remedies.forEach((remedy, index) => {
      const row = told.rows[index] as (typeof told.rows)[number];
      claimHolds(row, told.ofCheck, rewritten(plan, remedy.change));
      remedy.also.forEach((other, place) => {
        claimHolds(row.also[place] as RemedyOutcomeAnswer, told.ofCheck, rewritten(plan, other.change));
      });
    });
  });

  it('are of every kind that changes a tower’s use, somewhere among these plans', () => {
    const kinds = plans.flatMap(([, plan]) =>
      asked(assessed(plan)).remedies.map(({ change }) => ('laid' in change ? change.laid : change.of)),
    );
    const wanted = [
      'load-off',
      'load-lower',
      'load-smaller',
      'load-to-axis',
      'mast-larger',
      'mast-shorter',
      'bundle',
      'inside',
      'line-off',
    ];
    expect(kinds).toEqual(expect.arrayContaining(wanted));
  });

  it('over plans of every sort make nothing worse, and claim what the changed plan says', () => {
    let told = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const own = assess(checkInputOf(plan));
        const found = remediesOf(own);
        if (!found) return;
        for (const remedy of found.remedies) {
          const other = assessed(rewritten({ loads: [], cables: [], ...plan }, remedy.change));
          makesNothingWorse(own, other, remedy, found.check.id);
          const after = other.checks.find(({ id }) => id === found.check.id);
          near(remedy.check?.result?.ratio, after?.result?.ratio, remedy.change.of);
          near(remedy.check?.result?.holdsTo?.gust, after?.result?.holdsTo?.gust, remedy.change.of);
          told += 1;
        }
      }),
      { numRuns: 40 },
    );
    expect(told).toBeGreaterThan(40);
  });

  it('lower a load no farther than it must go to be within, with a shorter and the whole way beside it', () => {
    const own = assessed(headland);
    const remedy = asked(own).remedies.find(({ change }) => change.of === 'load-lower') as Remedy;
    const change = remedy.change as Extract<RemedyChange, { of: 'load-lower' }>;
    const verdictAt = (by: number) =>
      assessed(rewritten(headland, { ...change, by })).checks.find(({ id }) => id === own.weakest)?.verdict;
    expect(verdictAt(0)).toBe('low-margin');
    expect(verdictAt(change.by - LOWERING_GRAIN.si)).toBe('low-margin');
    expect(verdictAt(change.by)).toBe('within');
    expect(remedy.check?.verdict).toBe('within');
    // The beam is 1.5 m above the top, and a foot stays free: 1.2 m at most.
    const ways = remedy.also.map((other) => (other.change as typeof change).by);
    expect(ways[0]).toBe(LOWERING_STEP.si);
    expect(ways[1]).toBeCloseTo(1.2, 9);
  });

  it('lower no load past what is below it, nor off the tower, nor a wire', () => {
    const found = asked(assessed(demoPlan('guyed-lattice')));
    const lower = found.remedies.find(({ change }) => change.of === 'load-lower') as Remedy;
    const { load, by } = lower.change as Extract<RemedyChange, { of: 'load-lower' }>;
    // 5 ft above the top, the other at 1.5 ft, one foot kept free.
    expect(load.name).toBe('loop');
    expect(by / 0.3048).toBeCloseTo(2.5, 9);
    // All that hangs on the pole stands on its top, is a wire or hangs with its lower end above half of it.
    const ofPole = asked(assessed(orchard)).remedies.map(({ change }) => change);
    expect(ofPole.filter(({ of: kind }) => kind === 'load-lower')).toEqual([]);
    expect(ofPole.filter(({ of: kind }) => kind === 'load-off')).toHaveLength(1);
  });

  it('bring a load to the axis, where that turns the rotator or twists the braces most', () => {
    const ratings = [...all(bluff, 'ratings'), { of: 'rotator', kind: 'torque', brake: 20, level: 'allowable' }];
    const loads = all(bluff, 'loads').map((load) => (load['name'] === 'vertical' ? { ...load, offset: 2 } : load));
    const own = assessed({ ...bluff, loads, ratings });
    const found = asked(own);
    expect(found.check.id).toBe('rotator:2');
    const toAxis = found.remedies.find(({ change }) => change.of === 'load-to-axis');
    expect(toAxis?.check?.because).toBe('balanced');
    expect(remediesLines(found, 'us').join(' ')).toContain(
      'Mount the vertical on the axis (2 ft off it): no load off the axis is then left to turn the rotator',
    );
  });

  it('agree with what can be said by hand', () => {
    // Next to no drag of its own and wind far over the least pressure: force by area, gust by the root of it.
    const plain = (loads: Document[]): Document => ({
      units: 'us',
      method: 'asce7-16',
      site: { exposure: 'C', wind: { speed: 120, basis: 'gust3-strength' } },
      tower: {
        support: 'free',
        top: 50,
        shape: 'lattice',
        faces: 3,
        width: 12,
        members: 'round',
        dragArea: 0.0001,
      },
      loads,
      ratings: [
        {
          of: 'tower',
          area: 12,
          areaKind: 'effective',
          wind: { speed: 110, method: 'asce7-16', exposure: 'C', riskCategory: 'II' },
          top: 50,
        },
      ],
      cables: [],
    });
    const [left, right] = ['left', 'right'].map((name) => ({
      name,
      height: 50,
      area: 5,
      areaKind: 'effective',
      offset: 0,
    }));
    const gust = (each: Remedy | Remedies) => each.check?.result?.holdsTo?.gust as number;
    const one = asked(assessed(plain([left as Document])));
    // It stands alone, without mast and lines: less of it, or lower.
    expect(one.remedies.map(({ change }) => change.of)).toEqual(['load-smaller', 'load-lower']);
    const [smaller, lower] = one.remedies as [Remedy, Remedy];
    expect(smaller.check?.result?.ratio).toBeCloseTo(0.75 * (one.check.result?.ratio as number), 4);
    expect(gust(smaller) / gust(one)).toBeCloseTo(1 / Math.sqrt(0.75), 4);
    // At half its height the shear decides, by ASCE 7-16 Kz = 2.01·(z/900)^(2/9.5): the gust by 2^(1/9.5).
    expect(gust(lower) / gust(one)).toBeCloseTo(2 ** (1 / 9.5), 4);
    const two = asked(assessed(plain([left as Document, right as Document])));
    expect(two.remedies.map(({ change }) => change.of)).toEqual(['load-off', 'load-smaller', 'load-lower']);
    const [off, part] = two.remedies as [Remedy, Remedy];
    expect(gust(off) / gust(two)).toBeCloseTo(Math.SQRT2, 4);
    expect(gust(part) / gust(two)).toBeCloseTo(1 / Math.sqrt(7 / 8), 4);
  });

  it('say when the weakness only moves', () => {
    const moves = asked(assessed(PLANS['weakness that only moves'] as Document));
    const lower = moves.remedies.find(({ change }) => change.of === 'load-lower') as Remedy;
    expect(moves.check.id).toBe('tower-top');
    expect(lower.weakest?.id).toBe('tower');
    expect(lower.onlyMoves).toBe(true);
    const [was, is] = [moves.check.result?.holdsTo?.gust as number, lower.weakest?.result?.holdsTo?.gust as number];
    expect(is / was).toBeGreaterThan(1);
    expect(is / was).toBeLessThan(1.005);
    expect(remediesLines(moves, 'si').join('\n')).toMatch(
      /Move the short beam down 0\.95 m: the tower top holds to .+\. Then the tower is weakest, at [\d.]+ m\/s\./,
    );
    const helped = asked(assessed(headland)).remedies.find(({ change }) => change.of === 'load-off') as Remedy;
    expect([helped.weakest?.id, helped.onlyMoves]).toEqual(['tower', false]);
  });

  it('are not there where nothing is proven', () => {
    const { ratings: _, ...unrated } = demoPlan('ten-numbers');
    expect(remediesOf(assessed(unrated))).toBeUndefined();
    const { tower, ...rest } = demoPlan('ten-numbers');
    const { shape, faces, width, members, ...bare } = tower as Document;
    expect([shape, faces, width, members]).not.toContain(undefined);
    const force = { ...rest, tower: bare, ratings: [{ of: 'tower', kind: 'force', force: 300 }] };
    expect(remediesOf(assessed(force))).toBeUndefined();
  });

  it('find nothing that helps where nothing can be changed', () => {
    const { cables: _, ...plan } = demoPlan('ten-numbers');
    const found = asked(
      assessed({ ...plan, loads: [{ name: 'dish', height: 24, shape: 'dish', diameter: 24, offset: 0 }] }),
    );
    expect(found.remedies).toEqual([]);
    expect(remediesSays(found, 'us')).toBe('No change tried helps the tower without making another check worse.');
  });

  it('are said in words, and stand in the answer only when asked for', () => {
    const own = assessed(headland);
    const remedies = asked(own);
    expect(remediesLines(remedies, 'si').slice(0, 2)).toEqual([
      expect.stringMatching(
        /^- Remove the short beam: the tower top holds to [\d.]+ m\/s instead of 40\.8 m\/s \(actual gust\), within\. Then the tower is weakest, at [\d.]+ m\/s\.$/,
      ),
      expect.stringMatching(
        /^- Cut the mast by 1 m to its highest load: the tower top holds to [\d.]+ m\/s instead of 40\.8 m\/s \(actual gust\), within\.$/,
      ),
    ]);
    expect(remediesSays(asked(assessed(gable)), 'us')).toMatch(/This tower can also be lowered before such a wind\.$/);
    expect(answerDocument(own, {}, [], 'none', { remedies }).remedies?.rows).toHaveLength(remedies.remedies.length);
    expect(answerDocument(own, {}, [], 'none')).not.toHaveProperty('remedies');
    expect(answerText(own, [], { remedies })).toContain(`\nWhat would help:\n${remediesLines(remedies, 'si')[0]}\n`);
  });
});

describe('a remedy for the mast', () => {
  const thin = PLANS['a long thin mast'] as Document;
  const pipe = STANDARD_PIPES.find(({ nominal, schedule }) => nominal === '2' && schedule === 80);

  it('is read from a plan with that pipe as it was tried', () => {
    if (!pipe) throw new Error('no such pipe');
    const own = checkInputOf(thin);
    const { mast: changed, ...others } = changedBy(own, { of: 'mast-larger', pipe }).station;
    const read = checkInputOf(rewritten(thin, { of: 'mast-larger', pipe })).station;
    expect(changed?.outside).toBeCloseTo(2.375 * 0.0254, 12);
    expect(changed?.outside).toBeCloseTo(read.mast?.outside as number, 12);
    expect(changed?.wall).toBeCloseTo(read.mast?.wall as number, 12);
    expect([changed?.yieldStrength, changed?.tip, others]).toEqual([
      read.mast?.yieldStrength,
      read.mast?.tip,
      othersOf(read),
    ]);
  });
});

function othersOf({ mast: _, ...others }: ReturnType<typeof checkInputOf>['station']) {
  return others;
}
