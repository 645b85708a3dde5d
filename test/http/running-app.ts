import type { AddressInfo } from 'node:net';
import supertest from 'supertest';
import { afterAll, beforeAll } from 'vitest';
import { type AppOptions, buildApp, type Configuration, readConfiguration } from '../../src/http/index.ts';

type App = Awaited<ReturnType<typeof buildApp>>;

export interface RunningApp {
  readonly app: App;
  readonly origin: string;
  request(): ReturnType<typeof supertest>;
}

/** No test is about time unless it says so, and a busy machine is slow. */
const FOR_TESTS = {
  LOG_LEVEL: 'silent',
  RATE_LIMIT: '100000',
  CELL_RATE_LIMIT: '100000',
  PRESSURE_LIMIT: '10000',
  WORKERS: '0',
};

interface Changes extends Partial<Configuration> {
  readonly logTo?: AppOptions['logTo'];
  readonly lookEvery?: number;
  readonly printing?: AppOptions['printing'];
  readonly working?: AppOptions['working'];
  /** Adds routes of the test's own before the app listens. */
  readonly prepare?: (app: App) => void;
}

/** Builds the service, listens on a free port while the tests of a describe block run, and closes. */
export function runningApp({ logTo, lookEvery, printing, working, prepare, ...changes }: Changes = {}): RunningApp {
  let app: App | undefined;
  const present = (): App => {
    if (app === undefined) throw new Error('the app is not built yet');
    return app;
  };
  beforeAll(async () => {
    const configuration = { ...readConfiguration(FOR_TESTS), ...changes };
    app = await buildApp({
      configuration,
      ...(logTo === undefined ? {} : { logTo }),
      ...(lookEvery === undefined ? {} : { lookEvery }),
      ...(printing === undefined ? {} : { printing }),
      ...(working === undefined ? {} : { working }),
    });
    prepare?.(app);
    await app.listen({ host: '127.0.0.1', port: 0 });
  });
  afterAll(async () => {
    await app?.close();
  });
  return {
    get app() {
      return present();
    },
    get origin() {
      return `http://127.0.0.1:${(present().server.address() as AddressInfo).port}`;
    },
    request: () => supertest(present().server),
  };
}
