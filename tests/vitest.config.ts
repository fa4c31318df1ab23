import { defineConfig } from 'vitest/config';

/** No test may fail because the machine is slow: these limits are there to end what hangs. */
const LIMIT = 300_000;

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    root: new URL('..', import.meta.url).pathname,
    testTimeout: LIMIT,
    hookTimeout: LIMIT,
    globalSetup: ['tests/temporary.ts'],
    // Builds of tests keep nothing in the home of whoever runs them.
    env: { KEEPROW_CACHE: 'off' },
  },
});
