import { expect, it } from 'vitest';
import { notFinite, randomTable, saidOfScores } from './tasterTables.ts';

it('a table of three tasters in which two contrasts are all but one ends', () => {
  const { compared } = saidOfScores([
    ['T1', 'a', 2],
    ['T2', 'a', 1],
    ['T3', 'a', 8],
    ['T1', 'b', 3],
    ['T2', 'b', 3],
    ['T3', 'b', 8],
    ['T2', 'c', 1],
    ['T1', 'd', 4],
    ['T3', 'd', 8],
  ]);
  expect(compared!.againstCheck!.varieties.every(({ estimate, low }) => estimate - low! > 0)).toBe(true);
});

// All 20,000 run in npm run bench:audit.
it('random tables of few tasters end, in figures that are finite', () => {
  for (let i = 0; i < 300; i++) expect(notFinite(randomTable(i)), `table ${i}`).toEqual([]);
});
