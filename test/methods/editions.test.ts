import { describe, expect, it } from 'vitest';
import { METHOD_BY_ID, type MethodId, type WindConditions } from '../../src/methods/index.ts';
import type { Hill, RiskCategory } from '../../src/wind/index.ts';

/*
 * No constant of one edition in another: every place where the editions of a family differ, typed once more, edition by
 * edition.
 */
const LATTICE = { kind: 'lattice', sides: 0, guyed: false, height: 20, width: 0.4 } as const;
const POLE = { ...LATTICE, kind: 'pole' } as const;
const OPEN: WindConditions = {
  units: 'us',
  speed: 50,
  speedLevel: 'own',
  actual: false,
  exposure: 'C',
  riskCategory: 'III',
  groundElevation: 0,
  windStructure: LATTICE,
};
const HIGH = 1609.344; // 5280 ft
const RIDGE: Hill = { shape: 'ridge', height: 30, halfLength: 60, distance: 0, side: 'upwind', isolated: false };

interface Edition {
  /** Kz at 33 ft in B, C, D. */
  readonly kz: readonly [number, number, number];
  readonly polesKd: number;
  /** exp(-0.0000362 · 5280), or 1. */
  readonly ke: number;
  readonly kdInForce: boolean;
  readonly iceOfClassIII: number;
  readonly iceMap: 1 | 2;
  /** Of a hill that does not stand alone. */
  readonly hillAmongOthers: boolean;
  readonly importanceIII: number;
}

const KZ_TO_716 = [0.7199, 1.0022, 1.1816] as const;
const KE = 0.826;
const EDITIONS: Readonly<Partial<Record<MethodId, Edition>>> = {
  'asce7-10': {
    kz: KZ_TO_716,
    polesKd: 0.95,
    ke: 1,
    kdInForce: false,
    iceOfClassIII: 1.25,
    iceMap: 2,
    hillAmongOthers: false,
    importanceIII: 1,
  },
  'asce7-16': {
    kz: KZ_TO_716,
    polesKd: 1,
    ke: KE,
    kdInForce: false,
    iceOfClassIII: 1.15,
    iceMap: 1,
    hillAmongOthers: false,
    importanceIII: 1,
  },
  'asce7-22': {
    kz: [0.7069, 0.9997, 1.1872],
    polesKd: 1,
    ke: KE,
    kdInForce: true,
    iceOfClassIII: 1,
    iceMap: 1,
    hillAmongOthers: true,
    importanceIII: 1,
  },
  'tia222-g': {
    kz: KZ_TO_716,
    polesKd: 0.95,
    ke: 1,
    kdInForce: false,
    iceOfClassIII: 1.25,
    iceMap: 2,
    hillAmongOthers: true,
    importanceIII: 1.15,
  },
  'tia222-h': {
    kz: KZ_TO_716,
    polesKd: 0.95,
    ke: KE,
    kdInForce: false,
    iceOfClassIII: 1.15,
    iceMap: 1,
    hillAmongOthers: true,
    importanceIII: 1,
  },
};

describe.each(Object.entries(EDITIONS) as [MethodId, Edition][])('constants of %s', (id, edition) => {
  const method = METHOD_BY_ID[id];

  it('are its own in the exposure', () => {
    for (const [index, exposure] of (['B', 'C', 'D'] as const).entries()) {
      const wind = method.wind({ ...OPEN, exposure });
      expect(wind.exposureCoefficient(33 * 0.3048)).toBeCloseTo(edition.kz[index] as number, 3);
    }
  });

  it('are its own in direction, elevation and importance', () => {
    expect(method.wind({ ...OPEN, windStructure: POLE }).directionFactor).toBe(edition.polesKd);
    expect(method.wind(OPEN).directionFactor).toBe(0.85);
    expect(method.wind(OPEN).forceDirectionFactor).toBe(edition.kdInForce ? 0.85 : 1);
    expect(method.wind({ ...OPEN, groundElevation: HIGH }).elevationFactor).toBeCloseTo(edition.ke, 3);
    expect(method.wind(OPEN).importance).toBe(edition.importanceIII);
  });

  it('are its own in ice', () => {
    const ofClass = (category: RiskCategory) => method.ice?.importance?.[category] ?? 1;
    expect(ofClass('III')).toBe(edition.iceOfClassIII);
    expect(ofClass('II')).toBe(1);
    expect(method.ice?.mapFactor).toBe(edition.iceMap);
  });

  it('are its own in what takes a hill out', () => {
    const { topographicFactor, hillExcluded } = method.wind({ ...OPEN, hill: RIDGE });
    expect(topographicFactor(10) > 1).toBe(edition.hillAmongOthers);
    expect(hillExcluded?.why).toBe(edition.hillAmongOthers ? undefined : 'not-isolated');
    // The list of conditions that an answer shows has what the edition has.
    const listed = method.hill?.conditions(RIDGE, 'C').some(({ of }) => of === 'surroundings');
    expect(listed).toBe(id === 'asce7-10' || id === 'asce7-16');
  });
});

describe('a hill by ASCE 7-22', () => {
  it('counts alike, whatever is said of its surroundings', () => {
    const factor = (isolated?: boolean) => {
      const { isolated: _, ...hill } = RIDGE;
      const given = isolated === undefined ? hill : { ...hill, isolated };
      return METHOD_BY_ID['asce7-22'].wind({ ...OPEN, hill: given }).topographicFactor(12);
    };
    expect(factor(false)).toBe(factor(true));
    expect(factor(false)).toBe(factor());
    expect(factor(false)).toBeGreaterThan(1.5);
  });
});
