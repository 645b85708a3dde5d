/**
 * Every field of the plan: what the form calls it, what the contract says of it, and what may stand in it. One catalogue
 * for the form, the reader, the schema and the worksheet.
 *
 * @typedef {'length' | 'diameter' | 'area' | 'speed' | 'force' | 'weight' | 'weight-per-length' | 'moment' | 'stress' |
 *   'soil-pressure' | 'soil-pressure-per-depth' | 'density' | 'angle' | 'frequency' | 'share'} FieldDimension
 *
 * @typedef {'height' | 'extent' | 'offsetHeight' | 'landscape' | 'hillHeight' | 'hillLength' | 'elevation' | 'diameter' |
 *   'depth' | 'wall' | 'taperLength' | 'area' | 'speed' | 'force' | 'weight' | 'lineWeight' | 'moment' | 'strength' |
 *   'soil' | 'soilPerDepth' | 'concrete' | 'heading' | 'frequency' | 'damping' | 'share' | 'solidity' | 'topographicFactor' |
 *   'coefficient'} FieldBoundsName
 *
 * @typedef {object} Field
 * @property {string} label What the form calls it.
 * @property {string} description What the contract says of it.
 * @property {string} [hint] What helps to answer it.
 * @property {FieldDimension} [of] The kind of quantity.
 * @property {FieldBoundsName} [bounds] Between which values it must be.
 * @property {Readonly<Record<string, string>>} [choices] What may be chosen, in words.
 * @property {string} [one] What one entry of a list is called.
 * @property {string} [add] What adding one is called.
 */

/** @type {Readonly<Record<FieldBoundsName, FieldDimension>>} */
export const DIMENSION_OF_BOUNDS = {
  height: 'length',
  extent: 'length',
  offsetHeight: 'length',
  landscape: 'length',
  hillHeight: 'length',
  hillLength: 'length',
  elevation: 'length',
  diameter: 'diameter',
  depth: 'diameter',
  wall: 'diameter',
  taperLength: 'diameter',
  area: 'area',
  speed: 'speed',
  force: 'force',
  weight: 'weight',
  lineWeight: 'weight-per-length',
  moment: 'moment',
  strength: 'stress',
  soil: 'soil-pressure',
  soilPerDepth: 'soil-pressure-per-depth',
  concrete: 'density',
  heading: 'angle',
  frequency: 'frequency',
  damping: 'share',
  share: 'share',
  solidity: 'share',
  topographicFactor: 'share',
  coefficient: 'share',
};

/** @param {FieldBoundsName} bounds @param {string} label @param {string} [description] @param {string} [hint] */
const quantity = (bounds, label, description = label, hint) => ({
  label,
  description,
  of: DIMENSION_OF_BOUNDS[bounds],
  bounds,
  ...(hint === undefined ? {} : { hint }),
});

/** @param {string} label @param {string} [description] @param {string} [hint] */
const plain = (label, description = label, hint) => ({ label, description, ...(hint === undefined ? {} : { hint }) });

/**
 * @template {Readonly<Record<string, string>>} Choices
 * @param {string} label @param {string} description @param {Choices} choices @param {string} [hint]
 */
const choice = (label, description, choices, hint) => ({
  label,
  description,
  choices,
  ...(hint === undefined ? {} : { hint }),
});

/** @param {string} label @param {string} one @param {string} add @param {string} description @param {string} [hint] */
const list = (label, one, add, description, hint) => ({
  label,
  description,
  one,
  add,
  ...(hint === undefined ? {} : { hint }),
});

const BASES = {
  'gust3-strength': '3-second gust, strength level (US maps since 2010)',
  'gust3-nominal': '3-second gust, once in about 50 years (US maps 1995 to 2009)',
  'fastest-mile': 'fastest mile (US maps before 1995, and many data sheets since)',
  'mean-10min': '10-minute mean (European maps)',
  'mean-1min': '1-minute mean',
  'mean-hour': 'hourly mean',
};
const EXPOSURES = {
  B: 'houses or trees all round',
  C: 'open country',
  D: 'open water or flats upwind',
};
const TERRAINS = {
  0: 'open sea upwind',
  I: 'a lake or bare flats upwind',
  II: 'open country with single obstacles',
  III: 'villages, suburbs or forest',
  IV: 'a town with tall houses',
};
const CLASSES = {
  I: 'I, little harm if it falls',
  II: 'II, ordinary',
  III: 'III, many people near',
  IV: 'IV, needed in an emergency',
};
const AREA_KINDS = {
  effective: 'effective area (drag included)',
  'projected-round': 'projected area of round members',
  'projected-flat': 'projected area of flat members',
  'flat-plate': 'flat-plate equivalent area',
  unknown: 'type not stated',
};
const RATED_ARRANGEMENTS = {
  single: 'singly',
  flat: 'flat in a row',
  bundle: 'in one round bundle',
  inside: 'inside the tower',
};
const ARRANGEMENTS = { ...RATED_ARRANGEMENTS, ladder: 'in rows on a cable ladder' };
const ALONG = { upright: 'upright', boom: 'along the boom', element: 'as an element' };
const MATERIALS = { steel: 'steel', aluminium: 'aluminium' };
const SHAPES = { lattice: 'lattice', pole: 'pole or tube' };

/** Fields that any object may carry. @param {string} [what] */
const remarks = (what) => ({
  source: plain(
    `Where ${what ?? 'this'} is from`,
    'Where this is from: "manufacturer\'s data sheet 12, 2009"',
    'a data sheet and its year, a letter, a tape measure',
  ),
  note: plain(what === undefined ? 'Remark' : `Remark on ${what}`, 'A remark'),
});

const LATTICE = {
  faces: choice('Faces', 'lattice: number of faces', { 3: 'three', 4: 'four' }),
  width: quantity(
    'diameter',
    'Width',
    'lattice: width of a face; pole: width across, from flat to flat',
    'of a face, or from flat to flat; “18 to 12” where it narrows upwards',
  ),
  members: choice('Its members are', 'lattice: round or flat members', {
    round: 'round tube or rod',
    flat: 'angle or strip',
  }),
  leg: quantity(
    'diameter',
    'Thickness of a leg',
    'lattice: width of a leg; with brace and panel',
    'outside, by caliper or tape',
  ),
  brace: quantity('diameter', 'Thickness of a brace', 'lattice: width of a brace'),
  panel: quantity(
    'diameter',
    'Height of a panel',
    'lattice: height of one panel of the bracing',
    'one zigzag of the bracing, up the leg',
  ),
  pattern: choice(
    'Bracing',
    'lattice: bracing; level rungs or crossed when not given, whichever is worse',
    { zigzag: 'zigzag', cross: 'crossed', rungs: 'level rungs' },
    'look at one panel',
  ),
  solidity: quantity(
    'solidity',
    'Solidity of a face',
    'lattice: solid share of one face; dish: solid share of its face, less for mesh',
    'the solid share: 0.2 or 20 %; of a dish less than 1 for mesh',
  ),
  roundArea: quantity(
    'area',
    'Round members of one face',
    'lattice: area of the round members of one face',
    'in place of legs and braces',
  ),
  flatArea: quantity('area', 'Flat members of one face', 'lattice: area of the flat members of one face'),
  dragArea: quantity('area', 'Manufacturer’s drag area', "lattice: the manufacturer's drag area"),
};

const POLE = {
  sides: choice(
    'Sides of the pole',
    'pole: number of sides, 0 is round; round or 8 when not given, whichever is worse',
    {
      0: 'round',
      8: '8',
      12: '12',
      16: '16',
      18: '18',
    },
    'look at the pole and count',
  ),
};

const SECTION_SHAPE = {
  shape: choice('Shape', 'lattice or pole, with its fields beside it', SHAPES),
  ...LATTICE,
  ...POLE,
  wall: quantity('wall', 'Wall of the pole', 'pole: wall as it is today; with material', 'where it is thinnest'),
  legWall: quantity(
    'wall',
    'Wall of a leg',
    'lattice: wall of a leg, half the leg where it is solid, or thickness of an angle; with material',
    'half the leg where it is solid',
  ),
  braceWall: quantity('wall', 'Wall of a brace', 'lattice: the same of a brace', 'half the brace where it is solid'),
  legFree: quantity(
    'diameter',
    'Longest free stretch of a leg',
    'lattice: longest stretch of a leg that no brace holds; one or two panels when not given',
  ),
  material: choice('Material', 'Material of pole, legs and braces; with wall or legWall', MATERIALS),
  yield: quantity(
    'strength',
    'Yield strength',
    'yield strength, the least there is; of aluminium at its welds; with wall or legWall',
    'the least there is; of aluminium at its welds',
  ),
  ultimate: quantity('strength', 'Ultimate strength', 'Ultimate strength; for aluminium', 'for aluminium'),
};

/** @param {string} speed @param {string} about */
const ratedWind = (speed, about) => ({
  speed: quantity('speed', speed, 'Speed it is stated for'),
  basis: choice('type of speed', 'Type of speed: averaging time and level', BASES),
  method: plain('by which standard', 'Standard it is stated by'),
  exposure: choice('for which exposure', 'Exposure it is stated for: B, C or D', EXPOSURES),
  terrain: choice('for which terrain (Europe)', 'Terrain it is stated for, by standards that use terrain', TERRAINS),
  riskCategory: choice('for which class of structure', 'Risk category (structure class) it is stated for', CLASSES),
  year: plain('year of the data sheet', 'Year of the data sheet'),
  ...remarks(about),
});

/** The fields of each kind of object in a plan. */
export const FIELDS = {
  plan: {
    format: plain('Format', 'Format of this document'),
    title: plain('Name of the plan', 'Title'),
    units: choice('Units', 'Units of every plain number', { us: 'feet, mph', si: 'metres, m/s' }),
    method: plain('Standard for towers', 'Standard that the local code adopts', 'ask your building department'),
    site: plain('The wind', 'Where the tower is'),
    tower: plain('The tower'),
    mast: plain('The mast', 'The mast above the tower'),
    rotator: plain('The rotator'),
    loads: list('Loads on the tower', 'load', 'Add a load', 'Loads on the tower and its mast'),
    cables: list(
      'Feed lines and cables',
      'cable run',
      'Add a run of cables',
      'Feed lines and cables, in runs; [] is none; not given, three lines to the highest load, or none',
    ),
    ratings: list('Ratings', 'rating', 'Add a rating', "Manufacturers' ratings"),
    wanted: plain('Margin and time', 'Margin to keep, allowance for forecasts, years of service'),
    titleBlock: plain('For the worksheet', 'For the title block of the worksheet'),
    ...remarks('the plan'),
  },
  site: {
    wind: quantity(
      'speed',
      'Wind speed you were given',
      "Design wind speed, or an object with its type; when not given, the type of the method's own maps",
    ),
    exposure: choice('Ground upwind', 'Exposure: ground upwind, for standards that use exposure', EXPOSURES),
    terrain: choice('Ground upwind', 'Terrain: ground upwind, for standards that use terrain', TERRAINS),
    riskCategory: choice('Risk category', 'Risk category; not given, II, and for ice also III', CLASSES),
    groundElevation: quantity('elevation', 'Ground above the sea', 'Height of the ground above the sea'),
    hill: plain('Hill', 'A hill, ridge or escarpment; or topographicFactor'),
    topographicFactor: quantity(
      'topographicFactor',
      'Hill factor the county gives',
      'Topographic factor on the pressure, or orography factor on the speed, by its standard; replaces the hill',
      'in place of the hill',
    ),
    ice: plain('Ice', 'Ice, and the gust that goes with it'),
    climate: plain(
      'Winds on record',
      'Strongest winds at 33 ft (10 m) in open country, for chance; from a chart or from years of record',
    ),
    distances: plain('What is near', 'Distances from the base of the tower, for its fall'),
    ...remarks('the site data'),
  },
  wind: {
    speed: quantity('speed', 'Wind speed you were given', 'Design wind speed', 'county or city page, or permit papers'),
    basis: choice('Type of speed', 'Type of speed: averaging time and level', BASES),
    years: plain(
      'Return period, years',
      'Return period the speed is taken to, where its standard asks; 50 when not given',
    ),
    source: plain('from', 'Where this is from: "county wind map, 2020"', 'the page or map, and its year'),
    note: plain('Remark on the speed', 'A remark'),
  },
  hill: {
    shape: choice('Hill', 'Shape of the hill', {
      escarpment: 'bluff or escarpment',
      ridge: 'long ridge',
      'round-hill': 'round hill',
    }),
    height: quantity('hillHeight', 'its height', 'Height of the crest above the land around', 'above the land around'),
    run: quantity(
      'hillLength',
      'or from its foot to the crest',
      'Foot of the hill to its crest; or halfLength',
      'one of two',
    ),
    halfLength: quantity(
      'hillLength',
      'from the crest half-way down',
      'Crest to half-way down, upwind; or run',
      'level distance, on the windward side',
    ),
    distance: quantity('landscape', 'tower from the crest', 'Crest to the tower'),
    side: choice('the tower is', 'Side of the crest on which the tower is', {
      upwind: 'before the crest',
      downwind: 'behind the crest',
    }),
    isolated: plain(
      'no other hill near',
      'No other hill near, and twice as high as the ground within 2 miles; a condition of ASCE 7 up to 7-16. Taken as true when not given',
      'and twice as high as the ground within 2 miles',
    ),
    ...remarks('the hill'),
  },
  ice: {
    thickness: quantity('diameter', 'Ice, thickness', 'Thickness of the ice'),
    gust: quantity('speed', 'gust that goes with the ice', 'Gust that goes with the ice, 3 s'),
    ...remarks('the ice'),
  },
  climate: {
    returnPeriods: list('From a chart', 'return period', 'Add a line of the chart', '[[years, speed], …] from a chart'),
    yearlyMax: list(
      'or the strongest of each year',
      'year',
      'Add a year',
      'Highest speed of each year',
      'a column of a spreadsheet can be pasted into the first',
    ),
    basis: choice(
      'How they were measured',
      'Type of speed in which the winds were measured; gust3-strength is a design figure, not a wind',
      BASES,
    ),
    ...remarks(),
  },
  returnPeriod: {
    0: plain('once in, years', 'Years'),
    1: quantity('speed', 'speed', 'Speed'),
  },
  yearlyMax: { '*': quantity('speed', 'strongest', 'Highest speed of a year') },
  distances: {
    powerLine: quantity('landscape', 'To the power line', 'Base of the tower to the power line', 'from its base'),
    propertyLine: quantity('landscape', 'To the property line', 'Base of the tower to the property line'),
    building: quantity('landscape', 'To the building', 'Base of the tower to the building'),
    ...remarks(),
  },
  tower: {
    support: choice('Support', 'What supports the tower above its base', {
      free: 'none, free-standing',
      guyed: 'guys',
      bracketed: 'brackets on a house',
      roof: 'none, on a roof',
    }),
    top: quantity('extent', 'Top above ground', 'Height of its top above ground'),
    base: quantity(
      'height',
      'Base above ground',
      'Height of its base; 0 when not given',
      'on a roof: the height of the roof',
    ),
    sections: list('Sections, from the base up', 'section', 'Add a section', 'Sections, from the base up'),
    ...SECTION_SHAPE,
    telescopes: choice('Sections slide into each other', 'Its sections slide into each other', {
      true: 'yes, it cranks up',
      false: 'no',
    }),
    nested: quantity('extent', 'Its top when down', 'Height of its top when down'),
    standsAt: quantity(
      'extent',
      'Cranked to',
      'Height of its top to which a telescoping tower is cranked; the answer is for it there. All other heights stay those of the tower fully up',
      'the answer is for this height; all others stay those fully up',
    ),
    supportedAt: list(
      'Guys and brackets',
      'support',
      'Add guys or a bracket',
      'Guys and brackets; when not given, those its ratings name',
    ),
    hinge: plain('Raising it', 'Hinge about which the tower is raised and lowered'),
    weight: quantity('weight', 'Weight of the whole tower'),
    frequency: quantity('frequency', 'Lowest natural frequency'),
    damping: quantity(
      'damping',
      'Damping',
      'Share of critical damping, 0.02 or "2 %"; of a pole not given, 0.5 or 1 %',
      'share of critical: 0.02 or 2 %',
    ),
    foundation: plain('The footing'),
    asDrawn: plain('Guys, brackets and footing are the manufacturer’s own'),
    baseHeld: plain('Its base cannot tilt', 'Its base cannot tilt: all legs bolted down; false: it stands on a pin'),
    used: plain('Used, or several years old', 'Used, or several years old; taken as true when not given'),
    ...remarks('the tower data'),
  },
  section: {
    length: quantity('extent', 'Length', 'Length of one section'),
    count: plain('How many alike', 'How many alike, one above the other'),
    name: plain('What you call it', 'Name of the section'),
    make: plain('Make', 'Make: sections of one make share a rating', 'sections of one make share a rating'),
    weight: quantity(
      'weight',
      'Weight of one',
      'Weight of one such section; for the hoist of a tower that telescopes',
      'for the hoist of a tower that slides together',
    ),
    uniform: plain('Alike over its length', 'Constant width and members; when not given, if its width is'),
    ...SECTION_SHAPE,
    ...remarks(),
  },
  support: {
    height: quantity('height', 'Height above ground'),
    by: choice('Supported by', 'What supports the tower there', { guys: 'guys', bracket: 'a bracket' }),
    count: plain('How many guys', 'guys: how many'),
    diameter: quantity('diameter', 'Diameter of one', 'guys: diameter of one'),
    radius: quantity('landscape', 'Base of the tower to the anchor', 'guys: base of the tower to the anchor'),
    tension: quantity('force', 'Initial tension', 'guys: initial tension of one in still air, at its anchor'),
    grade: choice('Grade of the strand', 'guys: grade of the steel strand', {
      common: 'common',
      'siemens-martin': 'Siemens-Martin',
      'high-strength': 'high strength',
      'extra-high-strength': 'extra high strength (EHS)',
    }),
    breakingStrength: quantity('force', 'Breaking strength', 'guys: breaking strength of one, as stated'),
    ends: choice('Made fast with', 'guys: what makes their ends fast', {
      grips: 'grips as strong as the strand',
      clips: 'U-bolt clips',
    }),
    ...remarks(),
  },
  hinge: {
    height: quantity('height', 'Hinge above ground', 'Height of the hinge above ground'),
    raisedBy: plain('Raised by', 'Raising gear'),
    counterpoise: plain('Counterpoise', 'Counterpoise below the hinge, which tilts with the tower'),
    ...remarks('the hinge'),
  },
  counterpoise: {
    weight: quantity(
      'weight',
      'Counterpoise of',
      'Weight of the counterpoise; the weight of the tower does not include it. Wind on it counts as on a cube of concrete',
      'not part of the weight of the tower',
    ),
    below: quantity(
      'extent',
      'below the hinge by',
      'How far its middle is below the hinge, along the tower',
      'to its middle',
    ),
    ...remarks('the counterpoise'),
  },
  raisingGear: {
    kind: choice('Raised by', 'What raises it', {
      line: 'a line',
      winch: 'a winch',
      screw: 'a screw',
      actuator: 'an actuator',
    }),
    anchor: plain('Anchor', 'Where the gear is anchored, from the hinge'),
    attach: quantity('extent', 'attached to the tower at', 'Where it is attached, along the tower', 'from the hinge'),
    raisingPoleTip: plain('Tip of the raising pole', 'Tip of a raising pole that turns with the tower, from the hinge'),
    workingLoad: quantity('force', 'its working load', 'Working load of the gear'),
    ...remarks('the gear'),
  },
  anchor: {
    0: quantity('offsetHeight', 'anchored beside the hinge by', 'Beside the hinge', 'positive where it is lowered'),
    1: quantity('offsetHeight', 'and above it by', 'Above the hinge'),
  },
  raisingPoleTip: {
    0: quantity('offsetHeight', 'over a raising pole with its tip beside the hinge by', 'Beside the hinge'),
    1: quantity('offsetHeight', 'and above it by', 'Above the hinge'),
  },
  foundation: {
    kind: choice('Footing', "block, pier, or built to the manufacturer's drawing", {
      manufacturer: 'built to the manufacturer’s drawing',
      block: 'a block of concrete',
      pier: 'a drilled pier',
    }),
    length: quantity('extent', 'Length', 'block: length'),
    width: quantity('extent', 'Width', 'block: width'),
    depth: quantity('extent', 'Depth', 'block, pier: depth; of a pier below the ground'),
    soilBearing: quantity(
      'soil',
      'Allowable soil bearing',
      'block, pier: allowable bearing pressure of the soil',
      'the building department’s table, or the house’s own plans',
    ),
    concrete: quantity(
      'concrete',
      'Weight of its concrete',
      'block, pier: weight of its concrete; 2400 kg/m³ (149.8 lb/ft³) when not given',
      'left out, 2400 kg/m³ (149.8 lb/ft³); US drawings often say 150 lb/ft³',
    ),
    diameter: quantity('extent', 'Diameter', 'pier: diameter'),
    soilLateral: quantity(
      'soilPerDepth',
      'Allowable lateral soil bearing',
      'block, pier: allowable lateral soil bearing by depth',
    ),
    constrained: plain('Restrained at the ground by a slab', 'pier: restrained at the ground, by a slab'),
    isolatedPole: plain(
      'Half an inch at the ground does no harm',
      'block, pier: half an inch (12.7 mm) of movement at the ground does no harm; twice soilLateral, IBC 1806.3.4',
      'twice the lateral soil bearing then counts; the building official decides',
    ),
    bearingNet: plain(
      'Soil bearing is net',
      'block, pier: soilBearing is beyond the weight of the soil taken away; not given, both are tried',
      'a soils report says net or gross',
    ),
    bothAccepted: plain(
      'Sides and underside count together',
      'block, pier: the building official accepts soil at the sides and under the base together',
      'the code has one rule for each; the building official decides',
    ),
    ...remarks(),
  },
  mast: {
    outside: quantity('diameter', 'Outside', 'Outside diameter'),
    length: quantity('extent', 'Whole length'),
    wall: quantity('wall', 'Wall', 'Wall thickness'),
    yield: quantity(
      'strength',
      'Yield strength of its metal',
      'Yield strength; never assumed',
      'the seller’s invoice or mill certificate has it',
    ),
    ultimate: quantity('strength', 'Ultimate strength', 'Ultimate strength; for aluminium', 'for aluminium'),
    inside: quantity(
      'height',
      'of it inside the tower',
      "The part below the tower's top; 0 is clamped on a rotator",
      '0 where it is clamped on a rotator at the top',
    ),
    bearing: quantity(
      'height',
      'Its upper bearing at',
      'Height of its upper bearing above ground, or false; not given, at the top or 1.5 ft below',
      'above ground; “no” where there is none',
    ),
    manufacturerPlates: plain('Bearing and lower end sit on the manufacturer’s plates'),
    material: choice('Material', 'Material; steel when not given', MATERIALS),
    pieces: list('Stepped or sleeved: its tubes', 'piece', 'Add a tube', 'Stepped or sleeved: its tubes'),
    ...remarks('the mast data'),
  },
  mastPiece: {
    outside: quantity('diameter', 'Outside', 'Outside diameter'),
    wall: quantity('wall', 'Wall', 'Wall thickness'),
    from: quantity('height', 'from, above the mast’s lower end', "Lower end, from the mast's lower end"),
    to: quantity('extent', 'to', "Upper end, from the mast's lower end"),
    yield: quantity('strength', 'Yield strength'),
    ...remarks(),
  },
  rotator: {
    height: quantity('height', 'Height of the mast’s lower end', "Mast's lower end above ground", 'above ground'),
    weight: quantity('weight', 'Weight'),
    ...remarks(),
  },
  load: {
    name: plain(
      'What you call it',
      'Name of the load, each name once; "load" and its place in the list when not given',
      'left out, load and its number',
    ),
    height: quantity('height', 'or above the ground', 'Height above ground; or above', 'one of the two'),
    above: quantity(
      'offsetHeight',
      'Height above the tower’s top',
      "Height above the tower's top; moves with the top",
      'moves with the top; “8 to 17” for what is upright',
    ),
    shape: choice('Known by', 'Shape; stated when not given: an area or a force from its data sheet', {
      stated: 'an area or a force from its data sheet',
      tubes: 'its tubes: beam, loop, quad, frame',
      tube: 'one tube: vertical, arm',
      plate: 'a panel or box',
      dish: 'a dish',
      wire: 'a wire',
      lattice: 'a lattice piece',
      pole: 'a pole',
    }),
    area: quantity('area', 'Its area', 'stated: area; or front and side'),
    front: quantity(
      'area',
      'or its area from the front',
      'stated: area in a wind along the boom',
      'wind along the boom',
    ),
    side: quantity('area', 'and from the side', 'stated: area seen by a wind across the boom'),
    force: quantity('force', 'or a force', "stated: a manufacturer's force at the speed wind"),
    wind: quantity('speed', 'at a speed of', 'stated: the speed of force'),
    areaKind: choice('Type of area', 'Type of the stated area; unknown when not given', AREA_KINDS),
    slenderFlats: plain('Angle or strip among its members', 'stated: angle or strip is among its members'),
    icedArea: quantity('area', 'Its area with ice', 'stated: area with ice, of the same type; of a force, effective'),
    diameter: quantity('diameter', 'Diameter', 'tube, dish, wire: diameter', '“1 1/4 to 1/2” for a tube that narrows'),
    along: choice('It runs', 'tube: which way it runs; upright when not given', ALONG),
    length: quantity(
      'extent',
      'Length',
      'tube: its length; the height span when not given',
      'left out: its height span',
    ),
    tubes: list('Its tubes', 'row of tubes', 'Add a row of tubes', 'tubes: its rows of alike tubes'),
    wide: quantity('diameter', 'Width', 'plate: width'),
    tall: quantity('diameter', 'Height', 'plate: height'),
    deep: quantity('depth', 'Depth', 'plate: depth; 0 when not given'),
    to: plain('Far end', 'wire: its far end'),
    tension: quantity('force', 'Its pull in still air', 'wire: its pull in still air; or sag'),
    sag: quantity('extent', 'or its sag half-way', 'wire: its sag half-way in still air; or tension'),
    conductor: choice('Made of', 'wire: what it is made of; the stiffest, steel, when not given', {
      'hard-copper': 'hard-drawn copper',
      'soft-copper': 'soft copper',
      'copper-clad-steel': 'copper-clad steel',
      aluminium: 'aluminium',
      steel: 'steel',
    }),
    ...LATTICE,
    ...POLE,
    count: plain('How many alike'),
    weight: quantity('weight', 'Weight of one', 'Weight of each'),
    icedWeight: quantity('weight', 'Weight of one with ice', 'Weight of each with the ice of the site'),
    turns: plain('Turned by the rotator'),
    later: plain(
      'Comes later',
      'Planned for later: in no check; /v1/requirements also counts it',
      'left out of the check until then',
    ),
    heading: quantity(
      'heading',
      'It faces',
      'Where it faces, clockwise from true north; with turns: at rotator zero',
      'clockwise from true north; with a rotator, at its zero',
    ),
    on: choice('Mounted on', 'What it is mounted on; by its height when not given', {
      mast: 'the mast',
      tower: 'the tower',
    }),
    offset: quantity(
      'height',
      'Beside the axis by',
      "Tower's axis to the middle of its area; not given below the top, on the face or on an arm",
      'from the tower’s axis to the middle of its area',
    ),
    boom: quantity('height', 'Length of its boom'),
    reach: quantity('height', 'Farthest tip from the mast', 'Farthest tip from the mast', 'its turning radius'),
    ratedWind: quantity('speed', 'The wind it is rated for', 'Rated speed, or all that its data sheet says'),
    ...remarks(),
  },
  wireEnd: {
    distance: quantity('extent', 'Far end, away from the tower', 'Horizontal distance to the far end'),
    height: quantity('height', 'Far end, above ground', 'Height of the far end above ground'),
    heading: quantity('heading', 'It runs towards', 'Where it runs, clockwise from true north', 'from true north'),
    ...remarks('the far end'),
  },
  tubeRow: {
    along: choice('They run', 'Which way the tubes run', ALONG),
    count: plain('How many alike'),
    diameter: quantity('diameter', 'Diameter', 'Diameter; with length, or taper'),
    length: quantity('extent', 'Whole length, tip to tip'),
    taper: list(
      'Tubes that narrow, from the boom outward',
      'taper piece',
      'Add a tube',
      '[[diameter, visible length, wall], …] all in the unit of diameters, boom outwards to one tip',
    ),
    material: choice('Material', 'Material; aluminium when not given', MATERIALS),
    yield: quantity('strength', 'Yield strength', 'Yield strength; never assumed', 'to check the elements themselves'),
    ultimate: quantity('strength', 'Ultimate strength', 'Ultimate strength; for aluminium', 'for aluminium'),
    ...remarks(),
  },
  taperPiece: {
    0: quantity('diameter', 'outside', 'Diameter'),
    1: quantity('taperLength', 'in sight', 'Visible length'),
    2: quantity('wall', 'wall', 'Wall'),
  },
  cable: {
    count: plain('How many', 'How many cables alike'),
    diameter: quantity('diameter', 'Outside diameter of one'),
    name: plain('What you call them', 'Name of the run'),
    weight: quantity('lineWeight', 'Weight of one', 'Weight of one for each length'),
    from: quantity('height', 'from', "Lower end; the tower's base when not given", 'left out, the tower’s base'),
    to: quantity('height', 'up to', "Upper end; the tower's top when not given", 'left out, the tower’s top'),
    arrangement: choice('Arrangement', 'How they are arranged; single when not given', ARRANGEMENTS),
    rows: plain(
      'in rows, of which there are',
      'ladder: how many rows, one behind the other; count is of all rows together',
      'rows, not lines in a row',
    ),
    spacing: quantity(
      'diameter',
      'from line to line',
      'ladder: spacing of the lines, centre to centre; the larger where rows are spaced otherwise',
      'centre to centre; the larger, if rows and lines differ',
    ),
    ...remarks(),
  },
  rating: {
    of: choice('What is rated', 'What it is a rating of', {
      tower: 'tower',
      mast: 'mast',
      bearing: 'bearing',
      rotator: 'rotator',
      foundation: 'footing',
      gear: 'rope, winch or other gear',
    }),
    kind: choice('Rated by', 'What is stated; area when not given', {
      area: 'an area',
      force: 'a force',
      moment: 'a moment',
      wind: 'rated wind of the bare tower',
      weight: 'a weight',
      torque: 'a turning torque',
    }),
    area: quantity('area', 'Rated area', 'area: the rated area; or areasBySpeed'),
    areasBySpeed: list('or areas by speed', 'row', 'Add a speed', 'area: [[speed, area], …], each a case'),
    areaKind: choice('type of area', 'Type of the rated area; unknown when not given', AREA_KINDS),
    coefficient: quantity(
      'coefficient',
      'its stated coefficient',
      'area: the coefficient of a projected area',
      'for a projected area',
    ),
    furtherAreas: list(
      'Further areas of the same case',
      'further area',
      'Add an area',
      'area: further areas of its case',
    ),
    force: quantity('force', 'Rated force', 'force: the rated force'),
    moment: quantity('moment', 'Rated moment', 'moment: the rated moment at height, the base when not given'),
    weight: quantity('weight', 'Rated weight', 'weight: the rated weight'),
    torque: quantity('moment', 'Turning torque', 'torque: its turning torque'),
    brake: quantity('moment', 'Braking torque', 'torque: its braking torque'),
    breakingStrength: quantity('force', 'Breaking strength', 'gear: breaking strength'),
    workingLoad: quantity('force', 'or its working load', 'gear: working load'),
    level: choice('That is', 'force, moment, torque: level of the value; strength when not given', {
      allowable: 'an allowable load',
      strength: 'its strength',
    }),
    height: quantity('height', 'or at a height of', 'Height above ground where it acts; or above'),
    above: quantity('offsetHeight', 'acting above the top by', "Where it acts, above the tower's top"),
    wind: quantity('speed', 'at a wind of', 'Speed it is stated for, or an object with all the data sheet says of it'),
    top: quantity(
      'extent',
      'for a tower with its top at',
      "Height of the tower's top it was stated for; not given, this tower's and its neighbours' in a series",
      'is this line of the data sheet for your height?',
    ),
    supportedAt: list('Supports it was stated for', 'support', 'Add a support', 'Supports it was stated for'),
    withCables: plain('Lines included', 'Lines the rating already allows for'),
    source: plain('from', 'Where this is from: "manufacturer\'s data sheet 12, 2009"', 'the data sheet and its year'),
    note: plain('Remark', 'A remark'),
  },
  areaBySpeed: {
    0: quantity('speed', 'speed', 'Speed'),
    1: quantity('area', 'area', 'Area'),
  },
  furtherArea: {
    area: quantity('area', 'area', 'A further area of the same case'),
    height: quantity('height', 'at a height of', 'Its height above ground'),
    ...remarks(),
  },
  ratedSupport: { '*': quantity('height', 'height', 'Height of a support') },
  ratedWind: ratedWind('at a wind of', 'that wind'),
  loadRatedWind: ratedWind('The wind it is rated for', 'that wind'),
  withCables: {
    count: plain('lines it already allows for', 'How many lines'),
    diameter: quantity('diameter', 'of a diameter of', 'Diameter of one'),
    arrangement: choice(
      'arranged',
      'How they were arranged; when not given, a bundle, or inside a pole, which gives the lowest capacity',
      RATED_ARRANGEMENTS,
    ),
    ...remarks('those lines'),
  },
  wanted: {
    margin: quantity(
      'share',
      'Margin to keep',
      'Share of the capacity to keep; 0.1 when not given',
      '0.2 or 20 %; left out, 20 %',
    ),
    forecastError: quantity(
      'share',
      'Forecasts may be low by',
      'Allowance for forecast error; 0.1 when not given',
      'left out, 10 %',
    ),
    years: plain('Years of service', 'Years of service; 30 when not given', 'left out, 30'),
    ...remarks(),
  },
  titleBlock: {
    applicant: plain('Applicant'),
    owner: plain('Owner'),
    address: plain('Address of the site'),
    parcel: plain('Parcel'),
    jurisdiction: plain('Building department'),
    permit: plain('Permit number'),
    code: plain('Adopted building code'),
    date: plain('Date'),
    drawings: list('Drawings that belong to it', 'drawing', 'Add a drawing', 'Drawings that belong to it'),
    attachments: list('Attachments', 'attachment', 'Add an attachment', 'Attachments that belong to it'),
    ...remarks('the title block'),
  },
  drawing: { '*': plain('drawing', 'A drawing') },
  attachment: { '*': plain('attachment', 'An attachment') },
};

/** Which fields belong to which shape. */
export const FIELDS_OF_SHAPE = {
  stated: keys(['area', 'front', 'side', 'force', 'wind', 'areaKind', 'slenderFlats', 'icedArea']),
  tube: keys(['diameter', 'along', 'length']),
  tubes: keys(['tubes']),
  plate: keys(['wide', 'tall', 'deep']),
  dish: keys(['diameter', 'solidity']),
  wire: keys(['diameter', 'to', 'tension', 'sag', 'conductor']),
  lattice: /** @type {(keyof typeof LATTICE)[]} */ (Object.keys(LATTICE)),
  pole: keys(['width', 'sides']),
};

/** Which fields belong to which kind of rating; lifting gear has no kind but these fields of its own. */
export const FIELDS_OF_KIND = {
  area: keys(['area', 'areasBySpeed', 'areaKind', 'coefficient', 'furtherAreas']),
  force: keys(['force', 'level']),
  moment: keys(['moment', 'level']),
  wind: keys([]),
  weight: keys(['weight']),
  torque: keys(['torque', 'brake', 'level']),
  gear: keys(['breakingStrength', 'workingLoad']),
};

/** Fields that tell the shape of a tower without sections. */
export const SECTION_SHAPE_FIELDS = Object.keys(SECTION_SHAPE);

/** The names, each of its own type. @template {string} Name @param {readonly Name[]} names */
function keys(names) {
  return names;
}

/** @typedef {keyof typeof FIELDS} Holder */

/** What stands where in a plan; '*' is a place in a list. @type {readonly (readonly [string, Holder])[]} */
const HOLDERS = [
  ['', 'plan'],
  ['/site', 'site'],
  ['/site/wind', 'wind'],
  ['/site/hill', 'hill'],
  ['/site/ice', 'ice'],
  ['/site/climate', 'climate'],
  ['/site/climate/returnPeriods/*', 'returnPeriod'],
  ['/site/climate/yearlyMax', 'yearlyMax'],
  ['/site/distances', 'distances'],
  ['/tower', 'tower'],
  ['/tower/sections/*', 'section'],
  ['/tower/supportedAt/*', 'support'],
  ['/tower/hinge', 'hinge'],
  ['/tower/hinge/raisedBy', 'raisingGear'],
  ['/tower/hinge/counterpoise', 'counterpoise'],
  ['/tower/hinge/raisedBy/anchor', 'anchor'],
  ['/tower/hinge/raisedBy/raisingPoleTip', 'raisingPoleTip'],
  ['/tower/foundation', 'foundation'],
  ['/mast', 'mast'],
  ['/mast/pieces/*', 'mastPiece'],
  ['/rotator', 'rotator'],
  ['/loads/*', 'load'],
  ['/loads/*/ratedWind', 'loadRatedWind'],
  ['/loads/*/to', 'wireEnd'],
  ['/loads/*/tubes/*', 'tubeRow'],
  ['/loads/*/tubes/*/taper/*', 'taperPiece'],
  ['/cables/*', 'cable'],
  ['/ratings/*', 'rating'],
  ['/ratings/*/areasBySpeed/*', 'areaBySpeed'],
  ['/ratings/*/furtherAreas/*', 'furtherArea'],
  ['/ratings/*/supportedAt', 'ratedSupport'],
  ['/ratings/*/wind', 'ratedWind'],
  ['/ratings/*/withCables', 'withCables'],
  ['/wanted', 'wanted'],
  ['/titleBlock', 'titleBlock'],
  ['/titleBlock/drawings', 'drawing'],
  ['/titleBlock/attachments', 'attachment'],
];

/** Every field by its place, '/loads/*\/area'. @type {ReadonlyMap<string, Field>} */
export const FIELD_BY_PLACE = new Map(
  HOLDERS.flatMap(([at, holder]) =>
    Object.entries(/** @type {Readonly<Record<string, Field>>} */ (FIELDS[holder])).map(([name, field]) => [
      `${at}/${name}`,
      field,
    ]),
  ),
);

/** @typedef {{ field?: Field, inner: Map<string, Branch> }} Branch */

/** @type {Branch} */
const ROOT = { inner: new Map() };
for (const [place, field] of FIELD_BY_PLACE) {
  let branch = ROOT;
  for (const key of place.split('/').slice(1)) {
    const next = branch.inner.get(key) ?? { inner: new Map() };
    branch.inner.set(key, next);
    branch = next;
  }
  branch.field = field;
}

/**
 * The field that a pointer into a plan leads to, or the one it leads into: both ends of a height are that height.
 *
 * @param {string} pointer '/loads/0/height/1'
 * @returns {Field | undefined}
 */
export function fieldAt(pointer) {
  let branch = ROOT;
  for (const key of pointer.split('/').slice(1)) {
    if (branch.inner.size === 0) return branch.field;
    const next = branch.inner.get(key) ?? branch.inner.get('*');
    if (next === undefined) return undefined;
    branch = next;
  }
  return branch.field;
}
