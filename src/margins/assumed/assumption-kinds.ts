import { METHOD_BY_ID } from '../../methods/index.ts';
import type { CableRun, Load, Mast, Station } from '../../structure/index.ts';
import type { CheckInput } from '../check-input.ts';
import type { CheckKindName } from '../checks/check.ts';
import { possibleMethods } from '../rated-case.ts';
import type { AssumedName } from './assumed.ts';
import type { AssumptionKind, Reading } from './assumption.ts';
import { ICE_CLASS, LOWEST_BEARING, POLE_DAMPING, plausibleOffset, USUAL_LINES, USUAL_MAST } from './plausible.ts';
import { plausibleFrequency } from './plausible-frequency.ts';

const BY_RATING = [
  'tower',
  'tower-below',
  'guys',
  'own-strength',
  'tower-top',
  'ice',
  'foundation',
] as const satisfies readonly CheckKindName[];
const ON_MAST = ['mast', 'bearing', 'rotator'] as const satisfies readonly CheckKindName[];

const inStation = (input: CheckInput, changed: Partial<Station>): CheckInput => ({
  ...input,
  station: { ...input.station, ...changed },
});

/** Lines from the foot to the highest load. */
function cableReadings({ station }: CheckInput): readonly Reading[] {
  const { tower, mast, loads } = station;
  if (loads.length === 0) return [];
  const highest = Math.max(...loads.map(({ high }) => high));
  const high = Math.min(highest, Math.max(tower.top, mast?.tip ?? tower.top));
  if (high <= tower.foot) return [];
  const lines: CableRun = {
    ...USUAL_LINES,
    name: 'lines, assumed',
    at: '/cables',
    low: tower.foot,
    high,
    laid: 'single',
  };
  return [
    { value: USUAL_LINES.count, said: (input) => inStation(input, { cables: [lines] }) },
    { value: 0, said: (input) => inStation(input, { cables: [] }) },
  ];
}

/** A load this far above the top is above it [m]. */
const ABOVE = 1e-6;

/** A mast under the loads above the top, where none is told; inside a pole it is out of the wind. */
function mastReadings({ station }: CheckInput): readonly Reading[] {
  const { tower, mast, loads } = station;
  const above = loads.filter(({ low }) => low > tower.top + ABOVE);
  if (mast !== undefined || above.length === 0) return [];
  const isPole = tower.sections.some(({ shape }) => shape?.kind === 'pole');
  const supported = tower.held.map(({ height }) => height);
  const { outside, inside, weight } = USUAL_MAST;
  const tube: CableRun = {
    name: 'mast, assumed',
    at: '/mast',
    count: 1,
    diameter: outside,
    weight,
    low: isPole ? tower.top : Math.max(tower.foot, tower.top - inside, ...supported),
    high: Math.max(...above.map(({ low }) => low)),
    laid: 'single',
  };
  return [
    { value: outside, said: (input) => inStation(input, { cables: [...input.station.cables, tube] }) },
    { value: 0, said: (input) => input },
  ];
}

function offsetReadings({ station }: CheckInput, at: string): readonly Reading[] {
  const load = loadOf(station, at);
  if (load === undefined) return [];
  const { least, most } = plausibleOffset(load, station.tower);
  return [most, least].map((offset) => ({
    value: offset,
    said: (input) =>
      inStation(input, {
        loads: input.station.loads.map((each) => (each.at === load.at ? { ...each, offset } : each)),
      }),
  }));
}

const loadOf = ({ loads }: Station, at: string): Load | undefined => loads.find((load) => at === `${load.at}/offset`);

/** At worst the model reads each wire as it pulls most beside the others. */
function conductorReadings({ station }: CheckInput, at: string): readonly Reading[] {
  const load = wireOf(station, at);
  const shape = load?.shape;
  if (shape?.kind !== 'wire' || shape.pull === undefined) return [];
  return [
    { value: 'steel', said: (input) => input },
    {
      value: 'aluminium',
      said: (input) =>
        inStation(input, {
          loads: input.station.loads.map((each) =>
            each.at === load?.at ? { ...each, shape: { ...shape, conductor: 'aluminium' } } : each,
          ),
        }),
    },
  ];
}

const wireOf = ({ loads }: Station, at: string): Load | undefined =>
  loads.find((load) => at === `${load.at}/conductor`);

function bearingReadings({ station }: CheckInput): readonly Reading[] {
  const { mast, tower } = station;
  if (mast?.foot === undefined || mast.bearing === undefined) return [];
  // It is somewhere between the mast's foot and the top.
  const lowest = Math.max(tower.top - LOWEST_BEARING, (mast.foot + tower.top) / 2);
  return [lowest, mast.bearing].map((bearing) => ({
    value: bearing,
    said: (input) =>
      input.station.mast ? inStation(input, { mast: { ...input.station.mast, bearing } satisfies Mast }) : input,
  }));
}

function iceReadings({ method, site }: CheckInput): readonly Reading[] {
  if (site.ice === undefined || METHOD_BY_ID[method].ice === undefined) return [];
  return [ICE_CLASS.most, ICE_CLASS.least].map((iceCategory) => ({
    value: iceCategory,
    said: (input) => ({ ...input, site: { ...input.site, iceCategory } }),
  }));
}

function frequencyReadings(input: CheckInput): readonly Reading[] {
  const plausible = plausibleFrequency(input);
  if (plausible === undefined) return [];
  return [plausible.least, plausible.between, plausible.most].map(swayingAt);
}

const swayingAt = (frequency: number): Reading => ({
  value: frequency,
  said: (each) => inStation(each, { tower: { ...each.station.tower, frequency } }),
});

/** How many frequencies are tried from the lowest to the highest that is flexible. @source derived */
const FREQUENCIES_BETWEEN = 6;

/** With the same frequency on both sides of a comparison what is asked most can lie between the ends. */
function frequenciesBetween(input: CheckInput): readonly Reading[] {
  const plausible = plausibleFrequency(input);
  const counts = input.ratings.some(
    ({ wind }) => wind && possibleMethods(wind).some((id) => METHOD_BY_ID[id].flexibleBelow !== undefined),
  );
  if (plausible === undefined || !counts) return [];
  const { least, between } = plausible;
  return Array.from({ length: FREQUENCIES_BETWEEN }, (_, number) =>
    swayingAt(least * (between / least) ** ((number + 1) / (FREQUENCIES_BETWEEN + 1))),
  );
}

/** Whether its gust effect factor counts how it sways, told or at worst. */
function isFlexible(input: CheckInput): boolean {
  const { flexibleBelow } = METHOD_BY_ID[input.method];
  const frequency = input.station.tower.frequency ?? plausibleFrequency(input)?.least;
  return flexibleBelow !== undefined && frequency !== undefined && frequency < flexibleBelow;
}

function dampingReadings(input: CheckInput): readonly Reading[] {
  const { tower } = input.station;
  if (!isFlexible(input)) return [];
  if (!tower.sections.some(({ shape }) => shape?.kind === 'pole')) return [];
  return [POLE_DAMPING.least, POLE_DAMPING.usual].map((damping) => ({
    value: damping,
    said: (input) => inStation(input, { tower: { ...input.station.tower, damping } }),
  }));
}

/** What the model reads by itself has its readings there. */
const readInModel = { readings: () => [], moves: BY_RATING, asked: 'tower' } as const;

/** Every kind of assumed thing by its name. */
export const ASSUMPTION_KIND: Readonly<Record<AssumedName, AssumptionKind>> = {
  cables: { readings: cableReadings, moves: [...BY_RATING, ...ON_MAST], asked: 'tower' },
  mast: { readings: mastReadings, moves: BY_RATING, asked: 'tower' },
  'load-offset': {
    readings: offsetReadings,
    moves: BY_RATING,
    asked: 'tower',
    name: ({ station }, at) => loadOf(station, at)?.name,
  },
  'bearing-height': { readings: bearingReadings, moves: [...BY_RATING, ...ON_MAST], asked: 'mast' },
  'rated-height': readInModel,
  'ice-class': { readings: iceReadings, moves: ['ice', ...ON_MAST, 'weight', 'foundation'], asked: 'ice' },
  frequency: {
    readings: frequencyReadings,
    between: frequenciesBetween,
    moves: [...BY_RATING, ...ON_MAST],
    asked: 'tower',
    sways: true,
  },
  damping: { readings: dampingReadings, moves: [...BY_RATING, ...ON_MAST], asked: 'tower', sways: true },
  'pole-sides': readInModel,
  'bracing-pattern': readInModel,
  conductor: {
    readings: conductorReadings,
    moves: [...BY_RATING, ...ON_MAST],
    asked: 'tower',
    name: ({ station }, at) => wireOf(station, at)?.name,
  },
  'alike-along': readInModel,
};
