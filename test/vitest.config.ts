import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/system/**'],
    // For a hung test; no test is about time, and a busy machine is slow.
    testTimeout: 240_000,
    // Left to itself it keeps one core for its watching, which on two cores doubles the time.
    maxWorkers: '100%',
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
  },
});
