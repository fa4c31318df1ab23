import type { Place } from '../terms/place.ts';
import { foldHeader, ODD_LETTERS, STRAY_QUOTE } from '../terms/names.ts';
import { decodeText } from './decode.ts';
import type { Block } from './blocks.ts';
import type { Decoded, SheetRow, SourceFile } from './decode.ts';
import { DELIMITERS, findDelimiter, namedDelimiter } from './delimiter.ts';
import { placeOfCell, readRecords } from './records.ts';
import type { PlainLines, RawRow, RecordFault } from './records.ts';

export type TableFault =
  | { readonly kind: 'not-text' | 'empty-table' }
  | { readonly kind: 'not-utf8'; readonly line: number }
  | { readonly kind: 'too-many-columns'; readonly count: number }
  | RecordFault;

/** A table with its header found; its rows are read as they are asked for. */
export interface Table {
  readonly file: string;
  /** Column names as the contract compares them, in file order. */
  readonly columns: readonly string[];
  /** Column names as they stand in the file. */
  readonly titles: readonly string[];
  readonly header: RawRow;
  /** What parts the cells of its text; null for a sheet of a workbook. */
  readonly delimiter: string | null;
  /** Filled rows above the header. */
  readonly above: readonly RawRow[];
  /** False where no cell can hold a number with a decimal comma, or a point of thousands: no column needs a look ahead. */
  readonly mayHaveDecimalMarks: boolean;
  /** False where no cell can hold a letter that hardly belongs into a record. */
  readonly mayHaveOddLetters: boolean;
  /** Line of the first letter that was read as Windows-1252; null where the text is Unicode. */
  readonly windowsLine: number | null;
  /** Line of the last record where nothing ends it; null where something does. */
  readonly openLine: number | null;
  /** Rows below the header; plain ones, where something takes them, are not among them. */
  readonly rows: (plain?: PlainLines | null) => Generator<RawRow | RecordFault>;
  readonly placeOf: (row: RawRow, column: number) => Place;
}

/** True if these columns are those of the table that is looked for. */
export type HeaderTest = (columns: readonly string[]) => boolean;

const MOST_COLUMNS = 1000;
/** So many filled rows may stand above a header: a title, a date of printing, heads of groups. */
const MOST_ABOVE = 20;

const isOdd = (text: string): boolean => ODD_LETTERS.test(text) || (text.includes('"') && STRAY_QUOTE.test(text));

/** True where a cell may hold a number with a decimal comma, or a point of thousands. */
function mayHoldMarks(text: string, delimiter: string): boolean {
  if (text.includes('.') && /\d\.\d{3}(?!\d)/.test(text)) return true;
  return delimiter === ',' ? text.includes('"') && /"[^"\n]*\d,\d/.test(text) : /\d,\d/.test(text);
}
const isFilled = (cell: string): boolean => cell.trim() !== '';
const filledCells = (row: RawRow): number => row.cells.filter(isFilled).length;

interface Head {
  readonly header: RawRow;
  readonly above: readonly RawRow[];
}

/** The first row that passes the test, where the rows above it hold at most half as many cells each. */
function findHead(rows: Iterable<RawRow | RecordFault>, after: number, isHeader: HeaderTest): Head | null {
  const above: RawRow[] = [];
  for (const row of rows) {
    if ('kind' in row || above.length > MOST_ABOVE) return null;
    if (row.line <= after) continue;
    const filled = filledCells(row);
    if (filled === 0) continue;
    if (isHeader(row.cells.map(foldHeader))) {
      return above.every((other) => 2 * filledCells(other) <= filled) ? { header: row, above } : null;
    }
    above.push(row);
  }
  return null;
}

/** The first filled row, whatever it holds. */
function firstRow(rows: Iterable<RawRow | RecordFault>, after: number): Head | TableFault {
  for (const row of rows) {
    if ('kind' in row) return row;
    if (row.line > after && row.cells.some(isFilled)) return { header: row, above: [] };
  }
  return { kind: 'empty-table' };
}

/** @param after  last line that is not handed to `plain` */
type Rows = (plain?: PlainLines | null, after?: number) => Iterable<RawRow | RecordFault>;

/** Characters of a table that is parsed once and kept while it is read; a longer one is parsed as it is asked for. */
const SMALL = 1 << 20;

/** Records of short tables by the mark between their cells: a table is opened by whoever asks what it is. */
const parsed = new WeakMap<SourceFile, Map<string, readonly (RawRow | RecordFault)[]>>();

function tableOf(
  head: Head,
  rows: Rows,
  rest: Pick<
    Table,
    'file' | 'delimiter' | 'mayHaveDecimalMarks' | 'mayHaveOddLetters' | 'windowsLine' | 'openLine' | 'placeOf'
  >,
): Table | TableFault {
  const { header, above } = head;
  if (header.cells.length > MOST_COLUMNS) return { kind: 'too-many-columns', count: header.cells.length };
  return {
    ...rest,
    columns: header.cells.map(foldHeader),
    titles: header.cells.map((cell) => cell.trim()),
    header,
    above,
    *rows(plain = null) {
      for (const row of rows(plain, header.line)) {
        if ('kind' in row) yield row;
        else if (row.line > header.line && row.cells.some(isFilled)) yield row;
      }
    },
  };
}

const NO_BLOCK: Block = { text: '', line: 1, records: null };

function openSheet(file: string, sheet: readonly SheetRow[], isHeader: HeaderTest): Table | TableFault {
  function* rows(): Generator<RawRow> {
    for (const { line, cells } of sheet) yield { line, cells, block: NO_BLOCK };
  }
  const head = findHead(rows(), 0, isHeader) ?? firstRow(rows(), 0);
  if ('kind' in head) return head;
  return tableOf(head, rows, {
    file,
    delimiter: null,
    openLine: null,
    windowsLine: null,
    mayHaveDecimalMarks: sheet.some(({ cells }) => cells.some((cell) => /\d,\d|\d\.\d{3}(?!\d)/.test(cell))),
    mayHaveOddLetters: sheet.some(({ cells }) => cells.some((cell) => isOdd(cell))),
    placeOf: ({ line }, column) => ({ file, line, column: column + 1 }),
  });
}

/** What is known of the text of a table. */
type TableText = Decoded & { readonly isOdd: boolean };

/** The last long table: it is opened more than once in a row, and its text is no small thing to keep. */
let lastLong: { readonly source: SourceFile; readonly text: TableText } | null = null;

function textOf(source: SourceFile): TableText {
  if (lastLong?.source === source) return lastLong.text;
  const decoded = decodeText(source.bytes);
  const text = { ...decoded, isOdd: decoded.kind === 'text' && isOdd(decoded.text) };
  if (source.bytes.length > SMALL) lastLong = { source, text };
  return text;
}

/**
 * Opens a table: encoding, delimiter and header are found out; no cell is judged.
 *
 * @param source    the file
 * @param isHeader  tells the header from rows above it; without one found the first filled row is the header
 * @returns         the table, or what keeps it from being one
 */
export function openTable(source: SourceFile, isHeader: HeaderTest = () => false): Table | TableFault {
  if (source.rows) return openSheet(source.path, source.rows, isHeader);
  const decoded = textOf(source);
  if (decoded.kind !== 'text') return decoded;
  const { text } = decoded;
  const named = namedDelimiter(text);
  const first = named?.delimiter ?? findDelimiter(text);
  const after = named?.line ?? 0;
  const rowsBy = (delimiter: string): Rows => {
    const read = (plain: PlainLines | null = null, line = 0) => readRecords(text, delimiter, plain, line);
    if (text.length > SMALL) return read;
    const known = parsed.get(source) ?? new Map<string, readonly (RawRow | RecordFault)[]>();
    parsed.set(source, known);
    const all = known.get(delimiter) ?? [...readRecords(text, delimiter)];
    known.set(delimiter, all);
    return (plain, line) => (plain ? read(plain, line) : all);
  };
  const candidates = named ? [first] : [first, ...DELIMITERS.filter((mark) => mark !== first)];
  const found = candidates.flatMap((delimiter) => {
    const head = findHead(rowsBy(delimiter)(), after, isHeader);
    return head ? [{ delimiter, head }] : [];
  })[0] ?? { delimiter: first, head: firstRow(rowsBy(first)(), after) };
  const { delimiter, head } = found;
  if ('kind' in head) return head;
  return tableOf(head, rowsBy(delimiter), {
    file: source.path,
    delimiter,
    openLine: /[\r\n]$/.test(text) ? null : (text.match(/\r\n|\n|\r/g)?.length ?? 0) + 1,
    windowsLine: decoded.windowsLine,
    mayHaveDecimalMarks: mayHoldMarks(text, delimiter),
    mayHaveOddLetters: decoded.isOdd,
    placeOf: (row, column) => placeOfCell(source.path, row, column, delimiter),
  });
}
