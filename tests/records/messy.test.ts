import { pickingsOf, totalsOf } from '../../src/terms/record.ts';
import { plantModel, ratingModel, ripenings } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import type { Day } from '../../src/terms/day.ts';
import { isoDate } from '../../src/terms/day.ts';
import { check, codes, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const SOUND: Folder = {
  'trial.yaml':
    'title: Slope\nlanguage: en-GB\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  fruit_length: {kind: measure, unit: cm}\n',
  'varieties.csv': 'variety,name\nridge-apron,Ridge Apron\nmoss-apron,Moss Apron\n',
  '2026/plantings.csv': 'planting,variety\np1,ridge-apron\np2,moss-apron\n',
};
const withHarvests = (text: string, more: Folder = {}): Folder => ({ ...SOUND, '2026/harvests.csv': text, ...more });

/** Day, planting, fruits and grams of every picking. */
function picked(folder: Folder): readonly string[] {
  const { trial } = check(folder);
  return trial!.seasons[0]!.plantings.flatMap((planting) =>
    pickingsOf(planting).map(
      ({ day, ripe }) => `${day === null ? '-' : isoDate(day)} ${planting.id} ${ripe.fruits} ${ripe.grams}`,
    ),
  );
}
const TWO = ['2026-08-03 p1 3 120', '2026-08-10 p2 2 90'];

describe('what stands around a table', () => {
  it.each([
    [
      'a line that names the mark',
      'sep=;\ndate;planting;fruits;weight_g\n2026-08-03;p1;3;120\n2026-08-10;p2;2;90\n',
      [],
    ],
    [
      'a title and a blank line above',
      'Marrowdale pickings 2026\n\ndate,planting,fruits,weight_g\n2026-08-03,p1,3,120\n2026-08-10,p2,2,90\n',
      ['rows-before-header 2026/harvests.csv:1:1'],
    ],
    [
      'a title above a table with another mark',
      'Pickings, by Ada, Ben\ndate;planting;fruits;weight_g\n2026-08-03;p1;3;120\n2026-08-10;p2;2;90\n',
      ['rows-before-header 2026/harvests.csv:1:1'],
    ],
    [
      'heads of groups above the header',
      'When and what,,How much,\ndate,planting,fruits,weight_g\n2026-08-03,p1,3,120\n2026-08-10,p2,2,90\n',
      ['rows-before-header 2026/harvests.csv:1:1'],
    ],
    [
      'units below the header',
      'date,planting,fruits,weight\n,,no.,g\n2026-08-03,p1,3,120\n2026-08-10,p2,2,90\n',
      ['units-row 2026/harvests.csv:2:1'],
    ],
    [
      'other units below the header',
      'date,planting,fruits,weight\n,,,(kg)\n2026-08-03,p1,3,0.12\n2026-08-10,p2,2,0.09\n',
      ['units-row 2026/harvests.csv:2:1'],
    ],
    [
      'the header again on the next page',
      'date,planting,fruits,weight_g\n2026-08-03,p1,3,120\nDate,Planting,Fruits,Weight g\n2026-08-10,p2,2,90\n',
      ['header-repeated 2026/harvests.csv:3:1'],
    ],
    [
      'totals at the foot',
      'date,planting,fruits,weight_g\n2026-08-03,p1,3,120\n2026-08-10,p2,2,90\nTotal,,5,210\n,Average:,2.5,105\n',
      ['total-row 2026/harvests.csv:4:1', 'total-row 2026/harvests.csv:5:1'],
    ],
    [
      'blank rows and columns at the end',
      'date,planting,fruits,weight_g,,\n2026-08-03,p1,3,120,,\n2026-08-10,p2,2,90,,\n,,,,,\n\n   \n',
      [],
    ],
    ['line ends of three kinds', 'date,planting,fruits,weight_g\r\n2026-08-03,p1,3,120\r2026-08-10,p2,2,90\n', []],
    [
      'blanks of all kinds and marks that nobody sees',
      '\ufeffdate,\u00a0planting ,fruits\u200b,weight_g\n2026-08-03,p1\u2060,\u20093 ,120\u00a0\n2026-08-10,\u200fp2,2,90 g\n',
      [],
    ],
  ])('%s', (_, text, expected) => {
    const folder = withHarvests(text);
    expect(codes(folder)).toEqual(expected);
    expect(picked(folder)).toEqual(TWO);
  });
  it('is not guessed at: a misspelt header is an error, and the rows below it are not taken for a title', () => {
    const text =
      'dat,plnting,fruits,weight_g\n2026-08-03,p1,3,120\ndate,planting,fruits,weight_g\n2026-08-10,p2,2,90\n';
    expect(codes(withHarvests(text))).toContain('column-missing 2026/harvests.csv:1:1');
  });
  it('leaves a planting called total alone where it is said what it is', () => {
    const folder = { ...SOUND, '2026/plantings.csv': 'planting,variety\ntotal,ridge-apron\np2,moss-apron\n' };
    expect(codes(folder)).toEqual([]);
    expect(check(folder).trial!.seasons[0]!.plantings.map(({ id }) => id)).toEqual(['total', 'p2']);
  });
});

describe('what a spreadsheet leaves in a cell is named as what it is', () => {
  const harvest = (row: string): readonly string[] =>
    codes(withHarvests(`date,planting,fruits,weight_g\n${row}\n2026-08-10,p2,2,90\n`));
  it.each([
    ['an error', '2026-08-03,p1,#REF!,120', 'spreadsheet-error 2026/harvests.csv:2:15'],
    ['an error of another program', '2026-08-03,p1,3,Err:502', 'spreadsheet-error 2026/harvests.csv:2:17'],
    ['an error in place of a name', '2026-08-03,#N/A,3,120', 'spreadsheet-error 2026/harvests.csv:2:12'],
    ['a column too narrow', '########,p1,3,120', 'column-too-narrow 2026/harvests.csv:2:1'],
    ['a formula', '2026-08-03,p1,=SUM(C2:C9),120', 'cell-formula 2026/harvests.csv:2:15'],
    ['a sum by hand', '2026-08-03,p1,=3+4,120', 'cell-formula 2026/harvests.csv:2:15'],
    ['a number with a power of ten', '2026-08-03,p1,3,1.2E+03', 'number-scientific 2026/harvests.csv:2:17'],
    ['a fraction that became a date', '2026-08-03,p1,3,02-Jan', 'became-a-date 2026/harvests.csv:2:17'],
    ['a number that became a date', '2026-08-03,p1,2026-02-01,120', 'became-a-date 2026/harvests.csv:2:15'],
    ['a planting that became a date', '2026-08-03,1-Mar,3,120', 'became-a-date 2026/harvests.csv:2:12'],
    ['a day number', '46237,p1,3,120', 'date-serial 2026/harvests.csv:2:1'],
  ])('%s', (_, row, expected) => {
    expect(harvest(row)[0]).toBe(expected);
  });
  it('says which days a day number can be', () => {
    const { problems } = check(withHarvests('date,planting,fruits\n46237,p1,3\n'));
    // Serial 46237 is 2026-08-03 in the base of 1900: 46,023 is 2026-01-01 (ECMA-376), and 214 days on.
    expect(problems.find(({ code }) => code === 'date-serial')!.facts).toEqual({
      first: '2026-08-03',
      second: '2030-08-04',
    });
  });
  it('does not take a note for a formula, nor a small number for a day', () => {
    expect(
      codes(withHarvests('date,planting,weight_g,notes\n2026-08-03,p1,3,= same as last week\n2026-08-10,p2,2,Early\n')),
    ).toEqual([]);
    expect(codes(withHarvests('date,planting,fruits\n4623,p1,3\n'))).toEqual(['date-unreadable 2026/harvests.csv:2:1']);
  });
});

describe('values as people write them', () => {
  const grams = (cell: string): number | string => {
    const folder = withHarvests(`date;planting;weight\n2026-08-03;p1;${cell}\n`);
    const [code] = codes(folder);
    return code ?? Math.round(pickingsOf(check(folder).trial!.seasons[0]!.plantings[0]!)[0]!.ripe.grams * 1000) / 1000;
  };
  // 1 oz = 28.349523125 g, 1 lb = 16 oz: NIST SP 811.
  it.each([
    ['1 lb 3 oz', 538.641],
    ['1lb3oz', 538.641],
    ['1 lb. 3 oz.', 538.641],
    ['3 1/2 oz', 99.223],
    ['3½ oz', 99.223],
    ['3\u00a0½\u00a0oz', 99.223],
    ['½ kg', 500],
    ['500g', 500],
    ['0.5 kg', 500],
    ['1 lb 3 lb', 'quantity-unreadable 2026/harvests.csv:2:15'],
    ['12 cm', 'quantity-unreadable 2026/harvests.csv:2:15'],
    ['1,234 g', 'number-ambiguous 2026/harvests.csv:2:15'],
    ['340', 'unit-missing 2026/harvests.csv:2:15'],
  ])('%s', (cell, expected) => {
    expect(grams(cell)).toBe(expected);
  });
  it('a decimal comma only where the column shows it, and thousands asked about', () => {
    const column = (...cells: readonly string[]): readonly string[] | string => {
      const folder = withHarvests(
        `date;planting;weight_kg\n${cells.map((cell, i) => `2026-08-0${i + 1};p1;${cell}`).join('\n')}\n`,
      );
      return codes(folder)[0] ?? picked(folder).map((text) => text.split(' ')[3]!);
    };
    expect(column('0,5', '1,25')).toEqual(['500', '1250']);
    expect(column('0,5', '1.25')).toBe('number-unreadable 2026/harvests.csv:2:15'.replace('number', 'quantity'));
    expect(column('1,234', '2')).toBe('number-ambiguous 2026/harvests.csv:2:15');
    expect(column('1,234', '1.234')).toBe('quantity-unreadable 2026/harvests.csv:2:15');
  });
  it('inches with a mark of any kind', () => {
    const length = (cell: string) =>
      check({ ...SOUND, '2026/measurements.csv': `date;planting;fruit_length\n2026-08-03;p1;${cell}\n` }).trial
        ?.seasons[0]!.measurements[0]!.value;
    for (const cell of ['3 1/2 in', '3½ in', '3½″', '3½”', '3 1⁄2 inches', '"3½"""'])
      expect(length(cell)).toBeCloseTo(8.89, 10);
  });
});

describe('missing, zero, a trace, and limits are kept apart', () => {
  const of = (fruits: string, weight: string) => {
    const folder = withHarvests(
      `date,planting,fruits,weight_g\n2026-08-03,p1,${fruits},${weight}\n2026-08-10,p1,2,100\n`,
    );
    const { trial } = check(folder);
    if (!trial) return codes(folder).slice(0, 1);
    const seen = seenIn(folder);
    const { grams, fruits: number } = seen.yields.get('p1')!;
    const limited = trial.seasons[0]!.limited.map(({ kind, column, written }) => `${kind} ${column} ${written}`);
    return [codes(folder).map((code) => code.split(' ')[0]), grams, number, ripenings(seen)[0]!.ripe, limited];
  };
  it('NA is not recorded, 0 is a real zero', () => {
    expect(of('3', '0.5')).toEqual([[], 100.5, 5, 75, []]);
    expect(of('0', '0')).toEqual([[], 100, 2, 82, []]);
    expect(of('NA', '60')).toEqual([['fruits-not-recorded'], 160, null, 75, []]);
  });
  it('below a limit counts as half of it', () => {
    expect(of('1', '<5')).toEqual([['value-below'], 102.5, 3, 75, ['below weight <5']]);
    expect(of('1', '≤ 1 oz')).toEqual([['value-below'], 100 + 28.349523125 / 2, 3, 75, ['below weight ≤ 1 oz']]);
    expect(of('<4', '30')).toEqual([['value-below'], 130, 4, 75, ['below fruits <4']]);
  });
  it('a trace was picked, and adds nothing', () => {
    expect(of('', 'trace')).toEqual([['value-trace'], 100, 2, 75, ['trace weight trace']]);
    expect(of('3', 'trace')).toEqual([['value-trace'], 100, 5, 75, ['trace weight trace']]);
  });
  it('over a limit leaves the figure unknown', () => {
    expect(of('1', '>20')).toEqual([['value-above'], null, 3, 75, ['above weight >20']]);
    expect(of('>20', '900')).toEqual([['value-above'], 1000, null, 75, ['above fruits >20']]);
  });
  it('makes no mean of a limit', () => {
    const folder: Folder = {
      ...SOUND,
      '2026/measurements.csv':
        'date,planting,fruit_length_cm\n2026-08-03,p1,<5\n2026-08-03,p1,12\n2026-08-03,p2,trace\n',
      '2026/ratings.csv': 'date,taster,variety,flavour\n2026-08-03,Ada,ridge-apron,>8\n',
    };
    expect(codes(folder)).toEqual([
      'bound-unused 2026/ratings.csv:2:28',
      'bound-unused 2026/measurements.csv:2:15',
      'bound-unused 2026/measurements.csv:4:15',
    ]);
    const [season] = check(folder).trial!.seasons;
    expect([season!.measurements.map(({ value }) => value), season!.scores]).toEqual([[12], []]);
    expect(season!.limited).toHaveLength(3);
  });
  it('a limit that is no number is an error', () => {
    expect(of('1', '<some')).toEqual(['quantity-unreadable 2026/harvests.csv:2:17']);
    expect(of('<x', '1')).toEqual(['number-unreadable 2026/harvests.csv:2:15']);
  });
});

describe('a pickings sheet with one column a day', () => {
  it('is read where the heads say what was counted or weighed', () => {
    const folder = withHarvests(
      'planting,2026-08-03 fruits,2026-08-03 g,10 Aug 2026 fruits,2026-08-10 (g)\np1,3,120,,\np2,,,2,90\n',
    );
    expect(codes(folder)).toEqual([]);
    expect(picked(folder)).toEqual(TWO);
  });
  it('takes the year of the season where a head has none, and a unit in the cell', () => {
    const folder = withHarvests('planting,3 Aug,10 Aug\np1,120 g,\np2,,0.09 kg\n');
    expect(codes(folder).map((code) => code.split(' ')[0])).toEqual([]);
    expect(picked(folder)).toEqual(['2026-08-03 p1 0 120', '2026-08-10 p2 0 90']);
  });
  it('refuses to guess what bare numbers are', () => {
    expect(codes(withHarvests('planting,2026-08-03,2026-08-10\np1,3,\np2,,2\n'))).toEqual([
      'date-column-unit 2026/harvests.csv:2:4',
      'date-column-unit 2026/harvests.csv:3:5',
    ]);
  });
  it('places what is wrong in its cell', () => {
    expect(codes(withHarvests('planting,2026-05-03 fruits,2026-08-10 fruits\np1,3,x\np9,,2\n')).toSorted()).toEqual([
      'number-unreadable 2026/harvests.csv:2:6',
      'outside-season 2026/harvests.csv:2:4',
      'unknown-planting 2026/harvests.csv:3:1',
    ]);
  });
});

describe('one sheet for a season', () => {
  it('has a row a planting with totals, first ripe day and scores', () => {
    const folder: Folder = {
      'trial.yaml': SOUND['trial.yaml']!,
      'varieties.csv': SOUND['varieties.csv']!,
      '2026/season.csv':
        'planting,variety,weight_g,fruits,first_ripe,flavour\np1,ridge-apron,1200,30,2026-08-01,7\np2,ridge-apron,900,20,2026-08-05,6\np3,moss-apron,400,40,2026-07-20,5\n',
    };
    expect(codes(folder)).toEqual([]);
    const seen = seenIn(folder);
    expect(plantModel(seen, 'yield')!.estimates.get('ridge-apron')).toMatchObject({
      n: 2,
      estimate: 1050,
      reason: null,
    });
    expect(ripenings(seen).map(({ ripe }) => ripe)).toEqual([73, 77, 61]);
    expect(ratingModel(seen, 'flavour')!.estimates.get('ridge-apron')).toMatchObject({ estimate: 6.5 });
    expect(isoDate(totalsOf(seen.season.plantings[0]!)!.firstRipe as Day)).toBe('2026-08-01');
  });
});

describe('what a tester found', () => {
  it('two weights of one day are an error, not the later of them', () => {
    expect(codes(withHarvests('planting,3 Aug lb,3 Aug oz\np1,1,3\np2,2,\n'))).toEqual([
      'quantity-twice 2026/harvests.csv:2:6',
    ]);
  });
  it('a head that looks like a day is read or refused, never left out', () => {
    expect(codes(withHarvests('planting,2026-08-03 g,10/08/2026 g\np1,300,200\n'))).toEqual([
      'date-ambiguous 2026/harvests.csv:1:23',
    ]);
    const dayFirst = { 'trial.yaml': `dates: day-first\n${SOUND['trial.yaml']}` };
    expect(
      picked(withHarvests('planting,03.08.2026 g,10.8. g,Mon 17 Aug g,24/8 g\np1,300,200,100,50\n', dayFirst)),
    ).toEqual(['2026-08-03 p1 0 300', '2026-08-10 p1 0 200', '2026-08-17 p1 0 100', '2026-08-24 p1 0 50']);
  });
  it('nothing picked needs no unit', () => {
    expect(picked(withHarvests('planting,3 Aug,10 Aug\np1,120 g,0\n'))).toEqual([
      '2026-08-03 p1 0 120',
      '2026-08-10 p1 0 0',
    ]);
  });
  it('totals and pickings of one planting are an error, not twice the yield', () => {
    const { '2026/plantings.csv': _, ...rest } = SOUND;
    expect(
      codes({
        ...rest,
        '2026/season.csv': 'planting,variety,weight_g\np1,ridge-apron,1000\n',
        '2026/harvests.csv': 'date,planting,weight_g\n2026-08-03,p1,310\n',
      }),
    ).toEqual(['totals-and-harvests 2026/harvests.csv:2:1']);
  });
  it('a point that may be one of thousands is asked about', () => {
    const german = { 'trial.yaml': SOUND['trial.yaml']!.replace('en-GB', 'de') };
    const sheet = (...cells: readonly string[]) =>
      `date;planting;fruits;weight_g\n${cells.map((cell, i) => `2026-08-0${i + 1};p1;${9 + i};${cell}`).join('\n')}\n`;
    expect(codes(withHarvests(sheet('1.250', '980', '2.105'), german))).toEqual([
      'number-ambiguous 2026/harvests.csv:2:17',
    ]);
    expect(codes(withHarvests(sheet('1.250', '980', '2.105')))).toEqual(['number-ambiguous 2026/harvests.csv:2:17']);
    expect(codes(withHarvests(sheet('1.250', '2.105').replace('weight_g', 'weight_kg')))).toEqual([]);
    expect(codes(withHarvests(sheet('1.250', '0.980').replace('weight_g', 'weight_kg'), german))).toEqual([]);
  });
  it('a comma in words is none of a number', () => {
    expect(
      codes(withHarvests('date,planting,weight_g,notes\n2026-08-03,p1,120,"1,250 g with the rotten ones"\n')),
    ).toEqual([]);
  });
  it('a total is one wherever its word stands, a name of the records never', () => {
    expect(codes(withHarvests('date,planting,fruits,weight_g,notes\n2026-08-03,p1,3,120,\n,p1,3,120,total\n'))).toEqual(
      ['total-row 2026/harvests.csv:3:1'],
    );
    const named = { '2026/plantings.csv': 'planting,variety\nSum,ridge-apron\np2,moss-apron\n' };
    expect(picked(withHarvests('date,planting,fruits,weight_g\n2026-08-03,Sum,3,120\n', named))).toEqual([
      '2026-08-03 Sum 3 120',
    ]);
  });
  it('a pound and two ounces need no blank between them', () => {
    const folder = withHarvests('date,planting,weight\n2026-08-03,p1,1lb2oz\n');
    expect(pickingsOf(check(folder).trial!.seasons[0]!.plantings[0]!)[0]!.ripe.grams).toBeCloseTo(18 * 28.349523125, 9);
    const area = {
      ...SOUND,
      '2026/plantings.csv': 'planting,variety,area\np1,ridge-apron,2 m2\np2,moss-apron,10 ft2\n',
    };
    expect(check(area).trial!.seasons[0]!.plantings.map(({ areaM2 }) => areaM2)).toEqual([2, 0.9290304]);
  });
  it('a limit where a number is needed is an error', () => {
    expect(
      codes({ ...SOUND, '2026/plantings.csv': 'planting,variety,plants\np1,ridge-apron,<3\np2,moss-apron,1\n' }),
    ).toEqual(['number-unreadable 2026/plantings.csv:2:16']);
  });
  it('a header and a row of units that differ are an error', () => {
    expect(codes(withHarvests('date,planting,weight_g\n,,kg\n2026-08-03,p1,0.3\n'))).toContain(
      'units-differ 2026/harvests.csv:2:3',
    );
  });
  it('one mistake has one message', () => {
    expect(codes(withHarvests('date,planting,weight_g\n2026-08-03,p1,12o\n'))).toEqual([
      'quantity-unreadable 2026/harvests.csv:2:15',
    ]);
    const rated = {
      ...SOUND,
      'trial.yaml': SOUND['trial.yaml']!.replace(
        'traits:',
        'traits:\n  heat: {kind: rating, from: 0, to: 9, better: none}',
      ),
    };
    const rows = (second: string) =>
      codes({
        ...rated,
        '2026/ratings.csv': `date,taster,variety,flavour,heat\n2026-09-01,Ada,ridge-apron,5,0\n2026-09-01,Ada,ridge-apron,${second}\n`,
      }).filter((code) => code.startsWith('row-twice'));
    expect(rows('5,0')).toEqual(['row-twice 2026/ratings.csv:3:1']);
    expect(rows('7,0')).toEqual([]);
  });
});

describe('what a reviewer found', () => {
  it('fruits over a limit without a weight leave the yield unknown', () => {
    const folder = withHarvests('date,planting,fruits,weight_g\n2026-08-01,p1,5,100\n2026-08-08,p1,>20,\n');
    expect(seenIn(folder).yields.get('p1')).toMatchObject({ grams: null, fruits: null });
  });
  it('a limit beside another weight of the row is an error', () => {
    expect(codes(withHarvests('date,planting,weight_g,weight_oz\n2026-08-01,p1,340,<5\n'))).toContain(
      'quantity-twice 2026/harvests.csv:2:19',
    );
  });
  it('a point in a whole number is asked about, in day sheets too', () => {
    expect(codes(withHarvests('date,planting,fruits,weight_g\n2026-08-01,p1,1.000,100\n'))).toEqual([
      'number-ambiguous 2026/harvests.csv:2:15',
    ]);
    const german = { 'trial.yaml': SOUND['trial.yaml']!.replace('en-GB', 'de') };
    expect(codes(withHarvests('planting;2026-08-01 g;2026-08-08 g\np1;1.234;1.100\np2;850;900\n', german))).toEqual([
      'number-ambiguous 2026/harvests.csv:2:4',
      'number-ambiguous 2026/harvests.csv:2:10',
    ]);
    expect(picked(withHarvests('planting;2026-08-01 g;2026-08-08 g\np1;0,5;1,25\n'))).toEqual([
      '2026-08-01 p1 0 0.5',
      '2026-08-08 p1 0 1.25',
    ]);
  });
  it('days with the month first are read; figures beside days are an error', () => {
    expect(picked(withHarvests('planting,3 Aug,Aug 17\np1,10 g,20 g\n'))).toEqual([
      '2026-08-03 p1 0 10',
      '2026-08-17 p1 0 20',
    ]);
    expect(codes(withHarvests('planting,3 Aug g,weight_g\np1,10,20\n'))).toEqual([
      'date-unreadable 2026/harvests.csv:1:18',
    ]);
    expect(codes(withHarvests('planting,2026-08-03 g,20260817 g\np1,10,20\n'))).toEqual([
      'date-unreadable 2026/harvests.csv:1:23',
    ]);
  });
  it('a unit below a header that has none is no contradiction', () => {
    const folder = { ...SOUND, '2026/measurements.csv': 'date,planting,fruit_length\n,,mm\n2026-08-03,p1,95\n' };
    expect(codes(folder)).toEqual(['units-row 2026/measurements.csv:2:1']);
    expect(check(folder).trial!.seasons[0]!.measurements[0]!.value).toBeCloseTo(9.5, 12);
  });
  it('a planting that stands twice has one message', () => {
    const { problems } = check({ ...SOUND, '2026/plantings.csv': 'planting,variety\np1,ridge-apron\nP1,moss-apron\n' });
    expect(problems.find(({ code }) => code === 'planting-twice')!.places).toHaveLength(1);
  });
  it('formulas that point to other sheets are formulas', () => {
    for (const cell of ['=Sheet2!A1', "='My sheet'!B2", '=Blatt_ä!$C3'])
      expect(codes(withHarvests(`date,planting,fruits\n2026-08-03,${cell},3\n`))[0]).toBe(
        'cell-formula 2026/harvests.csv:2:12',
      );
  });
});
