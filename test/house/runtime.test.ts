import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

describe('the runtime', () => {
  it('is Node 24, whatever Node started npm', () => {
    expect(process.version).toMatch(/^v24\./);
  });

  it('is told apart from an older Node in plain words', () => {
    const check = readFileSync(new URL('../../src/required-node.mjs', import.meta.url), 'utf8');
    const asIfOld = check.replaceAll('process.versions.node', "'20.1.0'");
    const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', asIfOld], {
      encoding: 'utf8',
    });
    expect(status).toBe(1);
    expect(stderr).toContain('needs Node 24 or newer; this is Node 20.1.0');
    expect(stderr).toContain('npm ci');
  });

  it('lets the present Node through', () => {
    const check = new URL('../../src/required-node.mjs', import.meta.url).pathname;
    const { status, stderr } = spawnSync(process.execPath, [check], { encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
});
