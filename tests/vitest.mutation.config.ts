import { defineConfig } from 'vitest/config';

/** The quick tests of numerics and analyse, for mutation testing: npm run mutate. */
export default defineConfig({
  test: {
    include: [
      'tests/numerics/*.test.ts',
      'tests/analyse/*.test.ts',
      'tests/sites/{published,references,breaking}.test.ts',
    ],
    testTimeout: 60_000,
  },
});
