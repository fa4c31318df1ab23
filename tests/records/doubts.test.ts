import { describe, expect, it } from 'vitest';
import { severityOf } from '../../src/terms/problem.ts';
import type { Problem } from '../../src/terms/problem.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// What looks like a slip, each beside a record like it that is none. Limits: common practice, no source.

const VARIETIES = ['one', 'two', 'three', 'four', 'five', 'six', 'seven'];
const BASE: Folder = {
  'trial.yaml':
    'title: Doubts\nseasons: {2026: {transplanted: 2026-05-20}}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  length: {kind: measure, unit: cm}\n  width: {kind: measure, unit: cm}\n',
  'varieties.csv': `variety\n${VARIETIES.join('\n')}\n`,
  '2026/plantings.csv': `planting,variety\n${VARIETIES.flatMap((id) => [`${id}-a,${id}`, `${id}-b,${id}`]).join('\n')}\n`,
};
const day = (i: number): string => new Date(Date.UTC(2026, 6, 20 + i)).toISOString().slice(0, 10);
const WATCHED = [
  'fruits-and-weight-swapped',
  'picking-unlike-others',
  'records-swapped',
  'unit-seems-wrong',
  'all-on-one-day',
  'date-unlike-neighbours',
  'taster-one-score',
  'row-twice',
];

function doubts(sheets: Folder): readonly string[] {
  const { problems } = check({ ...BASE, ...sheets });
  // Fruit of 50 kg are an error, beside the doubt.
  const isWrong = (problem: Problem): boolean => severityOf(problem) === 'error' && problem.code !== 'figure-absurd';
  expect(problems.filter(isWrong)).toEqual([]);
  return problems
    .filter(({ code }) => WATCHED.includes(code))
    .map(({ code, places: [place], found }) => [code, place!.line ?? '-', found].join(' ').trim());
}
const pickings = (
  rows: readonly (readonly [planting: string, day: number, fruits: number, grams: number])[],
): Folder => ({
  '2026/harvests.csv': `date,planting,fruits,weight_g\n${rows.map(([planting, at, fruits, grams]) => `${day(at)},${planting},${fruits},${grams}`).join('\n')}\n`,
});

describe('doubtful pickings', () => {
  const usual = [0, 5, 10, 15].map((at, i) => ['one-a', at, 4 + i, 200 + 50 * i] as const);
  it('one picking that dwarfs the others, not a good day among poor ones', () => {
    expect(doubts(pickings([...usual, ['one-a', 20, 62, 3100]]))).toEqual(['picking-unlike-others 6 3100 g']);
    expect(doubts(pickings([...usual, ['one-a', 20, 20, 1000]]))).toEqual([]);
    expect(doubts(pickings([...usual.slice(0, 2), ['one-a', 20, 62, 3100]]))).toEqual([]);
  });
  it('not the clearing of green fruit, nor a flush after one fruit or two', () => {
    const folder = pickings([...usual, ['one-a', 20, 62, 3100]]);
    const green = folder['2026/harvests.csv']!.split('\n').map((line, i) =>
      line === '' ? '' : `${line},${i === 0 ? 'stage' : i === 5 ? 'green' : ''}`,
    );
    expect(doubts({ '2026/harvests.csv': green.join('\n') })).toEqual([]);
    const slow = [1, 2, 1, 2, 24].map((fruits, i) => ['one-a', 5 * i, fruits, 12 * fruits] as const);
    expect(doubts(pickings(slow))).toEqual([]);
  });
  it.each([
    ['ounces for grams', 5, 250 / 28.35, 'unit-seems-wrong 6 8.8 g'],
    ['grams for ounces', 5, 250 * 28.35, 'unit-seems-wrong 6 7088 g'],
    ['pounds for grams', 5, 250 / 453.6, 'unit-seems-wrong 6 0.55 g'],
    ['kilograms for grams', 5, 0.25, 'unit-seems-wrong 6 0.25 g'],
    ['grams for kilograms', 5, 250_000, 'unit-seems-wrong 6 250000 g'],
  ])('%s', (_, fruits, grams, expected) => {
    expect(doubts(pickings([...usual, ['one-a', 20, fruits, grams]]))).toEqual([expected]);
  });
  it('fruits and weight in each other’s column, of a row and of a whole sheet', () => {
    expect(doubts(pickings([...usual, ['one-a', 20, 260, 5]]))).toEqual(['fruits-and-weight-swapped 6 5 g']);
    expect(doubts(pickings(usual.map(([id, at, fruits, grams]) => [id, at, grams, fruits] as const)))).toEqual([
      'fruits-and-weight-swapped - 22 g',
    ]);
    // Fruits of a fifth of a gram, as wild peppers have them.
    expect(doubts(pickings(usual.map(([id, at, fruits]) => [id, at, 10 * fruits, 2 * fruits] as const)))).toEqual([]);
  });
  it('a fruit that is merely small or large is none', () => {
    expect(doubts(pickings([...usual, ['one-a', 20, 5, 50]]))).toEqual([]);
    expect(doubts(pickings([...usual, ['one-a', 20, 1, 400]]))).toEqual([]);
  });
  it('two plantings whose fruits are those of each other’s variety', () => {
    const of = (large: readonly string[], small: readonly string[]) => {
      const all = [...large.map((id) => [id, 100] as const), ...small.map((id) => [id, 12] as const)];
      return doubts(pickings(all.flatMap(([id, each]) => [0, 6].map((at) => [id, at, 5, each * 5 + at] as const))));
    };
    expect(of(['one-a', 'one-b', 'three-a'], ['two-a', 'two-b', 'four-b'])).toEqual([]);
    expect(of(['one-a', 'two-b', 'three-a'], ['two-a', 'one-b', 'four-b'])).toEqual(['records-swapped 2 one-a']);
    expect(of(['one-a', 'one-b', 'two-b'], ['two-a'])).toEqual([]);
  });
  it('a whole season on one day', () => {
    const rows = (days: readonly number[]) =>
      ['one-a', 'two-a', 'three-a'].flatMap((id, i) =>
        days.map((at, k) => [id, at, 3 + i + k, 90 + 10 * i + k] as const),
      );
    expect(doubts(pickings(rows([40, 40])))).toEqual(['all-on-one-day -']);
    expect(doubts(pickings(rows([40, 41])))).toEqual([]);
    expect(doubts(pickings(rows([40])))).toEqual([]);
  });
});

describe('doubtful dates', () => {
  const dated = (days: readonly number[]) =>
    doubts(pickings(days.map((at, i) => [`${VARIETIES[i % 7]}-a`, at, 3 + i, 100 + i] as const)));
  it('one far from its neighbours in a table that goes by date', () => {
    expect(dated([0, 2, 5, 8, 70, 12, 15, 20])).toEqual(['date-unlike-neighbours 6']);
    expect(dated([40, 42, 45, 4, 49, 52, 55, 60])).toEqual(['date-unlike-neighbours 5']);
  });
  it('a whole visit with the wrong month, of several rows', () => {
    expect(dated([0, 0, 0, 12, 12, 75, 75, 75, 20, 20, 26, 26])).toEqual(['date-unlike-neighbours 7']);
  });
  it('not in a table that goes by planting, nor after a long pause', () => {
    expect(dated([0, 40, 80, 2, 45, 85, 3, 50, 90])).toEqual([]);
    expect(dated([0, 2, 5, 8, 12, 60, 64, 70])).toEqual([]);
    expect(dated([0, 70, 3, 5])).toEqual([]);
  });
});

describe('doubtful scores', () => {
  const scored = (lines: readonly (readonly [taster: string, scores: readonly number[]])[]) =>
    doubts({
      '2026/ratings.csv': `date,taster,variety,flavour\n${lines.flatMap(([taster, scores]) => scores.map((score, i) => `2026-09-01,${taster},${VARIETIES[i]},${score}`)).join('\n')}\n`,
    });
  it('one score for all, where others tell the varieties apart', () => {
    expect(
      scored([
        ['Ada', [6, 6, 6, 6, 6, 6]],
        ['Ben', [3, 7, 5, 6, 8, 4]],
      ]),
    ).toEqual(['taster-one-score - 6']);
    expect(
      scored([
        ['Ada', [6, 6, 6, 6, 6, 6]],
        ['Ben', [6, 6, 7, 6, 6, 7]],
      ]),
    ).toEqual([]);
    expect(
      scored([
        ['Ada', [6, 6, 6, 6, 6, 7]],
        ['Ben', [3, 7, 5, 6, 8, 4]],
      ]),
    ).toEqual([]);
    expect(
      scored([
        ['Ada', [6, 6, 6, 6, 6]],
        ['Ben', [3, 7, 5, 6, 8]],
      ]),
    ).toEqual([]);
  });
  it('not where most others say the same', () => {
    expect(
      scored([
        ['Ada', [1, 1, 1, 1, 1, 1]],
        ['Ben', [1, 1, 1, 1, 2, 3]],
      ]),
    ).toEqual([]);
  });
  it('of one taster alone, only away from the ends of the scale', () => {
    expect(scored([['Ada', [5, 5, 5, 5, 5, 5]]])).toEqual(['taster-one-score - 5']);
    expect(scored([['Ada', [1, 1, 1, 1, 1, 1]]])).toEqual([]);
  });
});

describe('rows written twice', () => {
  it('in every table of records, but not two fruits of one length', () => {
    expect(
      doubts(
        pickings([
          ['one-a', 0, 4, 200],
          ['one-a', 5, 4, 200],
          ['one-a', 0, 4, 200],
        ]),
      ),
    ).toEqual([`row-twice 4 ${day(0)}`]);
    const lines = (text: string) => `${text.split(' ').join('\n')}\n`;
    expect(
      doubts({ '2026/observations.csv': lines('date,planting,event 2026-07-01,one-a,unripe 2026-07-01,one-a,unripe') }),
    ).toEqual(['row-twice 3 2026-07-01']);
    expect(
      doubts({ '2026/ratings.csv': lines('date,taster,variety,flavour 2026-09-01,Ada,one,5 2026-09-01,Ada,one,5') }),
    ).toEqual(['row-twice 3 2026-09-01']);
    expect(
      doubts({ '2026/germination.csv': lines('variety,sown,seeds,germinated one,2026-03-01,9,8 one,2026-03-01,9,8') }),
    ).toEqual(['row-twice 3 2026-03-01']);
    expect(
      doubts({
        '2026/measurements.csv': lines('date,planting,length,width 2026-09-01,one-a,5,3 2026-09-01,one-a,5,3'),
      }),
    ).toEqual(['row-twice 3 2026-09-01']);
    expect(
      doubts({ '2026/measurements.csv': lines('date,planting,length 2026-09-01,one-a,5 2026-09-01,one-a,5') }),
    ).toEqual([]);
  });
});
