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
