import { expect, it } from 'vitest';
import { workOut } from '../../src/main/worked.ts';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';

const files = (seeds: string) =>
  sortFiles(
    Object.entries({
      'data/trial.yaml': 'title: Slope\nseasons: {2026: {finished: yes}}\n',
      'data/varieties.csv': 'variety,name\na,Aldersop\n',
      'data/2026/totals.csv': 'variety,plants,weight_g\na,2,900\n',
      'data/seeds.csv': `lot,variety,saved,seeds\ns1,a,2025,${seeds}\n`,
    }).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) })),
    [],
    true,
  );
const worked = (seeds: string) => {
  const found = files(seeds);
  return workOut(found, checkTrial(found).trial!);
};

it('the same records are worked out once, another lot of seed anew', () => {
  const first = worked('40');
  expect(worked('40')).toBe(first);
  const later = worked('15');
  expect(later).not.toBe(first);
  expect(later.lines.seed!.lots[0]!.left).toBe(15);
});
