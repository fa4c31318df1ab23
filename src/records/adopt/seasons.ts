import type { RawRow } from '../../read/records.ts';
import type { DateReader, DateResult } from '../../sheet/cells/dates.ts';
import { waysToRead } from '../tables/pickedByDay.ts';
import { tidy } from './columnCells.ts';
import { nth } from '../../numerics/element.ts';
import type { ColumnProposal } from './columnCells.ts';
import { DAY_COLUMNS } from './meanings.ts';

/**
 * The season of each row: the one that was said, else what a column of years or its date says, else the only year of the
 * sheet, else that of the sheet's name.
 */
export function seasonsOf(
  rows: readonly (readonly string[])[],
  columns: readonly ColumnProposal[],
  said: number | null,
  named: number | null,
): readonly (number | null)[] {
  const yearIn = (text: string | undefined): number | null => {
    const year = /^(\d{4})(?:-\d{2}-\d{2}|$)/.exec(text ?? '')?.[1];
    return year === undefined ? null : Number(year);
  };
  const written = columns.findIndex(({ header }) => header === 'season');
  const dated = columns.findIndex(({ header }) => header === 'date');
  if (said !== null) return rows.map(() => said);
  if (written >= 0) return rows.map((row) => yearIn(row[written]));
  if (dated >= 0) return rows.map((row) => yearIn(row[dated]) ?? named);
  const days = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const heads = columns.flatMap(({ header, why }) => (why === 'day' && header !== null ? [header.slice(0, 10)] : []));
  const years = new Set([
    ...rows.flatMap((row) => days.flatMap((i) => yearIn(row[i]) ?? [])),
    ...heads.flatMap((day) => yearIn(day) ?? []),
  ]);
  return rows.map(() => (years.size === 1 ? nth([...years], 0) : named));
}

/** Reads a day of a row: where it has no year, with that of the row's season. */
export type ReadIn = (text: string, row: number) => DateResult;

export function readerIn(read: DateReader, yearOf: (row: number) => number | null): ReadIn {
  return (text, row) => {
    const plain = read(text);
    const year = yearOf(row);
    if (plain.kind === 'day' || year === null) return plain;
    const withYear = waysToRead(text, year).map(read);
    return withYear.find(({ kind }) => kind === 'day') ?? plain;
  };
}

/** The year that a row says in a column of years, else the sheet's. */
export function yearsOf(columns: readonly ColumnProposal[], rows: readonly RawRow[], named: number | null) {
  const column = columns.findIndex(({ header }) => header === 'season');
  return (row: number): number | null => {
    const text = column < 0 ? '' : tidy(nth(rows, row).cells[column] ?? '');
    return /^(?:19|20)\d{2}$/.test(text) ? Number(text) : named;
  };
}
