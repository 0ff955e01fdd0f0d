import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    projects: [
      { test: { name: 'paper', include: ['tests/{engine,units,calculators,build,ui,published,sweep,site}/**/*.test.ts'], environment: 'node', testTimeout: 30_000 } },
      { test: { name: 'browser', include: ['tests/browser/**/*.test.ts'], environment: 'node', testTimeout: 60_000, hookTimeout: 120_000, fileParallelism: false } },
    ],
  },
});
