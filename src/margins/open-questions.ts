import type { AreaKind } from '../areas/index.ts';
import { UNKNOWN_SOLIDITY } from '../areas/index.ts';
import { nth } from '../foundation/index.ts';
import { flatPlateFactor, METHOD_BY_ID, type Method, RATED_AREA_KINDS, UNKNOWN_AREA } from '../methods/index.ts';
import type { SlicesInWind } from '../structure/index.ts';
import { isTerrain } from '../wind/index.ts';
import type { Comparison } from './comparisons.ts';
import type { Answers, Demand, RatingAnswer, TowerModel } from './model.ts';
import { possibleMethods, ratedReadings } from './rated-case.ts';
import { demandOf } from './tower-model.ts';
import { ratioAtWorst } from './tower-ratio.ts';

/** What may be open. */
export const QUESTIONS = [
  'rating-method',
  'rating-exposure',
  'rating-terrain',
  'rating-class',
  'rating-area-kind',
  'load-area-kind',
  'tower-members',
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
  /** The check's ratio at its unfavourable end if only this were answered so. */
  readonly ratioIf: readonly { readonly answer: string; readonly ratio: number }[];
}

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
 * @param speed of the site, in the basis of its method [m/s]
 */
export function openQuestions(
  model: TowerModel,
  unfavourable: Demand,
  speed: number,
  check: Comparison['check'] = 'tower',
): OpenQuestions {
  const open: OpenQuestion[] = [];
  const ratio = (answers: Answers, demand = unfavourable) => ratioAtWorst(model, check, demand, answers);
  const now = ratio({});
  if (!Number.isFinite(now)) return { open: [], moreLoads: 0 };
  const finite = (options: readonly { answer: string; ratio: number }[]) =>
    options.filter((option) => Number.isFinite(option.ratio));
  const ask = (question: Omit<OpenQuestion, 'ratioIf'>, options: readonly { answer: string; ratio: number }[]) => {
    const ratioIf = finite(options).filter((option) => option.answer !== question.assumed);
    if (ratioIf.length > 0) open.push({ ...question, ratioIf });
  };
  const seen = new Set<number>();
  for (const { number, rating } of model.claims) {
    if (seen.has(number)) continue;
    seen.add(number);
    const { claim, wind } = rating;
    if (!wind) continue;
    const answered = (answer: RatingAnswer) => ratio({ ratings: new Map([[number, answer]]) });
    const readings = ratedReadings(wind);
    const methods = possibleMethods(wind);
    const asked = <K extends string>(values: readonly K[], answer: (value: K) => RatingAnswer) =>
      values.map((value) => ({ answer: value as string, ratio: answered(answer(value)) }));
    if (!wind.method && methods.length > 0) {
      const options = asked(methods, (method) => ({ method }));
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
      { at: '/tower', question: 'tower-members', assumed: 'the worse at each level' },
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
  const effect = (question: OpenQuestion) => Math.max(...question.ratioIf.map((option) => now - option.ratio));
  const telling = open.filter((question) => effect(question) > 1e-9);
  telling.sort((a, b) => effect(b) - effect(a));
  return { open: telling, moreLoads: Math.max(0, loads.length - LOADS_ASKED) };
}

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
