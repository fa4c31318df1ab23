import { describe, expect, it } from 'vitest';
import { whyTooLarge } from '../../src/read/workbookLimits.ts';

const xlsx = (sheet: string, strings = '', name = 'xl/worksheets/sheet1.xml'): ReadonlyMap<string, string> =>
  new Map([
    ['xl/workbook.xml', '<workbook/>'],
    ['xl/sharedStrings.xml', `<sst>${strings}</sst>`],
    [name, `<worksheet><sheetData>${sheet}</sheetData></worksheet>`],
  ]);
const ods = (rows: string): ReadonlyMap<string, string> =>
  new Map([['content.xml', `<office:body><table:table table:name="harvests">${rows}</table:table></office:body>`]]);
const cell = (attributes = ''): string => `<table:table-cell ${attributes}><text:p>5</text:p></table:table-cell>`;
const EMPTY_END =
  '<table:table-row table:number-rows-repeated="1048574"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>';

describe('what a workbook may hold', () => {
  it.each([
    ['records', xlsx('<row r="1"><c r="A1"/><c r="B1"/></row><row r="2"><c r="A2"/></row>')],
    ['one stray cell at the far end', xlsx('<row r="1"><c r="XFD1"/></row>')],
    [
      'records with empty cells to the end of the sheet',
      ods(`<table:table-row>${cell()}</table:table-row>${EMPTY_END}`),
    ],
    ['a name in a cell of its own form', xlsx('<row r="1"><c r="A1" t="inlineStr"><is><t>r="4"</t></is></c></row>')],
  ])('%s', (_, parts) => expect(whyTooLarge(parts)).toBeNull());
  it.each([
    [
      'a row of number 4,000,000,000',
      xlsx('<row r="4000000000"><c r="A4000000000"/></row>'),
      /rows; at most 1,048,576/,
    ],
    [
      'a cell in the last column on 60,000 rows',
      xlsx(Array.from({ length: 60_000 }, (_, i) => `<row r="${i + 1}"><c r="XFD${i + 1}"/></row>`).join('')),
      /more than 2,000,000 cells/,
    ],
    ['a column behind the last', xlsx('<row r="1"><c r="XFE1"/></row>'), /16,385 columns; at most 16,384/],
    [
      '200,000 merged cells',
      xlsx(`</sheetData>${'<mergeCell ref="A1:B2"/>'.repeat(200_000)}`),
      /merged cells; at most 10,000/,
    ],
    [
      'a text of 10 MB',
      xlsx('', `<si><t>${'x'.repeat(10_000_000)}</t></si>`),
      /a cell holds more than 100,000 letters/,
    ],
    ['a sheet under another name', xlsx('<row r="9999999"/>', '', 'xl/pictures/x.xml'), /rows; at most/],
    ['entities', xlsx('<!DOCTYPE x [<!ENTITY a "b">]>'), /no XML that a spreadsheet writes/],
    ['letters of two bytes', xlsx('<\0r\0o\0w\0'), /no XML that a spreadsheet writes/],
    [
      'a filled cell 2,000,000,000 times in a row',
      ods(`<table:table-row>${cell('table:number-columns-repeated="2000000000"')}</table:table-row>`),
      /columns; at most 16,384/,
    ],
    [
      'a row 2,000,000,000 times',
      ods(`<table:table-row table:number-rows-repeated="2000000000">${cell()}</table:table-row>`),
      /rows; at most 1,048,576/,
    ],
    [
      'a wide row very often',
      ods(
        `<table:table-row table:number-rows-repeated="100000">${cell('table:number-columns-repeated="900"')}</table:table-row>`,
      ),
      /more than 2,000,000 cells/,
    ],
    ['something else', new Map([['Index/Document.iwa', '']]), /neither an .xlsx nor an .ods/],
  ])('not %s', (_, parts, why) => expect(whyTooLarge(parts)).toMatch(why));
});
