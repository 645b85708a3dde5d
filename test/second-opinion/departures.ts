import type { Departure, Told } from './told-station.ts';

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

export const KNOWN: Readonly<Record<Departure, Known>> = {
  'wire-at-its-mast-end': {
    says: 'A wire has the pressure of its upper end along all of its length; by statics the tower holds each piece by its distance from the far end, at the height of that piece.',
    side: 'safe',
    plan: plan({
      loads: [
        {
          name: 'dipole leg',
          shape: 'wire',
          diameter: 0.02,
          height: 38,
          to: { distance: 2000, height: 0, heading: 90 },
          tension: 20,
          offset: 0,
          weight: 0,
        },
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
  'no-relief-in-braces': {
    says: 'In the braces of a taper the wind on the tower does not relieve that of loads above where the legs meet, as S = |V - M/(za - z)| has it.',
    side: 'safe',
    plan: plan({
      tower: { top: 20 },
      sections: [
        { length: 10, ...lattice, width: [30, 18] },
        { length: 10, ...lattice },
      ],
      loads: [{ name: 'beam', on: 'tower', area: 8, areaKind: 'effective', turns: true, height: 28, weight: 0 }],
    }),
  },
};
