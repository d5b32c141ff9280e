import { defineConfig } from 'vitest/config';

/** The tests that mutants are held against: those that `tests/mutate.ts` names, separated by commas. */
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: process.env.MUTATION_TESTS?.split(',') ?? [],
    // These start processes of their own, which run what is on disk and not the mutant.
    exclude: ['tests/calendar/zones.test.ts', 'tests/planner/purity.test.ts', 'node_modules/**'],
    setupFiles: ['tests/mutation.setup.ts'],
    testTimeout: 120_000,
  },
});
