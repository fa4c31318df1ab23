import { describe, expect, it } from 'vitest';
import { saidOfTrial } from '../laws/saidOfTrial.ts';
import type { Folder } from '../sites/folder.ts';

const settings = (language: string, rest: string): string =>
  `title: Pages\nlanguage: ${language}\ntraits: {flavour: {kind: rating, from: 1, to: 9, better: higher}, fruit_length: {kind: measure, unit: cm, better: none}, fruit_width: {kind: measure, unit: cm, better: none}}\n${rest}`;

/** Two plants each of some varieties in a season, with pickings, scores and measures of each. */
function season(year: number, ids: readonly string[], grams: (i: number) => number): Folder {
  const plants = ids.flatMap((id) => [`${id}-1,${id}`, `${id}-2,${id}`]);
  const rows = (each: (id: string, i: number) => string): string =>
    ids
      .flatMap((id) => [1, 2].map((k) => `${id}-${k}`))
      .map(each)
      .join('\n');
  return {
    [`${year}/plantings.csv`]: `planting,variety,transplanted\n${plants.map((row) => `${row},${year}-05-20`).join('\n')}\n`,
    [`${year}/harvests.csv`]: `date,planting,fruits,weight_g\n${rows((id, i) => `${year}-08-0${1 + (i % 7)},${id},${3 + i},${grams(i)}`)}\n`,
    [`${year}/ratings.csv`]: `date,taster,variety,flavour,again\n${ids
      .flatMap((id, i) =>
        ['Ada', 'Ben'].map(
          (taster, t) => `${year}-09-01,${taster},${id},${4 + ((i + t) % 4)},${i % 2 === 0 ? 'yes' : 'no'}`,
        ),
      )
      .join('\n')}\n`,
    [`${year}/measurements.csv`]: `date,planting,fruit_length_cm,fruit_width_cm\n${rows((id, i) => `${year}-08-20,${id},${6 + i / 4},${5 - i / 8}`)}\n`,
  };
}
const registry = (ids: readonly string[], classOf: (i: number) => string): string =>
  `variety,class\n${ids.map((id, i) => `${id},${classOf(i)}`).join('\n')}\n`;
const many = ['one', 'two', 'three', 'four', 'five', 'six'];

const TRIALS: Readonly<Record<string, (language: string) => Folder>> = {
  'one variety': (language) => ({
    'trial.yaml': settings(language, 'classes: {a: {name: Class A}}\n'),
    'varieties.csv': registry(['one'], () => 'a'),
    ...season(2026, ['one'], (i) => 300 + 40 * i),
  }),
  'nothing recorded': (language) => ({
    'trial.yaml': settings(language, 'classes: {a: {name: Class A}}\n'),
    'varieties.csv': registry(['one', 'two'], () => 'a'),
    '2026/plantings.csv': 'planting,variety\np1,one\np2,two\n',
  }),
  ties: (language) => ({
    'trial.yaml': settings(language, 'classes: {a: {name: Class A, check_variety: one, spots: 2}}\n'),
    'varieties.csv': registry(many, () => 'a'),
    ...season(2025, many.slice(0, 3), () => 400),
    ...season(2026, many, () => 400),
  }),
  'many classes': (language) => ({
    'trial.yaml': settings(
      language,
      `classes: {${many.map((_, i) => `c${i}: {name: Class ${i}, spots: 1}`).join(', ')}}\n`,
    ),
    'varieties.csv': registry(many, (i) => `c${i}`),
    ...season(2025, many, (i) => 200 + 90 * i),
    ...season(2026, many, (i) => 250 + 70 * i),
  }),
  'one season': (language) => ({
    'trial.yaml': settings(language, 'classes: {a: {name: Class A, check_variety: two, spots: 3}}\n'),
    'varieties.csv': registry(many, () => 'a'),
    ...season(2026, many, (i) => 200 + 111 * i),
  }),
};

describe.each(Object.keys(TRIALS))('the pages of a trial with %s', (name) => {
  it.each(['en-GB', 'de'])('have no slip in any sentence, in %s', (language) => {
    const { outcome, faults } = saidOfTrial(TRIALS[name]!(language));
    expect(outcome).toBe('site');
    expect(faults).toEqual([]);
  });
});
