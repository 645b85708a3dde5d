import { describe, expect, it } from 'vitest';
import {
  type Assessment,
  assess,
  type CheckInput,
  checkRatio,
  HEIGHT_STEP,
  type Sensitivity,
  type SensitivityRow,
  sensitivityOf,
} from '../../src/margins/index.ts';
import { answerDocument, sensitivitySays } from '../../src/worksheet/index.ts';
import fc from '../fast-check.ts';
import { anyPlan, assessed, checkInputOf, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const plans = demoPlans().map(({ id, plan }) => [id, plan] as const);

const asked = (assessment: Assessment): Sensitivity => sensitivityOf(assessment) as Sensitivity;
const row = (of: Sensitivity, what: SensitivityRow['change']['of']) =>
  of.rows.find(({ change }) => change.of === what) as SensitivityRow;

/** The use of a check by the whole way from the plan to the answer. */
const wholeRatio = (input: CheckInput, check: Sensitivity['ofCheck']) => ratioIn(assess(input), check);

function ratioIn({ checks, ratios }: Assessment, check: Sensitivity['ofCheck']): number {
  if (check === 'own-strength' || check === 'tower-below')
    return checks.find(({ kind }) => kind === check)?.result?.ratio as number;
  return checkRatio(ratios, check)?.unfavourable as number;
}

/** A stated area at the top of a tower without drag of its own, 50 ft up in open country. */
const bare = (method: string, site: Document): Document => ({
  units: 'us',
  method,
  site: { exposure: 'C', ...site },
  tower: { support: 'free', top: 50, frequency: 3, used: true },
  loads: [{ name: 'beam', height: 50, area: 6, areaKind: 'effective', offset: 0 }],
  ratings: [
    { of: 'tower', area: 12, areaKind: 'effective', wind: { speed: 100, method: 'asce7-16', exposure: 'C' }, top: 50 },
  ],
  cables: [],
});
/** The same with next to no drag of its own, which is then known. */
const plain = (method: string, site: Document): Document => ({
  ...bare(method, site),
  tower: {
    support: 'free',
    top: 50,
    frequency: 3,
    shape: 'lattice',
    faces: 3,
    width: 12,
    members: 'round',
    dragArea: 0.001,
  },
});

describe('what the use of the weakest link hangs on', () => {
  it.each(plans)('of %s is told from the use of the answer', (_, plan) => {
    const own = assess(checkInputOf(plan));
    const found = asked(own);
    expect(found.ratio).toBe(ratioIn(own, found.ofCheck));
    expect(own.weakest === undefined || own.weakest === found.ofCheck).toBe(true);
    const moves = found.rows.map(({ ratio }) => Math.abs(ratio - found.ratio));
    expect([...moves].sort((a, b) => b - a)).toEqual(moves);
    expect(moves.every(Number.isFinite)).toBe(true);
  });

  it.each(plans)('of %s has the slope by speed that whole answers have', (_, plan) => {
    const input = checkInputOf(plan);
    const found = asked(assess(input));
    const at = (times: number) =>
      wholeRatio({ ...input, site: { ...input.site, speed: input.site.speed * times } }, found.ofCheck);
    const { ratio, elasticity } = row(found, 'speed');
    expect(ratio).toBeCloseTo(at(1.1), 9);
    const slope = (Math.log(at(1.0005)) - Math.log(at(0.9995))) / (Math.log(1.0005) - Math.log(0.9995));
    expect(elasticity).toBeCloseTo(slope, 2);
  });

  it.each(plans)('of %s grows with the gust factor as the share of the wind in the demand', (_, plan) => {
    const own = assess(checkInputOf(plan));
    const found = asked(own);
    if (found.ofCheck === 'own-strength') {
      // Weight in the wall is a thousandth of it, and shear takes a little of the moment that is allowed.
      expect(row(found, 'gust-effect').elasticity).toBeCloseTo(1, 1);
      expect(row(found, 'gust-effect').ratio / found.ratio / 1.1).toBeCloseTo(1, 2);
      return;
    }
    // On its supports it goes with the wind in no such simple way, and has no such row.
    if (found.ofCheck === 'tower-below') return expect(row(found, 'gust-effect')).toBeUndefined();
    const { governing } = checkRatio(own.ratios, found.ofCheck) as NonNullable<ReturnType<typeof checkRatio>>;
    const index = own.ratios.indexOf(governing);
    const wind = own.unfavourable.scenarios[governing.scenario]?.wind[index] as number;
    const share = wind / (wind + (own.unfavourable.dead[index] as number));
    if (own.input.station.loads.some(({ shape }) => shape.kind === 'wire')) {
      // The pull of a wire goes its own way with the wind.
      expect((row(found, 'gust-effect').elasticity ?? 0) / share).toBeCloseTo(1, 1);
      return;
    }
    expect(row(found, 'gust-effect').elasticity).toBeCloseTo(share, 6);
    expect(row(found, 'gust-effect').ratio).toBeCloseTo(found.ratio * (1 + 0.1 * share), 9);
  });

  it.each(plans)('of %s has for every ground the answer to the plan rewritten for it', (_, plan) => {
    const found = asked(assess(checkInputOf(plan)));
    const grounds = found.rows.flatMap(({ change, ratio }) =>
      change.of === 'ground' ? [{ to: change.to, ratio }] : [],
    );
    const european = plan['method'] === 'en1991-1-4';
    expect(grounds.map(({ to }) => to)).toHaveLength(european ? 4 : 2);
    for (const { to, ratio } of grounds) {
      const rewritten = checkInputOf({
        ...plan,
        site: { ...(plan['site'] as Document), [european ? 'terrain' : 'exposure']: to },
      });
      expect(ratio).toBeCloseTo(wholeRatio(rewritten, found.ofCheck), 9);
    }
  });

  it.each(plans)('of %s has for every moved load the answer to the plan rewritten for it', (_, plan) => {
    const found = asked(assess(checkInputOf(plan)));
    const loads = plan['loads'] as Document[];
    let tried = 0;
    for (const { change, ratio, at } of found.rows) {
      if (change.of !== 'load-height') continue;
      const inUnits = change.by / (plan['units'] === 'us' ? 0.3048 : 1);
      const rewritten = loads.map((load, index) => {
        if (`/loads/${index}` !== at) return load;
        const key = load['height'] === undefined ? 'above' : 'height';
        const height = load[key] as number | number[];
        return { ...load, [key]: Array.isArray(height) ? height.map((end) => end + inUnits) : height + inUnits };
      });
      // A wire moved at its near end has a little more or less pull; the row leaves it as it is.
      const digits = loads.some((load) => `/loads/${loads.indexOf(load)}` === at && load['shape'] === 'wire') ? 3 : 9;
      expect(ratio, at).toBeCloseTo(wholeRatio(checkInputOf({ ...plan, loads: rewritten }), found.ofCheck), digits);
      expect(Math.abs(change.by)).toBe(HEIGHT_STEP[plan['units'] as 'us' | 'si']);
      tried += 1;
    }
    expect(tried).toBe(loads.length);
  });

  it.each(plans)('of %s has for lines, offsets and frequency the answer to the plan rewritten for it', (_, plan) => {
    const foot = plan['units'] === 'us' ? 1 : 0.3;
    const [loads, cables] = [plan['loads'] as Document[], (plan['cables'] ?? []) as Document[]];
    const tower = { ...(plan['tower'] as Document), frequency: 1.6 };
    const swaying = { ...plan, tower };
    const found = asked(assess(checkInputOf(swaying)));
    const ratioOf = (changed: Document) => wholeRatio(checkInputOf({ ...swaying, ...changed }), found.ofCheck);
    const told = found.rows.flatMap(({ change, at, ratio }) => {
      const place = Number(at.split('/').at(-1));
      if (change.of === 'frequency') {
        expect(ratio).toBeCloseTo(ratioOf({ tower: { ...tower, frequency: 0.8 } }), 9);
      } else if (change.of === 'lines') {
        const more = cables.map((run, index) =>
          index === place ? { ...run, count: ((run['count'] as number) ?? 1) + 1 } : run,
        );
        expect(ratio).toBeCloseTo(ratioOf({ cables: more }), 9);
      } else if (change.of === 'load-offset') {
        const out = loads.map((load, index) =>
          index === place ? { ...load, offset: ((load['offset'] as number) ?? 0) + foot } : load,
        );
        expect(ratio).toBeCloseTo(ratioOf({ loads: out }), 9);
      } else return [];
      return [change.of];
    });
    const wires = loads.filter(({ shape }) => shape === 'wire').length;
    expect(told.filter((of) => of === 'frequency')).toHaveLength(1);
    expect(told.filter((of) => of === 'lines')).toHaveLength(cables.length);
    expect(told.filter((of) => of === 'load-offset')).toHaveLength(loads.length - wires);
  });

  it('has for the hill and for every answer the answer to the plan rewritten for it', () => {
    const bluff = demoPlan('river-bluff');
    const { hill, ...level } = bluff['site'] as Document & { hill: { distance: number } };
    const nearer = { ...bluff, site: { ...level, hill: { ...hill, distance: hill.distance / 2 } } };
    const found = asked(assessed(bluff));
    const useTo = (to: string) => found.rows.find(({ change }) => 'to' in change && change.to === to)?.ratio;
    expect(useTo('none')).toBeCloseTo(wholeRatio(checkInputOf({ ...bluff, site: level }), 'tower'), 9);
    expect(useTo('half-as-far')).toBeCloseTo(wholeRatio(checkInputOf(nearer), 'tower'), 9);

    const ten = demoPlan('ten-numbers');
    const open = asked(assessed(ten)).rows.filter(({ change }) => change.of === 'open-question');
    const answerTo = (question: string) =>
      open.find(
        ({ change }) => change.of === 'open-question' && change.question.question === question,
      ) as SensitivityRow;
    const [load] = ten['loads'] as Document[];
    const [rating] = ten['ratings'] as Document[];
    const wind = rating?.['wind'] as Document;
    const settled: Readonly<Record<string, Document>> = {
      'load-area-kind': { loads: [{ ...load, areaKind: 'effective' }] },
      'rating-exposure': { ratings: [{ ...rating, wind: { ...wind, exposure: 'D' } }] },
      'rating-class': { ratings: [{ ...rating, wind: { ...wind, riskCategory: 'III' } }] },
      'rating-area-kind': { ratings: [{ ...rating, areaKind: 'flat-plate' }] },
    };
    for (const [question, fields] of Object.entries(settled)) {
      const ratio = wholeRatio(checkInputOf({ ...ten, ...fields }), 'tower');
      expect(answerTo(question).ratio, question).toBeCloseTo(ratio, 9);
    }
  });

  it('has over plans of every sort the differences of whole answers', () => {
    let told = 0;
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const input = checkInputOf(plan);
        const found = sensitivityOf(assess(input));
        if (!found) return;
        const { site } = input;
        const ratioAt = (changed: Partial<CheckInput['site']>) =>
          wholeRatio({ ...input, site: { ...site, ...changed } }, found.ofCheck);
        const faster = (times: number) => ratioAt({ speed: site.speed * times });
        const { hill, ...level } = site;
        for (const { change, ratio, elasticity } of found.rows) {
          const near = (whole: number) => expect(ratio / whole, JSON.stringify(change)).toBeCloseTo(1, 9);
          if (change.of === 'speed') {
            near(faster(1.1));
            const slope = (Math.log(faster(1.002)) - Math.log(faster(0.998))) / (Math.log(1.002) - Math.log(0.998));
            expect(elasticity).toBeCloseTo(slope, 7);
          }
          if (change.of === 'ground') near(ratioAt({ exposure: change.to }));
          if (change.of === 'hill' && change.to === 'none') near(wholeRatio({ ...input, site: level }, found.ofCheck));
          if (change.of === 'hill' && change.to === 'half-as-far' && hill) {
            near(ratioAt({ hill: { ...hill, distance: hill.distance / 2 } }));
          }
          told += 1;
        }
      }),
      { numRuns: 60 },
    );
    expect(told).toBeGreaterThan(60);
  });

  describe.each(['asce7-10', 'asce7-16', 'asce7-22', 'tia222-g', 'tia222-h'])('by %s', (method) => {
    const beam = { name: 'beam', height: 50, area: 6, areaKind: 'effective', offset: 0 };
    const box = { name: 'box', height: 5, area: 0.02, areaKind: 'effective', offset: 6, weight: 900 };
    const appurtenances: Readonly<Record<string, readonly Document[]>> = {
      'on the axis': [beam],
      'far off the axis': [{ ...beam, area: 3 }, box],
    };

    it.each(Object.entries(appurtenances))(
      'grows %s with the gust factor as whole answers do with a topographic factor',
      (where, loads) => {
        // On stated areas both are factors of the pressure, and a plan can be given the second.
        const at = (topographicFactor: number): Document => ({
          ...plain(method, { wind: { speed: 130, basis: 'gust3-strength' }, topographicFactor }),
          loads,
        });
        const ratioAt = (factor: number) => wholeRatio(checkInputOf(at(factor)), 'tower');
        const found = asked(assessed(at(1.5)));
        const { ratio, elasticity } = row(found, 'gust-effect');
        for (const h of [0.003, 0.0005]) {
          const slope =
            (Math.log(ratioAt(1.5 * (1 + h))) - Math.log(ratioAt(1.5 * (1 - h)))) / (Math.log(1 + h) - Math.log(1 - h));
          expect(elasticity).toBeCloseTo(slope, 5);
        }
        expect(ratio).toBeCloseTo(ratioAt(1.5 * 1.1), 9);
        const none = found.rows.find(({ change }) => change.of === 'hill' && change.to === 'none');
        expect(none?.ratio).toBeCloseTo(ratioAt(1), 9);
        // What hangs off the axis weighs in at every wind.
        if (where === 'on the axis') expect(elasticity).toBeCloseTo(1, 3);
        else expect(elasticity).toBeLessThan(0.9);
      },
    );
  });

  it('agrees with what can be said by hand', () => {
    // Well over the least pressure V² and nothing else: 2, and 1.1² = 1.21 times at 10 % more.
    const strength = asked(assessed(plain('asce7-16', { wind: { speed: 120, basis: 'gust3-strength' } })));
    expect(row(strength, 'speed').elasticity).toBeCloseTo(2, 3);
    expect(row(strength, 'speed').ratio / strength.ratio).toBeCloseTo(1.21, 3);
    expect(row(strength, 'gust-effect').ratio / strength.ratio).toBeCloseTo(1.1, 3);
    // Fastest mile (V − 10.5)/1.05 of a nominal gust V: 2V/(V − 10.5) = 170/74.5 at 85 mph.
    const mile = asked(assessed(plain('eia222-f', { wind: { speed: 85, basis: 'gust3-nominal' } })));
    expect(row(mile, 'speed').elasticity).toBeCloseTo(170 / 74.5, 3);
    expect(mile.rows.some(({ change }) => change.of === 'ground')).toBe(false);
    // At the tower's top it can only go down: the shear, which then decides, by Kz at 49 for that at 50 ft.
    expect(row(strength, 'load-height').change).toMatchObject({ by: -0.3048 });
    expect(row(strength, 'load-height').ratio / strength.ratio).toBeCloseTo((49 / 50) ** (2 / 9.5), 3);
    // ASCE 7-16 Kz at 50 ft as printed: 0.81 (B), 1.09 (C), 1.27 (D), each within 0.008.
    const ratioOn = (ground: string) =>
      strength.rows.find(({ change }) => change.of === 'ground' && change.to === ground)?.ratio as number;
    expect(ratioOn('B') / strength.ratio).toBeCloseTo(0.81 / 1.09, 2);
    expect(ratioOn('D') / strength.ratio).toBeCloseTo(1.27 / 1.09, 2);
  });

  it('moves down what cannot go up', () => {
    const bluff = asked(assessed(demoPlan('river-bluff')));
    const by = (name: string) =>
      bluff.rows.flatMap(({ change }) => (change.of === 'load-height' && change.load === name ? [change.by] : []));
    // Its mast ends at 56 ft, where the vertical begins; the beam has room above it.
    expect(by('four-element beam')).toEqual([0.3048]);
    expect(by('vertical')).toEqual([-0.3048]);
  });

  it('is not there where there is no use to move', () => {
    const { ratings: _, ...unrated } = demoPlan('river-bluff');
    expect(sensitivityOf(assessed(unrated))).toBeUndefined();
    // Without a shape and without a standard nothing is proven, so every ratio is boundless.
    const nothing = bare('asce7-16', { wind: { speed: 100, basis: 'gust3-strength' } });
    const ratings = [{ of: 'tower', kind: 'force', force: 300, top: 48 }];
    expect(sensitivityOf(assessed({ ...nothing, ratings }))).toBeUndefined();
  });

  it('is said in words, and stands in the document only when asked for', () => {
    const own = assessed(demoPlan('ten-numbers'));
    expect(sensitivitySays(asked(own), own)).toMatch(
      /^Of 13 changes tried, each alone, these move the ratio of the tower \(1\.001\) most\. Beam 1 ft farther off the axis: [\d.]+\. .+: [\d.]+\. .+: [\d.]+\. One per cent more wind raises the ratio by 2\.0 %\.$/,
    );
    const { sensitivity } = answerDocument(own, {}, [], 'none', { sensitivity: asked(own) });
    expect(sensitivity?.rows).toHaveLength(asked(own).rows.length);
    for (const { says, ratio, difference } of sensitivity?.rows ?? []) {
      expect(says).toMatch(/^[A-Z].+: (up|down) [\d.]+ to [\d.]+\.$|: no notable difference\.$/);
      expect(difference).toBeCloseTo(ratio - asked(own).ratio, 12);
    }
    expect(answerDocument(own, {}, [], 'none').sensitivity).toBeUndefined();
  });
});
