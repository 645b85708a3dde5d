import type { Answer } from '../../answer/index.ts';
import { DRAWING_NAMES, DRAWINGS } from '../../drawing/index.ts';
import type { Assessment } from '../../margins/index.ts';
import { answerSheet, type Sheet, type Testimony, witness } from '../../worksheet/index.ts';
import { sourceEntries } from '../documents/reference-files.ts';
import { Problem } from '../problems/problem.ts';
import { VERSION } from '../version.ts';

let sources: ReturnType<typeof sourceEntries> | undefined;

/** The worksheet of an answer that holds its full working. */
export function answerWorksheet(assessment: Assessment, document: Answer, working: 'none' | 'full'): Sheet {
  sources ??= sourceEntries();
  return answerSheet({
    assessment,
    document,
    drawings: DRAWING_NAMES.map((name) => ({ name, svg: DRAWINGS[name](assessment) })),
    testimony: agreed(witness(document.working ?? [])),
    working,
    version: VERSION,
    sources,
  });
}

/** The steps as they are where all agree; a problem that names the first that does not. */
export function agreed(testimony: readonly Testimony[]): readonly Testimony[] {
  const odd = testimony.find(({ agrees }) => !agrees);
  if (odd === undefined) return testimony;
  const { step, evaluated } = odd;
  throw new Problem(
    'recalculation-differs',
    `${step.title}: ${step.symbol} = ${step.expression} is shown as ${step.value} and comes out as ${evaluated}.`,
  );
}
