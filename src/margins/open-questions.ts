import type { AreaKind } from '../areas/index.ts';
import { UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import { flatPlateFactor, METHOD_BY_ID, type Method, RATED_AREA_KINDS, UNKNOWN_AREA } from '../methods/index.ts';
import type { ShapeReading, SlicesInWind } from '../structure/index.ts';
import { isTerrain } from '../wind/index.ts';
import { ASSUMED } from './assumed/assumed.ts';
import type { AskedOf, Assumption } from './assumed/assumption.ts';
import { ASSUMPTION_KIND } from './assumed/assumption-kinds.ts';
import type { CheckContext } from './checks/check-kind.ts';
import { mastCheck } from './checks/mast-check.ts';
import { iceCaseOf } from './ice-case.ts';
import type { Answers, Demand, RatingAnswer, TowerModel } from './model.ts';
import { isTopAssumed } from './plausible-rated-heights.ts';
import { provingTower } from './rated-capacity.ts';
import { possibleMethods, ratedReadings } from './rated-case.ts';
import { demandOf, towerModel } from './tower-model.ts';
import { checkRatio, ratioAtWorst } from './tower-ratio.ts';

/** What may be open. */
export const QUESTIONS = [
  'rating-method',
  'rating-exposure',
  'rating-terrain',
  'rating-class',
  'rating-area-kind',
  'load-area-kind',
  'tower-members',
  ...ASSUMED,
] as const;

/** An open question with the reading that is assumed and what each answer alone would give. */
export interface OpenQuestion {
  /** JSON pointer into the plan. */
  readonly at: string;
  readonly question: (typeof QUESTIONS)[number];
  /** Name of the load, where it is one's. */
  readonly of?: string;
  /** The answer that the unfavourable end stands for. */
  readonly assumed: string;
  /** The check that its answers are told of, and the ratio of that now. */
  readonly ofCheck: AskedOf | 'tower-top';
  readonly ratio: number;
  /** The check's ratio at its unfavourable end if only this were answered so. */
  readonly ratioIf: readonly { readonly answer: string; readonly ratio: number }[];
}

/** What stands for an answer that the model reads by itself. */
const WORSE_AT_EACH = 'the worse at each level';

/** At most this many loads are asked about one by one; those that weigh most. @source derived */
export const LOADS_ASKED = 12;

export interface OpenQuestions {
  readonly open: readonly OpenQuestion[];
  /** Loads with an not stated kind of area beyond those asked about. */
  readonly moreLoads: number;
}

/**
 * The open questions that move the ratio of a check, each with what its answers would give, ranked by effect.
 *
 * @param check of the tower that they are to move
 */
export function openQuestions(
  context: Pick<CheckContext, 'model' | 'unfavourable'>,
  assumptions: readonly Assumption[],
  check: 'tower' | 'tower-top' = 'tower',
): OpenQuestions {
  const { model, unfavourable } = context;
  const open: OpenQuestion[] = [];
  const { speed } = model.site;
  const ratio = (answers: Answers, demand = unfavourable) => ratioAtWorst(model, check, demand, answers);
  const now = ratio({});
  const ofAssumptions = assumptionQuestions(model, assumptions, now, check);
  if (!Number.isFinite(now)) return { open: ranked(ofAssumptions), moreLoads: 0 };
  const finite = (options: readonly { answer: string; ratio: number }[]) =>
    options.filter((option) => Number.isFinite(option.ratio));
  const ask = (
    question: Omit<OpenQuestion, 'ratioIf' | 'ratio' | 'ofCheck'>,
    options: readonly { answer: string; ratio: number }[],
  ) => {
    const ratioIf = finite(options).filter((option) => option.answer !== question.assumed);
    if (ratioIf.length > 0) open.push({ ...question, ofCheck: check, ratio: now, ratioIf });
  };
  const seen = new Set<number>();
  for (const { number, rating } of model.claims) {
    if (seen.has(number)) continue;
    seen.add(number);
    const { claim, wind } = rating;
    const answered = (answer: RatingAnswer) => ratio({ ratings: new Map([[number, answer]]) });
    if (isTopAssumed(rating, model.input.assumed)) {
      const cases = model.claims.flatMap((each) => (each.number === number ? each.cases : []));
      const tops = [...new Set(cases.map((each) => provingTower(model, each).top))];
      ask(
        { at: `${rating.at}/top`, question: 'rated-height', assumed: WORSE_AT_EACH },
        tops.map((top) => ({ answer: String(top), ratio: answered({ top }) })),
      );
    }
    if (!wind) continue;
    const readings = ratedReadings(wind);
    const methods = possibleMethods(wind);
    const asked = <K extends string>(values: readonly K[], answer: (value: K) => RatingAnswer) =>
      values.map((value) => ({ answer: value as string, ratio: answered(answer(value)) }));
    if (!wind.method && methods.length > 0) {
      // Nobody is sent first after a standard of elsewhere, though it may be meant and counts.
      const near = methods.filter((id) => METHOD_BY_ID[id].place === wind.place);
      const options = asked(near.length > 0 ? near : methods, (method) => ({ method }));
      ask({ at: `${rating.at}/wind/method`, question: 'rating-method', assumed: 'not named' }, options);
    }
    const grounds = [...new Set(readings.map((reading) => reading.exposure))];
    if (!wind.exposure && readings.some((reading) => METHOD_BY_ID[reading.method].ground.counts)) {
      // A maker who named no standard is asked for the ground in the words most makers use.
      const byTerrain = grounds.every(isTerrain);
      const field = byTerrain ? 'terrain' : 'exposure';
      ask(
        { at: `${rating.at}/wind/${field}`, question: `rating-${field}`, assumed: byTerrain ? 'IV' : 'B' },
        asked(
          grounds.filter((ground) => isTerrain(ground) === byTerrain),
          (exposure) => ({ exposure }),
        ),
      );
    }
    if (!wind.riskCategory && readings.some((reading) => METHOD_BY_ID[reading.method].classMatters)) {
      const classes = ['I', 'II', 'III'] as const;
      ask(
        { at: `${rating.at}/wind/riskCategory`, question: 'rating-class', assumed: 'I' },
        asked(classes, (riskCategory) => ({ riskCategory })),
      );
    }
    if (claim.kind === 'area' && claim.areaKind === 'unknown') {
      const allowed = RATED_AREA_KINDS.filter((kind) =>
        methods.every((method) => METHOD_BY_ID[method].ratedAreas.asked.includes(kind)),
      );
      ask(
        { at: `${rating.at}/areaKind`, question: 'rating-area-kind', assumed: 'effective' },
        asked(allowed, (areaKind) => ({ areaKind })),
      );
    }
  }
  const openSolidity = new Set(model.scenarios.map((scenario) => scenario.solidity)).size > 1;
  if (model.bareTowerKnown && openSolidity) {
    const shares = [UNKNOWN_SOLIDITY.least, UNKNOWN_SOLIDITY.most];
    ask(
      { at: '/tower', question: 'tower-members', assumed: WORSE_AT_EACH },
      shares.map((solidity) => ({ answer: String(solidity), ratio: ratio({ solidity }) })),
    );
  }
  const loads = unknownLoads(model);
  const method = METHOD_BY_ID[model.input.method];
  for (const { item, at, name, assumed } of loads.slice(0, LOADS_ASKED)) {
    const options = loadAnswers(method).map(({ answer, factor }) => {
      const scenarios = model.scenarios.map((scenario) => ({
        ...scenario,
        appurtenances: withFactor(scenario.appurtenances, item, factor),
      }));
      return {
        answer,
        ratio: ratio({}, demandOf(model, scenarios, speed, 'unfavourable', true)),
      };
    });
    ask({ at: `${at}/areaKind`, question: 'load-area-kind', of: name, assumed }, options);
  }
  const whereNotGiven = (of: 'pole-sides' | 'bracing-pattern') =>
    model.input.assumed.find((each) => each.of === of)?.at;
  const asks = <K extends keyof ShapeReading>(question: 'pole-sides' | 'bracing-pattern', key: K) => {
    const at = whereNotGiven(question);
    if (at === undefined) return;
    const values = [...new Set(model.scenarios.map(({ shapes }) => shapes[key]))];
    ask(
      { at, question, assumed: WORSE_AT_EACH },
      values.map((value) => ({ answer: String(value), ratio: ratio({ shapes: { [key]: value } }) })),
    );
  };
  asks('pole-sides', 'sides');
  asks('bracing-pattern', 'pattern');
  return { open: ranked([...open, ...ofAssumptions]), moreLoads: Math.max(0, loads.length - LOADS_ASKED) };
}

/** Those that can lower a ratio, what lowers it most first. */
function ranked(questions: readonly OpenQuestion[]): readonly OpenQuestion[] {
  const effect = ({ ratio, ratioIf }: OpenQuestion) => Math.max(...ratioIf.map((option) => ratio - option.ratio));
  return questions.filter((question) => effect(question) > 1e-9).sort((a, b) => effect(b) - effect(a));
}

/** What is not told and filled in, with the ratio of the check that each is asked for by each plausible answer. */
function assumptionQuestions(
  model: TowerModel,
  assumptions: readonly Assumption[],
  now: number,
  check: 'tower' | 'tower-top',
): OpenQuestion[] {
  return assumptions.flatMap(({ of, at, name, readings }) => {
    const { asked } = ASSUMPTION_KIND[of];
    const ratioIn = (other: TowerModel) =>
      asked === 'tower' ? ratioAtWorst(other, check, demandAt(other)) : ASKED_RATIO[asked](other);
    const ratio = asked === 'tower' ? now : ratioIn(model);
    const [assumed, ...others] = readings;
    if (assumed === undefined || ratio === undefined || !Number.isFinite(ratio)) return [];
    const ratioIf = others.flatMap(({ value, said }) => {
      const changed = ratioIn(towerModel(said(model.input)));
      return changed === undefined || !Number.isFinite(changed) ? [] : [{ answer: String(value), ratio: changed }];
    });
    if (ratioIf.length === 0) return [];
    const ofCheck = asked === 'tower' ? check : asked;
    const called = name === undefined ? {} : { of: name };
    return [{ question: of, at, ...called, assumed: String(assumed.value), ofCheck, ratio, ratioIf }];
  });
}

function demandAt(model: TowerModel): Demand {
  return demandOf(model, model.scenarios, model.site.speed, 'unfavourable', true);
}

const ASKED_RATIO: Readonly<Record<Exclude<AskedOf, 'tower'>, (model: TowerModel) => number | undefined>> = {
  mast: (model) => mastCheck(model)[0]?.result?.ratio,
  ice: (model) => {
    const shown = iceCaseOf(model)?.shown;
    return shown && checkRatio(shown.ratios, 'tower', 'tower-top')?.unfavourable;
  },
};

function loadAnswers(method: Method): readonly { readonly answer: AreaKind; readonly factor: number }[] {
  return [
    { answer: 'effective', factor: UNKNOWN_AREA.least },
    { answer: 'projected-round', factor: method.slender.round },
    { answer: 'flat-plate', factor: flatPlateFactor.of(method.slender.round) },
  ];
}

/** Loads whose area is of a kind not stated, those with most area times height first. */
function unknownLoads(model: TowerModel) {
  return model.appurtenances
    .flatMap((item, number) => {
      const [part] = item.parts;
      if (item.kind !== 'load' || part?.rule.of !== 'stated' || part.rule.areaKind !== 'unknown') return [];
      const assumed = part.rule.slenderFlats ? 'flat-plate with slender flats' : 'flat-plate';
      return [
        { item: number, at: item.at, name: item.name, assumed, weight: Math.max(part.front, part.side) * part.high },
      ];
    })
    .sort((a, b) => b.weight - a.weight);
}

function withFactor(cut: SlicesInWind, item: number, factor: number): SlicesInWind {
  const unfavourable = cut.unfavourable.slice();
  unfavourable.fill(factor, nth(cut.from, item), nth(cut.from, item + 1));
  return { ...cut, unfavourable };
}
