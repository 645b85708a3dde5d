import {
  type Answer,
  type CautionAnswer,
  type EntryWarning,
  type MastForces,
  type ReactionsAnswer,
  told,
} from '../answer/index.ts';
import type { UnitSystem } from '../foundation/index.ts';
import {
  type Assessment,
  type AssumedName,
  type ByLevel,
  type CrankHeights,
  type FootForces,
  guyedForcesOf,
  hillHelpOf,
  type LowerAt,
  loweredOf,
  type MastAnswer,
  type OpenQuestion,
  type Remedies,
  SERVICE_GUST,
  type Sensitivity,
  type Spread,
  swayOf,
  type TubeForMast,
  towerLevels,
  turningCircles,
  workingOf,
} from '../margins/index.ts';
import {
  ASSUMPTION_WORDS,
  answerWords,
  CAUTION_WORDS,
  NOT_COVERED,
  type PlanHash,
  promiseOf,
  questionOf,
  type SaidCaution,
  takenInWords,
} from '../words/index.ts';
import { chanceDocuments } from './chance-document.ts';
import { checkDocument } from './check-document.ts';
import { foundationDocument } from './foundation-document.ts';
import { heightsDocument } from './heights-document.ts';
import { hillDocument } from './hill-document.ts';
import { iceDocument } from './ice-document.ts';
import { inquiriesDocument } from './inquiries-document.ts';
import { levelsDocument } from './levels-document.ts';
import { loweredDocument } from './lowered-document.ts';
import { partDocuments } from './part-document.ts';
import { quantity } from './quantity.ts';
import { raisingDocument } from './raising-document.ts';
import { remediesDocument, tubesDocument } from './remedies-document.ts';
import { guysSay, headline, headlineSays, lowerAtSays, mainCheck, reactionsSay, roomSays, swaySays } from './says.ts';
import { sensitivityDocument } from './sensitivity-document.ts';
import { spreadDocument } from './spread-document.ts';
import { designDocument, headingDocument, windLoadsDocument, windRowDocument } from './wind-document.ts';
import { workingDocument } from './working-document.ts';

/** What stands beside the answer only when it is asked for. */
export interface Besides {
  /** SVG by name. */
  readonly drawings?: Readonly<Record<string, string>> | undefined;
  readonly spread?: Spread | undefined;
  readonly crankHeights?: CrankHeights | undefined;
  readonly sensitivity?: Sensitivity | undefined;
  readonly remedies?: Remedies | undefined;
  readonly tubes?: readonly TubeForMast[] | undefined;
  readonly planHash?: PlanHash;
  /** Of the service. */
  readonly version?: string;
}

/** Whether the working and what stands beside the answer are asked for. */
type Depth = 'none' | 'full';

/** The answer to a plan as a document, in the plan's units. */
export function answerDocument(
  assessment: Assessment,
  plan: unknown,
  entryWarnings: readonly EntryWarning[],
  working: Depth,
  { drawings, spread, crankHeights, sensitivity, remedies, tubes, planHash, version }: Besides = {},
): Answer {
  const { input, questions, chances, checks, foundation, raising, heights } = assessment;
  const system = input.station.units;
  const hill = hillHelpOf(input);
  const lowered = loweredOf(assessment);
  const length = (value: number | undefined) => quantity(value, 'length', system);
  return told<Answer>({
    verdict: assessment.verdict,
    decided: told<Answer['decided']>(assessment.decided),
    parts: partDocuments(assessment),
    governs: mainCheck(assessment).id,
    weakest: assessment.weakest,
    says: headlineSays(assessment),
    headline: headline(assessment),
    target: 1 - input.wanted.margin,
    checks: checks.map((check) => checkDocument(assessment, check, system)),
    toFindOut: questionDocuments(assessment),
    alsoOpen: questions.moreLoads,
    inquiries: inquiriesDocument(assessment),
    assumed: assumedDocuments(assessment),
    cautions: cautionDocuments(assessment.cautions, system),
    notCovered: NOT_COVERED,
    design: designDocument(assessment, system),
    windLoads: windLoadsDocument(assessment.windLoads, system),
    levels: levelsDocument(towerLevels(assessment.model, assessment.ratios, assessment.unfavourable), system),
    wind: assessment.windRows.map((row) => windRowDocument(row, system)),
    hill: hill && hillDocument(hill, system),
    heights: told<Answer['heights']>({
      overall: quantity(heights.overall, 'length', system),
      tower: quantity(heights.tower, 'length', system),
      mast: length(heights.mast),
    }),
    turningCircles: turningCircles(input.station.loads).map(({ name, at, height, radius }) =>
      told<Answer['turningCircles'][number]>({
        name,
        at,
        height: quantity(height, 'length', system),
        radius: length(radius),
      }),
    ),
    reactions: reactionsDocument(assessment),
    sway: swayDocument(assessment),
    ice: iceDocument(assessment),
    mast: assessment.mast && mastDocument(assessment.mast, system),
    foundation: foundation && foundationDocument(foundation, system),
    raising: raising && raisingDocument(raising, system),
    lowerAt: assessment.lowerAt && lowerAtDocument(assessment, assessment.lowerAt, system),
    lowered: lowered && loweredDocument(lowered, system),
    roomLeft: roomLeftDocument(assessment),
    chance: chances && chanceDocuments(chances, checks, system),
    entryWarnings,
    plan,
    version,
    planHash,
    drawings,
    working: working === 'full' ? workingDocument(workingOf(assessment).steps, system) : undefined,
    spread: spread && spreadDocument(spread, system),
    crankHeights: crankHeights && heightsDocument(crankHeights, system),
    sensitivity: sensitivity && sensitivityDocument(sensitivity, assessment),
    remedies: remedies && remediesDocument(remedies, system),
    standardTubes: tubes && tubesDocument(tubes, system),
  });
}

function assumedDocuments({ assumptions, cautions, input }: Assessment): Answer['assumed'] {
  const system = input.station.units;
  const read = new Map(assumptions.map((each) => [each.at, each]));
  return cautions.flatMap(({ code, at, word, value, of: name = '' }) => {
    if (code !== 'assumed' || at === undefined) return [];
    const of = word as AssumedName;
    const { readings = [] } = read.get(at) ?? {};
    const [worst, best] = [readings[0], readings.at(-1)].map(
      (reading) => reading && ASSUMPTION_WORDS[of].answer(String(reading.value), system),
    );
    return [
      told<Answer['assumed'][number]>({
        of,
        at,
        name: name === '' ? undefined : name,
        says: ASSUMPTION_WORDS[of].assumed(name, system, value),
        atWorst: worst,
        atBest: best,
      }),
    ];
  });
}

function questionDocuments({ input, questions }: Assessment): Answer['toFindOut'] {
  const { units } = input.station;
  // What is a number inside is said in words, in the units of the plan.
  const isAssumed = ({ question }: OpenQuestion) => question in ASSUMPTION_WORDS;
  return questions.open.map((question) => ({
    at: question.at,
    of: question.question,
    ask: questionOf(question, input),
    assumed: isAssumed(question) ? takenInWords(question, units) : question.assumed,
    ratioIf: Object.fromEntries(
      question.ratioIf.map(({ answer, ratio }) => [
        isAssumed(question) ? answerWords(question, answer, units) : answer,
        ratio,
      ]),
    ),
    says: promiseOf(question),
  }));
}

function guyedDocument(assessment: Assessment): ReactionsAnswer['guyed'] {
  const found = guyedForcesOf(assessment);
  const says = guysSay(assessment);
  if (!found || says === undefined) return undefined;
  const system = assessment.input.station.units;
  const force = (value: number) => quantity(value, 'force', system);
  const { failure, levels, foot, movement } = found;
  return told<NonNullable<ReactionsAnswer['guyed']>>({
    says,
    failure,
    levels: levels.map(({ height, tension, breaking, anchorLevel, anchorUp }) => ({
      height: quantity(height, 'length', system),
      tension: force(tension),
      breaking: force(breaking.least),
      anchorLevel: force(anchorLevel),
      anchorUp: force(anchorUp),
    })),
    thrust: force(foot.thrust),
    shear: force(foot.shear),
    moment: quantity(foot.moment, 'moment', system),
    movement: quantity(movement, 'length', system),
  });
}

function swayDocument(assessment: Assessment): Answer['sway'] {
  const sway = swayOf(assessment.model);
  const says = swaySays(assessment);
  if (!sway || says === undefined) return undefined;
  const system = assessment.input.station.units;
  return {
    says,
    gust: quantity(SERVICE_GUST, 'speed', system),
    movement: quantity(sway.movement, 'length', system),
    lean: sway.lean,
    leaning: sway.leaning,
  };
}

function reactionsDocument(assessment: Assessment): ReactionsAnswer {
  const { reactions, input } = assessment;
  const system = input.station.units;
  const { legs, atLargestShear } = reactions;
  const forces = ({ shear, moment }: FootForces) => ({
    shear: quantity(shear, 'force', system),
    moment: quantity(moment, 'moment', system),
  });
  const levels = <T, D>({ allowable, nominal, strength }: ByLevel<T>, of: (each: T) => D) => ({
    allowable: of(allowable),
    nominal: of(nominal),
    strength: strength === undefined ? undefined : of(strength),
  });
  return told<ReactionsAnswer>({
    says: reactionsSay(assessment),
    ...levels(reactions, forces),
    heading: headingDocument(reactions.headings, system),
    atLargestShear: told<ReactionsAnswer['atLargestShear']>({
      ...levels(atLargestShear, forces),
      heading: headingDocument(atLargestShear.headings, system),
    }),
    torsion: told<ReactionsAnswer['torsion']>(
      levels(reactions.torsion, (torsion) => quantity(torsion, 'moment', system)),
    ),
    withoutWind: forces(reactions.withoutWind),
    supportedAbove: reactions.supportedAbove,
    withoutOwnWind: reactions.withoutOwnWind,
    weight: quantity(reactions.weight, 'weight', system),
    legs:
      legs &&
      told<NonNullable<ReactionsAnswer['legs']>>({
        uplift: quantity(legs.uplift, 'force', system),
        upliftWithoutWeight: quantity(legs.upliftWithoutWeight, 'force', system),
        push: quantity(legs.push, 'force', system),
        byOutsideWidth: legs.byOutsideWidth,
      }),
    bracketPull: quantity(reactions.bracketPull, 'force', system),
    guyed: guyedDocument(assessment),
  });
}

function mastDocument(mast: MastAnswer, system: UnitSystem): MastForces {
  const { bending } = mast;
  return told<MastForces>({
    force: quantity(mast.force, 'force', system),
    atBearing: quantity(mast.atBearing, 'force', system),
    atLowerEnd: quantity(mast.atFoot, 'force', system),
    clampMoment: quantity(mast.clampMoment, 'moment', system),
    torque: quantity(mast.torque, 'moment', system),
    bending: bending && {
      moment: quantity(bending.moment, 'moment', system),
      height: quantity(bending.height, 'length', system),
    },
    tipMovement: quantity(mast.tipMovement, 'diameter', system),
    weight: quantity(mast.weight, 'weight', system),
  });
}

function lowerAtDocument(assessment: Assessment, lowerAt: LowerAt, system: UnitSystem) {
  const { gust, ofCheck, ratioWithoutWind, without, overWithoutGust, withoutIce } = lowerAt;
  return told<NonNullable<Answer['lowerAt']>>({
    gust: quantity(gust, 'speed', system),
    ofCheck,
    ratioWithoutWind,
    without,
    overWithoutGust,
    withoutIce,
    says: lowerAtSays(assessment, lowerAt),
  });
}

/** What may still be added, as a check of the plan and a comparison of proposals say it. */
export function roomLeftDocument(assessment: Assessment): Answer['roomLeft'] {
  const system = assessment.input.station.units;
  return assessment.roomLeft.map((room) => ({
    height: quantity(room.height, 'length', system),
    area: quantity(room.area, 'area', system),
    on: room.on,
    decidedBy: room.check,
    of: room.looked,
    without: room.without,
    notCovered: room.notCovered,
    says: roomSays(assessment, room),
  }));
}

/** Cautions in words, those that change the verdict first, none said twice. */
export function cautionDocuments(cautions: readonly SaidCaution[], system: UnitSystem): readonly CautionAnswer[] {
  const order = { verdict: 0, line: 1, standing: 2 } as const;
  return [...cautions]
    .sort((a, b) => order[a.severity] - order[b.severity])
    .map((caution) => {
      const words = CAUTION_WORDS[caution.code];
      return told<CautionAnswer>({
        code: caution.code,
        severity: caution.severity,
        says: words.says(caution, system),
        action: typeof words.action === 'string' ? words.action : words.action(caution, system),
        at: caution.at,
      });
    });
}
