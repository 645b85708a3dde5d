import { writeFileSync } from 'node:fs';
import { buildApp } from '../app.ts';
import { readConfiguration } from '../configuration.ts';

const app = await buildApp({ configuration: readConfiguration({ LOG_LEVEL: 'silent' }) });
await app.ready();
const target = new URL('../../../openapi/openapi.json', import.meta.url);
writeFileSync(target, `${JSON.stringify(app.swagger(), null, 2)}\n`);
await app.close();
console.log('openapi/openapi.json is written.');
