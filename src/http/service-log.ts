import type { FastifyBaseLogger } from 'fastify';
import {
  type DestinationStream,
  type LevelWithSilent,
  type Logger,
  pino,
  stdSerializers,
  stdTimeFunctions,
} from 'pino';

/** Lines kept while they cannot be written; what comes then is left out rather than held without end [bytes]. */
const HELD_AT_MOST = 1_000_000;

/** Standard output. A full disk behind it costs lines of the log, never the service. */
function standardOutput(): DestinationStream {
  const stream = pino.destination({ dest: 1, sync: true, maxLength: HELD_AT_MOST });
  stream.on('error', () => undefined);
  return stream;
}

/**
 * The log of the service: one line of JSON an event, with the number of the request, its route and its outcome. No
 * plan and no query is ever written, and no address of a caller unless it is asked for.
 */
export function serviceLog(level: LevelWithSilent, stream: DestinationStream = standardOutput()): FastifyBaseLogger {
  const options = {
    level,
    base: { service: 'gustworthy' },
    timestamp: stdTimeFunctions.isoTime,
    serializers: {
      req: ({ id, method }: { readonly id: string; readonly method: string }) => ({ id, method }),
      res: ({ statusCode }: { readonly statusCode: number }) => ({ status: statusCode }),
      err: stdSerializers.err,
    },
  };
  const log: Logger = pino(options, stream);
  return log;
}
