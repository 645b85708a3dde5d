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
    ratings: [
      { of: 'tower', area: 12, areaKind: 'effective', above: 0, top: tower?.['top'] ?? 40, wind: rated, ...rating },
    ],
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
  'own-surface-each-side': {
    says: 'A pole rated by EN 1991-1-4 is galvanised in its demand and polished in its capacity, so that its own case reads more than 1.',
    side: 'safe',
    plan: plan({
      units: 'si',
      method: 'en1991-1-4',
      site: enWind,
      tower: { top: 12 },
      sections: [roundPole(200, 4)],
      loads: [{ name: 'panel', area: 0.5, areaKind: 'effective', above: 0.001, weight: 0 }],
      rating: { area: 0.5, wind: enRated },
    }),
  },
  'least-pressure-on-a-square-metre': {
    says: 'A force stated at a speed is held as 1 m² with a small coefficient, so that ASCE 7’s 16 psf act on a whole square metre: 20 lbf at 100 mph become 103 lbf.',
    side: 'safe',
    plan: plan({ loads: [{ name: 'vane', force: 20, wind: 100, above: 2, weight: 0 }] }),
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
  'rated-case-rigid': {
    says: 'Under ASCE 7 with a frequency below 1 Hz only the demand has the computed gust effect, the rated case of the same tower 0.85: its own case reads 1.7.',
    side: 'safe',
    plan: plan({ tower: { frequency: 0.5 } }),
  },
  'couple-in-one-section': {
    says: 'Within the couple of the mast the proven moment of sections of one make is not shared, as rule 2 has it everywhere else.',
    side: 'safe',
    plan: plan({
      mast: mast,
      sections: [{ length: 10, count: 4, ...lattice, make: 'one' }],
    }),
  },
  'couple-point-by-point': {
    says: 'In a section that lies within the couple as a whole the proven moment is taken point by point, not its largest: a few N·m at the bearing read over 1.',
    side: 'safe',
    plan: plan({
      tower: { top: 40 },
      mast: mast,
      sections: [
        { length: 12, count: 3, ...lattice },
        { length: 4, ...lattice, width: 20 },
      ],
      loads: [
        { name: 'beam', area: 8, areaKind: 'effective', turns: true, above: 2, weight: 0 },
        { name: 'sign', area: 1, areaKind: 'effective', height: 38, offset: 0, weight: 0 },
      ],
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
  'step-in-demand-only': {
    says: 'A round pole past ASCE’s drag step has the force just below the step in its demand alone, not in its rated case.',
    side: 'safe',
    plan: plan({
      sections: [{ ...roundPole(6, 10), count: 4 }],
      loads: [{ name: 'panel', area: 1, areaKind: 'effective', above: 0.001, weight: 0 }],
      rating: { area: 1 },
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
