import { type Departure, FIELD, type Told } from './told-station.ts';

/*
 * Where the product departs from the basis, each with a plan that shows it. The calculator goes by the basis; the random
 * plans are compared with these departures switched on, so that they and nothing else explain a difference. A departure
 * that is mended is struck here and in DEPARTURES: its own test says so by failing.
 */
export interface Known {
  readonly says: string;
  /** Which way the product errs. */
  readonly side: 'unsafe' | 'safe';
  readonly plan: Told;
}

const lattice = {
  shape: 'lattice',
  faces: 3,
  members: 'round',
  width: 18,
  leg: 1.25,
  brace: 0.5,
  panel: 18,
  pattern: 'zigzag',
};

const rated = { speed: 115, basis: 'gust3-strength', method: 'asce7-16', exposure: 'C', riskCategory: 'II' };

interface Changes {
  readonly method?: string;
  readonly units?: string;
  readonly site?: Told;
  readonly tower?: Told;
  readonly sections?: readonly Told[];
  readonly mast?: Told;
  readonly rotator?: Told;
  readonly loads?: readonly Told[];
  readonly rating?: Told;
}

/** A 40 ft lattice in everyday wind, changed in what matters. */
function plan({
  method = 'asce7-16',
  units = 'us',
  site,
  tower,
  sections,
  mast,
  rotator,
  loads,
  rating,
}: Changes): Told {
  return {
    units,
    method,
    site: {
      wind: { speed: 115, basis: 'gust3-strength' },
      ...(method === 'en1991-1-4' ? {} : { exposure: 'C' }),
      riskCategory: 'II',
      groundElevation: 0,
      topographicFactor: 1,
      ...site,
    },
    tower: {
      support: 'free',
      top: 40,
      frequency: 3,
      damping: 0.01,
      weight: 300,
      sections: sections ?? [{ length: 10, count: 4, ...lattice }],
      ...tower,
    },
    ...(mast === undefined ? {} : { mast, rotator: rotator ?? { height: 34, weight: 40 } }),
    loads: loads ?? [{ name: 'beam', area: 8, areaKind: 'effective', turns: true, above: 2, weight: 0 }],
    cables: [],
    ratings: [{ of: 'tower', area: 12, areaKind: 'effective', above: 0, wind: rated, ...rating }],
  };
}

const mast = {
  outside: 2,
  wall: 0.25,
  yield: 46,
  length: 14,
  inside: 6,
  bearing: 40,
  material: 'steel',
  [FIELD.manufacturerPlates]: false,
};

const enWind = { wind: { speed: 25, basis: 'mean-10min' }, terrain: 'II' };
const enRated = { speed: 25, basis: 'mean-10min', method: 'en1991-1-4', terrain: 'II', riskCategory: 'II' };
const roundPole = (width: number, length: number) => ({ length, count: 3, shape: 'pole', sides: 0, width });

export const KNOWN: Readonly<Record<Departure, Known>> = {
  'lattice-load-face-on': {
    says: 'A lattice given as a load has no direction factor: square, it is up to 16.7 % low.',
    side: 'unsafe',
    plan: plan({
      loads: [
        { name: 'cage', ...lattice, faces: 4, width: 10, leg: 1, panel: 10, height: [22, 30], weight: 0, offset: 0 },
      ],
    }),
  },
  'wire-at-its-mast-end': {
    says: 'A wire has the pressure of its upper end along all of its length; by statics the tower holds each piece by its distance from the far end, at the height of that piece.',
    side: 'safe',
    plan: plan({
      loads: [
        {
          name: 'dipole leg',
          shape: 'wire',
          diameter: 0.2,
          height: 38,
          to: { distance: 90, height: 8, heading: 90 },
          tension: 20,
          offset: 0,
          weight: 0,
        },
      ],
    }),
  },
  'further-area-at-the-bearing': {
    says: 'Within the couple a further area of the rated case that stands below the bearing is credited with the arm from the bearing, not from its own height: 20 % at the mast’s foot.',
    side: 'unsafe',
    plan: plan({
      tower: { top: 20 },
      sections: [{ ...roundPole(4, 20), count: 1, width: [5, 3] }],
      mast: { ...mast, bearing: 20 },
      rotator: { height: 14, weight: 40 },
      rating: { [FIELD.furtherAreas]: [{ area: 5, height: 15 }] },
    }),
  },
  'twist-by-itself': {
    says: 'Shear and twist in the braces each take their own worst heading; as one demand they have one.',
    side: 'safe',
    plan: plan({
      loads: [
        { name: 'panel', front: 6, side: 1, areaKind: 'effective', heading: 0, height: 30, offset: 2, weight: 0 },
        { name: 'sign', front: 9, side: 1, areaKind: 'effective', heading: 90, height: 35, offset: 0, weight: 0 },
      ],
    }),
  },
  'weight-on-the-widest': {
    says: 'The moment of weight, 0.29 W b, takes the outer width at the foot of the section for the distance of the leg axes at the level.',
    side: 'safe',
    plan: plan({
      loads: [{ name: 'beam', area: 1, areaKind: 'effective', turns: true, above: 1, weight: 400 }],
    }),
  },
  'drag-step-in-feet': {
    says: 'In SI the drag step of ASCE’s chimneys stands at 2.5 ft and psf, 5.27 in m and Pa, where the printed 5.3 is: 1 % less force past the step.',
    side: 'unsafe',
    plan: plan({
      units: 'si',
      site: { wind: { speed: 60, basis: 'gust3-strength' } },
      tower: { top: 12 },
      sections: [{ length: 3, count: 4, ...lattice, width: 450, leg: 32, brace: 12, panel: 450 }],
      loads: [{ name: 'stack', shape: 'tube', along: 'upright', diameter: 130, height: [12, 16], weight: 0 }],
      rating: { area: 1, wind: { ...rated, speed: 60 } },
    }),
  },
  'hill-below-least-height': {
    says: 'Below the least height of a terrain EN 1991-1-4 holds the turbulence of that height, its hill included; with the hill of the lower place it is less: 2.5 % of the pressure at 6 m in terrain IV (4.4, from memory).',
    side: 'unsafe',
    plan: plan({
      units: 'si',
      method: 'en1991-1-4',
      site: {
        ...enWind,
        terrain: 'IV',
        topographicFactor: undefined,
        hill: { shape: 'ridge', height: 40, halfLength: 60, distance: 0, side: 'upwind', isolated: true },
      },
      tower: { top: 12 },
      sections: [{ length: 3, count: 4, ...lattice, width: 450, leg: 32, brace: 12, panel: 450 }],
      loads: [{ name: 'panel', area: 0.5, areaKind: 'effective', height: 6, offset: 0, weight: 0 }],
      rating: { area: 1, wind: enRated },
    }),
  },
  'rated-bundle-at-1.2': {
    says: 'Lines that a rating includes as a bundle count at 1.2 of its width even where the smaller of the two, the lines singly, is less: by RS-222-C 2/3 of each, by EN 1.10.',
    side: 'unsafe',
    plan: plan({
      rating: {
        areaKind: 'flat-plate',
        wind: { speed: 80, basis: 'fastest-mile', method: 'rs222-c', riskCategory: 'II' },
        withCables: { count: 3, diameter: 0.9, [FIELD.arrangement]: 'bundle' },
      },
    }),
  },
  'no-relief-in-braces': {
    says: 'In the braces of a taper the wind on the tower does not relieve that of loads above where the legs meet, as S = |V - M/(za - z)| has it.',
    side: 'safe',
    plan: plan({
      tower: { top: 20 },
      sections: [
        { length: 10, ...lattice, width: [30, 18] },
        { length: 10, ...lattice },
      ],
      loads: [{ name: 'beam', area: 8, areaKind: 'effective', turns: true, height: 28, weight: 0 }],
    }),
  },
};
