import { describe, expect, it } from 'vitest';
import { type FaultCode, planDocumentSchema } from '../../src/plan/index.ts';
import { changed, faultsOf, type Sample } from './sample-plans.ts';

interface Case {
  readonly plan: Sample;
  readonly at: string;
  readonly says: string;
}

const bare = { shape: null, faces: null, width: null, members: null };
const load = (fields: Sample): Sample => changed({ loads: [{ name: 'thing', ...fields }] });
const tower = (fields: Sample): Sample => changed({ tower: fields });
const mast = (fields: Sample, more: Sample = {}): Sample =>
  changed({ mast: { outside: 2, length: 10, inside: 4, ...fields }, ...more });
const rating = (fields: Sample): Sample => changed({ ratings: [{ of: 'tower', ...fields }] });
const hill = { shape: 'ridge', height: 60, distance: 50, side: 'upwind' };
const climate = (fields: Sample): Sample => changed({ site: { climate: { basis: 'gust3-nominal', ...fields } } });
const chart = [
  [10, 76],
  [50, 92],
];
const members = { leg: 1.25, brace: 0.4375, panel: 16 };

/** Every code of a fault of sense has its cases here; those of form are in document-faults.test.ts. */
const CASES: Partial<Record<FaultCode, readonly Case[]>> = {
  unreadable: [{ plan: tower({ top: 'tall' }), at: '#/tower/top', says: 'Tower top: "tall" is not a length.' }],
  'ambiguous-comma': [
    { plan: tower({ top: '1,250' }), at: '#/tower/top', says: 'Tower top: "1,250" can mean two numbers.' },
  ],
  'unknown-unit': [
    {
      plan: load({ above: 2, area: '5 ft' }),
      at: '#/loads/0/area',
      says: 'thing area: "5 ft" names no unit known for an area.',
    },
  ],
  'too-long': [
    { plan: tower({ top: '4'.repeat(41) }), at: '#/tower/top', says: 'Tower top has more than 40 characters' },
  ],
  'out-of-bounds': [
    {
      plan: changed({ site: { wind: 1200 } }),
      at: '#/site/wind',
      says: 'Site wind: 1200 mph given, 0 to 400 mph allowed.',
    },
    { plan: changed({ site: { wind: '700 km/h' } }), at: '#/site/wind', says: '700 km/h given, 0 to 400 mph allowed' },
    { plan: changed({ site: { wind: 0 } }), at: '#/site/wind', says: '0 mph given, more than 0 mph allowed' },
    { plan: tower({ top: 2001 }), at: '#/tower/top', says: '2001 ft given, 0 to 2000 ft allowed' },
    { plan: changed({ tower: { base: -1e-115 } }), at: '#/tower/base', says: 'given, 0 to 2000 ft allowed' },
    {
      plan: load({ above: 2, area: 2001 }),
      at: '#/loads/0/area',
      says: 'thing area: 2001 ft² given, 0 to 2000 ft² allowed.',
    },
    { plan: load({ above: 2, area: -1 }), at: '#/loads/0/area', says: '-1 ft² given' },
    {
      plan: load({ above: 2, area: 3, heading: 361 }),
      at: '#/loads/0/heading',
      says: '361 ° given, 0 to 360 ° allowed',
    },
    { plan: changed({ wanted: { margin: 20 } }), at: '#/wanted/margin', says: '20 given, 0 to 0.95 allowed' },
    {
      plan: changed({ cables: [{ count: 1, diameter: 0 }] }),
      at: '#/cables/0/diameter',
      says: '0 in given, more than 0 in allowed',
    },
    { plan: mast({ yield: 46000 }), at: '#/mast/yield', says: '46000 ksi given, 0 to 300 ksi allowed' },
  ],
  'one-of': [
    { plan: changed({ site: { hill } }), at: '#/site/hill', says: 'neither run nor halfLength given' },
    {
      plan: changed({ site: { hill: { ...hill, run: 9, halfLength: 9 } } }),
      at: '#/site/hill',
      says: 'run and halfLength given',
    },
    {
      plan: changed({ site: { hill: { ...hill, run: 300 }, topographicFactor: 1.3 } }),
      at: '#/site/topographicFactor',
      says: 'Site has a hill and a topographic factor',
    },
    {
      plan: changed({ site: { climate: { basis: 'gust3-nominal' } } }),
      at: '#/site/climate',
      says: 'neither returnPeriods nor yearlyMax',
    },
    {
      plan: climate({ returnPeriods: chart, yearlyMax: [60, 70, 65, 62, 71] }),
      at: '#/site/climate',
      says: 'returnPeriods and yearlyMax given. Give one of the two.',
    },
    { plan: load({ above: 2 }), at: '#/loads/0', says: 'thing has no area' },
    {
      plan: load({ above: 2, area: 3, front: 2, side: 1 }),
      at: '#/loads/0',
      says: 'thing has area and front or side: keep one',
    },
    {
      plan: load({ above: 2, area: 3, force: 9, wind: 70 }),
      at: '#/loads/0',
      says: 'thing has area and force or wind',
    },
    {
      plan: load({ above: 2, shape: 'tubes', tubes: [{ along: 'boom', diameter: 2 }] }),
      at: '#/loads/0/tubes/0',
      says: 'thing row of tubes 1: diameter given. Give diameter and length',
    },
    {
      plan: load({ above: 2, shape: 'tubes', tubes: [{ along: 'boom' }] }),
      at: '#/loads/0/tubes/0',
      says: 'nothing given',
    },
    {
      plan: load({
        above: 2,
        shape: 'wire',
        diameter: 0.1,
        tension: 50,
        sag: 2,
        to: { distance: 9, height: 9, heading: 0 },
      }),
      at: '#/loads/0',
      says: 'thing has a tension and a sag',
    },
    { plan: tower({ ...members, solidity: 0.2 }), at: '#/tower', says: 'says in several ways how solid it is' },
    { plan: rating({ wind: 70 }), at: '#/ratings/0', says: 'Rating 1: neither area nor areasBySpeed given' },
    {
      plan: rating({ area: 9, areasBySpeed: [[70, 9]] }),
      at: '#/ratings/0',
      says: 'Rating 1: area and areasBySpeed given',
    },
    {
      plan: rating({ areasBySpeed: [[70, 9]], wind: 70 }),
      at: '#/ratings/0/wind',
      says: 'areas by speed, and a speed',
    },
  ],
  'goes-with': [
    {
      plan: tower({ sections: [{ length: 48 }] }),
      at: '#/tower/shape',
      says: '"shape" beside its top: put the shape into each section',
    },
    { plan: tower({ standsAt: 20 }), at: '#/tower/standsAt', says: 'Tower cranked to 20 ft: say "telescopes": true' },
    { plan: tower({ nested: 20 }), at: '#/tower/nested', says: 'has a nested height but does not telescope' },
    {
      plan: tower({ support: 'bracketed', supportedAt: [{ height: 30, by: 'bracket', count: 3 }] }),
      at: '#/tower/supportedAt/0/count',
      says: 'Tower support 1 is a bracket: "count" describes guys',
    },
    {
      plan: tower({ foundation: { kind: 'manufacturer', depth: 4 } }),
      at: '#/tower/foundation/depth',
      says: '"depth" does not belong to manufacturer',
    },
    {
      plan: load({ above: 2, force: 9, wind: 70, areaKind: 'effective' }),
      at: '#/loads/0/areaKind',
      says: 'describes an area',
    },
    {
      plan: rating({ of: 'gear', kind: 'force', workingLoad: 9 }),
      at: '#/ratings/0/kind',
      says: 'lifting gear, which has no kind',
    },
    {
      plan: rating({ areasBySpeed: [[70, 9]], furtherAreas: [{ area: 1, height: 9 }] }),
      at: '#/ratings/0/furtherAreas',
      says: 'further areas belong to one case',
    },
  ],
  missing: [
    {
      plan: tower({ foundation: { kind: 'block', length: 5, width: 5, depth: 4 } }),
      at: '#/tower/foundation/soilBearing',
      says: 'a block needs "soilBearing"',
    },
  ],
  'wrong-type': [
    {
      plan: load({ above: 2, shape: 'dish', diameter: [1, 2] }),
      at: '#/loads/0/diameter',
      says: 'a dish has one diameter',
    },
    {
      plan: load({ height: [1, 2], shape: 'wire', diameter: 0.1, to: { distance: 9, height: 9, heading: 0 } }),
      at: '#/loads/0/height',
      says: 'a wire starts at one height',
    },
  ],
  'name-not-unique': [
    {
      plan: changed({
        loads: [
          { name: 'Beam', above: 2, area: 3 },
          { name: 'beam ', above: 1, area: 3 },
        ],
      }),
      at: '#/loads/1/name',
      says: 'Loads 1 and 2 are both called "beam "',
    },
  ],
  'height-or-above': [
    { plan: load({ area: 3 }), at: '#/loads/0', says: 'thing: neither height nor above given' },
    { plan: load({ height: 9, above: 3, area: 3 }), at: '#/loads/0', says: 'thing: height and above given' },
    { plan: rating({ area: 3, height: 9, above: 3 }), at: '#/ratings/0', says: 'has a height and an above' },
  ],
  'low-above-high': [
    {
      plan: load({ height: '20 to 10', area: 3 }),
      at: '#/loads/0/height',
      says: 'its lower end at 20 ft is above its upper end at 10 ft',
    },
    { plan: load({ above: [-1, -2], area: 3 }), at: '#/loads/0/above', says: 'its lower end at -1 ft is above' },
    {
      plan: changed({ cables: [{ count: 1, diameter: 1, from: 30, to: 20 }] }),
      at: '#/cables/0',
      says: 'runs from 30 ft to 20 ft',
    },
  ],
  'base-above-top': [
    { plan: tower({ base: 48 }), at: '#/tower/base', says: 'Tower base at 48 ft is not below its top at 48 ft' },
    {
      plan: changed({ tower: { base: 20 }, ratings: [{ of: 'tower', area: 9, top: 20 }] }),
      at: '#/ratings/0/top',
      says: 'is for a top at 20 ft',
    },
  ],
  'sections-do-not-add-up': [
    {
      plan: tower({ ...bare, sections: [{ length: 10, count: 4 }] }),
      at: '#/tower/sections',
      says: 'add up to 40 ft, and from its base to its top it is 48 ft: 8 ft are missing',
    },
    { plan: tower({ ...bare, base: 8, sections: [{ length: 48 }] }), at: '#/tower/sections', says: '8 ft too much' },
  ],
  'sections-do-not-overlap': [
    {
      plan: tower({ ...bare, telescopes: true, sections: [{ length: 60 }] }),
      at: '#/tower/sections',
      says: 'one section has nothing to slide into',
    },
    {
      plan: tower({ ...bare, telescopes: true, sections: [{ length: 24, count: 2 }] }),
      at: '#/tower/sections',
      says: 'are together longer than the 48 ft',
    },
    {
      plan: tower({ ...bare, telescopes: true, sections: [{ length: 40 }, { length: 18 }, { length: 30 }] }),
      at: '#/tower/sections',
      says: 'they would overlap by 20 ft each, and the shortest is 18 ft',
    },
  ],
  'too-many': [
    {
      plan: tower({ ...bare, top: 61, sections: [{ length: 1, count: 60 }, { length: 1 }] }),
      at: '#/tower/sections',
      says: '61 with their counts, at most 60',
    },
  ],
  'nested-outside': [
    {
      plan: tower({ telescopes: true, nested: 49 }),
      at: '#/tower/nested',
      says: 'Tower nested at 49 ft is not between its base and its top',
    },
  ],
  'nested-below-base': [
    {
      // Three of 22 ft, 16 ft apart, sink by half of 54 ft − nested each: to 22 ft and no lower.
      plan: tower({ ...bare, top: 54, telescopes: true, nested: 21, sections: [{ length: 22, count: 3 }] }),
      at: '#/tower/nested',
      says: 'Tower nested at 21 ft: a section would reach below its base. With these sections give 22 ft or more',
    },
  ],
  'stands-outside': [
    {
      plan: tower({
        ...bare,
        top: 54,
        telescopes: true,
        nested: 24,
        standsAt: 20,
        sections: [{ length: 22, count: 3 }],
      }),
      at: '#/tower/standsAt',
      says: 'Tower cranked to 20 ft is not between nested and fully up: give the height of its top, 24 ft to 54 ft',
    },
  ],
  'stands-in-the-way': [
    {
      plan: {
        ...tower({
          ...bare,
          top: 54,
          telescopes: true,
          nested: 24,
          standsAt: 30,
          sections: [{ length: 22, count: 3 }],
        }),
        loads: [{ name: 'arm', height: 30, area: 1, on: 'tower' }],
      },
      at: '#/tower/standsAt',
      says: 'Tower cranked to 30 ft: there “arm” would meet the section below',
    },
  ],
  'hinge-outside': [
    {
      plan: tower({ hinge: { height: 48 } }),
      at: '#/tower/hinge/height',
      says: 'Tower hinge at 48 ft is not on the tower',
    },
  ],
  'support-outside': [
    {
      plan: tower({ support: 'guyed', supportedAt: [{ height: 49, by: 'guys' }] }),
      at: '#/tower/supportedAt/0/height',
      says: 'Tower support 1 at 49 ft does not meet the tower',
    },
    {
      plan: rating({ area: 9, top: 40, supportedAt: [20, 44] }),
      at: '#/ratings/0/supportedAt/1',
      says: 'at 44 ft does not meet the tower it is stated for',
    },
  ],
  'supported-but-free': [
    {
      plan: tower({ supportedAt: [{ height: 40, by: 'guys' }] }),
      at: '#/tower/supportedAt',
      says: 'Tower is "free" but has supports',
    },
  ],
  'tapered-yet-uniform': [
    {
      plan: tower({ ...bare, sections: [{ length: 48, uniform: true, shape: 'pole', width: [9, 4] }] }),
      at: '#/tower/sections/0/uniform',
      says: 'tapers and is called uniform',
    },
  ],
  'wall-too-thick': [
    {
      plan: mast({ wall: 1.5 }),
      at: '#/mast/wall',
      says: 'Mast wall 1.5 in does not fit in a 2 in tube: give less than 1 in.',
    },
    { plan: mast({ wall: 1 }), at: '#/mast/wall', says: 'Mast wall 1 in does not fit' },
    {
      plan: load({ above: 2, shape: 'tubes', tubes: [{ along: 'boom', taper: [[1, 9, 0.6]] }] }),
      at: '#/loads/0/tubes/0/taper/0/2',
      says: 'wall 0.6 in does not fit in a 1 in tube',
    },
    {
      plan: mast({ pieces: [{ outside: 2, wall: 1, from: 0, to: 10 }] }),
      at: '#/mast/pieces/0/wall',
      says: 'Mast piece 1 wall 1 in',
    },
  ],
  'rupture-below-yield': [
    {
      plan: mast({ wall: 0.25, material: 'aluminium', yield: 35, ultimate: 30 }),
      at: '#/mast/ultimate',
      says: 'Mast breaks at 30 ksi and yields at 35 ksi: no metal breaks before it yields.',
    },
    {
      plan: mast({ ultimate: 38, pieces: [{ outside: 2, wall: 0.25, from: 0, to: 10, yield: 40 }] }),
      at: '#/mast/ultimate',
      says: 'Mast breaks at 38 ksi and yields at 40 ksi',
    },
    {
      plan: load({ above: 2, shape: 'tubes', tubes: [{ along: 'boom', taper: [[1, 9]], yield: 35, ultimate: 34 }] }),
      at: '#/loads/0/tubes/0/ultimate',
      says: 'breaks at 34 ksi and yields at 35 ksi',
    },
  ],
  'leg-too-wide': [
    {
      plan: tower({ ...members, leg: 9 }),
      at: '#/tower/leg',
      says: 'legs of 9 in fill a face of 18 in. Give less than 9 in.',
    },
  ],
  'brace-too-wide': [
    { plan: tower({ ...members, brace: 8 }), at: '#/tower/brace', says: 'braces of 8 in fill panels of 16 in' },
  ],
  'panel-too-long': [
    {
      plan: tower({ ...members, panel: 600 }),
      at: '#/tower/panel',
      says: 'a panel of 600 in is longer than the 48 ft',
    },
  ],
  'solidity-too-high': [{ plan: tower({ solidity: 1 }), at: '#/tower/solidity', says: 'a face 1 solid is no lattice' }],
  'face-overfull': [
    {
      plan: tower({ roundArea: 72 }),
      at: '#/tower',
      says: 'members of 72 ft² do not leave a lattice in a face of 72 ft²',
    },
  ],
  'mast-missing': [
    {
      plan: load({ above: 2, area: 3, on: 'mast' }),
      at: '#/loads/0/on',
      says: 'thing is on the mast, and the plan has no mast',
    },
  ],
  'mast-inside-too-long': [
    {
      plan: mast({ inside: 11 }),
      at: '#/mast/inside',
      says: '11 ft inside the tower is more than its whole length of 10 ft',
    },
  ],
  'mast-below-base': [
    {
      plan: mast({ length: 60, inside: 50 }),
      at: '#/mast/inside',
      says: "its lower end at -2 ft is below the tower's base at 0 ft",
    },
    {
      plan: changed({ tower: { base: 20 }, mast: { outside: 2, length: 40 }, rotator: { height: 10 } }),
      at: '#/rotator/height',
      says: 'its lower end at 10 ft',
    },
  ],
  'mast-base-twice': [
    {
      plan: mast({}, { rotator: { height: 42 } }),
      at: '#/mast/inside',
      says: '4 ft inside puts its lower end at 44 ft, and the rotator it stands on is at 42 ft',
    },
  ],
  'mast-misses-bearing': [
    {
      plan: mast({ bearing: 55 }),
      at: '#/mast/bearing',
      says: 'Mast reaches up to 54 ft, not to its bearing at 55 ft',
    },
    {
      plan: changed({ mast: { outside: 2, length: 10 }, rotator: { height: 30 }, loads: [] }),
      at: '#/mast/bearing',
      says: 'reaches up to 40 ft',
    },
  ],
  'bearing-below-mast': [
    {
      plan: mast({ bearing: 44 }),
      at: '#/mast/bearing',
      says: "bearing at 44 ft is not above the mast's lower end at 44 ft",
    },
  ],
  'pieces-leave-a-gap': [
    {
      plan: mast({
        pieces: [
          { outside: 2, wall: 0.2, from: 0, to: 4 },
          { outside: 2, wall: 0.2, from: 5, to: 10 },
        ],
      }),
      at: '#/mast/pieces',
      says: 'nothing stands right above 4 ft, and the mast is 10 ft long',
    },
    {
      plan: mast({ pieces: [{ outside: 2, wall: 0.2, from: 0, to: 8 }] }),
      at: '#/mast/pieces',
      says: 'nothing stands right above 8 ft',
    },
  ],
  'pieces-do-not-nest': [
    {
      plan: mast({
        pieces: [
          { outside: 2, wall: 0.2, from: 0, to: 6 },
          { outside: 1.9, wall: 0.2, from: 4, to: 10 },
        ],
      }),
      at: '#/mast/pieces/1',
      says: 'Mast pieces 1 and 2 overlap, and neither goes into the other',
    },
  ],
  'piece-off-mast': [
    {
      plan: mast({ pieces: [{ outside: 2, wall: 0.2, from: 0, to: 11 }] }),
      at: '#/mast/pieces/0',
      says: '0 ft to 11 ft does not lie on a mast of 10 ft',
    },
    {
      plan: mast({ pieces: [{ outside: 2, wall: 0.2, from: 5, to: 4 }] }),
      at: '#/mast/pieces/0',
      says: '5 ft to 4 ft does not lie',
    },
  ],
  'load-above-mast': [
    {
      plan: mast({}, { loads: [{ name: 'thing', above: 7, area: 3 }] }),
      at: '#/loads/0/above',
      says: 'thing begins at 55 ft, and the mast ends at 54 ft',
    },
  ],
  'load-below-mast': [
    {
      plan: mast({}, { loads: [{ name: 'thing', height: 40, area: 3, on: 'mast' }] }),
      at: '#/loads/0/height',
      says: 'thing at 40 ft is on the mast, and the mast begins at 44 ft',
    },
  ],
  'load-below-base': [
    { plan: load({ above: -49, area: 3 }), at: '#/loads/0', says: "thing at -1 ft is below the tower's base at 0 ft" },
  ],
  'iced-below-bare': [
    {
      plan: load({ above: 2, area: 8, weight: 30, icedWeight: 20 }),
      at: '#/loads/0/icedWeight',
      says: '20 lb with ice is less than the 30 lb it has without',
    },
    {
      plan: load({ above: 2, area: 8, icedArea: 0.1 }),
      at: '#/loads/0/icedArea',
      says: 'thing: 0.1 ft² with ice is less than the 8 ft² it has without. Give its whole area with ice, 8 ft² or more.',
    },
    {
      plan: load({ above: 2, front: 5, side: 2, icedArea: 4 }),
      at: '#/loads/0/icedArea',
      says: 'thing: 4 ft² with ice is less than the 5 ft²',
    },
  ],
  'meets-ground': [
    {
      plan: load({ height: 9, shape: 'tube', diameter: 2, length: 20 }),
      at: '#/loads/0/height',
      says: '20 ft long with its middle at 9 ft, it meets the ground',
    },
  ],
  'span-missing': [
    {
      plan: load({ above: 2, shape: 'tube', diameter: 2 }),
      at: '#/loads/0/length',
      says: 'one height does not say how long it is',
    },
    {
      plan: load({ above: [2, 3], shape: 'tube', along: 'boom', diameter: 2 }),
      at: '#/loads/0/length',
      says: 'a level tube needs its "length"',
    },
    {
      plan: load({ above: 2, shape: 'pole', width: 2 }),
      at: '#/loads/0/above',
      says: 'one height does not say how long this pole is',
    },
  ],
  'span-differs': [
    {
      plan: load({ above: [0, 20], shape: 'tube', diameter: 2, length: 18 }),
      at: '#/loads/0/length',
      says: 'its length of 18 ft differs from the 20 ft between its two heights',
    },
  ],
  'shape-missing': [
    { plan: tower({ shape: null }), at: '#/tower/shape', says: 'Tower has "faces" but no shape' },
    {
      plan: tower({ ...bare, sections: [{ length: 48, sides: 8 }] }),
      at: '#/tower/sections/0/shape',
      says: 'Tower section 1 has "sides" but no shape',
    },
  ],
  'shape-field-missing': [
    { plan: tower({ faces: null }), at: '#/tower/faces', says: 'Tower: shape "lattice" needs "faces"' },
    { plan: tower({ leg: 1, brace: 0.5 }), at: '#/tower/panel', says: 'Tower: shape "lattice" needs "panel"' },
    {
      plan: tower({ members: 'flat', roundArea: 3 }),
      at: '#/tower/flatArea',
      says: 'has flat members but no flatArea',
    },
    { plan: load({ above: 2, front: 3 }), at: '#/loads/0/side', says: 'thing needs "side" too' },
    { plan: load({ above: 2, force: 3 }), at: '#/loads/0/wind', says: 'thing needs "wind" too' },
    {
      plan: load({ above: 2, shape: 'plate', wide: 3 }),
      at: '#/loads/0/tall',
      says: 'thing: shape "plate" needs "tall"',
    },
    { plan: load({ above: 2, shape: 'dish' }), at: '#/loads/0/diameter', says: 'thing: shape "dish" needs "diameter"' },
    {
      plan: load({ above: 2, shape: 'wire', diameter: 0.1 }),
      at: '#/loads/0/to',
      says: 'thing: shape "wire" needs "to"',
    },
    { plan: load({ above: 2, shape: 'tubes' }), at: '#/loads/0/tubes', says: 'thing: shape "tubes" needs "tubes"' },
  ],
  'shape-field-foreign': [
    {
      plan: load({ above: 2, shape: 'dish', diameter: 30, leg: 1 }),
      at: '#/loads/0/leg',
      says: 'thing: "leg" belongs to lattice, and this is a dish',
    },
    {
      plan: load({ above: 2, area: 3, diameter: 30 }),
      at: '#/loads/0/diameter',
      says: '"diameter" describes a tube or dish or wire. Say so with "shape"',
    },
    {
      plan: tower({ shape: 'pole', width: 9, faces: null, members: 'round' }),
      at: '#/tower/members',
      says: '"members" belongs to lattice, and this is a pole',
    },
  ],
  'kind-field-missing': [
    { plan: rating({ kind: 'force' }), at: '#/ratings/0/force', says: 'Rating 1 of the tower needs "force"' },
    { plan: rating({ kind: 'moment' }), at: '#/ratings/0/moment', says: 'needs "moment"' },
    { plan: rating({ kind: 'weight' }), at: '#/ratings/0/weight', says: 'needs "weight"' },
    { plan: rating({ of: 'rotator', kind: 'torque' }), at: '#/ratings/0/torque', says: 'needs "torque" or "brake"' },
    {
      plan: rating({ of: 'gear' }),
      at: '#/ratings/0/breakingStrength',
      says: 'needs "breakingStrength" or "workingLoad"',
    },
    { plan: rating({ kind: 'wind' }), at: '#/ratings/0/wind', says: 'needs its speed' },
  ],
  'kind-field-foreign': [
    {
      plan: rating({ of: 'rotator', torque: 100 }),
      at: '#/ratings/0/torque',
      says: '"torque" belongs to torque, and this one is of area. Say "kind": "torque"',
    },
    {
      plan: rating({ kind: 'force', force: 9, areaKind: 'effective' }),
      at: '#/ratings/0/areaKind',
      says: '"areaKind" belongs to area, and this one is of force. Leave it out.',
    },
  ],
  'cable-outside': [
    {
      plan: changed({ cables: [{ count: 1, diameter: 1, to: 50 }] }),
      at: '#/cables/0',
      says: 'Cable run 1 from 0 ft to 50 ft leaves the tower and its mast, 0 ft to 48 ft',
    },
    {
      plan: changed({ tower: { base: 20 }, cables: [{ count: 1, diameter: 1, from: 10 }] }),
      at: '#/cables/0',
      says: 'leaves the tower',
    },
  ],
  'not-a-choice': [
    {
      plan: climate({ basis: 'gust3-strength', returnPeriods: chart }),
      at: '#/site/climate/basis',
      says: 'a strength-level gust is a figure of design, no wind that blows. A chart for 300 years and more shows actual gusts',
    },
  ],
  'return-periods-do-not-rise': [
    {
      plan: climate({ returnPeriods: [...chart, [100, '92 mph']] }),
      at: '#/site/climate/returnPeriods',
      says: '92 mph for 50 years, 92 mph for 100. Give each number of years once, with a higher speed for more years.',
    },
    {
      plan: climate({ returnPeriods: [...chart, [10, 77]] }),
      at: '#/site/climate/returnPeriods',
      says: '76 mph for 10 years, 77 mph for 10',
    },
  ],
  'maxima-all-alike': [
    {
      plan: climate({ yearlyMax: [70, 70, 70, 70, '70 mph'] }),
      at: '#/site/climate/yearlyMax',
      says: '5 years of 70 mph. Years that are all alike tell nothing of rarer winds',
    },
  ],
  'speed-twice': [
    {
      plan: rating({
        areasBySpeed: [
          [90, 6],
          [70, 12],
          ['90 mph', 5],
        ],
      }),
      at: '#/ratings/0/areasBySpeed/2',
      says: 'rows 1 and 3 are both for 90 mph',
    },
  ],
  'rating-height-absurd': [
    {
      plan: rating({ area: 9, height: 99 }),
      at: '#/ratings/0/height',
      says: 'acts at 99 ft, and the tower it is stated for ends at 48 ft',
    },
    { plan: rating({ area: 9, above: -49 }), at: '#/ratings/0/above', says: 'acts at -1 ft' },
  ],
};

const all = Object.entries(CASES).flatMap(([code, cases]) => cases.map((one) => ({ code, ...one })));

describe('a plan that makes no sense', () => {
  it.each(all)('$code: $says', ({ code, plan, at, says }) => {
    // The form is right in each of these; what is wrong is what the fields say together.
    expect(planDocumentSchema.safeParse(plan).success).toBe(true);
    const faults = faultsOf(plan);
    const fault = faults.find((one) => one.code === code);
    expect(fault, JSON.stringify(faults)).toBeDefined();
    expect(fault?.pointer).toBe(at);
    expect(fault?.says).toContain(says);
    expect(fault?.given).not.toBe('');
    expect(fault?.allowed).not.toBe('');
  });

  it('draws no other faults after one', () => {
    const lonely = all.filter(({ code }) => !['one-of', 'goes-with'].includes(code));
    const crowded = lonely
      .filter(({ plan }) => faultsOf(plan).length !== 1)
      .map(({ plan, says }) => [says, faultsOf(plan)]);
    expect(crowded).toEqual([]);
  });

  it('is told in the units of the plan', () => {
    const plan = {
      ...mast({ outside: 50, wall: 30, length: 3, inside: 1 }),
      units: 'si',
      site: { wind: 40, exposure: 'C' },
    };
    const fault = faultsOf(plan).find((one) => one.code === 'wall-too-thick');
    expect(fault?.says).toBe('Mast wall 30 mm does not fit in a 50 mm tube: give less than 25 mm.');
  });

  it('lets rows of a rating stand in any order, and sections miss the sum by what a tape cannot tell', () => {
    for (const plan of [
      rating({
        areasBySpeed: [
          [90, 6],
          [70, 12],
          [110, 3],
        ],
      }),
      tower({ ...bare, sections: [{ length: 47.99 }] }),
      mast({}, { loads: [{ name: 'tall', above: [1, 30], area: 3 }] }),
    ]) {
      expect(() => faultsOf(plan)).toThrow('the plan was read');
    }
  });
});
