import { cite, defineFormula, evaluate, type Trace, variable } from '../foundation/index.ts';
import { aspectOf, type FlatFace } from './flat-member.ts';
import { constantCoefficient, type ForceCoefficient, type Role } from './force-coefficient.ts';
import type { PoleShape } from './shape.ts';

/** Kinematic viscosity of air [m²/s], EN 1991-1-4 7.9.1. @source en1991-1-4 */
export const AIR_VISCOSITY_EN = 15e-6;

/**
 * Equivalent surface roughness [m], EN 1991-1-4 Table 7.13: galvanised in a demand, polished in a capacity, where less
 * drag credits less. @source en1991-1-4
 */
export const SURFACE_ROUGHNESS: Readonly<Record<Role, number>> = { demand: 0.2e-3, capacity: 0.002e-3 };

/** Lengths between which the slenderness of a cylinder falls from l/b to 0.7·l/b [m], Table 7.16. @source en1991-1-4 */
const SHORT_CYLINDER = 15;
const LONG_CYLINDER = 50;

const slendernessExpression = (factor: string) =>
  `min(70, ${factor} * l / b * (1 - 0.3 * min(max((l - l_1) / (l_2 - l_1), 0), 1)))`;
const lengths = [
  variable('l', 'length of the whole member', 'length', 0.05, 100),
  variable('b', 'its width', 'diameter', 0.002, 2),
  variable('l_1', 'length up to which the first factor holds, 15 m', 'length', SHORT_CYLINDER, SHORT_CYLINDER),
  variable('l_2', 'length from which the last factor holds, 50 m', 'length', LONG_CYLINDER, LONG_CYLINDER),
];
const slendernessBy = (factor: number) => (l: number, b: number, short: number, long: number) =>
  Math.min(70, ((factor * l) / b) * (1 - 0.3 * Math.min(Math.max((l - short) / (long - short), 0), 1)));

export const cylinderSlenderness = defineFormula({
  id: 'lambda-cylinder-en1991',
  title: 'Slenderness of a cylinder: l/b up to 15 m, 0.7·l/b from 50 m, at most 70',
  symbol: 'lambda_s',
  unit: 'one',
  expression: slendernessExpression('1'),
  variables: lengths,
  cite: cite('en1991-1-4', '7.13, Table 7.16, circular cylinders', 'second-hand'),
  of: slendernessBy(1),
});

export const polygonSlenderness = defineFormula({
  id: 'lambda-polygon-en1991',
  title: 'Slenderness of a many-sided member: 2·l/b up to 15 m, 1.4·l/b from 50 m, at most 70',
  symbol: 'lambda_s',
  unit: 'one',
  expression: slendernessExpression('2'),
  variables: lengths,
  cite: cite('en1991-1-4', '7.13, Table 7.16, polygonal sections', 'memory'),
  of: slendernessBy(2),
});

export const endEffectFactor = defineFormula({
  id: 'psi-en1991',
  title: 'End-effect factor: 0.60, 0.698, 0.918, 1.00 at slenderness 1, 10, 70, 200, straight in its logarithm between',
  symbol: 'psi',
  unit: 'one',
  expression:
    '0.6 + 0.098 * log10(min(max(lambda_s, 1), 10)) + 0.22 * log10(min(max(lambda_s, 10), 70) / 10) / log10(7) + 0.082 * log10(min(max(lambda_s, 70), 200) / 70) / log10(20 / 7)',
  variables: [variable('lambda_s', 'slenderness of the whole member', 'one', 0.5, 400)],
  cite: cite('en1991-1-4', '7.13, Fig. 7.36, solid member, digitised', 'second-hand'),
  of: (slenderness: number) =>
    0.6 +
    0.098 * Math.log10(Math.min(Math.max(slenderness, 1), 10)) +
    (0.22 * Math.log10(Math.min(Math.max(slenderness, 10), 70) / 10)) / Math.log10(7) +
    (0.082 * Math.log10(Math.min(Math.max(slenderness, 70), 200) / 70)) / Math.log10(20 / 7),
});

export const reynoldsNumber = defineFormula({
  id: 're-en1991',
  title: 'Reynolds number at the peak wind',
  symbol: 'Re',
  unit: 'one',
  expression: 'vb / nu',
  variables: [
    variable('vb', 'peak wind √(2·q_p/ρ) times diameter', 'flow-number', 0.01, 200),
    variable('nu', 'kinematic viscosity of air', 'flow-number', 15e-6, 15e-6),
  ],
  cite: cite('en1991-1-4', '7.9.1, Eq. (7.15)', 'second-hand'),
  of: (flow: number, viscosity: number) => flow / viscosity,
});

export const flowMeasureEn = defineFormula({
  id: 'flow-measure-en1991',
  title: 'Peak wind times diameter, EN 1991-1-4',
  symbol: 'vb',
  unit: 'flow-number',
  expression: 'b * sqrt(2 * q_p / rho)',
  variables: [
    variable('b', 'diameter', 'diameter', 0.001, 2),
    variable('q_p', 'peak velocity pressure', 'pressure', 0, 8000),
    variable('rho', 'density of air', 'density', 1.25, 1.25),
  ],
  cite: cite('en1991-1-4', '7.9.1, Fig. 7.28 note', 'second-hand'),
  of: (b: number, qp: number, rho: number) => b * Math.sqrt((2 * qp) / rho),
});

export const cylinderCoefficient = defineFormula({
  id: 'cf0-cylinder-en1991',
  title: 'Force coefficient of a circular cylinder without end effect, EN 1991-1-4',
  symbol: 'c_f0',
  unit: 'one',
  expression: 'min(1.2, max(0.11 / (Re / 1e6)^1.4, 1.2 + 0.18 * log10(10 * k / b) / (1 + 0.4 * log10(Re / 1e6))))',
  variables: [
    variable('Re', 'Reynolds number', 'one', 1e4, 1e7),
    variable('k', 'roughness of the surface', 'diameter', 0.002e-3, 2e-3),
    variable('b', 'diameter', 'diameter', 0.002, 2),
  ],
  cite: cite('en1991-1-4', '7.9.2, Fig. 7.28', 'memory'),
  of: (Re: number, k: number, b: number) =>
    Math.min(
      1.2,
      Math.max(0.11 / (Re / 1e6) ** 1.4, 1.2 + (0.18 * Math.log10((10 * k) / b)) / (1 + 0.4 * Math.log10(Re / 1e6))),
    ),
});

export const coefficientWithEnds = defineFormula({
  id: 'cf-with-ends-en1991',
  title: 'Force coefficient with end effect, EN 1991-1-4',
  symbol: 'c_f',
  unit: 'one',
  expression: 'c_f0 * psi',
  variables: [
    variable('c_f0', 'without end effect', 'one', 0.4, 2),
    variable('psi', 'end-effect factor', 'one', 0.6, 1),
  ],
  cite: cite('en1991-1-4', '7.6 to 7.9, Eqs. (7.9), (7.11), (7.13), (7.19)', 'memory'),
  of: (bare: number, ends: number) => bare * ends,
});

export const flatFormulaEn = defineFormula({
  id: 'cf-flat-en1991',
  title: 'Force coefficient of a flat, EN 1991-1-4: a sharp-edged member with end effect, not below a board',
  symbol: 'c_f',
  unit: 'one',
  expression: 'max(1.8, 2.0 * psi)',
  variables: [variable('psi', 'end-effect factor', 'one', 0.6, 1)],
  cite: cite('en1991-1-4', '7.4.3 boards, 7.7 sharp-edged members, joined here', 'memory'),
  of: (ends: number) => Math.max(1.8, 2 * ends),
});

/** Coefficient of a cylinder in slow wind. @source en1991-1-4 */
export const CYLINDER_SLOW = 1.2;

/** Flow measure at which 0.11/(Re/10⁶)^1.4 falls below 1.2 [m²/s]. */
const SLOW_UP_TO = (0.11 / CYLINDER_SLOW) ** (1 / 1.4) * 1e6 * AIR_VISCOSITY_EN;

function endsOf(rule: typeof cylinderSlenderness, aspect: number, width: number, trace: Trace | undefined): number {
  const slenderness = evaluate(trace, rule, [aspect * width, width, SHORT_CYLINDER, LONG_CYLINDER]);
  return evaluate(trace, endEffectFactor, [slenderness]);
}

/**
 * Coefficient of a round member by EN 1991-1-4: by Reynolds number, roughness and slenderness.
 *
 * c_f = min(1.2, max(0.11/(Re/10⁶)^1.4, 1.2 + 0.18·lg(10k/b)/(1 + 0.4·lg(Re/10⁶))))·ψ
 *
 * @param aspect length over diameter of the whole member [-]
 * @param diameter its diameter [m], above 0
 * @param role demand: galvanised; capacity: polished, and its slenderness no more than 70
 * @returns the coefficient, by peak wind times diameter
 * @example roundCoefficientEn(200, 0.05, 'demand').slow // 1.1016
 * @source en1991-1-4
 */
export function roundCoefficientEn(aspect: number, diameter: number, role: Role): ForceCoefficient {
  const k = SURFACE_ROUGHNESS[role];
  const ends = endsOf(cylinderSlenderness, aspect, diameter, undefined);
  const smooth = 10 * k < diameter;
  return {
    slow: CYLINDER_SLOW * ends,
    limit: smooth ? SLOW_UP_TO : Number.POSITIVE_INFINITY,
    at: (flow, trace) => {
      if (!trace) {
        const bare = flow > 0 ? cylinderCoefficient.of(flow / AIR_VISCOSITY_EN, k, diameter) : CYLINDER_SLOW;
        return bare * ends;
      }
      const bare =
        flow > 0
          ? evaluate(trace, cylinderCoefficient, [
              evaluate(trace, reynoldsNumber, [flow, AIR_VISCOSITY_EN]),
              k,
              diameter,
            ])
          : CYLINDER_SLOW;
      return evaluate(trace, coefficientWithEnds, [bare, endsOf(cylinderSlenderness, aspect, diameter, trace)]);
    },
  };
}

/**
 * Coefficient of a flat member by EN 1991-1-4.
 *
 * c_f = max(1.8, 2.0·ψ)
 *
 * @param face its two sizes [m]
 * @example flatCoefficientEn({ wide: 0.1, tall: 20 }).slow // 2
 * @source en1991-1-4
 */
export function flatCoefficientEn(face: FlatFace): ForceCoefficient {
  const compute = (trace?: Trace) =>
    evaluate(trace, flatFormulaEn, [evaluate(trace, endEffectFactor, [aspectOf(face)])]);
  return constantCoefficient(compute(), compute);
}

/**
 * Many-sided poles, EN 1991-1-4 Table 7.11: the largest and the least value of each row. Poles of 16 and 18 sides count
 * in a demand as cylinders in slow wind. @source en1991-1-4
 */
export const POLYGON_EN: Readonly<Record<8 | 12 | 16 | 18, Readonly<Record<Role, number>>>> = {
  8: { demand: 1.45, capacity: 1.3 },
  12: { demand: 1.3, capacity: 0.9 },
  16: { demand: 1.2, capacity: 0.7 },
  18: { demand: 1.2, capacity: 0.7 },
};

/**
 * Coefficient of a pole by EN 1991-1-4: a round one as a cylinder, a many-sided one by its number of sides.
 *
 * c_f = c_f0·ψ; of many sides a demand takes the slenderness of polygons, a capacity the lower one of cylinders
 *
 * @param sides 0 is round
 * @param aspect height over width of the whole pole [-]
 * @param width its width here [m], above 0
 * @returns the coefficient, by peak wind times diameter
 * @example poleCoefficientEn(8, 200, 0.3, 'demand').slow // 1.3311
 * @source en1991-1-4
 */
export function poleCoefficientEn(
  sides: PoleShape['sides'],
  aspect: number,
  width: number,
  role: Role,
): ForceCoefficient {
  if (sides === 0) return roundCoefficientEn(aspect, width, role);
  const bare = POLYGON_EN[sides][role];
  const rule = role === 'demand' ? polygonSlenderness : cylinderSlenderness;
  const compute = (trace?: Trace) => evaluate(trace, coefficientWithEnds, [bare, endsOf(rule, aspect, width, trace)]);
  return constantCoefficient(compute(), compute);
}
