import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { auditVerdict } from '../supply-chain/audit-verdict.ts';
import { billOfMaterials } from '../supply-chain/cyclonedx.ts';
import { installedPackages, lockFile } from '../supply-chain/installed-packages.ts';
import { PROJECT_ROOT } from './source-files.ts';

interface PackageFile {
  readonly version: string;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
}

const read = (path: string) => readFileSync(join(PROJECT_ROOT, path), 'utf8');
const described = JSON.parse(read('package.json')) as PackageFile;
const direct = { ...described.dependencies, ...described.devDependencies, ...described.optionalDependencies };

/** Licences under which anyone may run, change and hand on; fonts by the last one. */
const FREE = new Set([
  'MIT',
  'MIT-0',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'Unlicense',
  'CC0-1.0',
  'MPL-2.0',
  'CC-BY-4.0',
  'Python-2.0',
  'OFL-1.1',
]);

const isFree = (licence: string): boolean =>
  licence
    .replaceAll(/[()]/g, '')
    .split(/ OR /i)
    .some((choice) => choice.split(/ AND /i).every((each) => FREE.has(each.trim())));

describe('the packages', () => {
  it('have exact versions, and an integrity each in the lock file', () => {
    expect(Object.entries(direct).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
    const locked = Object.entries(lockFile().packages).filter(([path]) => path !== '');
    expect(locked.length).toBeGreaterThan(50);
    expect(locked.filter(([, { integrity }]) => !integrity?.startsWith('sha512-')).map(([path]) => path)).toEqual([]);
  });

  it('have a reason each, in the guide for contributors', () => {
    const guide = read('DEVELOPERS.md');
    const section = guide.slice(
      guide.indexOf('## Dependencies'),
      guide.indexOf('\n## ', guide.indexOf('## Dependencies') + 5),
    );
    const rows = section.split('\n').filter((line) => line.startsWith('| `'));
    const named = new Set(
      rows.flatMap((row) => [...(row.split('|')[1] ?? '').matchAll(/`([^`]+)`/g)].map(([, name]) => name)),
    );
    expect(Object.keys(direct).filter((name) => !named.has(name))).toEqual([]);
    const gone = [...named].filter((name) => name !== undefined && !(name in direct));
    expect(gone).toEqual([]);
  });

  it('are free to use, all that the service runs on', () => {
    const running = installedPackages().filter(({ runs }) => runs);
    expect(running.length).toBeGreaterThan(30);
    expect(running.filter(({ licence }) => !isFree(licence)).map(({ name, licence }) => `${name}: ${licence}`)).toEqual(
      [],
    );
    for (const odd of ['', 'UNLICENSED', 'GPL-3.0', 'MIT AND Elastic-2.0']) expect(isFree(odd)).toBe(false);
    expect(isFree('(MIT OR GPL-3.0)')).toBe(true);
  });

  it('stand in the bill of materials, which the same lock file gives again', () => {
    const bill = billOfMaterials(described.version);
    const listed = new Set(bill.components.map(({ name, version }) => `${name}@${version}`));
    for (const [name, version] of Object.entries(described.dependencies))
      expect(listed).toContain(`${name}@${version}`);
    for (const name of Object.keys(described.devDependencies)) {
      if (!installedPackages().some((each) => each.name === name && each.runs)) {
        expect(bill.components.map((each) => each.name)).not.toContain(name);
      }
    }
    expect(bill.components.filter(({ hashes }) => hashes.length !== 1)).toEqual([]);
    expect(bill.components[0]?.purl).toMatch(/^pkg:npm\/%40[\w.-]+\/[\w.-]+@\d/);
    expect(JSON.stringify(billOfMaterials(described.version))).toBe(JSON.stringify(bill));
  });
});

describe('the audit', () => {
  const report = (total: number, vulnerabilities: object = {}) =>
    JSON.stringify({ auditReportVersion: 2, vulnerabilities, metadata: { vulnerabilities: { total } } });

  it('tells a finding from no answer', () => {
    expect(auditVerdict(report(0))).toEqual({ verdict: 'clean' });
    expect(auditVerdict(report(1, { left: { severity: 'high', range: '<2' } }))).toEqual({
      verdict: 'findings',
      lines: ['left <2: high'],
    });
    const refused = JSON.stringify({ message: '404 Not Found', error: { code: 'ENOAUDIT', summary: '' } });
    expect(auditVerdict(refused)).toEqual({ verdict: 'no-answer', why: 'ENOAUDIT' });
    for (const output of ['', 'npm ERR! network', '{}', '{"metadata":{}}']) {
      expect(auditVerdict(output).verdict).toBe('no-answer');
    }
  });
});
