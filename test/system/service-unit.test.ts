import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const UNIT = new URL('../../deploy/systemd/gustworthy.service', import.meta.url).pathname;

const analyze = (...given: string[]) => {
  const { status, stdout, stderr } = spawnSync('systemd-analyze', given, {
    encoding: 'utf8',
    env: { PATH: process.env['PATH'], SYSTEMD_COLORS: '0', LC_ALL: 'C.UTF-8' },
  });
  return { status, output: `${stdout}${stderr}` };
};

describe('the systemd unit', () => {
  it('holds nothing that systemd does not know', () => {
    expect(analyze('verify', '--man=no', UNIT)).toEqual({ status: 0, output: '' });
  });

  it('would be seen with an unknown key', () => {
    const folder = mkdtempSync(join(tmpdir(), 'gustworthy-unit-'));
    try {
      const odd = join(folder, 'gustworthy.service');
      writeFileSync(odd, readFileSync(UNIT, 'utf8').replace('[Service]', '[Service]\nProtectEverything=yes'));
      // An unknown key leaves the status 0: only the words tell.
      expect(analyze('verify', '--man=no', odd).output).toContain('ProtectEverything');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('leaves little open', () => {
    const { status, output } = analyze('security', '--offline=true', '--threshold=20', '--no-pager', UNIT);
    const exposure = Number(/Overall exposure level for gustworthy\.service: (\d+\.\d+)/.exec(output)?.[1]);
    expect(exposure).toBeLessThanOrEqual(2);
    expect(status, output).toBe(0);
  });

  it('lets Node compile while it runs', () => {
    expect(readFileSync(UNIT, 'utf8')).not.toMatch(/^MemoryDenyWriteExecute/m);
  });
});
