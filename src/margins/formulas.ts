import { cite, defineFormula, listVariable, nth, variable } from '../foundation/index.ts';

const level = variable('lambda', 'to the allowable level', 'one', 0.6, 1);
const directionInForce = variable('K_dF', 'direction factor, where the method puts it in the force', 'one', 0.85, 1);
const q = variable('q_z', 'velocity pressure', 'pressure', 0, 8000);
const G = variable('G', 'gust effect factor', 'one', 0.85, 1.7);

export const sliceForce = defineFormula({
  id: 'force-of-slice',
  title: 'Force on a piece, allowable level',
  symbol: 'F',
  unit: 'force',
  expression: 'max(lambda * K_dF * q_z * G * C_A, lambda * p_min) * k_A * A',
  variables: [
    level,
    directionInForce,
    q,
    G,
    variable('C_A', 'coefficient', 'one', 0.3, 4),
    variable('p_min', 'least pressure of the method', 'pressure', 0, 800),
    variable('k_A', 'from the stated to the effective area', 'one', 1, 2),
    variable('A', 'area', 'area', 0, 20),
  ],
  cite: cite(
    'asce7-10',
    '29.5, Eq. 29.5-1; least pressure as in 7-16, 29.7; TIA-222-G 2.6.9 in the same form',
    'memory',
  ),
  of: (lambda: number, Kd: number, pressure: number, gust: number, C: number, least: number, k: number, A: number) =>
    Math.max(lambda * Kd * pressure * gust * C, lambda * least) * k * A,
});

export const pressureOnWire = defineFormula({
  id: 'pressure-on-wire',
  title: 'Pressure of the wind on a wire, allowable level',
  symbol: 'p',
  unit: 'pressure',
  expression: 'lambda * K_dF * q_z * G',
  variables: [level, directionInForce, q, G],
  cite: cite('derived', 'as on all that stands in the wind', 'derived'),
  of: (lambda: number, Kd: number, pressure: number, gust: number) => lambda * Kd * pressure * gust,
});

export const pressureForce = defineFormula({
  id: 'rated-force-per-area',
  title: 'Force on a unit of effective area at the stated conditions, allowable level',
  symbol: 'f_r',
  unit: 'pressure',
  expression: 'lambda * max(K_dF * q_z * G, p_min)',
  variables: [
    level,
    directionInForce,
    q,
    G,
    variable('p_min', 'least pressure, where the same counts in the plan', 'pressure', 0, 800),
  ],
  cite: cite('derived', 'a rating is a force at its own stated conditions, by its own standard', 'derived'),
  of: (lambda: number, Kd: number, pressure: number, gust: number, least: number) =>
    lambda * Math.max(Kd * pressure * gust, least),
});

export const dragAreaForce = defineFormula({
  id: 'force-per-drag-area',
  title: 'Force on a unit of drag area of the tower itself, allowable level',
  symbol: 'f_A',
  unit: 'pressure',
  expression: 'lambda * K_dF * q_z * G * C_A',
  variables: [
    level,
    directionInForce,
    q,
    G,
    variable('C_A', 'what its standard surely puts on a drag area: 1, by RS-222-C less', 'one', 0.5, 1),
  ],
  cite: cite('derived', 'the same tower on both sides, each by its own standard', 'derived'),
  of: (lambda: number, Kd: number, pressure: number, gust: number, share: number) =>
    lambda * Kd * pressure * gust * share,
});

export const allowableForce = defineFormula({
  id: 'allowable-force',
  title: 'Stated force at the allowable level',
  symbol: 'F_r',
  unit: 'force',
  expression: 'lambda * F',
  variables: [level, variable('F', 'stated force', 'force', 0, 1e6)],
  cite: cite('derived', 'level of the statement', 'derived'),
  of: (lambda: number, force: number) => lambda * force,
});

export const ratedForce = defineFormula({
  id: 'rated-force',
  title: 'Force on the rated area, allowable level',
  symbol: 'F_r',
  unit: 'force',
  expression: 'f_r * k_A * A_r',
  variables: [
    variable('f_r', 'force on a unit of effective area', 'pressure', 0, 8000),
    variable('k_A', 'from the stated to the effective area', 'one', 0.6, 2),
    variable('A_r', 'rated area', 'area', 0, 20),
  ],
  cite: cite('derived', 'a rating is a force at its own stated conditions, by its own standard', 'derived'),
  of: (perArea: number, factor: number, area: number) => perArea * factor * area,
});

export const areaOfEqualForce = defineFormula({
  id: 'area-of-equal-force',
  title: 'Effective area with the same force in the other wind',
  symbol: 'A_e',
  unit: 'area',
  expression: 'F_r / f',
  variables: [
    variable('F_r', 'rated force, allowable level', 'force', 0, 1e5),
    variable('f', 'force of the other wind on a unit of effective area', 'pressure', 10, 8000),
  ],
  cite: cite('derived', 'a rating is a force at its own stated conditions, by its own standard', 'derived'),
  of: (rated: number, perArea: number) => rated / perArea,
});

const force = (symbol: string, meaning: string) => variable(symbol, meaning, 'force', 0, 1e5);
const moment = (symbol: string, meaning: string) => variable(symbol, meaning, 'moment', 0, 1e6);

export const provenShear = defineFormula({
  id: 'proven-shear',
  title: 'Shear capacity of the rated case: the rated force and the rated wind on the tower itself',
  symbol: 'V_cap',
  unit: 'force',
  expression: 'V_r + V_own',
  variables: [force('V_r', 'of the rated force'), force('V_own', 'of the rated wind on the tower above')],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (rated: number, own: number) => rated + own,
});

/**
 * By the same steel a round tube takes V = 0.6·F_y·A/2 and M = F_y·S (AISC 360, G5 and F8 without its plastic part, the same
 * 1.67 under both), and A/S = 8D/(D² + d²) is at least 4/D: V ≥ 0.3·(4/D)·M. Up to D/t = 70 shear does not buckle it before
 * it yields.
 */
export const shearBesideMoment = defineFormula({
  id: 'shear-beside-moment',
  title: 'Shear that a round tube surely takes which takes a moment',
  symbol: 'V_cap',
  unit: 'force',
  expression: '1.2 * M_cap / D',
  variables: [moment('M_cap', 'moment it is shown to take'), variable('D', 'outside diameter', 'diameter', 0.02, 2)],
  cite: cite('aisc-360', 'F8, G5', 'derived'),
  of: (proven: number, diameter: number) => (1.2 * proven) / diameter,
});

export const provenInBraces = defineFormula({
  id: 'proven-in-braces',
  title: 'Capacity of tapering braces in the rated case, in either direction',
  symbol: 'S_cap',
  unit: 'force',
  expression: 'abs(S_r + S_own)',
  variables: [
    variable('S_r', 'of the rated force', 'force', -1e5, 1e5),
    force('S_own', 'of the rated wind on the tower above'),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (rated: number, own: number) => Math.abs(rated + own),
});

export const provenMoment = defineFormula({
  id: 'proven-moment',
  title: 'Moment capacity of the rated case: the rated force and the rated wind on the tower itself',
  symbol: 'M_cap',
  unit: 'moment',
  expression: '(M_r + M_own) * b',
  variables: [
    moment('M_r', 'of the rated force'),
    moment('M_own', 'of the rated wind on the tower above'),
    variable('b', 'width here over width where it is rated, for legs that taper; else 1', 'one', 0.2, 1),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (rated: number, own: number, width: number) => (rated + own) * width,
});

export const allowableMoment = defineFormula({
  id: 'allowable-moment',
  title: 'Stated moment at the allowable level',
  symbol: 'M_cap',
  unit: 'moment',
  expression: 'lambda * M',
  variables: [level, moment('M', 'stated moment')],
  cite: cite('derived', 'level of the statement', 'derived'),
  of: (lambda: number, stated: number) => lambda * stated,
});

export const sumOfForces = defineFormula({
  id: 'sum-of-forces',
  title: 'Shear of pieces alike from all sides (a: share each hands on)',
  symbol: 'V',
  unit: 'force',
  expression: 'sum(F .* a)',
  variables: [
    listVariable('F', 'forces of the pieces above', 'force', 0, 1e4),
    listVariable('a', 'share handed on', 'one', -5, 5),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (forces: readonly number[], shares: readonly number[]) =>
    forces.reduce((sum, each, index) => sum + each * nth(shares, index), 0),
});

export const sumOfMoments = defineFormula({
  id: 'sum-of-moments',
  title: 'Moment of pieces alike from all sides',
  symbol: 'M',
  unit: 'moment',
  expression: 'sum(F .* a)',
  variables: [
    listVariable('F', 'forces of the pieces above', 'force', 0, 1e4),
    listVariable('a', 'their heights above the level', 'length', 0, 100),
  ],
  cite: cite('derived', 'statics', 'derived'),
  of: (forces: readonly number[], arms: readonly number[]) =>
    forces.reduce((sum, each, index) => sum + each * nth(arms, index), 0),
});

const WORST =
  'sum((F_N + F_T) .* a) / 2 + sqrt(sum((F_N - F_T) .* a .* map(2 * psi, cos))^2 + sum((F_N - F_T) .* a .* map(2 * psi, sin))^2) / 2';

function worst(
  alongs: readonly number[],
  acrosses: readonly number[],
  arms: readonly number[],
  headings: readonly number[],
): number {
  let mean = 0;
  let cosine = 0;
  let sine = 0;
  alongs.forEach((along, index) => {
    const across = nth(acrosses, index);
    const arm = nth(arms, index);
    const heading = nth(headings, index);
    mean += (along + across) * arm;
    cosine += (along - across) * arm * Math.cos(2 * heading);
    sine += (along - across) * arm * Math.sin(2 * heading);
  });
  return mean / 2 + Math.sqrt(cosine ** 2 + sine ** 2) / 2;
}

export const worstShear = defineFormula({
  id: 'worst-heading-shear',
  title: 'Largest shear over all wind headings of things that share one heading (a: share each hands on)',
  symbol: 'V',
  unit: 'force',
  expression: WORST,
  variables: [
    listVariable('F_N', 'forces, wind along each', 'force', 0, 1e4),
    listVariable('F_T', 'forces, wind across each', 'force', 0, 1e4),
    listVariable('a', 'share handed on', 'one', 0, 5),
    listVariable('psi', 'headings', 'angle', 0, 6.3),
  ],
  cite: cite('hoerner-1965', 'cross-flow principle; closed form derived here', 'derived'),
  of: worst,
});

export const worstMoment = defineFormula({
  id: 'worst-heading-moment',
  title: 'Largest moment over all wind headings of things that share one heading',
  symbol: 'M',
  unit: 'moment',
  expression: WORST,
  variables: [
    listVariable('F_N', 'forces, wind along each', 'force', 0, 1e4),
    listVariable('F_T', 'forces, wind across each', 'force', 0, 1e4),
    listVariable('a', 'arms', 'length', 0, 100),
    listVariable('psi', 'headings', 'angle', 0, 6.3),
  ],
  cite: cite('hoerner-1965', 'cross-flow principle; closed form derived here', 'derived'),
  of: worst,
});

export const totalShear = defineFormula({
  id: 'total-shear',
  title:
    'Shear: what is alike from all sides, what turns, what faces its own way, the tower itself, pull of wires, weight',
  symbol: 'V_dem',
  unit: 'force',
  expression: 'V_still + V_turn + V_fixed + V_own + V_pull + V_lean + V_tor',
  variables: [
    force('V_still', 'alike from all sides'),
    force('V_turn', 'turning things at their worst'),
    force('V_fixed', 'fixed things at their worst'),
    force('V_own', 'the tower itself'),
    force('V_pull', 'pull of wires'),
    force('V_lean', 'weight off the axis, where the mast hands over a couple'),
    force('V_tor', 'torsion, as force in the braces'),
  ],
  cite: cite('derived', 'with rotation free the maxima add', 'derived'),
  of: (
    still: number,
    turning: number,
    fixed: number,
    own: number,
    pull: number,
    eccentricWeight: number,
    torsion: number,
  ) => still + turning + fixed + own + pull + eccentricWeight + torsion,
});

export const totalMoment = defineFormula({
  id: 'total-moment',
  title:
    'Moment: what is alike from all sides, what turns, what faces its own way, the tower itself, pull of wires, weight',
  symbol: 'M_dem',
  unit: 'moment',
  expression: 'M_still + M_turn + M_fixed + M_own + M_pull + M_weight',
  variables: [
    moment('M_still', 'alike from all sides'),
    moment('M_turn', 'turning things at their worst'),
    moment('M_fixed', 'fixed things at their worst'),
    moment('M_own', 'the tower itself'),
    moment('M_pull', 'pull of wires'),
    moment('M_weight', 'weight aloft, as moment'),
  ],
  cite: cite('derived', 'with rotation free the maxima add', 'derived'),
  of: (still: number, turning: number, fixed: number, own: number, pull: number, weight: number) =>
    still + turning + fixed + own + pull + weight,
});

export const windRatio = defineFormula({
  id: 'wind-ratio',
  title: 'Ratio of a tower whose own drag is unknown: site wind over rated wind, largest over height',
  symbol: 'k',
  unit: 'one',
  expression: 'k_C * f_site / f_r',
  variables: [
    variable(
      'k_C',
      'rise of the coefficient, where the rated wind is the faster: largest over tubes it may have',
      'one',
      1,
      3,
    ),
    variable('f_site', "the site's force on a unit of area", 'pressure', 10, 8000),
    variable('f_r', 'the rated force on a unit of area', 'pressure', 10, 8000),
  ],
  cite: cite('derived', 'proof envelope: the same tower on both sides', 'derived'),
  of: (rise: number, site: number, rated: number) => (rise * site) / rated,
});

export const ratioOfShear = defineFormula({
  id: 'use-of-shear',
  title: 'Ratio: demand over capacity',
  symbol: 'u',
  unit: 'one',
  expression: 'V_dem / V_cap',
  variables: [force('V_dem', 'demand'), variable('V_cap', 'capacity', 'force', 1, 1e5)],
  cite: cite('derived', 'definition', 'derived'),
  of: (demand: number, capacity: number) => demand / capacity,
});

export const ratioOfMoment = defineFormula({
  id: 'use-of-moment',
  title: 'Ratio: demand over capacity',
  symbol: 'u',
  unit: 'one',
  expression: 'M_dem / M_cap',
  variables: [moment('M_dem', 'demand'), variable('M_cap', 'capacity', 'moment', 1, 1e6)],
  cite: cite('derived', 'definition', 'derived'),
  of: (demand: number, capacity: number) => demand / capacity,
});

export const marginOfRatio = defineFormula({
  id: 'margin',
  title: 'Margin',
  symbol: 'm',
  unit: 'one',
  expression: '1 - u',
  variables: [variable('u', 'use', 'one', 0, 10)],
  cite: cite('derived', 'definition', 'derived'),
  of: (ratio: number) => 1 - ratio,
});

export const designHoldsTo = defineFormula({
  id: 'holds-to-design',
  title: "Speed in the method's basis at which the ratio is 1, the dead load kept, coefficients constant",
  symbol: 'V_hold',
  unit: 'speed',
  expression: 'V * sqrt((1 - u_0) / u_w)',
  variables: [
    variable('V', 'design speed', 'speed', 5, 180),
    variable('u_0', 'ratio without wind', 'one', 0, 0.9),
    variable('u_w', 'ratio from the wind', 'one', 0.01, 10),
  ],
  cite: cite('derived', 'force grows with the square of the speed', 'derived'),
  of: (V: number, dead: number, wind: number) => V * Math.sqrt((1 - dead) / wind),
});

export const actualSpeedHoldsTo = defineFormula({
  id: 'holds-to-actual',
  title: "The method's speed whose full force, no direction or importance factor, no level, equals the same capacity",
  symbol: 'V_act',
  unit: 'speed',
  expression: 'V_hold * sqrt(lambda * K_d * I)',
  variables: [
    variable('V_hold', 'design speed at ratio 1', 'speed', 5, 180),
    level,
    variable('K_d', 'direction factor', 'one', 0.85, 1),
    variable('I', 'importance', 'one', 0.87, 1.15),
  ],
  cite: cite('derived', 'a storm that has come spares no direction', 'derived'),
  of: (V: number, lambda: number, Kd: number, I: number) => V * Math.sqrt(lambda * Kd * I),
});

const wantedMargin = variable('m_w', 'margin wanted', 'one', 0, 0.9);
const forcePerUnitArea = variable('f', 'force on a unit of effective area there', 'pressure', 10, 8000);

export const roomByShear = defineFormula({
  id: 'room-left-shear',
  title: 'Effective area, alike from all sides, that can be added there up to the target in shear',
  symbol: 'A_room',
  unit: 'area',
  expression: '((1 - m_w) * V_cap - V_dem) / (f * a)',
  variables: [
    wantedMargin,
    force('V_cap', 'capacity'),
    force('V_dem', 'demand'),
    forcePerUnitArea,
    variable('a', 'share handed on', 'one', 0.1, 5),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (margin: number, capacity: number, demand: number, perArea: number, share: number) =>
    ((1 - margin) * capacity - demand) / (perArea * share),
});

export const roomByMoment = defineFormula({
  id: 'room-left-moment',
  title: 'Effective area, alike from all sides, that can be added there up to the target in moment',
  symbol: 'A_room',
  unit: 'area',
  expression: '((1 - m_w) * M_cap - M_dem) / (f * a)',
  variables: [
    wantedMargin,
    moment('M_cap', 'capacity'),
    moment('M_dem', 'demand'),
    forcePerUnitArea,
    variable('a', 'arm', 'length', 0.1, 100),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (margin: number, capacity: number, demand: number, perArea: number, arm: number) =>
    ((1 - margin) * capacity - demand) / (perArea * arm),
});

const ownOf = (symbol: string, of: 'force' | 'moment') =>
  variable(symbol, 'capacity by the wind on tower and lines alone', of, -1e5, of === 'force' ? 1e5 : 1e6);

export const requiredAreaByShear = defineFormula({
  id: 'required-area-shear',
  title: 'Effective area that a rating must state to keep the margin in shear',
  symbol: 'A_req',
  unit: 'area',
  expression: '(V_dem / (1 - m_w) - V_own) / (f * a)',
  variables: [
    force('V_dem', 'demand'),
    wantedMargin,
    ownOf('V_own', 'force'),
    forcePerUnitArea,
    variable('a', 'share handed on', 'one', 0.1, 5),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (demand: number, margin: number, own: number, perArea: number, share: number) =>
    (demand / (1 - margin) - own) / (perArea * share),
});

export const requiredAreaByMoment = defineFormula({
  id: 'required-area-moment',
  title: 'Effective area that a rating must state to keep the margin in moment',
  symbol: 'A_req',
  unit: 'area',
  expression: '(M_dem / (1 - m_w) - M_own) / (f * a)',
  variables: [
    moment('M_dem', 'demand'),
    wantedMargin,
    ownOf('M_own', 'moment'),
    forcePerUnitArea,
    variable('a', 'arm', 'length', 0.1, 100),
  ],
  cite: cite('derived', 'proof envelope', 'derived'),
  of: (demand: number, margin: number, own: number, perArea: number, arm: number) =>
    (demand / (1 - margin) - own) / (perArea * arm),
});

export const ratioOfGusts = defineFormula({
  id: 'use-of-gust',
  title: 'Ratio of an antenna: pressure of the wind at its height over that of its rated wind',
  symbol: 'u',
  unit: 'one',
  expression: '(v_a / v_r)^2',
  variables: [
    variable('v_a', 'gust at its height', 'speed', 0, 200),
    variable('v_r', 'gust it is rated for', 'speed', 10, 150),
  ],
  cite: cite('derived', 'forces go with the square of the speed', 'derived'),
  of: (gust: number, rated: number) => (gust / rated) ** 2,
});

export const speedByForce = defineFormula({
  id: 'speed-by-force',
  title: 'Speed at so many times the force, its coefficients kept',
  symbol: 'V',
  unit: 'speed',
  expression: 'V_0 * sqrt(k_w)',
  variables: [
    variable('V_0', 'speed of the forces', 'speed', 0.5, 100),
    variable('k_w', 'factor on the forces', 'one', 0, 1e5),
  ],
  cite: cite('derived', 'forces go with the square of the speed', 'derived'),
  of: (speed: number, factor: number) => speed * Math.sqrt(factor),
});

export const lowerAtGust = defineFormula({
  id: 'lower-at',
  title: 'Forecast gust at which to lower: the gust at the target, less the forecast error',
  symbol: 'v_low',
  unit: 'speed',
  expression: 'v_m * (1 - a)',
  variables: [
    variable('v_m', 'gust at which the weakest check reaches the target', 'speed', 1, 150),
    variable('a', 'allowance for the error of a forecast', 'one', 0, 0.9),
  ],
  cite: cite('common-practice', 'a forecast errs by about a tenth', 'common-practice'),
  of: (gust: number, allowance: number) => gust * (1 - allowance),
});
