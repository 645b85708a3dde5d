/**
 * Every question of the form: where its answer stands in the plan and what kind of answer it takes. What it is called,
 * the catalogue of fields says.
 *
 * @typedef {import('./quantity.mjs').Dimension} Dimension
 *
 * @typedef {object} Asking
 * @property {(at: string) => string} here The answer beside this question, by its place from the same base.
 * @property {(at: string) => string} root The answer anywhere in the plan.
 * @property {(at: string) => boolean} has Whether anything stands at a place from the same base.
 *
 * @typedef {object} Bare A question before the catalogue gave it words.
 * @property {string} at JSON pointer from its base; '*' stands for a place in a list.
 * @property {'quantity' | 'pair' | 'choice' | 'choices' | 'text' | 'whole' | 'number' | 'yes' | 'height-or-no'} kind
 * @property {string} [blank] What the empty choice is called; without it the choice has no empty one but at the start.
 * @property {boolean} [unknown] "I don't know" is offered beside the entry.
 * @property {boolean} [more] Folded away until asked for.
 * @property {(asking: Asking) => boolean} [plain] Not folded away then: the answer waits for it.
 * @property {(asking: Asking) => boolean} [when]
 * @property {{ at: string, says: string }} [same] Another answer of the plan that one press takes here.
 * @property {'short' | 'wide'} [size]
 * @property {Readonly<Record<string, readonly string[]>>} [owns] Which other answers beside it belong to which choice.
 * @property {readonly (readonly [string, string])[]} [choices] Where the catalogue has none.
 * @property {string} [blankMeans] The choice that stands where none is made.
 *
 * @typedef {Bare & { label: string, hint?: string, of?: Dimension, choices?: readonly (readonly [string, string])[] }} Question
 *
 * @typedef {object} BareList
 * @property {string} at
 * @property {readonly Bare[]} row
 * @property {readonly BareList[]} [lists]
 * @property {boolean} [more]
 * @property {(asking: Asking) => boolean} [when]
 * @property {boolean} [narrow] Its rows stand in one line each.
 * @property {boolean} [folds] Its rows fold up to a line that sums them up.
 * @property {string} [none] What says that there are none, which no rows alone do not say.
 *
 * @typedef {object} ListWords
 * @property {string} title
 * @property {string} one What one row is called.
 * @property {string} add What the act of adding one is called.
 * @property {string} [hint]
 * @property {readonly Question[]} row
 * @property {readonly List[]} [lists]
 *
 * @typedef {Omit<BareList, 'row' | 'lists'> & ListWords} List
 */
import { FIELD_BY_PLACE, FIELDS, FIELDS_OF_KIND, FIELDS_OF_SHAPE } from '../../words/index.mjs';
import { asksIsolated, asksYears, groundField, RATING_METHODS, SITE_METHODS } from './methods.mjs';
import { inSi } from './quantity.mjs';

const DONT_KNOW = 'I don’t know';

/** What the catalogue says of a place. @param {string} place */
function fieldAt(place) {
  const field = FIELD_BY_PLACE.get(place);
  if (field === undefined) throw new Error(`${place} is no field of the plan`);
  return field;
}

/** A question with its words. @param {string} base @param {Bare} bare @returns {Question} */
function worded(base, bare) {
  const { label, hint, of, choices } = fieldAt(base + bare.at);
  return {
    ...bare,
    label,
    ...(hint === undefined ? {} : { hint }),
    ...(of === undefined || bare.kind === 'whole' ? {} : { of }),
    ...(choices === undefined ? {} : { choices: Object.entries(choices) }),
  };
}

/** A list with its words. @param {string} base @param {BareList} bare @returns {List} */
function wordedList(base, { row, lists = [], ...bare }) {
  const { label, one = label, add = label, hint } = fieldAt(base + bare.at);
  const inRow = `${base}${bare.at}/*`;
  return {
    ...bare,
    title: label,
    one,
    add,
    ...(hint === undefined ? {} : { hint }),
    row: row.map((each) => worded(inRow, each)),
    lists: lists.map((each) => wordedList(inRow, each)),
  };
}

/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const quantity = (at, rest = {}) => ({ at, kind: 'quantity', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const pair = (at, rest = {}) => ({ at, kind: 'pair', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const choice = (at, rest = {}) => ({ at, kind: 'choice', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const choices = (at, rest = {}) => ({ at, kind: 'choices', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const text = (at, rest = {}) => ({ at, kind: 'text', size: 'wide', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const whole = (at, rest = {}) => ({ at, kind: 'whole', size: 'short', ...rest });
/** @type {(at: string, rest?: Partial<Bare>) => Bare} */
const yes = (at, rest = {}) => ({ at, kind: 'yes', blank: DONT_KNOW, ...rest });

/** @type {(base?: string) => Bare[]} */
const remarks = (base = '') => [text(`${base}/source`, { more: true }), text(`${base}/note`, { more: true })];

const byTerrain = (/** @type {Asking} */ { root }) => groundField(root('/method')) === 'terrain';
const isShape =
  (/** @type {string[]} */ ...names) =>
  (/** @type {Asking} */ { here }) =>
    names.includes(here('/shape'));

/** What concrete of any shape has in the ground. */
const IN_SOIL = [
  '/depth',
  '/soilBearing',
  '/soilLateral',
  '/bearingNet',
  '/isolatedPole',
  '/bothAccepted',
  '/concrete',
];

/** Questions that are all asked only then. @type {(when: NonNullable<Bare['when']>, ...questions: Bare[]) => Bare[]} */
const askedIf = (when, ...questions) =>
  questions.map((question) => {
    const own = question.when;
    return { ...question, when: own ? (asking) => when(asking) && own(asking) : when };
  });
/** @type {(...at: string[]) => Bare[]} */
const quantities = (...at) => at.map((each) => quantity(each));
/** Rare ones, folded away. @type {(...at: string[]) => Bare[]} */
const rareQuantities = (...at) => at.map((each) => quantity(each, { more: true }));

/** The places of fields beside a question. @param {readonly string[]} fields */
const beside = (fields) => fields.map((field) => `/${field}`);
/** Which answers go with which choice. @param {Readonly<Record<string, readonly string[]>>} fieldsOf */
const owned = (fieldsOf) => Object.fromEntries(Object.entries(fieldsOf).map(([key, fields]) => [key, beside(fields)]));
const SECTION_OWNS = owned({
  lattice: [...FIELDS_OF_SHAPE.lattice, 'legWall', 'braceWall', 'legFree', 'material', 'yield', 'ultimate'],
  pole: [...FIELDS_OF_SHAPE.pole, 'wall', 'material', 'yield', 'ultimate'],
});

const LATTICE_QUESTIONS = askedIf(
  isShape('lattice'),
  choices('/faces'),
  choices('/members'),
  quantity('/leg', { unknown: true }),
  quantity('/brace', { unknown: true }),
  quantity('/panel', { unknown: true }),
  choice('/pattern', { blank: DONT_KNOW, more: true, plain: ({ has }) => has('/brace') || has('/panel') }),
  ...rareQuantities('/roundArea', '/flatArea', '/dragArea'),
);

/** @type {(more: boolean) => Bare[]} */
const sectionShape = (more) => [
  choices('/shape', { blank: DONT_KNOW, owns: SECTION_OWNS, more }),
  pair('/width', { when: isShape('lattice', 'pole'), unknown: true, more }),
  ...LATTICE_QUESTIONS.map((question) => ({ ...question, more: more || question.more === true })),
  quantity('/solidity', { when: isShape('lattice'), more: true }),
  choice('/sides', { when: isShape('pole'), blank: DONT_KNOW, more }),
  quantity('/wall', { when: isShape('pole'), more: true }),
  ...askedIf(isShape('lattice'), ...rareQuantities('/legWall', '/braceWall', '/legFree')),
  choice('/material', { when: isShape('lattice', 'pole'), blank: DONT_KNOW, more: true }),
  ...askedIf(isShape('lattice', 'pole'), ...rareQuantities('/yield', '/ultimate')),
];

/** @type {(base: string, more?: boolean) => Bare[]} What a sheet may say of the wind it goes by. */
const ratedWind = (base, more = false) => [
  quantity(`${base}/speed`, {
    unknown: true,
    when: ({ here }) => here('/kind') !== 'weight' && here('/kind') !== 'torque',
  }),
  choice(`${base}/basis`, { blank: DONT_KNOW, more }),
  choice(`${base}/method`, { choices: RATING_METHODS, blank: DONT_KNOW, more }),
  choice(`${base}/exposure`, { blank: DONT_KNOW, more }),
  choice(`${base}/terrain`, { blank: DONT_KNOW, more: true }),
  choice(`${base}/riskCategory`, { blank: DONT_KNOW, more }),
  whole(`${base}/year`, { more }),
  ...remarks(base),
];

/** The wind a tower is rated by; the height of the tower that it is for stands next to the speed and its type. @type {() => Bare[]} */
const ratedTowerWind = () => {
  const [speed, basis, ...rest] = ratedWind('/wind');
  const top = quantity('/top', {
    unknown: true,
    more: true,
    plain: ofTower,
    same: { at: '/tower/top', says: 'for this tower’s height' },
  });
  return [...[speed, basis].filter((each) => each !== undefined), top, ...rest];
};

const ofTower = (/** @type {Asking} */ { here }) => ['', 'tower'].includes(here('/of')) && here('/kind') !== 'weight';

/** A load on the side of the tower, below its top. @param {Asking} asking */
function isBeside({ here, root }) {
  if (here('/on') === 'mast' || here('/shape') === 'wire') return false;
  const units = root('/units') === 'si' ? 'si' : 'us';
  const middle = (/** @type {string} */ text) => {
    const ends = text.split(/\s+to\s+/i).map((end) => inSi(end, 'length', units));
    return ends.reduce((sum, end) => sum + end, 0) / ends.length;
  };
  return middle(here('/above')) < 0 || middle(here('/height')) < middle(root('/tower/top'));
}

const gear = (/** @type {Asking} */ { here }) => here('/of') === 'gear';
const isKind =
  (/** @type {string[]} */ ...names) =>
  (/** @type {Asking} */ asking) =>
    !gear(asking) && names.includes(asking.here('/kind') || 'area');

export const LOADS = wordedList('', {
  at: '/loads',
  folds: true,
  row: [
    text('/name', { size: 'wide' }),
    pair('/above'),
    pair('/height'),
    choice('/shape', {
      blank: 'an area or a force from its data sheet',
      blankMeans: 'stated',
      owns: owned(FIELDS_OF_SHAPE),
    }),
    ...askedIf(
      isShape('', 'stated'),
      quantity('/area'),
      choice('/areaKind', { blank: DONT_KNOW }),
      ...rareQuantities('/front', '/side', '/force', '/wind'),
      yes('/slenderFlats', { more: true }),
      quantity('/icedArea', { more: true }),
    ),
    pair('/diameter', { when: isShape('tube', 'dish', 'wire') }),
    ...askedIf(isShape('tube'), quantity('/length'), choice('/along', { blank: 'upright', more: true })),
    ...askedIf(isShape('plate'), ...quantities('/wide', '/tall', '/deep')),
    ...askedIf(
      isShape('wire'),
      ...quantities('/to/distance', '/to/height', '/to/heading'),
      quantity('/tension', { unknown: true }),
      quantity('/sag'),
      choice('/conductor', { blank: DONT_KNOW, more: true }),
      ...remarks('/to'),
    ),
    pair('/width', { when: isShape('lattice', 'pole') }),
    ...LATTICE_QUESTIONS,
    quantity('/solidity', { when: isShape('lattice', 'dish'), more: true }),
    choice('/sides', { when: isShape('pole'), blank: 'round' }),
    yes('/turns', { blank: 'no' }),
    quantity('/weight', { unknown: true }),
    quantity('/icedWeight', { more: true }),
    whole('/count', { more: true }),
    yes('/later', { blank: 'no', more: true }),
    quantity('/heading', { more: true }),
    choice('/on', { more: true, blank: 'by its height' }),
    quantity('/offset', { more: true, plain: isBeside, unknown: true }),
    ...rareQuantities('/boom', '/reach'),
    ...ratedWind('/ratedWind', true).map((question) => ({
      ...question,
      more: true,
      ...(question.at.endsWith('/speed') ? { when: () => true } : {}),
    })),
    ...remarks(),
  ],
  lists: [
    {
      at: '/tubes',
      when: isShape('tubes'),
      row: [
        choice('/along'),
        whole('/count'),
        ...askedIf(({ has }) => !has('/taper'), ...quantities('/diameter', '/length')),
        choice('/material', { blank: 'aluminium', more: true }),
        ...rareQuantities('/yield', '/ultimate'),
        ...remarks(),
      ],
      lists: [
        {
          at: '/taper',
          narrow: true,
          when: ({ here }) => here('/diameter') === '' && here('/length') === '',
          row: ['/0', '/1', '/2'].map((at) => quantity(at, { size: 'short' })),
        },
      ],
    },
  ],
});

export const CABLES = wordedList('', {
  at: '/cables',
  none: 'No lines run up this tower',
  row: [
    whole('/count'),
    quantity('/diameter'),
    choice('/arrangement', { blank: DONT_KNOW, owns: { ladder: ['/rows', '/spacing'] } }),
    ...askedIf(
      ({ here }) => here('/arrangement') === 'ladder',
      whole('/rows'),
      quantity('/spacing', { unknown: true }),
    ),
    text('/name', { more: true }),
    ...rareQuantities('/weight', '/from', '/to'),
    ...remarks(),
  ],
});

export const RATINGS = wordedList('', {
  at: '/ratings',
  folds: true,
  row: [
    choice('/of', { blank: '' }),
    choice('/kind', {
      when: (asking) => !gear(asking),
      blank: 'an area',
      blankMeans: 'area',
      owns: owned(FIELDS_OF_KIND),
    }),
    ...askedIf(
      isKind('area'),
      quantity('/area'),
      choice('/areaKind', { blank: DONT_KNOW }),
      quantity('/coefficient', { more: true }),
    ),
    quantity('/force', { when: isKind('force') }),
    quantity('/moment', { when: isKind('moment') }),
    quantity('/weight', { when: isKind('weight') }),
    ...askedIf(isKind('torque'), ...quantities('/torque', '/brake')),
    ...askedIf(gear, ...quantities('/breakingStrength', '/workingLoad')),
    choice('/level', { when: isKind('force', 'moment', 'torque'), blank: DONT_KNOW }),
    ...askedIf(isKind('area', 'force', 'moment', 'wind'), ...ratedTowerWind()),
    ...askedIf(
      isKind('area', 'force', 'moment'),
      quantity('/above', { unknown: true, more: true }),
      quantity('/height', { more: true }),
    ),
    whole('/withCables/count', { more: true }),
    quantity('/withCables/diameter', { more: true }),
    choice('/withCables/arrangement', { blank: DONT_KNOW, more: true }),
    ...remarks('/withCables'),
    text('/source'),
    text('/note', { more: true }),
  ],
  lists: [
    {
      at: '/areasBySpeed',
      narrow: true,
      when: isKind('area'),
      more: true,
      row: [quantity('/0', { size: 'short' }), quantity('/1', { size: 'short' })],
    },
    { at: '/furtherAreas', when: isKind('area'), more: true, row: [...quantities('/area', '/height'), ...remarks()] },
    { at: '/supportedAt', narrow: true, more: true, row: [quantity('', { size: 'short' })] },
  ],
});

/**
 * @typedef {{ id: string, lead?: string, folded: boolean, base?: string }} PartFrame
 * @typedef {PartFrame & { title: string, questions: readonly Question[], lists: readonly List[] }} Part
 * @typedef {PartFrame & { about: string, questions: readonly Bare[], lists?: readonly BareList[], made?: List }} BarePart
 */

const HILL_QUESTIONS = [
  ...quantities('/site/hill/height', '/site/hill/halfLength', '/site/hill/run', '/site/hill/distance'),
  choices('/site/hill/side'),
  yes('/site/hill/isolated', { when: ({ root }) => asksIsolated(root('/method')) }),
  ...remarks('/site/hill'),
];

/** @type {readonly BarePart[]} */
const SHEET = [
  {
    id: 'wind',
    about: '/site',
    folded: false,
    lead: 'what you must design for',
    questions: [
      choice('/method', { choices: SITE_METHODS }),
      quantity('/site/wind/speed'),
      choice('/site/wind/basis', { blank: DONT_KNOW }),
      text('/site/wind/source', { more: true }),
      choices('/site/exposure', { when: (asking) => !byTerrain(asking) }),
      choices('/site/terrain', { when: byTerrain }),
      choice('/site/hill/shape', {
        blank: 'level ground, or not known',
        owns: Object.fromEntries(
          Object.keys(FIELDS.hill.shape.choices).map((shape) => [shape, HILL_QUESTIONS.map(({ at }) => at)]),
        ),
      }),
      ...askedIf(({ root }) => root('/site/hill/shape') !== '', ...HILL_QUESTIONS),
      quantity('/site/topographicFactor', { more: true }),
      choice('/site/riskCategory', {
        blank: 'not given: II, for ice III',
        more: true,
        plain: ({ root }) => root('/site/ice/thickness') !== '',
      }),
      quantity('/site/groundElevation', { more: true }),
      whole('/site/wind/years', { kind: 'number', more: true, when: ({ root }) => asksYears(root('/method')) }),
      ...rareQuantities('/site/ice/thickness', '/site/ice/gust'),
      ...remarks('/site/ice'),
      text('/site/wind/note', { more: true }),
      ...remarks('/site'),
    ],
  },
  {
    id: 'tower',
    about: '/tower',
    folded: false,
    base: '/tower',
    questions: [
      choices('/support'),
      quantity('/top'),
      quantity('/base', { more: true }),
      ...sectionShape(false).map((question) => ({
        ...question,
        when: (/** @type {Asking} */ asking) =>
          (!asking.has('/sections') || asking.has(question.at)) && (question.when?.(asking) ?? true),
      })),
      choices('/telescopes', { more: true, blank: 'not given' }),
      ...rareQuantities('/nested', '/standsAt', '/weight'),
      yes('/asDrawn', { when: ({ here }) => here('/support') !== 'roof', more: true }),
      yes('/baseHeld', {
        more: true,
        blank: 'not given',
        when: ({ here }) => here('/support') === 'guyed' || here('/support') === 'bracketed',
      }),
      yes('/used', { more: true, blank: 'not given' }),
      quantity('/frequency', { more: true }),
      quantity('/damping', { more: true, plain: ({ here }) => here('/frequency') !== '' }),
      ...remarks(),
    ],
    lists: [
      {
        at: '/sections',
        folds: true,
        row: [
          quantity('/length'),
          whole('/count'),
          text('/name', { size: 'wide' }),
          ...sectionShape(false),
          text('/make', { more: true }),
          yes('/uniform', { more: true }),
          quantity('/weight', { more: true }),
          ...remarks(),
        ],
      },
      {
        at: '/supportedAt',
        more: true,
        row: [
          quantity('/height'),
          choice('/by', { blank: '' }),
          ...askedIf(
            ({ here }) => here('/by') === 'guys',
            whole('/count'),
            ...quantities('/diameter', '/radius'),
            choice('/grade', { more: true }),
            quantity('/breakingStrength', { more: true }),
            choice('/ends', { more: true }),
            quantity('/tension', { more: true }),
          ),
          ...remarks(),
        ],
      },
    ],
  },
  { id: 'loads', about: '/loads', folded: false, questions: [], made: LOADS },
  { id: 'cables', about: '/cables', folded: false, questions: [], made: CABLES },
  {
    id: 'ratings',
    about: '/ratings',
    folded: false,
    questions: [],
    made: RATINGS,
    lead: 'one line of a data sheet each',
  },
  {
    id: 'mast',
    about: '/mast',
    folded: true,
    base: '/mast',
    questions: [
      quantity('/outside'),
      quantity('/wall', { unknown: true }),
      quantity('/length'),
      quantity('/inside', { unknown: true }),
      quantity('/yield', { unknown: true }),
      { at: '/bearing', kind: 'height-or-no' },
      yes('/manufacturerPlates', { more: true }),
      choice('/material', { blank: 'steel', more: true }),
      quantity('/ultimate', { more: true }),
      ...remarks(),
    ],
    lists: [
      {
        at: '/pieces',
        more: true,
        row: [...quantities('/outside', '/wall', '/from', '/to', '/yield'), ...remarks()],
      },
    ],
  },
  {
    id: 'rotator',
    about: '/rotator',
    folded: true,
    base: '/rotator',
    questions: [quantity('/height'), quantity('/weight', { unknown: true }), ...remarks()],
  },
  {
    id: 'footing',
    about: '/tower/foundation',
    folded: true,
    base: '/tower/foundation',
    questions: [
      choice('/kind', {
        blank: DONT_KNOW,
        owns: {
          block: ['/length', '/width', ...IN_SOIL],
          pier: ['/diameter', '/constrained', ...IN_SOIL],
          manufacturer: [],
        },
      }),
      ...askedIf(({ here }) => here('/kind') === 'block', ...quantities('/length', '/width')),
      quantity('/diameter', { when: ({ here }) => here('/kind') === 'pier' }),
      quantity('/depth', { when: ({ here }) => ['block', 'pier'].includes(here('/kind')) }),
      ...askedIf(
        ({ here }) => ['block', 'pier'].includes(here('/kind')),
        quantity('/soilBearing', { unknown: true }),
        quantity('/soilLateral', { unknown: true }),
        yes('/bearingNet'),
        yes('/isolatedPole'),
        yes('/bothAccepted'),
        quantity('/concrete', { more: true }),
      ),
      yes('/constrained', { when: ({ here }) => here('/kind') === 'pier' }),
      ...remarks(),
    ],
  },
  {
    id: 'raising',
    about: '/tower/hinge',
    folded: true,
    base: '/tower/hinge',
    questions: [
      quantity('/height'),
      choice('/raisedBy/kind', { blank: DONT_KNOW }),
      ...quantities('/raisedBy/anchor/0', '/raisedBy/anchor/1', '/raisedBy/attach'),
      ...rareQuantities('/raisedBy/raisingPoleTip/0', '/raisedBy/raisingPoleTip/1'),
      quantity('/raisedBy/workingLoad', { unknown: true }),
      ...quantities('/counterpoise/weight', '/counterpoise/below'),
      ...remarks('/raisedBy'),
      ...remarks('/counterpoise'),
      ...remarks(),
    ],
  },
  {
    id: 'near',
    about: '/site/distances',
    folded: true,
    base: '/site/distances',
    questions: [...quantities('/powerLine', '/propertyLine', '/building'), ...remarks()],
  },
  {
    id: 'climate',
    about: '/site/climate',
    folded: true,
    base: '/site/climate',
    lead: 'for the chance of a stronger one',
    questions: [choice('/basis', { blank: '' }), ...remarks()],
    lists: [
      {
        at: '/returnPeriods',
        narrow: true,
        row: [{ at: '/0', kind: 'number', size: 'short' }, quantity('/1', { size: 'short' })],
      },
      { at: '/yearlyMax', narrow: true, row: [quantity('', { size: 'short' })] },
    ],
  },
  {
    id: 'wanted',
    about: '/wanted',
    folded: true,
    base: '/wanted',
    questions: [quantity('/margin'), quantity('/forecastError'), whole('/years'), ...remarks()],
  },
  {
    id: 'sheet',
    about: '/titleBlock',
    folded: true,
    lead: 'its title block',
    questions: [
      text('/title'),
      ...['applicant', 'owner', 'address', 'parcel', 'jurisdiction', 'permit', 'code', 'date'].map((name) =>
        text(`/titleBlock/${name}`),
      ),
      ...remarks('/titleBlock'),
      ...remarks(),
    ],
    lists: [
      { at: '/titleBlock/drawings', narrow: true, row: [text('')] },
      { at: '/titleBlock/attachments', narrow: true, row: [text('')] },
    ],
  },
];

/** The sheet, read from the top. @type {readonly Part[]} */
export const PARTS = SHEET.map(({ about, questions, lists = [], made, ...frame }) => {
  const base = frame.base ?? '';
  return {
    ...frame,
    title: fieldAt(about).label,
    questions: questions.map((question) => worded(base, question)),
    lists: made === undefined ? lists.map((list) => wordedList(base, list)) : [made],
  };
});

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

/**
 * The folded part of the form that leaves a kind of check open while nothing stands in it.
 *
 * @type {Readonly<Record<import('../../answer/index.ts').CheckAnswer['kind'], string | undefined>>}
 */
export const PART_OF_CHECK = {
  tower: undefined,
  'tower-below': undefined,
  guys: undefined,
  'own-strength': undefined,
  'tower-top': undefined,
  ice: undefined,
  mast: 'mast',
  bearing: undefined,
  rotator: 'rotator',
  weight: undefined,
  antenna: undefined,
  elements: undefined,
  foundation: 'footing',
  raising: 'raising',
  lying: undefined,
  hoist: undefined,
  fall: undefined,
};
