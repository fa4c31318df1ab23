import { nth } from './element.ts';

/**
 * Connected parts of a two-way table: row and column levels that share a filled cell belong together.
 *
 * @param rows     row level of each observation, 0-based
 * @param columns  column level of each observation, 0-based
 * @returns        part number of each row level and of each column level, numbered from 0 in order of rows
 */
export function connectedParts(
  rows: readonly number[],
  columns: readonly number[],
): { readonly ofRow: readonly number[]; readonly ofColumn: readonly number[]; readonly count: number } {
  const rowCount = Math.max(-1, ...rows) + 1;
  const columnCount = Math.max(-1, ...columns) + 1;
  const parent = Array.from({ length: rowCount + columnCount }, (_, i) => i);
  const top = (i: number): number => {
    let at = i;
    while (parent[at] !== at) at = parent[at] = nth(parent, nth(parent, at));
    return at;
  };
  rows.forEach((row, i) => {
    parent[top(rowCount + nth(columns, i))] = top(row);
  });
  const numbers = new Map<number, number>();
  const number = (i: number): number => {
    const key = top(i);
    const known = numbers.get(key) ?? numbers.size;
    numbers.set(key, known);
    return known;
  };
  const ofRow = Array.from({ length: rowCount }, (_, i) => number(i));
  const ofColumn = Array.from({ length: columnCount }, (_, i) => number(rowCount + i));
  return { ofRow, ofColumn, count: numbers.size };
}
