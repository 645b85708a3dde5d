import { evaluate, type Trace, under } from '../../foundation/index.ts';
import { METHOD_BY_ID, type Wind } from '../../methods/index.ts';
import type { Load } from '../../structure/index.ts';
import { convertSpeed } from '../../wind/index.ts';
import { ratioOfGusts } from '../formulas.ts';
import { windsHeld } from '../holds-to-ratio.ts';
import type { TowerModel } from '../model.ts';
import { siteWind } from '../tower-model.ts';
import { type Check, judged, openCheck } from './check.ts';
import type { CheckKind } from './check-kind.ts';

export const antennaKind: CheckKind<'antenna'> = {
  kind: 'antenna',
  part: 'load',
  assess: ({ model }) => antennaChecks(model),
  explain: ({ model }, checks, trace) => {
    for (const check of checks) under(trace, check.name ?? 'antenna', () => explainAntenna(model, check, trace));
  },
  loadedBy: 'wind',
  ownRemedies: ['load'],
  room: undefined,
};

/**
 * Every antenna against the wind that its own maker rates it for: the site's nominal gust at its height, without direction
 * or gust factor, since the maker's wind has none.
 */
function antennaChecks(model: TowerModel): readonly Check[] {
  const { windStructure } = model.scenarios[0];
  const winds: Winds = [
    siteWind(model.input, windStructure, false, model.site),
    siteWind(model.input, windStructure, true, model.site),
  ];
  return model.input.station.loads.flatMap((load) =>
    load.shape.kind === 'wire' ? [] : [antennaCheck(model, load, winds)],
  );
}

/** The design wind, and one that has come. */
type Winds = readonly [Wind, Wind];

function antennaCheck(model: TowerModel, load: Load, [design, actual]: Winds): Check {
  const base = { id: `antenna:${load.name}`, kind: 'antenna', at: load.at, name: load.name } as const;
  const rated = ratedGusts(load);
  if (!rated) return openCheck(base, 'missing', [`${load.at}/ratedWind`]);
  const { input } = model;
  const { speed } = model.site;
  const ratio = (wind: Wind, V: number, least: number) => ratioOfGusts.of(gustAt(model, wind, V, load.high), least);
  const unfavourable = ratio(design, speed, rated.least);
  const favourable = ratio(design, speed, rated.most);
  const byWind = {
    design: (V: number) => (V > 0 ? ratio(design, V, rated.least) : 0),
    actual: (V: number) => (V > 0 ? ratio(actual, V, rated.least) : 0),
    steadyUpTo: Number.POSITIVE_INFINITY,
  };
  const result = {
    ratio: unfavourable,
    of: 'gust',
    demand: gustAt(model, design, speed, load.high),
    capacity: rated.least,
    height: load.high,
    ratioRange: [Math.min(favourable, unfavourable), unfavourable],
    headings: {},
    ...windsHeld(model, byWind),
  } as const;
  return judged(base, result, { margin: input.wanted.margin, favourable, asks: [`${load.at}/ratedWind/basis`] });
}

/** The rated wind as a nominal gust; where its kind is not told, least and most that it may be. */
function ratedGusts(load: Load): { readonly least: number; readonly most: number } | undefined {
  const { ratedWind } = load;
  if (!ratedWind) return undefined;
  const { speed, basis } = ratedWind;
  if (basis !== undefined) {
    const nominal = convertSpeed(speed, basis, 'gust3-nominal', 'rating');
    return { least: nominal, most: nominal };
  }
  return {
    least: convertSpeed(speed, 'gust3-strength', 'gust3-nominal', 'rating'),
    most: convertSpeed(speed, 'fastest-mile', 'gust3-nominal', 'rating'),
  };
}

/** The site's gust at a height, from a speed of its method's [m/s]. */
function gustAt(model: TowerModel, wind: Wind, V: number, z: number, trace?: Trace): number {
  return METHOD_BY_ID[model.input.method].gustAtHeight(wind, V, z, trace);
}

function explainAntenna(model: TowerModel, check: Check, trace: Trace): void {
  const load = model.input.station.loads.find((each) => each.at === check.at);
  const { result } = check;
  if (!load || !result) return;
  const wind = siteWind(model.input, model.scenarios[0].windStructure, false, model.site);
  const gust = gustAt(model, wind, model.site.speed, load.high, trace);
  evaluate(trace, ratioOfGusts, [gust, result.capacity]);
}
