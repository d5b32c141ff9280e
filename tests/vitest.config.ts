import { defineConfig } from 'vitest/config';

const TIMED = 'tests/browser/slider.test.ts';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    // One file measures time: a group of its own, so that no other file runs beside it.
    projects: [
      {
        extends: true,
        test: { name: 'all', include: ['tests/**/*.test.ts'], exclude: [TIMED], sequence: { groupOrder: 0 } },
      },
      { extends: true, test: { name: 'timed', include: [TIMED], sequence: { groupOrder: 1 } } },
    ],
    // The longest are the browser walks and the generated households.
    testTimeout: 120_000,
    hookTimeout: 180_000,
  },
});
