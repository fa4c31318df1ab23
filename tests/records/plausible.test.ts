import { describe, expect, it } from 'vitest';
import { seemsSame } from '../../src/records/rules/nearNames.ts';
import { codes } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// What one table, or one season beside another, shows to be doubtful. Limits: common practice, no source.

const IDS = ['one', 'two', 'three', 'four'];
const YEARS = [2025, 2026];
/** Grams of a fruit of each variety. */
const EACH = [12, 30, 60, 110];
const day = (year: number, i: number): string => new Date(Date.UTC(year, 6, 20 + i)).toISOString().slice(0, 10);

interface Rows {
  readonly weight?: (grams: number, i: number, year: number) => number | string;
  readonly fruits?: (fruits: number, i: number, year: number) => number | string;
  readonly planting?: (id: string, i: number, year: number) => string;
  readonly heading?: string;
}

/** Pickings of two seasons, twelve of each variety, by date. */
function pickings({ weight = (own) => own, fruits = (own) => own, planting = (own) => own, heading }: Rows): Folder {
  return Object.fromEntries(
    YEARS.map((year) => {
      const rows = Array.from({ length: 48 }, (_, i) => {
        const count = [4, 7, 2, 9, 5, 12, 3][i % 7]!;
        const grams = Math.round(count * EACH[i % 4]! * [1, 0.94, 1.07, 1.02, 0.9][i % 5]!);
        const id = `${IDS[i % 4]}-${1 + (Math.floor(i / 4) % 2)}`;
        return `${day(year, i)},${planting(id, i, year)},${fruits(count, i, year)},${weight(grams, i, year)}`;
      });
      const head = heading !== undefined && year === 2026 ? heading : 'weight_g';
      return [`${year}/harvests.csv`, `date,planting,fruits,${head}\n${rows.join('\n')}\n`];
    }),
  );
}

/** Lengths of two seasons, six of each variety. */
function lengths(change: (cm: number, i: number, year: number) => number | string, head = 'fruit_length_cm'): Folder {
  return Object.fromEntries(
    YEARS.map((year) => {
      const rows = Array.from({ length: 24 }, (_, i) => {
        const cm = Math.round([3, 6, 10, 16][i % 4]! * [10, 9.3, 11.2, 10.4, 9.7][i % 5]!) / 10;
        return `${day(year, i)},${IDS[i % 4]}-1,${change(cm, i, year)}`;
      });
      const own = year === 2026 ? head : 'fruit_length_cm';
      return [`${year}/measurements.csv`, `date,planting,${own}\n${rows.join('\n')}\n`];
    }),
  );
}

function weather(change: (days: string[][]) => string[][]): Folder {
  const days = Array.from({ length: 150 }, (_, i) => {
    const date = new Date(Date.UTC(2026, 4, 15 + i)).toISOString().slice(0, 10);
    return [date, (9 + ((7 * i) % 41) / 10).toFixed(1), (19 + ((11 * i) % 73) / 10).toFixed(1)];
  });
  const rows = change(days).map((row) => row.join(','));
  return { '2026/weather.csv': `date,tmin_c,tmax_c\n${rows.join('\n')}\n` };
}

const scores = (rows: readonly string[]): Folder => ({
  '2026/ratings.csv': `date,taster,variety,flavour\n${rows.map((row) => `2026-09-01,${row}`).join('\n')}\n`,
});
const places = (rows: readonly string[]): Folder => ({
  '2026/plantings.csv': `planting,variety,bed,block,row,column,removed,cause,transplanted\n${rows.join('\n')}\n`,
  '2026/harvests.csv': 'date,planting,fruits,weight_g\n',
});
const PLANTINGS = `planting,variety\n${IDS.flatMap((id) => [`${id}-1,${id}`, `${id}-2,${id}`]).join('\n')}\n`;
const found = (more: Folder): readonly string[] =>
  codes({
    'trial.yaml':
      'title: A\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  fruit_length: {kind: measure, unit: cm}\n  fruit_width: {kind: measure, unit: cm}\nseasons: {2025: {transplanted: 2025-05-20}, 2026: {transplanted: 2026-05-20}}\n',
    'varieties.csv': `variety\n${IDS.join('\n')}\n`,
    '2025/plantings.csv': PLANTINGS,
    '2026/plantings.csv': PLANTINGS,
    ...pickings({}),
    ...more,
  });

describe('sizes of fruit', () => {
  it('as they are have nothing told', () => expect(found({})).toEqual([]));
  it('that no plant bears are an error, at each row', () => {
    expect(found(pickings({ heading: 'weight_kg' }))).toContain('figure-absurd 2026/harvests.csv:2:1');
    const heavy = pickings({ fruits: () => '', weight: (grams, i) => (i === 5 ? 150_000 : grams) });
    expect(found(heavy)).toContain('figure-absurd 2025/plantings.csv:5:1');
  });
  it('that are seldom are a warning, unless the species bears them', () => {
    const rows = pickings({ weight: (grams, i) => (i % 4 === 3 ? grams * 22 : grams) });
    expect(found(rows)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^figure-unlikely 2025\/harvests.csv:\d+:1$/)]),
    );
    const gourds = { 'varieties.csv': `variety,species\n${IDS.map((id) => `${id},Cucurbita pepo`).join('\n')}\n` };
    expect(found({ ...rows, ...gourds })).toEqual([]);
  });
  it.each(['weight_oz', 'weight_lb'])('under %s in one season are unlike the other season', (heading) => {
    expect(found(pickings({ heading }))).toContain('weights-unlike-seasons 2026/harvests.csv:-:-');
  });
  it('do not fit their length and width where the unit of a season known alone is wrong', () => {
    const measured = Array.from(
      { length: 8 },
      (_, i) => `2026-08-01,${IDS[i % 4]}-1,${[3, 5, 6, 9][i % 4]! + i / 10},${[2.6, 3.6, 5, 6][i % 4]}`,
    );
    const alone = (heading: string): Folder => ({
      ...pickings({ heading }),
      '2025/harvests.csv': 'date,planting,fruits,weight_g\n',
      '2026/measurements.csv': `date,planting,fruit_length_cm,fruit_width_cm\n${measured.join('\n')}\n`,
    });
    expect(found(alone('weight_g'))).toEqual(['table-without-rows 2025/harvests.csv:1:1']);
    expect(found(alone('weight_oz'))).toContain('weights-unlike-size 2026/harvests.csv:-:-');
  });
  it('far from the others of the variety are told in their row', () => {
    expect(found(pickings({ weight: (grams, i, year) => (i === 9 && year === 2026 ? 10 * grams : grams) }))).toEqual([
      'fruit-unlike-others 2026/harvests.csv:11:1',
    ]);
    expect(found(pickings({ weight: (grams, i) => (i === 9 ? 3 * grams : grams) }))).toEqual([]);
  });
});

describe('columns that slipped', () => {
  it('weights against numbers', () => {
    const list: number[] = [];
    const slipped = pickings({ weight: (grams) => (list.push(grams), list.at(-2) ?? grams) });
    expect(found(slipped)).toContain('weights-not-of-fruits 2026/harvests.csv:-:-');
  });
  it('plantings against fruit', () => {
    const turned = pickings({
      planting: (_, i, year) => (year === 2026 ? `${IDS[(i * 7 + (i % 3)) % 4]}-1` : `${IDS[i % 4]}-1`),
    });
    expect(found(turned)).toContain('fruits-not-of-variety 2026/harvests.csv:-:-');
  });
  it('a planting drawn down over others on a day', () => {
    const rows = ['one-1', 'one-1', 'one-1', 'two-1'].map((id, i) => `2026-08-01,${id},${3 + i},${100 + 7 * i}`);
    expect(found({ '2026/harvests.csv': `date,planting,fruits,weight_g\n${rows.join('\n')}\n` })).toContain(
      'picked-often-a-day 2026/harvests.csv:4:1',
    );
  });
  it('dates that some rows lack, not a table without any', () => {
    const dated = (dates: readonly string[]): Folder => ({
      '2026/harvests.csv': `date,planting,fruits,weight_g\n${dates.map((date, i) => `${date},${IDS[i]}-1,3,${90 + i}`).join('\n')}\n`,
    });
    expect(found(dated(['2026-08-01', '', '2026-08-02', '']))).toContain('date-missing 2026/harvests.csv:3:1');
    expect(found(dated(['', '', '', ''])).filter((code) => code.startsWith('date-missing'))).toEqual([]);
  });
});

describe('a handle drawn down', () => {
  it('fills a column with one figure, or with a series', () => {
    expect(found(pickings({ weight: (grams, i, year) => (year === 2026 && i > 9 && i < 22 ? 57 : grams) }))).toContain(
      'filled-down 2026/harvests.csv:12:1',
    );
    expect(
      found(pickings({ weight: (grams, i, year) => (year === 2026 && i > 9 && i < 22 ? 157 + i : grams) })),
    ).toContain('filled-series 2026/harvests.csv:12:1');
  });
  it('is not seen where figures repeat by themselves, or the sheet is sorted by them', () => {
    expect(found(pickings({ fruits: () => 1, weight: (_, i) => EACH[i % 4]! + (i % 3) }))).toEqual([]);
    expect(found(lengths((_, i) => [3, 6, 10, 16][i % 4]!))).toEqual([]);
  });
});

describe('measures', () => {
  it('as they are have nothing told', () => expect(found(lengths((cm) => cm))).toEqual([]));
  it('of nothing, or beyond anything, are errors', () => {
    expect(found(lengths((cm, i, year) => (i === 3 && year === 2026 ? 0 : cm)))).toEqual([
      'measure-zero 2026/measurements.csv:5:19',
    ]);
    expect(found(lengths((cm, i, year) => (i === 3 && year === 2026 ? 2100 : cm)))).toContain(
      'measure-absurd 2026/measurements.csv:5:19',
    );
  });
  it.each([10, 100, 0.1])('%s times as large as they are have their cell told', (times) => {
    expect(found(lengths((cm, i, year) => (i === 6 && year === 2026 ? cm * times : cm)))).toEqual([
      'measure-unlike-others 2026/measurements.csv:8:20',
    ]);
  });
  it.each(['fruit_length_in', 'fruit_length_mm'])('under %s are unlike the other season', (head) => {
    expect(found(lengths((cm) => cm, head))).toContain('measures-unlike-seasons 2026/measurements.csv:-:-');
  });
  it('sorted by themselves are of no variety', () => {
    const sheet = lengths((cm) => cm)['2026/measurements.csv']!;
    const sorted = sheet
      .trim()
      .split('\n')
      .slice(1)
      .map((row) => Number(row.split(',')[2]))
      .toSorted((a, b) => a - b);
    expect(found(lengths((cm, i, year) => (year === 2026 ? sorted[i]! : cm)))).toContain(
      'measures-not-of-variety 2026/measurements.csv:-:-',
    );
  });
  it('with a unit of their own beside that of the heading are a note', () => {
    expect(found(lengths((cm, i, year) => (i === 2 && year === 2026 ? `${cm / 2.54} in` : cm)))).toEqual([
      'unit-unlike-heading 2026/measurements.csv:4:20',
    ]);
    expect(found(lengths((cm) => `${cm} cm`))).toEqual([]);
  });
});

describe('weather', () => {
  const told = (change: (days: string[][]) => string[][]) => found(weather(change));
  it('as it is has nothing told', () => expect(told((days) => days)).toEqual([]));
  it('of another year', () => {
    expect(told((days) => days.map(([date, ...rest]) => [date!.replace('2026', '2025'), ...rest]))).toContain(
      'weather-of-other-year 2026/weather.csv:2:1',
    );
  });
  it('with a gap longer than is filled in, while plants stood out', () => {
    expect(told((days) => days.toSpliced(40, 5))).toEqual(['weather-gap 2026/weather.csv:42:1']);
    expect(told((days) => days.toSpliced(40, 3))).toEqual([]);
    expect(told((days) => days.slice(20))).toEqual(['weather-gap 2026/weather.csv:2:1']);
  });
  it('with half of a day', () => {
    expect(told((days) => days.map((row, i) => (i === 9 ? [row[0]!, '', row[2]!] : row)))).toEqual([
      'weather-half 2026/weather.csv:11:12',
    ]);
  });
  it('of a summer that none was', () => {
    expect(
      told((days) => days.map(([date, low, high]) => [date!, String(Number(low) - 25), String(Number(high) - 20)])),
    ).toEqual(['weather-unlikely 2026/weather.csv:-:-']);
  });
});

describe('names', () => {
  it.each([
    ['Ada Thorn', 'Ada', true],
    ['Ada Thorn', 'A. Thorn', true],
    ['Ada Thorn', 'A Thorn', true],
    ['Ada Thorn', 'Ada Thorn.', true],
    ['Ada Thorn', 'Ada Thonr', true],
    ['Ada Thorn', '\u0410da Thorn', true],
    ['Ada Maria Thorn', 'A. M. Thorn', true],
    ['Ada Thorn', 'Ada Moss', false],
    ['Ada Thorn', 'B. Thorn', false],
    ['Tim', 'Tom', false],
    ['Tim Ash', 'Tom Ash', false],
    ['T1', 'T2', false],
    ['T1', 'T11', false],
  ])('%s and %s: one person %s', (a, b, isOne) => expect(seemsSame(a, b, true)).toBe(isOne));
  it.each([
    ['row 1', '“row 1”', true],
    ['row 1', 'row 1.', true],
    ['row 1', 'r\u043ew 1', true],
    ['long bed', 'lnog bed', true],
    ['greenhouse', 'grenhouse', true],
    ['row 1', 'row 2', false],
    ['bed A', 'bed B', false],
    ['west bed', 'east bed', false],
    ['north', 'south', false],
  ])('%s and %s: one bed %s', (a, b, isOne) => expect(seemsSame(a, b, false)).toBe(isOne));
  it('of tasters that seem one are told, unless both scored the same', () => {
    expect(found(scores(['Ada Thorn,one,5', 'Ada Thorn,two,6', 'A. Thorn,three,7', 'Ben,one,4']))).toContain(
      'taster-near 2026/ratings.csv:4:12',
    );
    expect(found(scores(['Ada Thorn,one,5', 'Ada,one,6', 'Ben,two,7']))).not.toContain(
      'taster-near 2026/ratings.csv:3:12',
    );
    expect(found(scores(['Ada Thorn,one,5', 'ada thorn,two,6', 'Ben,two,7', 'Ben,one,4']))).toEqual([]);
  });
  it('of beds and blocks that seem one are told', () => {
    const told = found(places(['a,one,long bed,row 1,,,,,', 'b,two,lnog bed,row 1.,,,,,']));
    expect(told).toContain('bed-near 2026/plantings.csv:3:1');
    expect(told).toContain('block-near 2026/plantings.csv:3:1');
  });
});

describe('spots', () => {
  it('hold one planting at a time', () => {
    expect(found(places(['a,one,x,,1,1,,,', 'b,two,x,,1,1,,,']))).toContain('spot-twice 2026/plantings.csv:3:1');
    expect(found(places(['a,one,x,,1,1,,,', 'b,two,y,,1,1,,,']))).not.toContain('spot-twice 2026/plantings.csv:3:1');
    expect(found(places(['a,one,x,,1,1,2026-06-10,pest,', 'b,two,x,,1,1,,,2026-06-12']))).not.toContain(
      'spot-twice 2026/plantings.csv:3:1',
    );
  });
});

describe('rows and letters', () => {
  const table = (text: string): readonly string[] => found({ '2026/observations.csv': text });
  it('a row wider than its header is an error, unless most are', () => {
    const head = 'date,planting,event,notes';
    const row = '2026-08-01,one-1,unripe,';
    expect(table(`${head}\n${row}\n${row.replace('one', 'two')},\n${row.replace('one', 'three')}\n`)).toEqual([
      'row-too-long 2026/observations.csv:3:26',
    ]);
    expect(table(`${head}\n${row},\n${row.replace('one', 'two')},\n${row.replace('one', 'three')},\n`)).toEqual([]);
  });
  it('a header alone is a note', () => {
    expect(table('date,planting,event\n')).toEqual(['table-without-rows 2026/observations.csv:1:1']);
  });
  it.each([
    ['letter-lost', 'Mar\ufffdow'],
    ['control-character', 'Mar\u0007row'],
    ['backslash-in-cell', 'Marrow\\'],
    ['scripts-mixed', 'M\u0430rrow'],
    ['quote-in-cell', 'Mar"row'],
  ])('%s', (code, name) => {
    expect(found({ 'varieties.csv': `variety,name\none,${name}\ntwo,\nthree,\nfour,\n` })).toEqual([
      `${code} varieties.csv:2:5`,
    ]);
  });
  it.each(['Томат', 'μg', '5"', 'α-type', 'the "long" one', 'a\\b in notes'])('%j is nothing odd', (text) => {
    expect(
      found({ 'varieties.csv': `variety,notes\none,"${text.replaceAll('"', '""')}"\ntwo,\nthree,\nfour,\n` }),
    ).toEqual([]);
  });
});
