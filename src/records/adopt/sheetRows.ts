import type { RawRow } from '../../read/records.ts';
import type { Table } from '../../read/table.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { NO_UNIT, unitWord } from '../../sheet/header.ts';
import { isTotalWord, repeatsHeader } from '../../sheet/rows.ts';
import { bare } from './columnCells.ts';
import type { ColumnProposal, Question } from './columnCells.ts';
import { DAY_COLUMNS, quantityDimension } from './meanings.ts';

/** The records of a sheet, with what its row of units says of its columns. */
export interface SheetRows {
  readonly columns: readonly ColumnProposal[];
  readonly rows: readonly RawRow[];
  /** Lines of totals, repeated headers and units, which are no records. */
  readonly leftOut: readonly number[];
  /** Rows that cannot be read, or have more cells than the header. */
  readonly questions: readonly Question[];
}

/** Columns with the units of a row that holds nothing but units; null where the row is a record. */
function withUnits(row: RawRow, columns: readonly ColumnProposal[]): readonly ColumnProposal[] | null {
  let named = 0;
  const made = columns.map((column, i) => {
    const word = unitWord(row.cells[i]);
    const dimension = column.header === null ? null : quantityDimension(bare(column.header));
    if (!dimension || !unitOf(dimension, word)) return NO_UNIT.test(word) ? column : null;
    named++;
    return { ...column, header: `${bare(column.header!)}_${word.toLowerCase()}` };
  });
  return named > 0 && made.every((column) => column !== null) ? made : null;
}

/** Separates the records of a sheet from what stands around them. */
export function sheetRows(table: Table, titled: readonly ColumnProposal[]): SheetRows {
  const rows: RawRow[] = [];
  const leftOut: number[] = [];
  const questions: Question[] = [];
  let columns = titled;
  let isFirst = true;
  const keys = titled.flatMap(({ header }, i) =>
    header === 'variety' || header === 'planting' || (header !== null && DAY_COLUMNS.has(header)) ? [i] : [],
  );
  for (const row of table.rows()) {
    if ('kind' in row) {
      questions.push({ kind: 'fault', line: row.line, found: '' });
      continue;
    }
    const beyond = row.cells.slice(titled.length).find((cell) => cell.trim() !== '');
    if (beyond !== undefined) questions.push({ kind: 'too-long', line: row.line, found: beyond.trim() });
    const units: readonly ColumnProposal[] | null = isFirst ? withUnits(row, titled) : null;
    const first = row.cells.find((cell) => cell.trim() !== '') ?? '';
    const isTotal = isTotalWord(first) || keys.some((i) => isTotalWord(row.cells[i] ?? ''));
    isFirst = false;
    if (units) columns = units;
    if (units || isTotal || repeatsHeader(row, table)) leftOut.push(row.line);
    else rows.push(row);
  }
  return { columns, rows, leftOut, questions: questions.slice(0, 3) };
}
