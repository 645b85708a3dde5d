import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { watchedFiles } from '../../src/http/upkeep/watched-files.ts';

it('notices a file that came and went between two looks: it may have been read meanwhile', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'watched-'));
  let calls = 0;
  const watch = await watchedFiles([folder], 100, () => {
    calls += 1;
  });
  try {
    await setTimeout(30);
    writeFileSync(join(folder, 'odd.json'), '{}');
    rmSync(join(folder, 'odd.json'));
    for (let tries = 0; tries < 100 && calls === 0; tries += 1) await setTimeout(20);
    expect(calls).toBe(1);
    await setTimeout(250);
    expect(calls).toBe(1);
  } finally {
    watch.close();
    rmSync(folder, { recursive: true });
  }
});
