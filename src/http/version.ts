import { readFileSync } from 'node:fs';

const described: { version: string } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

/** The version of this service, as package.json has it. */
export const VERSION = described.version;
