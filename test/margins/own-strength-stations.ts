import type { Document } from './any-plan.ts';

const SITE = {
  wind: { speed: 110, basis: 'gust3-strength' },
  exposure: 'C',
  riskCategory: 'II',
  topographicFactor: 1,
};

// What is undefined is not there.
const written = (plan: Document): Document => JSON.parse(JSON.stringify(plan));

const station = (tower: Document, load: Document, more: Document): Document =>
  written({
    units: 'us',
    method: 'tia222-h',
    site: SITE,
    tower: { support: 'free', frequency: 2, damping: 0.01, ...tower },
    loads: [{ on: 'tower', areaKind: 'effective', offset: 0, ...load }],
    cables: [],
    ...more,
  });

/** 40 ft of three faces, 18 in wide, legs of 1.25 in and braces of 0.5 in rod, zigzag of 15 in; 4 ft² at 39 ft. */
export const latticeOfRods = (section: Document = {}, more: Document = {}, tower: Document = {}): Document =>
  station(
    {
      top: 40,
      weight: 650,
      sections: [
        {
          length: 40,
          shape: 'lattice',
          faces: 3,
          width: 18,
          members: 'round',
          leg: 1.25,
          brace: 0.5,
          panel: 15,
          pattern: 'zigzag',
          legWall: 0.625,
          braceWall: 0.25,
          legFree: 15,
          material: 'steel',
          yield: 36,
          uniform: true,
          ...section,
        },
      ],
      ...tower,
    },
    { name: 'beam', height: 39, area: 4, weight: 40 },
    more,
  );

/** A pole of eight sides, 45 ft, 12 in from flat to flat, wall 0.1196 in, 65 ksi; 10 ft² at 44 ft. */
export const poleOfEightSides = (section: Document = {}, more: Document = {}): Document =>
  station(
    {
      top: 45,
      weight: 700,
      sections: [
        { length: 45, shape: 'pole', sides: 8, width: 12, wall: 0.1196, material: 'steel', yield: 65, ...section },
      ],
    },
    { name: 'array', height: 44, area: 10, weight: 100 },
    more,
  );

/** A tube of aluminium welded at its foot, 25 ft, 6 by 0.25 in, 15 and 24 ksi there; 2.5 ft² at 24 ft. */
export const weldedTube = (section: Document = {}, more: Document = {}): Document =>
  station(
    {
      top: 25,
      weight: 140,
      sections: [
        {
          length: 25,
          shape: 'pole',
          sides: 0,
          width: 6,
          wall: 0.25,
          material: 'aluminium',
          yield: 15,
          ultimate: 24,
          ...section,
        },
      ],
    },
    { name: 'vertical', height: 24, area: 2.5, weight: 15 },
    more,
  );
