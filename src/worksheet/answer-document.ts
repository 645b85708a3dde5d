import { type Dimension, displayValue, type UnitSystem } from '../foundation/index.ts';
import {
  type Assessment,
  type Caution,
  type Check,
  type CheckResult,
  type Compared,
  type FootForces,
  hillHelpOf,
  type LegsAtFoot,
  loweredOf,
  type Remedies,
  type Sensitivity,
  type Spread,
  type TubeForMast,
  towerLevels,
  turningCircles,
  type Verdict,
  workingOf,
} from '../margins/index.ts';
import { METHOD_BY_ID } from '../methods/index.ts';
import { convertSpeed, isMeanBasis, type SpeedBasis } from '../wind/index.ts';
import { CAUTION_WORDS, NOT_COVERED, type SaidCaution } from './caution-words.ts';
import { type ChanceDocument, chanceDocuments } from './chance-document.ts';
import { DIMENSION_OF_COMPARED } from './check-words.ts';
import { checkName, groundNamed } from './choice-words.ts';
import { type FoundationDocument, foundationDocument } from './foundation-document.ts';
import { type HillDocument, hillDocument } from './hill-document.ts';
import { type LevelsDocument, levelsDocument } from './levels-document.ts';
import { type LoweredDocument, loweredDocument } from './lowered-document.ts';
import { type Quantity, quantity } from './quantity.ts';
import { promiseOf, questionOf } from './question-words.ts';
import { type RaisingDocument, raisingDocument } from './raising-document.ts';
import {
  type RemediesDocument,
  remediesDocument,
  type TubeForMastDocument,
  tubesDocument,
} from './remedies-document.ts';
import { checkSays, headline, lowerAtSays, roomSays } from './says.ts';
import { type SensitivityDocument, sensitivityDocument } from './sensitivity-document.ts';
import { type SpreadDocument, spreadDocument } from './spread-document.ts';
import { type StepDocument, workingDocument } from './working-document.ts';

export interface CheckDocument {
  readonly id: string;
  readonly title: string;
  readonly verdict: Verdict;
  readonly says: string;
  readonly because?: NonNullable<Check['because']>;
  readonly needs: readonly string[];
  readonly ratio?: number;
  readonly ratioRange?: readonly number[];
  readonly margin?: number;
  readonly demand?: Quantity & { readonly of: string };
  readonly capacity?: Quantity;
  readonly where?: Quantity;
  /** From the hold outwards, on an element or a boom. */
  readonly along?: Quantity;
  /** Use without any wind, where that leaves less than the wanted margin. */
  readonly ratioWithoutWind?: number;
  /** Where the verdict is over: the comparison that says so, if a larger use elsewhere says less. */
  readonly over?: {
    readonly ratio: number;
    readonly demand: Quantity & { readonly of: string };
    readonly capacity: Quantity;
    readonly where?: Quantity;
  };
  /** Of a rotator: what holds it, and up to which actual gust it can turn. */
  readonly torque?: {
    readonly heldBy: 'brake' | 'turning-torque';
    readonly turnsWith?: Quantity;
    readonly turnsUpTo?: Quantity;
  };
  /** Wind heading, and rotator heading against the wind, at which this is worst. */
  readonly heading?: { readonly fixed?: Quantity; readonly turning?: Quantity };
  readonly holdsTo?: { readonly gust: Quantity; readonly design: Quantity & { readonly basis: string } };
}

export interface QuestionDocument {
  readonly at: string;
  readonly ask: string;
  readonly taken: string;
  readonly ratioIf: Readonly<Record<string, number>>;
  readonly says: string;
}

export interface CautionDocument {
  readonly code: Caution['code'];
  readonly severity: Caution['severity'];
  readonly says: string;
  readonly action: string;
  readonly at?: string;
}

export interface WindLoadRowDocument {
  readonly name: string;
  readonly at: string;
  readonly kind: string;
  readonly low: number;
  readonly high: number;
  readonly front: number;
  readonly side: number;
  readonly coefficient: number;
  readonly facing: number;
  readonly pressure: number;
  readonly gustEffect: number;
  readonly force: number;
  readonly momentAtBase: number;
  readonly momentAtTop: number;
}

export interface AnswerDocument {
  readonly verdict: Verdict;
  readonly soFar?: Verdict;
  readonly weakest?: string;
  readonly says: string;
  readonly checks: readonly CheckDocument[];
  readonly toFindOut: readonly QuestionDocument[];
  /** Loads of unsaid kind that are not asked about one by one. */
  readonly alsoOpen: number;
  readonly cautions: readonly CautionDocument[];
  readonly notCovered: readonly string[];
  readonly design: {
    readonly method: string;
    readonly title: string;
    readonly speed: Quantity & { readonly basis: SpeedBasis };
    /** Ground upwind, in the words of the method. */
    readonly exposure?: string;
    readonly terrain?: string;
    /** The same wind at both levels, where the method's wind is a gust of US maps or a fastest mile. */
    readonly speedLevels?: { readonly strength: Quantity; readonly nominal: Quantity };
    readonly riskCategory: string;
    readonly directionFactor: number;
    /** The direction factor where it stands in the force and not in the pressure; else 1. */
    readonly directionFactorInForce: number;
    readonly importance: number;
    readonly elevationFactor: number;
    readonly gustEffect: number;
    /** Every force is multiplied by this to stand at the allowable level. */
    readonly level: number;
  };
  readonly windLoads: {
    readonly units: Readonly<Record<'height' | 'area' | 'pressure' | 'force' | 'moment', string>>;
    readonly rows: readonly WindLoadRowDocument[];
    readonly total: { readonly force: number; readonly momentAtBase: number; readonly momentAtTop: number };
    readonly heading: { readonly fixed?: Quantity; readonly turning?: Quantity };
    /** Which way the wind meets a face of the tower, where that matters. */
    readonly direction?: string;
  };
  readonly levels: LevelsDocument;
  readonly wind: readonly {
    readonly height: Quantity;
    readonly exposureCoefficient: number;
    readonly topographicFactor: number;
    readonly pressure: Quantity;
    readonly speed: Quantity;
  }[];
  /** Where the plan has a hill and its method knows hills. */
  readonly hill?: HillDocument;
  readonly heights: { readonly overall: Quantity; readonly tower: Quantity; readonly mast?: Quantity };
  /** The circles swept by what turns; without a radius where its size is not told. */
  readonly turning: readonly {
    readonly name: string;
    readonly at: string;
    readonly height: Quantity;
    readonly radius?: Quantity;
  }[];
  readonly reactions: {
    readonly allowable: { readonly shear: Quantity; readonly moment: Quantity };
    readonly nominal: { readonly shear: Quantity; readonly moment: Quantity };
    readonly strength?: { readonly shear: Quantity; readonly moment: Quantity };
    readonly steady: { readonly shear: Quantity; readonly moment: Quantity };
    readonly supportedAbove: boolean;
    readonly withoutOwnWind: boolean;
    readonly weight?: Quantity;
    readonly legs?: {
      readonly uplift?: Quantity;
      readonly upliftWithoutWeight: Quantity;
      readonly push?: Quantity;
      readonly byOutsideWidth?: boolean;
    };
    readonly bracketPull?: Quantity;
  };
  /** What the mast does to what holds it. */
  readonly mast?: {
    readonly force: Quantity;
    readonly atBearing?: Quantity;
    readonly atFoot: Quantity;
    /** Without a bearing: what holds the mast at its foot takes this alone. */
    readonly clampMoment?: Quantity;
    readonly torque: Quantity;
    readonly bending?: { readonly moment: Quantity; readonly height: Quantity };
    readonly tipMovement?: Quantity;
    readonly weight?: Quantity;
  };
  readonly foundation?: FoundationDocument;
  /** Where the tower has a hinge. */
  readonly raising?: RaisingDocument;
  /** Where the tower can be lowered: the forecast gust at which to do it. */
  readonly lowerAt?: {
    /** Absent where the margin is gone without any wind. */
    readonly gust?: Quantity;
    readonly ofCheck: string;
    readonly ratioWithoutWind?: number;
    readonly without: readonly string[];
    readonly withoutIce: boolean;
    readonly says: string;
  };
  /** A tower whose sections slide, let down. */
  readonly lowered?: LoweredDocument;
  readonly roomLeft: readonly {
    readonly height: Quantity;
    /** Effective; negative where too much hangs already. */
    readonly area: Quantity;
    readonly on: string;
    /** The check that reaches the wanted margin first, of those compared. */
    readonly decidedBy: string;
    readonly of: readonly string[];
    /** Links that it would load and that are not shown. */
    readonly without: readonly string[];
    readonly says: string;
  }[];
  /** Where the plan gives a climate. */
  readonly chance?: readonly ChanceDocument[];
  readonly entryWarnings: readonly { readonly pointer: string; readonly says: string }[];
  readonly plan: unknown;
  readonly working?: readonly StepDocument[];
  readonly spread?: SpreadDocument;
  readonly sensitivity?: SensitivityDocument;
  readonly remedies?: RemediesDocument;
  /** With remedies: standard tubes that would do for the mast, the lightest first. */
  readonly standardTubes?: readonly TubeForMastDocument[];
}

/** What stands beside the answer only when it is asked for. */
export interface Besides {
  readonly spread?: Spread | undefined;
  readonly sensitivity?: Sensitivity | undefined;
  readonly remedies?: Remedies | undefined;
  readonly tubes?: readonly TubeForMast[] | undefined;
}

/** The answer to a plan as a document, in the plan's units. */
export function answerDocument(
  assessment: Assessment,
  plan: unknown,
  entryWarnings: readonly { readonly pointer: string; readonly says: string }[],
  working: 'none' | 'full',
  { spread, sensitivity, remedies, tubes }: Besides = {},
): AnswerDocument {
  const { input, site, wind, windLoads, heights, reactions, questions } = assessment;
  const system = input.station.units;
  const hill = hillHelpOf(input);
  const lowered = loweredOf(assessment);
  const q = (value: number, dimension: Dimension) => quantity(value, dimension, system);
  const method = METHOD_BY_ID[input.method];
  const towerRatio = assessment.checks[0]?.result?.ratio ?? 0;
  const forces = ({ shear, moment }: FootForces) => ({ shear: q(shear, 'force'), moment: q(moment, 'moment') });
  const legs = ({ uplift, upliftWithoutWeight, push, byOutsideWidth }: LegsAtFoot) => ({
    ...(byOutsideWidth === undefined ? {} : { byOutsideWidth }),
    ...(uplift === undefined ? {} : { uplift: q(uplift, 'force') }),
    upliftWithoutWeight: q(upliftWithoutWeight, 'force'),
    ...(push === undefined ? {} : { push: q(push, 'force') }),
  });
  const basis = site.speedLevel === 'strength' ? 'gust3-strength' : method.basis;
  return {
    verdict: assessment.verdict,
    ...(assessment.soFar === undefined ? {} : { soFar: assessment.soFar }),
    ...(assessment.weakest === undefined ? {} : { weakest: assessment.weakest }),
    says: headline(assessment),
    checks: assessment.checks.map((check) => checkDocument(assessment, check, system)),
    toFindOut: questions.open.map((question) => ({
      at: question.at,
      ask: questionOf(question, input),
      taken: question.assumed,
      ratioIf: Object.fromEntries(question.ratioIf.map((option) => [option.answer, option.ratio])),
      says: promiseOf(question, towerRatio),
    })),
    alsoOpen: questions.moreLoads,
    cautions: cautionDocuments(assessment.cautions, system),
    notCovered: NOT_COVERED,
    design: {
      method: input.method,
      title: method.title,
      speed: { ...q(site.speed, 'speed'), basis },
      ...groundNamed(input.site.exposure),
      ...speedLevels(site.speed, basis, system),
      riskCategory: wind.conditions.riskCategory,
      directionFactor: wind.directionFactor,
      directionFactorInForce: wind.forceDirectionFactor,
      importance: wind.importance,
      elevationFactor: wind.elevationFactor,
      gustEffect: wind.gustEffect(),
      level: wind.level,
    },
    windLoads: {
      units: {
        height: q(0, 'length').unit,
        area: q(0, 'area').unit,
        pressure: q(0, 'pressure').unit,
        force: q(0, 'force').unit,
        moment: q(0, 'moment').unit,
      },
      rows: windLoads.rows.map((row) => ({
        name: row.name,
        at: row.at,
        kind: row.kind,
        low: displayValue(row.low, 'length', system),
        high: displayValue(row.high, 'length', system),
        front: displayValue(row.front, 'area', system),
        side: displayValue(row.side, 'area', system),
        coefficient: row.coefficient,
        facing: displayValue(row.facing, 'area', system),
        pressure: displayValue(row.pressure, 'pressure', system),
        gustEffect: row.gustEffect,
        force: displayValue(row.force, 'force', system),
        momentAtBase: displayValue(row.momentAtBase, 'moment', system),
        momentAtTop: displayValue(row.momentAtTop, 'moment', system),
      })),
      total: {
        force: displayValue(windLoads.total.force, 'force', system),
        momentAtBase: displayValue(windLoads.total.momentAtBase, 'moment', system),
        momentAtTop: displayValue(windLoads.total.momentAtTop, 'moment', system),
      },
      heading: headingDocument(windLoads.headings, system),
      ...(windLoads.direction === undefined ? {} : { direction: windLoads.direction }),
    },
    ...(hill === undefined ? {} : { hill: hillDocument(hill, system) }),
    levels: levelsDocument(towerLevels(assessment.model, assessment.ratios, assessment.unfavourable), system),
    wind: assessment.windRows.map((row) => ({
      height: q(row.height, 'length'),
      exposureCoefficient: row.exposureCoefficient,
      topographicFactor: row.topographicFactor,
      pressure: q(row.pressure, 'pressure'),
      speed: q(row.speed, 'speed'),
    })),
    heights: {
      overall: q(heights.overall, 'length'),
      tower: q(heights.tower, 'length'),
      ...(heights.mast === undefined ? {} : { mast: q(heights.mast, 'length') }),
    },
    turning: turningCircles(input.station.loads).map(({ name, at, height, radius }) => ({
      name,
      at,
      height: q(height, 'length'),
      ...(radius === undefined ? {} : { radius: q(radius, 'length') }),
    })),
    reactions: {
      allowable: forces(reactions.allowable),
      nominal: forces(reactions.nominal),
      ...(reactions.strength === undefined ? {} : { strength: forces(reactions.strength) }),
      steady: forces(reactions.steady),
      supportedAbove: reactions.supportedAbove,
      withoutOwnWind: reactions.withoutOwnWind,
      ...(reactions.weight === undefined ? {} : { weight: q(reactions.weight, 'weight') }),
      ...(reactions.legs === undefined ? {} : { legs: legs(reactions.legs) }),
      ...(reactions.bracketPull === undefined ? {} : { bracketPull: q(reactions.bracketPull, 'force') }),
    },
    ...mastDocument(assessment, system),
    ...(assessment.foundation === undefined ? {} : { foundation: foundationDocument(assessment.foundation, system) }),
    ...(assessment.raising === undefined ? {} : { raising: raisingDocument(assessment.raising, system) }),
    ...lowerAtDocument(assessment, system),
    ...(lowered === undefined ? {} : { lowered: loweredDocument(lowered, system) }),
    roomLeft: assessment.roomLeft.map((room) => ({
      height: q(room.height, 'length'),
      area: q(room.area, 'area'),
      on: room.on,
      decidedBy: room.check,
      of: room.looked,
      without: room.without,
      says: roomSays(assessment, room),
    })),
    ...(assessment.chances === undefined
      ? {}
      : { chance: chanceDocuments(assessment.chances, assessment.checks, system) }),
    entryWarnings,
    plan,
    ...(working === 'full' ? { working: workingDocument(workingOf(assessment).steps, system) } : {}),
    ...(spread === undefined ? {} : { spread: spreadDocument(spread, system) }),
    ...(sensitivity === undefined ? {} : { sensitivity: sensitivityDocument(sensitivity, assessment) }),
    ...(remedies === undefined ? {} : { remedies: remediesDocument(remedies, system) }),
    ...(tubes === undefined ? {} : { standardTubes: tubesDocument(tubes, system) }),
  };
}

function speedLevels(speed: number, basis: SpeedBasis, system: UnitSystem) {
  if (isMeanBasis(basis)) return {};
  const at = (level: SpeedBasis) => quantity(convertSpeed(speed, basis, level, 'site'), 'speed', system);
  return { speedLevels: { strength: at('gust3-strength'), nominal: at('gust3-nominal') } };
}

function headingDocument(headings: { readonly fixed?: number; readonly turning?: number }, system: UnitSystem) {
  return {
    ...(headings.fixed === undefined ? {} : { fixed: quantity(headings.fixed, 'angle', system) }),
    ...(headings.turning === undefined ? {} : { turning: quantity(headings.turning, 'angle', system) }),
  };
}

function mastDocument({ mast }: Assessment, system: UnitSystem): Pick<AnswerDocument, 'mast'> {
  if (!mast) return {};
  const { force, atBearing, atFoot, clampMoment, torque, bending, tipMovement, weight } = mast;
  return {
    mast: {
      force: quantity(force, 'force', system),
      ...(atBearing === undefined ? {} : { atBearing: quantity(atBearing, 'force', system) }),
      atFoot: quantity(atFoot, 'force', system),
      ...(clampMoment === undefined ? {} : { clampMoment: quantity(clampMoment, 'moment', system) }),
      torque: quantity(torque, 'moment', system),
      ...(bending === undefined
        ? {}
        : {
            bending: {
              moment: quantity(bending.moment, 'moment', system),
              height: quantity(bending.height, 'length', system),
            },
          }),
      ...(tipMovement === undefined ? {} : { tipMovement: quantity(tipMovement, 'diameter', system) }),
      ...(weight === undefined ? {} : { weight: quantity(weight, 'weight', system) }),
    },
  };
}

function lowerAtDocument(assessment: Assessment, system: UnitSystem): Pick<AnswerDocument, 'lowerAt'> {
  const { lowerAt } = assessment;
  if (!lowerAt) return {};
  const { gust, ofCheck, ratioWithoutWind, without, withoutIce } = lowerAt;
  return {
    lowerAt: {
      ...(gust === undefined ? {} : { gust: quantity(gust, 'speed', system) }),
      ofCheck,
      ...(ratioWithoutWind === undefined ? {} : { ratioWithoutWind }),
      without,
      withoutIce,
      says: lowerAtSays(assessment, lowerAt),
    },
  };
}

function checkDocument(assessment: Assessment, check: Check, system: UnitSystem): CheckDocument {
  const base = {
    id: check.id,
    title: checkName(check),
    verdict: check.verdict,
    says: checkSays(assessment, check),
    ...(check.because === undefined ? {} : { because: check.because }),
    needs: check.needs,
  };
  const { result } = check;
  if (!result) return base;
  const { input } = assessment;
  const dimension = DIMENSION_OF_COMPARED[result.of];
  const basis = input.site.basis ?? METHOD_BY_ID[input.method].basis;
  return {
    ...base,
    ratio: result.ratio,
    ratioRange: result.ratioRange,
    margin: 1 - result.ratio,
    demand: { of: result.of, ...quantity(result.demand, dimension, system) },
    capacity: quantity(result.capacity, dimension, system),
    ...(result.height === undefined ? {} : { where: quantity(result.height, 'length', system) }),
    ...(result.along === undefined ? {} : { along: quantity(result.along, 'length', system) }),
    heading: headingDocument(result.headings, system),
    ...(result.ratioWithoutWind === undefined ? {} : { ratioWithoutWind: result.ratioWithoutWind }),
    ...(result.over === undefined ? {} : { over: overDocument(result.over, system) }),
    ...(result.torque === undefined ? {} : { torque: torqueDocument(result.torque, system) }),
    ...(result.holdsTo
      ? {
          holdsTo: {
            gust: quantity(result.holdsTo.gust, 'speed', system),
            design: { ...quantity(result.holdsTo.design, 'speed', system), basis },
          },
        }
      : {}),
  };
}

function overDocument({ ratio, of, demand, capacity, height }: Compared, system: UnitSystem) {
  const dimension = DIMENSION_OF_COMPARED[of];
  return {
    ratio,
    demand: { of, ...quantity(demand, dimension, system) },
    capacity: quantity(capacity, dimension, system),
    ...(height === undefined ? {} : { where: quantity(height, 'length', system) }),
  };
}

function torqueDocument({ heldBy, turnsWith, turnsUpTo }: NonNullable<CheckResult['torque']>, system: UnitSystem) {
  return {
    heldBy,
    ...(turnsWith === undefined ? {} : { turnsWith: quantity(turnsWith, 'moment', system) }),
    ...(turnsUpTo === undefined ? {} : { turnsUpTo: quantity(turnsUpTo, 'speed', system) }),
  };
}

/** Cautions in words, those that change the verdict first, none said twice. */
export function cautionDocuments(cautions: readonly SaidCaution[], system: UnitSystem): readonly CautionDocument[] {
  const order = { verdict: 0, line: 1, standing: 2 } as const;
  return [...cautions]
    .sort((a, b) => order[a.severity] - order[b.severity])
    .map((caution) => {
      const words = CAUTION_WORDS[caution.code];
      return {
        code: caution.code,
        severity: caution.severity,
        says: words.says(caution, system),
        action: typeof words.action === 'string' ? words.action : words.action(caution, system),
        ...(caution.at === undefined ? {} : { at: caution.at }),
      };
    });
}
