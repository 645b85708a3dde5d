import { installedPackages } from './installed-packages.ts';

/** A line for each package needed to run the service: name, version, licence. */
const running = installedPackages().filter(({ runs }) => runs);
for (const { name, version, licence, optional } of running) {
  console.log(`${name}@${version}  ${licence || 'not said'}${optional ? '  (for some systems)' : ''}`);
}
