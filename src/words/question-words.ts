import type { UnitSystem } from '../foundation/index.ts';
import type { CheckInput, OpenQuestion } from '../margins/index.ts';

/** How something open is asked and answered. */
export interface QuestionWords {
  readonly ask: (question: OpenQuestion, input: CheckInput) => string;
  /** One of its answers; quantities come in SI. */
  readonly answer: (answer: string, system: UnitSystem) => string;
  /** That it is answered so, before a colon. */
  readonly answered: (answer: string, question: OpenQuestion, system: UnitSystem) => string;
}
