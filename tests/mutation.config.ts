import { defineConfig } from 'vitest/config';

/**
 * The tests that mutants are held against: those of the calculations, without browsers, builds and generated households; or
 * those that MUTATION_TESTS names, separated by commas, which is much faster for the mutants of one folder.
 */
const tests = process.env.MUTATION_TESTS?.split(',').map((pattern) =>
  pattern.endsWith('.test.ts') ? pattern : `${pattern}/*.test.ts`,
);

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: tests ?? ['tests/{planner,calendar,content,published}/**/*.test.ts'],
    // These start processes of their own, which run what is on disk and not the mutant.
    exclude: ['tests/calendar/zones.test.ts', 'tests/planner/purity.test.ts', 'node_modules/**'],
    setupFiles: ['tests/mutation.setup.ts'],
    testTimeout: 120_000,
  },
});
