/*
 * Sums of wind on a station, what its ratings prove, mast, bearing and block, typed a second time from the engineering
 * basis, sections 1, 5, 7 and 8. Fine steps along everything long; no closed forms but the worst heading.
 */
import {
  anglesOf,
  areaOfForce,
  board,
  forceOn,
  GALVANISED,
  lattice,
  latticeSeen,
  linesArea,
  linesWidth,
  POLISHED,
  pole,
  roundMember,
  statedLoad,
  statedRating,
  type WindAngle,
} from './drag-by-hand.ts';
import type { Lines, Load, Mast, Method, Rating, Section, Station, WindTold } from './told-station.ts';
import {
  directionFactorOf,
  elevationFactorOf,
  forceOnArea,
  gustOf,
  hillFactor,
  iceLevelOf,
  iceThickness,
  importanceOf,
  isAsce,
  levelOf,
  mastGustOf,
  nominalOf,
  ownBasis,
  speedIn,
  type Wind,
} from './wind-by-hand.ts';

const GRAVITY = 9.80665;
const STEP = 0.25;
const STEEL = 7850;

// ---- the winds -------------------------------------------------------------------------------------------------

const supportKind = (station: Station): 'lattice' | 'pole' =>
  station.sections.some(({ shape }) => shape.kind === 'pole') ? 'pole' : 'lattice';

function swaying(station: Station) {
  const { low, high } = (station.sections[0] as Section).shape;
  return {
    height: station.top - station.base,
    width: (low + high) / 2,
    frequency: station.frequency,
    damping: station.damping,
  };
}

/** The wind of the site, at its own speed or another of the same basis. */
export function siteWind(station: Station, typed = station.wind.speed, roughness = GALVANISED): Wind {
  const { method, ground, basis, riskCategory } = station.wind;
  const gBySpeedOfStrength = method === 'tia222-g' && basis === 'gust3-strength';
  const speed = gBySpeedOfStrength ? typed : speedIn(ownBasis(method), typed, basis);
  const { hill, topographicFactor } = station;
  return {
    departures: station.departures,
    method,
    system: station.system,
    speed,
    coefficientSpeed: gBySpeedOfStrength ? typed * Math.sqrt(0.6) : speed,
    ground,
    importance: importanceOf(method, basis, riskCategory),
    elevationFactor: elevationFactorOf(method, station.system, station.elevation),
    topography: hill === undefined ? () => topographicFactor : (z) => hillFactor(method, ground, hill, z),
    directionFactor: directionFactorOf(method, supportKind(station)),
    gust: gustOf(method, supportKind(station), { ground, speed }, swaying(station)),
    level: levelOf(method, basis),
    roughness,
    leastPressure: true,
    ice: undefined,
    rated: false,
  };
}

/** The wind of a storm that has come, by its actual gust: level 1, no direction, no importance (basis 9, holdsTo). */
export function stormWind(station: Station, gust: number): Wind {
  const { method, ground } = station.wind;
  const nominal = method === 'tia222-g' || ownBasis(method) === 'gust3-strength';
  const speed = nominal ? gust : speedIn(ownBasis(method), gust, 'gust3-nominal');
  return {
    ...siteWind(station),
    speed,
    coefficientSpeed: method === 'tia222-h' ? gust / Math.sqrt(0.6) : speed,
    importance: 1,
    directionFactor: 1,
    gust: gustOf(method, supportKind(station), { ground, speed }, swaying(station)),
    level: 1,
    leastPressure: false,
  };
}

/** The wind with ice, by its own gust (EIA-222-F: 75 % of the wind load), no importance on it (basis 6). */
export function iceWind(station: Station): Wind {
  const { ice, wind: told } = station;
  if (ice === undefined) throw new Error('no ice');
  const plain = siteWind(station);
  const { method } = plain;
  const speed =
    method === 'eia222-f'
      ? plain.speed * Math.sqrt(0.75)
      : method === 'en1991-1-4'
        ? speedIn('mean-10min', ice.gust, 'gust3-nominal')
        : ice.gust;
  return {
    ...plain,
    speed,
    coefficientSpeed: speed,
    importance: 1,
    level: iceLevelOf(plain),
    leastPressure: false,
    gust: gustOf(method, supportKind(station), { ground: told.ground, speed }, swaying(station)),
    ice: (z) => iceThickness(plain, { told: ice.thickness, category: told.riskCategory, z }),
  };
}

/** The wind of a rated case: no hill, no thin air, the surface that makes least of it (basis 7). */
function ratedWind(station: Station, told: WindTold, typed: number, roughness: number): Wind {
  const { method, ground, basis, riskCategory } = told;
  const speed = speedIn(ownBasis(method), typed, basis);
  return {
    departures: station.departures,
    method,
    system: station.system,
    speed,
    coefficientSpeed: speed,
    ground,
    importance: importanceOf(method, basis, riskCategory),
    elevationFactor: 1,
    topography: () => 1,
    directionFactor: directionFactorOf(method, supportKind(station)),
    // How it sways counts in a rated case where it does in the plan; else that would credit the tower alone.
    gust: gustOf(
      method,
      supportKind(station),
      { ground, speed },
      isAsce(station.wind.method) ? swaying(station) : { ...swaying(station), frequency: undefined },
    ),
    level: levelOf(method, basis),
    // One unknown where both go by the same standard, else the end that proves least.
    roughness: method === station.wind.method ? roughness : POLISHED,
    leastPressure: false,
    ice: undefined,
    rated: true,
  };
}

// ---- what the wind touches -------------------------------------------------------------------------------------

/** A short piece of something: forces at the allowable level by a wind along its heading and across it. */
interface Slice {
  readonly low: number;
  readonly high: number;
  readonly front: number;
  readonly side: number;
  /** Effective areas along and across, raised where the least pressure of ASCE 7 makes more of them. */
  readonly area: readonly [number, number];
}

export interface Item {
  readonly name: string;
  /** Items that turn together, items fixed at their headings, items that take their own worst. */
  readonly group: 'turning' | 'fixed' | 'alone';
  readonly heading: number;
  readonly onMast: boolean;
  readonly offset: number;
  readonly slices: readonly Slice[];
}

type AreaAt = (z: number) => {
  readonly front: number;
  readonly side: number;
  readonly seen: readonly [number, number];
};

function slicesOf(wind: Wind, low: number, high: number, areaOfMetre: AreaAt): Slice[] {
  const count = Math.max(1, Math.ceil((high - low) / STEP));
  const long = (high - low) / count;
  return Array.from({ length: count }, (_, index) => {
    const z = low + (index + 0.5) * long;
    const { front, side, seen } = areaOfMetre(z);
    const perArea = forceOnArea(wind, z);
    return {
      low: low + index * long,
      high: low + (index + 1) * long,
      front: forceOn(wind, front, seen[0], z) * long,
      side: forceOn(wind, side, seen[1], z) * long,
      area: [
        (forceOn(wind, front, seen[0], z) * long) / perArea,
        (forceOn(wind, side, seen[1], z) * long) / perArea,
      ] as const,
    };
  });
}

function pointOf(wind: Wind, z: number, front: number, side: number, seen: readonly [number, number]): Slice[] {
  return [
    {
      low: z,
      high: z,
      front: forceOn(wind, front, seen[0], z),
      side: forceOn(wind, side, seen[1], z),
      area: [
        forceOn(wind, front, seen[0], z) / forceOnArea(wind, z),
        forceOn(wind, side, seen[1], z) / forceOnArea(wind, z),
      ],
    },
  ];
}

/** The width of a round thing with its ice. */
const iced = (wind: Wind, width: number, z: number) => width + 2 * (wind.ice?.(z) ?? 0);

const even = (area: number, seen: number) => ({ front: area, side: area, seen: [seen, seen] as const });

function loadSlices(wind: Wind, load: Load): Slice[] {
  const { shape, low, high } = load;
  const middle = (low + high) / 2;
  switch (shape.kind) {
    case 'stated': {
      const factor = statedLoad(shape.areaKind);
      if (wind.ice !== undefined) {
        if (shape.iced === undefined) throw new Error('a stated area with ice is not told');
        return pointOf(wind, middle, factor * shape.iced, factor * shape.iced, [0, 0]);
      }
      return pointOf(wind, middle, factor * shape.front, factor * shape.side, [shape.front, shape.side]);
    }
    case 'force': {
      const area = areaOfForce(wind, shape.force, shape.speed);
      return pointOf(wind, middle, area, area, [area, area]);
    }
    case 'tube': {
      if (shape.along === 'upright') {
        return slicesOf(wind, low, high, (z) => {
          const width = iced(wind, shape.width, z);
          return even(width * roundMember(wind, width, shape.length, z), width);
        });
      }
      const seen = iced(wind, shape.width, middle) * shape.length;
      const area = seen * roundMember(wind, iced(wind, shape.width, middle), shape.length, middle);
      return shape.along === 'element'
        ? pointOf(wind, middle, area, 0, [seen, 0])
        : pointOf(wind, middle, 0, area, [0, seen]);
    }
    case 'tubes': {
      let front = 0;
      let side = 0;
      let seenFront = 0;
      let seenSide = 0;
      for (const { along, count, pieces } of shape.tubes) {
        const long = pieces.reduce((sum, { length }) => sum + length, 0);
        for (const { width: bare, length } of pieces) {
          const width = iced(wind, bare, middle);
          const seen = count * width * length;
          const area = seen * roundMember(wind, width, long, middle);
          if (along !== 'boom') {
            front += area;
            seenFront += seen;
          }
          if (along !== 'element') {
            side += area;
            seenSide += seen;
          }
        }
      }
      return pointOf(wind, middle, front, side, [seenFront, seenSide]);
    }
    case 'plate': {
      const front = shape.wide * shape.tall;
      const side = shape.deep * shape.tall;
      return pointOf(
        wind,
        middle,
        front * board(wind, shape.wide, shape.tall),
        side === 0 ? 0 : side * board(wind, shape.deep, shape.tall),
        [front, side],
      );
    }
    case 'wire': {
      // Each end holds what lies nearer to it, as of any beam on two supports.
      const drop = load.high - shape.farHeight;
      const long = Math.hypot(drop, shape.distance);
      const alongHeading = shape.distance / long;
      const pieces = slicesOf(wind, 0, long, (s) => {
        const area = shape.width * roundMember(wind, shape.width, long, load.high - (drop * s) / long);
        return { front: 0, side: area, seen: [0, shape.width] };
      });
      return pieces.map(({ low: from, high: to, area }) => {
        const share = 1 - (from + to) / 2 / long;
        const z = load.high - (drop * (from + to)) / 2 / long;
        const across = area[1] * share;
        const along = across * (1 - alongHeading ** 2);
        const force = forceOnArea(wind, wind.departures.has('wire-at-its-mast-end') ? load.high : z);
        return { low: load.high, high: load.high, front: force * along, side: force * across, area: [along, across] };
      });
    }
    case 'lattice':
      return slicesOf(wind, low, high, (z) => {
        const width = shape.low + ((shape.high - shape.low) * (z - low)) / (high - low);
        return even(
          Math.max(...anglesOf(shape).map((angle) => lattice(wind, shape, width, high - low, z, angle))),
          latticeSeen(shape, width, high - low),
        );
      });
    case 'pole':
      return slicesOf(wind, low, high, (z) => {
        const width = shape.low + ((shape.high - shape.low) * (z - low)) / (high - low);
        return even(width * pole(wind, shape, width, high - low, z), width);
      });
  }
}

export function loadItem(wind: Wind, load: Load, station: Station): Item {
  const fixed = load.heading !== undefined;
  return {
    name: load.name,
    group: load.turns ? 'turning' : fixed ? 'fixed' : 'alone',
    heading: load.heading ?? 0,
    onMast: station.mast !== undefined && load.low >= station.top && load.shape.kind !== 'wire',
    offset: load.offset,
    slices: loadSlices(wind, load),
  };
}

const plain = { heading: 0, offset: 0, group: 'alone' } as const;

/** Of solid steel [Pa]. */
const STEEL_MODULUS = 190e9;

/**
 * What the wind adds to the pull of a wire of no weight (basis 14): its length by stretch is its length by sag, which bisection
 * finds; at the allowable level, or 0.6 of what the strength level gives, if that is more.
 */
function pullItem(wind: Wind, load: Load): readonly Item[] {
  const { shape, high, name } = load;
  if (shape.kind !== 'wire') return [];
  const chord = Math.hypot(shape.distance, high - shape.farHeight);
  const stiffness = (STEEL_MODULUS * Math.PI * shape.width ** 2) / 4;
  const bare = chord / (1 + shape.tension / stiffness);
  const tensionIn = (pressure: number) => {
    const across = pressure * 1.2 * shape.width;
    let [low, most] = [shape.tension, 1e7];
    for (let turn = 0; turn < 200; turn += 1) {
      const middle = (low + most) / 2;
      const bySag = chord * (1 + (across * chord) ** 2 / (24 * middle ** 2));
      if (bySag > bare * (1 + middle / stiffness)) low = middle;
      else most = middle;
    }
    return low;
  };
  const pressure = forceOnArea(wind, high);
  const tension = Math.max(tensionIn(pressure), 0.6 * tensionIn(pressure / 0.6));
  const force = ((tension - shape.tension) * shape.distance) / chord;
  const slice = { low: high, high, front: force, side: force, area: [0, 0] } as const;
  return [{ ...plain, name: `pull of ${name}`, onMast: false, slices: [slice] }];
}

function mastItem(wind: Wind, mast: Mast, station: Station): Item {
  const from = supportKind(station) === 'pole' ? station.top : mast.foot;
  const slices = slicesOf(wind, from, mast.tip, (z) => {
    const width = iced(wind, mast.outside, z);
    // The basis leaves open whose slenderness counts with ice: that of the bare tube asks for more.
    return even(width * roundMember(wind, width, ((mast.tip - mast.foot) * width) / mast.outside, z), width);
  });
  return { ...plain, name: 'mast', onMast: true, slices };
}

function linesItem(wind: Wind, lines: Lines, station: Station): Item {
  const hidden = lines.arrangement === 'inside' && supportKind(station) === 'pole';
  const slices = hidden
    ? []
    : slicesOf(wind, lines.from, lines.to, (z) => even(linesArea(wind, lines, z), linesWidth(lines)));
  return { ...plain, name: lines.name, onMast: false, slices };
}

const widthAt = ({ from, to, shape }: Section, z: number) =>
  shape.low + ((shape.high - shape.low) * (z - from)) / (to - from);

function towerItem(wind: Wind, station: Station, angle: WindAngle): Item {
  const slices = station.sections.flatMap((section) => {
    const { from, to, shape } = section;
    return slicesOf(wind, from, to, (z) => {
      const width = widthAt(section, z);
      if (shape.kind === 'lattice') {
        return even(lattice(wind, shape, width, to - from, z, angle), latticeSeen(shape, width, to - from));
      }
      const round = iced(wind, width, z);
      return even(round * pole(wind, shape, round, station.top - station.base, z), round);
    });
  });
  return { ...plain, name: 'tower', onMast: false, slices };
}

/** Everything that stands in the wind of a station. */
function itemsOf(station: Station, wind: Wind, angle: WindAngle): Item[] {
  return [
    ...station.loads.map((load) => loadItem(wind, load, station)),
    ...station.loads.flatMap((load) => pullItem(wind, load)),
    ...(station.mast === undefined ? [] : [mastItem(wind, station.mast, station)]),
    ...station.lines.map((lines) => linesItem(wind, lines, station)),
    towerItem(wind, station, angle),
  ];
}

/** The winds on the tower itself that are looked at: square on a face, and askew. */
const anglesAt = (station: Station) => anglesOf((station.sections[0] as Section).shape);

// ---- sums ------------------------------------------------------------------------------------------------------

type Weight = (z: number, item: Item) => number;

/** Largest sum over all headings, of what stands above the level. */
function worst(items: readonly Item[], above: number, weight: Weight): number {
  let total = 0;
  const groups = { turning: { mean: 0, x: 0, y: 0 }, fixed: { mean: 0, x: 0, y: 0 } };
  for (const item of items) {
    let front = 0;
    let side = 0;
    for (const slice of item.slices) {
      if (slice.high < above - NEAR) continue;
      const cut = slice.low >= above || slice.high === slice.low ? 1 : (slice.high - above) / (slice.high - slice.low);
      const by = cut * weight((slice.high + Math.max(slice.low, cut < 1 ? above : slice.low)) / 2, item);
      front += by * slice.front;
      side += by * slice.side;
    }
    if (item.group === 'alone') total += Math.max(front, side);
    else {
      const group = groups[item.group];
      const twice = (2 * item.heading * Math.PI) / 180;
      group.mean += (front + side) / 2;
      group.x += ((front - side) / 2) * Math.cos(twice);
      group.y += ((front - side) / 2) * Math.sin(twice);
    }
  }
  for (const { mean, x, y } of Object.values(groups)) total += mean + Math.hypot(x, y);
  return total;
}

// ---- levels of the tower ---------------------------------------------------------------------------------------

export interface Place {
  readonly z: number;
  readonly kind: 'base' | 'joint' | 'section' | 'couple';
  /** In the couple, whether it is the joint at this height that is looked at. */
  readonly atJoint?: boolean;
}

export interface Demand {
  readonly shear: number;
  readonly moment: number;
  /** Force in the braces of a lattice, or the shear of a pole. */
  readonly sideways: number;
  /** Of the moment, what is there without wind. */
  readonly still: number;
}

/** Heights closer than this are the same. */
const NEAR = 1e-6;

/** The section whose steel stands at a place: just below it, but of a joint (and at the base) the upper one. */
function sectionAt(station: Station, { z, kind, atJoint }: Place): Section {
  const ofJoint = kind === 'joint' || kind === 'base' || atJoint === true;
  const section = station.sections.find(({ from, to }) =>
    ofJoint ? z >= from - NEAR && z < to - NEAR : z > from + NEAR && z <= to + NEAR,
  );
  return section ?? (station.sections.at(-1) as Section);
}

/** Width of a face between the axes of its legs, where the legs are told; of a pole its diameter. */
function axesAt(section: Section, z: number): number {
  const { shape } = section;
  const leg = shape.kind === 'lattice' && shape.by.told === 'members' ? shape.by.leg : 0;
  return widthAt(section, z) - leg;
}

/** Height at which the axes of the legs of a section meet. */
function legsMeet(section: Section): number {
  const { from, to } = section;
  const low = axesAt(section, from);
  const high = axesAt(section, to);
  return low === high ? Number.POSITIVE_INFINITY : from + (low * (to - from)) / (low - high);
}

/** What hangs on the mast pushes the tower at the bearing, against its foot (basis 1, rule 3). */
function leverage(station: Station, z: number): { readonly shear: Weight; readonly moment: Weight } {
  const { mast } = station;
  if (mast === undefined) throw new Error('a couple needs a mast');
  const share = (at: number) => (at - mast.foot) / (mast.bearing - mast.foot);
  return {
    shear: (at, item) => (item.onMast ? share(at) : 1),
    moment: (at, item) => (item.onMast ? share(at) * (mast.bearing - z) : at - z),
  };
}

const weightOfMast = ({ outside, wall, foot, tip }: Mast) =>
  (Math.PI / 4) * (outside ** 2 - (outside - 2 * wall) ** 2) * (tip - foot) * STEEL;

/** Moment without wind: weight beyond the rating's, weight off the axis, pull of wires (basis 1, rule 5). */
function stillMoment(station: Station, place: Place): number {
  const { z, kind } = place;
  const { mast } = station;
  const above = (height: number) => height > z - NEAR;
  let weight = 0;
  let eccentric = 0;
  let pullX = 0;
  let pullY = 0;
  for (const load of station.loads) {
    const onMast = mast !== undefined && load.low >= station.top && load.shape.kind !== 'wire';
    if (onMast ? kind !== 'couple' || above(mast.foot) : above((load.low + load.high) / 2)) {
      weight += load.weight;
      eccentric += load.weight * GRAVITY * load.offset;
    }
    if (load.shape.kind === 'wire' && above(load.high)) {
      const pull = levelPull(load) * (load.high - z);
      const heading = ((load.heading ?? 0) * Math.PI) / 180;
      pullX += pull * Math.cos(heading);
      pullY += pull * Math.sin(heading);
    }
  }
  // All that the mast carries stands on its foot.
  if (mast !== undefined && above(mast.foot)) weight += weightOfMast(mast) + station.rotatorWeight;
  for (const lines of station.lines) weight += lines.weight * Math.max(0, lines.to - Math.max(z, lines.from));
  const section = sectionAt(station, place);
  const lever = section.shape.kind === 'pole' ? 0.25 : section.shape.faces === 3 ? 0.29 : 0.36;
  const excess = Math.max(0, weight - station.ratedWeight);
  return excess * GRAVITY * lever * axesAt(section, z) + eccentric + Math.hypot(pullX, pullY);
}

/** The level part of a wire's pull, which runs along its chord. */
function levelPull({ shape, high }: Load): number {
  if (shape.kind !== 'wire') return 0;
  return (shape.tension * shape.distance) / Math.hypot(shape.distance, high - shape.farHeight);
}

/** Shear of the wires' pull above a level. */
function stillShear(station: Station, z: number): number {
  let x = 0;
  let y = 0;
  for (const load of station.loads) {
    if (load.shape.kind !== 'wire' || load.high < z - NEAR) continue;
    x += levelPull(load) * Math.cos(((load.heading ?? 0) * Math.PI) / 180);
    y += levelPull(load) * Math.sin(((load.heading ?? 0) * Math.PI) / 180);
  }
  return Math.hypot(x, y);
}

function demandAt(station: Station, items: readonly Item[], place: Place): Demand {
  const { z, kind } = place;
  const coupled = kind === 'couple';
  const seen = coupled ? items.filter((item) => !item.onMast) : items;
  const weights = coupled ? leverage(station, z) : { shear: () => 1, moment: (at: number) => at - z };
  // In the couple all of the mast counts, also what of it stands below the level.
  const sum = (weight: Weight) =>
    coupled
      ? worst([...seen.map((item) => onlyAbove(item, z)), ...items.filter((item) => item.onMast)], -Infinity, weight)
      : worst(items, z, weight);
  const still = stillMoment(station, place);
  const shear = sum(weights.shear) + stillShear(station, z);
  const moment = sum(weights.moment) + still;
  const section = sectionAt(station, place);
  if (section.shape.kind === 'pole') return { shear, moment, sideways: shear, still };
  const meet = legsMeet(section);
  const twist = (section.shape.faces === 3 ? Math.sqrt(3) : 1) / axesAt(section, z);
  const together = !station.departures.has('twist-by-itself');
  const braces =
    (sign: number): Weight =>
    (at, item) =>
      sign * (weights.shear(at, item) - (meet === Infinity ? 0 : weights.moment(at, item) / (meet - z))) +
      (together ? twist * item.offset : 0);
  const apart = meet !== Infinity && station.departures.has('no-relief-in-braces');
  const straight = apart
    ? withoutRelief(
        coupled ? items.map((item) => (item.onMast ? item : onlyAbove(item, z))) : items,
        coupled ? -Infinity : z,
        braces,
      )
    : Math.max(sum(braces(1)), meet === Infinity ? 0 : sum(braces(-1)));
  const alone = together ? 0 : items.reduce((all, item) => all + twist * item.offset * worst([item], z, () => 1), 0);
  return { shear, moment, sideways: straight + alone + stillShear(station, z), still };
}

/** Forces in braces where the tower's own never relieves that of the loads, nor one group of loads that of another. */
function withoutRelief(items: readonly Item[], above: number, braces: (sign: number) => Weight): number {
  const tower = items.filter(({ name }) => name === 'tower');
  const groups = [
    items.filter(({ group }) => group === 'turning'),
    items.filter(({ group }) => group === 'fixed'),
    ...items.filter(({ group, name }) => group === 'alone' && name !== 'tower').map((item) => [item]),
  ];
  const worse = (of: readonly Item[]) => Math.max(worst(of, above, braces(1)), worst(of, above, braces(-1)));
  const loads = (sign: number) =>
    groups.reduce((sum, group) => sum + Math.max(0, worst(group, above, braces(sign))), 0);
  return worse(tower) + Math.max(loads(1), loads(-1));
}

/** The part of an item above a level. */
function onlyAbove(item: Item, z: number): Item {
  const slices = item.slices
    .filter((slice) => slice.high >= z - NEAR)
    .map((slice) => {
      if (slice.low >= z || slice.high === slice.low) return slice;
      const share = (slice.high - z) / (slice.high - slice.low);
      return { ...slice, low: z, front: slice.front * share, side: slice.side * share };
    });
  return { ...item, slices };
}

// ---- what the ratings prove ------------------------------------------------------------------------------------

interface RatedForce {
  readonly force: number;
  readonly height: number;
}

interface RatedCase {
  readonly forces: readonly RatedForce[];
  /** The tower and the maker's lines in the rated wind. */
  readonly own: readonly Item[];
  /** Proves this moment at the base and nothing else. */
  readonly baseMoment: number | undefined;
}

function ratedCases(station: Station, rating: Rating, angle: WindAngle, roughness: number): RatedCase[] {
  if (rating.kind === 'moment') {
    return [{ forces: [], own: [], baseMoment: rating.moment * (rating.strengthLevel ? 0.6 : 1) }];
  }
  const { wind: told } = rating;
  if (told === undefined) throw new Error('the wind of a rating is not told');
  return rating.cases.map(({ speed, areas }) => {
    const wind = ratedWind(station, told, speed, roughness);
    const own = [towerItem(wind, station, angle)];
    if (rating.lines !== undefined) own.push(linesItem(wind, rating.lines, station));
    return { own, forces: ratedForces(rating, wind, areas), baseMoment: undefined };
  });
}

function ratedForces(rating: Rating, wind: Wind, areas: readonly { readonly area: number; readonly height: number }[]) {
  switch (rating.kind) {
    case 'force':
      return [{ force: rating.force * (rating.strengthLevel ? 0.6 : 1), height: rating.height }];
    case 'area':
      return areas.map(({ area, height }) => ({
        force: forceOnArea(wind, height) * statedRating(rating.areaKind, wind.method) * area,
        height,
      }));
    case 'moment':
    case 'wind':
      return [];
  }
}

/** Moment and shear (or force in the braces) that a rated case proves at one height. */
function provenAt(station: Station, rated: RatedCase, z: number, section: Section, coupled: boolean) {
  let shear = worst(rated.own, z, () => 1);
  let moment = worst(rated.own, z, (at) => at - z);
  if (!coupled) {
    for (const { force, height } of rated.forces) {
      if (height < z - NEAR) continue;
      shear += force;
      moment += force * (height - z);
    }
  } else {
    const { mast } = station;
    if (mast === undefined) throw new Error('a couple needs a mast');
    for (const { force, height } of rated.forces) {
      if (height < z - NEAR) continue;
      const above = Math.max(0, height - station.top);
      shear += force * (mast.manufacturerPlates ? 1 + above / (mast.bearing - mast.foot) : 1);
      moment += force * (Math.min(mast.bearing, height) - z);
    }
  }
  const meet = legsMeet(section);
  const sideways = section.shape.kind === 'pole' || meet === Infinity ? shear : Math.abs(shear - moment / (meet - z));
  return { moment, sideways };
}

export interface Capacity {
  readonly moment: number;
  readonly sideways: number;
}

/** The largest that any rated case proves at a place (basis 1, rules 2, 3 and 7). */
function capacityAt(station: Station, cases: readonly RatedCase[], place: Place): Capacity {
  const { z, kind } = place;
  const section = sectionAt(station, place);
  const alike = station.sections.filter(({ make }) => make === section.make);
  const coupled = kind === 'couple';
  let moment = 0;
  let sideways = 0;
  for (const rated of cases) {
    if (rated.baseMoment !== undefined) {
      if (kind === 'base') moment = Math.max(moment, rated.baseMoment);
      continue;
    }
    const prove = (proven: Capacity) => {
      moment = Math.max(moment, proven.moment);
      sideways = Math.max(sideways, proven.sideways);
    };
    const here = provenAt(station, rated, z, section, coupled);
    prove(here);
    for (const other of alike) {
      const { shape } = other;
      if (kind === 'joint') {
        // Joints of one make are the same joint; the base is none.
        if (alike.some(({ to }) => Math.abs(to - other.from) < NEAR)) {
          prove(provenAt(station, rated, other.from, other, false));
        }
      } else if (kind !== 'base' && place.atJoint !== true && other.uniform) {
        const inCouple = coupled && other.from > (station.mast?.foot ?? 0) + NEAR;
        const lowest = provenAt(station, rated, other.from, other, inCouple);
        prove(coupled ? { ...lowest, sideways: 0 } : lowest);
      } else if (kind === 'section' && shape.kind === 'lattice' && shape.by.told === 'members') {
        // The legs of a taper are the same steel: they share the force in a leg, M/b.
        for (let at = other.from; at < other.to; at += 0.05) {
          const there = provenAt(station, rated, at, other, false);
          moment = Math.max(moment, (there.moment / axesAt(other, at)) * axesAt(section, z));
        }
      }
    }
  }
  // AISC 360: 0.6 Fy A/2 beside Fy S, and A/S is no less than 4/D; a tube too thin for it may buckle.
  const width = stoutTubeAt(station, section, z);
  return { moment, sideways: width === undefined ? sideways : Math.max(sideways, (0.3 * 4 * moment) / width) };
}

/** Width there of a round tube whose wall, by the weight of the tower in steel, is at least a seventieth of it. */
function stoutTubeAt(station: Station, { shape, from, to }: Section, z: number): number | undefined {
  const round = station.sections.every((each) => each.shape.kind === 'pole' && each.shape.sides === 0);
  if (!round || station.weight === 0) return undefined;
  let [length, spread] = [0, 0];
  for (const each of station.sections) {
    length += each.to - each.from;
    spread += ((each.shape.low + each.shape.high) / 2) * (each.to - each.from);
  }
  const metal = station.weight / STEEL / length;
  const wide = Math.max(shape.low, shape.high);
  // The area of a ring of mean width and a seventieth of this section's width.
  const thin = wide / 70;
  if (Math.PI * (spread / length - thin) * thin > metal) return undefined;
  return shape.low + ((shape.high - shape.low) * (z - from)) / (to - from);
}

export interface Compared {
  /** By every wind on the tower and surface that was tried. */
  readonly demands: readonly Demand[];
  /** Undefined where no rating proves anything. */
  readonly bending: number | undefined;
  readonly sideways: number | undefined;
}

/**
 * Surfaces that a round pole may have by EN 1991-1-4, the same on both sides; of ASCE 7 they stand for its drag step, the force
 * just below it kept (galvanised) or the step taken (polished).
 */
function surfacesFor(station: Station): readonly number[] {
  const { method } = station.wind;
  const same = station.ratings.some(({ wind }) => wind?.method === method);
  return same && (isAsce(method) || method === 'en1991-1-4') ? [GALVANISED, POLISHED] : [GALVANISED];
}

/** What a surface and a wind on the tower are tried with on both sides. */
interface Trial {
  readonly roughness: number;
  readonly angle: WindAngle;
  readonly capacities: readonly Capacity[];
}

/** What the ratings prove at places, by every wind on the tower and every surface that is tried. */
export function capacitiesAt(station: Station, places: readonly Place[]): Trial[] {
  return surfacesFor(station).flatMap((roughness) =>
    anglesAt(station).map((angle) => {
      const cases = station.ratings.flatMap((rating) => ratedCases(station, rating, angle, roughness));
      return { roughness, angle, capacities: places.map((place) => capacityAt(station, cases, place)) };
    }),
  );
}

/** Demand over capacity at places, the same wind on the tower and the same surface on both sides, the worst counting. */
export function compareAt(
  station: Station,
  places: readonly Place[],
  trials: readonly Trial[],
  windWith: (roughness: number) => Wind,
): Compared[] {
  const over = (asked: number, proven: number) => (proven < 1e-6 ? undefined : asked / proven);
  const largest = (ratios: readonly (number | undefined)[]) =>
    ratios.some((ratio) => ratio === undefined) ? undefined : Math.max(...(ratios as number[]));
  const tried = trials.map(({ roughness, angle, capacities }) => ({
    items: itemsOf(station, windWith(roughness), angle),
    capacities,
  }));
  return places.map((place, index) => {
    const each = tried.map(({ items, capacities }) => {
      const demand = demandAt(station, items, place);
      const { moment, sideways } = capacities[index] as Capacity;
      return { demand, bending: over(demand.moment, moment), sideways: over(demand.sideways, sideways) };
    });
    return {
      demands: each.map(({ demand }) => demand),
      bending: largest(each.map(({ bending }) => bending)),
      sideways: largest(each.map(({ sideways }) => sideways)),
    };
  });
}

/** Lowest speed at which something reaches 1: scanned upward, since force may drop at a step, then halved. */
export function lowestReachingOne(ratio: (speed: number) => number, step: number, most: number): number | undefined {
  for (let high = step; high <= most; high += step) {
    if (ratio(high) < 1) continue;
    let low = high - step;
    for (let halving = 0; halving < 24; halving++) {
      const middle = (low + high) / 2;
      if (ratio(middle) >= 1) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}

// ---- mast and block --------------------------------------------------------------------------------------------

export interface MastForces {
  readonly bending: number;
  readonly atBearing: number;
  readonly atFoot: number;
  readonly allowable: number;
}

/** Bending at the bearing, and what the mast does to bearing and foot (basis 8); gust factor of masts on towers. */
export function mastForces(station: Station): MastForces {
  const own = mastForcesIn(station, siteWind(station));
  // IBC 1609.1.1 sends antenna structures to TIA-222, whose wind on what stands on a tower counts where it asks for more.
  const beside = BESIDE[station.wind.method];
  if (beside === undefined) return own;
  const speed = speedIn('gust3-strength', station.wind.speed, station.wind.basis);
  const byTower = { ...station, wind: { ...station.wind, method: beside, speed, basis: 'gust3-strength' as const } };
  const second = mastForcesIn(byTower, siteWind(byTower));
  return {
    bending: Math.max(own.bending, second.bending),
    atBearing: Math.max(own.atBearing, second.atBearing),
    atFoot: Math.max(own.atFoot, second.atFoot),
    allowable: own.allowable,
  };
}

const BESIDE: Readonly<Partial<Record<Method, Method>>> = {
  'asce7-10': 'tia222-g',
  'asce7-16': 'tia222-h',
  'asce7-22': 'tia222-h',
};

function mastForcesIn(station: Station, ofStation: Wind): MastForces {
  const { mast } = station;
  if (mast === undefined) throw new Error('no mast');
  const latticeGust = gustOf(ofStation.method, 'lattice', ofStation, swaying(station));
  const wind: Wind = { ...ofStation, gust: Math.max(ofStation.gust, mastGustOf(ofStation, latticeGust)) };
  const items = itemsOf(station, wind, 0).filter((item) => item.onMast);
  const apart = mast.bearing - mast.foot;
  const inside = mast.outside - 2 * mast.wall;
  const modulus = (Math.PI * (mast.outside ** 4 - inside ** 4)) / (32 * mast.outside);
  return {
    bending: worst(items, mast.bearing, (z) => z - mast.bearing),
    atBearing: worst(items, -Infinity, (z) => (z - mast.foot) / apart),
    atFoot: Math.max(
      worst(items, -Infinity, (z) => (z - mast.bearing) / apart),
      worst(items, -Infinity, (z) => (mast.bearing - z) / apart),
    ),
    allowable: (mast.yield * modulus) / 1.67,
  };
}

/** Base shear and moment at the nominal load, of the worse wind on the tower. */
export function nominalReactions(station: Station, wind: Wind): { readonly shear: number; readonly moment: number } {
  const base: Place = { z: station.base, kind: 'base' };
  const each = anglesAt(station).map((angle) => {
    const items = itemsOf(station, wind, angle);
    const { shear, moment } = demandAt({ ...station, ratedWeight: Infinity }, items, base);
    const steady = stillMoment({ ...station, ratedWeight: Infinity }, base);
    const still = stillShear(station, station.base);
    return {
      shear: (shear - still) * nominalOf(wind) + still,
      moment: (moment - steady) * nominalOf(wind) + steady,
    };
  });
  return { shear: Math.max(...each.map(({ shear }) => shear)), moment: Math.max(...each.map(({ moment }) => moment)) };
}

export interface BlockAnswer {
  readonly weight: number;
  readonly momentAtUnderside: number;
  readonly overturning: number;
  readonly olderOverturning: number;
  readonly toePressure: number | undefined;
}

/** A block that stands by its weight (basis 8): tipping by 0.6D + 0.6W and by 1.5, toe pressure with all of D. */
export function blockOf(station: Station, wind: Wind, density: number): BlockAnswer {
  const { block } = station;
  if (block === undefined) throw new Error('no block');
  const { shear, moment } = nominalReactions(station, wind);
  const weight = (block.length * block.width * block.depth * density + weightAloft(station)) * GRAVITY;
  const atUnderside = moment + shear * block.depth;
  const holding = (weight * Math.min(block.length, block.width)) / 2;
  return {
    weight,
    momentAtUnderside: atUnderside,
    overturning: atUnderside / (0.6 * holding),
    olderOverturning: (1.5 * atUnderside) / holding,
    toePressure: worstToePressure(block.length, block.width, weight, atUnderside),
  };
}

function weightAloft(station: Station): number {
  return (
    station.weight +
    station.loads.reduce((sum, { weight }) => sum + weight, 0) +
    station.lines.reduce((sum, { weight, from, to }) => sum + weight * (to - from), 0) +
    (station.mast === undefined ? 0 : weightOfMast(station.mast)) +
    station.rotatorWeight
  );
}

/** Largest pressure under a rectangle over all headings of the moment; undefined once it tips. */
function worstToePressure(length: number, width: number, weight: number, moment: number): number | undefined {
  let most = 0;
  for (let degrees = 0; degrees <= 90; degrees += 1) {
    const heading = (degrees * Math.PI) / 180;
    const pressure = toePressure(length, width, weight, moment * Math.cos(heading), moment * Math.sin(heading));
    if (pressure === undefined) return undefined;
    most = Math.max(most, pressure);
  }
  return most;
}

type Corner = readonly [number, number];

/** p = max(0, a + bx + cy) whose sum is the weight and whose moments are those given, by Newton's steps. */
function toePressure(length: number, width: number, weight: number, alongLength: number, alongWidth: number) {
  const corners: readonly Corner[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  const plan = corners.map(([x, y]): Corner => [(x * length) / 2, (y * width) / 2]);
  const area = length * width;
  const wanted = [weight, alongLength, alongWidth] as const;
  let plane: [number, number, number] = [
    weight / area,
    (12 * alongLength) / (area * length ** 2),
    (12 * alongWidth) / (area * width ** 2),
  ];
  for (let step = 0; step < 200; step++) {
    const m = integrals(pressed(plan, plane));
    const [a, b, c] = plane;
    const matrix = [
      [m.one, m.x, m.y],
      [m.x, m.xx, m.xy],
      [m.y, m.xy, m.yy],
    ] as const;
    const rest = matrix.map(([p, q, r], row) => (wanted[row] as number) - (p * a + q * b + r * c));
    if (rest.every((left, row) => Math.abs(left) < 1e-9 * weight * (row === 0 ? 1 : length))) {
      return Math.max(...plan.map(([x, y]) => a + b * x + c * y));
    }
    const change = solve3(matrix, rest);
    if (change === undefined) return undefined;
    const damped = step < 5 ? 1 : 0.5;
    plane = [a + damped * change[0], b + damped * change[1], c + damped * change[2]];
  }
  return undefined;
}

/** The part of the plan on which the plane presses. */
function pressed(plan: readonly Corner[], [a, b, c]: readonly [number, number, number]): Corner[] {
  const at = ([x, y]: Corner) => a + b * x + c * y;
  return plan.flatMap((corner, index) => {
    const next = plan[(index + 1) % plan.length] as Corner;
    const here = at(corner);
    const there = at(next);
    const kept: Corner[] = here >= 0 ? [corner] : [];
    if (here * there < 0) {
      const share = here / (here - there);
      kept.push([corner[0] + share * (next[0] - corner[0]), corner[1] + share * (next[1] - corner[1])]);
    }
    return kept;
  });
}

/** Integrals of 1, x, y, xx, xy, yy over a polygon: exact by the middles of the edges of its triangles. */
function integrals(polygon: readonly Corner[]) {
  const sums = { one: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0 };
  const [p] = polygon;
  for (let index = 1; p !== undefined && index + 1 < polygon.length; index++) {
    const q = polygon[index] as Corner;
    const r = polygon[index + 1] as Corner;
    const third = Math.abs((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) / 6;
    for (const [u, v] of [
      [p, q],
      [q, r],
      [r, p],
    ] as const) {
      const x = (u[0] + v[0]) / 2;
      const y = (u[1] + v[1]) / 2;
      sums.one += third;
      sums.x += third * x;
      sums.y += third * y;
      sums.xx += third * x * x;
      sums.xy += third * x * y;
      sums.yy += third * y * y;
    }
  }
  return sums;
}

type Row = readonly [number, number, number];

function solve3(m: readonly [Row, Row, Row], right: readonly number[]): Row | undefined {
  const [a, b, c] = m;
  const cross = (u: Row, v: Row): Row => [
    u[1] * v[2] - u[2] * v[1],
    u[2] * v[0] - u[0] * v[2],
    u[0] * v[1] - u[1] * v[0],
  ];
  const dot = (u: Row, v: Row) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  const bc = cross(b, c);
  const determinant = dot(a, bc);
  if (!(Math.abs(determinant) > 1e-18)) return undefined;
  const ca = cross(c, a);
  const ab = cross(a, b);
  const [r0, r1, r2] = right as [number, number, number];
  return [0, 1, 2].map(
    (index) => (r0 * (bc[index] as number) + r1 * (ca[index] as number) + r2 * (ab[index] as number)) / determinant,
  ) as unknown as Row;
}
