import { pickingsOf } from '../../src/terms/record.ts';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { openWorkbooks } from '../../src/main/workbooks.ts';
import { problemsDocument, problemText } from '../../src/present/problems.ts';
import type { SourceFile } from '../../src/read/decode.ts';
import { isoDate } from '../../src/terms/day.ts';

// Files made by LibreOffice 7.4 and Gnumeric 1.12 with spreadsheets/make.mjs from one sheet of typed cells.
const bytesOf = (name: string): Uint8Array => readFileSync(new URL(`./spreadsheets/${name}`, import.meta.url));
const textOf = (path: string, text: string): SourceFile => ({ path, bytes: new TextEncoder().encode(text) });
const settings = (dates: string, language: string): SourceFile =>
  textOf(
    'data/trial.yaml',
    `title: Sheets\ndates: ${dates}\nlanguage: ${language}\nseasons: {2026: {harvests: complete}}\n`,
  );
const TABLES = [
  textOf('data/varieties.csv', 'variety,name\nmuehlturm,Mühlturm\nhill-torch,"Hill “Torch”, late"\n'),
  textOf(
    'data/2026/plantings.csv',
    'planting,variety,plants,transplanted\nsüd 1,muehlturm,1,2026-05-20\nsüd 2,hill-torch,2,2026-05-20\n',
  ),
];

function pickedIn(files: readonly SourceFile[]) {
  const { trial, problems } = checkTrial(sortFiles(files, [], true));
  if (!trial) throw new Error(problems.map((problem) => problemText(problem)).join('\n'));
  return {
    codes: problems.map(({ code }) => code),
    picked: trial.seasons[0]!.plantings.flatMap((planting) =>
      pickingsOf(planting).map(({ day, ripe }) => [isoDate(day!), planting.id, ripe.fruits, ripe.grams]),
    ),
  };
}
const PICKED = [
  ['2026-08-03', 'süd 1', 3, 120.5],
  ['2026-09-01', 'süd 1', 11, 1234.5],
  ['2026-08-13', 'süd 2', 2, 90.25],
];
const ORDERS = { 'en-GB': 'day-first', 'en-US': 'month-first', 'de-DE': 'day-first' };

describe.each(Object.entries(ORDERS))('tables saved by LibreOffice in %s', (locale, order) => {
  describe.each(['comma', 'semicolon', 'tab', 'pipe'])('with %s', (delimiter) => {
    it.each(['utf-8', 'utf-16', 'windows-1252'])('in %s', (encoding) => {
      const bytes = bytesOf(`harvests.${locale}.${delimiter}.${encoding}.csv`);
      const found = pickedIn([settings(order, locale), ...TABLES, { path: 'data/2026/harvests.csv', bytes }]);
      expect(found).toEqual({ codes: encoding === 'windows-1252' ? ['read-as-windows'] : [], picked: PICKED });
    });
  });
  it('need the order of day and month to be set', () => {
    const bytes = bytesOf(`harvests.${locale}.comma.utf-8.csv`);
    const files = [settings('iso', locale), ...TABLES, { path: 'data/2026/harvests.csv', bytes }];
    expect(checkTrial(sortFiles(files, [], true)).problems.map(({ code }) => code)).toContain('date-ambiguous');
  });
});

describe('tables saved by Gnumeric without formats', () => {
  it.each(['comma.utf-8', 'semicolon.utf-8', 'comma.utf-16', 'semicolon.utf-16'])('%s', (kind) => {
    const file = { path: 'data/2026/harvests.csv', bytes: bytesOf(`gnumeric.${kind}.csv`) };
    const { problems } = checkTrial(sortFiles([settings('iso', 'en-GB'), ...TABLES, file], [], true));
    expect(
      problems.filter(({ code }) => code === 'date-serial').map(({ found, facts }) => [found, facts['first']]),
    ).toEqual([
      ['46237', '2026-08-03'],
      ['46247', '2026-08-13'],
      ['46266', '2026-09-01'],
    ]);
  });
});

describe('workbooks', () => {
  const sheetsOf = async (name: string, path: string) => openWorkbooks([{ path, bytes: bytesOf(name) }]);
  it.each(['libreoffice.xlsx', 'libreoffice.ods', 'gnumeric.xlsx', 'gnumeric.ods'])(
    '%s is read sheet by sheet',
    async (name) => {
      const path = `data/2026.${name.split('.')[1]}`;
      const { sheets, unread } = await sheetsOf(name, path);
      expect(unread).toEqual([]);
      expect(sheets.map((sheet) => sheet.path)).toEqual(
        ['varieties', 'plantings', 'harvests'].map((sheet) => `${path}#${sheet}`),
      );
      expect(pickedIn([settings('iso', 'en-GB'), ...sheets])).toEqual({ codes: [], picked: PICKED });
    },
  );
  it('stand in the folder of their season, or name the season in a sheet', async () => {
    const { sheets } = await sheetsOf('libreoffice.ods', 'data/2026/book.ods');
    expect(pickedIn([settings('iso', 'en-GB'), ...sheets]).picked).toEqual(PICKED);
    const named = sheets.map((sheet) => ({
      ...sheet,
      path: `data/club.ods#${sheet.path.endsWith('varieties') ? 'Varieties' : `2026 ${sheet.path.split('#')[1]}`}`,
    }));
    expect(pickedIn([settings('iso', 'en-GB'), ...named]).picked).toEqual(PICKED);
  });
  it.each(['xlsx', 'ods'])('place a mistake by sheet, row and cell, %s', async (kind) => {
    const { sheets } = await sheetsOf(`faults.${kind}`, `data/2026.${kind}`);
    const { trial, problems } = checkTrial(sortFiles([settings('iso', 'en-GB'), ...sheets], [], true));
    expect(trial).toBeNull();
    const lines = problems.map((problem) => problemText(problem).split('\n')[0]);
    expect(lines).toContain(`data/2026.${kind}, sheet harvests, D2 error spreadsheet-error`);
    expect(lines).toContain(`data/2026.${kind}, sheet harvests, B3 error unknown-planting`);
    const { problems: told } = JSON.parse(problemsDocument(problems)) as {
      problems: { code: string; places: unknown[] }[];
    };
    expect(told.find(({ code }) => code === 'unknown-planting')!.places).toEqual([
      { file: `data/2026.${kind}`, line: 3, column: 2, sheet: 'harvests', cell: 'B3' },
    ]);
  });
  it('a table that is there twice, and a sheet that is no table, are said', async () => {
    const { sheets } = await sheetsOf('libreoffice.xlsx', 'data/2026.xlsx');
    const other = { ...sheets[0]!, path: 'data/2026.xlsx#Shopping list' };
    const files = [settings('iso', 'en-GB'), TABLES[1]!, ...sheets, other];
    expect(
      checkTrial(sortFiles(files, [], true)).problems.map(({ code, facts }) => [code, facts['other'] ?? '']),
    ).toEqual([
      ['file-twice', 'data/2026/plantings.csv'],
      ['sheet-unknown', ''],
    ]);
  });
  it('that are none, or are cut off, or unpack without end, are refused', async () => {
    const why = async (bytes: Uint8Array) =>
      (await openWorkbooks([{ path: 'data/2026.xlsx', bytes }])).unread.map(({ detail }) => detail);
    expect(await why(new TextEncoder().encode('date,planting\n'))).toEqual(['it is not a workbook']);
    expect(await why(new Uint8Array())).toEqual(['it is not a workbook']);
    expect(await why(bytesOf('libreoffice.xlsx').subarray(0, 3000))).toEqual(['it is not a workbook']);
    const broken = Uint8Array.from(bytesOf('libreoffice.xlsx'));
    broken.fill(7, 1000, 3000);
    const told = await why(broken);
    expect(told.length).toBe(1);
  });
});

describe('what a workbook shows and what it holds', () => {
  // Made here with the library that reads them: what matters is the format of the cells.
  const rowsOf = async (cells: Readonly<Record<string, unknown>>, ref: string, merges: unknown[] = []) => {
    const { write } = await import('@e965/xlsx');
    const book = { SheetNames: ['harvests'], Sheets: { harvests: { ...cells, '!ref': ref, '!merges': merges } } };
    const bytes = new Uint8Array(write(book as never, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
    const { sheets } = await openWorkbooks([{ path: 'data/2026.xlsx', bytes }]);
    return sheets[0]!.rows!.map((row) => row.cells.join('|'));
  };
  const number = (v: number, z?: string) => ({ t: 'n', v, ...(z === undefined ? {} : { z }) });
  it('the unit and the per cent sign that a format adds stay with the number', async () => {
    const rows = await rowsOf(
      {
        A1: number(0.3, '0.0" kg"'),
        B1: number(0.065, '0.0%'),
        C1: number(0.12, '0.00" m"'),
        D1: number(1234.5, '#,##0.00'),
        E1: number(0.1 + 0.2),
        F1: { t: 'b', v: true },
        G1: number(12, '0\\ \\g'),
      },
      'A1:G1',
    );
    expect(rows).toEqual(['0.3 kg|6.5 %|0.12 m|1234.5|0.3|yes|12 g']);
  });
  it('a date merged down its day stands in every row of it, and in no empty one', async () => {
    const text = (v: string) => ({ t: 's', v });
    const rows = await rowsOf(
      { A1: text('date'), B1: text('planting'), A2: text('2026-08-03'), B2: text('p1'), B3: text('p2') },
      'A1:B5',
      [{ s: { r: 1, c: 0 }, e: { r: 4, c: 0 } }],
    );
    expect(rows).toEqual(['date|planting', '2026-08-03|p1', '2026-08-03|p2']);
  });
});

describe('workbooks that trip a reader', () => {
  const opened = async (cells: Readonly<Record<string, unknown>>, ref: string, merges: unknown[] = []) => {
    const { write } = await import('@e965/xlsx');
    const book = { SheetNames: ['harvests'], Sheets: { harvests: { ...cells, '!ref': ref, '!merges': merges } } };
    const bytes = new Uint8Array(write(book as never, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
    return openWorkbooks([{ path: 'data/2026.xlsx', bytes }]);
  };
  const number = (v: number, z?: string) => ({ t: 'n', v, ...(z === undefined ? {} : { z }) });
  it('a unit of a format that changes with the value is not taken', async () => {
    const { sheets } = await opened(
      { A1: number(340, '[>=1000]#,##0.0,"kg";0"g"'), B1: number(1340, '0.0," kg"'), C1: number(5, '0.0" kg"') },
      'A1:C1',
    );
    expect(sheets[0]!.rows![0]!.cells).toEqual(['340', '1340', '5 kg']);
  });
  it('a weight over merged rows is not the weight of each', async () => {
    const { sheets } = await opened({ A1: { t: 's', v: 'p1' }, B1: number(500), A2: { t: 's', v: 'p2' } }, 'A1:B2', [
      { s: { r: 0, c: 1 }, e: { r: 1, c: 1 } },
    ]);
    expect(sheets[0]!.rows!.map(({ cells }) => cells)).toEqual([
      ['p1', 'merged cells'],
      ['p2', 'merged cells'],
    ]);
  });
  it('a day that no calendar has is an error of the cell, not of the program', async () => {
    const { sheets, unread } = await opened({ A1: number(1e10, 'yyyy-mm-dd'), B1: number(5) }, 'A1:B1');
    expect([...unread, ...sheets.flatMap(({ rows }) => rows!.map(({ cells }) => cells))]).toEqual([['#VALUE!', '5']]);
  });
  it('a cell at the far end of a sheet does not fill the memory', async () => {
    const { sheets } = await opened({ A1: number(1), XFD1: number(2), A2: number(3) }, 'A1:XFD2');
    expect(sheets[0]!.rows!.map(({ cells }) => cells.length)).toEqual([1001, 1001]);
  });
  it('a list of parts that says two things is refused', async () => {
    const bytes = Buffer.from(bytesOf('libreoffice.xlsx'));
    const end = bytes.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
    const changed = (at: number, value: number): Buffer => {
      const copy = Buffer.from(bytes);
      copy.writeUInt16LE(value, at);
      return copy;
    };
    for (const wrong of [changed(end + 8, 0), changed(end + 10, 0), changed(end + 20, 7), changed(8, 0)]) {
      const { unread } = await openWorkbooks([{ path: 'data/2026.xlsx', bytes: wrong }]);
      expect(unread).toEqual([{ path: 'data/2026.xlsx', detail: 'its list of parts is broken' }]);
    }
  });
  it('a sheet called season is one sheet for everything', async () => {
    const rows = ['planting', 'variety', 'weight_g'].map((v, i) => [`${'ABC'[i]}1`, { t: 's', v }] as const);
    const { sheets } = await opened(
      { ...Object.fromEntries(rows), A2: { t: 's', v: 'p1' }, B2: { t: 's', v: 'muehlturm' }, C2: number(500) },
      'A1:C2',
    );
    const season = { ...sheets[0]!, path: 'data/club.xlsx#2026 Season' };
    const { trial, problems } = checkTrial(sortFiles([settings('iso', 'en-GB'), TABLES[0]!, season], [], true));
    expect([problems.map(({ code }) => code), trial?.seasons[0]!.plantings.map(({ id }) => id)]).toEqual([[], ['p1']]);
  });
});
