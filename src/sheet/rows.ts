import { foldHeader } from '../terms/names.ts';
import type { PlainLines, RawRow } from '../read/records.ts';
import { spreadsheetMark } from './cells/spreadsheet.ts';
import type { KnownTable } from './knownTable.ts';
import type { Row } from './row.ts';
import { reportLoneDates } from './dateTrail.ts';
import { reportOddLetters } from './oddLetters.ts';
import { nth } from '../numerics/element.ts';

const TOTAL =
  /^(?:(?:grand|sub)[ -]?)?totals?:?$|^sums?:?$|^(?:average|mean)s?:?$|^(?:gesamt|gesamtsumme|summe|mittel|mittelwert|durchschnitt):?$/i;
/** True for a word that heads a row of sums. */
export function isTotalWord(cell: string): boolean {
  return TOTAL.test(cell.trim());
}

/** True for a row of sums: a word for it where the row should say what it is about, or when. */
function isTotal(cells: readonly string[], { needed, index }: KnownTable, isName: (text: string) => boolean): boolean {
  if (!cells.some(isTotalWord)) return false;
  const says = (i: number): boolean => isTotalWord(cells[i] ?? '') && !isName(nth(cells, i).trim());
  if (!cells.some((_, i) => says(i))) return false;
  const date = index.get('date');
  const lacks = (i: number): boolean => (cells[i] ?? '').trim() === '' || says(i);
  return (date !== undefined && lacks(date)) || needed.some((group) => group.every(lacks));
}

/** True for a row that says what the header says. */
export function repeatsHeader({ cells }: RawRow, { columns }: KnownTable['table']): boolean {
  const first = (cells[0] ?? '').trimStart();
  const [letter, wanted] = [first.charCodeAt(0), nth(columns, 0).charCodeAt(0)];
  // Letters differ from their capitals by 32; nearly every row ends here.
  if (letter !== wanted && letter + 32 !== wanted && first !== '') return false;
  if (foldHeader(first) !== columns[0]) return false;
  return columns.every((column, i) => foldHeader(cells[i] ?? '') === column);
}

const SPACE = 32;
const HASH = 35;
const EQUALS = 61;
const LETTER_E = 69;
const TOTALS = 1;
const MARKS = 2;
/** By the code of a cell's first character: whether a word for a total, or what a spreadsheet leaves, may begin so. */
const BEGINS = Uint8Array.from({ length: 256 }, (_, code) => {
  const isMark = code <= SPACE || code === HASH || code === EQUALS || code === LETTER_E;
  return (/[tsgamd\s]/i.test(String.fromCharCode(code)) ? TOTALS : 0) + (isMark ? MARKS : 0);
});

/** Which of TOTALS and MARKS a row may hold: neither, for nearly every row. */
function mayHold(cells: readonly string[]): number {
  let found = 0;
  for (let i = 0; i < cells.length; i++) {
    const cell = nth(cells, i);
    if (cell.length > 0) found |= BEGINS[cell.charCodeAt(0)] ?? TOTALS + MARKS;
  }
  return found;
}
const NONE: readonly number[] = [];

/** Columns in which a spreadsheet left something in place of a value; each is reported. */
function marredIn(raw: RawRow, { table, log }: KnownTable): readonly number[] {
  let marred = NONE;
  for (let i = 0; i < raw.cells.length; i++) {
    const mark = spreadsheetMark(nth(raw.cells, i));
    if (mark === null) continue;
    log.add(mark, table.placeOf(raw, i), nth(raw.cells, i).trim());
    marred = [...marred, i];
  }
  return marred;
}

function withoutMarred(raw: RawRow, marred: readonly number[]): RawRow {
  return marred.length === 0 ? raw : { ...raw, cells: raw.cells.map((cell, i) => (marred.includes(i) ? '' : cell)) };
}

function reportWidth(raw: RawRow, { table, log }: KnownTable): void {
  const width = table.columns.length;
  const { cells } = raw;
  const facts = { cells: String(cells.length), columns: String(width) };
  const column = cells.length > width ? width : Math.max(0, cells.length - 1);
  log.add(cells.length > width ? 'row-too-long' : 'row-too-short', table.placeOf(raw, column), '', facts);
}

/** True for a row of which every cell beyond the header is empty; a row of another width is reported. */
function fits(raw: RawRow, from: KnownTable): boolean {
  const width = from.table.columns.length;
  const { cells } = raw;
  if (cells.length === width || (cells.length > width && cells.slice(width).every((cell) => cell.trim() === '')))
    return true;
  reportWidth(raw, from);
  return false;
}

/**
 * Reports rows that are wider than the header by empty cells: a mark too many, which moves every cell behind it. Where
 * most rows are equally wide it is the way in which the table was saved.
 *
 * @param widths  number of rows by their cells
 */
function reportWide(widths: ReadonlyMap<number, number>, from: KnownTable): void {
  const rows = [...widths.values()].reduce((sum, n) => sum + n, 0);
  const width = from.table.columns.length;
  const odd = new Set([...widths].flatMap(([cells, n]) => (cells > width && 2 * n <= rows ? [cells] : [])));
  if (odd.size === 0) return;
  for (const raw of from.table.rows()) if (!('kind' in raw) && odd.has(raw.cells.length)) reportWidth(raw, from);
}

/**
 * Rows of a table; what is no record, and rows with too many or too few cells, are reported and left out.
 *
 * @param isName  true for a name of the records, though it be a word for a total
 * @param plain   takes plain rows, which are as wide as the header; null for none
 */
export function* rowsOf(
  from: KnownTable,
  isName: (text: string) => boolean = () => false,
  plain: PlainLines | null = null,
): Generator<Row> {
  const { table, log, unitsLine } = from;
  const widths = new Map<number, number>();
  const width = table.columns.length;
  const counted: PlainLines | null = plain && {
    look: plain.look,
    take(line, raw) {
      widths.set(width, (widths.get(width) ?? 0) + 1);
      plain.take(line, raw);
    },
  };
  for (const raw of table.rows(counted)) {
    const start = { file: table.file, line: raw.line, column: 1 };
    if ('kind' in raw) {
      log.add(raw.kind, start);
      continue;
    }
    if (raw.line === unitsLine) continue;
    const may = mayHold(raw.cells);
    if (repeatsHeader(raw, table)) log.add('header-repeated', start);
    else if ((may & TOTALS) > 0 && isTotal(raw.cells, from, isName))
      log.add('total-row', start, raw.cells.find(isTotalWord)?.trim() ?? '');
    else if (fits(raw, from)) {
      widths.set(raw.cells.length, (widths.get(raw.cells.length) ?? 0) + 1);
      if (table.mayHaveOddLetters)
        reportOddLetters(raw.cells, from.index.get('notes'), (i) => table.placeOf(raw, i), log);
      const marred = (may & MARKS) > 0 ? marredIn(raw, from) : NONE;
      yield { from, raw: withoutMarred(raw, marred), marred };
    }
  }
  reportWide(widths, from);
  if (table.openLine !== null) log.add('last-line-open', { file: table.file, line: table.openLine, column: 1 });
  if (widths.size === 0) log.add('table-without-rows', { file: table.file, line: table.header.line, column: 1 });
  reportLoneDates(from.trail, table.file, log);
}
