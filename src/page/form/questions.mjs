import { asksYears, groundField, RATING_METHODS, SITE_METHODS } from './methods.mjs';

/**
 * Every question of the form: where its answer stands in the plan, what it is called, what kind of answer it takes.
 *
 * @typedef {import('./quantity.mjs').Dimension} Dimension
 *
 * @typedef {object} Asking
 * @property {(at: string) => string} here The answer beside this question, by its place from the same base.
 * @property {(at: string) => string} root The answer anywhere in the plan.
 * @property {(at: string) => boolean} has Whether anything stands at a place from the same base.
 *
 * @typedef {object} Question
 * @property {string} at JSON pointer from its base; '*' stands for a place in a list.
 * @property {string} label
 * @property {'quantity' | 'pair' | 'choice' | 'choices' | 'text' | 'whole' | 'number' | 'yes' | 'height-or-no'} kind
 * @property {Dimension} [of]
 * @property {readonly (readonly [string, string])[]} [choices]
 * @property {string} [blank] What the empty choice is called; without it the choice has no empty one but at the start.
 * @property {boolean} [unknown] "I don't know" is offered beside the entry.
 * @property {string} [hint]
 * @property {boolean} [more] Folded away until asked for.
 * @property {(asking: Asking) => boolean} [when]
 * @property {'short' | 'wide'} [size]
 * @property {Readonly<Record<string, readonly string[]>>} [owns] Which other answers beside it belong to which choice.
 * @property {string} [blankMeans] The choice that stands where none is made.
 *
 * @typedef {object} List
 * @property {string} at
 * @property {string} title
 * @property {string} one What one row is called.
 * @property {string} add What the act of adding one is called.
 * @property {readonly Question[]} row
 * @property {readonly List[]} [lists]
 * @property {boolean} [more]
 * @property {(asking: Asking) => boolean} [when]
 * @property {string} [hint]
 * @property {boolean} [narrow] Its rows stand in one line each.
 * @property {boolean} [folds] Its rows fold up to a line that sums them up.
 */

const BASES = /** @type {const} */ ([
  ['gust3-strength', '3-second gust, strength level (US maps since 2010)'],
  ['gust3-nominal', '3-second gust, once in about 50 years (US maps 1995 to 2009)'],
  ['fastest-mile', 'fastest mile (US maps before 1995, and many makers’ sheets since)'],
  ['mean-10min', '10-minute mean (European maps)'],
  ['mean-1min', '1-minute mean'],
  ['mean-hour', 'hourly mean'],
]);
const EXPOSURES = /** @type {const} */ ([
  ['B', 'houses or trees all round'],
  ['C', 'open country'],
  ['D', 'open water or flats upwind'],
]);
const TERRAINS = /** @type {const} */ ([
  ['0', 'open sea upwind'],
  ['I', 'a lake or bare flats upwind'],
  ['II', 'open country with single obstacles'],
  ['III', 'villages, suburbs or forest'],
  ['IV', 'a town with tall houses'],
]);
const CLASSES = /** @type {const} */ ([
  ['I', 'I, little harm if it falls'],
  ['II', 'II, ordinary'],
  ['III', 'III, many people near'],
  ['IV', 'IV, needed in an emergency'],
]);
const AREA_KINDS = /** @type {const} */ ([
  ['effective', 'drag already counted'],
  ['projected-round', 'shadow of round tubes'],
  ['projected-flat', 'shadow of flat faces'],
  ['flat-plate', 'counted as a flat plate of equal force (old sheets)'],
  ['unknown', 'not said on the sheet'],
]);
const MATERIALS = /** @type {const} */ ([
  ['steel', 'steel'],
  ['aluminium', 'aluminium'],
]);
const FACES = /** @type {const} */ ([
  ['3', 'three'],
  ['4', 'four'],
]);
const ALONG = /** @type {const} */ ([
  ['element', 'as elements'],
  ['boom', 'along the boom'],
  ['upright', 'upright'],
]);
const DONT_KNOW = 'I don’t know';

/** @type {(at: string, label: string, of: Dimension, rest?: Partial<Question>) => Question} */
const quantity = (at, label, of, rest = {}) => ({ at, label, kind: 'quantity', of, ...rest });
/** @type {(at: string, label: string, of: Dimension, rest?: Partial<Question>) => Question} */
const pair = (at, label, of, rest = {}) => ({ at, label, kind: 'pair', of, ...rest });
/** @type {(at: string, label: string, choices: Question['choices'], rest?: Partial<Question>) => Question} */
const choice = (at, label, choices, rest = {}) => ({
  at,
  label,
  kind: 'choice',
  ...(choices ? { choices } : {}),
  ...rest,
});
/** @type {(at: string, label: string, choices: Question['choices'], rest?: Partial<Question>) => Question} */
const choices = (at, label, list, rest = {}) => ({
  at,
  label,
  kind: 'choices',
  ...(list ? { choices: list } : {}),
  ...rest,
});
/** @type {(at: string, label: string, rest?: Partial<Question>) => Question} */
const text = (at, label, rest = {}) => ({ at, label, kind: 'text', size: 'wide', ...rest });
/** @type {(at: string, label: string, rest?: Partial<Question>) => Question} */
const whole = (at, label, rest = {}) => ({ at, label, kind: 'whole', size: 'short', ...rest });
/** @type {(at: string, label: string, rest?: Partial<Question>) => Question} */
const yes = (at, label, rest = {}) => ({ at, label, kind: 'yes', blank: DONT_KNOW, ...rest });

/** @type {(base?: string, what?: string) => Question[]} */
const remarks = (base = '', what = '') => [
  text(`${base}/source`, `Where ${what || 'this'} is from`, {
    more: true,
    hint: 'a sheet and its year, a letter, a tape measure',
  }),
  text(`${base}/note`, what ? `Remark on ${what}` : 'Remark', { more: true }),
];

const byTerrain = (/** @type {Asking} */ { root }) => groundField(root('/method')) === 'terrain';
const isShape =
  (/** @type {string[]} */ ...names) =>
  (/** @type {Asking} */ { here }) =>
    names.includes(here('/shape'));

/** Which answers go with which shape of a load. */
const LATTICE_ANSWERS = [
  '/faces',
  '/width',
  '/members',
  '/leg',
  '/brace',
  '/panel',
  '/pattern',
  '/solidity',
  '/roundArea',
  '/flatArea',
  '/dragArea',
];
const SHAPE_OWNS = {
  stated: ['/area', '/front', '/side', '/force', '/wind', '/areaKind', '/slenderFlats', '/icedArea'],
  tube: ['/diameter', '/along', '/length'],
  tubes: ['/tubes'],
  plate: ['/wide', '/tall', '/deep'],
  dish: ['/diameter', '/solidity'],
  wire: ['/diameter', '/to', '/tension', '/sag'],
  lattice: LATTICE_ANSWERS,
  pole: ['/width', '/sides'],
};
const SECTION_OWNS = {
  lattice: [...LATTICE_ANSWERS, '/legWall', '/material'],
  pole: ['/width', '/sides', '/wall', '/material'],
};

/** @type {(when: Question['when']) => Question[]} */
const latticeQuestions = (when) => [
  choices('/faces', 'Faces', FACES, when ? { when } : {}),
  choices(
    '/members',
    'Its members are',
    [
      ['round', 'round tube or rod'],
      ['flat', 'angle or strip'],
    ],
    when ? { when } : {},
  ),
  quantity('/leg', 'Thickness of a leg', 'diameter', {
    ...(when ? { when } : {}),
    unknown: true,
    hint: 'outside, by caliper or tape',
  }),
  quantity('/brace', 'Thickness of a brace', 'diameter', { ...(when ? { when } : {}), unknown: true }),
  quantity('/panel', 'Height of a panel', 'diameter', {
    ...(when ? { when } : {}),
    unknown: true,
    hint: 'one zigzag of the bracing, up the leg',
  }),
  choice(
    '/pattern',
    'Bracing',
    [
      ['zigzag', 'zigzag'],
      ['cross', 'crossed'],
      ['rungs', 'level rungs'],
    ],
    {
      ...(when ? { when } : {}),
      blank: 'zigzag',
      more: true,
    },
  ),
  quantity('/roundArea', 'Round members of one face', 'area', {
    ...(when ? { when } : {}),
    more: true,
    hint: 'in place of legs and braces',
  }),
  quantity('/flatArea', 'Flat members of one face', 'area', { ...(when ? { when } : {}), more: true }),
  quantity('/dragArea', 'The maker’s drag area', 'area', { ...(when ? { when } : {}), more: true }),
];

/** @type {(more: boolean) => Question[]} */
const sectionShape = (more) => [
  choices(
    '/shape',
    'Shape',
    [
      ['lattice', 'lattice'],
      ['pole', 'pole or tube'],
    ],
    { blank: DONT_KNOW, owns: SECTION_OWNS, more },
  ),
  pair('/width', 'Width', 'diameter', {
    when: isShape('lattice', 'pole'),
    unknown: true,
    hint: 'of a face, or across a pole; “18 to 12” where it narrows upwards',
    more,
  }),
  ...latticeQuestions(isShape('lattice')).map((question) => ({ ...question, more: more || question.more === true })),
  quantity('/solidity', 'Solid share of a face', 'share', {
    when: isShape('lattice'),
    more: true,
    hint: '0.2 or 20 %',
  }),
  choice(
    '/sides',
    'Sides of the pole',
    [
      ['0', 'round'],
      ['8', '8'],
      ['12', '12'],
      ['16', '16'],
      ['18', '18'],
    ],
    {
      when: isShape('pole'),
      blank: 'round',
      more,
    },
  ),
  quantity('/wall', 'Wall of the pole', 'diameter', {
    when: isShape('pole'),
    more: true,
    hint: 'for its frequency, with its material',
  }),
  quantity('/legWall', 'Wall of a leg', 'diameter', {
    when: isShape('lattice'),
    more: true,
    hint: 'for its frequency; half the leg where it is solid',
  }),
  choice('/material', 'Material', MATERIALS, { when: isShape('lattice', 'pole'), blank: DONT_KNOW, more: true }),
];

/** @type {(base: string, more?: boolean) => Question[]} What a sheet may say of the wind it goes by. */
const ratedWind = (base, more = false) => [
  quantity(`${base}/speed`, 'at a wind of', 'speed', {
    unknown: true,
    when: ({ here }) => here('/kind') !== 'weight' && here('/kind') !== 'torque',
  }),
  choice(`${base}/basis`, 'which kind of speed', BASES, { blank: DONT_KNOW, more }),
  choice(`${base}/method`, 'by which standard', RATING_METHODS, { blank: DONT_KNOW, more }),
  choice(`${base}/exposure`, 'for which ground', EXPOSURES, { blank: DONT_KNOW, more }),
  choice(`${base}/terrain`, 'for which terrain (Europe)', TERRAINS, { blank: DONT_KNOW, more: true }),
  choice(`${base}/riskCategory`, 'for which class of structure', CLASSES, { blank: DONT_KNOW, more }),
  whole(`${base}/year`, 'year of the sheet', { more }),
  ...remarks(base, 'that wind'),
];

const gear = (/** @type {Asking} */ { here }) => here('/of') === 'gear';
const isKind =
  (/** @type {string[]} */ ...names) =>
  (/** @type {Asking} */ asking) =>
    !gear(asking) && names.includes(asking.here('/kind') || 'area');

/** @type {List} */
export const LOADS = {
  at: '/loads',
  title: 'What hangs on it',
  one: 'load',
  add: 'Add a load',
  folds: true,
  row: [
    text('/name', 'What you call it', { size: 'wide' }),
    pair('/above', 'Height above the tower’s top', 'length', {
      hint: 'it rides along when the top moves; “8 to 17” for what stands upright',
    }),
    pair('/height', 'or above the ground', 'length', { hint: 'one of the two' }),
    choice(
      '/shape',
      'Known by',
      [
        ['stated', 'an area or a force from its sheet'],
        ['tubes', 'its tubes: beam, loop, quad, frame'],
        ['tube', 'one tube: vertical, arm'],
        ['plate', 'a panel or box'],
        ['dish', 'a dish'],
        ['wire', 'a wire'],
        ['lattice', 'a lattice piece'],
        ['pole', 'a pole'],
      ],
      { blank: 'an area or a force from its sheet', blankMeans: 'stated', owns: SHAPE_OWNS },
    ),
    quantity('/area', 'Its area', 'area', { when: isShape('', 'stated') }),
    choice('/areaKind', 'Which area is that', AREA_KINDS, { when: isShape('', 'stated'), blank: DONT_KNOW }),
    quantity('/front', 'or its area from the front', 'area', {
      when: isShape('', 'stated'),
      more: true,
      hint: 'wind along the boom',
    }),
    quantity('/side', 'and from the side', 'area', { when: isShape('', 'stated'), more: true }),
    quantity('/force', 'or a force', 'force', { when: isShape('', 'stated'), more: true }),
    quantity('/wind', 'at a speed of', 'speed', { when: isShape('', 'stated'), more: true }),
    yes('/slenderFlats', 'Angle or strip among its members', { when: isShape('', 'stated'), more: true }),
    quantity('/icedArea', 'Its area with ice', 'area', { when: isShape('', 'stated'), more: true }),
    pair('/diameter', 'Diameter', 'diameter', {
      when: isShape('tube', 'dish', 'wire'),
      hint: '“1 1/4 to 1/2” for a tube that narrows',
    }),
    quantity('/length', 'Length', 'length', { when: isShape('tube'), hint: 'left out, the height it spans' }),
    choice(
      '/along',
      'It runs',
      [
        ['upright', 'upright'],
        ['boom', 'along the boom'],
        ['element', 'as an element'],
      ],
      {
        when: isShape('tube'),
        blank: 'upright',
        more: true,
      },
    ),
    quantity('/wide', 'Width', 'diameter', { when: isShape('plate') }),
    quantity('/tall', 'Height', 'diameter', { when: isShape('plate') }),
    quantity('/deep', 'Depth', 'diameter', { when: isShape('plate') }),
    quantity('/to/distance', 'Far end, away from the tower', 'length', { when: isShape('wire') }),
    quantity('/to/height', 'Far end, above ground', 'length', { when: isShape('wire') }),
    quantity('/to/heading', 'It runs towards', 'angle', { when: isShape('wire'), hint: 'clockwise from true north' }),
    quantity('/tension', 'Its pull', 'force', { when: isShape('wire'), unknown: true }),
    quantity('/sag', 'or its sag half-way', 'length', { when: isShape('wire') }),
    ...remarks('/to', 'the far end').map((question) => ({ ...question, when: isShape('wire') })),
    pair('/width', 'Width', 'diameter', { when: isShape('lattice', 'pole') }),
    ...latticeQuestions(isShape('lattice')),
    quantity('/solidity', 'Solid share', 'share', {
      when: isShape('lattice', 'dish'),
      hint: 'less than 1 for mesh; 0.4 or 40 %',
      more: true,
    }),
    choice(
      '/sides',
      'Sides',
      [
        ['0', 'round'],
        ['8', '8'],
        ['12', '12'],
        ['16', '16'],
        ['18', '18'],
      ],
      { when: isShape('pole'), blank: 'round' },
    ),
    yes('/turns', 'Turned by the rotator', { blank: 'no' }),
    quantity('/weight', 'Weight of one', 'weight', { unknown: true }),
    whole('/count', 'How many alike', { more: true }),
    quantity('/heading', 'It faces', 'angle', {
      more: true,
      hint: 'clockwise from true north; with a rotator, at its zero',
    }),
    choice(
      '/on',
      'Carried by',
      [
        ['mast', 'the mast'],
        ['tower', 'the tower'],
      ],
      { more: true, blank: 'by its height' },
    ),
    quantity('/offset', 'Beside the axis by', 'length', {
      more: true,
      hint: 'from the tower’s axis to the middle of its area',
    }),
    quantity('/boom', 'Length of its boom', 'length', { more: true }),
    quantity('/reach', 'Farthest tip from the mast', 'length', { more: true, hint: 'its turning radius' }),
    ...ratedWind('/ratedWind', true).map((question) => ({
      ...question,
      more: true,
      ...(question.at.endsWith('/speed') ? { label: 'The wind its maker rates it for', when: () => true } : {}),
    })),
    ...remarks(),
  ],
  lists: [
    {
      at: '/tubes',
      title: 'Its tubes',
      one: 'row of tubes',
      add: 'Add a row of tubes',
      when: isShape('tubes'),
      row: [
        choice('/along', 'They run', ALONG, {}),
        whole('/count', 'How many alike'),
        quantity('/diameter', 'Diameter', 'diameter', { when: ({ has }) => !has('/taper') }),
        quantity('/length', 'Whole length, tip to tip', 'length', { when: ({ has }) => !has('/taper') }),
        choice('/material', 'Material', MATERIALS, { blank: 'aluminium', more: true }),
        quantity('/yield', 'Strength of the metal', 'stress', {
          more: true,
          hint: 'yield, to check the elements themselves',
        }),
        quantity('/ultimate', 'Strength at rupture', 'stress', { more: true, hint: 'for aluminium' }),
        ...remarks(),
      ],
      lists: [
        {
          at: '/taper',
          title: 'Tubes that narrow, from the boom outward',
          one: 'tube',
          add: 'Add a tube',
          narrow: true,
          when: ({ here }) => here('/diameter') === '' && here('/length') === '',
          row: [
            quantity('/0', 'outside', 'diameter', { size: 'short' }),
            quantity('/1', 'in sight', 'diameter', { size: 'short' }),
            quantity('/2', 'wall', 'diameter', { size: 'short' }),
          ],
        },
      ],
    },
  ],
};

/** @type {List} */
export const CABLES = {
  at: '/cables',
  title: 'The lines',
  one: 'run of lines',
  add: 'Add a run of lines',
  row: [
    whole('/count', 'How many'),
    quantity('/diameter', 'Outside diameter of one', 'diameter'),
    choice(
      '/laid',
      'They lie',
      [
        ['single', 'singly'],
        ['ribbon', 'flat in a row'],
        ['bundle', 'in one round bundle'],
        ['inside', 'inside the tower'],
      ],
      {
        blank: DONT_KNOW,
      },
    ),
    text('/name', 'What you call them', { more: true }),
    quantity('/weight', 'Weight of one', 'weight-per-length', { more: true }),
    quantity('/from', 'from', 'length', { more: true, hint: 'left out, the tower’s foot' }),
    quantity('/to', 'up to', 'length', { more: true, hint: 'left out, the tower’s top' }),
    ...remarks(),
  ],
};

/** @type {List} */
export const RATINGS = {
  at: '/ratings',
  title: 'What the makers say',
  one: 'rating',
  add: 'Add a rating',
  folds: true,
  row: [
    choice(
      '/of',
      'What is rated',
      [
        ['tower', 'the tower'],
        ['mast', 'the mast'],
        ['bearing', 'the bearing'],
        ['rotator', 'the rotator'],
        ['foundation', 'the footing'],
        ['gear', 'rope, winch or other gear'],
      ],
      { blank: '' },
    ),
    choice(
      '/kind',
      'It says',
      [
        ['area', 'an area it takes'],
        ['force', 'a force'],
        ['moment', 'a moment'],
        ['wind', 'a wind it stands bare'],
        ['weight', 'a weight'],
        ['torque', 'a turning torque'],
      ],
      {
        when: (asking) => !gear(asking),
        blank: 'an area it takes',
        blankMeans: 'area',
        owns: {
          area: ['/area', '/rows', '/areaKind', '/coefficient', '/also'],
          force: ['/force', '/level'],
          moment: ['/moment', '/level'],
          wind: [],
          weight: ['/weight'],
          torque: ['/torque', '/brake', '/level'],
        },
      },
    ),
    quantity('/area', 'It takes', 'area', { when: isKind('area') }),
    choice('/areaKind', 'which area is that', AREA_KINDS, { when: isKind('area'), blank: DONT_KNOW }),
    quantity('/coefficient', 'a coefficient the sheet names', 'share', {
      when: isKind('area'),
      more: true,
      hint: 'for a projected area',
    }),
    quantity('/force', 'It takes', 'force', { when: isKind('force') }),
    quantity('/moment', 'It takes', 'moment', { when: isKind('moment') }),
    quantity('/weight', 'It takes', 'weight', { when: isKind('weight') }),
    quantity('/torque', 'It turns with', 'moment', { when: isKind('torque') }),
    quantity('/brake', 'It brakes', 'moment', { when: isKind('torque') }),
    quantity('/breaking', 'It breaks at', 'force', { when: gear }),
    quantity('/working', 'or may carry', 'force', { when: gear }),
    choice(
      '/level',
      'That is',
      [
        ['allowable', 'an allowable load'],
        ['strength', 'its strength'],
      ],
      {
        when: isKind('force', 'moment', 'torque'),
        blank: DONT_KNOW,
      },
    ),
    ...ratedWind('/wind').map((question) => ({
      ...question,
      when: (/** @type {Asking} */ asking) => !gear(asking) && isKind('area', 'force', 'moment', 'wind')(asking),
    })),
    quantity('/above', 'acting above the top by', 'length', {
      unknown: true,
      when: (asking) => !gear(asking) && isKind('area', 'force', 'moment')(asking),
      more: true,
    }),
    quantity('/height', 'or at a height of', 'length', {
      when: (asking) => !gear(asking) && isKind('area', 'force', 'moment')(asking),
      more: true,
    }),
    quantity('/top', 'stated for a top at', 'length', { more: true }),
    whole('/withCables/count', 'lines it already allows for', { more: true }),
    quantity('/withCables/diameter', 'of a diameter of', 'diameter', { more: true }),
    choice(
      '/withCables/laid',
      'they lay',
      [
        ['single', 'singly'],
        ['ribbon', 'flat in a row'],
        ['bundle', 'in one round bundle'],
        ['inside', 'inside the tower'],
      ],
      { blank: DONT_KNOW, more: true },
    ),
    ...remarks('/withCables', 'those lines'),
    text('/source', 'from', { hint: 'the sheet and its year' }),
    text('/note', 'Remark', { more: true }),
  ],
  lists: [
    {
      at: '/rows',
      title: 'or areas by speed',
      one: 'row',
      add: 'Add a speed',
      narrow: true,
      when: isKind('area'),
      more: true,
      row: [quantity('/0', 'speed', 'speed', { size: 'short' }), quantity('/1', 'area', 'area', { size: 'short' })],
    },
    {
      at: '/also',
      title: 'Further areas of the same case',
      one: 'area',
      add: 'Add an area',
      when: isKind('area'),
      more: true,
      row: [quantity('/area', 'area', 'area'), quantity('/height', 'at a height of', 'length'), ...remarks()],
    },
    {
      at: '/held',
      title: 'Supports it was stated for',
      one: 'support',
      add: 'Add a support',
      narrow: true,
      more: true,
      row: [quantity('', 'height', 'length', { size: 'short' })],
    },
  ],
};

/** @typedef {{ id: string, title: string, lead?: string, folded: boolean, base?: string, questions: readonly Question[], lists?: readonly List[] }} Part */

/** @type {readonly Part[]} The sheet, read from the top. */
export const PARTS = [
  {
    id: 'wind',
    title: 'The wind',
    folded: false,
    lead: 'what you must design for',
    questions: [
      choice('/method', 'Standard for towers', SITE_METHODS, { hint: 'the one your building department goes by' }),
      quantity('/site/wind/speed', 'Wind speed you were given', 'speed', {
        hint: 'on your county’s or city’s page, or in the permit papers',
      }),
      choice('/site/wind/basis', 'Which kind of speed', BASES, { blank: DONT_KNOW }),
      text('/site/wind/source', 'from', { hint: 'the page or map, and its year', more: true }),
      choices('/site/exposure', 'Ground upwind', EXPOSURES, { when: (asking) => !byTerrain(asking) }),
      choices('/site/terrain', 'Ground upwind', TERRAINS, { when: byTerrain }),
      choice(
        '/site/hill/shape',
        'Hill',
        [
          ['escarpment', 'bluff or escarpment'],
          ['ridge', 'long ridge'],
          ['round-hill', 'round hill'],
        ],
        {
          blank: 'level ground, or not known',
          owns: Object.fromEntries(
            ['escarpment', 'ridge', 'round-hill'].map((shape) => [
              shape,
              [
                '/site/hill/height',
                '/site/hill/run',
                '/site/hill/halfLength',
                '/site/hill/distance',
                '/site/hill/side',
                '/site/hill/isolated',
                '/site/hill/source',
                '/site/hill/note',
              ],
            ]),
          ),
        },
      ),
      ...[
        quantity('/site/hill/height', 'its height', 'length', { hint: 'crest above the land around' }),
        quantity('/site/hill/halfLength', 'from the crest half-way down', 'length', {
          hint: 'level distance, on the windward side',
        }),
        quantity('/site/hill/run', 'or from foot to crest', 'length', { hint: 'one of the two' }),
        quantity('/site/hill/distance', 'tower from the crest', 'length'),
        choices('/site/hill/side', 'the tower stands', [
          ['upwind', 'before the crest'],
          ['downwind', 'behind the crest'],
        ]),
        yes('/site/hill/isolated', 'it stands alone', { hint: 'and is twice as high as the ground within 2 miles' }),
        ...remarks('/site/hill', 'the hill'),
      ].map((question) => ({ ...question, when: (/** @type {Asking} */ { root }) => root('/site/hill/shape') !== '' })),
      quantity('/site/topographicFactor', 'Hill factor the county gives', 'share', {
        more: true,
        hint: 'in place of the hill',
      }),
      choice('/site/riskCategory', 'Risk category', CLASSES, {
        blank: 'II, ordinary, unless you are told otherwise',
        more: true,
      }),
      quantity('/site/groundElevation', 'Ground above the sea', 'length', { more: true }),
      {
        ...whole('/site/wind/years', 'Return period to take it to, years', {
          more: true,
          when: ({ root }) => asksYears(root('/method')),
        }),
        kind: 'number',
      },
      quantity('/site/ice/thickness', 'Ice, thickness', 'diameter', { more: true }),
      quantity('/site/ice/gust', 'gust that goes with the ice', 'speed', { more: true }),
      ...remarks('/site/ice', 'the ice'),
      text('/site/wind/note', 'Remark on the speed', { more: true }),
      ...remarks('/site', 'what is said of the site'),
    ],
  },
  {
    id: 'tower',
    title: 'The tower',
    folded: false,
    base: '/tower',
    questions: [
      choices(
        '/support',
        'How it is held',
        [
          ['free', 'by itself'],
          ['guyed', 'by guys'],
          ['bracketed', 'to the house'],
          ['roof', 'on a roof'],
        ],
        {},
      ),
      quantity('/top', 'Top above ground', 'length'),
      quantity('/foot', 'Foot above ground', 'length', { more: true, hint: 'on a roof: the height of the roof' }),
      ...sectionShape(false).map((question) => ({
        ...question,
        when: (/** @type {Asking} */ asking) =>
          (!asking.has('/sections') || asking.has(question.at)) && (question.when?.(asking) ?? true),
      })),
      choices(
        '/telescopes',
        'Sections slide into each other',
        [
          ['true', 'yes, it cranks up'],
          ['false', 'no'],
        ],
        { more: true, blank: 'not said' },
      ),
      quantity('/nested', 'Its top when down', 'length', { more: true }),
      quantity('/weight', 'Weight of the whole tower', 'weight', { more: true }),
      yes('/asDrawn', 'Guys, brackets and footing are the maker’s own', {
        when: ({ here }) => here('/support') !== 'roof',
        more: true,
      }),
      yes('/used', 'It has stood elsewhere or for years', { more: true, blank: 'not said' }),
      quantity('/frequency', 'Lowest natural frequency', 'frequency', { more: true }),
      quantity('/damping', 'Damping', 'share', { more: true, hint: 'share of critical, 0.02 or 2 %' }),
      ...remarks('', 'what is said of the tower'),
    ],
    lists: [
      {
        at: '/sections',
        title: 'Sections, from the foot up',
        one: 'section',
        add: 'Add a section',
        folds: true,
        hint: 'each stands inside what the rating shows for its own make',
        row: [
          quantity('/length', 'Length', 'length'),
          whole('/count', 'How many alike'),
          text('/name', 'What you call it', { size: 'wide' }),
          ...sectionShape(false),
          text('/make', 'Make', { more: true, hint: 'sections of one make share what is proven' }),
          yes('/uniform', 'Alike over its length', { more: true }),
          quantity('/weight', 'Weight of one', 'weight', {
            more: true,
            hint: 'for the hoist of a tower that slides together',
          }),
          ...remarks(),
        ],
      },
      {
        at: '/held',
        title: 'Guys and brackets',
        one: 'support',
        add: 'Add guys or a bracket',
        more: true,
        row: [
          quantity('/height', 'Height above ground', 'length'),
          choice(
            '/by',
            'Held by',
            [
              ['guys', 'guys'],
              ['bracket', 'a bracket'],
            ],
            { blank: '' },
          ),
          whole('/count', 'How many guys', { when: ({ here }) => here('/by') === 'guys' }),
          quantity('/diameter', 'Diameter of one', 'diameter', { when: ({ here }) => here('/by') === 'guys' }),
          quantity('/radius', 'Foot of the tower to the anchor', 'length', {
            when: ({ here }) => here('/by') === 'guys',
          }),
          ...remarks(),
        ],
      },
    ],
  },
  { id: 'loads', title: LOADS.title, folded: false, questions: [], lists: [LOADS] },
  { id: 'cables', title: CABLES.title, folded: false, questions: [], lists: [CABLES] },
  {
    id: 'ratings',
    title: RATINGS.title,
    folded: false,
    questions: [],
    lists: [RATINGS],
    lead: 'one line of a sheet each',
  },
  {
    id: 'mast',
    title: 'The mast',
    folded: true,
    base: '/mast',
    questions: [
      quantity('/outside', 'Outside', 'diameter'),
      quantity('/wall', 'Wall', 'diameter', { unknown: true }),
      quantity('/length', 'Whole length', 'length'),
      quantity('/inside', 'of it inside the tower', 'length', {
        unknown: true,
        hint: '0 where it is clamped on a rotator at the top',
      }),
      quantity('/yield', 'Strength of its metal', 'stress', {
        unknown: true,
        hint: 'yield; the seller’s invoice or mill sheet has it',
      }),
      {
        at: '/bearing',
        label: 'Its upper bearing at',
        kind: 'height-or-no',
        of: 'length',
        more: true,
        hint: 'left out, the tower’s top; “no” where there is none',
      },
      yes('/shelf', 'Bearing and foot stand on the maker’s own plates', { more: true }),
      choice('/material', 'Material', MATERIALS, { blank: 'steel', more: true }),
      quantity('/ultimate', 'Strength at rupture', 'stress', { more: true, hint: 'for aluminium' }),
      ...remarks('', 'what is said of the mast'),
    ],
    lists: [
      {
        at: '/pieces',
        title: 'Stepped or sleeved: its tubes',
        one: 'tube',
        add: 'Add a tube',
        more: true,
        row: [
          quantity('/outside', 'Outside', 'diameter'),
          quantity('/wall', 'Wall', 'diameter'),
          quantity('/from', 'from, above the mast’s foot', 'length'),
          quantity('/to', 'to', 'length'),
          quantity('/yield', 'Strength', 'stress'),
          ...remarks(),
        ],
      },
    ],
  },
  {
    id: 'rotator',
    title: 'The rotator',
    folded: true,
    base: '/rotator',
    questions: [
      quantity('/height', 'Height of the mast’s foot', 'length', { hint: 'above ground' }),
      quantity('/weight', 'Weight', 'weight', { unknown: true }),
      ...remarks(),
    ],
  },
  {
    id: 'footing',
    title: 'The footing',
    folded: true,
    base: '/tower/foundation',
    questions: [
      choice(
        '/kind',
        'What it stands on',
        [
          ['maker', 'built to the maker’s drawing'],
          ['block', 'a block of concrete'],
          ['pier', 'a drilled pier'],
        ],
        {
          blank: DONT_KNOW,
          owns: {
            block: ['/length', '/width', '/depth', '/bearing'],
            pier: ['/diameter', '/depth', '/lateral', '/constrained'],
            maker: [],
          },
        },
      ),
      quantity('/length', 'Length', 'length', { when: ({ here }) => here('/kind') === 'block' }),
      quantity('/width', 'Width', 'length', { when: ({ here }) => here('/kind') === 'block' }),
      quantity('/diameter', 'Diameter', 'length', { when: ({ here }) => here('/kind') === 'pier' }),
      quantity('/depth', 'Depth', 'length', { when: ({ here }) => ['block', 'pier'].includes(here('/kind')) }),
      quantity('/bearing', 'Soil may bear', 'soil-pressure', {
        when: ({ here }) => here('/kind') === 'block',
        unknown: true,
        hint: 'the building department’s table, or the house’s own plans',
      }),
      quantity('/lateral', 'Soil may bear sideways', 'soil-pressure-per-depth', {
        when: ({ here }) => here('/kind') === 'pier',
        unknown: true,
      }),
      yes('/constrained', 'Held at the ground by a slab', { when: ({ here }) => here('/kind') === 'pier' }),
      ...remarks(),
    ],
  },
  {
    id: 'raising',
    title: 'Raising it',
    folded: true,
    base: '/tower/hinge',
    questions: [
      quantity('/height', 'Hinge above ground', 'length'),
      choice(
        '/raisedBy/kind',
        'Raised by',
        [
          ['line', 'a line'],
          ['winch', 'a winch'],
          ['screw', 'a screw'],
          ['actuator', 'an actuator'],
        ],
        { blank: DONT_KNOW },
      ),
      quantity('/raisedBy/anchor/0', 'anchored beside the hinge by', 'length', {
        hint: 'towards where the tower lies down: positive',
      }),
      quantity('/raisedBy/anchor/1', 'and above it by', 'length'),
      quantity('/raisedBy/attach', 'takes hold along the tower at', 'length', { hint: 'from the hinge' }),
      quantity('/raisedBy/over/0', 'over a raising pole with its tip beside the hinge', 'length', { more: true }),
      quantity('/raisedBy/over/1', 'and above it by', 'length', { more: true }),
      quantity('/raisedBy/rating', 'it may pull', 'force', { unknown: true }),
      ...remarks('/raisedBy', 'the gear'),
      ...remarks('', 'the hinge'),
    ],
  },
  {
    id: 'near',
    title: 'What stands near',
    folded: true,
    base: '/site/distances',
    questions: [
      quantity('/powerLine', 'To the power line', 'length', { hint: 'from the foot of the tower' }),
      quantity('/propertyLine', 'To the property line', 'length'),
      quantity('/building', 'To the building', 'length'),
      ...remarks(),
    ],
  },
  {
    id: 'climate',
    title: 'Winds on record',
    folded: true,
    base: '/site/climate',
    lead: 'for the chance of a stronger one',
    questions: [choice('/basis', 'How they were measured', BASES, { blank: '' }), ...remarks()],
    lists: [
      {
        at: '/returns',
        title: 'From a chart',
        one: 'line',
        add: 'Add a line of the chart',
        narrow: true,
        row: [
          { at: '/0', label: 'once in, years', kind: 'number', size: 'short' },
          quantity('/1', 'speed', 'speed', { size: 'short' }),
        ],
      },
      {
        at: '/yearlyMax',
        title: 'or the strongest of each year',
        one: 'year',
        add: 'Add a year',
        narrow: true,
        hint: 'a column of a sheet can be pasted into the first',
        row: [quantity('', 'strongest', 'speed', { size: 'short' })],
      },
    ],
  },
  {
    id: 'wanted',
    title: 'What you want',
    folded: true,
    base: '/wanted',
    questions: [
      quantity('/margin', 'Margin to keep', 'share', { hint: '0.2 or 20 %; left out, 20 %' }),
      quantity('/forecast', 'Forecasts may be low by', 'share', { hint: 'left out, 10 %' }),
      whole('/years', 'Years it is to stand', { hint: 'left out, 30' }),
      ...remarks(),
    ],
  },
  {
    id: 'sheet',
    title: 'For the worksheet',
    folded: true,
    lead: 'its title block',
    questions: [
      text('/title', 'Name of the plan'),
      ...[
        ['applicant', 'Applicant'],
        ['owner', 'Owner'],
        ['address', 'Address of the site'],
        ['parcel', 'Parcel'],
        ['jurisdiction', 'Building department'],
        ['permit', 'Permit number'],
        ['code', 'Adopted building code'],
        ['date', 'Date'],
      ].map(([name, label]) => text(`/sheet/${name}`, /** @type {string} */ (label))),
      ...remarks('/sheet', 'the title block'),
      ...remarks('', 'the plan'),
    ],
    lists: [
      {
        at: '/sheet/drawings',
        title: 'Drawings that belong to it',
        one: 'drawing',
        add: 'Add a drawing',
        narrow: true,
        row: [text('', 'drawing')],
      },
      {
        at: '/sheet/attachments',
        title: 'Attachments',
        one: 'attachment',
        add: 'Add an attachment',
        narrow: true,
        row: [text('', 'attachment')],
      },
    ],
  },
];

/** @type {Map<string, Question>} */
const BY_PLACE = new Map();
/** @type {Map<string, List>} */
const LIST_BY_PLACE = new Map();

/** @param {string} base @param {readonly Question[]} questions @param {readonly List[]} lists */
function enter(base, questions, lists) {
  for (const question of questions) BY_PLACE.set(base + question.at, question);
  for (const list of lists) {
    LIST_BY_PLACE.set(base + list.at, list);
    enter(`${base}${list.at}/*`, list.row, list.lists ?? []);
  }
}
for (const part of PARTS) enter(part.base ?? '', part.questions, part.lists ?? []);

/** Every place of the plan the form asks for, with '*' for a place in a list. */
export const PLACES = /** @type {ReadonlyMap<string, Question>} */ (BY_PLACE);

/** Every list of the plan the form has. */
export const LISTS = /** @type {ReadonlyMap<string, List>} */ (LIST_BY_PLACE);

/** A place of the plan with '*' for each place in a list. @param {string} pointer */
export function template(pointer) {
  let place = '';
  for (const key of pointer.split('/').slice(1))
    place += /^\d+$/.test(key) && LIST_BY_PLACE.has(place) ? '/*' : `/${key}`;
  return place;
}

/** The question at a place of the plan. @param {string} pointer */
export const questionAt = (pointer) => BY_PLACE.get(template(pointer));

/** The list at a place of the plan. @param {string} pointer */
export const listAt = (pointer) => LIST_BY_PLACE.get(template(pointer));

/** The part of the sheet in which a place is asked for. @param {string} pointer */
export function partOf(pointer) {
  const inside = (/** @type {string} */ at) => pointer === at || pointer.startsWith(`${at}/`);
  return PARTS.find(({ base = '', questions, lists = [] }) =>
    [...questions, ...lists].some(({ at }) => inside(base + at) || (base + at).startsWith(`${pointer}/`)),
  );
}
