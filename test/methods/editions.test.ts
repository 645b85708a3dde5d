import { describe, expect, it } from 'vitest';
import type { DragRule, Role, WindDirection } from '../../src/areas/index.ts';
import { METHOD_BY_ID, METHODS, type Method, type MethodId, type WindConditions } from '../../src/methods/index.ts';
import { type Exposure, type Hill, iceThickness } from '../../src/wind/index.ts';

/*
 * No constant of one edition in another: every table of every edition, typed once more, edition by edition, and asked for at
 * heights, flows and sizes at which another edition's would show. Clauses beside each table; what is marked from memory in the
 * product is from memory here.
 */
const FOOT = 0.3048;
const MPH = 0.44704;
const PSF = (0.45359237 * 9.80665) / FOOT ** 2;
const MPH_FOOT = MPH * FOOT;
const SPEED = 90 * MPH;
const EXPOSURES: readonly Exposure[] = ['B', 'C', 'D'];
const CLASSES = ['I', 'II', 'III', 'IV'] as const;

const LATTICE = { kind: 'lattice', sides: 0, guyed: false, height: 60 * FOOT, width: 0.4 } as const;
const POLE = { ...LATTICE, kind: 'pole' } as const;
const OPEN: WindConditions = {
  units: 'us',
  speed: SPEED,
  speedLevel: 'own',
  actual: false,
  exposure: 'C',
  riskCategory: 'III',
  groundElevation: 0,
  windStructure: LATTICE,
};
const HIGH = 5280 * FOOT;
const RIDGE: Hill = { shape: 'ridge', height: 30, halfLength: 60, distance: 0, side: 'upwind', isolated: false };

type Own = Readonly<Record<MethodId, readonly number[]>>;
interface Table {
  readonly name: string;
  readonly clause: string;
  readonly ask: (method: Method) => readonly number[];
  readonly own: Own;
}

const asked = (method: Method, changed: Partial<WindConditions> = {}) => method.wind({ ...OPEN, ...changed });
const coefficient = (method: Method, rule: DragRule, flow: number, direction: WindDirection, role: Role) =>
  asked(method, { speed: 40 }).forceCoefficient(rule, role, direction).byFlow.at(flow);

// ---- height and ground -----------------------------------------------------------------------------------------

const FEET = [5, 20, 33, 150, 450, 2000, 4000];
type Law = readonly [most: number, gradient: number, alpha: number];
const TO_7_16: Readonly<Record<string, Law>> = {
  B: [2.01, 1200, 7],
  C: [2.01, 900, 9.5],
  D: [2.01, 700, 11.5],
};
const OF_7_22: Readonly<Record<string, Law>> = {
  B: [2.41, 3280, 7.5],
  C: [2.41, 2460, 9.8],
  D: [2.41, 1935, 11.5],
};
const TIA_FLOOR: Readonly<Record<string, number>> = { B: 0.7, C: 0.85, D: 1.03 };
const byAsce = (laws: typeof TO_7_16) => (exposure: string, feet: number) => {
  const [most, gradient, alpha] = laws[exposure] as Law;
  return most * (Math.min(Math.max(feet, 15), gradient) / gradient) ** (2 / alpha);
};
const byTia = (exposure: string, feet: number) => {
  const [most, gradient, alpha] = TO_7_16[exposure] as Law;
  return Math.min(most, Math.max(TIA_FLOOR[exposure] as number, most * (feet / gradient) ** (2 / alpha)));
};
const byF = (_: string, feet: number) => Math.min(2.58, Math.max(1, (feet / 33) ** (2 / 7)));
const TERRAIN: Readonly<Record<string, readonly [z0: number, least: number]>> = {
  '0': [0.003, 1],
  I: [0.01, 1],
  II: [0.05, 2],
  III: [0.3, 5],
  IV: [1, 10],
};
const byEn = (terrain: string, feet: number) => {
  const [z0, least] = TERRAIN[terrain] as readonly [number, number];
  const log = Math.log(Math.max(feet * FOOT, least) / z0);
  return (1 + 7 / log) * (0.19 * (z0 / 0.05) ** 0.07 * log) ** 2;
};
/** B is nearest to terrain III, C to II, D to I. */
const EN_GROUND: Readonly<Record<string, string>> = { B: 'III', C: 'II', D: 'I' };
const byExposure = (law: (exposure: string, feet: number) => number) =>
  EXPOSURES.flatMap((exposure) => FEET.map((feet) => law(exposure, feet)));

const HEIGHT_LAW: Own = {
  'asce7-10': byExposure(byAsce(TO_7_16)),
  'asce7-16': byExposure(byAsce(TO_7_16)),
  'asce7-22': byExposure(byAsce(OF_7_22)),
  'tia222-g': byExposure(byTia),
  'tia222-h': byExposure(byTia),
  'eia222-f': byExposure(byF),
  'en1991-1-4': byExposure((exposure, feet) => byEn(EN_GROUND[exposure] as string, feet)),
  'rs222-c': byExposure(() => 1),
};
const KZ_AT_33: Readonly<Record<MethodId, number>> = {
  'asce7-10': byAsce(TO_7_16)('C', 33),
  'asce7-16': byAsce(TO_7_16)('C', 33),
  'asce7-22': byAsce(OF_7_22)('C', 33),
  'tia222-g': byTia('C', 33),
  'tia222-h': byTia('C', 33),
  'eia222-f': 1,
  'en1991-1-4': byEn('II', 33),
  'rs222-c': 1,
};

// ---- sway ------------------------------------------------------------------------------------------------------

/** b, a, c, l, epsilon, least height. */
type Gust = readonly [number, number, number, number, number, number];
const GUST_TO_7_16: Readonly<Record<string, Gust>> = {
  B: [0.45, 1 / 4, 0.3, 320, 1 / 3, 30],
  C: [0.65, 1 / 6.5, 0.2, 500, 1 / 5, 15],
  D: [0.8, 1 / 9, 0.15, 650, 1 / 8, 7],
};
const GUST_7_22: Readonly<Record<string, Gust>> = {
  B: [0.47, 1 / 4.5, 0.3, 320, 1 / 3, 30],
  C: [0.66, 1 / 6.4, 0.2, 500, 1 / 5, 15],
  D: [0.78, 1 / 8, 0.15, 650, 1 / 8, 7],
};
const SWAY = { frequency: 0.7, damping: 0.015 };

/** 26.11.5, in ft and ft/s, of a structure that is as deep as wide. */
function flexible([b, a, c, l, epsilon, least]: Gust, height: number): number {
  const width = 0.4 / FOOT;
  const z = Math.max(0.6 * height, least);
  const turbulence = c * (33 / z) ** (1 / 6);
  const scale = l * (z / 33) ** epsilon;
  const background = 1 / (1 + 0.63 * ((width + height) / scale) ** 0.63);
  const mean = b * (z / 33) ** a * (88 / 60) * 90;
  const reduced = (SWAY.frequency * scale) / mean;
  const along = (eta: number) => 1 / eta - (1 - Math.exp(-2 * eta)) / (2 * eta ** 2);
  const resonance =
    (((7.47 * reduced) / (1 + 10.3 * reduced) ** (5 / 3)) *
      along((4.6 * SWAY.frequency * height) / mean) *
      along((4.6 * SWAY.frequency * width) / mean) *
      (0.53 + 0.47 * along((15.4 * SWAY.frequency * width) / mean))) /
    SWAY.damping;
  const root = Math.sqrt(2 * Math.log(3600 * SWAY.frequency));
  const peaks = 3.4 ** 2 * background + (root + 0.577 / root) ** 2 * resonance;
  return (0.925 * (1 + 1.7 * turbulence * Math.sqrt(peaks))) / (1 + 1.7 * 3.4 * turbulence);
}
const SWAYING_FEET = [15, 60, 120];
const flexibly = (constants: typeof GUST_7_22) =>
  EXPOSURES.flatMap((exposure) =>
    SWAYING_FEET.map((feet) => Math.max(0.85, flexible(constants[exposure] as Gust, feet))),
  );
const unmoved = (value: number) => Array.from({ length: EXPOSURES.length * SWAYING_FEET.length }, () => value);
/** Of F by 0.65 + 0.60/(h/33)^(1/7), 1.00 to 1.25. */
const gustF = (feet: number) => Math.min(1.25, Math.max(1, 0.65 + 0.6 / (feet / 33) ** (1 / 7)));

// ---- hills -----------------------------------------------------------------------------------------------------

const SHAPES = ['ridge', 'escarpment', 'round-hill'] as const;
const SIDES = ['upwind', 'downwind'] as const;
const HILL = { height: 30, halfLength: 100, distance: 50, isolated: true } as const;
const HILL_FEET = [0, 30, 90];
const byHill = (factor: (shape: (typeof SHAPES)[number], side: string, exposure: string, z: number) => number) =>
  SHAPES.flatMap((shape) =>
    SIDES.flatMap((side) =>
      EXPOSURES.flatMap((exposure) => HILL_FEET.map((feet) => factor(shape, side, exposure, feet * FOOT))),
    ),
  );
const ASCE_HILL = {
  ridge: { k: { B: 1.3, C: 1.45, D: 1.55 }, gamma: 3, lee: 1.5 },
  escarpment: { k: { B: 0.75, C: 0.85, D: 0.95 }, gamma: 2.5, lee: 4 },
  'round-hill': { k: { B: 0.95, C: 1.05, D: 1.15 }, gamma: 4, lee: 1.5 },
} as const;
const TIA_HILL = { ridge: [0.72, 1.5], escarpment: [0.43, 1.25], 'round-hill': [0.53, 2] } as const;
const hillAsce = byHill((shape, side, exposure, z) => {
  const { k, gamma, lee } = ASCE_HILL[shape];
  const mu = side === 'upwind' ? 1.5 : lee;
  const byLength = 1 - HILL.distance / (mu * HILL.halfLength);
  const byShape = k[exposure as Exposure] * (HILL.height / HILL.halfLength);
  return (1 + byShape * byLength * Math.exp((-gamma * z) / HILL.halfLength)) ** 2;
});
const hillTia = byHill((shape, _, exposure, z) => {
  const [kt, f] = TIA_HILL[shape];
  return (1 + ({ B: 0.9, C: 1, D: 1.1 }[exposure as Exposure] * kt) / Math.exp((f * z) / HILL.height)) ** 2;
});
/** A.3 with a slope of 0.15 and x/L of 0.25; behind an edge by (A.7) to (A.10). */
const hillEn = byHill((shape, side, exposure, z) => {
  const run = 2 * HILL.halfLength;
  const r = z / run;
  const x = HILL.distance / run;
  const top = 0.1552 * r ** 4 - 0.8575 * r ** 3 + 1.8133 * r ** 2 - 1.9115 * r + 1.0124;
  let s = top * Math.exp(-(0.3542 * r ** 2 - 1.0577 * r + 2.6456) * x);
  if (side === 'downwind') {
    const m = Math.log10(x);
    const l = Math.log10(Math.max(r, 0.1));
    s =
      shape === 'escarpment'
        ? (-1.342 * l ** 3 - 0.8222 * l ** 2 + 0.4609 * l - 0.0791) * m ** 2 +
          (-1.0196 * l ** 3 - 0.891 * l ** 2 + 0.5343 * l - 0.1156) * m +
          0.803 * l ** 3 +
          0.4236 * l ** 2 -
          0.5738 * l +
          0.1606
        : top * Math.exp((-0.3056 * r ** 2 + 1.0212 * r - 1.7637) * x);
  }
  const at = (location: number) => 1 + 2 * location * (HILL.height / run);
  const [z0, least] = TERRAIN[EN_GROUND[exposure] as string] as readonly [number, number];
  if (z < least) return Number.NaN;
  const turbulence = 7 / Math.log(z / z0);
  return (at(s) ** 2 * (1 + turbulence / at(s))) / (1 + turbulence);
});

// ---- drag ------------------------------------------------------------------------------------------------------

const straight = (points: readonly (readonly [number, number])[], x: number): number => {
  const after = points.findIndex(([at]) => x <= at);
  if (after === 0) return (points[0] as readonly [number, number])[1];
  if (after < 0) return (points.at(-1) as readonly [number, number])[1];
  const [[x0, y0], [x1, y1]] = [points[after - 1], points[after]] as [
    readonly [number, number],
    readonly [number, number],
  ];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
};
const ASPECTS = [2, 5, 7, 15, 25, 60];
/** C in mph·ft: slow by G, slow by H only, between by both, fast by G only, fast by both. */
const FLOWS = [20, 36, 50, 70, 90];
const WIDTH = 0.1;
const byAspect = (at: (aspect: number, flow: number) => number) =>
  FLOWS.flatMap((flow) => ASPECTS.map((aspect) => at(aspect, flow)));
const three = ([first, second, third]: readonly [number, number, number], aspect: number, from = 2.5) =>
  straight(
    [
      [from, first],
      [7, second],
      [25, third],
    ],
    aspect,
  );
const roundTia = (slow: number, [a, b, c]: readonly [number, number, number]) =>
  byAspect((aspect, flow) => {
    if (flow < slow) return three([0.7, 0.8, 1.2], aspect);
    if (flow > 2 * slow) return three([0.5, 0.6, 0.6], aspect);
    return three([a / flow ** 0.485, b / flow ** 0.415, c / flow], aspect);
  });
/** In capacity, where the step is taken: D√q over 2.5 ft·√psf, which is 5.273 m·√Pa and lies between the first and second. */
const roundAsce = byAspect((aspect, flow) =>
  flow * MPH_FOOT <= 2.5 * FOOT * Math.sqrt(PSF)
    ? three([0.7, 0.8, 1.2], aspect, 1)
    : three([0.5, 0.6, 0.7], aspect, 1),
);
const endsEn = (slenderness: number) =>
  straight(
    [
      [0, 0.6],
      [1, 0.698],
      [Math.log10(70), 0.918],
      [Math.log10(200), 1],
    ],
    Math.log10(Math.min(slenderness, 70)),
  );
const cylinderEn = (flow: number, roughness: number) => {
  const reynolds = (flow * MPH_FOOT) / 15e-6 / 1e6;
  const fast = 1.2 + (0.18 * Math.log10((10 * roughness) / WIDTH)) / (1 + 0.4 * Math.log10(reynolds));
  return Math.min(1.2, Math.max(0.11 / reynolds ** 1.4, fast));
};
const roundEn = byAspect((aspect, flow) => cylinderEn(flow, 0.000002) * endsEn(aspect));

const SIDES_OF_POLES = [0, 8, 12, 16, 18] as const;
const POLE_ASPECT = 40;
const bySides = (at: (sides: (typeof SIDES_OF_POLES)[number], flow: number) => number) =>
  SIDES_OF_POLES.flatMap((sides) => FLOWS.map((flow) => at(sides, flow)));
const poleTia = (slow: number) =>
  bySides((sides, flow) => {
    const c = (flow * 32) / slow;
    if (c < 32) return 1.2;
    if (c > 64) return { 0: 0.6, 8: 1.2, 12: 1, 16: 0.75, 18: 0.65 }[sides];
    return { 0: 38.4 / c, 8: 1.2, 12: 2.99 / c ** 0.263, 16: 12.6 / c ** 0.678, 18: 25.8 / c ** 0.885 }[sides];
  });
const poleAsce = bySides((sides, flow) =>
  sides === 8 ? 1.4 : flow * MPH_FOOT <= 2.5 * FOOT * Math.sqrt(PSF) ? 1.2 : 0.7,
);
const poleF = bySides((sides, flow) => {
  const row = flow < 32 ? 1.2 : flow > 64 ? 0.59 : 130 / flow ** 1.3;
  return sides === 0 ? row : Math.min(1.2, row);
});
/** Sides by Table 7.11, the least of each row; ends as of a cylinder. */
const poleEn = bySides((sides, flow) => {
  const bare = sides === 0 ? cylinderEn(flow, 0.000002) : { 8: 1.3, 12: 0.9, 16: 0.7, 18: 0.7 }[sides];
  return bare * endsEn(POLE_ASPECT);
});

/** Wide and tall [m]. */
const FACES = [
  [1, 1],
  [1, 2],
  [1, 6],
  [1, 12],
  [1, 20],
  [1, 40],
  [5, 1],
  [30, 1],
] as const;
const byFace = (at: (wide: number, tall: number) => number) => FACES.map(([wide, tall]) => at(wide, tall));
const aspectOf = (wide: number, tall: number) => Math.max(wide, tall) / Math.min(wide, tall);
/** Row s/h ≤ 0.16 of solid signs, beside 1.80 to 2.00 over aspects 7 to 25. */
const flatAsce = byFace((wide, tall) => {
  const row = straight(
    [
      [0.05, 1.95],
      [0.1, 1.9],
      [0.2, 1.85],
      [0.5, 1.85],
      [1, 1.8],
      [2, 1.8],
      [4, 1.85],
      [10, 1.85],
      [20, 1.9],
      [30, 1.9],
      [45, 1.95],
    ],
    wide / tall,
  );
  return Math.max(
    row,
    straight(
      [
        [7, 1.8],
        [25, 2],
      ],
      aspectOf(wide, tall),
    ),
  );
});
const flatTia = byFace((wide, tall) => three([1.2, 1.4, 2], aspectOf(wide, tall)));
const flatF = byFace((wide, tall) =>
  straight(
    [
      [7, 1.4],
      [25, 2],
    ],
    aspectOf(wide, tall),
  ),
);
const flatEn = byFace((wide, tall) => Math.max(1.8, 2 * endsEn(aspectOf(wide, tall))));

interface Front {
  readonly faces: 3 | 4;
  readonly e: number;
  readonly round: number;
  readonly flow: number;
  readonly corner: boolean;
}
const FRONTS: readonly Front[] = ([3, 4] as const).flatMap((faces) =>
  [0.15, 0.45].flatMap((e) =>
    [0, 1].flatMap((round) =>
      FLOWS.flatMap((flow) => [false, true].map((corner) => ({ faces, e, round, flow, corner }))),
    ),
  ),
);
const front = ({ faces, e }: Front) => (faces === 4 ? 4 * e ** 2 - 5.9 * e + 4 : 3.4 * e ** 2 - 4.7 * e + 3.4);
const diagonal = ({ faces, e, corner }: Front) => (corner && faces === 4 ? Math.min(1.2, 1 + 0.75 * e) : 1);
const flatCorner = ({ faces, round, corner }: Front) => (corner && faces === 3 && round === 0 ? 0.8 : 1);
const older = ({ e, round }: Front) => (round ? 0.51 * e ** 2 + 0.57 : 1);
const latticeTia = (slow: number) =>
  FRONTS.map((each) => {
    const { e, flow, round } = each;
    const still = 0.57 - 0.14 * e + 0.86 * e ** 2 - 0.24 * e ** 3;
    const fast = 0.36 + 0.26 * e + 0.97 * e ** 2 - 0.63 * e ** 3;
    const rounds = straight(
      [
        [slow, still],
        [2 * slow, fast],
      ],
      flow,
    );
    return front(each) * diagonal(each) * flatCorner(each) * (round ? rounds : 1);
  });
const latticeAsce = FRONTS.map((each) => front(each) * diagonal(each) * older(each));
const latticeF = FRONTS.map((each) => front(each) * diagonal(each) * flatCorner(each) * older(each));
/** Annex B of EN 1993-3-1, in demand; rounds stay in slow wind there. */
const latticeEn = FRONTS.map(({ faces, e, round, corner }) => {
  const [c1, c2] = faces === 4 ? [2.25, 1.5] : [1.9, 1.4];
  const face = round ? c1 * (1 - c2 * e) + (c1 + 0.875) * e ** 2 : 1.76 * c1 * (1 - c2 * e + e ** 2);
  if (!corner) return face;
  if (faces === 3) return face * (round ? 1 : 0.9);
  return face * (1 + (round ? 0.8 : 0.55) * Math.max(e, 0.2));
});
const latticeC = FRONTS.map(({ faces, round }) => (faces === 4 ? 1.75 : 1.5) * (round ? 2 / 3 : 1));

// ---- the tables ------------------------------------------------------------------------------------------------

/** The same in every edition but some. */
const all = (value: readonly number[], but: Partial<Own> = {}): Own => ({
  ...(Object.fromEntries(METHODS.map((id) => [id, value])) as Own),
  ...but,
});
const ones = (of: readonly unknown[]) => of.map(() => 1);
/** 1 at the highest, where the ice of a map grows. */
const ICE_FEET = [10, 33, 500, 3000];
const iceBy = (mapFactor: number, importance: readonly number[]) =>
  importance.flatMap((each) =>
    ICE_FEET.map((feet) => mapFactor * each * Math.min(1.4, (feet / 33) ** 0.1) * 1.5 ** 0.35),
  );
const asGiven = CLASSES.flatMap(() => ones(ICE_FEET));

const TABLES: readonly Table[] = [
  {
    name: 'height and ground',
    clause: 'ASCE 7-10 29.3, 7-16 and 7-22 26.10; TIA-222-G Table 2-4; F 2.3.3; EN 1991-1-4 4.3, 4.5',
    ask: (method) =>
      EXPOSURES.flatMap((exposure) => FEET.map((feet) => asked(method, { exposure }).exposureCoefficient(feet * FOOT))),
    own: HEIGHT_LAW,
  },
  {
    name: 'the constant of the pressure, class III, over 5280 ft of ground, in both systems',
    clause: 'ASCE 7-10 29.3.2, 7-16 26.10.2, 7-22 26.10.2; TIA-222-G 2.6.9.6, H 2.6.11.6; F 2.3.3; C; EN 1991-1-4 4.5',
    // In units of the speed: c·Kd·Ke·I of V² at 33 ft.
    ask: (method) =>
      (['us', 'si'] as const).map(
        (units) =>
          asked(method, { units, groundElevation: HIGH }).pressure(33 * FOOT) / SPEED ** 2 / KZ_AT_33[method.id],
      ),
    own: (() => {
      const c = [(0.00256 * PSF) / MPH ** 2, 0.613];
      const times = (factor: number) => c.map((each) => each * factor);
      const ke = Math.exp(-0.0000362 * 5280);
      return {
        'asce7-10': times(0.85),
        'asce7-16': times(0.85 * ke),
        'asce7-22': times(ke),
        'tia222-g': times(0.85 * 1.15),
        'tia222-h': times(0.85 * ke),
        'eia222-f': times(1),
        'rs222-c': [(0.004 * PSF) / MPH ** 2, (0.004 * PSF) / MPH ** 2],
        'en1991-1-4': [1.25 / 2, 1.25 / 2],
      };
    })(),
  },
  {
    name: 'direction: of lattices, of poles, and in the force of each',
    clause: 'ASCE 7-10, 7-16, 7-22 Table 26.6-1 (7-22 in the force); TIA-222-G and H Table 2-2',
    ask: (method) =>
      [LATTICE, POLE].flatMap((windStructure) => {
        const { directionFactor, forceDirectionFactor } = asked(method, { windStructure });
        return [directionFactor, forceDirectionFactor];
      }),
    own: all([1, 1, 1, 1], {
      'asce7-10': [0.85, 1, 0.95, 1],
      'asce7-16': [0.85, 1, 1, 1],
      'asce7-22': [0.85, 0.85, 1, 1],
      'tia222-g': [0.85, 1, 0.95, 1],
      'tia222-h': [0.85, 1, 0.95, 1],
    }),
  },
  {
    name: 'importance by class, and of a speed of strength level',
    clause: 'TIA-222-G Table 2-3; the others have it in their maps',
    ask: (method) => [
      ...CLASSES.map((riskCategory) => asked(method, { riskCategory }).importance),
      asked(method, { speedLevel: 'strength' }).importance,
    ],
    own: all([1, 1, 1, 1, 1], { 'tia222-g': [0.87, 1, 1.15, 1.15, 1] }),
  },
  {
    name: 'thin air at 1000 and 5280 ft',
    clause: 'ASCE 7-16 and 7-22 26.9; TIA-222-H 2.6.8',
    ask: (method) => [1000, 5280].map((feet) => asked(method, { groundElevation: feet * FOOT }).elevationFactor),
    own: (() => {
      const ke = [1000, 5280].map((feet) => Math.exp(-0.0000362 * feet));
      return all([1, 1], { 'asce7-16': ke, 'asce7-22': ke, 'tia222-h': ke });
    })(),
  },
  {
    name: 'levels: to the allowable, of a speed of strength level too; to the nominal; to strength, and without wind',
    clause: 'ASCE 7 2.4.1, 2.3.1; TIA-222-G and H 2.3.2; F 3.1.1.1; EN 1990 A1.3.1',
    ask: (method) => [
      asked(method).toAllowableFactor,
      method.toAllowableFactor,
      asked(method, { speedLevel: 'strength' }).toAllowableFactor,
      method.toNominalFactor,
      method.toStrengthFactor ?? 0,
      method.toStrengthFactorWithoutWind ?? 1.2,
    ],
    own: all([0.75, 0.75, 0.75, 1, 0, 1.2], {
      'asce7-10': [0.6, 0.6, 0.6, 0.6, 1, 1.2],
      'asce7-16': [0.6, 0.6, 0.6, 0.6, 1, 1.2],
      'asce7-22': [0.6, 0.6, 0.6, 0.6, 1, 1.2],
      'tia222-g': [0.96, 0.96, 0.6, 1, 1.6, 1.2],
      'tia222-h': [0.6, 0.6, 0.6, 0.6, 1, 1.2],
      'en1991-1-4': [0.9, 0.9, 0.9, 1, 1.5, 1.35],
    }),
  },
  {
    name: 'gusts: lattices of 20, 60, 500 and 700 ft, guyed of 500 ft, poles, and masts on a tower of 60 ft',
    clause: 'ASCE 7 26.11.1 (7-10: 26.9.1); TIA-222-G and H 2.6.7; F 2.3.4; EN has them in its pressure',
    ask: (method) => [
      ...[20, 60, 500, 700].map((feet) =>
        asked(method, { windStructure: { ...LATTICE, height: feet * FOOT } }).gustEffect(),
      ),
      asked(method, { windStructure: { ...LATTICE, guyed: true, height: 500 * FOOT } }).gustEffect(),
      asked(method, { windStructure: POLE }).gustEffect(),
      method.mastGust?.(LATTICE) ?? 0,
    ],
    own: all([0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0], {
      'tia222-g': [0.85, 0.85, 0.85 + 0.15 / 3, 1, 0.85, 1.1, 1.35],
      'tia222-h': [0.85, 0.85, 0.85 + 0.15 / 3, 1, 0.85, 1.1, 1.35],
      'eia222-f': [gustF(20), gustF(60), gustF(500), gustF(700), gustF(500), 1.69, 1.25 * gustF(60)],
      'en1991-1-4': [1, 1, 1, 1, 1, 1, 0],
      'rs222-c': [1, 1, 1, 1, 1, 1, 0],
    }),
  },
  {
    name: 'sway under 1 Hz',
    clause: 'ASCE 7-10 26.9.5, 7-16 and 7-22 26.11.5, Table 26.11-1 (7-10: 26.9-1)',
    ask: (method) =>
      EXPOSURES.flatMap((exposure) =>
        SWAYING_FEET.map((feet) =>
          asked(method, { exposure, windStructure: { ...LATTICE, ...SWAY, height: feet * FOOT } }).gustEffect(),
        ),
      ),
    own: {
      'asce7-10': flexibly(GUST_TO_7_16),
      'asce7-16': flexibly(GUST_TO_7_16),
      'asce7-22': flexibly(GUST_7_22),
      'tia222-g': unmoved(0.85),
      'tia222-h': unmoved(0.85),
      'eia222-f': EXPOSURES.flatMap(() => SWAYING_FEET.map(gustF)),
      'en1991-1-4': unmoved(1),
      'rs222-c': unmoved(1),
    },
  },
  {
    name: 'hills by shape, side and ground',
    clause: 'ASCE 7 Fig. 26.8-1; TIA-222-G Tables 2-4, 2-5; EN 1991-1-4 A.3',
    ask: (method) =>
      byHill((shape, side, exposure, z) => {
        const hill = { ...HILL, shape, side: side as Hill['side'] };
        const { bendsAt, topographicFactor } = asked(method, { exposure: exposure as Exposure, hill });
        return method.ground.field === 'terrain' && z < bendsAt ? Number.NaN : topographicFactor(z);
      }),
    own: all(ones(hillAsce), {
      'asce7-10': hillAsce,
      'asce7-16': hillAsce,
      'asce7-22': hillAsce,
      'tia222-g': hillTia,
      'tia222-h': hillTia,
      'en1991-1-4': hillEn,
    }),
  },
  {
    name: 'what takes a hill out: others about it, a slope of 0.15, 16 m in B, 4 m in C',
    clause: 'ASCE 7-16 26.8.1 (7-22 without surroundings); TIA-222-G 2.6.6.2; EN 1991-1-4 A.3',
    // 1 where it counts.
    ask: (method) => {
      const counts = (changed: Partial<Hill>, exposure: Exposure = 'C') =>
        asked(method, { exposure, hill: { ...RIDGE, isolated: true, ...changed } }).topographicFactor(12) > 1 ? 1 : 0;
      return [
        counts({ isolated: false }),
        counts({ halfLength: 200 }),
        counts({ height: 16, halfLength: 40 }, 'B'),
        counts({ height: 4, halfLength: 10 }),
        counts({}),
      ];
    },
    own: all([0, 0, 0, 0, 0], {
      'asce7-10': [0, 0, 0, 0, 1],
      'asce7-16': [0, 0, 0, 0, 1],
      'asce7-22': [1, 0, 0, 0, 1],
      'tia222-g': [1, 1, 1, 1, 1],
      'tia222-h': [1, 1, 1, 1, 1],
      'en1991-1-4': [1, 1, 1, 1, 1],
    }),
  },
  {
    name: 'ice: thickness over that of the map by class and height, on a hill of 1.5',
    clause: 'ASCE 7-10 10.4.6, 7-16 and 7-22 10.4; Table 1.5-2; TIA-222-G 2.6.8, Table 2-3; F 2.3.16 as given',
    ask: ({ ice }) =>
      ice
        ? CLASSES.flatMap((category) => ICE_FEET.map((feet) => iceThickness(ice, 1, category, feet * FOOT, 1.5)))
        : [],
    own: {
      'asce7-10': iceBy(2, [0.8, 1, 1.25, 1.25]),
      'asce7-16': iceBy(1, [0.8, 1, 1.15, 1.25]),
      'asce7-22': iceBy(1, [1, 1, 1, 1]),
      'tia222-g': iceBy(2, [1, 1, 1.25, 1.25]),
      'tia222-h': iceBy(1, [1, 1, 1.15, 1.25]),
      'eia222-f': asGiven,
      'en1991-1-4': asGiven,
      'rs222-c': [],
    },
  },
  {
    name: 'the wind with ice, its level and that of the weight',
    clause: 'ASCE 7 2.4.3 and 10.5; TIA-222-G 2.3.2; F 2.3.16; EN 1.534 of its basic wind in a gust',
    ask: ({ ice }) => {
      if (ice === undefined) return [];
      const { wind, windLevel, weightLevel } = ice;
      return ['shareOfForce' in wind ? wind.shareOfForce : wind.speedOfGust(40) / 40, windLevel, weightLevel];
    },
    own: all([1, 0.7, 0.7], {
      'eia222-f': [0.75, 0.75, 1],
      'en1991-1-4': [1 / 1.534, 0.9, 1],
      'rs222-c': [],
    }),
  },
  {
    name: 'the least pressure',
    clause: 'ASCE 7-10 29.8, 7-16 and 7-22 29.7: 16 psf',
    ask: (method) => [asked(method).leastPressure, asked(method, { actual: true }).leastPressure],
    own: all([0, 0], { 'asce7-10': [16 * PSF, 0], 'asce7-16': [16 * PSF, 0], 'asce7-22': [16 * PSF, 0] }),
  },
  {
    name: 'round members by flow and aspect',
    clause: 'ASCE 7-10 Fig. 29.5-1; TIA-222-G Table 2-8, H Table 2-9; F Table 3; C; EN 1991-1-4 7.9, 7.13',
    ask: (method) =>
      byAspect((aspect, flow) =>
        coefficient(method, { of: 'round', aspect, diameter: WIDTH }, flow * MPH_FOOT, 'face', 'capacity'),
      ),
    own: {
      'asce7-10': roundAsce,
      'asce7-16': roundAsce,
      'asce7-22': roundAsce,
      'tia222-g': roundTia(32, [3.76, 3.37, 38.4]),
      'tia222-h': roundTia(39, [4.14, 3.66, 46.8]),
      'eia222-f': byAspect((aspect) =>
        straight(
          [
            [7, 0.8],
            [25, 1.2],
          ],
          aspect,
        ),
      ),
      'rs222-c': byAspect(() => 2 / 3),
      'en1991-1-4': roundEn,
    },
  },
  {
    name: 'flat members by their two sizes',
    clause: 'ASCE 7-10 Figs. 29.4-1, 29.5-2; TIA-222-G Table 2-8, H Table 2-9; F Table 3; C; EN 1991-1-4 7.4.3, 7.7',
    ask: (method) =>
      byFace((wide, tall) => coefficient(method, { of: 'flat', face: { wide, tall } }, 1, 'face', 'demand')),
    own: {
      'asce7-10': flatAsce,
      'asce7-16': flatAsce,
      'asce7-22': flatAsce,
      'tia222-g': flatTia,
      'tia222-h': flatTia,
      'eia222-f': flatF,
      'rs222-c': byFace(() => 1),
      'en1991-1-4': flatEn,
    },
  },
  {
    name: 'poles by sides and flow',
    clause: 'ASCE 7-10 Fig. 29.5-1; TIA-222-G and H Table 2-7; F Table 1; C; EN 1991-1-4 7.9, Table 7.11',
    ask: (method) =>
      bySides((sides, flow) =>
        coefficient(
          method,
          { of: 'pole', sides, aspect: POLE_ASPECT, width: WIDTH },
          flow * MPH_FOOT,
          'face',
          'capacity',
        ),
      ),
    own: {
      'asce7-10': poleAsce,
      'asce7-16': poleAsce,
      'asce7-22': poleAsce,
      'tia222-g': poleTia(32),
      'tia222-h': poleTia(39),
      'eia222-f': poleF,
      'rs222-c': bySides(() => 2 / 3),
      'en1991-1-4': poleEn,
    },
  },
  {
    name: 'lattices by faces, solidity, members, flow and direction',
    clause: 'ASCE 7-10 Fig. 29.5-3; TIA-222-G 2.6.9.1.1, Table 2-6; F 2.3.3.2; C; EN 1993-3-1 Annex B',
    ask: (method) =>
      FRONTS.map(({ faces, e, round, flow, corner }) =>
        coefficient(
          method,
          { of: 'lattice', face: { faces, solidity: e, roundShare: round, thinnest: 0.01, thickest: 0.03 } },
          flow * MPH_FOOT,
          corner ? 'corner' : 'face',
          'demand',
        ),
      ),
    own: {
      'asce7-10': latticeAsce,
      'asce7-16': latticeAsce,
      'asce7-22': latticeAsce,
      'tia222-g': latticeTia(32),
      'tia222-h': latticeTia(39),
      'eia222-f': latticeF,
      'rs222-c': latticeC,
      'en1991-1-4': latticeEn,
    },
  },
  {
    name: 'coefficients of slender members, and what a maker’s area may hide',
    clause: 'TIA-222-G Table 2-8; F Table 3; C: two thirds on rounds, 0.00256 of 0.004 for an effective area',
    ask: ({ slender, ratedAreas }) => [
      slender.round,
      slender.flat,
      slender.compactFlat,
      ...(['effective', 'projected-round', 'projected-flat', 'flat-plate', 'unknown'] as const).flatMap((kind) => {
        const { low, high } = ratedAreas.factor(kind);
        return [low, high];
      }),
    ],
    own: all([1.2, 2, 1.2, 1, 1, 1, 1, 1.2, 1.2, 1.2, 1.8, 1, 1.8], {
      'eia222-f': [1.2, 2, 1.4, 1, 1, 1, 1, 1.4, 1.4, 1.4, 1.8, 1, 1.8],
      'rs222-c': [2 / 3, 1, 1, 0.64, 0.64, 2 / 3, 2 / 3, 1, 1, 1, 1, 0.64, 1],
    }),
  },
  {
    name: 'speeds of 100 mph in its own: strength, nominal, fastest mile',
    clause: 'IBC 2018 1609.3.1; (nominal - 10.5)/1.05; EN 1.534 of its basic wind',
    ask: (method) =>
      (['gust3-strength', 'gust3-nominal', 'fastest-mile'] as const).map(
        // The role that stays with the formula, where the averaging time would give another figure.
        (basis) => method.toOwnBasis(100 * MPH, basis, basis === 'fastest-mile' ? 'rating' : 'site') / MPH,
      ),
    own: (() => {
      const root = Math.sqrt(0.6);
      const strength = [100, 100 / root, 115.5 / root];
      const mile = [(100 * root - 10.5) / 1.05, (100 - 10.5) / 1.05, 100];
      return all(strength, {
        // A strength-level speed enters as it is, with the level of its map.
        'tia222-g': [100, 100, 115.5],
        'eia222-f': mile,
        'rs222-c': mile,
        'en1991-1-4': [(100 * root) / 1.534, 100 / 1.534, 115.5 / 1.534],
      });
    })(),
  },
];

describe.each(TABLES.map((table) => [table.name, table] as const))('%s', (_, { ask, own, clause }) => {
  it.each(METHODS)('is in %s its own', (id) => {
    const found = ask(METHOD_BY_ID[id]);
    expect(found, clause).toHaveLength(own[id].length);
    const astray = found.flatMap((value, index) => {
      const typed = own[id][index] as number;
      if (Number.isNaN(typed) && Number.isNaN(value)) return [];
      return Math.abs(value - typed) <= 1e-6 * Math.abs(typed) ? [] : [`${index}: ${value}, typed ${typed}`];
    });
    expect(astray, clause).toEqual([]);
  });
});

it('sends what stands on a tower to the standard of towers of its own time', () => {
  // IBC 1609.1.1 and chapter 35: 2012 and 2015 TIA-222-G, from 2018 TIA-222-H.
  expect(METHODS.map((id) => METHOD_BY_ID[id].besideOnTowers)).toEqual([
    'tia222-g',
    'tia222-h',
    'tia222-h',
    undefined,
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});

it('knows the terrains of EN 1991-1-4 by themselves, each with its least height', () => {
  for (const terrain of Object.keys(TERRAIN)) {
    const wind = asked(METHOD_BY_ID['en1991-1-4'], { exposure: terrain as Exposure });
    for (const feet of FEET.slice(0, 5))
      expect(wind.exposureCoefficient(feet * FOOT), terrain).toBeCloseTo(byEn(terrain, feet), 9);
  }
});

describe('a hill that does not stand alone', () => {
  it('is said to be taken out by the editions that ask for it, and listed so', () => {
    for (const id of METHODS) {
      const method = METHOD_BY_ID[id];
      const asks = id === 'asce7-10' || id === 'asce7-16';
      expect(asked(method, { hill: RIDGE }).hillExcluded?.why, id).toBe(asks ? 'not-isolated' : undefined);
      const listed = method.hill?.conditions(RIDGE, 'C').some(({ of }) => of === 'surroundings') ?? false;
      expect(listed, id).toBe(asks);
    }
  });

  it('counts by ASCE 7-22 alike, whatever is said of its surroundings', () => {
    const factor = (isolated?: boolean) => {
      const { isolated: _, ...hill } = RIDGE;
      const given = isolated === undefined ? hill : { ...hill, isolated };
      return asked(METHOD_BY_ID['asce7-22'], { hill: given }).topographicFactor(12);
    };
    expect(factor(false)).toBe(factor(true));
    expect(factor(false)).toBe(factor());
    expect(factor(false)).toBeGreaterThan(1.5);
  });
});
