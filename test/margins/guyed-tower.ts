import type { Document } from './any-plan.ts';

export const GUYS = { by: 'guys', count: 3, diameter: 0.1875, radius: 50 };
export const GUYS_IN_FULL = { ...GUYS, grade: 'extra-high-strength', ends: 'grips', tension: 400 };
export const SECTION = {
  length: 10,
  make: 'straight',
  uniform: true,
  shape: 'lattice',
  faces: 3,
  width: 12,
  members: 'round',
  leg: 1.25,
  brace: 0.4375,
  panel: 16,
  pattern: 'zigzag',
  legWall: 0.083,
  material: 'steel',
};
export const RATED = {
  of: 'tower',
  top: 70,
  height: 70,
  supportedAt: [33, 65],
  area: 12,
  areaKind: 'effective',
  wind: { speed: 90, basis: 'gust3-nominal', method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
};

/** A 70 ft lattice of seven sections alike on two levels of three guys, rated for 12 ft² at its top in 90 mph. */
export function guyedPlan(tower: Document = {}, more: Document = {}): Document {
  return {
    units: 'us',
    method: 'tia222-g',
    site: { wind: { speed: 90, basis: 'gust3-nominal' }, exposure: 'C', riskCategory: 'II' },
    tower: {
      support: 'guyed',
      top: 70,
      sections: Array.from({ length: 7 }, () => SECTION),
      weight: 450,
      asDrawn: true,
      baseHeld: false,
      used: false,
      supportedAt: [
        { height: 33, ...GUYS_IN_FULL },
        { height: 65, ...GUYS_IN_FULL },
      ],
      ...tower,
    },
    loads: [topLoad(12)],
    cables: [],
    ratings: [RATED],
    ...more,
  };
}

const load = (area: number) => ({
  front: area,
  side: area,
  areaKind: 'effective',
  weight: 0.001,
  offset: 0,
  heading: 0,
});

/** At the very top, on the axis. */
export function topLoad(area: number): Document {
  return { name: 'top', height: 70, on: 'tower', ...load(area) };
}

/** Between the guys, on the axis. */
export function sideLoad(area: number, height = 50): Document {
  return { name: 'side', height, on: 'tower', ...load(area) };
}
