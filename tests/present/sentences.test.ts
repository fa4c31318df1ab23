import { describe, expect, it } from 'vitest';
import { classReport } from '../../src/present/classReport.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { classAdviceWords } from '../../src/present/nextSeason/classAdvice.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { classFigures } from '../../src/present/seasonFigures/class.ts';
import { plainUnits } from '../../src/present/units.ts';
import { check, comparedIn, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

/** Three plants each of three varieties; `rest` adds or replaces files. */
function garden(rest: Folder, plants = '1', year = '2026'): Folder {
  const ids = ['one', 'two', 'three'];
  return {
    'trial.yaml': `title: Sentences\nclasses: {a: {}}\ntraits: {flavour: {kind: rating, from: 1, to: 9, better: higher}}\nseasons: {${year}: {transplanted: ${year}-05-20, harvests: complete}}\n`,
    'varieties.csv': `variety,class\n${ids.map((id) => `${id},a`).join('\n')}\n`,
    [`${year}/plantings.csv`]: `planting,variety,plants\n${ids
      .flatMap((id) => [1, 2, 3].map((i) => `${id}-${i},${id},${i === 3 ? plants : '1'}`))
      .join('\n')}\n`,
    ...rest,
  };
}
const ids = ['one', 'two', 'three'].flatMap((id) => [1, 2, 3].map((i) => `${id}-${i}`));
const weights = (grams: (i: number) => number): string =>
  `date,planting,weight_g\n${ids.map((id, i) => `2026-08-0${1 + (i % 7)},${id},${grams(i)}`).join('\n')}\n`;

function said(folder: Folder) {
  const { trial } = check(folder);
  const source = {
    trial: trial!,
    seen: seenIn(folder),
    compared: comparedIn(folder),
    writing: writingOf(trial!.settings),
  };
  const report = classReport(source.trial, source.seen, source.compared, 'a', source.writing);
  return { report, figures: classFigures({ ...source, classId: 'a' }), text: plainUnits(JSON.stringify(report)) };
}

describe('a variety of which accidents took every plant', () => {
  const folder = garden({
    '2026/harvests.csv': weights((i) => 300 + 20 * i)
      .split('\n')
      .filter((row) => !row.includes(',three'))
      .join('\n'),
  });
  const lost = {
    ...folder,
    '2026/plantings.csv': folder['2026/plantings.csv']!.replace('plants\n', 'plants,removed,cause\n')
      .replaceAll(/^(three-\d,three,1)$/gm, '$1,2026-06-20,accident')
      .replaceAll(/^((?:one|two)-\d,\w+,1)$/gm, '$1,,'),
  };
  it('is said to be lost, not to have none of none ripe', () => {
    const { text, figures } = said(lost);
    expect(text).toContain('all 3 lost by accident');
    expect(text).not.toContain('0 of 0');
    const strips = figures.find(({ id }) => id === 'ripening-a')!;
    expect(JSON.stringify(strips.rows)).not.toContain('0 of 0');
    expect(JSON.stringify(strips.chart)).toContain('all 3 lost by accident');
  });
});

describe('a season of counted fruit alone', () => {
  it('draws no curve of a weight of nothing', () => {
    const harvests = `date,planting,fruits\n${ids.map((id, i) => `2026-08-0${1 + (i % 7)},${id},${3 + i}`).join('\n')}\n`;
    const { figures } = said(garden({ '2026/harvests.csv': harvests }));
    expect(figures.map(({ id }) => id)).not.toContain('cumulative-a');
    expect(said(garden({ '2026/harvests.csv': weights(() => 300) })).figures.map(({ id }) => id)).toContain(
      'cumulative-a',
    );
  });
});

describe('what the letters could tell apart', () => {
  it('is not said of plants that were all alike', () => {
    expect(said(garden({ '2026/harvests.csv': weights(() => 300) })).text).not.toContain('times another apart');
    expect(said(garden({ '2026/harvests.csv': weights((i) => 300 + 50 * (i % 3)) })).text).toMatch(
      /gives 1\.\d times another/,
    );
    expect(said(garden({ '2026/harvests.csv': weights((i) => 300 + (i % 3)) })).text).toMatch(
      /gives 1\.0\d times another/,
    );
  });
});

describe('the caution about plantings of several plants', () => {
  const caution = 'The first ripe fruit of a larger planting';
  it('stands where somebody watched for ripe fruit, and not else', () => {
    expect(said(garden({ '2026/harvests.csv': weights((i) => 300 + i) }, '4')).text).toContain(caution);
    const tasted = `date,taster,variety,flavour\n${['one', 'two', 'three'].map((id) => `2026-08-01,T,${id},5`).join('\n')}\n`;
    expect(said(garden({ '2026/ratings.csv': tasted }, '4')).text).not.toContain(caution);
  });
});

describe('tasters of a season known from totals', () => {
  it('are as many as were said', () => {
    const { 'trial.yaml': settings, 'varieties.csv': varieties } = garden({}) as Record<string, string>;
    const { text } = said({
      'trial.yaml': settings!,
      'varieties.csv': varieties!,
      '2026/totals.csv': 'variety,plants,flavour\none,3,7\ntwo,3,6\nthree,3,5\n',
    });
    expect(text).not.toContain('0 tasters');
    expect(text).toContain('one person’s taste');
  });
});

describe('a list of one', () => {
  it('earns its spot in so many seasons, and is not said to be 0.6 right', () => {
    const folder = garden({ '2026/harvests.csv': weights((i) => (i < 3 ? 900 : 250) + 20 * i) });
    const { trial } = check({ ...folder, 'trial.yaml': folder['trial.yaml']!.replace('{a: {}}', '{a: {spots: 1}}') });
    const seasons = trial!.seasons.map((season) => seasonSeen(trial!, season));
    const next = adviseNextSeason(trial!, seasons);
    const source = { trial: trial!, seasons, next, winters: [], writing: writingOf(trial!.settings) };
    const [list] = classAdviceWords(source, next.classes[0]!).list;
    expect(list).toMatch(/^The list for the spot: one\. It earns its spot in \d\d of 100 simulated seasons\.$/);
  });
});
