import { defineConfig } from 'vitest/config';

/** The tests that mutants are held against: those of the calculations, without browsers, builds and generated households. */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/{planner,calendar,content,published}/**/*.test.ts'],
    // These start processes of their own, which run what is on disk and not the mutant.
    exclude: ['tests/calendar/zones.test.ts', 'tests/planner/purity.test.ts', 'node_modules/**'],
    testTimeout: 120_000,
  },
});
