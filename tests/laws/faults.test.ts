import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { corruption, judge } from './corruptions.ts';
import { filledRows, readBack, written, writtenTables } from './tables.ts';

// A hundred times as many by npm run bench:faults.
it('a thousand random tables are read back as they were written', () => {
  fc.assert(
    fc.property(writtenTables, (table) => {
      expect(readBack(written(table))).toEqual(filledRows(table.rows));
    }),
    { numRuns: 1000, seed: 6 },
  );
});

it('a thousand corruptions of a trial are told, change nothing, or are valid records; none is thrown', () => {
  for (let i = 0; i < 1000; i++) {
    const { kind } = judge(corruption(i));
    if (kind === 'thrown' || kind === 'unexplained') expect.fail(`corruption ${i}: ${kind}`);
  }
});
