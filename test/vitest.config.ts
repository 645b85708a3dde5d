import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/system/**'],
    benchmark: { include: ['test/bench/**/*.bench.ts'] },
  },
});
