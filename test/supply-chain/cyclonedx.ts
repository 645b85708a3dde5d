import { installedPackages, lockFile } from './installed-packages.ts';

const purlOf = (name: string, version: string) => `pkg:npm/${name.replace('@', '%40')}@${version}`;

/** The digest of the lock file, in base 64, as CycloneDX writes it. */
function hashesOf(name: string, version: string) {
  const locked = Object.entries(lockFile().packages).find(
    ([path, each]) => path.endsWith(`node_modules/${name}`) && each.version === version,
  );
  const [, content] = /^sha512-(.+)$/.exec(locked?.[1].integrity ?? '') ?? [];
  return content === undefined ? [] : [{ alg: 'SHA-512', content: Buffer.from(content, 'base64').toString('hex') }];
}

/** What the service runs on, by CycloneDX 1.5: the same lock file gives the same bill. */
export function billOfMaterials(version: string) {
  const parts = installedPackages().filter(({ runs }) => runs);
  return {
    bomFormat: 'CycloneDX',
    specVersion: '1.5',
    version: 1,
    metadata: {
      component: { type: 'application', name: 'gustworthy', version, 'bom-ref': `pkg:npm/gustworthy@${version}` },
    },
    components: parts.map(({ name, version: each, licence, optional }) => ({
      type: 'library',
      name,
      version: each,
      scope: optional ? 'optional' : 'required',
      'bom-ref': purlOf(name, each),
      purl: purlOf(name, each),
      licenses: licence === '' ? [] : [{ expression: licence }],
      hashes: hashesOf(name, each),
    })),
  };
}
