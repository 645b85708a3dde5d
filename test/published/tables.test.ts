import { describe, expect, it } from 'vitest';
import {
  cylinderSlenderness,
  DISH_COEFFICIENT,
  diagonalFactorSquare,
  endEffectFactor,
  FLAT_F,
  FLAT_TIA,
  type ForceCoefficient,
  flatCoefficientAsce,
  flatCoefficientEn,
  ICE_DENSITY,
  LATTICE_EN,
  latticeCoefficientC,
  latticeCoefficientSquare,
  latticeCoefficientTia,
  latticeCoefficientTriangle,
  MPH_FOOT,
  packingRatio,
  poleCoefficientF,
  poleCoefficientTia,
  polygonSlenderness,
  RECTANGULAR_GROUP_COEFFICIENT,
  ROUND_F,
  ROUND_GROUP_COEFFICIENT,
  ROUND_SHARE_C,
  roundCoefficientAsce,
  roundCoefficientTia,
  roundFactorAsce,
  roundFactorTiaFast,
  roundFactorTiaSlow,
  SIGN_ROW_ASCE,
  SURFACE_ROUGHNESS,
  type WindDirection,
} from '../../src/areas/index.ts';
import {
  FOOT,
  fromTable,
  GRAVITY,
  INCH,
  MILE_PER_HOUR,
  POUND,
  POUND_PER_SQUARE_FOOT,
  type Table,
} from '../../src/foundation/index.ts';
import { ratedAreaFactor } from '../../src/margins/index.ts';
import {
  ASCE_LEAST_PRESSURE,
  CODE_EDITIONS,
  METHOD_BY_ID,
  type MethodId,
  statedAreaFactor,
} from '../../src/methods/index.ts';
import { SOIL_HINTS, STANDARD_PIPES, TUBE_GRADES, tubeSection } from '../../src/structure/index.ts';
import {
  AIR_DENSITY_EN,
  ASCE_HILLS,
  ASCE_LOWEST_HEIGHT,
  convertSpeed,
  DURST_BY_TIME,
  ELEVATION_DECAY_HEIGHT,
  EXPOSURE_7_22,
  EXPOSURE_TO_7_16,
  type Exposure,
  exposureCoefficient722,
  exposureCoefficientEiaF,
  exposureCoefficientTia,
  exposureCoefficientTo716,
  exposureOf,
  FASTEST_MILE_OFFSET,
  FLAT_PLATE_CONSTANT,
  GUST_CONSTANTS_7_22,
  GUST_CONSTANTS_TO_7_16,
  gustEffectEiaF,
  gustOverMean,
  type Hill,
  hillConditionsAsce,
  hillExclusion,
  hillHeightFactor,
  IMPORTANCE_G,
  nominalFromFastestMile,
  nominalFromStrength,
  POLE_GUST_EIA_F,
  PRESSURE_CONSTANT,
  REFERENCE_HEIGHT,
  type RiskCategory,
  TERRAIN_ROUGHNESS,
  type Terrain,
  TIA_HILLS,
  TIA_LOWEST_COEFFICIENT,
  TIA_TERRAIN_CONSTANT,
  terrainOf,
} from '../../src/wind/index.ts';
import { assessed } from '../margins/any-plan.ts';
import { demoPlan } from '../margins/demo-plan.ts';
import { number, type Row, tableNames, tableRows } from './table-reader.ts';

/** Tables of what is not built here; the rest must be compared below. */
const NOT_HERE: Readonly<Record<string, string>> = {
  'map-return-periods': 'the return period of a map is not changed here',
};

const compared = new Set<string>();

/** One test a row, but for rows that have no twin in the code: `leftOut` says why. */
function everyRow(
  name: string,
  compare: (row: Row) => void,
  leftOut: (row: Row) => string | undefined = () => undefined,
): void {
  compared.add(name);
  describe(`table ${name}`, () => {
    const rows = tableRows(name).filter((row) => leftOut(row) === undefined);
    it.each(rows.map((row) => [Object.values(row).slice(0, 4).join(' '), row] as const))('%s', (_, row) =>
      compare(row),
    );
  });
}

/** A regime starts at nought or where another of the same keys ends, so that its lower limit is compared as well. */
function startsWhereAnotherEnds(name: string, row: Row, keys: readonly string[], from: string, to: string): void {
  if (number(row, from) === 0) return;
  const ends = tableRows(name).filter((other) => keys.every((key) => other[key] === row[key]));
  expect(ends.map((other) => other[to])).toContain(row[from]);
}

const close = (computed: number, printed: number) => expect(computed).toBeCloseTo(printed, 9);
const windStructure = (kind: 'lattice' | 'pole', guyed = false, feet = 48) =>
  ({ kind, sides: 0, guyed, height: feet * FOOT, width: 0.4 }) as const;
const windOf = (method: string, kind: 'lattice' | 'pole', guyed = false, feet = 48, strength = false) =>
  METHOD_BY_ID[method as MethodId].wind({
    units: 'us',
    speed: 40,
    speedLevel: strength ? 'strength' : 'own',
    actual: false,
    exposure: 'C',
    riskCategory: 'II',
    groundElevation: 0,
    windStructure: windStructure(kind, guyed, feet),
  });

everyRow('exposure-constants', (row) => {
  const method = row['method'] as string;
  const exposure = row['exposure'] as Exposure;
  const constants = method === 'asce7-22' ? EXPOSURE_7_22[exposure] : EXPOSURE_TO_7_16[exposure];
  close(constants.alpha, number(row, 'alpha'));
  close(constants.gradientHeight / FOOT, number(row, 'zg_ft'));
  // At the gradient height the formula gives its multiplier.
  const { gradientHeight, alpha } = constants;
  const formula = method === 'asce7-22' ? exposureCoefficient722 : exposureCoefficientTo716;
  if (method.startsWith('asce')) {
    close(formula.of(gradientHeight, ASCE_LOWEST_HEIGHT, gradientHeight, alpha), number(row, 'multiplier'));
    close(ASCE_LOWEST_HEIGHT / FOOT, number(row, 'lowest_z_ft'));
    const wind = METHOD_BY_ID[method as MethodId].wind({ ...windOf(method, 'lattice').conditions, exposure });
    close(wind.exposureCoefficient(0), wind.exposureCoefficient(number(row, 'lowest_z_ft') * FOOT));
  } else {
    close(exposureCoefficientTia.of(gradientHeight, 0, gradientHeight, alpha), number(row, 'multiplier'));
    close(TIA_LOWEST_COEFFICIENT[exposure], number(row, 'lowest_kz'));
    const wind = METHOD_BY_ID[method as MethodId].wind({ ...windOf(method, 'lattice').conditions, exposure });
    close(wind.exposureCoefficient(0), number(row, 'lowest_kz'));
    close(wind.exposureCoefficient(1000), number(row, 'highest_kz'));
  }
});

everyRow('kz-printed', (row) => {
  const { gradientHeight, alpha } = EXPOSURE_TO_7_16[row['exposure'] as Exposure];
  const Kz = exposureCoefficientTo716.of(number(row, 'z_ft') * FOOT, ASCE_LOWEST_HEIGHT, gradientHeight, alpha);
  // Printed entries are partly truncated: up to 0.0076 off the formula, D up to 0.01.
  expect(Math.abs(Kz - number(row, 'kz'))).toBeLessThan(0.01);
  // The metres beside them are rounded too, one as far as 18 for 60 ft.
  if (row['z_m'] !== '') expect(Math.abs(number(row, 'z_m') - number(row, 'z_ft') * FOOT)).toBeLessThan(0.3);
});

everyRow('height-law-eia222-f', (row) => {
  const reference = number(row, 'reference_height_ft') * FOOT;
  close(REFERENCE_HEIGHT, reference);
  const exponent = number(row, 'exponent_numerator') / number(row, 'exponent_denominator');
  close(exposureCoefficientEiaF.of(2 * reference, reference), 2 ** exponent);
  close(exposureCoefficientEiaF.of(0, reference), number(row, 'lowest_kz'));
  close(exposureCoefficientEiaF.of(1e4, reference), number(row, 'highest_kz'));
});

everyRow('topography-asce', (row) => {
  const hill = ASCE_HILLS[row['shape'] as Hill['shape']];
  close(hill.k.B, number(row, 'k_exposure_b'));
  close(hill.k.C, number(row, 'k_exposure_c'));
  close(hill.k.D, number(row, 'k_exposure_d'));
  close(hill.gamma, number(row, 'gamma'));
  close(hill.mu.upwind, number(row, 'mu_upwind'));
  close(hill.mu.downwind, number(row, 'mu_downwind'));
});

everyRow(
  'topography-asce-conditions',
  (row) => {
    const value = number(row, 'value');
    const hill = (height: number, halfLength: number): Hill => ({
      shape: 'ridge',
      height,
      halfLength,
      distance: 0,
      side: 'upwind',
    });
    const excluded = (given: Hill, exposure: Exposure) =>
      (['to-7-16', '7-22'] as const).map((list) => hillExclusion(hillConditionsAsce(given, exposure, list)));
    const both = <T>(each: T) => [each, each];
    switch (row['condition']) {
      case 'steepest-h-over-lh-in-k1':
        close(hillHeightFactor.of(1, value * 10, 10), hillHeightFactor.of(1, 9, 10));
        close(hillHeightFactor.of(1, 9, 10), value);
        return;
      case 'lowest-h-over-lh':
        expect(excluded(hill(100, 100 / value), 'C')).toEqual(both(undefined));
        expect(excluded(hill(100, 100 / (value * 0.999)), 'C')).toEqual(both('too-gentle'));
        return;
      case 'lowest-height': {
        const exposure = row['exposure'] as Exposure;
        const height = value * (row['unit'] === 'ft' ? FOOT : 1);
        expect(excluded(hill(height, 10), exposure)).toEqual(both(undefined));
        // The metric print is the lower of the two, and counts.
        if (row['unit'] === 'm') expect(excluded(hill(height * 0.999, 10), exposure)).toEqual(both('too-low'));
        else expect(excluded(hill(height * 0.98, 10), exposure)).toEqual(both('too-low'));
        return;
      }
      case 'stands-alone': {
        const rule = METHOD_BY_ID[`asce${row['editions']}` as MethodId].hill;
        const why = hillExclusion(rule?.conditions({ ...hill(30, 60), isolated: false }, 'C') ?? []);
        return expect(why).toBe(value === 1 ? 'not-isolated' : undefined);
      }
      default:
        throw new Error(`no condition ${String(row['condition'])}`);
    }
  },
  ({ condition }) =>
    condition === 'height-above-surroundings-ratio' || condition === 'surroundings-within'
      ? 'whether the hill stands alone is for its owner to say; a plan has no words for it'
      : undefined,
);

everyRow('topography-tia', (row) => {
  const hill = TIA_HILLS[row['shape'] as Hill['shape']];
  expect(hill.category).toBe(number(row, 'category'));
  close(hill.kt, number(row, 'kt'));
  close(hill.f, number(row, 'f'));
});

everyRow('topography-tia-exposure', (row) =>
  close(TIA_TERRAIN_CONSTANT[row['exposure'] as Exposure], number(row, 'kc')),
);

everyRow('gust-constants', (row) => {
  const edition = row['edition'] === '7-22' ? GUST_CONSTANTS_7_22 : GUST_CONSTANTS_TO_7_16;
  const constants = edition[row['exposure'] as Exposure];
  close(constants.meanFactor, number(row, 'b'));
  close(1 / constants.meanExponent, number(row, 'a_is_one_over'));
  close(constants.intensity, number(row, 'c'));
  close(constants.lengthScale / FOOT, number(row, 'l_ft'));
  close(1 / constants.lengthExponent, number(row, 'epsilon_is_one_over'));
  close(constants.lowestHeight / FOOT, number(row, 'zmin_ft'));
});

const MEANS = { '3600': 'mean-hour', '600': 'mean-10min', '60': 'mean-1min' } as const;
everyRow(
  'gust-averaging-wmo',
  (row) => {
    const from = MEANS[row['reference_period_s'] as keyof typeof MEANS];
    if (row['averaging_time_s'] === '3') return close(gustOverMean(from, 'site'), number(row, 'in_land'));
    const to = MEANS[row['averaging_time_s'] as keyof typeof MEANS];
    const durst = { 'mean-1min': 1.25, 'mean-10min': 1.07, 'mean-hour': 1 };
    // A site takes the larger of this table and that of Durst.
    close(convertSpeed(1, from, to, 'site'), Math.max(number(row, 'in_land'), durst[to] / durst[from]));
  },
  (row) =>
    (row['averaging_time_s'] === '3' || (row['averaging_time_s'] as string) in MEANS) &&
    (row['reference_period_s'] as string) in MEANS &&
    row['averaging_time_s'] !== row['reference_period_s']
      ? undefined
      : 'only the means that a plan can give and the 3-second gust are used, in-land, the largest of the four columns',
);

everyRow('gust-averaging-durst', (row) => {
  const seconds = number(row, 'averaging_time_s');
  close(fromTable(DURST_BY_TIME, Math.log10(seconds)), number(row, 'ratio_to_hourly_mean'));
  if (!(seconds in MEANS)) return;
  const hourly = gustOverMean('mean-hour', 'rating');
  close(
    hourly / gustOverMean(MEANS[row['averaging_time_s'] as keyof typeof MEANS], 'rating'),
    number(row, 'ratio_to_hourly_mean'),
  );
});

everyRow('gust-effect-tia', (row) => {
  const method = row['method'] as string;
  const structure = row['structure'] as string;
  const kind = structure === 'pole' ? 'pole' : 'lattice';
  const mastGust = METHOD_BY_ID[method as MethodId].mastGust;
  const gust = (feet: number) =>
    structure === 'mast-on-tower'
      ? (mastGust?.(windStructure('lattice', false, feet)) ?? Number.NaN)
      : windOf(method, kind, structure === 'guyed', feet).gustEffect();
  expect(['free-lattice', 'guyed', 'pole', 'mast-on-tower']).toContain(structure);
  close(gust(number(row, 'height_from_ft')), number(row, 'factor_at_from'));
  close(gust(row['height_to_ft'] === '' ? 2000 : number(row, 'height_to_ft')), number(row, 'factor_at_to'));
  startsWhereAnotherEnds('gust-effect-tia', row, ['method', 'structure'], 'height_from_ft', 'height_to_ft');
});

everyRow('gust-effect-eia222-f', (row) => {
  const reference = number(row, 'reference_height_ft') * FOOT;
  const ours = (height: number) => {
    if (row['structure'] === 'tubular-pole') return POLE_GUST_EIA_F;
    if (row['structure'] === 'lattice') return gustEffectEiaF.of(height, REFERENCE_HEIGHT);
    return METHOD_BY_ID['eia222-f'].mastGust?.({ ...windStructure('lattice'), height });
  };
  const printed = (height: number) => {
    const exponent = 1 / number(row, 'exponent_is_one_over');
    const unlimited = number(row, 'constant') + number(row, 'numerator') / (height / reference) ** exponent;
    return number(row, 'times') * Math.min(number(row, 'highest'), Math.max(number(row, 'lowest'), unlimited));
  };
  for (const height of [1, reference, 2 * reference, 5 * reference, 1e5])
    close(ours(height) as number, printed(height));
});

const at = (table: Table, aspect: number) => table.find(([x]) => x === aspect)?.[1] as number;

const ASCE_FLOW_UNIT = FOOT * Math.sqrt(POUND_PER_SQUARE_FOOT);

/** The coefficient of a row in the middle and just inside both ends of its regime; at the joints two rows may differ. */
function compareRegime(
  byFlow: ForceCoefficient,
  unit: number,
  [from, to]: readonly [number, number],
  coefficient: (flow: number) => number,
): void {
  for (const flow of [from + 1e-9, (from + to) / 2, to - 1e-9]) {
    expect(byFlow.at(flow * unit)).toBeCloseTo(coefficient(flow), 7);
  }
}

everyRow(
  'round-members',
  (row) => {
    const method = row['method'] as string;
    const aspect = number(row, 'aspect');
    const coefficient = (flow: number) => number(row, 'numerator') / flow ** number(row, 'exponent');
    if (method === 'eia222-f') return close(at(ROUND_F, aspect), coefficient(30));
    const tia = method.startsWith('tia');
    const coefficientAt = (ratio: number) =>
      tia
        ? roundCoefficientTia(method === 'tia222-g' ? 'G' : 'H', ratio)
        : roundCoefficientAsce(ratio, 'capacity', 'us');
    const byFlow = coefficientAt(aspect);
    const from = number(row, 'from');
    const to = row['to'] === '' ? from * 2 : number(row, 'to');
    compareRegime(byFlow, tia ? MPH_FOOT : ASCE_FLOW_UNIT, [from, to], coefficient);
    startsWhereAnotherEnds('round-members', row, tia ? ['method', 'aspect'] : ['method'], 'from', 'to');
    // The rise over the aspects ends at the row's own.
    if (aspect === Math.max(...tableRows('round-members').map((each) => number(each, 'aspect')))) {
      expect(coefficientAt(aspect * 0.99).slow).toBeLessThan(coefficientAt(aspect).slow);
      close(coefficientAt(aspect * 1.01).slow, coefficientAt(aspect).slow);
    }
    return undefined;
  },
  ({ surface }) =>
    surface === 'rough' || surface === 'very-rough'
      ? 'a galvanised tube is moderately smooth, the only surface in fast flow here'
      : undefined,
);

everyRow('flat-members', (row) => {
  const value = number(row, 'value');
  if (row['method'] === 'en1991-1-4') {
    const face = row['kind'] === 'board' ? { wide: 1, tall: 1 } : { wide: 0.01, tall: 2 };
    return close(flatCoefficientEn(face).slow, value);
  }
  if (row['method'] === 'dished') {
    // Square on, by any source, a dish drags less than at its worst angle, which counts.
    if (row['kind'] === 'worst-angle') return close(DISH_COEFFICIENT, value);
    return expect(value).toBeLessThan(DISH_COEFFICIENT);
  }
  if (row['method'] === 'asce') return close(flatCoefficientAsce({ wide: 0.05, tall: 2 }).slow, value);
  return close(at(row['method'] === 'eia222-f' ? FLAT_F : FLAT_TIA, number(row, 'aspect')), value);
});

// Its clearance, s/h up to 0.16, is the name of the row; what hangs on a tower is far above the ground.
everyRow('asce-solid-sign', (row) =>
  close(at(SIGN_ROW_ASCE, number(row, 'width_over_height_b_over_s')), number(row, 'force_coefficient')),
);

everyRow('pole-sections', (row) => {
  const sides = number(row, 'sides') as 0 | 8 | 12 | 16 | 18;
  const byFlow = row['method'] === 'eia222-f' ? poleCoefficientF(sides, 'demand') : poleCoefficientTia('G', sides);
  const from = number(row, 'c_from_mph_ft');
  const to = row['c_to_mph_ft'] === '' ? from * 2 : number(row, 'c_to_mph_ft');
  expect([0, 8, 12, 16, 18]).toContain(sides);
  compareRegime(byFlow, MPH_FOOT, [from, to], (flow) => number(row, 'numerator') / flow ** number(row, 'exponent'));
  startsWhereAnotherEnds('pole-sections', row, ['method', 'sides'], 'c_from_mph_ft', 'c_to_mph_ft');
});

everyRow('lattice-sections', (row) => {
  const polynomial = (epsilon: number) =>
    Math.min(
      row['at_most'] === '' ? Number.POSITIVE_INFINITY : number(row, 'at_most'),
      number(row, 'epsilon_cubed') * epsilon ** 3 +
        number(row, 'epsilon_squared') * epsilon ** 2 +
        number(row, 'epsilon') * epsilon +
        number(row, 'constant'),
    );
  const tia = row['method']?.startsWith('tia');
  const formula =
    row['quantity'] === 'force-coefficient'
      ? row['faces'] === '4'
        ? latticeCoefficientSquare
        : latticeCoefficientTriangle
      : tia
        ? row['regime'] === 'subcritical'
          ? roundFactorTiaSlow
          : roundFactorTiaFast
        : roundFactorAsce;
  for (const epsilon of [0.05, 0.1, 0.2, 0.35, 0.5, 1]) close(formula.of(epsilon), polynomial(epsilon));
});

everyRow('lattice-directions', (row) => {
  const faces = number(row, 'faces') as 3 | 4;
  expect([3, 4]).toContain(faces);
  const factor = (epsilon: number) =>
    Math.min(
      row['at_most'] === '' ? Number.POSITIVE_INFINITY : number(row, 'at_most'),
      number(row, 'constant') + number(row, 'times_epsilon') * epsilon,
    );
  const angle = number(row, 'angle_to_face_normal_deg');
  for (const epsilon of [0.1, 0.2, 0.3, 0.5]) {
    if (faces === 4) {
      expect(angle).toBe(45);
      close(diagonalFactorSquare.of(epsilon), factor(epsilon));
      continue;
    }
    const face = {
      faces,
      solidity: epsilon,
      roundShare: row['members'] === 'round' ? 1 : 0,
      thinnest: 0,
      thickest: 0,
    } as const;
    const revision = row['method'] === 'tia222-g' ? 'G' : 'H';
    const from = (direction: WindDirection) => latticeCoefficientTia(revision, face, direction).slow;
    const ratio = from('corner') / from('face');
    if (angle === 60) close(ratio, factor(epsilon));
    else if (angle === 0) close(1, factor(epsilon));
    else {
      // Square to a face's edge lies between the face, 1, and the corner, so it never decides.
      expect(angle).toBe(90);
      expect(factor(epsilon)).toBeGreaterThanOrEqual(ratio);
      expect(factor(epsilon)).toBeLessThanOrEqual(1);
    }
  }
});

everyRow('lattice-rs222-c', (row) => {
  const faces = number(row, 'faces') as 3 | 4;
  expect([3, 4]).toContain(faces);
  const face = { faces, solidity: 0.2, roundShare: 0, thinnest: 0, thickest: 0 } as const;
  close(latticeCoefficientC(face).slow, number(row, 'times_one_face'));
});
everyRow('pressure-rs222-c', (row) => {
  close((FLAT_PLATE_CONSTANT * MILE_PER_HOUR ** 2) / POUND_PER_SQUARE_FOOT, number(row, 'psf_per_mph2'));
  close(row['surface'] === 'flat' ? 1 : ROUND_SHARE_C, number(row, 'share_of_flat'));
});
everyRow('ice-importance', (row) => {
  const rule = METHOD_BY_ID[row['method'] as MethodId].ice;
  close(rule?.importance?.[row['class'] as RiskCategory] ?? 1, number(row, 'importance_factor'));
});

everyRow('importance', (row) =>
  close(IMPORTANCE_G[row['class'] as 'I' | 'II' | 'III'], number(row, 'importance_factor')),
);
everyRow('direction-factors', (row) =>
  close(
    windOf(row['method'] as string, row['carrier'] === 'lattice' ? 'lattice' : 'pole').directionFactor,
    number(row, 'kd'),
  ),
);
everyRow('packing', (row) => close(packingRatio(number(row, 'lines')), number(row, 'enclosing_over_line_diameter')));

everyRow('level-factors', (row) => {
  const name = row['method'] as string;
  const strength = name.endsWith('-with-strength-map');
  const id = (strength ? 'tia222-g' : name) as MethodId;
  close(windOf(id, 'lattice', false, 48, strength).toAllowableFactor, number(row, 'lambda'));
  if (!strength) return close(METHOD_BY_ID[id].toNominalFactor, number(row, 'nominal_for_foundations'));
  // Under a strength-level map it stands with the reactions of a whole plan.
  const site = { wind: { speed: 105, basis: 'gust3-strength' }, exposure: 'C' };
  const { reactions } = assessed({ ...demoPlan('ten-numbers'), method: id, site });
  return close((reactions?.toNominal as number) * number(row, 'lambda'), number(row, 'nominal_for_foundations'));
});

everyRow('stated-areas', (row) => {
  const [least, most] = [number(row, 'factor_least'), number(row, 'factor_most')];
  if (row['area_kind'] === 'drag-area') {
    // 0.8 of the 0.00256 that goes with a drag area, over the 0.004 of the old standard.
    const { byFlow } = windOf('rs222-c', 'lattice').forceCoefficient({ of: 'drag-area' }, 'capacity', 'face');
    close(byFlow.slow, least);
    return close(byFlow.slow, most);
  }
  const kind = row['area_kind'] as 'effective' | 'unknown' | 'flat-plate' | 'projected-round' | 'projected-flat';
  if (row['of'] === 'load') {
    const slenderFlats = row['reading'] === 'flats' || row['reading'] === 'slender flats among them';
    const { slender } = METHOD_BY_ID['asce7-16'];
    close(statedAreaFactor(kind, slenderFlats, slender, 'favourable'), least);
    close(statedAreaFactor(kind, slenderFlats, slender, 'unfavourable'), most);
    return;
  }
  const claim = { kind: 'area', areaKind: kind, rows: [], also: [] } as const;
  const method: MethodId = row['reading']?.includes('eia222-f') ? 'eia222-f' : 'asce7-16';
  close(ratedAreaFactor(claim, method).low, least);
  // A projected area of round tubes counts its coefficient only where the maker names it.
  if (kind === 'projected-round') close(ratedAreaFactor({ ...claim, coefficient: most }, method).high, most);
  else close(ratedAreaFactor(claim, method).high, most);
});

everyRow('pressure-constants', (row) => {
  const value = number(row, 'value');
  const ours: Readonly<Record<string, number>> = {
    'velocity-pressure-us': (PRESSURE_CONSTANT.us * MILE_PER_HOUR ** 2) / POUND_PER_SQUARE_FOOT,
    'velocity-pressure-si': PRESSURE_CONSTANT.si,
    'ground-elevation-per-ft': FOOT / ELEVATION_DECAY_HEIGHT,
    'asce-lowest-strength-pressure': ASCE_LEAST_PRESSURE / POUND_PER_SQUARE_FOOT,
    'en-air-density': AIR_DENSITY_EN,
    'ice-density': (ICE_DENSITY / POUND) * FOOT ** 3,
  };
  const name = row['constant'] as string;
  // Per foot and per metre the standard rounds each for itself.
  if (name === 'ground-elevation-per-m') expect(1 / ELEVATION_DECAY_HEIGHT).toBeCloseTo(value, 6);
  else close(ours[name] as number, value);
});

everyRow('group-of-lines', (row) => {
  if (row['group'] === 'bundle') close(ROUND_GROUP_COEFFICIENT, number(row, 'coefficient_on_outside_width'));
  // A ribbon's lines touch, so that singly, with 1.2 at most, is always the smaller: its 1.5 is never taken.
  else close(RECTANGULAR_GROUP_COEFFICIENT, number(row, 'coefficient_on_outside_width'));
  if (row['group'] === 'ribbon') expect(RECTANGULAR_GROUP_COEFFICIENT).toBeGreaterThan(at(ROUND_F, 25));
});

everyRow('unit-conversions', (row) => {
  const ours: Readonly<Record<string, number>> = {
    ft: FOOT,
    in: INCH,
    mi: MILE_PER_HOUR * 3600,
    mph: MILE_PER_HOUR,
    lb: POUND,
    'standard-gravity': GRAVITY,
  };
  close(ours[row['from'] as string] as number, number(row, 'factor'));
});

everyRow('ibc-nominal-speed', (row) => {
  // 100 mph prints 78 where the formula gives 77.46.
  expect(
    Math.abs(nominalFromStrength.of(number(row, 'strength_gust_mph')) - number(row, 'nominal_gust_mph')),
  ).toBeLessThan(0.6);
});

everyRow('ibc-fastest-mile', (row) => {
  const gust =
    nominalFromFastestMile.of(number(row, 'fastest_mile_mph') * MILE_PER_HOUR, FASTEST_MILE_OFFSET) / MILE_PER_HOUR;
  // The table of 2000 is stepped in 5 mph and lies up to 5.5 mph over the formula.
  expect(number(row, 'gust_3_s_mph') - gust).toBeGreaterThan(-2.5);
  expect(number(row, 'gust_3_s_mph') - gust).toBeLessThan(5.6);
});

everyRow('code-editions', (row) => {
  const edition = CODE_EDITIONS.find((each) => each.code === row['code'] && each.edition === number(row, 'edition'));
  expect({
    wind: edition?.wind.standard,
    tower: edition?.tower.standard,
    mapSpeed: edition?.mapSpeed,
    reach: String(edition?.escarpmentReach ?? ''),
    source: edition?.cite.source,
    known: edition?.cite.known,
  }).toEqual({
    wind: row['wind_standard'],
    tower: row['tower_standard'],
    mapSpeed: row['map_speed'],
    reach: row['escarpment_reach_in_heights'],
    source: row['source'],
    known: row['known'],
  });
  // The titles of the methods are those of the standards, so a wrong method shows.
  expect(METHOD_BY_ID[edition?.tower.method ?? 'rs222-c'].title).toBe(row['tower_standard']);
  const wind = edition?.wind.method;
  if (wind) expect(METHOD_BY_ID[wind].title).toBe(row['wind_standard']);
  else expect(Object.values(METHOD_BY_ID).map(({ title }) => title)).not.toContain(row['wind_standard']);
});

everyRow('standard-pipes', (row) => {
  const pipe = STANDARD_PIPES.find(
    ({ nominal, schedule }) => nominal === row['nominal_in'] && schedule === number(row, 'schedule'),
  );
  if (!pipe) throw new Error('the program has no such pipe');
  const { outside, wall, cite } = pipe;
  close(outside / INCH, number(row, 'outside_in'));
  close(wall / INCH, number(row, 'wall_in'));
  // The millimetres are printed to one digit of the outside and two of the wall.
  expect(Math.abs(outside * 1000 - number(row, 'outside_mm'))).toBeLessThanOrEqual(0.05);
  expect(Math.abs(wall * 1000 - number(row, 'wall_mm'))).toBeLessThanOrEqual(0.005);
  const { weightPerLength } = tubeSection({ outside, wall, material: 'steel' });
  // The density behind the printed weight is itself rounded.
  expect(Math.abs((weightPerLength * FOOT) / POUND - number(row, 'weight_lb_ft'))).toBeLessThanOrEqual(0.006);
  expect([cite.source, cite.known]).toEqual([row['source'], row['known']]);
  expect(row['weight_known']).toBe('derived');
});

everyRow('tube-grades', (row) => {
  const grade = TUBE_GRADES.find(({ id }) => id === row['grade']);
  if (!grade) throw new Error('the program has no such grade');
  const unit = { ksi: (1000 * POUND * GRAVITY) / INCH ** 2, MPa: 1e6 }[row['unit'] as 'ksi' | 'MPa'];
  close(grade.yieldStrength / unit, number(row, 'yield'));
  close(grade.ultimateStrength / unit, number(row, 'tensile'));
  expect(grade.material).toBe(row['material']);
  expect([grade.cite.source, grade.cite.known]).toEqual([row['source'], row['known']]);
});

everyRow('soil-hints', (row) => {
  const hint = SOIL_HINTS.find(({ soil }) => soil === row['soil']);
  close((hint?.bearing ?? 0) / POUND_PER_SQUARE_FOOT, number(row, 'bearing_psf'));
  close(((hint?.lateral ?? 0) / POUND_PER_SQUARE_FOOT) * FOOT, number(row, 'lateral_psf_per_ft'));
});

describe('tables of reference/', () => {
  it('hold every size of pipe and every grade that the program holds', () => {
    const pipes = tableRows('standard-pipes').map((row) => `${row['nominal_in']} ${row['schedule']}`);
    expect(STANDARD_PIPES.map(({ nominal, schedule }) => `${nominal} ${schedule}`)).toEqual(pipes);
    expect(TUBE_GRADES.map(({ id }) => id)).toEqual(tableRows('tube-grades').map((row) => row['grade']));
  });

  it('hold every soil that the program holds', () => {
    expect(SOIL_HINTS.map(({ soil }) => soil)).toEqual(tableRows('soil-hints').map((row) => row['soil']));
  });

  it('are all compared, or named as not built', () => {
    const spoken = [...compared, ...Object.keys(NOT_HERE)].sort();
    expect(spoken).toEqual([...tableNames()].sort());
  });

  it('hold every edition of a code that the program holds', () => {
    expect(CODE_EDITIONS.map(({ edition }) => String(edition))).toEqual(
      tableRows('code-editions').map((row) => row['edition']),
    );
  });
});

everyRow('terrain-en1991', (row) => {
  const { length, lowest } = TERRAIN_ROUGHNESS[row['terrain'] as Terrain];
  close(length, number(row, 'z0_m'));
  close(lowest, number(row, 'lowest_z_m'));
});

everyRow('exposure-beside-terrain', (row) => {
  const exposure = row['exposure'] as Exposure;
  expect(terrainOf(exposure)).toBe(row['terrain']);
  expect(exposureOf(row['terrain'] as Terrain)).toBe(exposure);
  expect(exposureOf(row['terrain_on_an_open_coast'] as Terrain)).toBe(exposure);
});

everyRow('end-effect-en1991', (row) => {
  const psi = endEffectFactor.of(number(row, 'slenderness'));
  if (row['between'] === 'read off the curve') expect(Math.abs(psi - number(row, 'psi'))).toBeLessThan(0.001);
  else close(psi, number(row, 'psi'));
});

everyRow('slenderness-en1991', (row) => {
  const rule = row['section'] === 'cylinder' ? cylinderSlenderness : polygonSlenderness;
  const l = number(row, 'length_m');
  const slenderness = (width: number) => rule.of(l, width, 15, 50);
  close(slenderness(l / 20) / 20, number(row, 'factor_on_length_over_width'));
  close(slenderness(l / 500), number(row, 'at_most'));
});

everyRow(
  'surface-roughness-en1991',
  (row) => close(SURFACE_ROUGHNESS[row['surface'] === 'polished' ? 'capacity' : 'demand'] * 1000, number(row, 'k_mm')),
  ({ surface }) => (surface === 'rust' ? 'a rusty tube drags more: the corrosion caution speaks of it' : undefined),
);

everyRow('lattice-en1993', (row) => {
  const { c1, c2 } = LATTICE_EN[number(row, 'faces') as 3 | 4];
  close(c1, number(row, 'c1'));
  close(c2, number(row, 'c2'));
});
