// What a workbook may hold is counted in its XML before a library opens it: a few letters there can stand for billions
// of cells. The limits are far beyond any sheet of records and are named in the message.

/** Cells up to the last filled one of each row, over all sheets. */
const MOST_CELLS = 2_000_000;
const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
const MOST_MERGES = 10_000;
/** Letters of one cell; spreadsheets themselves keep 32,767. */
const LONGEST_CELL = 100_000;

const count = (n: number): string => n.toLocaleString('en');

/** Number of a column from its letters; 0 without any. */
function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = 26 * number + letter.charCodeAt(0) - 64;
  return number;
}

type Found = { readonly why: string } | { readonly cells: number };

const tooFar = (what: string, number: number, most: number): Found => ({
  why: `a sheet has ${count(number)} ${what}; at most ${count(most)} are read`,
});

/** Cells of a sheet of an .xlsx workbook, or why it is not to be opened. @source ECMA-376-1 (2016) §18.3.1: row, c */
function sheetCells(xml: string): Found {
  let [cells, width] = [0, 0];
  for (const [, name, reference = ''] of xml.matchAll(/<(?:\w+:)?(row|c)\b[^>]*?\br="([^"]{1,40})"/g)) {
    const [, letters = '', digits = ''] = /^([A-Z]*)(\d*)$/.exec(reference) ?? [];
    const column = columnNumber(letters);
    if (Number(digits) > MOST_ROWS) return tooFar('rows', Number(digits), MOST_ROWS);
    if (column > MOST_COLUMNS) return tooFar('columns', column, MOST_COLUMNS);
    if (name === 'row') {
      cells += width;
      width = 0;
    } else width = Math.max(width, column);
  }
  const merges = xml.split(/<(?:\w+:)?mergeCell /).length - 1;
  return merges > MOST_MERGES ? tooFar('merged cells', merges, MOST_MERGES) : { cells: cells + width };
}

/** Why the text of an .xlsx workbook's shared strings is not to be read. */
function whyNotStrings(xml: string): string | null {
  let start = 0;
  for (const { index } of xml.matchAll(/<\/(?:\w+:)?si>/g)) {
    if (index - start > 4 * LONGEST_CELL) return `a cell holds more than ${count(LONGEST_CELL)} letters`;
    start = index;
  }
  return xml.length - start > 4 * LONGEST_CELL ? `a cell holds more than ${count(LONGEST_CELL)} letters` : null;
}

const repeated = (attributes: string, of: 'columns' | 'rows'): number =>
  Number(new RegExp(`number-${of}-repeated="(\\d+)"`).exec(attributes)?.[1] ?? 1);

/** Cells of an .ods workbook, or why it is not to be opened. @source OASIS OpenDocument 1.3 (2021) part 3, §9.1 */
function contentCells(xml: string): Found {
  let [cells, rows, columns, width, times] = [0, 0, 0, 0, 1];
  const tokens = /<(\/?)table:(table-row|table-cell|covered-table-cell|table)\b([^>]*?)(\/?)>/g;
  for (const [, closing, name, attributes = '', empty] of xml.matchAll(tokens)) {
    if (name === 'table') rows = 0;
    else if (name === 'table-row' && closing) cells += width * times;
    else if (name === 'table-row') {
      times = repeated(attributes, 'rows');
      [columns, width] = [0, 0];
      rows += times;
      if (rows > MOST_ROWS) return tooFar('rows', rows, MOST_ROWS);
    } else if (!closing) {
      columns += repeated(attributes, 'columns');
      if (columns > MOST_COLUMNS) return tooFar('columns', columns, MOST_COLUMNS);
      if (empty === '' || attributes.includes('office:value')) width = columns;
      if (cells + width * times > MOST_CELLS) break;
    }
  }
  const merges = xml.split('number-rows-spanned=').length - 1;
  return merges > MOST_MERGES ? tooFar('merged cells', merges, MOST_MERGES) : { cells: cells + width * times };
}

/**
 * Whether a workbook holds no more than a sheet of records can.
 *
 * @param parts  its parts by name, as text where they are XML
 * @returns      why it is not to be opened, with the limit; null if it may be
 */
export function whyTooLarge(parts: ReadonlyMap<string, string>): string | null {
  if (!parts.has('xl/workbook.xml') && !parts.has('content.xml')) return 'it is neither an .xlsx nor an .ods workbook';
  let total = 0;
  for (const [name, xml] of parts) {
    if (/<!(?:DOCTYPE|ENTITY)|\0/i.test(xml)) return 'its parts are no XML that a spreadsheet writes';
    // A part may be called anything: what it is stands in it.
    const strings = /<(?:\w+:)?sst\b/.test(xml) ? whyNotStrings(xml) : null;
    if (strings !== null) return strings;
    const isSheet = /<(?:\w+:)?sheetData\b/.test(xml);
    const found = name === 'content.xml' ? contentCells(xml) : isSheet ? sheetCells(xml) : { cells: 0 };
    if ('why' in found) return found.why;
    total += found.cells;
    if (total > MOST_CELLS) return `it holds more than ${count(MOST_CELLS)} cells`;
  }
  return null;
}
