import { setTimeout } from 'node:timers/promises';
import closeWithGrace from 'close-with-grace';
import {
  buildApp,
  type Configuration,
  ConfigurationError,
  misspeltSettings,
  readConfiguration,
  settingsHelp,
  stockFaults,
} from './http/index.ts';

/** Time for the requests under way when the door is closed; a request itself takes at most half a minute to arrive [ms]. */
const LAST_ANSWERS = 31_000;

function configurationOrExit(): Configuration {
  try {
    return readConfiguration(process.env);
  } catch (error) {
    if (!(error instanceof ConfigurationError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return process.exit(1);
  }
}

if (process.argv.includes('--help')) {
  process.stdout.write(settingsHelp());
  process.exit(0);
}

const configuration = configurationOrExit();
const misspelt = misspeltSettings(process.env);

if (process.argv.includes('--check')) {
  const faults = [...misspelt, ...(await stockFaults(configuration.stockFolder))];
  process.stdout.write(
    faults.length === 0
      ? 'Settings, keys and stock fit.\n'
      : `Settings, keys or stock do not fit:\n${faults.map((fault) => `  ${fault}\n`).join('')}`,
  );
  process.exit(faults.length === 0 ? 0 : 1);
}

const app = await buildApp({ configuration });
for (const each of misspelt) app.log.warn(each);
const stopDelay = configuration.stopDelay * 1000;

closeWithGrace({ delay: stopDelay + LAST_ANSWERS, logger: app.log }, async ({ err, signal }) => {
  if (err) app.log.error({ err }, 'stopping after a fault');
  else {
    app.log.info({ signal }, 'stopping: answering what comes, then closing the door');
    app.draining.begin();
    await setTimeout(stopDelay);
  }
  await app.close();
});

try {
  await app.listen({ host: configuration.host, port: configuration.port });
} catch (error) {
  app.log.fatal({ err: error }, `cannot listen on ${configuration.host} port ${configuration.port}`);
  await app.close();
  process.exit(1);
}
