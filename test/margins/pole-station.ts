import type { Document } from './any-plan.ts';

/** Open country in 100 mph, a three-second gust. */
export const POLE_SITE = {
  wind: { speed: 100, basis: 'gust3-strength' },
  exposure: 'C',
  riskCategory: 'II',
} as const;

/** A round pole of 40 ft in two sections. */
export const poleOn = (foundation: Document): Document => ({
  support: 'free',
  top: 40,
  weight: 500,
  sections: [
    { name: 'A', length: 20, shape: 'pole', width: 6, sides: 0 },
    { name: 'B', length: 20, shape: 'pole', width: 5, sides: 0 },
  ],
  foundation,
});

/** Its rating in the wind of its site. */
export const poleRating = (area: number): Document => ({
  of: 'tower',
  area,
  areaKind: 'effective',
  top: 40,
  wind: { speed: 100, method: 'tia222-h', exposure: 'C', riskCategory: 'II' },
});

/** What a plan of it says of itself. */
export const POLE_PLAN = { units: 'us', method: 'tia222-h', site: POLE_SITE, cables: [] } as const;
