import { z } from 'zod';
import { corsOrigins } from './other-sites.ts';

const wholeNumber = (from: number, to: number, fallback: number) =>
  z
    .string()
    .default(String(fallback))
    .refine((text) => /^\d+$/.test(text) && Number(text) >= from && Number(text) <= to, {
      error: (issue) => `${issue.input}: give a whole number from ${from} to ${to}`,
    })
    .transform(Number);

const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

const environmentSchema = z.object({
  HOST: z.string().min(1, 'give an address to listen on, such as 127.0.0.1').default('127.0.0.1'),
  PORT: wholeNumber(0, 65_535, 8080),
  LOG_LEVEL: z
    .enum(LOG_LEVELS, { error: (issue) => `${issue.input}: give one of ${LOG_LEVELS.join(', ')}` })
    .default('info'),
  BODY_LIMIT: wholeNumber(1024, 16 * 1024 * 1024, 262_144),
  RATE_LIMIT: wholeNumber(1, 1_000_000, 300),
  CELL_RATE_LIMIT: wholeNumber(1, 1_000_000, 1200),
  TRUSTED_PROXIES: z
    .string()
    .default('')
    .transform((text) => text.split(',').flatMap((address) => (address.trim() === '' ? [] : [address.trim()])))
    .refine((addresses) => addresses.every((address) => /^[\da-f.:]+(\/\d{1,3})?$/i.test(address)), {
      error: 'give addresses or networks with commas between, such as 127.0.0.1,10.0.0.0/8',
    }),
  CORS_ORIGINS: corsOrigins,
});

export interface Configuration {
  readonly host: string;
  readonly port: number;
  readonly logLevel: (typeof LOG_LEVELS)[number];
  /** Largest request body [bytes]. */
  readonly bodyLimit: number;
  /** Requests a minute that one address may send. */
  readonly rateLimit: number;
  /** Cells of spreadsheets a minute that one address may ask for, beside its other requests. */
  readonly cellRateLimit: number;
  /** Proxies whose word about the caller's address is believed. */
  readonly trustedProxies: readonly string[];
  /** Other sites whose scripts may read answers; none where it is empty, `*` for all. */
  readonly corsOrigins: readonly string[];
}

/** The environment does not fit; the message lists every fault, one a line. */
export class ConfigurationError extends Error {
  constructor(faults: readonly string[]) {
    super(`The settings in the environment do not fit:\n${faults.map((fault) => `  ${fault}`).join('\n')}`);
    this.name = 'ConfigurationError';
  }
}

/** Reads the settings from environment variables; throws a ConfigurationError with all faults at once. */
export function readConfiguration(environment: Readonly<Record<string, string | undefined>>): Configuration {
  const read = environmentSchema.safeParse(environment);
  if (!read.success) {
    throw new ConfigurationError(read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`));
  }
  const settings = read.data;
  return {
    host: settings.HOST,
    port: settings.PORT,
    logLevel: settings.LOG_LEVEL,
    bodyLimit: settings.BODY_LIMIT,
    rateLimit: settings.RATE_LIMIT,
    cellRateLimit: settings.CELL_RATE_LIMIT,
    trustedProxies: settings.TRUSTED_PROXIES,
    corsOrigins: settings.CORS_ORIGINS,
  };
}
