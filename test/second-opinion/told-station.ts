/*
 * The one place of the second opinion that knows the names of a plan's fields. It turns a plan of which everything is
 * told into a station in m, m/s, m², N, kg and Pa; what is not told here is a fault, never a guess.
 */

/** How the plan writes what may be written in several ways. */
export const FIELD = {
  base: 'base',
  arrangement: 'arrangement',
  areasBySpeed: 'areasBySpeed',
  furtherAreas: 'furtherAreas',
  soilBearing: 'soilBearing',
  manufacturerPlates: 'manufacturerPlates',
} as const;

/** Lines laid flat beside each other, as the plan says it. */
export const FLAT_ROW = 'flat';

export type UnitSystem = 'us' | 'si';
export type Method =
  | 'asce7-10'
  | 'asce7-16'
  | 'asce7-22'
  | 'tia222-g'
  | 'tia222-h'
  | 'eia222-f'
  | 'rs222-c'
  | 'en1991-1-4';
export type Basis = 'gust3-strength' | 'gust3-nominal' | 'fastest-mile' | 'mean-10min';
export type Ground = 'B' | 'C' | 'D' | '0' | 'I' | 'II' | 'III' | 'IV';
export type RiskCategory = 'I' | 'II' | 'III' | 'IV';
export type AreaKind = 'effective' | 'projected-round' | 'projected-flat' | 'flat-plate';
export type Arrangement = 'single' | 'bundle' | 'inside' | typeof FLAT_ROW;

export interface Hill {
  readonly shape: 'ridge' | 'escarpment' | 'round-hill';
  readonly height: number;
  readonly halfLength: number;
  readonly distance: number;
  readonly side: 'upwind' | 'downwind';
  readonly isolated: boolean;
}

export interface WindTold {
  readonly method: Method;
  readonly speed: number;
  readonly basis: Basis;
  readonly ground: Ground;
  readonly riskCategory: RiskCategory;
}

/** Members of one face: by their widths, by the solid share, by areas of the whole section, or the drag area itself. */
export type LatticeMembers =
  | {
      readonly told: 'members';
      readonly leg: number;
      readonly brace: number;
      readonly panel: number;
      readonly pattern: 'zigzag' | 'cross' | 'rungs';
    }
  | { readonly told: 'solidity'; readonly solidity: number }
  | { readonly told: 'areas'; readonly round: number; readonly flat: number }
  | { readonly told: 'drag-area'; readonly area: number };

export interface LatticeShape {
  readonly kind: 'lattice';
  readonly faces: 3 | 4;
  readonly low: number;
  readonly high: number;
  readonly round: boolean;
  readonly by: LatticeMembers;
}

export interface PoleShape {
  readonly kind: 'pole';
  readonly low: number;
  readonly high: number;
  readonly sides: 0 | 8 | 12 | 16 | 18;
}

export type SectionShape = LatticeShape | PoleShape;

export interface Section {
  readonly from: number;
  readonly to: number;
  readonly make: string;
  /** Constant width and members. */
  readonly uniform: boolean;
  readonly shape: SectionShape;
}

export interface Tube {
  readonly along: 'boom' | 'element' | 'upright';
  readonly count: number;
  /** Width and visible length of each piece, of the whole tube from tip to tip. */
  readonly pieces: readonly { readonly width: number; readonly length: number }[];
}

export type LoadShape =
  | {
      readonly kind: 'stated';
      readonly front: number;
      readonly side: number;
      readonly areaKind: AreaKind;
      readonly iced: number | undefined;
    }
  | { readonly kind: 'force'; readonly force: number; readonly speed: number }
  | { readonly kind: 'tube'; readonly width: number; readonly length: number; readonly along: Tube['along'] }
  | { readonly kind: 'tubes'; readonly tubes: readonly Tube[] }
  | { readonly kind: 'plate'; readonly wide: number; readonly tall: number; readonly deep: number }
  | {
      readonly kind: 'wire';
      readonly width: number;
      readonly distance: number;
      readonly farHeight: number;
      readonly tension: number;
    }
  | SectionShape;

export interface Load {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly shape: LoadShape;
  readonly turns: boolean;
  /** Where it faces, degrees; undefined takes its own worst. */
  readonly heading: number | undefined;
  readonly weight: number;
  readonly offset: number;
}

export interface Lines {
  readonly name: string;
  readonly count: number;
  readonly width: number;
  readonly from: number;
  readonly to: number;
  readonly arrangement: Arrangement;
  /** Of all of them, for each metre. */
  readonly weight: number;
}

export interface Mast {
  readonly outside: number;
  readonly wall: number;
  readonly yield: number;
  readonly foot: number;
  readonly tip: number;
  readonly bearing: number;
  readonly manufacturerPlates: boolean;
}

export interface Rating {
  readonly kind: 'area' | 'force' | 'moment' | 'wind';
  readonly wind: WindTold | undefined;
  /** Areas, each at its height; several cases where areas go with speeds. */
  readonly cases: readonly {
    readonly speed: number;
    readonly areas: readonly { readonly area: number; readonly height: number }[];
  }[];
  readonly areaKind: AreaKind;
  readonly force: number;
  readonly moment: number;
  readonly strengthLevel: boolean;
  readonly height: number;
  readonly lines: Lines | undefined;
}

/**
 * Rules in which the product departs from the basis. The calculator goes by the basis; a departure is switched on only to
 * see that it explains a difference, and all of it.
 */
export const DEPARTURES = ['wire-at-its-mast-end', 'twist-by-itself', 'no-relief-in-braces'] as const;
export type Departure = (typeof DEPARTURES)[number];

export interface Station {
  readonly departures: ReadonlySet<Departure>;
  readonly system: UnitSystem;
  readonly wind: WindTold;
  readonly elevation: number;
  readonly hill: Hill | undefined;
  readonly topographicFactor: number;
  readonly ice: { readonly thickness: number; readonly gust: number } | undefined;
  readonly base: number;
  readonly top: number;
  readonly frequency: number | undefined;
  readonly damping: number;
  readonly sections: readonly Section[];
  readonly weight: number;
  readonly mast: Mast | undefined;
  readonly rotatorWeight: number;
  readonly loads: readonly Load[];
  readonly lines: readonly Lines[];
  readonly ratings: readonly Rating[];
  readonly ratedWeight: number;
  readonly block:
    | { readonly length: number; readonly width: number; readonly depth: number; readonly soilBearing: number }
    | undefined;
}

interface UnitTable {
  readonly long: number;
  readonly across: number;
  readonly area: number;
  readonly speed: number;
  readonly force: number;
  readonly weight: number;
  readonly moment: number;
  readonly stress: number;
  readonly soil: number;
}

export const FOOT = 0.3048;
export const MPH = 0.44704;
const POUND = 0.45359237;
export const POUND_FORCE = POUND * 9.80665;
export const PSF = POUND_FORCE / FOOT ** 2;

export const UNITS: Readonly<Record<UnitSystem, UnitTable>> = {
  us: {
    long: FOOT,
    across: FOOT / 12,
    area: FOOT ** 2,
    speed: MPH,
    force: POUND_FORCE,
    weight: POUND,
    moment: POUND_FORCE * FOOT,
    stress: (1000 * POUND_FORCE) / (FOOT / 12) ** 2,
    soil: PSF,
  },
  si: { long: 1, across: 0.001, area: 1, speed: 1, force: 1, weight: 1, moment: 1, stress: 1e6, soil: 1000 },
};

/** A plan, or a part of it, as JSON has it. */
export type Told = Readonly<Record<string, unknown>>;

function told(of: Told, field: string): unknown {
  const value = of[field];
  if (value === undefined) throw new Error(`${field} is not told in ${JSON.stringify(of)}`);
  return value;
}

const number = (of: Told, field: string) => Number(told(of, field));
const maybe = (of: Told, field: string, otherwise: number) => (of[field] === undefined ? otherwise : Number(of[field]));
const part = (of: Told, field: string) => told(of, field) as Told;
const list = (of: Told, field: string) => (of[field] ?? []) as readonly Told[];
const text = <Word extends string>(of: Told, field: string) => told(of, field) as Word;
const ends = (value: unknown): readonly [number, number] =>
  Array.isArray(value) ? [Number(value[0]), Number(value[1])] : [Number(value), Number(value)];

function windOf(wind: Told, method: Method, ground: Told, riskCategory: Told, u: UnitTable): WindTold {
  const byTerrain = method === 'en1991-1-4';
  return {
    method,
    speed: maybe(wind, 'speed', 0) * u.speed,
    basis: text<Basis>(wind, 'basis'),
    ground:
      method === 'eia222-f' || method === 'rs222-c' ? 'C' : text<Ground>(ground, byTerrain ? 'terrain' : 'exposure'),
    riskCategory: (riskCategory['riskCategory'] ?? 'II') as RiskCategory,
  };
}

function latticeMembers(shape: Told, u: UnitTable): LatticeMembers {
  if (shape['leg'] !== undefined) {
    return {
      told: 'members',
      leg: number(shape, 'leg') * u.across,
      brace: number(shape, 'brace') * u.across,
      panel: number(shape, 'panel') * u.across,
      pattern: text<'zigzag'>(shape, 'pattern'),
    };
  }
  if (shape['solidity'] !== undefined) return { told: 'solidity', solidity: number(shape, 'solidity') };
  if (shape['dragArea'] !== undefined) return { told: 'drag-area', area: number(shape, 'dragArea') * u.area };
  return { told: 'areas', round: maybe(shape, 'roundArea', 0) * u.area, flat: maybe(shape, 'flatArea', 0) * u.area };
}

function sectionShape(shape: Told, u: UnitTable): SectionShape {
  const [low, high] = ends(told(shape, 'width'));
  if (shape['shape'] === 'pole') {
    return { kind: 'pole', low: low * u.across, high: high * u.across, sides: number(shape, 'sides') as 0 };
  }
  return {
    kind: 'lattice',
    faces: number(shape, 'faces') as 3,
    low: low * u.across,
    high: high * u.across,
    round: text(shape, 'members') === 'round',
    by: latticeMembers(shape, u),
  };
}

function sectionsOf(tower: Told, base: number, u: UnitTable): Section[] {
  let from = base;
  return list(tower, 'sections').flatMap((written, index) => {
    const shape = sectionShape(written, u);
    return Array.from({ length: maybe(written, 'count', 1) }, (_, copy) => {
      const to = from + number(written, 'length') * u.long;
      const section: Section = {
        from,
        to,
        make: (written['make'] as string | undefined) ?? `${index}.${copy}`,
        uniform: shape.low === shape.high,
        shape,
      };
      from = to;
      return section;
    });
  });
}

function tubeOf(tube: Told, u: UnitTable): Tube {
  const taper = tube['taper'] as readonly (readonly number[])[] | undefined;
  const pieces =
    taper === undefined
      ? [{ width: number(tube, 'diameter') * u.across, length: number(tube, 'length') * u.long }]
      : taper.map(([width, length]) => ({ width: Number(width) * u.across, length: 2 * Number(length) * u.across }));
  return { along: text<Tube['along']>(tube, 'along'), count: maybe(tube, 'count', 1), pieces };
}

function loadShape(load: Told, span: number, u: UnitTable): LoadShape {
  switch (load['shape']) {
    case 'tube':
      return {
        kind: 'tube',
        width: number(load, 'diameter') * u.across,
        length: load['length'] === undefined ? span : number(load, 'length') * u.long,
        along: text<Tube['along']>(load, 'along'),
      };
    case 'tubes':
      return { kind: 'tubes', tubes: list(load, 'tubes').map((tube) => tubeOf(tube, u)) };
    case 'plate':
      return {
        kind: 'plate',
        wide: number(load, 'wide') * u.across,
        tall: number(load, 'tall') * u.across,
        deep: number(load, 'deep') * u.across,
      };
    case 'wire': {
      const end = part(load, 'to');
      return {
        kind: 'wire',
        width: number(load, 'diameter') * u.across,
        distance: number(end, 'distance') * u.long,
        farHeight: number(end, 'height') * u.long,
        tension: number(load, 'tension') * u.force,
      };
    }
    case 'lattice':
    case 'pole':
      return sectionShape(load, u);
    default:
      if (load['force'] !== undefined) {
        return { kind: 'force', force: number(load, 'force') * u.force, speed: number(load, 'wind') * u.speed };
      }
      return {
        kind: 'stated',
        front: maybe(load, 'area', maybe(load, 'front', 0)) * u.area,
        side: maybe(load, 'area', maybe(load, 'side', 0)) * u.area,
        areaKind: text<AreaKind>(load, 'areaKind'),
        iced: load['icedArea'] === undefined ? undefined : number(load, 'icedArea') * u.area,
      };
  }
}

function loadOf(load: Told, top: number, u: UnitTable): Load {
  const [low, high] =
    load['height'] === undefined
      ? ends(told(load, 'above')).map((above) => top + above * u.long)
      : ends(load['height']).map((height) => height * u.long);
  const wire = load['shape'] === 'wire' ? part(load, 'to') : undefined;
  const heading = wire === undefined ? load['heading'] : wire['heading'];
  return {
    name: text(load, 'name'),
    low: low as number,
    high: high as number,
    shape: loadShape(load, (high as number) - (low as number), u),
    turns: load['turns'] === true,
    heading: heading === undefined ? undefined : Number(heading),
    weight: maybe(load, 'weight', 0) * maybe(load, 'count', 1) * u.weight,
    offset: maybe(load, 'offset', 0) * u.long,
  };
}

function linesOf(lines: Told, base: number, top: number, u: UnitTable): Lines {
  return {
    name: (lines['name'] as string | undefined) ?? 'lines',
    count: number(lines, 'count'),
    width: number(lines, 'diameter') * u.across,
    from: lines['from'] === undefined ? base : number(lines, 'from') * u.long,
    to: lines['to'] === undefined ? top : number(lines, 'to') * u.long,
    arrangement: text<Arrangement>(lines, FIELD.arrangement),
    weight: (number(lines, 'count') * maybe(lines, 'weight', 0) * u.weight) / u.long,
  };
}

function ratingOf(rating: Told, base: number, top: number, u: UnitTable): Rating {
  const kind = (rating['kind'] ?? 'area') as Rating['kind'];
  const written = rating['wind'] as Told | undefined;
  const wind = written && windOf(written, text<Method>(written, 'method'), written, written, u);
  const height =
    rating['height'] === undefined ? top + maybe(rating, 'above', 0) * u.long : number(rating, 'height') * u.long;
  const rows = rating[FIELD.areasBySpeed] as readonly (readonly number[])[] | undefined;
  const further = list(rating, FIELD.furtherAreas).map((also) => ({
    area: number(also, 'area') * u.area,
    height: number(also, 'height') * u.long,
  }));
  const cases =
    rows === undefined
      ? [{ speed: wind?.speed ?? 0, areas: [{ area: maybe(rating, 'area', 0) * u.area, height }, ...further] }]
      : rows.map(([speed, area]) => ({
          speed: Number(speed) * u.speed,
          areas: [{ area: Number(area) * u.area, height }, ...further],
        }));
  const lines = rating['withCables'] as Told | undefined;
  return {
    kind,
    wind,
    cases,
    areaKind: (rating['areaKind'] ?? 'effective') as AreaKind,
    force: maybe(rating, 'force', 0) * u.force,
    moment: maybe(rating, 'moment', 0) * u.moment,
    strengthLevel: rating['level'] !== 'allowable',
    height,
    lines: lines && linesOf(lines, base, top, u),
  };
}

function mastOf(mast: Told, top: number, u: UnitTable): Mast {
  const foot = top - number(mast, 'inside') * u.long;
  return {
    outside: number(mast, 'outside') * u.across,
    wall: number(mast, 'wall') * u.across,
    yield: number(mast, 'yield') * u.stress,
    foot,
    tip: foot + number(mast, 'length') * u.long,
    bearing: number(mast, 'bearing') * u.long,
    manufacturerPlates: told(mast, FIELD.manufacturerPlates) === true,
  };
}

export function stationOf(plan: Told, departures: ReadonlySet<Departure> = new Set()): Station {
  const system = text<UnitSystem>(plan, 'units');
  const u = UNITS[system];
  const site = part(plan, 'site');
  const tower = part(plan, 'tower');
  const base = maybe(tower, FIELD.base, 0) * u.long;
  const top = number(tower, 'top') * u.long;
  const hill = site['hill'] as Told | undefined;
  const ice = site['ice'] as Told | undefined;
  const mast = plan['mast'] as Told | undefined;
  const rotator = plan['rotator'] as Told | undefined;
  const foundation = tower['foundation'] as Told | undefined;
  const towerRatings = list(plan, 'ratings').filter((rating) => rating['of'] === 'tower');
  return {
    departures,
    system,
    wind: windOf(part(site, 'wind'), text<Method>(plan, 'method'), site, site, u),
    elevation: maybe(site, 'groundElevation', 0) * u.long,
    hill: hill && {
      shape: text<Hill['shape']>(hill, 'shape'),
      height: number(hill, 'height') * u.long,
      halfLength: number(hill, 'halfLength') * u.long,
      distance: number(hill, 'distance') * u.long,
      side: text<Hill['side']>(hill, 'side'),
      isolated: told(hill, 'isolated') === true,
    },
    topographicFactor: maybe(site, 'topographicFactor', 1),
    ice: ice && { thickness: number(ice, 'thickness') * u.across, gust: number(ice, 'gust') * u.speed },
    base,
    top,
    frequency: tower['frequency'] === undefined ? undefined : number(tower, 'frequency'),
    damping: maybe(tower, 'damping', 0.01),
    sections: sectionsOf(tower, base, u),
    weight: maybe(tower, 'weight', 0) * u.weight,
    mast: mast && mastOf(mast, top, u),
    rotatorWeight: rotator === undefined ? 0 : number(rotator, 'weight') * u.weight,
    loads: list(plan, 'loads').map((load) => loadOf(load, top, u)),
    lines: list(plan, 'cables').map((lines) => linesOf(lines, base, top, u)),
    ratings: towerRatings
      .filter((rating) => rating['kind'] !== 'weight')
      .map((rating) => ratingOf(rating, base, top, u)),
    ratedWeight: towerRatings
      .filter((rating) => rating['kind'] === 'weight')
      .reduce((largest, rating) => Math.max(largest, number(rating, 'weight') * u.weight), 0),
    block:
      foundation?.['kind'] === 'block'
        ? {
            length: number(foundation, 'length') * u.long,
            width: number(foundation, 'width') * u.long,
            depth: number(foundation, 'depth') * u.long,
            soilBearing: number(foundation, FIELD.soilBearing) * u.soil,
          }
        : undefined,
  };
}
