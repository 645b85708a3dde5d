import { z } from 'zod';
import { editDistance } from '../plan/index.ts';
import { readKeysFile } from './keys/keys-file.ts';
import { corsOrigins } from './other-sites.ts';

const wholeNumber = (from: number, to: number, fallback: number, says: string) =>
  z
    .string()
    .default(String(fallback))
    .refine((text) => /^\d{1,9}$/.test(text) && Number(text) >= from && Number(text) <= to, {
      error: (issue) => `${issue.input}: give a whole number from ${from} to ${to}`,
    })
    .transform(Number)
    .meta({ description: `${says} From ${from} to ${to}.` });

const oneOf = <const Word extends string>(words: readonly Word[], fallback: NoInfer<Word>, says: string) =>
  z
    .enum(words, { error: (issue) => `${issue.input}: give one of ${words.join(', ')}` })
    .default(fallback as never)
    .meta({ description: `${says} One of ${words.join(', ')}.` });

/** What stands between commas; blanks vanish. */
const listed = (text: string): string[] => text.split(',').flatMap((part) => (part.trim() === '' ? [] : [part.trim()]));

const LOG_LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'] as const;

/** What can be asked for with or without a key; a route belongs to one of them. */
export const ENDPOINT_GROUPS = ['page', 'plans', 'cells', 'stock', 'background', 'service', 'metrics'] as const;
export type EndpointGroup = (typeof ENDPOINT_GROUPS)[number];

const isGroup = (word: string): word is EndpointGroup => (ENDPOINT_GROUPS as readonly string[]).includes(word);

const oneLine = (longest: number, says: string) =>
  z
    .string()
    .default('')
    .transform((text) => text.trim())
    .refine((text) => text.length <= longest && !/\p{Cc}/u.test(text), {
      error: `give one line of at most ${longest} letters`,
    })
    .meta({ description: says });

/** First steps of the service's own addresses, which would be taken for the base path. */
const OWN_PATHS = ['v1', 'assets', 'docs', 'healthz', 'metrics', 'openapi.json', 'problems', 'readyz'];

/** As many as two cores keep busy; more cost memory that small machines lack. */
const USUAL_WORKERS = 2;

const environmentSchema = z.object({
  HOST: z
    .string()
    .min(1, 'give an address to listen on, such as 127.0.0.1')
    .default('127.0.0.1')
    .meta({ description: 'Address to listen on; 0.0.0.0 or :: for every network the machine is in.' }),
  PORT: wholeNumber(0, 65_535, 8080, 'Port to listen on; 0 takes any that is free.'),
  BASE_PATH: z
    .string()
    .default('')
    .refine((path) => /^(\/[\w.~-]{1,60}){0,5}\/?$/.test(path) && !/\/\.{1,2}(\/|$)/.test(path), {
      error: (issue) => `${issue.input}: give a path such as /gustworthy`,
    })
    .refine((path) => !OWN_PATHS.includes(path.split('/')[1] ?? ''), {
      error: (issue) => `${issue.input}: the service itself has ${OWN_PATHS.map((own) => `/${own}`).join(', ')}`,
    })
    .transform((path) => path.replace(/\/$/, ''))
    .meta({
      description:
        'Path at which callers find the service, such as /gustworthy. A proxy may take it off or leave it on: both are answered.',
    }),
  CLUB_NAME: oneLine(80, 'Name of the club or person who runs the service, shown on its pages.'),
  CLUB_CONTACT: oneLine(120, 'How to reach whoever runs it: a mail address or a web page, shown on its pages.'),
  STOCK_FOLDER: z
    .string()
    .default('')
    .meta({ description: "Folder of the club's own towers and antennas, offered to everyone; none when blank." }),
  KEYS_FILE: z
    .string()
    .default('')
    .superRefine((path, context) => {
      for (const fault of path === '' ? [] : readKeysFile(path).faults) {
        context.addIssue({ code: 'custom', message: fault, input: path });
      }
    })
    .meta({
      description:
        'File of keys, one a line: a name, a space, the key of 20 letters or more. Without it no key is needed. Read again when it changes.',
    }),
  OPEN_ENDPOINTS: z
    .string()
    .default('')
    .transform(listed)
    .superRefine((words, context) => {
      for (const word of words.filter((each) => !isGroup(each))) {
        const message = `${word}: give any of ${ENDPOINT_GROUPS.join(', ')} with commas between`;
        context.addIssue({ code: 'custom', message, input: word });
      }
    })
    .transform((words) => words.filter(isGroup))
    .meta({
      description: `What stays open to all where there are keys: any of ${ENDPOINT_GROUPS.join(', ')}, with commas between. Health and readiness always are.`,
    }),
  METRICS: oneOf(['on', 'off'], 'on', 'Whether /metrics answers.'),
  RATE_LIMIT: wholeNumber(1, 1_000_000, 300, 'Requests a minute that one address may send.'),
  CELL_RATE_LIMIT: wholeNumber(
    1,
    1_000_000,
    1200,
    'Cells of spreadsheets a minute that one address may ask for, beside its other requests.',
  ),
  BODY_LIMIT: wholeNumber(1024, 16 * 1024 * 1024, 262_144, 'Largest body of a request, in bytes.'),
  CONNECTION_LIMIT: wholeNumber(10, 100_000, 1000, 'Connections held at once; more are closed unanswered.'),
  PRESSURE_LIMIT: wholeNumber(
    20,
    10_000,
    250,
    'Milliseconds that work may wait for its turn; above it requests are sent away with 503 until it falls.',
  ),
  WORK_LIMIT: wholeNumber(
    50,
    100_000,
    2000,
    'Milliseconds of computing that one check may take, as estimated from its plan; an answer made of several may take ten times that.',
  ),
  WORKERS: wholeNumber(
    0,
    64,
    USUAL_WORKERS,
    'Threads that compute what takes long, each with 60 MB or more; 0 computes all of it between other requests.',
  ),
  TRUSTED_PROXIES: z
    .string()
    .default('')
    .transform(listed)
    .refine((addresses) => addresses.every((address) => /^[\da-f.:]+(\/\d{1,3})?$/i.test(address)), {
      error: 'give addresses or networks with commas between, such as 127.0.0.1,10.0.0.0/8',
    })
    .meta({
      description:
        "Addresses or networks of proxies whose word about a caller's address is believed, with commas between; none when blank.",
    }),
  CORS_ORIGINS: corsOrigins,
  STOP_DELAY: wholeNumber(
    0,
    60,
    1,
    'Seconds between the signal to stop and the closed door, in which /readyz says 503 and everything is still answered.',
  ),
  LOG_LEVEL: oneOf(LOG_LEVELS, 'info', 'How much is logged.'),
  LOG_ADDRESSES: oneOf(['yes', 'no'], 'no', "Whether callers' addresses are logged."),
});

const configurationSchema = environmentSchema.transform((settings) => ({
  host: settings.HOST,
  port: settings.PORT,
  basePath: settings.BASE_PATH,
  club: { name: settings.CLUB_NAME, contact: settings.CLUB_CONTACT },
  stockFolder: settings.STOCK_FOLDER,
  keysFile: settings.KEYS_FILE,
  openEndpoints: settings.OPEN_ENDPOINTS,
  metrics: settings.METRICS === 'on',
  rateLimit: settings.RATE_LIMIT,
  cellRateLimit: settings.CELL_RATE_LIMIT,
  bodyLimit: settings.BODY_LIMIT,
  connectionLimit: settings.CONNECTION_LIMIT,
  pressureLimit: settings.PRESSURE_LIMIT,
  workLimit: settings.WORK_LIMIT,
  workers: settings.WORKERS,
  trustedProxies: settings.TRUSTED_PROXIES,
  corsOrigins: settings.CORS_ORIGINS,
  stopDelay: settings.STOP_DELAY,
  logLevel: settings.LOG_LEVEL,
  logAddresses: settings.LOG_ADDRESSES === 'yes',
}));

/** The settings by what they are for; blank or empty where one is not set. */
export type Configuration = Readonly<z.output<typeof configurationSchema>>;

/** The environment does not fit; the message lists every fault, one a line. */
export class ConfigurationError extends Error {
  constructor(faults: readonly string[]) {
    super(`Settings with errors:\n${faults.map((fault) => `  ${fault}`).join('\n')}`);
    this.name = 'ConfigurationError';
  }
}

/** Reads the settings from environment variables; throws a ConfigurationError with all faults at once. */
export function readConfiguration(environment: Readonly<Record<string, string | undefined>>): Configuration {
  const read = configurationSchema.safeParse(environment);
  if (!read.success) {
    throw new ConfigurationError(read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`));
  }
  return read.data;
}

/** Words of our settings by which a variable of the environment may be meant as one. */
const OWN_WORDS = new Set(Object.keys(environmentSchema.shape).filter((name) => name.includes('_')));

/**
 * Variables of the environment that look like a setting and are none, each with the one that may be meant. An environment
 * holds much that is not ours, so only names a letter or two away from a setting of two words are meant.
 */
export function misspeltSettings(environment: Readonly<Record<string, string | undefined>>): readonly string[] {
  return Object.keys(environment).flatMap((name) => {
    if (name in environmentSchema.shape) return [];
    const meant = [...OWN_WORDS].find((own) => editDistance(name.toUpperCase(), own) <= 2);
    return meant === undefined ? [] : [`${name} is no setting; ${meant} is.`];
  });
}

const WIDTH = 100;
const INDENT = 22;

function wrapped(text: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > WIDTH - INDENT) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join(`\n${' '.repeat(INDENT)}`);
}

/** What a setting is when it is not given, as it would be written. */
function fallbackOf(schema: z.core.$ZodType): string {
  if (schema instanceof z.ZodDefault) return String(schema.def.defaultValue);
  if (schema instanceof z.ZodPipe) return fallbackOf(schema.in);
  throw new Error('a setting has no value of its own');
}

/** Every setting in words, with what it is when not given. */
export function settingsHelp(): string {
  const settings = Object.entries(environmentSchema.shape).map(([name, schema]) => {
    const fallback = fallbackOf(schema);
    const says = `${schema.meta()?.description ?? ''} ${fallback === '' ? 'Blank' : fallback} when not given.`;
    return `  ${name.padEnd(INDENT - 3)} ${wrapped(says)}`;
  });
  return [
    'Gustworthy: checks a small antenna tower against its manufacturer’s rating.',
    '',
    '  npm start               listens until it is stopped',
    '  npm start -- --check    reads settings, keys and stock, lists errors, and stops',
    '  npm start -- --help     this text',
    '',
    'Settings come from the environment:',
    '',
    ...settings,
    '',
  ].join('\n');
}
