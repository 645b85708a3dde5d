import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { RemedyOutcomeAnswer } from '../../src/answer/index.ts';
import {
  type Assessment,
  assess,
  betterVerdict,
  FOOTING_GRAIN,
  INSIDE_GRAIN,
  LOWERING_GRAIN,
  LOWERING_STEP,
  type Remedies,
  type Remedy,
  type RemedyChange,
  remediesOf,
  type Verdict,
  WORTH_RISING,
  worstVerdict,
} from '../../src/margins/index.ts';
import { REMEDY_SEARCHES } from '../../src/margins/remedy-kinds.ts';
import { momentToPressure, STANDARD_PIPES } from '../../src/structure/index.ts';
import {
  answerDocument,
  answerText,
  remediesDocument,
  remediesLines,
  remediesSays,
} from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, checkInputOf, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const bluff = demoPlan('river-bluff');
const headland = demoPlan('headland-ridge');
const orchard = demoPlan('light-mast');
const gable = demoPlan('house-bracket');
const of = (plan: Document, key: string) => plan[key] as Document;
const all = (plan: Document, key: string) => plan[key] as Document[];

/** A run with one line less, in no more rows than lines are left. */
const oneLess = (run: Document): Document => {
  const count = (run['count'] as number) - 1;
  return { ...run, count, ...(run['rows'] === undefined ? {} : { rows: Math.min(run['rows'] as number, count) }) };
};

const withoutHinge = ({ hinge: _, ...tower }: Document): Document => tower;

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
    cables: [{ count: 1, diameter: 38 }],
    loads: all(headland, 'loads').map((load, index) => (index === 0 ? { ...load, above: 1.25 } : load)),
  },
  'an arm that twists the braces': JSON.parse(
    readFileSync(new URL('by-hand/twisted.json', import.meta.url), 'utf8'),
  ) as Document,
  'a block too small': {
    ...bluff,
    tower: {
      ...withoutHinge(of(bluff, 'tower')),
      weight: 600,
      foundation: { kind: 'block', length: 4, width: 4, depth: 3, soilBearing: 3000 },
    },
    ratings: all(bluff, 'ratings').map((rating) => (rating['of'] === 'tower' ? { ...rating, area: 60 } : rating)),
    loads: all(bluff, 'loads').map((load) => ({ weight: 20, ...load })),
    cables: all(bluff, 'cables').map((run) => ({ weight: 0.1, ...run })),
    rotator: { weight: 20 },
  },
  'a thin tube that a thicker wall mends': {
    ...bluff,
    mast: { ...of(bluff, 'mast'), outside: 2.25, wall: 0.1, yield: 46 },
    ratings: all(bluff, 'ratings').map((rating) => (rating['of'] === 'tower' ? { ...rating, area: 60 } : rating)),
    loads: [{ ...all(bluff, 'loads')[0], height: 51 }],
  },
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
      const { outside, wall } = change.tube;
      return { ...plan, mast: { ...of(plan, 'mast'), outside: outside / diameter, wall: wall / diameter } };
    }
    case 'mast-inside': {
      const mast = of(plan, 'mast');
      const rotator = plan['rotator'] as Document | undefined;
      const inside = mast['inside'] === undefined ? {} : { inside: (mast['inside'] as number) + change.by / length };
      const lower =
        rotator?.['height'] === undefined
          ? {}
          : { rotator: { ...rotator, height: (rotator['height'] as number) - change.by / length } };
      return {
        ...plan,
        ...lower,
        mast: { ...mast, ...inside, length: (mast['length'] as number) + change.longer / length },
      };
    }
    case 'footing-larger': {
      const tower = of(plan, 'tower');
      const footing = of(tower, 'foundation');
      const larger = Object.fromEntries(
        (footing['kind'] === 'block' ? ['length', 'width'] : ['depth']).map((side) => [
          side,
          (footing[side] as number) + change.by / length,
        ]),
      );
      return { ...plan, tower: { ...tower, foundation: { ...footing, ...larger } } };
    }
    case 'counterpoise': {
      const tower = of(plan, 'tower');
      const { mass, below } = change.counterpoise;
      const counterpoise = { weight: si ? mass : mass / 0.45359237, below: below / length };
      return { ...plan, tower: { ...tower, hinge: { ...of(tower, 'hinge'), counterpoise } } };
    }
    case 'lines-arranged': {
      const changed = change.runs.map(({ at }) => at);
      const laid = (run: Document, index: number) =>
        changed.includes(`/cables/${index}`) ? arranged(run, change.laid) : run;
      return { ...plan, cables: cables.map(laid) };
    }
    case 'line-off': {
      const fewer = (run: Document, index: number) => (change.run.at === `/cables/${index}` ? oneLess(run) : run);
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
  for (const move of told.moves) near(move.to, whole.checks.find(({ id }) => id === move.check)?.ratio, told.says);
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
  // The wind on a counterpoise, low down, may take half a per cent.
  const least = change.of === 'counterpoise' ? 0.995 : 1 - 1e-8;
  if (before !== undefined) expect(lowest(other) as number).toBeGreaterThanOrEqual(before * least);
  const [was, is] = [own.checks.find(({ id }) => id === ofCheck), then(ofCheck)];
  const rises = (is?.result?.holdsTo?.gust ?? 0) - (was?.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY);
  const turned =
    was !== undefined && (is === undefined || is.because === 'balanced' || betterVerdict(is.verdict, was.verdict));
  // 2 mph is 0.89408 m/s.
  expect(turned || rises >= 0.89408 - 1e-6, `${change.of} is worth it`).toBe(true);
  expect(WORTH_RISING).toBeCloseTo(0.89408, 12);
  // Where the least pressure governs, the gust that is worked out without it may rise alone.
  if (check) expect(is?.result?.ratio ?? 0).toBeLessThanOrEqual((was?.result?.ratio ?? 0) * (1 + 1e-9));
}

/** Lines arranged otherwise: in rows they are on a ladder alone. */
function arranged({ rows: _, spacing: __, ...run }: Document, arrangement: string): Document {
  return { ...run, arrangement };
}

describe('remedies of the weakest link', () => {
  it.each(plans)(
    'of %s are at most five, each of another kind: what turns the verdict, the cheapest first, then what raises the gust',
    (_, plan) => {
      const own = assessed(plan);
      const { check, remedies } = asked(own);
      expect(check).toBe(own.checks.find(({ id }) => id === own.weakest));
      expect(remedies.length).toBeGreaterThan(0);
      expect(remedies.length).toBeLessThanOrEqual(5);
      const kinds = remedies.map(({ change }) => `${change.of} ${'laid' in change ? change.laid : ''}`);
      expect(new Set(kinds).size).toBe(kinds.length);
      const turned = remedies.map(({ check: after }) => {
        if (!after || after.because === 'balanced' || (check.verdict !== 'within' && after.verdict === 'within'))
          return 2;
        return betterVerdict(after.verdict, check.verdict) ? 1 : 0;
      });
      expect(turned).toEqual([...turned].sort((x, y) => y - x));
      const order = remedies.map(({ change }) => Object.keys(REMEDY_SEARCHES).indexOf(change.of));
      for (let index = 1; index < remedies.length; index += 1) {
        if (turned[index] !== turned[index - 1]) continue;
        if (turned[index] !== 0) expect(order[index]).toBeGreaterThanOrEqual(order[index - 1] as number);
        else {
          const [before, here] = [remedies[index - 1], remedies[index]].map(
            (each) => each?.weakest?.result?.holdsTo?.gust,
          );
          expect(here as number).toBeLessThanOrEqual((before as number) * (1 + 1e-6));
        }
      }
    },
  );

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
      'mast-inside',
      'footing-larger',
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
      { numRuns: 80, endOnFailure: true },
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
    const wholeWays = (plan: Document) => {
      const own = assessed(plan);
      return REMEDY_SEARCHES['load-lower'](own, asked(own).check).flatMap((search) => {
        const change = search.of === 'grains' ? search.by(search.most).change : undefined;
        return change?.of === 'load-lower' ? [[change.load.name, change.by] as const] : [];
      });
    };
    // 5 ft above the top, the other at 1.5 ft, one foot kept free.
    const loop = wholeWays(demoPlan('guyed-lattice')).find(([name]) => name === 'loop');
    expect((loop?.[1] as number) / 0.3048).toBeCloseTo(2.5, 9);
    // Of what is on the pole the others stand on its top or are wires.
    expect(wholeWays(orchard).map(([name]) => name)).toEqual(['short vertical']);
  });

  it('make a block as much larger as it must be to be within, and no more', () => {
    const plan = PLANS['a block too small'] as Document;
    const own = assessed(plan);
    const found = asked(own);
    expect(found.check.id).toBe('foundation');
    const remedy = found.remedies.find(({ change }) => change.of === 'footing-larger') as Remedy;
    const change = remedy.change as Extract<RemedyChange, { of: 'footing-larger' }>;
    const { block, load } = own.foundation as NonNullable<Assessment['foundation']>;
    // (M + V·T) over what the soil under it takes with 0.6 and all of g·(ρ·B²·T + W), in steps of half a foot.
    const { bearing } = own.model.input.station.tower.foundation as { bearing: number };
    const ratio = (side: number) => {
      const depth = 3 * 0.3048;
      const dead = 9.80665 * ((block?.density as number) * side ** 2 * depth + (load.weight as number));
      const takes = [0.6 * dead, dead].map((N) => momentToPressure({ length: side, width: side }, N, bearing));
      return (load.moment + load.shear * depth) / Math.min(...takes);
    };
    expect(found.check.result?.of).toBe('overturning');
    expect(found.check.result?.ratio).toBeCloseTo(ratio(4 * 0.3048), 6);
    expect(remedy.check?.result?.ratio).toBeLessThanOrEqual(0.8);
    if (remedy.check?.result?.of === 'overturning')
      expect(remedy.check.result.ratio).toBeCloseTo(ratio(4 * 0.3048 + change.by), 6);
    const less = assessed(rewritten(plan, { ...change, by: change.by - FOOTING_GRAIN.us }));
    expect(less.checks.find(({ id }) => id === 'foundation')?.verdict).not.toBe('within');
    expect(remediesLines(found, 'us').join(' ')).toMatch(
      /Build the block [\d.]+ ft longer and wider: the footing holds to/,
    );
  });

  it('put a mast no farther inside than it must go', () => {
    const own = assessed(headland);
    const remedy = asked(own).remedies.find(({ change }) => change.of === 'mast-inside') as Remedy;
    const change = remedy.change as Extract<RemedyChange, { of: 'mast-inside' }>;
    const verdictAt = (by: number) =>
      assessed(rewritten(headland, { ...change, by, longer: 0 })).checks.find(({ id }) => id === own.weakest)?.verdict;
    // A metre of it is free above its highest load.
    expect(change.longer).toBeCloseTo(0, 9);
    expect([verdictAt(change.by - INSIDE_GRAIN.si), verdictAt(change.by)]).toEqual(['low-margin', 'within']);
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
      'Mount the vertical on the axis: no load off the axis is then left to turn the rotator',
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
        frequency: 3,
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
    // It is within as it is: half of it is the most that is tried.
    expect(smaller.check?.result?.ratio).toBeCloseTo(0.5 * (one.check.result?.ratio as number), 4);
    expect(gust(smaller) / gust(one)).toBeCloseTo(Math.SQRT2, 4);
    // There the shear decides, by ASCE 7-16 Kz = 2.01·(z/900)^(2/9.5): the gust by (50/h)^(1/9.5).
    const down = (lower.change as Extract<RemedyChange, { of: 'load-lower' }>).by / 0.3048;
    expect(gust(lower) / gust(one)).toBeCloseTo((50 / (50 - down)) ** (1 / 9.5), 4);
    // It may go to half the height; the last half per cent of its gust is not worth the way.
    expect(gust(lower) / gust(one)).toBeGreaterThan(2 ** (1 / 9.5) / 1.005);
    const two = asked(assessed(plain([left as Document, right as Document])));
    expect(two.remedies.map(({ change }) => change.of)).toEqual(['load-smaller', 'load-off', 'load-lower']);
    const [part, off] = two.remedies as [Remedy, Remedy];
    const { times } = part.change as Extract<RemedyChange, { of: 'load-smaller' }>;
    expect(gust(off) / gust(two)).toBeCloseTo(Math.SQRT2, 4);
    expect(gust(part) / gust(two)).toBeCloseTo(1 / Math.sqrt((1 + times) / 2), 4);
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
    const force = { ...rest, tower: bare, ratings: [{ of: 'tower', kind: 'force', force: 300, top: 48 }] };
    expect(remediesOf(assessed(force))).toBeUndefined();
  });

  it('find nothing that helps where nothing can be changed', () => {
    const plan = { ...demoPlan('ten-numbers'), cables: [] };
    const found = asked(
      assessed({ ...plan, loads: [{ name: 'dish', height: 24, shape: 'dish', diameter: 24, offset: 0 }] }),
    );
    expect(found.remedies).toEqual([]);
    expect(remediesSays(found, 'us')).toBe(
      'No change tried gives the tower a better verdict, or 2 mph more gust. What makes another check worse is left out.',
    );
  });

  it('are said in words, and stand in the answer only when asked for', () => {
    const own = assessed(headland);
    const remedies = asked(own);
    expect(remediesLines(remedies, 'si')).toEqual(
      expect.arrayContaining([
        expect.stringMatching(
          /^- Remove the short beam: the tower top holds to [\d.]+ m\/s instead of 40\.8 m\/s \(actual gust\), within\. Then the tower is weakest, at [\d.]+ m\/s\.$/,
        ),
        expect.stringMatching(
          /^- Cut 1 m off the mast: the tower top holds to [\d.]+ m\/s instead of 40\.8 m\/s \(actual gust\), within\.$/,
        ),
      ]),
    );
    expect(remediesSays(asked(assessed(gable)), 'us')).toMatch(/This tower can also be lowered before such a wind\.$/);
    expect(answerDocument(own, {}, [], 'none', { remedies }).remedies?.rows).toHaveLength(remedies.remedies.length);
    expect(answerDocument(own, {}, [], 'none')).not.toHaveProperty('remedies');
    expect(answerText(own, [], { remedies })).toContain(`\nWhat would help:\n${remediesLines(remedies, 'si')[0]}\n`);
  });
});

/** Walls that a tube of any outside may have, in inches, as the least of twelve are tried. */
const WALLS = [1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2];

describe('a remedy for the mast', () => {
  it.each(['a long thin mast', 'a thin tube that a thicker wall mends'])(
    'is the lightest tube that does: %s',
    (name) => {
      const plan = PLANS[name] as Document;
      const own = assessed(plan);
      const found = asked(own);
      expect(found.check.id).toBe('mast');
      const remedy = found.remedies.find(({ change }) => change.of === 'mast-larger') as Remedy;
      const { tube } = remedy.change as Extract<RemedyChange, { of: 'mast-larger' }>;
      const { outside } = of(plan, 'mast') as { outside: number };
      const tubes = [
        ...STANDARD_PIPES.map((pipe) => [pipe.outside / 0.0254, pipe.wall / 0.0254] as const),
        ...WALLS.filter((wall) => wall <= outside / 4).map((wall) => [outside, wall] as const),
      ].filter(([wide, wall]) => wide >= outside - 1e-9 && wall > 0);
      const metal = ([wide, wall]: readonly [number, number]) => (wide - wall) * wall;
      const within = tubes
        .sort((one, other) => metal(one) - metal(other))
        .filter(([wide, wall]) => {
          const other = assessed({ ...plan, mast: { ...of(plan, 'mast'), outside: wide, wall } });
          const verdict = (id: string) => other.checks.find((each) => each.id === id)?.verdict as Verdict;
          const gust = lowest(other) as number;
          return (
            verdict('mast') === 'within' &&
            gust >= (lowest(own) as number) * (1 - 1e-9) &&
            own.checks.every(({ id, verdict: before }) => noWorse(before, verdict(id)))
          );
        });
      expect(remedy.check?.verdict).toBe('within');
      expect([tube.outside / 0.0254, tube.wall / 0.0254].map((size) => size.toFixed(4))).toEqual(
        within[0]?.map((size) => size.toFixed(4)),
      );
    },
  );

  it('is a thicker wall of the same outside where that is lighter than any pipe', () => {
    const found = asked(assessed(PLANS['a thin tube that a thicker wall mends'] as Document));
    expect(remediesLines(found, 'us').join(' ')).toMatch(
      /Use a mast tube of 2\.25 in by 0\.125 in, same yield: the mast holds to/,
    );
  });
});
