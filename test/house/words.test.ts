import { describe, expect, it } from 'vitest';
import { projectFiles, topLevelNames } from './source-files.ts';

/** Joined here, so that this file does not hold what it looks for. */
const word = (...pieces: string[]) => pieces.join('');

const UNWANTED: Readonly<Record<string, RegExp>> = {
  'a path of one machine': new RegExp(
    `(?<![\\w.-])/(${word('wo', 'rk')}|${word('t', 'mp')}|root|home/\\w+|Users/\\w+)/[\\w.]`,
  ),
  'a package host': new RegExp(
    `${word('registry', '\\.npm')}|${word('registry', '\\.yarn')}|${word('deb', '\\.debian')}`,
    'i',
  ),
  'an unfinished mark': new RegExp(
    `\\b(${word('TO', 'DO')}|${word('FIX', 'ME')}|${word('X', 'XX')}|${word('not ', 'implemented')})\\b`,
  ),
  'a test switched off': new RegExp(`\\.(${word('sk', 'ip')}|${word('on', 'ly')}|${word('to', 'do')})\\(`),
};

const TOP_LEVEL = new Set(
  'package.json package-lock.json tsconfig.json README.md DEVELOPERS.md LICENSE src reference test openapi deploy'.split(
    ' ',
  ),
);

const files = projectFiles('.', /\.(ts|mjs|json|md|ya?ml|csv|css|html|svg|conf|service|txt)$|^\.[\w.]+$|^[A-Za-z]+$/);

function findings(text: string, ours: boolean): string[] {
  return Object.entries(UNWANTED)
    .filter(([what, pattern]) => (ours || what === 'a package host') && pattern.test(text))
    .map(([what, pattern]) => `${what}: ${pattern.exec(text)?.[0]}`);
}

describe('the words of the project', () => {
  it('are looked for in all its files', () => {
    const paths = files.map((file) => file.path);
    expect(paths).toContain('package.json');
    expect(paths).toContain('.ci/run');
    expect(paths).toContain('.npmrc');
    expect(paths).toContain('src/start.mjs');
  });

  it('hold no path of one machine, no package host, nothing unfinished, no test switched off', () => {
    const found = files.flatMap(({ path, text }) =>
      findings(text, path !== 'package-lock.json').map((finding) => `${path}: ${finding}`),
    );
    expect(found).toEqual([]);
  });

  it('would be seen', () => {
    for (const sample of [
      `cd /${word('wo', 'rk')}/main`,
      `https://${word('registry', '.npm')}js.org/x`,
      `// ${word('TO', 'DO')} later`,
      `it.${word('sk', 'ip')}('x')`,
    ]) {
      expect(findings(sample, true), sample).toHaveLength(1);
    }
  });
});

describe('the names of the project', () => {
  it('are fixed at the top', () => {
    expect(topLevelNames().filter((name) => !TOP_LEVEL.has(name) && !name.startsWith('.'))).toEqual([]);
  });

  it('are kebab-case and say what a file gives', () => {
    const drawers = new Set(['utils', 'util', 'helpers', 'helper', 'types', 'common', 'misc', 'lib']);
    const odd = [...projectFiles('src', /\.(ts|mjs)$/), ...projectFiles('test', /\.ts$/)]
      .map((file) => file.path)
      .filter((path) =>
        path
          .split('/')
          .map((part) => part.replace(/(\.(test|bench|config|system))*\.(ts|mjs)$/, ''))
          .some((part) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(part) || drawers.has(part)),
      );
    expect(odd).toEqual([]);
  });
});
