import { type PartAnswer, told } from '../answer/index.ts';
import { type Assessment, couldBeOver, type Part } from '../margins/index.ts';
import { missingSentences, partName, REASON_WORDS } from '../words/index.ts';
import { whereInWords } from './says.ts';

/** The parts of a plan with their verdicts, each naming its checks. */
export function partDocuments(assessment: Assessment): readonly PartAnswer[] {
  return assessment.parts.map((part) =>
    told<PartAnswer>({
      id: part.id,
      kind: part.kind,
      title: partName(part),
      verdict: part.verdict,
      ratio: part.governs.result?.ratio,
      couldBeOver: couldBeOver(part) ? true : undefined,
      governs: part.governs.id,
      says: partSays(assessment, part),
      checks: part.checks.map(({ id }) => id),
    }),
  );
}

/** "shear at the base", or what is not given. */
function partSays(assessment: Assessment, { governs }: Part): string {
  const { result, needs, because } = governs;
  const missing = missingSentences(needs, assessment.input);
  if (result) return whereInWords(assessment, result);
  return missing || REASON_WORDS[because ?? 'beyond-rating'];
}
