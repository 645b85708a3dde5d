import {
  type DecimalSign,
  type Fault,
  readAdditionsRequest,
  readPlan,
  readRequirementsRequest,
  readStormRequest,
} from '../../plan/index.ts';
import { type AdditionsAsked, additionsAnswer, additionsWork } from './additions-answer.ts';
import type { AskedWork } from './budget.ts';
import { type CheckAsked, checkAnswer, checkWork } from './check-answer.ts';
import type { Finished, Pause } from './finished.ts';
import {
  requirementsAnswer,
  requirementsWork,
  type SheetAnswerAsked,
  stormAnswer,
  stormWork,
} from './sheet-answers.ts';

/** What is asked besides, by kind of answer. */
export interface AskedOf {
  readonly check: CheckAsked;
  readonly additions: AdditionsAsked;
  readonly 'storm-card': SheetAnswerAsked;
  readonly requirements: SheetAnswerAsked;
}

export type AnswerKind = keyof AskedOf;

interface Faulty {
  readonly ok: false;
  readonly faults: readonly Fault[];
}

/** A document that could be read: what its answer is likely to take, and the answer. */
interface Answerable<A> {
  readonly ok: true;
  readonly work: (asked: A) => AskedWork;
  readonly answer: (asked: A, pause: Pause) => Finished | Promise<Finished>;
}

type Options = { readonly decimal: DecimalSign };

function answering<R extends { readonly ok: true }, A>(
  read: (document: unknown, options: Options) => R | Faulty,
  work: (reading: R, asked: A) => AskedWork,
  answer: (reading: R, asked: A, pause: Pause) => Finished | Promise<Finished>,
) {
  return (document: unknown, options: Options): Answerable<A> | Faulty => {
    const reading = read(document, options);
    if (!reading.ok) return reading;
    return {
      ok: true,
      work: (asked) => work(reading, asked),
      answer: (asked, pause) => answer(reading, asked, pause),
    };
  };
}

/** How an answer comes of a document: read, estimated, and computed, here or in another thread. */
export const ANSWERINGS: {
  readonly [K in AnswerKind]: (document: unknown, options: Options) => Answerable<AskedOf[K]> | Faulty;
} = {
  check: answering(readPlan, checkWork, checkAnswer),
  additions: answering(readAdditionsRequest, additionsWork, additionsAnswer),
  'storm-card': answering(readStormRequest, stormWork, stormAnswer),
  requirements: answering(readRequirementsRequest, requirementsWork, requirementsAnswer),
};
