import { describe, expect, it } from 'vitest';
import { partsOfLines, roundCoefficientAsce } from '../../src/areas/index.ts';
import { METHOD_BY_ID, type WindConditions } from '../../src/methods/index.ts';
import { hillFactor } from '../second-opinion/wind-by-hand.ts';

const OPEN: WindConditions = {
  units: 'si',
  speed: 25,
  speedLevel: 'own',
  actual: false,
  exposure: 'IV',
  riskCategory: 'II',
  groundElevation: 0,
  windStructure: { kind: 'lattice', sides: 0, guyed: false, height: 20, width: 0.4 },
};

describe('limits as a standard prints them', () => {
  it('step at D·√q of 2.5 in ft and psf, 5.3 in m and Pa', () => {
    for (const [units, below, above] of [
      ['us', 5.272, 5.274],
      ['si', 5.299, 5.301],
    ] as const) {
      const law = roundCoefficientAsce(25, 'capacity', units);
      expect([law.at(below), law.at(above)]).toEqual([1.2, expect.closeTo(0.7, 9)]);
    }
  });

  it('hold the turbulence of EN 1991-1-4 below the least height at that height, its hill included', () => {
    const hill = { shape: 'ridge', height: 40, halfLength: 60, distance: 0, side: 'upwind', isolated: true } as const;
    const { pressure } = METHOD_BY_ID['en1991-1-4'].wind({ ...OPEN, hill });
    const co = (z: number) => hillFactor('en1991-1-4', 'IV', hill, z);
    // Terrain IV: z0 = 1 m, least height 10 m, kr = 0.19·(1/0.05)^0.07.
    const mean = 0.19 * 20 ** 0.07 * Math.log(10) * 25;
    for (const z of [0, 3, 6, 9.9]) {
      const byHand = (1 + 7 / (co(10) * Math.log(10))) * 0.625 * (co(z) * mean) ** 2;
      expect(pressure(z)).toBeCloseTo(byHand, 6);
      expect(byHand).toBeGreaterThan((1 + 7 / (co(z) * Math.log(10))) * 0.625 * (co(z) * mean) ** 2);
    }
  });

  it('count a bundle as a group or its lines singly, whichever is less', () => {
    const [bundle] = partsOfLines({ count: 3, diameter: 0.01, laid: 'bundle' }, 0, 10);
    if (!bundle) throw new Error('no bundle');
    const by = (method: keyof typeof METHOD_BY_ID) => {
      const { exposure: _, ...rest } = OPEN;
      const wind = METHOD_BY_ID[method].wind({ ...rest, exposure: METHOD_BY_ID[method].ground.usual });
      return wind.forceCoefficient(bundle.rule, 'capacity', 'face').byFlow.slow * bundle.front;
    };
    // Three of 10 mm over 10 m: enclosing diameter 2.1547·10 mm with 1.2; singly 3·10 mm with 2/3 by RS-222-C, 1.2 by TIA.
    expect(by('rs222-c')).toBeCloseTo(0.2, 9);
    expect(by('tia222-g')).toBeCloseTo(1.2 * 0.21547, 6);
    // Two lie as wide in one as singly.
    const [pair] = partsOfLines({ count: 2, diameter: 0.01, laid: 'bundle' }, 0, 10);
    expect(pair?.rule).toMatchObject({ of: 'group', singly: 1 });
  });
});
