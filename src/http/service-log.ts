import type { FastifyBaseLogger } from 'fastify';
import {
  type DestinationStream,
  type LevelWithSilent,
  type Logger,
  pino,
  stdSerializers,
  stdTimeFunctions,
} from 'pino';
import { LogOutput } from './log-output.ts';

const STANDARD_OUTPUT = 1;

/**
 * The log of the service: one line of JSON an event, with the number of the request, its route and its outcome. No
 * plan and no query is ever written, and no address of a caller unless it is asked for.
 */
export function serviceLog(
  level: LevelWithSilent,
  stream: DestinationStream = new LogOutput(STANDARD_OUTPUT),
): FastifyBaseLogger {
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
