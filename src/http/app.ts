import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance } from 'fastify';
import { serializerCompiler } from 'fastify-type-provider-zod';
import type { DestinationStream } from 'pino';
import { DRAWING_STYLE } from '../drawing/index.ts';
import { policyHash } from '../page/index.ts';
import type { Configuration } from './configuration.ts';
import { describeRoutes } from './documents/openapi-document.ts';
import { demoPlans } from './documents/reference-files.ts';
import { frontPageRoutes } from './front-page/front-page-routes.ts';
import { readJsonBodies } from './json-body.ts';
import { assetRoutes } from './page/asset-routes.ts';
import type { Printing } from './paper/print-shop.ts';
import { Problem } from './problems/problem.ts';
import { answerBrokenHttp, handleProblems, sendFrameworkError } from './problems/problem-handlers.ts';
import { backgroundRoutes } from './routes/background-routes.ts';
import { cellRoutes } from './routes/cell-routes.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { serviceRoutes } from './routes/service-routes.ts';
import { validatorOrDomain } from './schemas/documented-only.ts';
import { serviceLog } from './service-log.ts';

export interface AppOptions {
  readonly configuration: Configuration;
  /** Where log lines go; by default to standard output. */
  readonly logTo?: DestinationStream;
  /** How worksheets are printed, where not as usual. */
  readonly printing?: Partial<Printing>;
}

/** Builds the whole service and does not listen. */
export async function buildApp({ configuration, logTo, printing }: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    loggerInstance: serviceLog(configuration.logLevel, logTo),
    bodyLimit: configuration.bodyLimit,
    trustProxy: configuration.trustedProxies.length > 0 ? [...configuration.trustedProxies] : false,
    requestTimeout: 30_000,
    forceCloseConnections: 'idle',
    frameworkErrors: sendFrameworkError,
    clientErrorHandler: answerBrokenHttp,
  });
  readJsonBodies(app);
  app.setValidatorCompiler(validatorOrDomain);
  app.setSerializerCompiler(serializerCompiler);

  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        // Drawings carry one constant style sheet, which the policy knows by its hash.
        styleSrc: ["'self'", policyHash(DRAWING_STYLE)],
        fontSrc: ["'self'"],
        imgSrc: ["'self'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    // The service speaks plain http; a proxy that adds TLS adds these.
    strictTransportSecurity: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
  });
  await app.register(rateLimit, {
    max: configuration.rateLimit,
    timeWindow: '1 minute',
    addHeadersOnExceeding: { 'x-ratelimit-limit': false, 'x-ratelimit-remaining': false, 'x-ratelimit-reset': false },
    errorResponseBuilder: (_request, { max }) =>
      new Problem('too-many-requests', `More than ${max} requests came from your address within a minute.`),
  });
  await describeRoutes(app);
  handleProblems(app);

  const plans = demoPlans();
  await app.register(assetRoutes);
  await app.register(frontPageRoutes, { plans });
  await app.register(planRoutes, printing === undefined ? {} : { printing });
  await app.register(cellRoutes);
  await app.register(backgroundRoutes, { plans });
  await app.register(serviceRoutes);
  return app;
}
