import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT_ROOT } from '../house/source-files.ts';
import { billOfMaterials } from './cyclonedx.ts';

/** Writes the bill of materials of what runs: to the file named, else to standard output. */
const [target] = process.argv.slice(2);
const { version } = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as { version: string };
const text = `${JSON.stringify(billOfMaterials(version), null, 2)}\n`;
if (target === undefined) process.stdout.write(text);
else writeFileSync(target, text);
