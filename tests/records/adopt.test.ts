import { describe, expect, it } from 'vitest';
import { proposeTable } from '../../src/records/adopt/propose.ts';
import type { AdoptOptions } from '../../src/records/adopt/options.ts';
import { adoptionText } from '../../src/present/adoption.ts';
import { codes } from '../sites/folder.ts';

const OPTIONS: AdoptOptions = {
  said: new Map(),
  table: null,
  season: null,
  order: null,
  picked: null,
  languages: ['en', 'de'],
  traits: new Map(),
};
const propose = (text: string, more: Partial<AdoptOptions> = {}) =>
  proposeTable({ path: 'club.csv', bytes: new TextEncoder().encode(text) }, { ...OPTIONS, ...more });
const headers = (text: string, more: Partial<AdoptOptions> = {}) =>
  propose(text, more).columns.map(({ header }) => header);
const asked = (text: string, more: Partial<AdoptOptions> = {}) =>
  propose(text, more).questions.map((own) => [own.kind, ...('title' in own ? [own.title] : [])].join(' '));
const tables = (text: string, more: Partial<AdoptOptions> = {}) =>
  Object.fromEntries(
    [...propose(text, more).tables].map(([year, rows]) => [String(year), rows.map((row) => row.join('|'))]),
  );

describe('what the columns of another sheet are', () => {
  it('are known by what people call them, in two languages, with units in all their places', () => {
    expect(headers('Pick date,Cultivar,Qty,Weight (oz),Remarks\n2026-08-03,Red,3,4.5,\n')).toEqual([
      'date',
      'variety',
      'fruits',
      'weight_oz',
      'notes',
    ]);
    expect(headers('Datum;Pflanze Nr.;Stück;Gewicht in g;Bemerkung\n2026-08-03;1;3;120;\n')).toEqual([
      'date',
      'planting',
      'fruits',
      'weight_g',
      'notes',
    ]);
    expect(headers('Erntedatum;Sorte;Gewicht [kg]\n2026-08-03;Rot;0,5\n')).toEqual(['date', 'variety', 'weight_kg']);
  });
  it('tell which table it is', () => {
    const kind = (text: string, more: Partial<AdoptOptions> = {}) => propose(text, more).table;
    expect(kind('date,variety,weight_g\n2026-08-03,a,5\n')).toBe('harvests');
    expect(kind('variety,plants,weight_g\na,3,500\n')).toBe('totals');
    expect(kind('planting,variety,weight_g,first_ripe\np1,a,500,2026-08-01\n')).toBe('season');
    expect(kind('variety,planted out,bed\na,2026-05-20,x\n')).toBe('plantings');
    expect(kind('date,min,max\n2026-05-20,8,20\n')).toBe('weather');
    expect(kind('Sorte,Aussaat,Samen,gekeimt\na,2026-03-01,9,8\n')).toBe('germination');
    expect(kind('date,taster,variety,trait,score\n2026-09-01,Ada,a,flavour,5\n')).toBe('ratings');
    expect(kind('date,variety,event\n2026-07-01,a,lost\n')).toBe('observations');
    expect(kind('variety,species,supplier\na,Capsicum annuum,x\n')).toBe('varieties');
    expect(kind('name,2026-08-03 g,2026-08-10 g\na,5,6\n')).toBe('harvests');
    expect(kind('date,taster,variety,Taste\n2026-09-01,Ada,a,5\n', { traits: new Map([['taste', 'rating']]) })).toBe(
      'ratings',
    );
  });
  it('are found below a title, and in a sheet that names its mark', () => {
    expect(headers('Our club, pickings of 2026\n\nDate;Variety;Fruits\n2026-08-03;a;3\n')).toEqual([
      'date',
      'variety',
      'fruits',
    ]);
    expect(headers('sep=;\nDate;Variety;Fruits\n2026-08-03;a;3\n')).toEqual(['date', 'variety', 'fruits']);
  });
});

describe('what is not guessed', () => {
  it('a unit, an order of day and month, a season, a table', () => {
    expect(asked('date,variety,weight\n2026-08-03,a,120\n')).toEqual(['no-unit weight']);
    expect(asked('date,variety,weight\n2026-08-03,a,120 g\n')).toEqual([]);
    expect(asked('date,variety,fruits\n03/08/2026,a,3\n04/09/2026,a,3\n')).toEqual(['date-order date']);
    expect(asked('date,variety,fruits\n03/08/2026,a,3\n14/09/2026,a,3\n')).toEqual([]);
    expect(asked('date,variety,fruits\n03/08/2026,a,3\n09/14/2026,a,3\n')).toEqual([]);
    expect(asked('date,variety,fruits\n13/08/2026,a,3\n09/14/2026,a,3\n')).toEqual(['date-order date']);
    expect(asked('variety,plants,weight_g\na,3,500\n')).toEqual(['no-season']);
    expect(asked('variety,colour of leaf\na,green\n')).toEqual(['which-table']);
    expect(asked('date,variety,fruits,count\n2026-08-03,a,3,3\n')).toEqual(['twice count']);
  });
  it('a cell that does not fit its column', () => {
    expect(asked('date,variety,fruits\nsoon,a,3\n')).toEqual(['date date', 'no-season']);
    expect(asked('date,variety,fruits\n2026-08-03,a,some\n')).toEqual(['number fruits']);
    expect(asked('date,variety,weight_g\n2026-08-03,a,heavy\n')).toEqual(['number weight_g']);
    expect(asked('date,variety,weight_g\n2026-08-03,a,<5\n2026-08-03,a,trace\n2026-08-03,a,NA\n')).toEqual([]);
  });
  it('what the grower says goes before all', () => {
    const sheet = 'date,variety,weight,odd\n03/08/2026,a,120,7\n';
    const said = new Map<string, string | null>([
      ['Weight', 'weight_oz'],
      ['odd', null],
    ]);
    expect(headers(sheet, { said, order: 'month-first' })).toEqual(['date', 'variety', 'weight_oz', null]);
    expect(tables(sheet, { said, order: 'month-first' })).toEqual({
      2026: ['date|variety|weight_oz', '2026-03-08|a|120'],
    });
    expect(asked(sheet, { said: new Map([['Wieght', 'weight_g']]), order: 'day-first' })).toEqual([
      'no-such-column Wieght',
      'no-unit weight',
    ]);
    const trait = { kind: 'rating', key: 'flavour', from: 1, to: 9 } as const;
    expect(asked('date,variety,fruits,odd\n2026-08-03,a,3,7\n', { said: new Map([['odd', trait]]) })).toEqual([
      'trait-elsewhere odd',
    ]);
  });
});

describe('a sheet with a row a plant and a column a day', () => {
  const head = 'Variety;# plants;Where;Date planted';
  const sheet = (days: string, cells: string): string =>
    `${head};${days};Taste;Grow again?\nAldersop;3;pots;20 May 2026;${cells};7-9;yes!\n`;
  const traits = new Map([['flavour', 'rating' as const]]);
  const made = (days: string, cells: string, more: object = {}) =>
    propose(sheet(days, cells), { traits, season: 2026, picked: 'g', ...more });

  it.each([
    ['25/07/2026;1/8/2026', ['2026-07-25', '2026-08-01']],
    ['25 Jul;1 Aug', ['2026-07-25', '2026-08-01']],
    ['25.7.;1.8.', ['2026-07-25', '2026-08-01']],
    ['2026-07-25;2026-08-01', ['2026-07-25', '2026-08-01']],
    ['7/25;8/1', ['2026-07-25', '2026-08-01']],
  ])('takes days written as %s', (days, expected) => {
    const { questions, beside } = made(days, '120;85');
    expect(questions).toEqual([]);
    const rows = beside.get('harvests')!.get(2026)!;
    expect(rows).toEqual([
      ['date', 'planting', 'weight_g'],
      [expected[0], 'aldersop', '120'],
      [expected[1], 'aldersop', '85'],
    ]);
  });

  it.each([
    ['25.7. g;1.8. fruits', '120;3', ['weight_g', 'fruits']],
    ['25 Jul (lb);1 Aug (lb)', '1.5;2', ['weight_lb']],
    ['25.7.;1.8.', '120 g;85 g', ['weight']],
  ])('knows what %s holds without being told', (days, cells, columns) => {
    const { questions, beside } = made(days, cells, { picked: null });
    expect(questions).toEqual([]);
    expect(beside.get('harvests')!.get(2026)![0]).toEqual(['date', 'planting', ...columns]);
  });

  it('asks what bare numbers are, and which way days go that have two readings', () => {
    const kinds = (days: string, more: object): readonly string[] =>
      made(days, '120;85', more).questions.map(({ kind }) => kind);
    expect(kinds('25.7.;1.8.', { picked: null })).toEqual(['days-unit']);
    expect(kinds('1/8;2/8', {})).toEqual(['date-order']);
    expect(kinds('1/8;2/8', { order: 'day-first' })).toEqual([]);
  });

  it('becomes plantings, pickings and scores; a scale that nobody declared is asked for', () => {
    const { table, tables, beside } = made('25.7.;1.8.', ';85');
    expect([table, [...beside.keys()]]).toEqual(['plantings', ['harvests', 'ratings']]);
    expect(tables.get(2026)![1]).toEqual(['aldersop', 'Aldersop', '3', 'pots', '2026-05-20']);
    expect(beside.get('ratings')!.get(2026)!.slice(1)).toEqual([
      ['Aldersop', 'aldersop', 'flavour', '7-9'],
      ['Aldersop', 'aldersop', 'again', 'yes!'],
    ]);
    const { questions } = made('25.7.;1.8.', ';85', { traits: new Map() });
    expect(questions.map(({ kind }) => kind)).toEqual(['scale']);
  });

  it('puts a measure where measures stand', () => {
    const own = new Map([...traits, ['length', 'measure' as const]]);
    const text = `${head};25.7.;length\nAldersop;3;pots;20 May 2026;120;9.5\nBramscar;3;pots;20 May 2026;80;\n`;
    const { beside, questions } = propose(text, { traits: own, season: 2026, picked: 'g' });
    expect(questions).toEqual([]);
    expect([...beside.keys()]).toEqual(['harvests', 'measurements']);
    expect(beside.get('measurements')!.get(2026)).toEqual([
      ['variety', 'planting', 'length'],
      ['Aldersop', 'aldersop', '9.5'],
    ]);
  });

  it('asks about every cell that no table could take, a question a column', () => {
    const rows = ['a few;7;yes', '120;ok;often', 'lots;good;no', '90;8;sometimes'].map(
      (cells, i) => `V${i};3;pots;20 May 2026;${cells}\n`,
    );
    const { questions } = propose(`${head};25.7.;Taste;Grow again?\n${rows.join('')}`, {
      traits,
      season: 2026,
      picked: 'g',
    });
    expect(questions.map((own) => Object.values(own).join(' '))).toEqual([
      'number 25.7. a few 2 4',
      'number Taste ok 3 4',
      'answer Grow again? often 3 5',
    ]);
  });

  it('asks how many plants there are before a count is taken for fruit, and for the season before any day', () => {
    const kinds = (text: string, more: Partial<AdoptOptions>): readonly string[] =>
      propose(text, { picked: 'g', ...more }).questions.map(({ kind }) => kind);
    const qty = 'Sort;Qty;Planted;25/07;01/08\nAldersop;5;11.5.;400;1200\nBramscar;4;12.5.;300;100\n';
    expect(kinds(qty, { season: 2026 })).toEqual(['plants']);
    expect(kinds(qty, { season: 2026, said: new Map([['Qty', 'plants']]) })).toEqual([]);
    expect(kinds(qty, { said: new Map([['Qty', 'plants']]) })).toEqual(['no-season']);
  });

  it('reads days without a year in the season of their row, and first ripe fruit as what was seen', () => {
    const text = 'Year,Variety,Plants,Planted,First ripe,3 Aug (g)\n2026,Aldersop,3,12 May,9 Aug,120\n';
    const { questions, tables: own, beside } = propose(text, { season: null, said: new Map([['3 Aug (g)', null]]) });
    expect([questions, own.get(2026)?.[1], beside.size]).toEqual([
      [],
      ['Aldersop', '3', '2026-05-12', '2026-08-09'],
      0,
    ]);
    const wide = propose('Variety,Plants,First ripe,3 Aug (g)\nAldersop,3,9 Aug,120\n', { season: 2026 });
    expect(wide.beside.get('observations')?.get(2026)?.[1]).toEqual(['2026-08-09', 'aldersop', 'first-ripe']);
  });

  it('leaves no column of figures behind without a word', () => {
    const odd = 'Variety,Plants,Weight (g),Girth\nAldersop,3,1200,14\nBramscar,2,900,11\n';
    const { questions } = propose(odd, { season: 2026 });
    expect(questions).toEqual([{ kind: 'unused', title: 'Girth', found: '14' }]);
  });
});

describe('what is written', () => {
  it('has days year first, one table a season, and every other cell as it was', () => {
    expect(
      tables('Datum;Sorte;Stück;Gewicht (g);Laune\n3. August 2025;Süße;3;120,5;gut\n13.08.2026;Süße;2;90,5;"a;b"\n', {
        order: 'day-first',
      }),
    ).toEqual({
      2025: ['date|variety|fruits|weight_g|Laune', '2025-08-03|Süße|3|120,5|gut'],
      2026: ['date|variety|fruits|weight_g|Laune', '2026-08-13|Süße|2|90,5|a;b'],
    });
  });
  it('is read without an error as the table it was taken for', () => {
    const { tables: made } = propose(
      'Tag;Sorte;Stück;Gewicht (g)\n03.08.2026;Süße Laterne;3;120,5\n13.08.2026;Süße Laterne;2;90,5\n',
    );
    const csv = made
      .get(2026)!
      .map((row) => `${row.map((cell) => (cell.includes(',') ? `"${cell}"` : cell)).join(',')}\n`)
      .join('');
    expect(
      codes({
        'trial.yaml': 'title: A\nseasons: {2026: {harvests: complete}}\n',
        'varieties.csv': 'variety,name\nsusse-laterne,Süße Laterne\n',
        '2026/plantings.csv': 'variety,transplanted\nsusse-laterne,2026-05-20\n',
        '2026/harvests.csv': csv,
      }),
    ).toEqual([]);
  });
  it('is shown with three rows as they are read, and with what must be said', () => {
    const text = adoptionText(
      'club.csv',
      propose('date,variety,weight_oz\n2026-08-03,a,4\n2026-08-04,b,8\n2026-08-05,c,1\n2026-08-06,d,2\n'),
    );
    expect(text).toContain('club.csv: 4 rows for harvests.csv of 2026');
    expect(text).toContain('  date 2026-08-03, variety a, weight 113.3980925 g\n');
    expect(text.split('\n').filter((line) => line.startsWith('  date 2026'))).toHaveLength(3);
    expect(adoptionText('club.csv', propose('date,variety,weight\n2026-08-03,a,120\n'))).toContain(
      '"weight" holds bare numbers such as 120: in which unit? Give --column "weight=weight_g"',
    );
    expect(adoptionText('x', propose(''))).toContain('This is no table that can be read');
  });
});

describe('what a tester found', () => {
  it('totals, units and headers among the rows are no records', () => {
    const found = propose(
      'Date,Variety,Qty,Weight\n,,no.,kg\n2026-08-03,a,3,0.2\nDate,Variety,Qty,Weight\n2026-08-10,b,2,0.3\nTotal,,5,0.5\n',
    );
    expect(found.questions).toEqual([]);
    expect([...found.tables]).toEqual([
      [
        2026,
        [
          ['date', 'variety', 'fruits', 'weight_kg'],
          ['2026-08-03', 'a', '3', '0.2'],
          ['2026-08-10', 'b', '2', '0.3'],
        ],
      ],
    ]);
    expect(found.leftOut).toEqual([2, 4, 6]);
    expect(tables('Sorte;03.08.2026;10.08.2026\nAda;300 g;200 g\nSumme;300 g;200 g\n', { order: 'day-first' })).toEqual(
      {
        2026: ['variety|2026-08-03|2026-08-10', 'Ada|300 g|200 g'],
      },
    );
  });
  it('Note is a grade or a remark, as its cells are', () => {
    expect(headers('Date,Variety,Count,Note\n2026-08-03,a,3,first\n')).toEqual(['date', 'variety', 'fruits', 'notes']);
    expect(asked('Datum;Verkoster;Sorte;Note\n2026-09-01;Ada;a;2\n')).toEqual(['trait-needed Note']);
    expect(asked('date,taster,variety,trait,score\n2026-09-01,Ada,a,flavour,2\n')).toEqual([]);
  });
  it('the number of plants is asked for where a column may hold it', () => {
    expect(asked('Type,Name,No,Planted out\nPepper,Ada,3,2026-05-20\n')).toEqual(['plants No']);
    expect(asked('Type,Name,No,Planted out\nPepper,Ada,3,2026-05-20\n', { said: new Map([['No', 'plants']]) })).toEqual(
      [],
    );
    expect(asked('Name,Planted out\nAda,2026-05-20\n')).toEqual([]);
  });
  it('two weights of a row, and a mark that may be one of thousands, are asked about', () => {
    expect(headers('Date,Variety,lb,Fruits\n2026-08-03,a,1,3\n')).toEqual(['date', 'variety', 'weight_lb', 'fruits']);
    expect(asked('Date,Variety,lb,oz\n2026-08-03,a,1,3\n')).toEqual(['two-weights oz']);
    expect(asked('Date,Variety,lb,oz\n2026-08-03,a,1,\n2026-08-04,a,,3\n')).toEqual([]);
    expect(asked('Datum;Sorte;Gewicht (g)\n2026-08-03;a;1.250\n2026-08-04;a;980\n')).toEqual(['thousands Gewicht (g)']);
  });
});

describe('what a reviewer found', () => {
  it('a row that cannot be read, or that goes beyond the header, stops the adoption', () => {
    expect(
      propose('Date,Variety,Weight (g)\n2026-08-01,A,100\n2026-08-02,B,"200\n2026-08-03,B,300\n').questions,
    ).toEqual([{ kind: 'fault', line: 3, found: '' }]);
    expect(propose('Date,Variety,Weight (g)\n2026-08-01,A,100,17\n').questions).toEqual([
      { kind: 'too-long', line: 2, found: '17' },
    ]);
  });
  it('what a sheet holds cannot reach into the terminal', () => {
    expect(
      adoptionText('club.csv', propose('Date,Variety,\u001b[31mX,Fruits\n2026-08-01,A\u001b]0;own\u0007,1,3\n')),
    ).not.toMatch(/(?!\n)\p{Cc}/u);
  });
});
