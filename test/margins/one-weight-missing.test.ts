import { describe, expect, it } from 'vitest';
import { assessed, type Document } from './any-plan.ts';
import { demoPlan } from './demo-plan.ts';

const BLUFF = demoPlan('river-bluff');
const POUND_FORCE = 4.4482216152605;

const withWeights = (tower: Document, weights: readonly (number | undefined)[]) => ({
  ...BLUFF,
  tower: {
    ...(BLUFF['tower'] as Document),
    ...tower,
    foundation: { kind: 'block', length: 4, width: 4, depth: 4, soilBearing: 2000 },
  },
  rotator: { weight: 20 },
  loads: (BLUFF['loads'] as Document[]).map((load, index) => {
    const weight = weights[index];
    return weight === undefined ? load : { ...load, weight };
  }),
  cables: (BLUFF['cables'] as Document[]).map((run) => ({ ...run, weight: 0.1 })),
});

const deadLoad = (plan: Document) => (assessed(plan).foundation?.block?.deadLoad as number) / POUND_FORCE;

describe('one weight that is not given', () => {
  // 64 ft³ of 2,400 kg/m³.
  const block = (64 * 2400 * 0.3048 ** 3) / 0.45359237;

  it('leaves what is given on the footing', () => {
    const whole = deadLoad(withWeights({ weight: 500 }, [40, 10, 3]));
    const without = deadLoad(withWeights({ weight: 500 }, [40, 10, undefined]));
    expect(whole - without).toBeCloseTo(3, 3);
    // The tower’s own 500 lb stay, whichever other is missing.
    const none = deadLoad(withWeights({}, [40, 10, undefined]));
    expect(without - none).toBeCloseTo(500, 3);
    expect(none - block).toBeGreaterThan(50);
  });

  it('keeps the check open, with the ratio of what is known', () => {
    const ratio = (plan: Document) => assessed(plan).checks.find(({ kind }) => kind === 'foundation')?.result?.ratio;
    const missing = assessed(withWeights({ weight: 500 }, [40, 10, undefined])).foundation;
    expect(missing?.block?.weightKnown).toBe(false);
    expect(missing?.block?.toe).toBeUndefined();
    expect(ratio(withWeights({ weight: 500 }, [40, 10, undefined]))).toBeLessThan(
      ratio(withWeights({}, [40, 10, 3])) as number,
    );
  });
});
