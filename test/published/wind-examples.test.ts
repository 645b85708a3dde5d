import { ICE_DENSITY, icedDiameter, iceWeightPerLength, ROUND_SHARE_C } from '../../src/areas/index.ts';
import { FOOT, MILE_PER_HOUR, POUND, POUND_PER_SQUARE_FOOT } from '../../src/foundation/index.ts';
import { METHOD_BY_ID } from '../../src/methods/index.ts';
import {
  ASCE_HILLS,
  ASCE_LOWEST_HEIGHT,
  backgroundResponse,
  ELEVATION_DECAY_HEIGHT,
  EXPOSURE_7_22,
  EXPOSURE_TO_7_16,
  type Exposure,
  equivalentHeight,
  exposureCoefficient722,
  exposureCoefficientEiaF,
  exposureCoefficientTia,
  exposureCoefficientTo716,
  FASTEST_MILE_OFFSET,
  FLAT_PLATE_CONSTANT,
  fastestMileFromNominal,
  flatPlatePressureC,
  flexibleGustEffect,
  GUST_CONSTANTS_TO_7_16,
  GUST_TIA,
  groundElevationFactor,
  gustEffectEiaF,
  gustEffectRigid,
  gustEffectTiaLattice,
  hillByHeightAsce,
  hillDecayFactor,
  hillDecayTia,
  hillDistanceFactor,
  hillHeightFactor,
  iceHeightFactor,
  iceThickness,
  nominalFromStrength,
  PEAK_FACTOR,
  POLE_GUST_EIA_F,
  PRESSURE_CONSTANT,
  REFERENCE_HEIGHT,
  TIA_HILLS,
  TIA_LOWEST_COEFFICIENT,
  TIA_TERRAIN_CONSTANT,
  topographicFactorTia,
  turbulenceIntensity,
  turbulenceLength,
  velocityPressure710,
  velocityPressure716,
  velocityPressureG,
} from '../../src/wind/index.ts';
import { list, publishedExamples } from './example-reader.ts';

const psf = (pascal: number) => pascal / POUND_PER_SQUARE_FOOT;
const c = PRESSURE_CONSTANT.us;

const kzTo716 = (z: number, exposure: Exposure) => {
  const { gradientHeight, alpha } = EXPOSURE_TO_7_16[exposure];
  return exposureCoefficientTo716.of(z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
};
const kz722 = (z: number, exposure: Exposure) => {
  const { gradientHeight, alpha } = EXPOSURE_7_22[exposure];
  return exposureCoefficient722.of(z, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
};
const kzTia = (z: number, exposure: Exposure) => {
  const { gradientHeight, alpha } = EXPOSURE_TO_7_16[exposure];
  return exposureCoefficientTia.of(z, TIA_LOWEST_COEFFICIENT[exposure], gradientHeight, alpha);
};

publishedExamples('velocity-pressure', {
  'post-12-2-m-exposure-b-pressure': ({ Kz, Kzt, Kd, V_mph, V_m_s }) => ({
    qz_psf: psf(
      velocityPressure710.of(c, Kz as number, Kzt as number, Kd as number, (V_mph as number) * MILE_PER_HOUR),
    ),
    qz_kPa:
      velocityPressure710.of(PRESSURE_CONSTANT.si, Kz as number, Kzt as number, Kd as number, V_m_s as number) / 1000,
  }),
  'si-example-8-82-m-exposure-c': ({ V_km_h, z_m, exposure, Kzt, Kd }) => {
    const Kz = kzTo716(z_m as number, exposure as Exposure);
    return {
      Kz,
      q_kPa:
        velocityPressure710.of(PRESSURE_CONSTANT.si, Kz, Kzt as number, Kd as number, (V_km_h as number) / 3.6) / 1000,
    };
  },
  'building-15-ft-exposure-c-by-formula': ({ z_ft, exposure, V_mph, Kzt, Kd, Ke, G }) => {
    const Kz = kzTo716((z_ft as number) * FOOT, exposure as Exposure);
    const q = psf(
      velocityPressure716.of(c, Kz, Kzt as number, Kd as number, Ke as number, (V_mph as number) * MILE_PER_HOUR),
    );
    return { Kz, q_psf: q, qz_times_gust_psf: q * (G as number) };
  },
  'building-15-ft-exposure-c-by-table': ({ Kz, V_mph, Kzt, Kd, Ke }) => ({
    q_psf: psf(
      velocityPressure716.of(
        c,
        Kz as number,
        Kzt as number,
        Kd as number,
        Ke as number,
        (V_mph as number) * MILE_PER_HOUR,
      ),
    ),
  }),
  'stagnation-pressure-130-and-140-mph': ({ V_mph }) => ({
    q_psf: list(V_mph).map((V) => psf(velocityPressure710.of(c, 1, 1, 1, V * MILE_PER_HOUR))),
  }),
  'where-the-us-constant-comes-from': () => ({
    coefficient_psf_per_mph2: (c * MILE_PER_HOUR ** 2) / POUND_PER_SQUARE_FOOT,
  }),
  'the-us-constant-in-another-document': () => ({
    coefficient_psf_per_mph2: (c * MILE_PER_HOUR ** 2) / POUND_PER_SQUARE_FOOT,
  }),
  'tia-g-70-ft-exposure-c-class-ii': tiaG,
  'tia-g-70-ft-exposure-c-class-i': tiaG,
  'rs222-c-flat-and-round-pressures': ({ V_mph }) => {
    const flat = list(V_mph).map((V) => psf(flatPlatePressureC.of(FLAT_PLATE_CONSTANT, V * MILE_PER_HOUR)));
    return { flat_psf: flat, round_psf: flat.map((pressure) => pressure * ROUND_SHARE_C) };
  },
});

function tiaG({ z_ft, exposure, Kzt, Kd, V3s_mph, I }: Readonly<Record<string, unknown>>) {
  const Kz = kzTia((z_ft as number) * FOOT, exposure as Exposure);
  const q = psf(
    velocityPressureG.of(c, Kz, Kzt as number, Kd as number, (V3s_mph as number) * MILE_PER_HOUR, I as number),
  );
  return { Kz, qz_psf: q, qz_times_1_6_psf: q * (METHOD_BY_ID['tia222-g'].toStrengthFactor as number) };
}

publishedExamples('exposure-coefficient', {
  'post-12-2-m-exposure-b-coefficient': ({ z_m, exposure }) => ({ Kz: kzTo716(z_m as number, exposure as Exposure) }),
  'printed-table-exposure-c': ({ z_ft, exposure }) => ({
    Kz: list(z_ft).map((z) => kzTo716(z * FOOT, exposure as Exposure)),
  }),
  'printed-tables-exposure-c-and-d': ({ z_ft }) => ({
    Kz_C: list(z_ft).map((z) => kzTo716(z * FOOT, 'C')),
    Kz_D: list(z_ft).map((z) => kzTo716(z * FOOT, 'D')),
  }),
  'seven-twenty-two-exposure-b': ({ z_ft }) => ({ Kz: list(z_ft).map((z) => kz722(z * FOOT, 'B')) }),
  'seven-twenty-two-exposure-d': ({ z_ft }) => ({ Kz: list(z_ft).map((z) => kz722(z * FOOT, 'D')) }),
  'tia-exposure-b': ({ z_ft }) => ({ Kz: list(z_ft).map((z) => kzTia(z * FOOT, 'B')) }),
  'tia-exposure-c': ({ z_ft }) => ({ Kz: list(z_ft).map((z) => kzTia(z * FOOT, 'C')) }),
  'eia-f-49-ft': ({ z_ft }) => ({ Kz: exposureCoefficientEiaF.of((z_ft as number) * FOOT, REFERENCE_HEIGHT) }),
});

const k1 = ({ K1_over_H_Lh, H_over_Lh }: Readonly<Record<string, unknown>>) => ({
  K1: list(H_over_Lh).map((slope) => hillHeightFactor.of(K1_over_H_Lh as number, slope * 100, 100)),
});
const k3 = ({ gamma, z_over_Lh }: Readonly<Record<string, unknown>>) => ({
  K3: list(z_over_Lh).map((height) => hillDecayFactor.of(gamma as number, height * 100, 100)),
});
const tiaHill = (inputs: Readonly<Record<string, unknown>>) => {
  const hill = Object.values(TIA_HILLS).find((each) => each.category === inputs['category']);
  if (!hill) throw new Error('no such category');
  const Kh = list(inputs['z_ft']).map((z) => hillDecayTia.of(hill.f, z, inputs['hill_height_ft'] as number));
  const Kc = TIA_TERRAIN_CONSTANT[inputs['exposure'] as Exposure];
  return { Kh, Kzt: Kh.map((each) => topographicFactorTia.of(Kc, hill.kt, each)) };
};

publishedExamples('topography', {
  'k1-of-a-ridge': k1,
  'k1-of-a-round-hill': k1,
  'k2-with-mu-1-5': ({ mu, x_over_Lh }) => ({
    K2: list(x_over_Lh).map((x) => hillDistanceFactor.of(x * 100, mu as number, 100)),
  }),
  'k3-of-a-ridge': k3,
  'k3-of-an-escarpment': k3,
  'ridge-30-m-all-three-factors': ({ H_m, Lh_m, x_m, z_m }) => {
    const { k, gamma, mu } = ASCE_HILLS.ridge;
    const hill = {
      shape: 'ridge',
      height: H_m as number,
      halfLength: Lh_m as number,
      distance: x_m as number,
      side: 'upwind',
    } as const;
    return {
      K1: hillHeightFactor.of(k.C, hill.height, hill.halfLength),
      K2: hillDistanceFactor.of(hill.distance, mu.upwind, hill.halfLength),
      K3: hillDecayFactor.of(gamma, z_m as number, hill.halfLength),
      Kzt: hillByHeightAsce(hill, 'C')(z_m as number),
    };
  },
  'tia-category-2-exposure-b': tiaHill,
  'tia-category-2-exposure-c': tiaHill,
  'tia-category-3-exposure-b': tiaHill,
  'tia-category-3-exposure-c': tiaHill,
  'tia-category-4-exposure-b': tiaHill,
});

publishedExamples('gust-effect', {
  'rigid-form-small-slender-tower': ({ h_m, B_m }) => {
    const constants = GUST_CONSTANTS_TO_7_16.C;
    const zBar = equivalentHeight.of(h_m as number, constants.lowestHeight);
    // The metric print has 10 m where the other has 33 ft.
    const Iz = turbulenceIntensity.of(constants.intensity, 10, zBar);
    const Lz = turbulenceLength.of(constants.lengthScale, zBar, 10, constants.lengthExponent);
    const Q = backgroundResponse.of(B_m as number, h_m as number, Lz);
    return { z_bar_m: zBar, Iz, Lz_m: Lz, Q, G: gustEffectRigid.of(PEAK_FACTOR, Iz, Q) };
  },
  'flexible-form-72-ft-pole': ({ h_ft, width_ft, frequency_Hz, damping, V_mph }) => ({
    Gf: flexibleGustEffect(
      { height: (h_ft as number) * FOOT, width: (width_ft as number) * FOOT },
      GUST_CONSTANTS_TO_7_16.C,
      frequency_Hz as number,
      damping as number,
      (V_mph as number) * MILE_PER_HOUR,
    ),
  }),
  'tia-free-lattice-by-height': ({ h_ft }) => ({
    Gh: list(h_ft).map((h) => gustEffectTiaLattice.of(h * FOOT, GUST_TIA.step)),
  }),
  'eia-f-48-ft': ({ h_ft }) => ({ GH: gustEffectEiaF.of((h_ft as number) * FOOT, REFERENCE_HEIGHT) }),
  'eia-f-tubular-pole': () => ({ GH: POLE_GUST_EIA_F }),
  'tia-g-roof-mounted-attachment': ({ qz_psf, Gh, EPA_ft2 }) => ({
    force_lb: (qz_psf as number) * (Gh as number) * (EPA_ft2 as number),
  }),
});

const nominal = (speeds: unknown) => list(speeds).map((V) => nominalFromStrength.of(V));
const fastestMile = (speeds: unknown) =>
  list(speeds).map((V) => fastestMileFromNominal.of(V * MILE_PER_HOUR, FASTEST_MILE_OFFSET) / MILE_PER_HOUR);

publishedExamples(
  'speed-bases',
  {
    'nominal-from-strength-printed-table': ({ V_mph }) => ({ Vasd_mph: nominal(V_mph) }),
    'nominal-from-strength-115-and-120': ({ Vult_mph }) => ({ Vasd_mph: nominal(Vult_mph) }),
    'fastest-mile-formula': ({ V3s_mph }) => ({ Vfm_mph: fastestMile(V3s_mph) }),
  },
  {
    'fastest-mile-table-of-2000-from-gust':
      'a stepped table that the formula used here leaves by up to 5 mph; compared as such in tables.test.ts',
    'fastest-mile-table-of-2000-to-gust':
      'a stepped table that the formula used here leaves by up to 5.5 mph; compared as such in tables.test.ts',
    'return-period-ratio-outside-hurricanes': 'the return period of a map is not changed here',
    'wmo-gust-factors': 'only the 3-second column in-land is used; compared in tables.test.ts',
    'en-peak-over-mean-open-country': 'Eurocode: a later stage',
    'beaufort-bands': 'Beaufort numbers are not read',
  },
);

publishedExamples(
  'ground-elevation',
  {
    'elevation-factor': ({ zs_ft }) => ({
      Ke: list(zs_ft).map((z) => groundElevationFactor.of(z * FOOT, ELEVATION_DECAY_HEIGHT)),
    }),
  },
  {
    'standard-atmosphere': 'the standards’ own elevation factor is used, not the standard atmosphere',
    'air-density-by-temperature': 'no standard here goes by temperature',
  },
);

const iceRule = METHOD_BY_ID['tia222-g'].ice;
if (!iceRule) throw new Error('TIA-222-G has an ice rule');
const INCH = FOOT / 12;

publishedExamples(
  'ice',
  {
    'asce-7-10-iced-tube': ({ t_nominal_in, z_ft, Kzt, Dc_in }) => {
      const rule = METHOD_BY_ID['asce7-10'].ice;
      if (!rule) throw new Error('ASCE 7-10 has an ice rule');
      const td = iceThickness(rule, (t_nominal_in as number) * INCH, 'II', (z_ft as number) * FOOT, Kzt as number);
      const weight = iceWeightPerLength.of(ICE_DENSITY, td, (Dc_in as number) * INCH);
      return {
        fz: iceHeightFactor.of((z_ft as number) * FOOT, REFERENCE_HEIGHT),
        td_in: td / INCH,
        Ai_in2: weight / ICE_DENSITY / INCH ** 2,
        weight_lb_ft: (weight / POUND) * FOOT,
      };
    },
    'asce-7-10-ice-height-factor': ({ z_ft }) => ({
      fz: list(z_ft).map((z) => iceHeightFactor.of(z * FOOT, REFERENCE_HEIGHT)),
    }),
    'tia-g-design-ice-by-height': ({ ti_in, z_ft, Kzt }) => ({
      Kiz: list(z_ft).map((z) => iceHeightFactor.of(z * FOOT, REFERENCE_HEIGHT)),
      tiz_in: list(z_ft).map(
        (z) => iceThickness(iceRule, (ti_in as number) * INCH, 'II', z * FOOT, Kzt as number) / INCH,
      ),
    }),
    'tia-g-iced-tubes': ({ bare_diameter_in, tiz_in }) => {
      const ice = (tiz_in as number) * INCH;
      const iced = list(bare_diameter_in).map((d) => icedDiameter.of(d * INCH, ice) / INCH);
      return {
        iced_diameter_in: iced,
        area_ratio: iced.map((diameter, index) => diameter / (list(bare_diameter_in)[index] as number)),
        ice_weight_lb_ft: list(bare_diameter_in).map(
          (d) => (iceWeightPerLength.of(ICE_DENSITY, ice, d * INCH) / POUND) * FOOT,
        ),
      };
    },
    'eia-f-half-inch-ice': ({ tube_diameter_in, radial_ice_in, q_bare_psf, CA }) => {
      const rule = METHOD_BY_ID['eia222-f'].ice;
      if (!rule || !('shareOfForce' in rule.wind)) throw new Error('F lets a share of its own wind stand with ice');
      const d = (tube_diameter_in as number) * INCH;
      const ice = iceThickness(rule, (radial_ice_in as number) * INCH, 'II', 15, 1);
      const perFoot = (diameter: number) => ((q_bare_psf as number) * (CA as number) * diameter) / FOOT;
      return {
        bare_load_lb_ft: perFoot(d),
        iced_load_lb_ft: rule.wind.shareOfForce * perFoot(icedDiameter.of(d, ice)),
        ice_weight_lb_ft: (iceWeightPerLength.of(ICE_DENSITY, ice, d) / POUND) * FOOT,
      };
    },
  },
  { 'iced-line-weight-and-wind': 'another density of ice, and the resultant of a hanging line, which is not computed' },
);
