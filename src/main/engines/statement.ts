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

const KEYS = [0, 1, 2, 3] as const;

/** Rows by region, garden, season and planting, in order of code points. */
function byKey(a: TotalRow, b: TotalRow): number {
  for (const k of KEYS) {
    const [own, other] = [a[k]!, b[k]!];
    if (own !== other) return own < other ? -1 : 1;
  }
  return 0;
}

/** Rows in order of code points: every engine has an order of letters of its own, most often the same. */
export function inOrder(rows: readonly TotalRow[]): readonly TotalRow[] {
  const isSorted = rows.every((row, i) => i === 0 || byKey(rows[i - 1]!, row) < 0);
  const sorted = isSorted ? rows : rows.toSorted(byKey);
  sorted.forEach((row, i) => {
    if (i > 0 && byKey(sorted[i - 1]!, row) === 0)
      throw new EngineFault(`the engine gave ${row.slice(0, 4).join(', ')} twice`);
  });
  return sorted;
}
