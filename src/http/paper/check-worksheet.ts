import { DRAWING_NAMES, DRAWINGS } from '../../drawing/index.ts';
import type { Assessment } from '../../margins/index.ts';
import { type CheckDocument, checkSheet, type Paper, type Sheet, witness } from '../../worksheet/index.ts';
import { sourceEntries } from '../documents/reference-files.ts';
import { VERSION } from '../version.ts';

let sources: ReturnType<typeof sourceEntries> | undefined;

/** The worksheet of an answer that holds its full working. */
export function checkWorksheet(assessment: Assessment, document: CheckDocument, working: 'none' | 'full'): Sheet {
  sources ??= sourceEntries();
  return checkSheet({
    assessment,
    document,
    drawings: DRAWING_NAMES.map((name) => ({ name, svg: DRAWINGS[name](assessment) })),
    testimony: witness(document.working ?? []),
    working,
    version: VERSION,
    sources,
  });
}

/** The paper of a country that measures as the plan does, unless one is named. */
export function paperOf({ units }: Sheet, named: Paper | undefined): Paper {
  return named ?? (units === 'us' ? 'letter' : 'a4');
}
