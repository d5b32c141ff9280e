import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts'],
    // The longest are the browser walks and the generated households; nothing here measures time.
    testTimeout: 120_000,
    hookTimeout: 180_000,
  },
});
