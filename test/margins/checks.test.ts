import { describe, expect, it } from 'vitest';
import { FOOT, MILE_PER_HOUR, POUND, POUND_FORCE } from '../../src/foundation/index.ts';
import { type Assessment, type Check, standardTubesFor, workingOf } from '../../src/margins/index.ts';
import { answerText, witness, workingDocument } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan, demoPlans } from './demo-plan.ts';

const checkOf = ({ checks }: Assessment, id: string) => checks.find((check) => check.id === id) as Check;
const BLOCK: Document = { kind: 'block', length: 6, width: 6, depth: 5, soilBearing: 3000 };
const part = (plan: Document, key: string) => plan[key] as Document;

/** The bluff with everything told: weights, own winds, strengths, distances. */
function toldInFull(changed: Document = {}): Document {
  const plan = demoPlan('river-bluff');
  return {
    ...plan,
    site: { ...part(plan, 'site'), distances: { powerLine: 100, propertyLine: 80 } },
    tower: { ...part(plan, 'tower'), weight: 600 },
    // Pencil has counted none.
    rotator: { weight: 0 },
    loads: (plan['loads'] as Document[]).map((load) => ({
      ...load,
      weight: 20,
      ratedWind: { speed: 100, basis: 'gust3-nominal' },
    })),
    cables: (plan['cables'] as Document[]).map((run) => ({ ...run, weight: 0.1 })),
    ratings: [
      ...(plan['ratings'] as Document[]),
      { of: 'tower', kind: 'weight', weight: 200 },
      { of: 'bearing', kind: 'force', force: 600, level: 'allowable' },
      { of: 'rotator', kind: 'force', force: 200, level: 'allowable' },
      { of: 'rotator', kind: 'weight', weight: 150 },
    ],
    ...changed,
  };
}

describe('the mast of the bluff, by pencil', () => {
  /*
   * q(z) = 0.00256·Kz·Kzt·0.85·105². By ASCE 7-16 F = 0.6·0.85·q·A, Kzt = (1 + 0.2125·0.8333·e^(−2.5z/180))²: beam 110.03 lbf
   * at 50.5 ft, vertical 18.157, mast 25.460, inside 12.578. About 48 ft they bend it by 604.30 lbf·ft. By TIA-222-H F = 0.6·1.35·q·A, Kzt = (1 + 0.43·e^(−1.25z/45))²: beam 180.56 lbf,
   * vertical 29.042, mast 41.603, inside 20.952 in thin steps: 980.466 lbf·ft, which counts. Its tube, 2 in by 1/4 of
   * 46 ksi, is allowed 46000·π(2⁴ − 1.5⁴)/64/1.67 = 1232.39.
   */
  const answer = assessed(demoPlan('river-bluff'));
  const mast = checkOf(answer, 'mast');

  it('is bent most where it is held, by this much of what its tube is allowed', () => {
    expect((mast.result?.demand ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(980.466, 3);
    expect((mast.result?.capacity ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(1232.3898, 3);
    expect(mast.result?.ratio).toBeCloseTo(0.795581, 6);
    expect((mast.result?.height ?? 0) / FOOT).toBeCloseTo(48, 9);
    expect(mast.verdict).toBe('within');
    expect(mast.result?.bySecondMethod).toBe('tia222-h');
  });

  it('hands these forces to bearing and foot', () => {
    expect((answer.mast?.atBearing ?? 0) / POUND_FORCE).toBeCloseTo(506.784, 3);
    expect((answer.mast?.atFoot ?? 0) / POUND_FORCE).toBeCloseTo(245.1165, 3);
    expect((answer.mast?.force ?? 0) / POUND_FORCE).toBeCloseTo(272.153, 3);
  });

  it('holds to 105/√use, and as an actual gust × √(0.6·0.85)', () => {
    const { design, gust } = mast.result?.holdsTo ?? { design: 0, gust: 0 };
    expect(design / MILE_PER_HOUR).toBeCloseTo(105 / Math.sqrt(0.795581), 3);
    expect(gust / MILE_PER_HOUR).toBeCloseTo((105 / Math.sqrt(0.795581)) * Math.sqrt(0.51), 3);
  });

  it.each([
    ['asce7-10', 'by ANSI/TIA-222-G'],
    ['asce7-16', 'by ANSI/TIA-222-H'],
  ])('shows both winds by %s: the gust factor of a mast is 1.35 by TIA, 0.85 by ASCE', (method, beside) => {
    const { hill: _, ...site } = part(demoPlan('river-bluff'), 'site');
    const answer = assessed({ ...demoPlan('river-bluff'), site, method });
    const moments = workingOf(answer).steps.filter(
      ({ about, formula }) => about[0] === 'mast' && formula.id === 'total-moment',
    );
    expect(moments.map(({ about }) => about[1])).toEqual([`by ASCE/SEI ${method.slice(4)}`, beside]);
    // On level ground and in the same flow all that differs is the gust factor; G's own Kd and level are the same too.
    expect((moments[1]?.value ?? 0) / (moments[0]?.value ?? 1)).toBeCloseTo(1.35 / 0.85, 6);
    expect(checkOf(answer, 'mast').result?.demand).toBe(moments[1]?.value);
    expect(answerText(answer, [])).toContain(`governs, ${beside}.`);
  });

  it('goes by ASCE 7 where that asks for more: its least pressure of 16 psf in little wind', () => {
    // At 40 mph q·G·C = 0.00256·1.086·0.85·40²·0.85·1.2 < 3.9 psf, by TIA under 7.
    const { hill: _, ...site } = part(demoPlan('river-bluff'), 'site');
    const calm = { ...demoPlan('river-bluff'), site: { ...site, wind: { speed: 40, basis: 'gust3-strength' } } };
    const { result } = checkOf(assessed(calm), 'mast');
    expect(result?.bySecondMethod).toBeUndefined();
    // Boom and vertical of the beam by their solid area, 8·(48·1 + 48·0.75 + 40·0.5)/144 ft² of elements.
    const vertical = (9 * 1.25 * 12.5) / 12;
    const mast = (8 * 2 * 4) / 12;
    const elements = (8 * (48 * 1 + 48 * 0.75 + 40 * 0.5)) / 144;
    expect((result?.demand ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(0.6 * 16 * (elements * 2.5 + vertical + mast), 3);
  });
});

describe('a stepped and sleeved mast', () => {
  const bluff = demoPlan('river-bluff');
  const ratioWith = (mast: Document) =>
    checkOf(assessed({ ...bluff, mast: { ...part(bluff, 'mast'), ...mast } }), 'mast');

  it('is no other than one tube where its pieces are of that tube', () => {
    const pieces = [
      { outside: 2, wall: 0.25, from: 0, to: 5, yield: 46 },
      { outside: 2, wall: 0.25, from: 5, to: 12, yield: 46 },
    ];
    expect(ratioWith({ pieces }).result?.ratio).toBeCloseTo(0.795581, 6);
  });

  it('is decided by the piece that is bent most for its strength', () => {
    const pieces = [
      { outside: 2, wall: 0.25, from: 0, to: 6, yield: 92 },
      { outside: 2, wall: 0.25, from: 6, to: 12, yield: 10 },
    ];
    const { result } = ratioWith({ pieces });
    expect((result?.height ?? 0) / FOOT).toBeCloseTo(50, 9);
    expect((result?.capacity ?? 0) / POUND_FORCE / FOOT).toBeCloseTo((1232.3898 * 10) / 46, 3);
  });

  it('is stronger with a sleeve where it is bent most', () => {
    const sleeve = [
      { outside: 2, wall: 0.25, from: 0, to: 12, yield: 46 },
      { outside: 1.5, wall: 0.2, from: 1, to: 10, yield: 46 },
    ];
    expect(ratioWith({ pieces: sleeve }).result?.ratio).toBeLessThan(0.79);
  });
});

describe('an antenna in the wind its maker rates it for', () => {
  it('is held against the nominal gust at its height', () => {
    // 105·√0.6 = 81.333 mph; at 50.5 ft × √(Kz·Kzt) = 92.627, at 65 ft 93.721; against 100.
    const answer = assessed(toldInFull());
    const beam = checkOf(answer, 'antenna:four-element beam');
    expect((beam.result?.demand ?? 0) / MILE_PER_HOUR).toBeCloseTo(92.6273, 3);
    expect(beam.result?.ratio).toBeCloseTo(0.926273 ** 2, 5);
    expect(checkOf(answer, 'antenna:vertical').result?.ratio).toBeCloseTo(0.937207 ** 2, 5);
  });

  it('of unsaid kind is read both ways: 100 mph is a nominal 77.46 to 115.5', () => {
    const plan = toldInFull();
    const loads = (plan['loads'] as Document[]).map((load) => ({ ...load, ratedWind: 100 }));
    const { result, verdict, because } = checkOf(assessed({ ...plan, loads }), 'antenna:four-element beam');
    expect(result?.ratioRange[1]).toBeCloseTo((92.6273 / 77.45967) ** 2, 4);
    expect(result?.ratioRange[0]).toBeCloseTo((92.6273 / 115.5) ** 2, 4);
    expect([verdict, because]).toEqual(['open', 'readings-disagree']);
  });
});

describe('what makers state of bearing, rotator and weight', () => {
  const answer = assessed(toldInFull());

  it('is held against the force at the bearing and at the foot', () => {
    expect(checkOf(answer, 'bearing:3').result?.ratio).toBeCloseTo(506.784 / 600, 5);
    expect(checkOf(answer, 'rotator:4').result?.ratio).toBeCloseTo(245.1165 / 200, 5);
  });

  it('is held against all that hangs on the tower, and on the mast', () => {
    // Three loads of 20 lb, three lines of 48 ft at 0.1 lb, 12 ft of mast at 4.673 lb/ft; on the mast two of the loads.
    expect(checkOf(answer, 'weight:2').result?.ratio).toBeCloseTo((60 + 3 * 48 * 0.1 + 12 * 4.673) / 200, 3);
    expect((checkOf(answer, 'rotator:5').result?.demand ?? 0) / POUND).toBeCloseTo(40 + 12 * 4.673, 0);
  });

  it('sets an area stated of a rotator beside the plan, and shows nothing by it', () => {
    const plan = toldInFull();
    const ratings = [...(demoPlan('river-bluff')['ratings'] as Document[]), { of: 'rotator', area: 10 }];
    const check = checkOf(assessed({ ...plan, ratings }), 'rotator:2');
    // Beam 6.933 ft²; vertical 9 ft of 1.25 in and mast 12 ft of 2 in, × 1.2.
    const area = 6.9333 + (1.2 * (9 * 1.25 + 12 * 2)) / 12;
    expect(check).toMatchObject({ verdict: 'open', because: 'area-only' });
    expect((check.result?.demand ?? 0) / FOOT ** 2).toBeCloseTo(area, 3);
  });

  it('counts a strength-level force at 0.6 of it', () => {
    const plan = toldInFull();
    const ratings = [
      ...(demoPlan('river-bluff')['ratings'] as Document[]),
      { of: 'bearing', kind: 'force', force: 600 },
    ];
    expect(checkOf(assessed({ ...plan, ratings }), 'bearing:2').result?.ratio).toBeCloseTo(506.784 / 360, 5);
  });

  it('turns a rotator by what hangs off its axis', () => {
    const plan = toldInFull();
    const loads = (plan['loads'] as Document[]).map((load) =>
      load['name'] === 'vertical' ? { ...load, offset: 2 } : load,
    );
    const ratings = [
      ...(demoPlan('river-bluff')['ratings'] as Document[]),
      { of: 'rotator', kind: 'torque', brake: 60, level: 'allowable' },
      { of: 'rotator', kind: 'torque', brake: 60 },
      { of: 'rotator', kind: 'torque', torque: 30, brake: 60, level: 'allowable' },
      { of: 'rotator', kind: 'torque', torque: 60, level: 'allowable' },
    ];
    const answer = assessed({ ...plan, loads, ratings });
    const [brake, strength, both, turning] = [2, 3, 4, 5].map((number) => checkOf(answer, `rotator:${number}`).result);
    // By TIA-222-H 29.0421·2 ft = 58.0842 lbf·ft.
    expect(brake?.ratio).toBeCloseTo(58.0842 / 60, 4);
    // A level that is not told is that of its strength.
    expect(strength?.ratio).toBeCloseTo(58.0842 / 36, 4);
    expect(answer.cautions.filter(({ code }) => code === 'rating-level-assumed')).toMatchObject([{ at: '/ratings/2' }]);
    expect(answer.cautions.filter(({ code }) => code === 'uneven-gusts')).toHaveLength(4);
    // It turns against what is half of what it holds: in winds of 1/√2.
    expect(both?.torque).toMatchObject({ heldBy: 'brake' });
    expect((both?.torque?.turnsUpTo ?? 0) / (both?.holdsTo?.gust ?? 0)).toBeCloseTo(Math.SQRT1_2, 4);
    expect([brake?.torque?.turnsUpTo, turning?.torque?.heldBy]).toEqual([undefined, 'turning-torque']);
    expect(turning?.ratio).toBeCloseTo(58.0842 / 60, 4);
    const text = answerText(answer, []);
    expect(text).toMatch(/Its brake holds it\. It can turn in actual gusts up to [\d.]+ mph\./);
    expect(text).toContain('Its brake holds it. Turning torque not given.');
    expect(text).toContain('No brake rating given; its turning torque is taken as its holding torque.');
  });

  it('does not show a rotator under what is balanced: uneven gusts twist that too', () => {
    const ratings = [
      ...(demoPlan('river-bluff')['ratings'] as Document[]),
      { of: 'rotator', kind: 'torque', brake: 60, level: 'allowable' },
    ];
    const answer = assessed({ ...toldInFull(), ratings });
    expect(checkOf(answer, 'rotator:2')).toMatchObject({ verdict: 'open', because: 'balanced' });
    expect(answerText(answer, [])).toContain(
      'Rotator: open. No load is off its axis. No rule known here gives the torque of uneven gusts on a balanced antenna.',
    );
  });
});

describe('the footing', () => {
  const on = (foundation: Document, changed: Document = {}) => {
    const plan = toldInFull(changed);
    return assessed({ ...plan, tower: { ...part(plan, 'tower'), foundation } });
  };

  it('of a block is held against tipping: moment at its underside over 0.6 of its weight times half its side', () => {
    // The block weighs 6·6·5 ft³ of 2400 kg/m³; tower, loads and lines 600 + 60 + 14.4 lb, 12 ft of mast of 7850 kg/m³.
    const answer = on(BLOCK);
    const { block, load } = answer.foundation ?? {};
    const moment = (load?.moment ?? 0) / POUND_FORCE / FOOT;
    const shear = (load?.shear ?? 0) / POUND_FORCE;
    const mast = ((Math.PI / 4) * (2 ** 2 - 1.5 ** 2) * (FOOT / 12) ** 2 * 12 * FOOT * 7850) / POUND;
    const weight = (6 * 6 * 5 * 2400 * FOOT ** 3) / POUND + (600 + 60 + 14.4) + mast;
    expect((block?.deadLoad ?? 0) / POUND_FORCE).toBeCloseTo(weight, 1);
    expect(block?.overturning.ratio).toBeCloseTo((moment + 5 * shear) / (0.6 * weight * 3), 6);
    expect(checkOf(answer, 'foundation').result?.ratioRange[1]).toBe(checkOf(answer, 'foundation').result?.ratio);
  });

  it('of a block weighs what the plan says its concrete weighs', () => {
    // 6·6·5 ft³ of 150 lb/ft³ are 27,000 lb; of 2400 kg/m³, 149.83 lb/ft³, they are 26,968.9 lb.
    const weightOf = (concrete: unknown) => {
      const { block } = on({ ...BLOCK, ...(concrete === undefined ? {} : { concrete }) }).foundation ?? {};
      return (block?.blockWeight ?? 0) / POUND;
    };
    expect(weightOf(150)).toBeCloseTo(27000, 6);
    expect(weightOf(undefined)).toBeCloseTo(26968.9, 1);
  });

  it('of a block is never shown where a weight is missing, but may be over', () => {
    const plan = toldInFull();
    const { weight: _, ...tower } = part(plan, 'tower');
    const block = (side: number) => ({ kind: 'block', length: side, width: side, depth: 4, soilBearing: 3000 });
    const wide = checkOf(assessed({ ...plan, tower: { ...tower, foundation: block(8) } }), 'foundation');
    expect([wide.verdict, wide.because, wide.needs]).toEqual(['open', 'missing', ['/tower/weight']]);
    expect(checkOf(assessed({ ...plan, tower: { ...tower, foundation: block(3) } }), 'foundation').verdict).toBe(
      'over',
    );
  });

  it('of a pier goes by the load at which its depth is just enough', () => {
    // IBC 1807.3.2.1 by pencil: use = 2.34(P·d + 1.09·M)/(S1·b·d²), S1 = 150·d/3 up to 12 ft of depth.
    const answer = on({ kind: 'pier', diameter: 2.5, depth: 9, soilLateral: 150 });
    const P = (answer.foundation?.load.shear ?? 0) / POUND_FORCE;
    const M = (answer.foundation?.load.moment ?? 0) / POUND_FORCE / FOOT;
    const S1 = (150 * 9) / 3;
    expect(checkOf(answer, 'foundation').result?.ratio).toBeCloseTo((2.34 * (P * 9 + 1.09 * M)) / (S1 * 2.5 * 81), 6);
  });

  it('to the maker’s drawing is held against what his rating proves at the foot', () => {
    const answer = on({ kind: 'manufacturer' });
    const [tower] = answer.checks;
    const footing = checkOf(answer, 'foundation');
    expect(footing.result?.ratio).toBeCloseTo(tower?.result?.ratio ?? 0, 12);
    expect(footing.verdict).toBe('low-margin');
  });

  it('of a held tower is not shown', () => {
    const plan = demoPlan('guyed-lattice');
    const tower = { ...part(plan, 'tower'), foundation: { kind: 'manufacturer' } };
    expect(checkOf(assessed({ ...plan, tower }), 'foundation')).toMatchObject({ verdict: 'open', because: 'held' });
  });
});

describe('a tower of unknown shape in a wind stronger than the rated one', () => {
  it('is open between what its loads and what the wind on itself ask for', () => {
    // 115²·0.6/(90²·0.96) = 1.0204, the same at every height; half of the rated area hangs there.
    const answer = assessed({
      units: 'us',
      method: 'tia222-h',
      site: { wind: { speed: 115, basis: 'gust3-strength' }, exposure: 'C' },
      tower: { support: 'free', top: 48 },
      loads: [{ name: 'beam', above: 2, area: 10, areaKind: 'effective', on: 'tower', offset: 0, weight: 0 }],
      cables: [],
      ratings: [
        {
          of: 'tower',
          area: 20,
          areaKind: 'effective',
          above: 2,
          top: 48,
          wind: { speed: 90, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
        },
      ],
    });
    const { verdict, because, needs, result } = checkOf(answer, 'tower');
    expect({ verdict, because, needs }).toEqual({ verdict: 'open', because: 'missing', needs: ['/tower/shape'] });
    expect(result?.ratioRange[0]).toBeCloseTo(0.5102, 4);
    expect(result?.ratio).toBeCloseTo(1.0204, 4);
  });
});

describe('a footing under what is not known', () => {
  const on = (changed: (plan: Document) => Document) => {
    const plan = toldInFull();
    return assessed(changed({ ...plan, tower: { ...part(plan, 'tower'), foundation: BLOCK } }));
  };

  it('is not shown without the wind on the tower itself', () => {
    const answer = on((plan) => {
      const { sections: _, ...tower } = part(plan, 'tower');
      return { ...plan, tower: { ...tower, top: 48 } };
    });
    expect(checkOf(answer, 'foundation')).toMatchObject({ because: 'missing', needs: ['/tower/shape'] });
    expect(checkOf(answer, 'foundation').result?.holdsTo).toBeUndefined();
    expect(answerText(answer, [])).toContain('wind on the tower itself not included (unknown)');
  });

  it('is not shown, nor the top of the tower, with a wire whose pull nobody tells', () => {
    const wire = {
      name: 'wire',
      height: 50,
      shape: 'wire',
      diameter: 0.1,
      to: { distance: 60, height: 20, heading: 90 },
    };
    const answer = on((plan) => ({ ...plan, loads: [...(plan['loads'] as Document[]), { ...wire, weight: 1 }] }));
    for (const id of ['foundation', 'tower-top']) {
      expect(checkOf(answer, id)).toMatchObject({ verdict: 'open', needs: ['/loads/3/tension'] });
      expect(checkOf(answer, id).result?.holdsTo).toBeUndefined();
    }
    expect(answerText(answer, [])).toContain('The tension of wire is not given, so it is not included.');
  });
});

describe('what a falling tower reaches', () => {
  it('is its tip, half an element and ten feet', () => {
    // Vertical to 65 ft; the boom of 24 ft reaches farther than half an element of 272 in; 10 ft: 87 ft.
    const answer = assessed(toldInFull());
    expect(checkOf(answer, 'fall:power-line').result?.ratio).toBeCloseTo(87 / 100, 5);
    expect(checkOf(answer, 'fall:power-line').verdict).toBe('within');
    expect(checkOf(answer, 'fall:property-line')).toMatchObject({ verdict: 'over' });
    expect(answer.verdict).toBe('over');
  });
});

describe('the gust at which to lower', () => {
  it('is where the weakest link keeps the wanted margin, less the error of a forecast', () => {
    const plan = toldInFull();
    const lowered = assessed({ ...plan, tower: { ...part(plan, 'tower'), hinge: { height: 3 } } });
    const { lowerAt } = lowered;
    const keeps = lowered.checks.flatMap(({ id, result }) =>
      result?.keepsMarginTo === undefined ? [] : [{ id, gust: result.keepsMarginTo }],
    );
    expect(keeps.map(({ id }) => id)).toEqual(expect.arrayContaining(['tower', 'tower-top', 'mast']));
    const least = keeps.reduce((a, b) => (b.gust < a.gust ? b : a));
    expect(lowerAt?.ofCheck).toBe(least.id);
    expect(lowerAt?.gust).toBeCloseTo(least.gust * 0.9, 9);
    // Nothing of the bluff changes its coefficient: use 0.8 comes at √(0.8/use) of the wind.
    const tower = lowered.checks[0]?.result;
    expect((tower?.keepsMarginTo ?? 0) / (tower?.holdsTo?.gust ?? 1)).toBeCloseTo(Math.sqrt(0.8), 9);
    expect(assessed(demoPlan('ten-numbers')).lowerAt).toBeUndefined();
  });
});

describe('what each link holds to', () => {
  const plans = [
    // In so little wind as the guyed tower is shown for, the least pressure of ASCE decides.
    ...demoPlans().flatMap(({ id, plan }) => (id === 'guyed-lattice' ? [] : [[id, plan] as const])),
    ['river-bluff told in full', toldInFull()] as const,
    [
      'river-bluff on a block',
      { ...toldInFull(), tower: { ...part(toldInFull(), 'tower'), foundation: BLOCK } },
    ] as const,
    [
      'river-bluff on a pier',
      {
        ...toldInFull(),
        tower: {
          ...part(toldInFull(), 'tower'),
          foundation: { kind: 'pier', diameter: 2.5, depth: 9, soilLateral: 150 },
        },
      },
    ] as const,
  ];

  it.each(plans)('by %s is the site wind at which its use is 1', (_, plan) => {
    const answer = assessed(plan);
    const unit = plan['units'] === 'us' ? MILE_PER_HOUR : 1;
    let compared = 0;
    for (const { id, kind, result } of answer.checks) {
      if (!result?.holdsTo) continue;
      const site = part(plan, 'site');
      const given = site['wind'];
      const wind =
        typeof given === 'object' ? { ...given, speed: result.holdsTo.design / unit } : result.holdsTo.design / unit;
      const there = assessed({ ...plan, site: { ...site, wind } });
      // The least pressure of ASCE stands in the check and not in what it holds to.
      const least = there.cautions.some(({ code }) => code === 'least-pressure');
      if ((kind === 'tower' || kind === 'tower-top') && least) continue;
      const ratio = checkOf(there, id).result?.ratio ?? 0;
      expect(Math.abs(ratio - 1), `${id} ${ratio}`).toBeLessThan(1e-3);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(0);
  });
});

describe('what is missing', () => {
  it('never turns a link to within', () => {
    const plan = toldInFull();
    const without = (change: (copy: Document) => void) => {
      const copy = structuredClone(plan) as Document;
      change(copy);
      return assessed(copy);
    };
    const mastWithout = (field: string) =>
      without((copy) => {
        delete (copy['mast'] as Document)[field];
      });
    for (const field of ['wall', 'yield', 'inside']) {
      expect(checkOf(mastWithout(field), 'mast')).toMatchObject({
        verdict: 'open',
        because: 'missing',
        needs: [`/mast/${field}`],
      });
    }
    const noWeight = without((copy) => {
      delete (copy['loads'] as Document[])[0]?.['weight'];
    });
    expect(checkOf(noWeight, 'weight:2')).toMatchObject({ verdict: 'open', needs: ['/loads/0/weight'] });
    expect(checkOf(noWeight, 'rotator:5')).toMatchObject({ verdict: 'open', needs: ['/loads/0/weight'] });
    const noMast = without((copy) => {
      delete copy['mast'];
      copy['loads'] = (copy['loads'] as Document[]).filter((load) => load['name'] === 'link panel');
    });
    expect(checkOf(noMast, 'bearing:3')).toMatchObject({ verdict: 'open', needs: ['/mast'] });
  });
});

describe('the sentence at the head', () => {
  it('begins with what is over, even where the tower itself is not shown', () => {
    const plan = demoPlan('river-bluff');
    const answer = assessed({ ...plan, ratings: [], mast: { ...part(plan, 'mast'), outside: 1.25, wall: 0.065 } });
    expect([answer.verdict, checkOf(answer, 'tower').verdict]).toEqual(['over', 'open']);
    expect(answerText(answer, [])).toContain(
      'Mast over: at 5.87 of its allowable capacity in a 105 mph strength-level gust; bending at',
    );
  });
});

describe('raising the bluff about a hinge 4 ft up', () => {
  const raised = (raisedBy: Document, changed: Document = {}) => {
    const plan = toldInFull(changed);
    return assessed({ ...plan, tower: { ...part(plan, 'tower'), hinge: { height: 4, raisedBy } } });
  };
  const winch = { kind: 'winch', anchor: [0, 8], attach: 20, workingLoad: 2500 };

  it('pulls, lying flat, by the weights about the hinge over the arm of its line', () => {
    // Tower 550 lb at 22 ft, mast 56.08 at 46, beam 20 at 46.5, vertical at 56.5, panel at 30, lines 13.2 at 22; the line
    // from 8 ft over the hinge to 20 ft out has an arm of 8·20/√(8² + 20²) = 7.4278 ft.
    const moment = 550 * 22 + 12 * 4.6733 * 46 + 20 * (46.5 + 56.5 + 30) + 13.2 * 22;
    const answer = raised(winch);
    const check = checkOf(answer, 'raising');
    expect((check.result?.demand ?? 0) / POUND_FORCE).toBeCloseTo(moment / 7.42781, 0);
    expect(check.result?.ratio).toBeCloseTo(moment / 7.42781 / 2500, 3);
    expect(answer.raising?.raising?.worst?.angle).toBeCloseTo(0, 6);
  });

  it('takes a fifth of what a line breaks at, where gear is rated so', () => {
    const { workingLoad: _, ...line } = winch;
    const ratings = [...(demoPlan('river-bluff')['ratings'] as Document[]), { of: 'gear', breakingStrength: 12500 }];
    const plain = checkOf(raised(winch), 'raising').result?.ratio ?? 0;
    expect(checkOf(raised(line, { ratings }), 'raising').result?.ratio).toBeCloseTo(plain, 9);
    expect(checkOf(raised(line), 'raising')).toMatchObject({ verdict: 'open', because: 'missing' });
  });

  it('bends the lying tower against what the wind proves of it, level by level', () => {
    const check = checkOf(raised(winch), 'lying');
    expect(check.result?.of).toBe('moment');
    // At 28 ft above ground, 24 from the hinge, beyond the line: tower 250 lb at 10 ft, lines 6 lb at 10, mast, beam, vertical
    // and panel at 22, 22.5, 32.5 and 6.
    const moment = 250 * 10 + 6 * 10 + 12 * 4.6733 * 22 + 20 * (22.5 + 32.5 + 6);
    expect((check.result?.height ?? 0) / FOOT).toBeCloseTo(28, 6);
    expect(Math.abs((check.result?.demand ?? 0) / POUND_FORCE / FOOT / moment - 1)).toBeLessThan(5e-4);
    expect((check.result?.capacity ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(8921.64, 0);
  });

  it('bears a gust across it, lying flat, that uses up what its weight leaves of the proof', () => {
    /*
     * At 28 ft the design wind bends it by 0.660 of 8919.7 lbf·ft, of which the mast's weight is 24.4 (pencil, see
     * reference/plans); full force is 1/(0.6·0.85) of that. Its weight bends it by 5013.8 at right angles:
     * 105·√(√(8919.7² − 5013.8²)/(5862.6/0.51)) = 84.1 mph.
     */
    const { lyingWind } = raised(winch).raising ?? {};
    expect((lyingWind?.height ?? 0) / FOOT).toBeCloseTo(28, 6);
    expect((lyingWind?.gust ?? 0) / MILE_PER_HOUR).toBeCloseTo(84.1, 0);
    // 0.8 of the proof leaves 5077.6 lbf·ft of wind, 69.8 mph; a tenth off for the error of a forecast.
    expect((lyingWind?.forecast ?? 0) / MILE_PER_HOUR).toBeCloseTo(62.8, 0);
    const steps = workingDocument(workingOf(raised(winch)).steps, 'us');
    const told = steps.filter(({ about }) => about.includes('lowered flat'));
    expect(told.at(-1)?.formula).toBe('speed-by-force');
    expect(witness(steps).filter(({ agrees }) => !agrees)).toEqual([]);
  });

  it('is bent most where its gear takes hold, between joints too', () => {
    // One section from 8 ft up on a line at 20 ft from the hinge at 8: 40 ft of the tower's 600 lb over 48, and all above.
    const plan = toldInFull();
    const [base, section] = (part(plan, 'tower')['sections'] as Document[]) ?? [];
    const sections = [base, { ...section, count: 1, length: 40 }];
    const tower = { ...part(plan, 'tower'), sections, hinge: { height: 8, raisedBy: winch } };
    const { result } = checkOf(assessed({ ...plan, tower }), 'lying');
    expect((result?.height ?? 0) / FOOT).toBeCloseTo(28, 6);
    const moment = (600 / 48) * 20 * 10 + 0.3 * 20 * 10 + 12 * 4.6733 * 22 + 20 * (22.5 + 32.5 + 6);
    expect(Math.abs((result?.demand ?? 0) / POUND_FORCE / FOOT / moment - 1)).toBeLessThan(5e-4);
  });

  it('bears gusts on its gear that go with what the weights leave of its moment', () => {
    // Working load 2500 lbf on arms of 7.4278 ft flat and 7.337 at 45°; weights 17633 lbf·ft flat, × cos 45° there.
    const [flat, halfWay] = raised(winch).raising?.gustsAt ?? [];
    expect([flat?.angle, halfWay?.angle]).toEqual([0, Math.PI / 4]);
    const left = (2500 * 7.3371 - 17633 * Math.SQRT1_2) / (2500 * 7.42781 - 17633);
    expect(((halfWay?.gust ?? 0) / (flat?.gust ?? 1)) ** 2).toBeCloseTo(left, 1);
  });

  it('says nothing of the wind on the way where that on the tower itself is not known', () => {
    const { shape: _, ...bare } = part(toldInFull(), 'tower');
    const { sections: __, ...tower } = bare;
    const told = assessed({ ...toldInFull(), tower: { ...tower, top: 48, hinge: { height: 4, raisedBy: winch } } });
    expect(told.model.bareTowerKnown).toBe(false);
    expect(told.raising?.raising?.worst).toBeDefined();
    expect([told.raising?.gust, told.raising?.gustsAt, told.raising?.lyingWind]).toEqual(new Array(3).fill(undefined));
  });

  it('is not shown where a weight or the gear is missing', () => {
    const plan = toldInFull();
    const { weight: _, ...tower } = part(plan, 'tower');
    const answer = assessed({ ...plan, tower: { ...tower, hinge: { height: 4, raisedBy: winch } } });
    expect(checkOf(answer, 'raising')).toMatchObject({ verdict: 'open', needs: ['/tower/weight'] });
    const noGear = assessed({ ...plan, tower: { ...part(plan, 'tower'), hinge: { height: 4 } } });
    expect(checkOf(noGear, 'raising')).toMatchObject({ verdict: 'open', needs: ['/tower/hinge/raisedBy'] });
  });

  it('leaves half a boom or half an element under the mast, by the better of both', () => {
    // Boom 24 ft, elements 272 in: with the elements down the mast must lie 11.333 ft up, and it lies 4 ft up.
    const { handling } = raised(winch).raising ?? {};
    expect(handling?.best).toBe('elements-upright');
    const laid = handling?.orientations.find(({ orientation }) => orientation === 'elements-upright');
    expect((laid?.mastAtLeast ?? 0) / FOOT).toBeCloseTo(272 / 24, 6);
    expect((laid?.clearance ?? 0) / FOOT).toBeCloseTo(4 - 272 / 24, 6);
  });
});

describe('the hoist of a tower that telescopes', () => {
  const section = (weight?: number): Document => ({
    length: 20,
    shape: 'lattice',
    faces: 3,
    width: 14,
    members: 'round',
    ...(weight === undefined ? {} : { weight }),
  });
  const crankUp = (sections: Document[], changed: Document = {}): Document => ({
    units: 'us',
    method: 'asce7-16',
    site: { wind: 100, exposure: 'C' },
    tower: { support: 'free', top: 54, telescopes: true, sections },
    loads: [
      { name: 'beam', above: 0, area: 4, weight: 30, on: 'tower' },
      { name: 'side panel', height: 30, area: 1, weight: 10, on: 'tower', offset: 0 },
    ],
    cables: [{ count: 2, diameter: 0.4, weight: 0.1 }],
    ratings: [{ of: 'gear', breakingStrength: 4000 }],
    ...changed,
  });

  it('pulls once what rides on the second section and twice what rides on the third', () => {
    // Sections end at 20, 37 and 54 ft: the panel at 30 ft rides with the second, beam and 2·54·0.1 lb of lines with the third.
    const check = checkOf(assessed(crankUp([section(90), section(70), section(50)])), 'hoist');
    const pull = 1 * (70 + 10) + 2 * (50 + 30 + 10.8);
    expect((check.result?.demand ?? 0) / POUND_FORCE).toBeCloseTo(pull, 9);
    expect(check.result?.ratio).toBeCloseTo(pull / (4000 / 5), 9);
    expect(check.verdict).toBe('within');
  });

  it('lifts a mast with the uppermost section, in whose overlap its foot may stand', () => {
    const pull = (inside: number) => {
      const mast = { outside: 2, wall: 0.25, length: 24, inside, yield: 46, bearing: 50 };
      const told = crankUp([section(90), section(70), section(50)], { mast });
      return (checkOf(assessed(told), 'hoist').result?.demand ?? 0) / POUND_FORCE;
    };
    // Above the rim at 37 ft, in the overlap of 34 to 37, and with no mast of 24 ft at 4.6733 lb.
    const bare = 1 * (70 + 10) + 2 * (50 + 30 + 10.8);
    for (const inside of [16, 18]) expect(pull(inside)).toBeCloseTo(bare + 2 * 24 * 4.6733, 0);
  });

  it('is not shown without the weight of a section it lifts, nor without what its gear may pull', () => {
    const noWeight = checkOf(assessed(crankUp([section(), section(70), section()])), 'hoist');
    expect(noWeight).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/tower/sections/2/weight'] });
    const noGear = checkOf(assessed(crankUp([section(90), section(70), section(50)], { ratings: [] })), 'hoist');
    expect(noGear).toMatchObject({ verdict: 'open', needs: ['/ratings'] });
  });

  it('is no link where the plan says nothing of it, and then a caution says so', () => {
    const answer = assessed(crankUp([section(), section(), section()], { ratings: [] }));
    expect(checkOf(answer, 'hoist')).toBeUndefined();
    expect(answer.cautions.map(({ code }) => code)).toContain('hoist-not-checked');
  });

  it('shows its working', () => {
    const steps = workingOf(assessed(crankUp([section(90), section(70), section(50)]))).steps;
    expect(steps.map(({ formula }) => formula.id)).toContain('hoist-pull-of-crank-up');
    for (const system of ['us', 'si'] as const) {
      expect(witness(workingDocument(steps, system)).filter(({ agrees }) => !agrees)).toEqual([]);
    }
  });
});

describe('the legs of a lattice that stands by itself', () => {
  it('pull and press by the nominal moment over their spacing, with the weight for and against', () => {
    // A face of 18 in with legs of 1 1/4: axes 16.75 in apart. One leg against two, √3/2 of that.
    const { legs, nominal, weight = Number.NaN } = assessed(toldInFull()).reactions;
    const arm = (Math.sqrt(3) / 2) * 16.75 * (FOOT / 12);
    // 600 lb of tower, 12 ft of mast at 4.6733 lb/ft, 60 lb of loads, three lines of 48 ft at 0.1 lb.
    expect(weight / POUND).toBeCloseTo(600 + 12 * 4.6733 + 60 + 3 * 48 * 0.1, 0);
    expect(legs?.upliftWithoutWeight).toBeCloseTo(nominal.moment / arm, 6);
    expect(legs?.uplift).toBeCloseTo(nominal.moment / arm - (0.6 * weight * 9.80665) / 3, 6);
    expect(legs?.push).toBeCloseTo(nominal.moment / arm + (weight * 9.80665) / 3, 6);
  });

  it('are not told of a pole, nor where guys or a bracket take part', () => {
    for (const id of ['light-mast', 'house-bracket', 'guyed-lattice'] as const)
      expect(assessed(demoPlan(id)).reactions.legs, id).toBeUndefined();
  });
});

describe('what turns near guys, and what falls near a house', () => {
  const codes = (plan: Document) => assessed(plan).cautions.map(({ code }) => code);
  const guyed = (radius: number, loads: Document[]): Document => ({
    units: 'us',
    method: 'asce7-16',
    site: { wind: 100, exposure: 'C' },
    tower: {
      support: 'guyed',
      top: 60,
      shape: 'lattice',
      faces: 3,
      width: 12,
      members: 'round',
      supportedAt: [{ height: 50, by: 'guys', count: 3, diameter: 0.25, radius }],
    },
    loads,
    cables: [],
  });
  const beam = (height: number): Document => ({
    name: 'beam',
    height,
    area: 3,
    boom: 12,
    reach: 10,
    on: 'tower',
    offset: 0,
  });

  it('warns of a beam that reaches the guys at its height, and of none above them', () => {
    // At 40 ft a guy to 50 ft is a fifth of its radius out: 8 ft of 40, 12 ft of 60.
    expect(codes(guyed(40, [beam(40)]))).toContain('reaches-guys');
    expect(codes(guyed(60, [beam(40)]))).not.toContain('reaches-guys');
    expect(codes(guyed(40, [beam(55)]))).not.toContain('reaches-guys');
  });

  it('warns of a building nearer than everything may fall', () => {
    const standing = (building: number): Document => {
      const plan = demoPlan('river-bluff');
      return { ...plan, site: { ...part(plan, 'site'), distances: { building } } };
    };
    // Tip of the vertical at 65 ft, half an element 272/24 ft, 10 ft between: 86.33 ft.
    expect(codes(standing(86))).toContain('building-in-reach');
    expect(codes(standing(87))).not.toContain('building-in-reach');
  });
});

describe('the working of every link', () => {
  it.each(['us', 'si'] as const)('re-evaluates step by step, in %s units', (system) => {
    const plan = toldInFull();
    const tower = {
      ...part(plan, 'tower'),
      foundation: BLOCK,
      hinge: { height: 4, raisedBy: { kind: 'winch', anchor: [-3, 12], attach: 20, workingLoad: 2500 } },
    };
    const pier = { ...tower, foundation: { kind: 'pier', diameter: 2.5, depth: 9, soilLateral: 150 } };
    for (const method of ['asce7-22', 'tia222-g', 'eia222-f', 'en1991-1-4']) {
      const { exposure: _, hill: __, ...site } = part(plan, 'site');
      const ground = method === 'en1991-1-4' ? { terrain: 'II' } : { exposure: 'C' };
      for (const standing of [tower, pier]) {
        const answer = assessed({ ...plan, method, site: { ...site, ...ground }, tower: standing });
        const steps = workingDocument(workingOf(answer).steps, system);
        const failed = witness(steps).filter((testimony) => !testimony.agrees);
        expect(failed).toEqual([]);
        const headings = new Set(steps.flatMap((step) => step.about));
        for (const heading of [
          'mast',
          'vertical',
          'footing',
          'legs at the base',
          'raising',
          'fall distance',
          'when to lower',
        ]) {
          expect([...headings], method).toContain(heading);
        }
      }
    }
  });
});

describe('room left', () => {
  const calm = (plan: Document): Document => ({
    ...plan,
    site: { ...part(plan, 'site'), wind: { speed: 80, basis: 'gust3-strength' } },
  });
  const putIn = (plan: Document, height: number, area: number) =>
    assessed({
      ...plan,
      loads: [
        ...(plan['loads'] as Document[]),
        { name: 'trial', height: height / FOOT, area: area / FOOT ** 2, areaKind: 'effective', weight: 0, offset: 0 },
      ],
    });
  const withFooting = (foundation: Document) => {
    const plan = calm(toldInFull());
    return { ...plan, tower: { ...part(plan, 'tower'), foundation } };
  };

  it('is the area that brings the deciding link to the wanted margin', () => {
    const weaker = calm(toldInFull());
    const { roomLeft } = assessed(weaker);
    expect(roomLeft.map(({ on, height }) => [on, height / FOOT])).toEqual([
      ['tower', expect.closeTo(48, 6)],
      ['mast', expect.closeTo(56, 6)],
      ['mast', expect.closeTo(50.5, 6)],
    ]);
    for (const { height, area, check } of roomLeft) {
      expect(area).toBeGreaterThan(0);
      expect(checkOf(putIn(weaker, height, area), check).result?.ratio).toBeCloseTo(0.8, 4);
    }
  });

  it.each([
    ['a block that may tip', { kind: 'block', length: 5, width: 4.8, depth: 4, soilBearing: 20000 }],
    ['a block that presses into the soil', { kind: 'block', length: 6, width: 6, depth: 4, soilBearing: 1500 }],
    ['a pier', { kind: 'pier', diameter: 2.5, depth: 7.4, soilLateral: 150 }],
    ['a pier held at the ground', { kind: 'pier', diameter: 2.5, depth: 6, soilLateral: 150, constrained: true }],
  ])('ends where the footing is at the wanted margin, of %s', (_, foundation) => {
    const plan = withFooting(foundation);
    const decided = assessed(plan).roomLeft.filter(({ check }) => check === 'foundation');
    expect(decided.length).toBeGreaterThan(0);
    for (const { height, area } of decided) {
      expect(checkOf(putIn(plan, height, area), 'foundation').result?.ratio).toBeCloseTo(0.8, 5);
    }
  });

  it('ends where bearing or rotator is at the wanted margin', () => {
    const plan = calm(toldInFull());
    const tower = [...(demoPlan('river-bluff')['ratings'] as Document[])];
    for (const [of, force] of [
      ['bearing', 400],
      ['rotator', 200],
    ] as const) {
      const told = { ...plan, ratings: [...tower, { of, kind: 'force', force, level: 'allowable' }] };
      const decided = assessed(told).roomLeft.filter(({ check }) => check === `${of}:2`);
      expect(decided).toHaveLength(2);
      for (const { height, area } of decided) {
        expect(checkOf(putIn(told, height, area), `${of}:2`).result?.ratio).toBeCloseTo(0.8, 5);
      }
    }
  });

  it('names what it would load: what is open, and what is decided and not covered', () => {
    const plan = calm(demoPlan('river-bluff'));
    const { foundation: _, ...bare } = part(plan, 'tower');
    const iced: Document = {
      ...plan,
      tower: bare,
      site: { ...part(plan, 'site'), ice: { thickness: 0.5, gust: 30 } },
    };
    const answer = assessed(iced);
    const verdictOf = (id: string) => answer.checks.find((check) => check.id === id)?.verdict;
    expect(['ice', 'mast:ice', 'foundation'].map((id) => verdictOf(id) === 'open')).toEqual([false, false, true]);
    expect(answer.roomLeft.map(({ on, without, notCovered }) => [on, without, notCovered])).toEqual([
      ['tower', ['foundation'], ['ice']],
      ['mast', ['foundation'], ['ice', 'mast:ice']],
      ['mast', ['foundation'], ['ice', 'mast:ice']],
    ]);
    expect(answer.roomLeft[1]?.looked).toEqual(['tower', 'tower-top', 'mast']);
    expect(answerText(answer, [])).toMatch(
      /Room left at the top \(48 ft\) with a 20 % margin: [\d.]+ ft² effective; the tower top governs\. Not included \(open\): footing\. It does not cover: tower with ice\./,
    );
  });
});

describe('elements whose segments, walls and alloy are told', () => {
  const plan = demoPlan('river-bluff');
  const [, ...others] = plan['loads'] as Document[];
  const beam = (wall: number, yieldKsi: number): Document => ({
    name: 'four-element beam',
    height: 50.5,
    turns: true,
    shape: 'tubes',
    tubes: [
      { along: 'boom', diameter: 2, length: 24 },
      {
        along: 'element',
        count: 4,
        yield: yieldKsi,
        taper: [
          [1, 48, wall],
          [0.75, 48, wall],
          [0.5, 40, wall],
        ],
      },
    ],
    offset: 0,
  });
  const told = (wall = 0.058, yieldKsi = 35) => assessed({ ...plan, loads: [beam(wall, yieldKsi), ...others] });
  const id = 'elements:four-element beam:2';

  it('bend most where pencil says, by wind and weight together', () => {
    /*
     * 0.6·0.85·31.115 psf·1.2 = 19.043 psf on the shadow; per ft: 1 in 1.5869 lbf, 3/4 in 1.1902, 1/2 in 0.79346. At the
     * hold 1.5869·4·2 + 1.1902·4·6 + 0.79346·3.3333·9.6667 = 66.83 lbf·ft. Weight by 168.56 lb/ft³ (2700 kg/m³) and
     * π(D − t)t: 0.20105, 0.14765, 0.094322 lb/ft: at the hold 1.6084 + 3.5436 + 3.0393 = 8.191. √(66.83² + 8.191²) = 67.33.
     * S of 1 × 0.058: 0.036957... in³; Fy·S/1.95 where the rupture is not told.
     */
    const q = 0.6 * 0.85 * 31.1155 * 1.2;
    const per = [1, 0.75, 0.5].map((inches) => (q * inches) / 12);
    const [a = 0, b = 0, c = 0] = per;
    const wind = a * 4 * 2 + b * 4 * 6 + c * (40 / 12) * (8 + 40 / 24);
    const heavy = [1, 0.75, 0.5].map((inches) => (168.56 * Math.PI * (inches - 0.058) * 0.058) / 144);
    const [x = 0, y = 0, z = 0] = heavy;
    const weight = x * 4 * 2 + y * 4 * 6 + z * (40 / 12) * (8 + 40 / 24);
    const S = (Math.PI * (1 - (1 - 0.116) ** 4)) / 32;
    const { result } = checkOf(told(), id);
    expect(result?.along).toBe(0);
    expect(Math.abs((result?.demand ?? 0) / POUND_FORCE / FOOT / Math.hypot(wind, weight) - 1)).toBeLessThan(1e-3);
    expect(Math.abs((result?.capacity ?? 0) / POUND_FORCE / FOOT / ((35000 * S) / 1.95 / 12) - 1)).toBeLessThan(1e-6);
  });

  it('holds to the wind that brings its use to 1, and is stronger with more wall', () => {
    const answer = told();
    const gust = checkOf(answer, id).result?.holdsTo?.design ?? 0;
    const there = assessed({
      ...plan,
      loads: [beam(0.058, 35), ...others],
      site: { ...part(plan, 'site'), wind: { speed: gust / MILE_PER_HOUR, basis: 'gust3-strength' } },
    });
    expect(checkOf(there, id).result?.ratio).toBeCloseTo(1, 3);
    expect(checkOf(told(0.12), id).result?.ratio).toBeLessThan(checkOf(answer, id).result?.ratio ?? 0);
  });

  describe('of a metal that is told in part', () => {
    // S of 1 × 0.058 in: π(1 − 0.884⁴)/32 = 0.038221 in³.
    const S = (Math.PI * (1 - 0.884 ** 4)) / 32;
    const poundFeet = (value = 0) => value / POUND_FORCE / FOOT;
    const metal = (more: Document, yieldKsi = 35) => {
      const row = (part(beam(0.058, yieldKsi), 'tubes') as unknown as Document[])[1] as Document;
      const tubes = [
        { along: 'boom', diameter: 2, length: 24 },
        { ...row, ...more },
      ];
      return assessed({ ...plan, loads: [{ ...beam(0.058, yieldKsi), tubes }, ...others] });
    };
    const cautions = (answer: Assessment) =>
      answer.cautions.filter(({ code }) => code === 'metal-assumed' || code === 'rupture-not-given');

    it('is allowed by its rupture where that is told and comes first', () => {
      const { result } = checkOf(metal({ ultimate: 38 }), id);
      expect(poundFeet(result?.capacity)).toBeCloseTo((38000 * S) / 1.95 / 12, 3);
      expect(result?.ratioRange[0]).toBe(result?.ratio);
      expect(poundFeet(checkOf(metal({ ultimate: 45 }), id).result?.capacity)).toBeCloseTo((35000 * S) / 1.67 / 12, 3);
    });

    it('is not shown where its rupture would settle it, and names what is missing', () => {
      // 67.33 of 38000·S/1.95/12 = 62.07 lbf·ft is 1.085; of 38000·S/1.67/12 = 72.48 it is 0.929.
      const open = checkOf(metal({}, 38), id);
      expect(open).toMatchObject({
        verdict: 'open',
        because: 'readings-disagree',
        needs: ['/loads/0/tubes/1/ultimate'],
      });
      expect(open.result?.ratio).toBeCloseTo(1.085, 3);
      expect(open.result?.ratioRange[0]).toBeCloseTo(0.929, 3);
      expect(checkOf(metal({ ultimate: 45 }, 38), id).verdict).toBe('low-margin');
      expect(checkOf(metal({ ultimate: 38 }, 38), id).verdict).toBe('over');
      // Over whatever it breaks at.
      expect(checkOf(metal({}, 34), id).verdict).toBe('over');
    });

    it('weighs and is allowed as steel where it is steel', () => {
      const [light, heavy] = [metal({ ultimate: 45 }), metal({ material: 'steel' })];
      expect(poundFeet(checkOf(heavy, id).result?.capacity)).toBeCloseTo((35000 * S) / 1.67 / 12, 3);
      // Wind 66.83, weight 8.191 of aluminium and 8.191·7850/2700 of steel.
      expect(poundFeet(checkOf(light, id).result?.demand)).toBeCloseTo(Math.hypot(66.83, 8.191), 1);
      expect(poundFeet(checkOf(heavy, id).result?.demand)).toBeCloseTo(Math.hypot(66.83, (8.191 * 7850) / 2700), 1);
    });

    it('has a caution for each thing not given, and none where all is', () => {
      expect(cautions(metal({}))).toMatchObject([
        { code: 'metal-assumed', at: '/loads/0/tubes/1/material', of: 'four-element beam' },
        { code: 'rupture-not-given', at: '/loads/0/tubes/1/ultimate', of: 'four-element beam' },
      ]);
      expect(cautions(metal({ material: 'aluminium', ultimate: 38 }))).toEqual([]);
      expect(cautions(metal({ material: 'steel' }))).toEqual([]);
      expect(cautions(assessed(plan))).toEqual([]);
    });
  });

  describe('on a boom of which wall and alloy are told', () => {
    const boom = { along: 'boom', yield: 35, ultimate: 38, material: 'aluminium', taper: [[2, 144, 0.12]] };
    const withBoom = (weight?: number, more: Document = {}) => {
      const elements = {
        along: 'element',
        count: 4,
        taper: [
          [1, 48],
          [0.75, 48],
          [0.5, 40],
        ],
      };
      const { tubes: _, ...bare } = beam(0.058, 35);
      const load = { ...bare, tubes: [boom, elements], ...(weight === undefined ? {} : { weight }), ...more };
      return checkOf(assessed({ ...plan, loads: [load, ...others] }), 'elements:four-element beam:1');
    };
    const poundFeet = (value = 0) => value / POUND_FORCE / FOOT;
    // 24 ft of 2 by 0.12 in: 168.56·π·(2 − 0.12)·0.12/144 = 0.8296 lb a foot, 19.91 lb; half of it bends by 0.8296·12²/2.
    const perFoot = (168.56 * Math.PI * 1.88 * 0.12) / 144;
    const own = (perFoot * 12 ** 2) / 2;

    it('weigh on it by half at each end', () => {
      const [bare, laden] = [withBoom(24 * perFoot), withBoom(24 * perFoot + 20)];
      const wind = Math.sqrt(poundFeet(bare.result?.demand) ** 2 - own ** 2);
      expect(poundFeet(laden.result?.demand)).toBeCloseTo(Math.hypot(wind, own + 10 * 12), 0);
      expect(laden.result?.ratioRange[0]).toBeCloseTo(bare.result?.ratio ?? Number.NaN, 3);
      expect(laden.result?.holdsTo?.gust).toBeLessThan(bare.result?.holdsTo?.gust ?? 0);
    });

    it('leave it not shown where what it carries is not told', () => {
      const check = withBoom();
      expect(check).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/loads/0/weight'] });
      expect(check.result?.holdsTo).toBeUndefined();
    });

    it('leave it as it is where nobody told how it turns: the wind meets it broadside', () => {
      const still = withBoom(40, { turns: false });
      expect(still.result?.demand).toBeCloseTo(withBoom(40).result?.demand ?? Number.NaN, 6);
    });
  });

  it('are no link where a wall or the alloy is not told', () => {
    expect(checkOf(assessed(plan), id)).toBeUndefined();
  });
});

describe('mast and elements with ice', () => {
  /*
   * By ASCE 7-16 chapter 10: t_d = 0.5 in · (z/33)^0.10 · Kzt^0.35, a 40 mph gust with it, 0.7 of its force, every member
   * round in slow flow (1.2), 56 lb/ft³. On the mast the wind of TIA-222-H counts, G 1.35 and Kzt = (1 + 0.43·e^(−1.25z/45))². Kz = 2.01(z/900)^(2/9.5); the bluff's Kzt = (1 + 0.2125·0.8333·e^(−2.5z/180))².
   */
  const kzt = (z: number) => (1 + 0.2125 * (1 - 120 / 720) * Math.exp((-2.5 * z) / 180)) ** 2;
  const ice = (z: number) => 0.5 * (z / 33) ** 0.1 * kzt(z) ** 0.35;
  const onArea = (z: number) => 0.7 * 0.85 * 0.85 * 1.2 * 0.00256 * 2.01 * (z / 900) ** (2 / 9.5) * kzt(z) * 40 ** 2;
  const kztTia = (z: number) => (1 + 0.43 * Math.exp((-1.25 * z) / 45)) ** 2;
  const onMast = (z: number) => (onArea(z) * (1.35 * kztTia(z))) / (0.85 * kzt(z));
  const plan = demoPlan('river-bluff');
  const iced: Document = {
    ...plan,
    site: { ...part(plan, 'site'), riskCategory: 'II', ice: { thickness: 0.5, gust: 40 } },
  };

  it('bends the mast by all that is iced above its bearing', () => {
    const t = ice(50.5);
    const elements = (8 * (48 * (1 + 2 * t) + 48 * (0.75 + 2 * t) + 40 * (0.5 + 2 * t))) / 144;
    let moment = onMast(50.5) * elements * 2.5;
    const upright = (diameter: number, low: number, high: number, thickness: (z: number) => number) => {
      const steps = 200;
      for (let step = 0; step < steps; step += 1) {
        const z = low + ((high - low) * (step + 0.5)) / steps;
        moment += (onMast(z) * ((diameter + 2 * thickness(z)) / 12) * (z - 48) * (high - low)) / steps;
      }
    };
    // The vertical has the ice of its upper end throughout.
    upright(1.25, 56, 65, () => ice(65));
    upright(2, 48, 56, ice);
    const check = checkOf(assessed(iced), 'mast:ice');
    expect(Math.abs((check.result?.demand ?? 0) / POUND_FORCE / FOOT / moment - 1)).toBeLessThan(2e-3);
    expect((check.result?.capacity ?? 0) / POUND_FORCE / FOOT).toBeCloseTo(1232.3898, 3);
    expect(check.verdict).toBe('within');
  });

  it('bends an element thicker, heavier and no stronger', () => {
    const [beam, ...others] = plan['loads'] as Document[];
    const tubes = [
      { along: 'boom', diameter: 2, length: 24 },
      {
        along: 'element',
        count: 4,
        yield: 35,
        taper: [
          [1, 48, 0.058],
          [0.75, 48, 0.058],
          [0.5, 40, 0.058],
        ],
      },
    ];
    const answer = assessed({ ...iced, loads: [{ ...beam, tubes }, ...others] });
    const t = ice(50.5);
    const arms = [4 * 2, 4 * 6, (40 / 12) * (8 + 40 / 24)];
    const sum = (per: (inches: number) => number) =>
      [1, 0.75, 0.5].reduce((total, inches, index) => total + per(inches) * (arms[index] as number), 0);
    const wind = sum((inches) => (onArea(50.5) * (inches + 2 * t)) / 12);
    // Tube by 168.56 lb/ft³, ice by 0.7 · 56 lb/ft³ · π·t·(D + t).
    const weight = sum((inches) => (Math.PI * (168.56 * (inches - 0.058) * 0.058 + 0.7 * 56 * t * (inches + t))) / 144);
    const { result } = checkOf(answer, 'elements:four-element beam:2:ice');
    expect(Math.abs((result?.demand ?? 0) / POUND_FORCE / FOOT / Math.hypot(wind, weight) - 1)).toBeLessThan(1e-3);
    for (const system of ['us', 'si'] as const) {
      const steps = workingDocument(workingOf(answer).steps, system);
      expect(witness(steps).filter(({ agrees }) => !agrees)).toEqual([]);
      const headings = new Set(steps.flatMap((step) => step.about));
      expect([...headings]).toEqual(
        expect.arrayContaining(['mast with ice', 'tubes of the four-element beam with ice']),
      );
    }
  });

  it('are not shown where geometry cannot tell what is iced', () => {
    const [, ...others] = plan['loads'] as Document[];
    const stated = { name: 'beam', height: 50.5, area: 5, areaKind: 'effective', offset: 0 };
    const check = checkOf(assessed({ ...iced, loads: [stated, ...others] }), 'mast:ice');
    expect(check).toMatchObject({ verdict: 'open', because: 'missing', needs: ['/loads/0/icedArea'] });
  });

  it('are no links where no ice is given', () => {
    expect(checkOf(assessed(plan), 'mast:ice')).toBeUndefined();
  });
});

describe('standard tubes for the mast', () => {
  it('are those with which the checked plan keeps the wanted margin, the lightest first', () => {
    const plan = demoPlan('river-bluff');
    const answer = assessed(plan);
    const tubes = standardTubesFor(answer) ?? [];
    expect(tubes.length).toBeGreaterThan(1);
    expect(tubes.map(({ weightPerLength }) => weightPerLength)).toEqual(
      tubes.map(({ weightPerLength }) => weightPerLength).toSorted((a, b) => a - b),
    );
    for (const { pipe, ratio } of tubes) {
      const mast = { ...part(plan, 'mast'), outside: `${pipe.outside / 0.0254} in`, wall: `${pipe.wall / 0.0254} in` };
      expect(checkOf(assessed({ ...plan, mast }), 'mast').result?.ratio).toBeCloseTo(ratio, 9);
      expect(ratio).toBeLessThanOrEqual(0.8);
    }
    const { yield: _, ...softer } = part(plan, 'mast');
    expect(standardTubesFor(assessed({ ...plan, mast: softer }))).toBeUndefined();
  });
});
