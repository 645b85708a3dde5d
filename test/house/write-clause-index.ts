import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { clauseIndex, clauseIndexText, referenceExamples } from './clause-index.ts';
import { recordExamples } from './example-recorder.ts';
import { PROJECT_ROOT } from './source-files.ts';

const computed = await recordExamples(new Set(referenceExamples().map(({ id }) => id)));
const text = clauseIndexText(await clauseIndex(computed));
if (process.argv.includes('--print')) process.stdout.write(text);
else {
  writeFileSync(join(PROJECT_ROOT, 'openapi/clauses.json'), text);
  process.stdout.write('openapi/clauses.json is written.\n');
}
