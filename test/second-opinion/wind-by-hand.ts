/*
 * Wind by the standards, typed a second time from the engineering basis, sections 3 and 4 (named beside each formula).
 * SI inside; where a standard prints its constants in feet and mph they stand so here.
 */
import {
  type Basis,
  type Departure,
  FOOT,
  type Ground,
  type Hill,
  type Method,
  MPH,
  PSF,
  type UnitSystem,
} from './told-station.ts';

/** One wind: a method with its own speed and everything that multiplies the pressure. */
export interface Wind {
  readonly departures: ReadonlySet<Departure>;
  readonly method: Method;
  readonly system: UnitSystem;
  /** In the basis of the method, m/s. */
  readonly speed: number;
  /** Speed that the coefficients of TIA-222 go by, m/s. */
  readonly coefficientSpeed: number;
  readonly ground: Ground;
  readonly importance: number;
  readonly elevationFactor: number;
  readonly topography: (z: number) => number;
  readonly directionFactor: number;
  readonly gust: number;
  /** Brings a force to the allowable level. */
  readonly level: number;
  /** Roughness of round surfaces by EN 1991-1-4, m. */
  readonly roughness: number;
  /** Whether the 16 psf of ASCE 7 count: in a check, in no gust that it holds to and in no rating. */
  readonly leastPressure: boolean;
  /** Thickness of radial ice on everything, at a height; round members with ice have slow flow. */
  readonly ice: ((z: number) => number) | undefined;
  /** Whether it is the wind of a rated case. */
  readonly rated: boolean;
}

export const isAsce = (method: Method) => method === 'asce7-10' || method === 'asce7-16' || method === 'asce7-22';
export const isTia = (method: Method) => method === 'tia222-g' || method === 'tia222-h';

/** Basis 1: what brings each method's force to the allowable level. */
export function levelOf(method: Method, basis: Basis): number {
  if (isAsce(method) || method === 'tia222-h') return 0.6;
  if (method === 'tia222-g') return basis === 'gust3-strength' ? 0.6 : 0.96;
  return method === 'en1991-1-4' ? 0.9 : 0.75;
}

/** Basis 1: the same for footings and reactions, the nominal load. */
export const nominalOf = (wind: Wind) => (wind.level === 0.6 ? 1 : 1 / wind.level);

export function ownBasis(method: Method): Basis {
  if (isAsce(method) || method === 'tia222-h') return 'gust3-strength';
  if (method === 'tia222-g') return 'gust3-nominal';
  return method === 'en1991-1-4' ? 'mean-10min' : 'fastest-mile';
}

/** Basis 3: strength to nominal by the root of 0.6, fastest mile by (gust - 10.5)/1.05 mph, EN's own gust 1.534 vb. */
export function speedIn(basis: Basis, speed: number, from: Basis): number {
  if (basis === from) return speed;
  const nominal = {
    'gust3-strength': speed * Math.sqrt(0.6),
    'gust3-nominal': speed,
    'fastest-mile': 1.05 * speed + 10.5 * MPH,
    'mean-10min': 1.534 * speed,
  }[from];
  return {
    'gust3-strength': nominal / Math.sqrt(0.6),
    'gust3-nominal': nominal,
    'fastest-mile': (nominal - 10.5 * MPH) / 1.05,
    'mean-10min': nominal / 1.534,
  }[basis];
}

const EXPOSURE: Readonly<
  Record<string, { alpha: number; zg: number; alpha22: number; zg22: number; tiaFloor: number }>
> = {
  B: { alpha: 7, zg: 1200, alpha22: 7.5, zg22: 3280, tiaFloor: 0.7 },
  C: { alpha: 9.5, zg: 900, alpha22: 9.8, zg22: 2460, tiaFloor: 0.85 },
  D: { alpha: 11.5, zg: 700, alpha22: 11.5, zg22: 1935, tiaFloor: 1.03 },
};

const TERRAIN: Readonly<Record<string, { z0: number; least: number }>> = {
  '0': { z0: 0.003, least: 1 },
  I: { z0: 0.01, least: 1 },
  II: { z0: 0.05, least: 2 },
  III: { z0: 0.3, least: 5 },
  IV: { z0: 1, least: 10 },
};

const found = <Value>(table: Readonly<Record<string, Value>>, key: string): Value => {
  const value = table[key];
  if (value === undefined) throw new Error(`nothing is known of ${key}`);
  return value;
};

/** Basis 4: the factor of height on the pressure; of EN 1991-1-4 none. */
export function heightFactor(method: Method, ground: Ground, z: number): number {
  if (method === 'rs222-c' || method === 'en1991-1-4') return 1;
  if (method === 'eia222-f') {
    return Math.min(2.58, Math.max(1, (z / (33 * FOOT)) ** (2 / 7)));
  }
  const { alpha, zg, alpha22, zg22, tiaFloor } = found(EXPOSURE, ground);
  const feet = z / FOOT;
  if (method === 'asce7-22') return 2.41 * (Math.max(feet, 15) / zg22) ** (2 / alpha22);
  if (isAsce(method)) return 2.01 * (Math.max(feet, 15) / zg) ** (2 / alpha);
  return Math.min(2.01, Math.max(tiaFloor, 2.01 * (feet / zg) ** (2 / alpha)));
}

/** Basis 2: c of q = c V^2, which differs by 0.06 % between the units a standard prints it in. */
export const constantOf = (system: UnitSystem) => (system === 'us' ? (0.00256 * PSF) / MPH ** 2 : 0.613);

/** Basis 4: velocity pressure of the method, Pa; of ASCE 7-22 without its direction factor. */
export function pressureAt(wind: Wind, z: number): number {
  const { method, speed } = wind;
  if (method === 'rs222-c') return ((0.004 * PSF) / MPH ** 2) * speed ** 2;
  if (method === 'en1991-1-4') {
    const { z0, least } = found(TERRAIN, wind.ground);
    const height = Math.max(z, least);
    const orography = wind.topography(z);
    const roughness = 0.19 * (z0 / 0.05) ** 0.07 * Math.log(height / z0);
    // Below the least height the turbulence is that of the least height, its hill included (EN 1991-1-4, 4.4).
    const turbulence = 1 / (wind.topography(height) * Math.log(height / z0));
    return (1 + 7 * turbulence) * 0.5 * 1.25 * (roughness * orography * speed) ** 2;
  }
  const still = constantOf(wind.system) * heightFactor(method, wind.ground, z) * speed ** 2;
  if (method === 'eia222-f') return still;
  const withHill = still * wind.topography(z) * wind.importance * wind.elevationFactor;
  return method === 'asce7-22' ? withHill : withHill * wind.directionFactor;
}

/** Force on each m² of effective area, N, at the allowable level (basis 4, end). */
export function forceOnArea(wind: Wind, z: number): number {
  const inForce = wind.method === 'asce7-22' ? wind.directionFactor : 1;
  return wind.level * pressureAt(wind, z) * wind.gust * inForce;
}

/** Basis 4: of thin air; EIA-222-F and TIA-222-G, ASCE 7-10 and EN know none. */
export function elevationFactorOf(method: Method, system: UnitSystem, elevation: number): number {
  if (method !== 'asce7-16' && method !== 'asce7-22' && method !== 'tia222-h') return 1;
  return system === 'us' ? Math.exp((-0.0000362 * elevation) / FOOT) : Math.exp(-0.000119 * elevation);
}

/** Basis 4: of the tower, and of what it carries. */
export function directionFactorOf(method: Method, tower: 'lattice' | 'pole'): number {
  if (method === 'eia222-f' || method === 'rs222-c' || method === 'en1991-1-4') return 1;
  if (tower === 'lattice') return 0.85;
  return method === 'asce7-16' || method === 'asce7-22' ? 1 : 0.95;
}

/** Basis 4: of TIA-222-G only. */
export function importanceOf(method: Method, basis: Basis, category: string): number {
  if (method !== 'tia222-g' || basis === 'gust3-strength') return 1;
  return found({ I: 0.87, II: 1, III: 1.15, IV: 1.15 }, category);
}

const ASCE_HILL = {
  ridge: { k: { B: 1.3, C: 1.45, D: 1.55 }, gamma: 3, lee: 1.5 },
  escarpment: { k: { B: 0.75, C: 0.85, D: 0.95 }, gamma: 2.5, lee: 4 },
  'round-hill': { k: { B: 0.95, C: 1.05, D: 1.15 }, gamma: 4, lee: 1.5 },
} as const;

const TIA_HILL = {
  ridge: { kt: 0.72, f: 1.5 },
  escarpment: { kt: 0.43, f: 1.25 },
  'round-hill': { kt: 0.53, f: 2 },
} as const;

/** Basis 4, topography: factor on the pressure (EN: on the speed) at the height z above the ground at the tower. */
export function hillFactor(method: Method, ground: Ground, hill: Hill, z: number): number {
  if (method === 'eia222-f' || method === 'rs222-c') return 1;
  if (method === 'en1991-1-4') return orography(hill, z);
  const exposure = ground as 'B' | 'C' | 'D';
  if (isTia(method)) {
    const { kt, f } = TIA_HILL[hill.shape];
    const kc = { B: 0.9, C: 1, D: 1.1 }[exposure];
    return (1 + (kc * kt) / Math.exp((f * z) / hill.height)) ** 2;
  }
  const steep = hill.height / hill.halfLength;
  const least = ground === 'B' ? 60 : 15;
  // The typed figures meet 1 in 5 exactly where they are meant to.
  if (steep < 0.2 * (1 - 1e-9) || hill.height < least * FOOT * (1 - 1e-9)) return 1;
  if (!hill.isolated && method !== 'asce7-22') return 1;
  const { k, gamma, lee } = ASCE_HILL[hill.shape];
  const half = steep > 0.5 ? 2 * hill.height : hill.halfLength;
  const mu = hill.side === 'upwind' ? 1.5 : lee;
  const k1 = k[exposure] * Math.min(steep, 0.5);
  const k2 = Math.max(0, 1 - hill.distance / (mu * half));
  return (1 + k1 * k2 * Math.exp((-gamma * z) / half)) ** 2;
}

/** EN 1991-1-4, A.3, of the upwind side and of hills and ridges; its coefficients are from memory. */
function orography(hill: Hill, z: number): number {
  const run = 2 * hill.halfLength;
  const slope = hill.height / run;
  if (slope < 0.05) return 1;
  const effective = slope < 0.3 ? run : hill.height / 0.3;
  const h = Math.max(z, 0) / effective;
  if (h > 2) return 1;
  const a = 0.1552 * h ** 4 - 0.8575 * h ** 3 + 1.8133 * h ** 2 - 1.9115 * h + 1.0124;
  const up = 0.3542 * h ** 2 - 1.0577 * h + 2.6456;
  const down = -0.3056 * h ** 2 + 1.0212 * h - 1.7637;
  const x = hill.side === 'upwind' ? -hill.distance / run : hill.distance / run;
  if (hill.side === 'downwind' && hill.shape === 'escarpment' && hill.distance > 0) {
    throw new Error('the lee of an escarpment by EN 1991-1-4 is not in this calculator');
  }
  const s = a * Math.exp((x <= 0 ? up : down) * x);
  return slope < 0.3 ? 1 + 2 * s * slope : 1 + 0.6 * s;
}

interface GustGround {
  readonly b: number;
  readonly a: number;
  readonly b22: number;
  readonly a22: number;
  readonly c: number;
  readonly l: number;
  readonly epsilon: number;
  readonly least: number;
}
const GUST: Readonly<Record<string, GustGround>> = {
  B: { b: 0.45, a: 1 / 4, b22: 0.47, a22: 1 / 4.5, c: 0.3, l: 320, epsilon: 1 / 3, least: 30 },
  C: { b: 0.65, a: 1 / 6.5, b22: 0.66, a22: 1 / 6.4, c: 0.2, l: 500, epsilon: 1 / 5, least: 15 },
  D: { b: 0.8, a: 1 / 9, b22: 0.78, a22: 1 / 8, c: 0.15, l: 650, epsilon: 1 / 8, least: 7 },
};

export interface Swaying {
  readonly height: number;
  readonly width: number;
  readonly frequency: number | undefined;
  readonly damping: number;
}

/** Basis 4, gust: 0.85 of a rigid structure, computed under 1 Hz (lengths in ft, V in mph, Vz in ft/s). */
function asceGust(method: Method, ground: Ground, speed: number, of: Swaying): number {
  if (of.frequency === undefined || of.frequency >= 1) return 0.85;
  const { b, a, b22, a22, c, l, epsilon, least } = found(GUST, ground);
  const h = of.height / FOOT;
  const width = of.width / FOOT;
  const z = Math.max(0.6 * h, least);
  const turbulence = c * (33 / z) ** (1 / 6);
  const scale = l * (z / 33) ** epsilon;
  const background2 = 1 / (1 + 0.63 * ((width + h) / scale) ** 0.63);
  const mean = (method === 'asce7-22' ? b22 * (z / 33) ** a22 : b * (z / 33) ** a) * (88 / 60) * (speed / MPH);
  const n = of.frequency;
  const reduced = (n * scale) / mean;
  const spectrum = (7.47 * reduced) / (1 + 10.3 * reduced) ** (5 / 3);
  const along = (eta: number) => 1 / eta - (1 - Math.exp(-2 * eta)) / (2 * eta ** 2);
  const resonant2 =
    (spectrum *
      along((4.6 * n * h) / mean) *
      along((4.6 * n * width) / mean) *
      (0.53 + 0.47 * along((15.4 * n * width) / mean))) /
    of.damping;
  const y = Math.sqrt(2 * Math.log(3600 * n));
  const peak = y + 0.577 / y;
  return (
    (0.925 * (1 + 1.7 * turbulence * Math.sqrt(3.4 ** 2 * background2 + peak ** 2 * resonant2))) /
    (1 + 1.7 * 3.4 * turbulence)
  );
}

/** Basis 4, gust, of a tower that stands by itself. */
export function gustOf(
  method: Method,
  tower: 'lattice' | 'pole',
  { ground, speed }: { readonly ground: Ground; readonly speed: number },
  of: Swaying,
): number {
  if (isAsce(method)) return asceGust(method, ground, speed, of);
  if (isTia(method)) return tower === 'pole' ? 1.1 : 0.85;
  if (method === 'eia222-f') {
    if (tower === 'pole') return 1.69;
    return Math.min(1.25, Math.max(1, 0.65 + 0.6 / (of.height / (33 * FOOT)) ** (1 / 7)));
  }
  return 1;
}

/** Basis 4, gust, of a mast on a tower, for the mast and what holds it. */
export function mastGustOf(wind: Wind, latticeGust: number): number {
  if (isTia(wind.method)) return 1.35;
  return wind.method === 'eia222-f' ? 1.25 * latticeGust : wind.gust;
}

/** Basis 6: design thickness of the ice at the height z, m; factor 2.0 on the maps of ASCE 7-10 and TIA-222-G. */
export function iceThickness(
  { method, topography }: Wind,
  { told, category, z }: { readonly told: number; readonly category: string; readonly z: number },
): number {
  if (!isAsce(method) && !isTia(method)) return told;
  const older = method === 'asce7-10' || method === 'tia222-g';
  // The maps of 7-22 are by risk category (from memory), so that nothing multiplies them.
  const grave = (category === 'III' || category === 'IV') && method !== 'asce7-22';
  const importance = grave ? (older ? 1.25 : 1.15) : 1;
  const height = Math.min(1.4, (z / (33 * FOOT)) ** 0.1);
  return (older ? 2 : 1) * told * importance * height * topography(z) ** 0.35;
}

/** Basis 6: level of the wind on ice, 0.7 for ASCE and TIA. */
export const iceLevelOf = ({ method, level }: Wind) => (isAsce(method) || isTia(method) ? 0.7 : level);
