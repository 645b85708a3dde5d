import {
  ASCE_FLOW_LIMIT,
  bundleDiameter,
  diagonalFactorSquare,
  flatCoefficientF,
  flatCoefficientTia,
  flowNumberTia,
  latticeCoefficient,
  latticeCoefficientF,
  latticeCoefficientSquare,
  latticeCoefficientTia,
  latticeCoefficientTriangle,
  MPH_FOOT,
  packingRatio,
  partsOfShape,
  poleCoefficientF,
  poleCoefficientTia,
  projectedArea,
  ROUND_SHARE_C,
  roundCoefficientF,
  roundCoefficientTia,
  roundFactorAsce,
  roundFactorTiaFast,
  roundFactorTiaSlow,
  TIA_ROUND,
  type WindDirection,
} from '../../src/areas/index.ts';
import {
  FOOT,
  INCH,
  MILE_PER_HOUR,
  POUND_FORCE,
  POUND_PER_SQUARE_FOOT,
  SQUARE_FOOT,
} from '../../src/foundation/index.ts';
import { compareRatings, type Rating, sliceForce } from '../../src/margins/index.ts';
import { areaOfForce, METHOD_BY_ID, statedAreaFactor } from '../../src/methods/index.ts';
import type { Station } from '../../src/structure/index.ts';
import {
  EXPOSURE_TO_7_16,
  exposureCoefficientTia,
  TIA_LOWEST_COEFFICIENT,
  velocityPressureF,
} from '../../src/wind/index.ts';
import { LeftOut, list, publishedExamples } from './example-reader.ts';

const byAspect = (flow: number) => (inputs: Readonly<Record<string, unknown>>) => ({
  Ca: list(inputs['aspect_ratio']).map((aspect) => roundCoefficientTia('G', aspect).at(flow * MPH_FOOT)),
});

publishedExamples('round-members', {
  'tia-g-round-slow': byAspect(20),
  'tia-g-round-fast': byAspect(80),
  'tia-g-regime-of-small-tubes': ({ diameter_in, z_ft, V3s_mph, Kzt, I }) => {
    const { gradientHeight, alpha } = EXPOSURE_TO_7_16.C;
    const Kz = exposureCoefficientTia.of((z_ft as number) * FOOT, TIA_LOWEST_COEFFICIENT.C, gradientHeight, alpha);
    const flows = list(diameter_in).map((d) =>
      flowNumberTia.of(I as number, Kzt as number, Kz, (V3s_mph as number) * MILE_PER_HOUR, d * INCH),
    );
    const { slowUpTo, fastFrom } = TIA_ROUND.G;
    return {
      C_mph_ft: flows.map((flow) => flow / MPH_FOOT),
      regime: flows.map((flow) =>
        flow < slowUpTo ? 'subcritical' : flow > fastFrom ? 'supercritical' : 'transitional',
      ),
    };
  },
  'asce-limit-in-both-units': () => ({ limit_SI: ASCE_FLOW_LIMIT.us }),
});

publishedExamples('flat-members', {
  'tia-g-flat': ({ aspect_ratio }) => ({
    Ca: list(aspect_ratio).map((aspect) => flatCoefficientTia({ wide: 1, tall: aspect }).slow),
  }),
  'eia-f-flat-and-round': ({ aspect_ratio }) => ({
    flat: list(aspect_ratio).map((aspect) => flatCoefficientF({ wide: aspect, tall: 1 }).slow),
    round: list(aspect_ratio).map((aspect) => roundCoefficientF(aspect).slow),
  }),
});

interface Face {
  readonly Af_ft2: number;
  readonly Ar_ft2: number;
  readonly Ag_ft2: number;
  readonly wind_direction: string;
}

/** A lattice example by the coefficients; 90° lies between the face and the corner, and is put together from the formulas. */
const lattice = (revision: 'F' | 'G', faces: 3 | 4) => (inputs: Readonly<Record<string, unknown>>) => {
  const { Af_ft2, Ar_ft2, Ag_ft2, wind_direction } = inputs as unknown as Face;
  const solid = Af_ft2 + Ar_ft2;
  const solidity = solid / Ag_ft2;
  const roundShare = Ar_ft2 / solid;
  const face = { faces, solidity, roundShare, thinnest: 0, thickest: 0 } as const;
  const Cf = (faces === 3 ? latticeCoefficientTriangle : latticeCoefficientSquare).of(solidity);
  const Rr = (revision === 'F' ? roundFactorAsce : roundFactorTiaSlow).of(solidity);
  const Df = { normal: 1, '60': 0.8, '90': 0.85 }[wind_direction] as number;
  const direction: WindDirection = wind_direction === 'normal' ? 'face' : 'corner';
  const byFlow = revision === 'F' ? latticeCoefficientF(face, direction) : latticeCoefficientTia('G', face, direction);
  const coefficient =
    wind_direction === '90' ? latticeCoefficient.of(Cf, 1 - roundShare, Df, roundShare, Rr, 1) : byFlow.slow;
  return {
    solidity,
    Cf,
    Rr,
    Df,
    Dr: 1,
    effective_area_ft2: Ar_ft2 * Rr,
    EPA_ft2: coefficient * solid,
  };
};

publishedExamples(
  'lattice-sections',
  {
    'asce-polynomials': ({ solidity }) => ({
      Cf_square: list(solidity).map((epsilon) => latticeCoefficientSquare.of(epsilon)),
      Cf_triangle: list(solidity).map((epsilon) => latticeCoefficientTriangle.of(epsilon)),
      round_member_factor: list(solidity).map((epsilon) => roundFactorAsce.of(epsilon)),
      diagonal_factor_square: list(solidity).map((epsilon) => diagonalFactorSquare.of(epsilon)),
    }),
    'tia-polynomials': ({ solidity }) => ({
      Cf_square: list(solidity).map((epsilon) => latticeCoefficientSquare.of(epsilon)),
      Cf_triangle: list(solidity).map((epsilon) => latticeCoefficientTriangle.of(epsilon)),
    }),
    'round-member-factors': ({ solidity }) => ({
      Rr_f: list(solidity).map((epsilon) => roundFactorAsce.of(epsilon)),
      Rr_g_subcritical: list(solidity).map((epsilon) => roundFactorTiaSlow.of(epsilon)),
      Rr_g_supercritical: list(solidity).map((epsilon) => roundFactorTiaFast.of(epsilon)),
    }),
    'tia-g-round-triangle-normal': lattice('G', 3),
    'tia-g-round-triangle-60': lattice('G', 3),
    'tia-g-round-triangle-90': lattice('G', 3),
    'eia-f-round-triangle-normal': lattice('F', 3),
    'eia-f-round-triangle-60': lattice('F', 3),
    'tia-g-mixed-triangle-normal': lattice('G', 3),
    'tia-g-mixed-triangle-90': lattice('G', 3),
    'tia-g-flat-square-normal': lattice('G', 4),
  },
  { 'tia-g-shielding-inside-a-lattice': 'no shielding is taken' },
);

publishedExamples('pole-sections', {
  'tia-g-poles-by-sides': ({ C_mph_ft }) => {
    const sides = (count: 0 | 8 | 12 | 16 | 18) =>
      list(C_mph_ft).map((C) => poleCoefficientTia('G', count).at(C * MPH_FOOT));
    return { round: sides(0), sides_18: sides(18), sides_16: sides(16), sides_12: sides(12), sides_8: sides(8) };
  },
  'eia-f-round-pole': ({ C_mph_ft }) => ({
    Cf: list(C_mph_ft).map((C) => poleCoefficientF(0, 'demand').at(C * MPH_FOOT)),
  }),
});

const STATION: Station = {
  units: 'us',
  loads: [],
  cables: [],
  tower: {
    support: 'free',
    foot: 0,
    top: 48 * FOOT,
    sectionsGiven: false,
    telescopes: false,
    held: [],
    heldGiven: false,
    asDrawn: false,
    used: true,
    sections: [
      {
        name: 'tower',
        at: '/tower',
        low: 0,
        high: 48 * FOOT,
        uniform: true,
        shape: { kind: 'lattice', faces: 3, width: [0.4572, 0.4572], members: 'round', solid: { by: 'unknown' } },
      },
    ],
  },
};

const stated = (area: number, wind: NonNullable<Rating['wind']>): Rating => ({
  at: '/ratings/0',
  of: 'tower',
  height: 49 * FOOT,
  wind,
  claim: { kind: 'area', areaKind: 'effective', rows: [{ area: area * SQUARE_FOOT }], also: [] },
});

const forces = (rating: Rating, level: number) => {
  const [compared] = compareRatings(STATION, [rating]).ratings;
  const allowable = (compared?.force[0] as number) / POUND_FORCE;
  return { force_lbf: allowable / level, allowable_force_lbf: allowable };
};

publishedExamples('area-conventions', {
  'one-set-of-tubes-three-areas': ({ shadow_of_tubes_ft2, aspect_ratio }) => {
    const shadow = shadow_of_tubes_ft2 as number;
    const aspect = aspect_ratio as number;
    const flatPlateC = shadow * ROUND_SHARE_C;
    const effectiveF = shadow * roundCoefficientF(aspect).slow;
    const toEffective = statedAreaFactor('flat-plate', false, METHOD_BY_ID['tia222-g'].slender, 'unfavourable');
    return {
      flat_plate_area_rs222_c_ft2: flatPlateC,
      effective_area_f_ft2: effectiveF,
      effective_area_g_subcritical_ft2: shadow * roundCoefficientTia('G', aspect).slow,
      flat_plate_area_f_ft2: effectiveF / flatCoefficientF({ wide: 1, tall: aspect }).slow,
      effective_over_flat_plate_rs222_c: toEffective,
    };
  },
  'rating-12-ft2-at-70-fastest-mile': ({ area_ft2, V_fastest_mile_mph, level_factor }) =>
    forces(
      stated(area_ft2 as number, { speed: (V_fastest_mile_mph as number) * MILE_PER_HOUR, method: 'eia222-f' }),
      level_factor as number,
    ),
  'rating-8-ft2-at-110-strength': ({ area_ft2, V_strength_mph, level_factor }) =>
    forces(
      stated(area_ft2 as number, {
        speed: (V_strength_mph as number) * MILE_PER_HOUR,
        method: 'tia222-h',
        exposure: 'C',
      }),
      level_factor as number,
    ),
});

publishedExamples('packing', {
  'enclosing-circle-of-equal-circles': ({ n }) => ({
    D_over_d: list(n).map((lines) => bundleDiameter.of(packingRatio(lines), 1)),
  }),
});

publishedExamples(
  'drag-checks',
  {
    'cross-flow-principle': ({ angle_between_wind_and_axis_deg }) => {
      // A wire along the wind's axis turned by an angle: its broadside share is the sine squared of that angle.
      const normal = list(angle_between_wind_and_axis_deg).map((degrees) => wireShare(degrees));
      const sines = list(angle_between_wind_and_axis_deg).map((degrees) => Math.sin((degrees * Math.PI) / 180));
      return {
        normal_force_factor: normal,
        drag_along_wind_factor: normal.map((share, index) => share * (sines[index] as number)),
      };
    },
    'wind-on-an-inclined-guy': ({ angle_between_wind_and_chord_deg, Cd }) => {
      const angles = list(angle_between_wind_and_chord_deg);
      const normal = angles.map((degrees) => (Cd as number) * wireShare(degrees));
      const along = (by: (angle: number) => number) =>
        normal.map((force, index) => force * by(((angles[index] as number) * Math.PI) / 180));
      return { normal, drag: along(Math.sin), lift: along(Math.cos) };
    },
    'cable-in-the-wind': ({ V_km_h, diameter_m, Cd, rho_kg_m3 }) => ({
      force_N_per_m: plainForce(rho_kg_m3, V_km_h, Cd, projectedArea.of(1, diameter_m as number, 1)),
      frequency_Hz: new LeftOut('the shedding of vortices is cautioned of, not computed'),
    }),
    'chimney-overturning': ({ V_km_h, diameter_m, height_m, Cd, rho_kg_m3 }) => {
      const height = height_m as number;
      const force = plainForce(rho_kg_m3, V_km_h, Cd, projectedArea.of(1, diameter_m as number, height));
      return { moment_kNm: (force * height) / 2 / 1000 };
    },
    'coefficient-from-a-measured-force': ({ force_N, area_m2, rho_kg_m3, V_km_h }) => ({
      Cd: areaOfForce.of(force_N as number, (rho_kg_m3 as number) / 2, (V_km_h as number) / 3.6) / (area_m2 as number),
    }),
  },
  {
    'pipe-across-a-river': 'water',
    'smooth-cylinder-by-reynolds-number': 'a background to the coefficients of the standards',
    'finite-cylinders-across-the-flow': 'a background to the coefficients of the standards',
    'cylinders-along-the-flow': 'a background to the coefficients of the standards',
    'plates-spheres-and-hemispheres': 'only the facing hemisphere is used; compared in tables.test.ts',
  },
);

/** q·C·A of plain physics: our pressure with the density of the example, no height, gust, direction or level. */
function plainForce(density: unknown, kilometresPerHour: unknown, coefficient: unknown, area: number): number {
  const q = velocityPressureF.of((density as number) / 2, 1, (kilometresPerHour as number) / 3.6);
  return sliceForce.of(1, 1, q, 1, coefficient as number, 0, 1, area);
}

/** Share of the broadside force that a sloping wire feels along its own heading: 1 − (distance/length)². */
function wireShare(degrees: number): number {
  const angle = (degrees * Math.PI) / 180;
  const wire = {
    kind: 'wire',
    diameter: 0.01,
    distance: Math.cos(angle) * 10,
    rise: Math.sin(angle) * 10,
    heading: 0,
  } as const;
  const [part] = partsOfShape(wire, 10, 10, 1);
  return (part?.front as number) / (part?.side as number);
}

const psf = POUND_PER_SQUARE_FOOT;
publishedExamples(
  'load-levels',
  {
    'strength-force-to-allowable': ({ qh_psf, Cf_net, width_in, height_in }) => {
      const pressure = (qh_psf as number) * (Cf_net as number) * psf;
      const force = pressure * (width_in as number) * INCH * (height_in as number) * INCH;
      return {
        p_psf: pressure / psf,
        F_ult_lb: force / POUND_FORCE,
        F_asd_lb: (METHOD_BY_ID['asce7-16'].toAllowableFactor * force) / POUND_FORCE,
      };
    },
    'tia-g-with-a-strength-level-map': ({ Vult_mph, z_ft }) => {
      const wind = METHOD_BY_ID['tia222-g'].wind({
        units: 'us',
        speed: (Vult_mph as number) * MILE_PER_HOUR,
        speedLevel: 'strength',
        actual: false,
        exposure: 'C',
        riskCategory: 'I',
        groundElevation: 0,
        windStructure: { kind: 'lattice', sides: 0, guyed: false, height: 70 * FOOT, width: 0.5 },
      });
      // Its level, 0.6, stands for a load factor of one.
      return { factored_pressure_psf: ((wind.pressure((z_ft as number) * FOOT) / psf) * wind.toAllowableFactor) / 0.6 };
    },
  },
  {
    'load-combinations-of-three-revisions': 'combinations of whole designs; the levels are compared in tables.test.ts',
  },
);
