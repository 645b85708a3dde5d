import { Refusal } from '../../foundation/index.ts';
import type { ProblemCode } from '../problems/catalogue.ts';
import { Problem, type ProblemFault, problemOfRefusal } from '../problems/problem.ts';
import { ANSWERINGS, type AnswerKind, type AskedOf } from './answers.ts';
import type { Finished } from './finished.ts';

/** Plain data alone, since nothing else goes from one thread to another. */
export interface Job<K extends AnswerKind = AnswerKind> {
  readonly kind: K;
  readonly document: unknown;
  readonly decimal: 'point' | 'comma';
  readonly asked: AskedOf[K];
}

export type Outcome =
  | { readonly finished: Finished }
  | {
      readonly problem: {
        readonly code: ProblemCode;
        readonly detail: string;
        readonly faults: readonly ProblemFault[];
        readonly headers: Readonly<Record<string, string>>;
      };
    };

/** One answer, in a thread of its own. */
export default async function work<K extends AnswerKind>({ kind, document, decimal, asked }: Job<K>): Promise<Outcome> {
  const read = ANSWERINGS[kind](document, { decimal });
  if (!read.ok) throw new Error('a document that was read before cannot be read again');
  try {
    return { finished: await read.answer(asked, async () => undefined) };
  } catch (error) {
    const problem = error instanceof Refusal ? problemOfRefusal(error) : error;
    if (!(problem instanceof Problem)) throw error;
    const { code, message: detail, faults, headers } = problem;
    return { problem: { code, detail, faults, headers } };
  }
}
