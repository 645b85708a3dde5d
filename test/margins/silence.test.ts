import { describe, expect, it } from 'vitest';
import {
  type Assessment,
  assess,
  type Check,
  type CheckInput,
  plausibleRatedHeights,
  type Verdict,
} from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { answerDocument } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { toldPlan } from '../second-opinion/told-plans.ts';
import { assessed, checkInputOf, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

/*
 * Silence never helps: what a plan leaves out makes no check better than the worst that is plausible of it. The plausible values
 * stand here once more, in the units of a plan, as common practice has them; what the domain assumes must cover them.
 */

const RANK: Readonly<Record<Verdict, number>> = { within: 0, 'low-margin': 1, open: 2, over: 3 };
const FEET = 0.3048;

const copyOf = (plan: Document): Document => structuredClone(plan);
const rows = (plan: Document, key: string) => (plan[key] ?? []) as Document[];
const towerOf = (plan: Document) => plan['tower'] as Document;
const isMetric = (plan: Document) => plan['units'] === 'si';
const topOf = (plan: Document) => Number(towerOf(plan)['top']);

interface Left {
  /** The plan without it. */
  readonly notGiven: Document;
  /** The plan with every plausible value of it. */
  readonly told: readonly Document[];
  /** The check it is held for, where telling it brings others with it. */
  readonly only?: Check['kind'];
  /** By how much it may be told worse. */
  readonly cut?: number;
}

/** One field left out, and what it plausibly is; undefined where the plan has none of it. */
const FIELDS: Readonly<Record<string, (plan: Document) => Left | undefined>> = {
  'no lines, or three of 0.4 in to the highest load': (plan) => {
    const { cables: _, ...notGiven } = copyOf(plan);
    const [long, thick, heavy] = isMetric(plan) ? [1, 25.4, 1] : [FEET, 1, 0.45359237 / FEET];
    const ends = rows(plan, 'loads').map((load) => highOf(load, topOf(plan)));
    if (ends.length === 0) return undefined;
    const highest = Math.min(Math.max(...ends), tipOf(plan));
    const lines = { count: 3, diameter: 0.4 * thick, weight: 0.15 / heavy, from: 0, to: highest - 1e-9 / long };
    return {
      notGiven,
      told: [
        { ...notGiven, cables: [] },
        { ...notGiven, cables: [lines] },
      ],
    };
  },
  'how far a load is off the axis: on the face, or on an arm of 0.4 m': (plan) => {
    const number = rows(plan, 'loads').findIndex(
      (load) =>
        load['offset'] !== undefined &&
        typeof load['height'] === 'number' &&
        load['height'] < topOf(plan) - 1e-6 &&
        load['on'] !== 'mast' &&
        (load['area'] !== undefined || load['front'] !== undefined),
    );
    if (number < 0) return undefined;
    const notGiven = copyOf(plan);
    delete rows(notGiven, 'loads')[number]?.['offset'];
    const face = widthAt(plan, Number(rows(plan, 'loads')[number]?.['height'])) / 2;
    const arm = isMetric(plan) ? 0.4 : 0.4 / FEET;
    const at = (offset: number) => {
      const told = copyOf(plan);
      (rows(told, 'loads')[number] as Document)['offset'] = offset;
      return told;
    };
    return { notGiven, told: [at(face), at(face + arm / 2), at(face + arm)] };
  },
  'what wires are made of': (plan) => {
    const loads = rows(plan, 'loads');
    if (!loads.some(({ shape }) => shape === 'wire')) return undefined;
    const of = (conductors: readonly (string | undefined)[]) => ({
      ...plan,
      loads: loads.map((load, number) => {
        if (load['shape'] !== 'wire') return load;
        const { conductor: _, ...silent } = load;
        const conductor = conductors[number % conductors.length];
        return conductor === undefined ? silent : { ...silent, conductor };
      }),
    });
    const told = [
      ['hard-copper'],
      ['soft-copper'],
      ['copper-clad-steel'],
      ['aluminium'],
      ['steel'],
      ['steel', 'aluminium'],
    ];
    return { notGiven: of([undefined]), told: told.map(of) };
  },
  'the bearing of the mast: at the top, or a foot and a half below it': (plan) => {
    const mast = plan['mast'] as Document | undefined;
    if (mast?.['bearing'] === undefined || mast['bearing'] === false || Number(mast['inside'] ?? 0) <= 0)
      return undefined;
    const notGiven = copyOf(plan);
    delete (notGiven['mast'] as Document)['bearing'];
    const lower = Math.min(isMetric(plan) ? 0.4572 : 1.5, Number(mast['inside']) / 2);
    const at = (bearing: number) => ({ ...copyOf(plan), mast: { ...mast, bearing } });
    // Between them a level where the couple takes next to nothing may be asked for more than it is shown.
    return { notGiven, told: [at(topOf(plan)), at(topOf(plan) - lower)] };
  },
  'how the lines lay that a rating allows for': (plan) => {
    const ratings = rows(plan, 'ratings');
    if (!ratings.some(({ withCables }) => withCables !== undefined)) return undefined;
    const laid = (arrangement?: string) => ({
      ...plan,
      ratings: ratings.map((rating) => {
        if (rating['withCables'] === undefined) return rating;
        const { arrangement: _, ...lines } = rating['withCables'] as Document;
        return { ...rating, withCables: { ...lines, ...(arrangement === undefined ? {} : { arrangement }) } };
      }),
    });
    return { notGiven: laid(), told: ['single', 'flat', 'bundle', 'inside'].map(laid) };
  },
  'how often the tower sways: a cantilever laden or bare, a pole by its height': (plan) => {
    if (!String(plan['method']).startsWith('asce7')) return undefined;
    const { frequency: _, ...silent } = towerOf(plan);
    const sections = rows(towerOf(plan), 'sections');
    const [long, across] = isMetric(plan) ? [1, 0.001] : [FEET, 0.0254];
    const height = topOf(plan) * long;
    const widths = sections.flatMap(({ width }) => width as number | number[]).map((width) => width * across);
    const isPole = sections.every(({ shape }) => shape === 'pole');
    if (height <= (isPole ? 15 : 4) * Math.min(...widths)) return undefined;
    const bySize = ((isPole ? 441 : 942) * Math.max(...widths)) / height ** 2;
    const byHeight = isPole ? 1 - Math.min(1, Math.max(0, (height - 6) / 6)) / 2 : 1;
    const at = (frequency: number) => ({ ...plan, tower: { ...silent, frequency } });
    const slow = Math.min(bySize, byHeight);
    // Where both sides sway alike what is asked most may lie between two of those that are tried.
    return { notGiven: { ...plan, tower: silent }, told: [at(2), ...(slow < 1 ? [at(slow)] : [])], cut: 0.005 };
  },
  'the mast under what stands above the top': (plan) => {
    const loads = rows(plan, 'loads');
    const top = topOf(plan);
    const aloft = loads.filter((load) => highOf(load, top) > top);
    // Nothing tells whether such a mast goes into a pole.
    const isPole = rows(towerOf(plan), 'sections').some(({ shape }) => shape === 'pole');
    if (plan['mast'] === undefined || aloft.length === 0 || isPole) return undefined;
    const { mast: _, rotator: __, ...silent } = plan;
    const [foot, across] = isMetric(plan) ? [FEET, 25.4] : [1, 1];
    const tip = Math.max(...aloft.map((load) => lowOf(load, top)));
    const mast = {
      outside: 2 * across,
      wall: 0.25 * across,
      material: 'steel',
      yield: isMetric(plan) ? 240 : 36,
      inside: 4 * foot,
      length: tip - top + 4 * foot,
      bearing: top,
    };
    const sitting = loads.map((load) => (aloft.includes(load) ? { ...load, on: 'tower' } : load));
    const told = [
      { ...silent, mast },
      { ...silent, loads: sitting },
    ];
    // A mast has a rotator to be asked for, and loads the top with a couple.
    return { notGiven: silent, told, only: 'tower', cut: CUT_ELSEWHERE };
  },
  'the sides of a pole': (plan) => shapes(plan, 'sides', [0, 8]),
  'the bracing': (plan) => shapes(plan, 'pattern', ['rungs', 'zigzag', 'cross']),
  'the risk category where there is ice': (plan) => {
    const site = plan['site'] as Document;
    if (site['ice'] === undefined || !String(plan['method']).startsWith('asce7')) return undefined;
    const { riskCategory: _, ...silent } = site;
    const at = (riskCategory: string) => ({ ...plan, site: { ...site, riskCategory } });
    return { notGiven: { ...plan, site: silent }, told: [at('II'), at('III')] };
  },
};

function shapes(plan: Document, field: string, values: readonly unknown[]): Left | undefined {
  const sections = rows(towerOf(plan), 'sections');
  if (!sections.some((section) => section[field] !== undefined)) return undefined;
  const written = (value: unknown) => ({
    ...plan,
    tower: {
      ...towerOf(plan),
      sections: sections.map(({ [field]: had, ...section }) =>
        had === undefined || value === undefined ? section : { ...section, [field]: value },
      ),
    },
  });
  return { notGiven: written(undefined), told: values.map(written) };
}

const lowOf = (load: Document, top: number): number => {
  const base = load['above'] === undefined ? 0 : top;
  const ends = load['height'] ?? load['above'];
  return base + (Array.isArray(ends) ? Number(ends[0]) : Number(ends));
};
const highOf = (load: Document, top: number): number => {
  const base = load['above'] === undefined ? 0 : top;
  const ends = load['height'] ?? load['above'];
  return base + (Array.isArray(ends) ? Number(ends[1]) : Number(ends));
};

function tipOf(plan: Document): number {
  const mast = plan['mast'] as Document | undefined;
  return mast === undefined ? topOf(plan) : topOf(plan) - Number(mast['inside'] ?? 0) + Number(mast['length']);
}

/** Width of the tower at a height, in its own unit of length. */
function widthAt(plan: Document, height: number): number {
  const perLength = isMetric(plan) ? 1000 : 12;
  let low = Number(towerOf(plan)['base'] ?? 0);
  const sections = rows(towerOf(plan), 'sections').flatMap((section) =>
    Array.from({ length: Number(section['count'] ?? 1) }, () => section),
  );
  for (const { length, width } of sections) {
    const high = low + Number(length);
    if (height <= high + 1e-9) {
      const [from, to] = (Array.isArray(width) ? width : [width, width]).map(Number) as [number, number];
      return (from + ((to - from) * (height - low)) / (high - low)) / perLength;
    }
    low = high;
  }
  throw new RangeError(`nothing stands at ${height}`);
}

const checksOf = (answer: Assessment) => new Map(answer.checks.map((check) => [check.id, check]));
const gustOf = (check: Check) => check.result?.holdsTo?.gust ?? Number.POSITIVE_INFINITY;
/** Another height of something cuts the tower's wind anew. */
const CUT = 1e-5;
/** A gust is found where a coefficient steps. */
const GUST = 3e-3;
/** The same tower of another height is cut into other slices. */
const CUT_ELSEWHERE = 2e-3;
/** The braces of what draws in are shown least by some height, of which five are tried. */
const BETWEEN_HEIGHTS = 0.02;
/** The weight of ice on the bracing is that of single diagonals, between the two that are tried. */
const ICE_ON_BRACING = 0.02;

/** What is better for the silence, in words. */
function helped(notGiven: Assessment, told: readonly Assessment[], cut = CUT): string[] {
  return notGiven.checks.flatMap((check) => {
    const same = told.flatMap((answer) => checksOf(answer).get(check.id) ?? []);
    const worst = Math.max(...same.map(({ verdict }) => RANK[verdict]));
    const shown = check.verdict === 'within' || check.verdict === 'low-margin';
    if (shown && RANK[check.verdict] < worst) return [`${check.id} is ${check.verdict}`];
    if (check.result === undefined) return [];
    const { ratio } = check.result;
    // Where a part of it has no proof at all, the ratio is of the rest, and no wind is said.
    if (check.because === 'beyond-rating' && check.result.holdsTo === undefined) return [];
    return same.flatMap((other) => {
      if (other.result === undefined) return [];
      // A block that tips has nothing under its toe: over is over.
      if (check.kind === 'foundation' && ratio > 1) return [];
      const tolerance = check.withIce ? ICE_ON_BRACING : cut;
      if (ratio < other.result.ratio * (1 - tolerance))
        return [`${check.id} at ${ratio}, told at ${other.result.ratio}`];
      const comparable = check.result?.holdsTo !== undefined && other.result.holdsTo !== undefined;
      return comparable && gustOf(check) > gustOf(other) * (1 + Math.max(GUST, cut))
        ? [`${check.id} holds to ${gustOf(check)}, told to ${gustOf(other)}`]
        : [];
    });
  });
}

const canBeRead = (plan: Document) => readPlan(plan).ok;

describe('silence', { timeout: 120_000 }, () => {
  it.each(Object.entries(FIELDS))('never helps: %s', (_, leave) => {
    let looked = 0;
    fc.assert(
      fc.property(toldPlan, (plan) => {
        const left = leave(plan as Document);
        if (left === undefined || !left.told.every(canBeRead)) return;
        looked += 1;
        const { notGiven, told, only, cut } = left;
        const found = helped(assessed(notGiven), told.map(assessed), cut);
        expect(found.filter((each) => only === undefined || each.startsWith(`${only} `))).toEqual([]);
      }),
      { numRuns: Number(process.env['RANDOM_RUNS'] ?? 30), endOnFailure: true },
    );
    expect(looked).toBeGreaterThan(0);
  });

  it('never helps: for which height the tower is rated', () => {
    let looked = 0;
    fc.assert(
      fc.property(toldPlan, (plan) => {
        const notGiven = withoutTops(plan as Document);
        const input = checkInputOf(notGiven);
        const asked = assess(input);
        // Of what draws in, one height may leave the braces as good as nothing; what is not shown then has no ratio to hold.
        const { tower } = input.station;
        const draws = tower.sections.some(({ shape }) => shape && shape.width[0] !== shape.width[1]);
        if (draws && (asked.checks[0]?.result?.ratio ?? 2) > 1) return;
        const { shortest, tallest } = plausibleRatedHeights(tower);
        for (const share of [0, 0.1, 0.33, 0.45, 0.5, 0.6, 0.7, 0.96, 1]) {
          looked += 1;
          const top = shortest + share * (tallest - shortest);
          const cut = draws ? BETWEEN_HEIGHTS : CUT_ELSEWHERE;
          expect(helped(asked, [assess(supposing(input, top))], cut), String(top)).toEqual([]);
        }
      }),
      { numRuns: Number(process.env['RANDOM_RUNS'] ?? 20), endOnFailure: true },
    );
    expect(looked).toBeGreaterThan(45);
  });

  it('is told in every answer that goes by it', () => {
    const { cables: _, ...plan } = demoPlan('river-bluff');
    const answer = assessed(plan);
    expect(answer.assumptions.map(({ of }) => of)).toEqual(['cables']);
    expect(answer.cautions.filter(({ code }) => code === 'assumed').map(({ at }) => at)).toEqual([
      '/cables',
      '/tower/sections',
    ]);
    const question = answer.questions.open.find((each) => each.question === 'cables');
    const none = assessed({ ...plan, cables: [] }).checks[0]?.result?.ratio ?? Number.NaN;
    expect(question?.ratioIf).toEqual([{ answer: '0', ratio: expect.closeTo(none, 9) }]);
    expect(answer.checks[0]?.result?.ratioRange[0]).toBeLessThanOrEqual(none);
  });
});

function withoutTops(plan: Document): Document {
  return { ...plan, ratings: rows(plan, 'ratings').map(({ top: _, ...rating }) => rating) };
}

function supposing(input: CheckInput, supposedTop: number): CheckInput {
  return { ...input, assumed: [], ratings: input.ratings.map((rating) => ({ ...rating, supposedTop })) };
}

it('announces lengths in words, in the units of the plan', () => {
  const plan = demoPlan('river-bluff');
  const ratings = rows(plan, 'ratings').map(({ top: _, ...rating }) => rating);
  const document = answerDocument(assessed({ ...plan, ratings }), plan, [], 'none');
  const question = document.toFindOut.find(({ of }) => of === 'rated-height');
  // Two thirds and four thirds of 48 ft.
  expect(Object.keys(question?.ratioIf ?? {}).sort()).toEqual([
    'for a top at 32 ft',
    'for a top at 48 ft',
    'for a top at 64 ft',
  ]);
});
