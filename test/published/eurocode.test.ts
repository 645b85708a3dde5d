import {
  incidenceFactorEn,
  LATTICE_EN,
  latticeCoefficientEn,
  latticeFlatEn,
  latticeRoundFastEn,
  latticeRoundSlowEn,
} from '../../src/areas/index.ts';
import { METHOD_BY_ID } from '../../src/methods/index.ts';
import {
  AIR_DENSITY_EN,
  basicWindFor,
  chanceOverYears,
  type Hill,
  hillEffectiveLengthEn,
  hillFactorEn,
  hillLocationFactor,
  hillSlope,
  PROBABILITY_SHAPE,
  probabilityFactor,
  roughnessFactor,
  TERRAIN_ROUGHNESS,
  type Terrain,
  terrainFactor,
  turbulenceIntensityEn,
} from '../../src/wind/index.ts';
import { type Computation, LeftOut, list, publishedExamples } from './example-reader.ts';

const windOver = (terrain: Terrain, speed: number) =>
  METHOD_BY_ID['en1991-1-4'].wind({
    units: 'si',
    speed,
    speedLevel: 'own',
    actual: false,
    exposure: terrain,
    riskCategory: 'II',
    groundElevation: 0,
    windStructure: { kind: 'lattice', sides: 0, guyed: false, height: 20, width: 0.5 },
  });

const krOf = (terrain: Terrain) => terrainFactor.of(TERRAIN_ROUGHNESS[terrain].length, TERRAIN_ROUGHNESS.II.length);
const crOf = (terrain: Terrain, z: number) => {
  const { length, lowest } = TERRAIN_ROUGHNESS[terrain];
  return roughnessFactor.of(krOf(terrain), z, lowest, length);
};

const heights: Computation = ({ vb_m_s, terrain, z_m }) => {
  const of = terrain as Terrain;
  const wind = windOver(of, vb_m_s as number);
  const { length, lowest } = TERRAIN_ROUGHNESS[of];
  return {
    cr: list(z_m).map((z) => crOf(of, z)),
    Iv: list(z_m).map((z) => turbulenceIntensityEn.of(1, z, lowest, length)),
    ce: list(z_m).map((z) => wind.exposureCoefficient(z)),
    qp_Pa: list(z_m).map((z) => wind.pressure(z)),
  };
};

const hill: Computation = ({ H_m, Lu_m, x_m, z_m, shape }) => {
  const x = x_m as number;
  const given: Hill = {
    shape: shape === 'cliff' ? 'escarpment' : 'ridge',
    height: H_m as number,
    halfLength: (Lu_m as number) / 2,
    distance: Math.abs(x),
    side: x <= 0 ? 'upwind' : 'downwind',
  };
  return {
    phi: hillSlope.of(H_m as number, Lu_m as number),
    Le_m: hillEffectiveLengthEn.of(Lu_m as number, H_m as number),
    s: hillLocationFactor(given, z_m as number),
    co: hillFactorEn(given, z_m as number),
  };
};

interface Incidence {
  readonly shape: 'square' | 'triangular';
  readonly Af_over_As: number;
  readonly phi?: number;
}

publishedExamples('eurocode', {
  'hall-in-terrain-iii': ({ vb_m_s, z_m }) => {
    const wind = windOver('III', vb_m_s as number);
    return {
      qb_Pa: 0.5 * AIR_DENSITY_EN * (vb_m_s as number) ** 2,
      kr: krOf('III'),
      cr: crOf('III', z_m as number),
      ce: wind.exposureCoefficient(z_m as number),
      qp_Pa: wind.pressure(z_m as number),
    };
  },
  'heights-in-terrain-0': heights,
  'heights-in-terrain-i': heights,
  'heights-in-terrain-iii': heights,
  'heights-in-terrain-iv': heights,
  'probability-factor-of-3-3-percent': ({ p_annual, K, n }) => ({
    cprob: probabilityFactor.of(K as number, p_annual as number, n as number),
  }),
  'probability-factor-by-years': ({ K, n, T_years }) => {
    if (K !== PROBABILITY_SHAPE.K || n !== PROBABILITY_SHAPE.n) throw new Error('other constants than the recommended');
    return { cprob: list(T_years).map((years) => basicWindFor(1, years)) };
  },
  'chance-in-fifty-years': ({ p_annual, years }) => ({
    p_in_50_years: chanceOverYears.of(p_annual as number, years as number),
    p_annual_for_p_life: new LeftOut('the way back, from a life to a year, is not asked of the service'),
  }),
  'hill-crest': hill,
  'hill-windward-half-way': hill,
  'hill-leeward': hill,
  'behind-a-steep-escarpment': hill,
  'square-lattice-by-solidity': ({ phi }) => {
    const { c1, c2 } = LATTICE_EN[4];
    const slow = (solidity: number, roundShare: number) =>
      latticeCoefficientEn({ faces: 4, solidity, roundShare, thinnest: 0, thickest: 0 }, 'face', 'demand').slow;
    for (const solidity of list(phi)) {
      if (latticeFlatEn.of(c1, c2, solidity) !== slow(solidity, 0))
        throw new Error('the coefficient is another than its formula');
      if (latticeRoundSlowEn.of(c1, c2, solidity) !== slow(solidity, 1)) throw new Error('so is that of round members');
    }
    return {
      cf_flat: list(phi).map((solidity) => latticeFlatEn.of(c1, c2, solidity)),
      cf_round_subcritical: list(phi).map((solidity) => latticeRoundSlowEn.of(c1, c2, solidity)),
      cf_round_supercritical: list(phi).map((solidity) => latticeRoundFastEn.of(solidity, c1)),
    };
  },
  'wind-incidence-factor': ({ cases }) => ({
    Ktheta: (cases as Incidence[]).map(({ shape, Af_over_As, phi }) =>
      incidenceFactorEn(
        {
          faces: shape === 'square' ? 4 : 3,
          solidity: phi ?? 0.2,
          roundShare: 1 - Af_over_As,
          thinnest: 0,
          thickest: 0,
        },
        'corner',
      ),
    ),
  }),
});
