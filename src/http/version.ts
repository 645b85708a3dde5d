import { readFileSync } from 'node:fs';

const described: { version: string } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

/** The version of this service, as package.json has it. */
export const VERSION = described.version;

/** The header of every answer that says which version gave it, and that of an answer to a plan with the plan's SHA-256. */
export const VERSION_HEADER = 'gustworthy-version';
export const PLAN_HEADER = 'gustworthy-plan';
