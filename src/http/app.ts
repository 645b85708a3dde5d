import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance, LogController } from 'fastify';
import { serializerCompiler } from 'fastify-type-provider-zod';
import type { DestinationStream } from 'pino';
import { DRAWING_STYLE } from '../drawing/index.ts';
import { policyHash } from '../page/index.ts';
import { leadToBasePath, withoutBasePath } from './base-path.ts';
import { compressAnswers } from './compression.ts';
import type { Configuration } from './configuration.ts';
import { docsRoutes } from './docs/docs-routes.ts';
import { describeRoutes } from './documents/openapi-document.ts';
import { demoPlans } from './documents/reference-files.ts';
import { tagAnswers } from './etag.ts';
import { readJsonBodies } from './json-body.ts';
import { askForKeys } from './keys/key-check.ts';
import { KeyRing } from './keys/key-ring.ts';
import { letOtherSitesRead } from './other-sites.ts';
import { assetRoutes } from './page/asset-routes.ts';
import { formRoutes } from './page/form-routes.ts';
import type { Printing } from './paper/print-shop.ts';
import { Problem } from './problems/problem.ts';
import { answerBrokenHttp, handleProblems, sendFrameworkError } from './problems/problem-handlers.ts';
import { backgroundRoutes } from './routes/background-routes.ts';
import { cellRoutes } from './routes/cell-routes.ts';
import { metricsRoute } from './routes/metrics-route.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { recordRoutes } from './routes/record-routes.ts';
import { serviceRoutes } from './routes/service-routes.ts';
import { stockRoutes } from './routes/stock-routes.ts';
import { validatorOrDomain } from './schemas/documented-only.ts';
import { serviceLog } from './service-log.ts';
import { StockFolder } from './stock/stock-folder.ts';
import { drainOnRequest } from './upkeep/draining.ts';
import { countRequests } from './upkeep/metrics.ts';
import { sendAwayUnderPressure } from './upkeep/pressure.ts';
import { RateLimitStore } from './upkeep/rate-limit-store.ts';
import { logAnswers } from './upkeep/request-log.ts';
import { requestNumbers } from './upkeep/request-numbers.ts';
import { VERSION, VERSION_HEADER } from './version.ts';
import { Workshop, type WorkshopOptions } from './work/workshop.ts';

export interface AppOptions {
  readonly configuration: Configuration;
  /** Where log lines go; by default to standard output. */
  readonly logTo?: DestinationStream;
  /** How often files that may change are looked at [ms]. */
  readonly lookEvery?: number;
  /** How worksheets are printed, where not as usual. */
  readonly printing?: Partial<Printing>;
  /** How dear answers are computed, where not as usual. */
  readonly working?: Partial<WorkshopOptions>;
}

/** How long a caller may take: the head of a request, the whole request, and a connection on which nothing moves [ms]. */
const HEAD_TIME = 10_000;
const REQUEST_TIME = 30_000;
const STILL_TIME = 120_000;

/** Builds the whole service and does not listen. */
export async function buildApp({
  configuration,
  logTo,
  lookEvery = 2_000,
  printing,
  working,
}: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    loggerInstance: serviceLog(configuration.logLevel, logTo),
    bodyLimit: configuration.bodyLimit,
    trustProxy: configuration.trustedProxies.length > 0 ? [...configuration.trustedProxies] : false,
    rewriteUrl: ({ url = '/' }) => withoutBasePath(url, configuration.basePath),
    genReqId: requestNumbers(),
    logController: new LogController({ disableRequestLogging: true }),
    requestTimeout: REQUEST_TIME,
    connectionTimeout: STILL_TIME,
    http: { headersTimeout: HEAD_TIME, connectionsCheckingInterval: 2_000 },
    forceCloseConnections: 'idle',
    // What still comes in over an open connection while the service stops is answered all the same.
    return503OnClosing: false,
    frameworkErrors: sendFrameworkError,
    clientErrorHandler: answerBrokenHttp(configuration.basePath),
  });
  app.server.maxConnections = configuration.connectionLimit;
  // An expectation that nobody knows may be left unmet (RFC 9110 §10.1.1); Node would answer it without a word.
  app.server.on('checkExpectation', (request, response) => app.server.emit('request', request, response));
  app.decorate('basePath', configuration.basePath);
  countRequests(app);
  logAnswers(app, configuration.logAddresses);
  drainOnRequest(app);
  sendAwayUnderPressure(app, configuration.pressureLimit);
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
  app.addHook('onRequest', (_request, reply, done) => {
    reply.header(VERSION_HEADER, VERSION);
    done();
  });
  tagAnswers(app);
  await compressAnswers(app);
  await letOtherSitesRead(app, configuration.corsOrigins);
  await app.register(rateLimit, {
    max: configuration.rateLimit,
    timeWindow: '1 minute',
    store: RateLimitStore,
    addHeadersOnExceeding: { 'x-ratelimit-limit': false, 'x-ratelimit-remaining': false, 'x-ratelimit-reset': false },
    errorResponseBuilder: (_request, { max }) =>
      new Problem('too-many-requests', `More than ${max} requests came from your address within a minute.`),
  });
  await describeRoutes(app, configuration);
  handleProblems(app);
  if (configuration.keysFile !== '') {
    const ring = await KeyRing.watching(configuration.keysFile, app.log, lookEvery);
    app.addHook('onClose', async () => ring.close());
    askForKeys(app, ring, configuration.openEndpoints);
  }

  const plans = demoPlans();
  const stock = await StockFolder.watching(configuration.stockFolder, app.log, lookEvery);
  app.addHook('onClose', async () => stock.close());
  app.metrics.watch('gustworthy_stock_entries', 'Things in the stock of the club.', () => stock.state.entries.length);
  app.metrics.watch('gustworthy_stock_faults', 'Errors in the folder of stock.', () => stock.state.faults.length);
  await app.register(assetRoutes);
  await app.register(formRoutes, { plans, club: configuration.club });
  await app.register(docsRoutes, { basePath: configuration.basePath });
  const workshop = new Workshop(app.log, plans[0]?.plan, {
    workers: configuration.workers,
    limit: configuration.workLimit,
    ...working,
  });
  app.addHook('onClose', () => workshop.close());
  app.metrics.watch('gustworthy_answers_waiting', 'Answers that wait for a thread.', () => workshop.waiting);
  await app.register(planRoutes, { workshop, ...(printing === undefined ? {} : { printing }) });
  await app.register(cellRoutes, { rateLimit: configuration.cellRateLimit });
  await app.register(backgroundRoutes, { plans });
  await app.register(recordRoutes);
  await app.register(stockRoutes, { stock });
  await app.register(serviceRoutes, { workshop });
  leadToBasePath(app, configuration.basePath);
  if (configuration.metrics) await app.register(metricsRoute);
  return app;
}
