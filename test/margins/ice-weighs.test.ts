import { describe, expect, it } from 'vitest';
import { answerDocument, answerText } from '../../src/worksheet/index.ts';
import { assessed, type Document } from './any-plan.ts';

/** Pounds of ice round a tube, 56 lb/ft³: by the foot, sizes in inches. */
const iceAFoot = (diameter: number, ice: number) => (56 * Math.PI * ice * (diameter + ice)) / 144;
/** ASCE 7-16 10.4: thickness on the map times (z/33)^0.10, feet. */
const iceAt = (thickness: number, z: number) => thickness * Math.min(1.4, (z / 33) ** 0.1);
/** Steel tube, 0.2836 lb/in³: pounds a foot. */
const steelAFoot = (outside: number, wall: number) => 0.2836 * 12 * Math.PI * (outside - wall) * wall;

const BEAM = {
  name: 'beam',
  above: 2,
  shape: 'tubes',
  turns: true,
  weight: 30,
  tubes: [
    { along: 'boom', count: 1, diameter: 2, length: 14 },
    { along: 'element', count: 4, diameter: 0.625, length: 24 },
  ],
};

const plan = (changes: Document = {}, ratings: readonly Document[] = []): Document => ({
  format: 2,
  units: 'us',
  method: 'asce7-16',
  site: {
    wind: { speed: 105, basis: 'gust3-strength' },
    exposure: 'C',
    riskCategory: 'II',
    ice: { thickness: 0.75, gust: 40 },
  },
  tower: {
    support: 'free',
    top: 48,
    weight: 400,
    shape: 'lattice',
    faces: 3,
    width: 18,
    members: 'round',
    leg: 1.25,
    brace: 0.4375,
    panel: 16,
    foundation: { kind: 'block', length: 5, width: 5, depth: 5, soilBearing: 2000 },
    pattern: 'zigzag',
  },
  mast: { outside: 2, wall: 0.25, length: 10, inside: 4, bearing: 48, yield: 50, material: 'steel' },
  rotator: { weight: 20 },
  loads: [BEAM],
  cables: [{ count: 2, diameter: 0.4, weight: 0.1, to: 48 }],
  ratings: [
    {
      of: 'tower',
      kind: 'area',
      area: 20,
      areaKind: 'effective',
      wind: { speed: 90, basis: 'fastest-mile', method: 'eia222-f' },
      top: 48,
    },
    { of: 'rotator', kind: 'weight', weight: 100 },
    ...ratings,
  ],
  ...changes,
});

const checkOf = (document: Document, id: string) => assessed(document).checks.find((check) => check.id === id);

/** What rides on the mast: 10 ft of tube and the beam, bare and with ice, in pounds. */
function onMastByHand(thickness: number) {
  const bare = 10 * steelAFoot(2, 0.25) + 30;
  // In sight from its lower end, 44 ft, to its tip, 54 ft: inside the tower it is iced as well.
  const mast = 10 * iceAFoot(2, iceAt(thickness, 49));
  const beam = iceAt(thickness, 50);
  const ice = mast + 14 * iceAFoot(2, beam) + 4 * 24 * iceAFoot(0.625, beam);
  return { bare, ice };
}

describe('the weight of ice on a rotator', () => {
  it.each([0.25, 0.75, 1.5])('counts with 0.7 at the allowable level, %s in of ice', (thickness) => {
    const site = { ...(plan()['site'] as Document), ice: { thickness, gust: 40 } };
    const iced = checkOf(plan({ site }), 'rotator:2:ice');
    const { bare, ice } = onMastByHand(thickness);
    expect((iced?.result?.demand as number) / 0.45359237).toBeCloseTo(bare + 0.7 * ice, 0);
    expect(iced?.result?.of).toBe('weight');
    expect(iced?.verdict).toBe((bare + 0.7 * ice) / 100 > 1 ? 'over' : 'within');
    expect(iced?.result?.holdsTo).toBeUndefined();
  });

  it('leaves the check without ice as it is', () => {
    const { bare } = onMastByHand(0);
    expect((checkOf(plan(), 'rotator:2')?.result?.demand as number) / 0.45359237).toBeCloseTo(bare, 1);
    expect(checkOf(plan(), 'rotator:2')?.verdict).toBe('within');
  });

  it('is open where a stated area hides it, and told by the weight with ice', () => {
    const stated = { name: 'box', above: 2, area: 4, areaKind: 'effective', weight: 30 };
    // Its area with ice is missing too; the weight needs nothing of it.
    expect(checkOf(plan({ loads: [stated] }), 'rotator:2:ice')).toMatchObject({
      verdict: 'open',
      because: 'missing',
      needs: ['/loads/0/icedWeight'],
    });
    const told = checkOf(plan({ loads: [{ ...stated, icedWeight: 80 }] }), 'rotator:2:ice');
    const mast = 10 * iceAFoot(2, iceAt(0.75, 49));
    expect((told?.result?.demand as number) / 0.45359237).toBeCloseTo(
      10 * steelAFoot(2, 0.25) + 30 + 0.7 * (mast + 50),
      0,
    );
  });
});

describe('the whole case of ice', () => {
  it('has every part that weight or wind loads', () => {
    const rated = [
      { of: 'tower', kind: 'weight', weight: 150 },
      { of: 'bearing', kind: 'force', force: 800 },
      { of: 'rotator', kind: 'torque', brake: 500 },
    ];
    const loads = [{ ...BEAM, offset: 1 }];
    const ids = assessed(plan({ loads }, rated)).checks.flatMap(({ id, withIce }) => (withIce ? [id] : []));
    expect(ids).toEqual(
      expect.arrayContaining([
        'mast:ice',
        'rotator:2:ice',
        'weight:3:ice',
        'bearing:4:ice',
        'rotator:5:ice',
        'foundation:ice',
      ]),
    );
    // A tower is raised bare, in calm.
    expect(ids.some((id) => id.startsWith('raising') || id.startsWith('hoist'))).toBe(false);
  });

  it('has the weight aloft, lines and all', () => {
    const iced = checkOf(plan({}, [{ of: 'tower', kind: 'weight', weight: 150 }]), 'weight:3:ice');
    const { bare, ice } = onMastByHand(0.75);
    let lines = 0;
    // By single feet.
    for (let z = 0.5; z < 48; z += 1) lines += 2 * iceAFoot(0.4, iceAt(0.75, z));
    const byHand = bare + 20 + 2 * 48 * 0.1 + 0.7 * (ice + lines);
    expect((iced?.result?.demand as number) / 0.45359237 / byHand).toBeCloseTo(1, 2);
    expect(iced?.verdict).toBe('over');
  });

  it('presses a footing with the weight of ice and holds it down without', () => {
    const soft = (bearing: number) => ({
      tower: {
        ...(plan()['tower'] as Document),
        foundation: { kind: 'block', length: 5, width: 5, depth: 5, soilBearing: bearing },
      },
    });
    const hard = assessed(plan(soft(40_000)));
    const [bare, iced] = ['foundation', 'foundation:ice'].map(
      (id) => hard.checks.find((check) => check.id === id)?.result,
    );
    expect(iced?.of).toBe('overturning');
    // 0.6 of the same dead weight holds it down: ice may have fallen.
    expect(iced?.capacity).toBeCloseTo(bare?.capacity as number, 6);
    expect(iced?.demand).toBeLessThan(bare?.demand as number);
    // In soft soil the weight of ice on the whole of its underside is felt: 25 ft² take all of it.
    const soil = assessed(plan(soft(900)));
    const [dry, pressed] = ['foundation', 'foundation:ice'].map(
      (id) => soil.checks.find((check) => check.id === id)?.result,
    );
    expect(pressed?.of).toBe('overturning');
    expect(pressed?.capacity).toBeLessThan((dry?.capacity as number) * 0.999);
    // 0.7 of the strength-level wind with ice, as ASCE 7 2.4.3 has it: the allowable level is the nominal one of footings.
    expect(hard.ice?.shown?.toNominal).toBe(1);
  });

  it('is printed by height and by what it lies on', () => {
    const document = plan();
    const assessment = assessed(document);
    const { ice } = answerDocument(assessment, document, [], 'none');
    const beam = ice?.rows.find(({ name }) => name === 'beam');
    const t = iceAt(0.75, 50);
    expect(beam?.thickness.value).toBeCloseTo(t, 3);
    expect(beam?.weight.value).toBeCloseTo(14 * iceAFoot(2, t) + 96 * iceAFoot(0.625, t), 1);
    const sum = ice?.rows.reduce((total, { weight }) => total + weight.value, 0) as number;
    expect(ice?.weight.value).toBeCloseTo(sum, 6);
    expect(ice?.byHeight.at(0)?.weightAbove.value).toBeLessThan(sum);
    expect(answerText(assessment, [])).toContain('beam, at 50 ft: ice 0.782 in thick');
  });
});
