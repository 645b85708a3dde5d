import type { UnitSystem } from '../foundation/index.ts';
import type { FoundationAnswer } from '../margins/index.ts';
import { figures, inWords, ratioFigures } from '../words/index.ts';
import { type Quantity, quantity } from './quantity.ts';

export interface FoundationDocument {
  readonly kind: string;
  readonly says: string;
  /** What the tower asks of it, nominal. */
  readonly shear: Quantity;
  readonly moment: Quantity;
  readonly weight?: Quantity;
  readonly block?: {
    readonly weight: Quantity;
    /** Density that was taken for the concrete. */
    readonly density: Quantity;
    readonly momentAtUnderside: Quantity;
    /** 0.6D + 0.6W, and the older factor of 1.5. */
    readonly overturning: number;
    readonly olderOverturning: number;
    readonly toePressure?: Quantity;
    readonly contactShare?: number;
    readonly bearing?: number;
  };
  readonly pier?: { readonly required: Quantity; readonly given: Quantity; readonly depthCapped: boolean };
  readonly notChecked: readonly string[];
}

const NOT_CLAIMED: Readonly<Record<string, string>> = {
  sliding: 'that it does not slide',
  'soil-at-its-sides': 'what the soil at its sides does',
  groundwater: 'water in the ground, which lifts it',
  'strength-of-the-concrete': 'the strength of its concrete',
  'weight-on-the-soil': 'weight on the soil under it',
  'pull-out': 'that it is not pulled out',
  movement: 'how far it moves',
};

/** What the footing does, in the reader's units. */
export function foundationDocument(answer: FoundationAnswer, system: UnitSystem): FoundationDocument {
  const { kind, load, block, pier } = answer;
  const toe = block?.toe?.contact === 'tips' ? undefined : block?.toe;
  return {
    kind,
    says: foundationSays(answer, system),
    shear: quantity(load.shear, 'force', system),
    moment: quantity(load.moment, 'moment', system),
    ...(load.weight === undefined ? {} : { weight: quantity(load.weight, 'weight', system) }),
    ...(block === undefined
      ? {}
      : {
          block: {
            weight: quantity(block.blockWeight, 'weight', system),
            density: quantity(block.density, 'density', system),
            momentAtUnderside: quantity(block.momentAtUnderside, 'moment', system),
            overturning: block.overturning.ratio,
            olderOverturning: block.overturning.olderRatio,
            ...(toe === undefined
              ? {}
              : { toePressure: quantity(toe.pressure, 'soil-pressure', system), contactShare: toe.contactShare }),
            ...(block.toePressureRatio === undefined ? {} : { bearing: block.toePressureRatio }),
          },
        }),
    ...(pier === undefined
      ? {}
      : {
          pier: {
            required: quantity(pier.required, 'length', system),
            given: quantity(pier.given, 'length', system),
            depthCapped: pier.depthCapped,
          },
        }),
    notChecked: [...(block?.notChecked ?? []), ...(pier?.notChecked ?? [])].map((what) => NOT_CLAIMED[what] ?? what),
  };
}

/** Where a moment of that heading presses hardest. */
function pressedMost(heading: number): string {
  return Math.min(heading, Math.PI / 2 - heading) < 1e-3 ? 'edge' : 'corner, in a wind across it,';
}

/** The footing in two sentences. */
export function foundationSays({ block, pier }: FoundationAnswer, system: UnitSystem): string {
  if (block) {
    const { ratio, olderRatio } = block.overturning;
    const tips = `Against tipping it is used to ${ratioFigures(ratio)} with 0.6 of all weight counted, ${ratioFigures(olderRatio)} by the older rule of 1.5 times the moment.`;
    const { toe } = block;
    if (toe === undefined) return `${tips} The pressure under it needs the weight of all that stands on it.`;
    if (toe.contact === 'tips') return `${tips} Under this wind nothing holds it.`;
    const share = toe.contactShare < 1 ? `, ${figures(toe.contactShare)} of its underside pressed` : '';
    return `${tips} Under its ${pressedMost(toe.heading)} ${inWords(toe.pressure, 'soil-pressure', system)}${share}.`;
  }
  if (pier) {
    const capped = pier.depthCapped
      ? ` No more than ${system === 'us' ? '12 ft' : '3.66 m'} of depth counts for the pressure.`
      : '';
    return `The soil asks for ${inWords(pier.required, 'length', system)} of depth, ${inWords(pier.given, 'length', system)} are given.${capped}`;
  }
  return 'Built to the maker’s drawing, so that his rating speaks for it, in soil no worse than he names.';
}
