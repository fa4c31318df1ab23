import type { Place } from '../terms/place.ts';
import { foldHeader } from '../terms/names.ts';
import { decodeText } from './decode.ts';
import type { SourceFile } from './decode.ts';
import { findDelimiter } from './delimiter.ts';
import { placeOfCell, readRecords } from './records.ts';
import type { RawRow, RecordFault } from './records.ts';

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
  readonly delimiter: string;
  readonly header: RawRow;
  /** False where no cell can hold a number with a decimal comma, so that no column needs a look ahead. */
  readonly mayHaveDecimalCommas: boolean;
  /** Line of the first letter that was read as Windows-1252; null where the text is Unicode. */
  readonly windowsLine: number | null;
  readonly rows: () => Generator<RawRow | RecordFault>;
  readonly placeOf: (row: RawRow, column: number) => Place;
}

const MOST_COLUMNS = 1000;

function isBlank(row: RawRow): boolean {
  return row.cells.every((cell) => cell.trim() === '');
}

/**
 * Opens a CSV table: encoding, delimiter and header are found out; no cell is judged.
 *
 * @param source  the file
 * @returns       the table, or what keeps it from being one
 */
export function openTable(source: SourceFile): Table | TableFault {
  const decoded = decodeText(source.bytes);
  if (decoded.kind !== 'text') return decoded;
  const { text } = decoded;
  const delimiter = findDelimiter(text);
  let header: RawRow | null = null;
  for (const row of readRecords(text, delimiter)) {
    if ('kind' in row) return row;
    if (isBlank(row)) continue;
    header = row;
    break;
  }
  if (!header) return { kind: 'empty-table' };
  if (header.cells.length > MOST_COLUMNS) return { kind: 'too-many-columns', count: header.cells.length };
  const headerLine = header.line;
  return {
    file: source.path,
    windowsLine: decoded.windowsLine,
    columns: header.cells.map(foldHeader),
    titles: header.cells.map((cell) => cell.trim()),
    delimiter,
    header,
    mayHaveDecimalCommas: (delimiter === ',' ? /"[^"\n]*\d,\d/ : /\d,\d/).test(text),
    *rows() {
      for (const row of readRecords(text, delimiter)) {
        if ('kind' in row) yield row;
        else if (row.line > headerLine && !isBlank(row)) yield row;
      }
    },
    placeOf: (row, column) => placeOfCell(source.path, row, column, delimiter),
  };
}
