import { defineConfig } from 'vitest/config';

/** The quick tests of one room, for mutation testing: npm run mutate:numerics, npm run mutate:analyse. */
const byRoom = {
  numerics: ['tests/numerics/*.test.ts'],
  analyse: ['tests/analyse/*.test.ts', 'tests/sites/{published,references,breaking}.test.ts'],
};
const room = process.env['KEEPROW_ROOM'] === 'numerics' ? 'numerics' : 'analyse';

export default defineConfig({ test: { include: byRoom[room], testTimeout: 300_000 } });
