import { spawnSync } from 'node:child_process';
import { PROJECT_ROOT } from '../house/source-files.ts';
import { auditVerdict } from './audit-verdict.ts';

/** Asks the package registry whether anything in the lock file is known to be unsound. Only a finding fails. */
const { stdout } = spawnSync('npm', ['audit', '--json'], { cwd: PROJECT_ROOT, encoding: 'utf8', timeout: 120_000 });
const audit = auditVerdict(stdout ?? '');
if (audit.verdict === 'clean') console.log('audit: nothing is known against any package');
else if (audit.verdict === 'no-answer') {
  console.log('******************************************************************************');
  console.log(`audit: LEFT OUT, the package registry gave no answer: ${audit.why}`);
  console.log('Nothing is known of the packages by this run. Run "npm run audit" where it answers.');
  console.log('******************************************************************************');
} else {
  console.error('audit: the package registry knows of these:');
  for (const line of audit.lines) console.error(`  ${line}`);
  process.exit(1);
}
