import { describe, expect, it } from 'vitest';
import { severities } from '../../src/terms/problemCodes.ts';
import { check, codes } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const SETTINGS =
  'title: Slope\ntraits: {flavour: {kind: rating, from: 1, to: 9, better: higher}}\nseasons: {2026: {harvests: complete}}\n';
const folder = (more: Folder): Folder => ({
  'trial.yaml': SETTINGS,
  'varieties.csv': 'variety,name\na,Aldersop\nb,Bramscar\n',
  '2026/plantings.csv': 'variety,plants\na,3\nb,3\n',
  ...more,
});
const scores = (text: string) => {
  const { trial, problems } = check(folder({ '2026/ratings.csv': text }));
  return {
    scores: trial?.seasons[0]?.scores.map(({ variety, trait, score }) => `${variety} ${trait} ${score}`).toSorted(),
    told: problems.map(({ code, found, places }) => `${code} ${found} ${places.length}`),
  };
};

describe('answers and scores as people write them', () => {
  it('are understood where they have one reading, with a note', () => {
    expect(scores('variety,flavour,again\na,7-9,yes!\nb,8+,NO\n')).toEqual({
      scores: ['a again 1', 'a flavour 8', 'b again 0', 'b flavour 8'],
      told: ['score-taken-as 7-9, 8+ 2'],
    });
  });
  it('are left out with a warning where they say nothing, and stop no build', () => {
    expect(scores('variety,flavour,again\na,?,maybe\nb,5,?\n')).toEqual({
      scores: ['b flavour 5'],
      told: ['answer-left-out maybe, ? 3'],
    });
  });
  it('are refused where they are a slip', () => {
    expect(codes(folder({ '2026/ratings.csv': 'variety,flavour,again\na,12,often\n' }))).toEqual([
      'word-unknown 2026/ratings.csv:2:6',
      'score-outside-scale 2026/ratings.csv:2:3',
    ]);
  });
});

it('a day on which a plant was topped says that it was', () => {
  const { trial } = check(folder({ '2026/plantings.csv': 'variety,topped\na,2026-06-12\nb,no\n' }));
  expect(trial!.seasons[0]!.plantings.map(({ topped }) => topped)).toEqual([true, false]);
});

describe('a lone grower', () => {
  it('needs no taster and no date', () => {
    const { trial, problems } = check(folder({ '2026/ratings.csv': 'variety,flavour\na,7\nb,5\n' }));
    expect(problems).toEqual([]);
    expect(trial!.seasons[0]!.scores.map(({ day, taster }) => [day, taster])).toEqual([
      [null, 'grower'],
      [null, 'grower'],
    ]);
  });
  it('needs no ids: names are enough in every table', () => {
    const { trial, problems } = check({
      'trial.yaml': SETTINGS,
      'varieties.csv': 'name,class\nCandle Nab,\nÉtoile d’Or,\n',
      '2026/plantings.csv': 'name,plants\nCandle Nab,2\nEtoile d’Or,1\n',
      '2026/ratings.csv': 'name,flavour\nCandle Nab,7\nÉtoile d’Or,6\n',
    });
    expect(problems.filter(({ code }) => code !== 'column-unknown')).toEqual([]);
    expect(trial!.varieties.map(({ id }) => id)).toEqual(['candle-nab', 'etoile-dor']);
    expect(trial!.seasons[0]!.scores).toHaveLength(2);
  });
});

describe('figures that nothing would use', () => {
  it('are told with the line that declares them', () => {
    const { problems } = check(folder({ '2026/ratings.csv': 'variety,flavour,length_cm\na,7,12\n' }));
    expect(problems.map(({ code, facts }) => [code, facts])).toContainEqual([
      'trait-undeclared',
      { line: 'traits: {length: {kind: measure, unit: cm, better: none}}' },
    ]);
  });
  it.each(['25.7.', '2026-08-02 (g)', '1 Aug g', '3/8/2026'])('are refused under the day %s of season.csv', (day) => {
    const own = { 'trial.yaml': SETTINGS, 'varieties.csv': 'variety\na\n' };
    const text = `planting,variety,plants,weight_g,${day}\np1,a,1,300,120\n`;
    expect(codes({ ...own, '2026/season.csv': text })).toContainEqual(expect.stringContaining('day-columns-unused'));
  });
  it('missing yields of many plants are one message', () => {
    const { problems } = check({
      ...folder({ '2026/harvests.csv': 'date,planting,fruits\n2026-08-03,p0,2\n' }),
      'trial.yaml': 'title: Slope\n',
      '2026/plantings.csv': `planting,variety\n${Array.from({ length: 31 }, (_, i) => `p${i},a`).join('\n')}\n`,
    });
    const missing = problems.filter(({ code }) => code === 'yield-not-recorded');
    expect(missing.map(({ places }) => places.length)).toEqual([30]);
  });
  it('are named by the title that the grower wrote', () => {
    const { problems } = check(folder({ '2026/harvests.csv': 'variety,2026-08-02 (g)\na,heavy\n' }));
    expect(problems.map(({ code, facts }) => [code, Object.values(facts)[0]])).toContainEqual([
      'quantity-unreadable',
      '2026-08-02 (g)',
    ]);
  });
});

describe('what only follows from a table that is lost', () => {
  const harvests = `date,planting,fruits\n${Array.from({ length: 47 }, (_, i) => `2026-08-${String(1 + (i % 28)).padStart(2, '0')},p${i},${2 + ((i * i) % 7)}`).join('\n')}\n`;
  const errors = (more: Folder): readonly string[] =>
    check(folder({ '2026/harvests.csv': harvests, ...more }))
      .problems.filter(({ code }) => severities[code] === 'error')
      .map(({ code, places }) => `${code} ${places[0]!.file}`);

  it.each([
    ['a column of plantings', { '2026/plantings.csv': 'planting,sort\np0,a\n' }, 'data/2026/plantings.csv'],
    ['a column of varieties', { 'varieties.csv': 'sort\na\n' }, 'data/varieties.csv'],
  ])('is not told beside its cause: %s', (_, more, file) => {
    expect(errors(more)).toEqual([`column-missing ${file}`]);
  });
  it('is told where nothing else is wrong', () => {
    expect(errors({ '2026/plantings.csv': 'planting,variety\np0,a\n' })).toHaveLength(46);
  });
});

it('plants that are one of every variety, where there were several the year before, are doubted', () => {
  const years = (now: string): readonly string[] =>
    check({
      'trial.yaml': 'title: Slope\n',
      'varieties.csv': 'variety\na\nb\nc\n',
      '2025/totals.csv': 'variety,plants,weight_g\na,3,900\nb,2,700\nc,4,1500\n',
      '2026/plantings.csv': now,
    }).problems.map(({ code }) => code);
  expect(years('variety\na\nb\nc\n')).toContain('plants-all-one');
  expect(years('variety,plants\na,1\nb,1\nc,2\n')).not.toContain('plants-all-one');
});
