import { type AreasAnswer, type EntryWarning, type Note, type PressuresAnswer, told } from '../answer/index.ts';
import { displayValue, WORDS_FOR_KNOWN } from '../foundation/index.ts';
import { areasOf, type CheckInput, designBasis, siteSpeed, siteWind, windAt } from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { windStructureOf } from '../structure/index.ts';
import { figures, HILL_REASONS, SPEED_WORDS, sentence, standardHeight } from '../words/index.ts';
import { quantity } from './quantity.ts';
import { headingDocument, windRowDocument } from './wind-document.ts';

const ENGINEER: Note = {
  code: 'engineer-and-local-code',
  says: 'This uses the numbers entered. The local building code and a licensed engineer decide.',
};

function memoryNote(input: CheckInput): readonly Note[] {
  const method = METHOD_BY_ID[input.method];
  return method.known === 'published'
    ? []
    : [{ code: 'method-from-memory', says: `Parts of ${method.title} are ${WORDS_FOR_KNOWN.memory}.` }];
}

/** The areas of a part of a plan, in its units. */
export function areasDocument(
  input: CheckInput,
  siteGiven: boolean,
  towerGiven: boolean,
  entryWarnings: readonly EntryWarning[],
): AreasAnswer {
  const answer = areasOf(input, siteGiven, towerGiven);
  const system = input.station.units;
  const area = (value: number) => displayValue(value, 'area', system);
  const height = (value: number) => displayValue(value, 'length', system);
  const open = answer.items.filter((item) => item.least[0] < item.front || item.least[1] < item.side);
  return told<AreasAnswer>({
    method: input.method,
    units: { height: quantity(0, 'length', system).unit, area: quantity(0, 'area', system).unit },
    items: answer.items.map((item) =>
      told<AreasAnswer['items'][number]>({
        name: item.name,
        at: item.at,
        kind: item.kind,
        low: height(item.low),
        high: height(item.high),
        front: area(item.front),
        side: area(item.side),
        least: item.least.map(area),
        worst: area(item.worst),
        byDirection: item.byDirection && { face: area(item.byDirection.face), corner: area(item.byDirection.corner) },
        middle: height(item.middle),
      }),
    ),
    worst: quantity(answer.worst, 'area', system),
    heading: headingDocument(answer.headings, system),
    middle: quantity(answer.middle, 'length', system),
    notes: [
      ENGINEER,
      ...(answer.slow
        ? [{ code: 'slow-wind', says: 'No site given. Coefficients are those of slow wind, which are the larger.' }]
        : []),
      ...open.map((item) => ({
        code: 'area-kind-unknown',
        says: `Type of area of ${item.name} not stated. The largest demand is given, with the smallest beside it.`,
      })),
      ...memoryNote(input),
    ],
    known: METHOD_BY_ID[input.method].known,
    entryWarnings,
  });
}

/** The wind of a site at heights, in the plan's units. */
export function pressuresDocument(
  input: CheckInput,
  heights: readonly number[],
  structureGiven: boolean,
  entryWarnings: readonly EntryWarning[],
): PressuresAnswer {
  const system = input.station.units;
  const wind = siteWind(input, windStructureOf(input.station, 'pole'), false);
  const { speed, speedLevel, converted } = siteSpeed(input);
  const method = METHOD_BY_ID[input.method];
  const basis = designBasis(input, { speedLevel });
  const gustEffect = wind.gustEffect();
  const notes: Note[] = [ENGINEER];
  if (input.site.basis === undefined) {
    notes.push({
      code: 'basis-assumed',
      says: `Type of speed not given. ${sentence(SPEED_WORDS[method.basis])} assumed, as on this standard’s maps.`,
    });
  }
  if (converted)
    notes.push({
      code: 'basis-converted',
      says: 'The speed was converted to the type this standard uses. Conversions differ by some per cent.',
    });
  if (!structureGiven)
    notes.push({
      code: 'structure-assumed',
      says: 'Neither tower nor structure given. A round pole is assumed, whose factors are the larger.',
    });
  if (wind.hillExcluded) {
    const { why, wouldBe } = wind.hillExcluded;
    const says = `The hill does not count by this standard: ${HILL_REASONS[why]}. Its factor at ${standardHeight(system)} would be ${figures(wouldBe)}.`;
    notes.push({ code: 'topography-not-applied', says });
  }
  return {
    method: input.method,
    speed: { ...quantity(speed, 'speed', system), basis },
    factors: {
      directionFactor: wind.directionFactor,
      importance: wind.importance,
      elevationFactor: wind.elevationFactor,
      gustEffect,
      level: wind.toAllowableFactor,
    },
    heights: heights.map((height) => {
      const row = windAt(wind, height);
      return {
        ...windRowDocument(row, system),
        forcePerArea: quantity(
          wind.toAllowableFactor * wind.forceDirectionFactor * row.pressure * gustEffect,
          'pressure',
          system,
        ),
      };
    }),
    notes: [...notes, ...memoryNote(input)],
    entryWarnings,
  };
}
