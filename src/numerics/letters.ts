import { nth } from './element.ts';

/**
 * Compact letter display: two items share a letter if and only if they are not separated.
 *
 * @param count      items, the best first
 * @param separated  true where two items differ
 * @returns          letters of each item, `a` first for the best
 * @source Piepho (2004), J. Comput. Graph. Stat. 13:456 (insert and absorb)
 */
export function letterDisplay(count: number, separated: (i: number, j: number) => boolean): readonly string[] {
  let columns: ReadonlySet<number>[] = count > 0 ? [new Set(Array.from({ length: count }, (_, i) => i))] : [];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (!separated(i, j)) continue;
      const kept = columns.filter((column) => !(column.has(i) && column.has(j)));
      const split = columns
        .filter((column) => column.has(i) && column.has(j))
        .flatMap((column) => [without(column, i), without(column, j)]);
      columns = absorb([...kept, ...split]);
    }
  }
  const ordered = columns.map((column) => [...column].toSorted((a, b) => a - b)).toSorted(byMembers);
  return Array.from({ length: count }, (_, i) =>
    ordered.map((column, c) => (column.includes(i) ? letter(c) : '')).join(''),
  );
}

function without(column: ReadonlySet<number>, item: number): ReadonlySet<number> {
  const rest = new Set(column);
  rest.delete(item);
  return rest;
}

/** Drops columns that lie wholly inside another. */
function absorb(columns: readonly ReadonlySet<number>[]): ReadonlySet<number>[] {
  const within = (a: ReadonlySet<number>, b: ReadonlySet<number>): boolean =>
    a.size <= b.size && [...a].every((item) => b.has(item));
  return columns.filter(
    (own, i) => !columns.some((other, k) => k !== i && within(own, other) && (own.size < other.size || k < i)),
  );
}

function byMembers(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return nth(a, i) - nth(b, i);
  return a.length - b.length;
}

/** a … z, then aa, ab …; a second alphabet keeps its letters apart by a point. */
function letter(index: number): string {
  const alphabet = 'abcdefghijklmnopqrstuvwxyz';
  return index < 26 ? nth(alphabet, index) : `${nth(alphabet, index % 26)}${Math.floor(index / 26)}`;
}
