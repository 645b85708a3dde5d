import type { FastifyBaseLogger } from 'fastify';
import {
  type DestinationStream,
  type LevelWithSilent,
  type Logger,
  pino,
  stdSerializers,
  stdTimeFunctions,
} from 'pino';

interface LoggedRequest {
  readonly id: string;
  readonly method: string;
  readonly routeOptions?: { readonly url?: string | undefined };
}

/**
 * The log of the service: one line of JSON an event, with the number of the request, its route and its outcome. No
 * plan, no query and no address of a caller is ever written.
 */
export function serviceLog(level: LevelWithSilent, stream?: DestinationStream): FastifyBaseLogger {
  const options = {
    level,
    base: { service: 'gustworthy' },
    timestamp: stdTimeFunctions.isoTime,
    serializers: {
      req: ({ id, method, routeOptions }: LoggedRequest) => ({ id, method, route: routeOptions?.url ?? 'none' }),
      res: ({ statusCode }: { readonly statusCode: number }) => ({ status: statusCode }),
      err: stdSerializers.err,
    },
  };
  const log: Logger = stream === undefined ? pino(options) : pino(options, stream);
  return log;
}
