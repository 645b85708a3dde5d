import { describe, expect, it } from 'vitest';
import { type Assessment, assess, checkRatio, type Verdict } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, type Document } from './any-plan.ts';
import { demoPlans } from './demo-plan.ts';

/* Missing data never gives a pass: a field taken out of a plan leaves the tower's verdict as it is, or makes it worse. */

const RANK: Readonly<Record<Verdict, number>> = { within: 0, 'low-margin': 1, open: 2, over: 3 };

/** Fields whose absence says another thing: nothing hangs or holds there, the ground is flat, there is one of a kind. */
const TAKES_AWAY = [
  /^mast$/,
  /^tower\/supportedAt\/\d+$/,
  /^(loads|cables)(\/\d+)?$/,
  /^loads\/\d+\/tubes\/\d+(\/count|\/taper\/\d+)?$/,
  /^cables\/\d+\/weight$/,
  /^site\/hill$/,
];
/** Weights are small beside the wind: without them the answer says that they are not counted. */
const WEIGHT = /^loads\/\d+\/weight$/;

function paths(node: unknown, path: readonly string[] = []): readonly (readonly string[])[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => [[...path, key], ...paths(value, [...path, key])]);
}

function without(plan: Document, path: readonly string[]): Document {
  const copy = structuredClone(plan);
  const last = path.at(-1) as string;
  const place = path.slice(0, -1).reduce<Document>((node, key) => node[key] as Document, copy);
  if (Array.isArray(place)) place.splice(Number(last), 1);
  else delete place[last];
  return copy;
}

const ratioOf = ({ checks, ratios }: Assessment) =>
  Math.max(checkRatio(ratios, 'tower')?.unfavourable ?? Number.POSITIVE_INFINITY, checks[0]?.result?.ratio ?? 0);
const towerVerdict = (assessment: Assessment) => assessment.checks[0]?.verdict ?? 'open';

/** A demo plan with everything said that it leaves open. */
function toldInFull(plan: Document): Document {
  const copy = structuredClone(plan) as {
    units: string;
    site: Document;
    loads: Document[];
    cables: Document[];
    ratings?: { areaKind?: string; wind: Document }[];
  };
  copy.site['groundElevation'] ??= 500;
  copy.site['riskCategory'] ??= 'II';
  for (const load of copy.loads) {
    load['weight'] ??= copy.units === 'us' ? 30 : 12;
    if (load['area'] !== undefined) load['areaKind'] ??= 'effective';
  }
  for (const run of copy.cables) run['weight'] ??= 0.1;
  for (const rating of copy.ratings ?? []) {
    rating.areaKind ??= 'flat-plate';
    rating.wind['method'] ??= 'tia222-g';
    if (rating.wind['terrain'] === undefined) rating.wind['exposure'] ??= 'D';
    rating.wind['riskCategory'] ??= 'III';
  }
  return copy as unknown as Document;
}

const CASES = demoPlans().flatMap(({ id, plan }) => [
  [id, plan] as const,
  [`${id}, told in full`, toldInFull(plan)] as const,
]);

/** What is told decides where the wind is cut into pieces. */
const CUT = 1e-9;

describe.each(CASES)('%s', (_, plan) => {
  const whole = assessed(plan);

  it('is never better for a field left out', () => {
    let looked = 0;
    for (const path of paths(plan)) {
      const name = path.join('/');
      const reading = readPlan(without(plan, path));
      if (!reading.ok || TAKES_AWAY.some((pattern) => pattern.test(name))) continue;
      looked += 1;
      const less = assess(reading.input);
      if (WEIGHT.test(name)) {
        expect(
          less.cautions.map((caution) => caution.code),
          name,
        ).toContain('weights-not-counted');
        continue;
      }
      const verdict = towerVerdict(less);
      expect(RANK[verdict], `${name}: ${verdict}`).toBeGreaterThanOrEqual(RANK[towerVerdict(whole)]);
      if (verdict !== 'open') expect(ratioOf(less), name).toBeGreaterThanOrEqual(ratioOf(whole) * (1 - CUT));
    }
    expect(looked).toBeGreaterThan(3);
  });
});

describe('a maker who says less', () => {
  const SAID = ['areaKind', 'above', 'withCables', 'level', 'furtherAreas'] as const;
  const SAID_OF_WIND = ['exposure', 'riskCategory'] as const;

  it('never proves more', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const ratio = ratioOf(assessed(plan));
        (plan['ratings'] as Document[]).forEach((rating, number) => {
          // Tapering legs carry part of the shear of a force, the more the higher it acts: there a height says less.
          const tapers = Array.isArray((plan['tower'] as Document)['width']);
          const fields = SAID.filter((field) => rating[field] !== undefined && !(tapers && field === 'above'));
          const inRating = fields.map((field) => [field]);
          const wind = (rating['wind'] ?? {}) as Document;
          const inWind = SAID_OF_WIND.filter((field) => wind[field] !== undefined).map((field) => ['wind', field]);
          for (const path of [...inRating, ...inWind]) {
            const less = assessed(without(plan, ['ratings', String(number), ...path]));
            expect(ratioOf(less), `${number} ${path.join('/')}`).toBeGreaterThanOrEqual(ratio * (1 - CUT));
          }
        });
      }),
      { numRuns: 150 },
    );
  });

  it('proves nothing by a rating he never gave', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const ratio = ratioOf(assessed(plan));
        (plan['ratings'] as Document[]).forEach((_, number) => {
          const fewer = assessed(without(plan, ['ratings', String(number)]));
          expect(ratioOf(fewer)).toBeGreaterThanOrEqual(ratio * (1 - CUT));
          if ((plan['ratings'] as Document[]).length === 1) expect(towerVerdict(fewer)).toBe('open');
        });
      }),
      { numRuns: 150 },
    );
  });

  it('covers a weight once, however often he says it', () => {
    const plan = (ratings: readonly Document[]) => ({
      units: 'us',
      method: 'asce7-16',
      site: { wind: 100, exposure: 'C' },
      tower: { support: 'free', top: 50, shape: 'lattice', faces: 3, width: 18, members: 'round', solidity: 0.2 },
      loads: [{ name: 'beam', above: 4, area: 6, areaKind: 'effective', weight: 400 }],
      ratings: [
        {
          of: 'tower',
          area: 12,
          areaKind: 'effective',
          wind: { speed: 100, method: 'asce7-16', exposure: 'C' },
          top: 50,
        },
        ...ratings,
      ],
      cables: [],
    });
    const covered = { of: 'tower', kind: 'weight', weight: 200 };
    const atFoot = (ratings: readonly Document[]) =>
      assessed(plan(ratings)).ratios.find(({ comparison }) => comparison.place === 'base' && comparison.of === 'moment')
        ?.demand ?? 0;
    const once = atFoot([covered]);
    expect(atFoot([covered, covered])).toBe(once);
    // Three legs: 0.29·W·b, of 200 lb more at 18 in: 0.29·200·1.5 lbf·ft = 87 lbf·ft = 117.956 N·m.
    expect(atFoot([]) - once).toBeCloseTo(117.9561615, 5);
  });
});

describe('a force that a maker states beside a wind without a standard', () => {
  const plan = (wind: Document) => ({
    units: 'us',
    method: 'asce7-10',
    site: { wind: 70, exposure: 'B' },
    tower: { support: 'free', top: 25, shape: 'lattice', faces: 3, width: 10, members: 'round', solidity: 0.2 },
    loads: [{ name: 'beam', above: 2, area: 2, areaKind: 'effective' }],
    ratings: [{ of: 'tower', kind: 'force', force: 300, level: 'allowable', wind, top: 25 }],
    cables: [],
  });

  it('announces for each standard the use that its name then gives', () => {
    const before = assessed(plan({ speed: 60 }));
    const question = before.questions.open.find((each) => each.question === 'rating-method');
    expect(question?.ratioIf.length).toBeGreaterThan(3);
    for (const { answer, ratio } of question?.ratioIf ?? []) {
      expect(ratio, answer).toBeGreaterThan(0.1);
      expect(ratioOf(assessed(plan({ speed: 60, method: answer }))), answer).toBeCloseTo(ratio, 9);
    }
  });

  it('asks nothing that would not change it', () => {
    expect(assessed(plan({ year: 1999 })).questions.open).toEqual([]);
  });
});
