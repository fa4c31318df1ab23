/** The one statement of a scale engine: exact integers, no join, no alias that shadows a column. */
export const TOTALS = `SELECT region, garden, season, planting, COUNT(*) AS rows_read, SUM(fruits) AS all_fruits, SUM(weight_mg) AS all_mg,
       MIN(CASE WHEN fruits > 0 OR weight_mg > 0 THEN date END) AS first_day
FROM harvests
GROUP BY region, garden, season, planting
ORDER BY region, garden, season, planting`;

/** A row of its result, cells as text in the order of its columns: sums and counts as whole numbers, the day as ISO 8601, empty where nothing is known. */
export type TotalRow = readonly string[];

/** What keeps an engine from giving totals, in words for the secretary. */
export class EngineFault extends Error {}

/** A table of pickings that an engine reads: where its rows come from. */
export interface Engine {
  readonly name: string;
  readonly totals: () => Promise<readonly TotalRow[]>;
}

const byCode = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Rows in order of code points: every engine has an order of letters of its own. */
export function inOrder(rows: readonly TotalRow[]): readonly TotalRow[] {
  const key = (row: TotalRow): string => row.slice(0, 4).join('\u0000');
  const sorted = rows.map((row) => [key(row), row] as const).toSorted(([a], [b]) => byCode(a, b));
  sorted.forEach(([own], i) => {
    if (i > 0 && sorted[i - 1]![0] === own)
      throw new EngineFault(`the engine gave ${own.replaceAll('\u0000', ', ')} twice`);
  });
  return sorted.map(([, row]) => row);
}
