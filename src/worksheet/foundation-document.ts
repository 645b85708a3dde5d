import { type FoundationReport, told } from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import type { FoundationAnswer } from '../margins/index.ts';
import type { BlockComparison, PierComparison, SoilFact } from '../structure/index.ts';
import { figures, inWords, listed, ratioFigures } from '../words/index.ts';
import { quantity } from './quantity.ts';

type NotChecked = (BlockComparison | PierComparison)['notChecked'][number];

const NOT_CHECKED: Readonly<Record<NotChecked, string>> = {
  sliding: 'sliding',
  'soil-at-its-sides': 'soil resistance at its sides',
  groundwater: 'uplift by groundwater',
  'strength-of-the-concrete': 'strength of its concrete',
  'weight-on-the-soil': 'weight on the soil under it',
  'pull-out': 'pull-out',
  movement: 'movement',
};

/** What the footing does, in the reader's units. */
export function foundationDocument(answer: FoundationAnswer, system: UnitSystem): FoundationReport {
  const { kind, load, block, pier, soil } = answer;
  const toe = block?.toe?.contact === 'tips' ? undefined : block?.toe;
  return told<FoundationReport>({
    kind,
    says: foundationSays(answer, system),
    shear: quantity(load.shear, 'force', system),
    moment: quantity(load.moment, 'moment', system),
    weight: quantity(load.weight, 'weight', system),
    leastWeight: quantity(load.leastWeight, 'weight', system),
    block:
      block &&
      told<NonNullable<FoundationReport['block']>>({
        weight: quantity(block.blockWeight, 'weight', system),
        density: quantity(block.density, 'density', system),
        momentAtUnderside: quantity(block.momentAtUnderside, 'moment', system),
        overturning: block.overturning.ratio,
        olderOverturning: block.overturning.olderRatio,
        toePressure: quantity(toe?.pressure, 'soil-pressure', system),
        contactShare: toe?.contactShare,
        toePressureRatio: block.toePressureRatio,
      }),
    pier: pier && {
      required: quantity(pier.required, 'length', system),
      given: quantity(pier.given, 'length', system),
      depthCapped: pier.depthCapped,
    },
    soil: told<FoundationReport['soil']>({
      base: soil.base?.ratio,
      sides: soil.sides?.ratio,
      both: soil.both?.ratio,
      ratioIf: soil.ratioIf.map((each) => ({ ...each })),
    }),
    notChecked: [...(block?.notChecked ?? []), ...(pier?.notChecked ?? [])].map((what) => NOT_CHECKED[what]),
  });
}

/** Where a moment of that heading presses hardest. */
function pressedMost(heading: number): string {
  return Math.min(heading, Math.PI / 2 - heading) < 1e-3 ? 'edge' : 'corner (wind across it)';
}

/** What a doubled soil value rests on. */
const ISOLATED_POLE =
  'Twice the lateral soil bearing is counted, as entered for an isolated pole (IBC 1806.3.4). The building official decides whether the tower is one.';

const IF_FACT: Readonly<Record<SoilFact, string>> = {
  bearingNet: 'net soil bearing',
  isolatedPole: 'half an inch at the ground that does no harm',
  soilLateral: 'presumed soil at the sides',
  soilBearing: 'presumed soil under the base',
  bothAccepted: 'sides and base accepted together',
};

/** By what it holds, and what each open fact alone would give. */
function soilSays({ base, sides, both, ratioIf }: FoundationAnswer['soil']): string {
  const ways = [
    ...(base ? [`${ratioFigures(base.ratio)} by the soil under it`] : []),
    ...(sides ? [`${ratioFigures(sides.ratio)} by the soil at its sides`] : []),
    ...(both ? [`${ratioFigures(both.ratio)} by both together`] : []),
  ];
  const ifs = ratioIf.map(({ fact, ratio }) => ` Ratio ${ratioFigures(ratio)} with ${IF_FACT[fact]}.`);
  return ` Ratio ${listed(ways)}.${ifs.join('')}`;
}

/** The footing in a few sentences. */
export function foundationSays(answer: FoundationAnswer, system: UnitSystem): string {
  return `${partSays(answer, system)}${soilSays(answer.soil)}`;
}

function partSays({ block, pier, isolatedPole }: FoundationAnswer, system: UnitSystem): string {
  const twice = isolatedPole ? ` ${ISOLATED_POLE}` : '';
  if (block) {
    const { ratio, olderRatio } = block.overturning;
    const tips = `Overturning ratio ${ratioFigures(ratio)} with 0.6 of the dead load, ${ratioFigures(olderRatio)} by the older rule of 1.5 times the moment.`;
    const { toe } = block;
    if (toe === undefined) return `${tips} Soil pressure not computed; some weights are not given.${twice}`;
    if (toe.contact === 'tips') return `${tips} Without soil at its sides it would tip in this wind.${twice}`;
    const share = toe.contactShare < 1 ? `, ${figures(toe.contactShare)} of its underside in contact` : '';
    return `${tips} Largest soil pressure ${inWords(toe.pressure, 'soil-pressure', system)}, under its ${pressedMost(toe.heading)}${share}.${twice}`;
  }
  if (pier) {
    const capped = pier.depthCapped
      ? ` No more than ${system === 'us' ? '12 ft' : '3.66 m'} of depth counts for soil pressure.`
      : '';
    return `Required depth ${inWords(pier.required, 'length', system)}, given ${inWords(pier.given, 'length', system)}.${capped}${twice}`;
  }
  return 'Built to the manufacturer’s drawing. The rating covers it in soil at least as good as specified.';
}
