import closeWithGrace from 'close-with-grace';
import { buildApp, type Configuration, ConfigurationError, readConfiguration } from './http/index.ts';

function configurationOrExit(): Configuration {
  try {
    return readConfiguration(process.env);
  } catch (error) {
    if (!(error instanceof ConfigurationError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return process.exit(1);
  }
}

const configuration = configurationOrExit();
const app = await buildApp({ configuration });

closeWithGrace({ delay: 10_000, logger: app.log }, async ({ err }) => {
  if (err) app.log.error({ err }, 'stopping after a fault');
  await app.close();
});

try {
  await app.listen({ host: configuration.host, port: configuration.port });
} catch (error) {
  app.log.fatal({ err: error }, `cannot listen on ${configuration.host} port ${configuration.port}`);
  await app.close();
  process.exit(1);
}
