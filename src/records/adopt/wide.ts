import { idFrom } from '../../sheet/cells/ids.ts';
import { nth } from '../../numerics/element.ts';
import { isNothing } from './columnCells.ts';
import type { ColumnProposal } from './columnCells.ts';
import type { AdoptOptions } from './options.ts';
import { contentOf, traitKind } from './wideCells.ts';

/** Rows of tables in the contract's form, header first, by season. */
export type BySeason = ReadonlyMap<number | null, readonly (readonly string[])[]>;

/** What one sheet with a column a day becomes. */
export interface WideTables {
  readonly plantings: BySeason;
  readonly harvests: BySeason;
  readonly ratings: BySeason;
  readonly measurements: BySeason;
  readonly observations: BySeason;
}

/** Rows with their header, parted by season. */
export function collected(
  rows: readonly (readonly [number | null, readonly string[]])[],
  head: readonly string[],
): BySeason {
  const tables = new Map<number | null, (readonly string[])[]>();
  for (const [season, row] of rows) {
    const own = tables.get(season) ?? [head];
    own.push(row);
    tables.set(season, own);
  }
  return tables;
}

/** A planting's id for every row: what the sheet says, else made from the variety, numbered where it has several rows. */
function idsOf(
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
): readonly string[] {
  const planting = columns.findIndex(({ header }) => header === 'planting');
  const variety = columns.findIndex(({ header }) => header === 'variety');
  const key = (row: readonly string[], i: number): string => `${nth(seasons, i)}/${nth(row, variety)}`;
  const counts = new Map<string, number>();
  rows.forEach((row, i) => counts.set(key(row, i), (counts.get(key(row, i)) ?? 0) + 1));
  const given = new Map<string, number>();
  return rows.map((row, i) => {
    if (planting >= 0 && nth(row, planting) !== '') return nth(row, planting);
    const own = key(row, i);
    const number = (given.get(own) ?? 0) + 1;
    given.set(own, number);
    const id = idFrom(nth(row, variety), new Set());
    return counts.get(own) === 1 ? id : `${id}-${number}`;
  });
}

/** Scores, measures, and days of first ripe fruit. */
function notedIn(
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
  ids: readonly string[],
  traits: AdoptOptions['traits'],
): Omit<WideTables, 'plantings' | 'harvests'> {
  const scores = columns.flatMap((column, i) => (traitKind(column, traits) === 'rating' ? [i] : []));
  const measures = columns.flatMap((column, i) => (traitKind(column, traits) === 'measure' ? [i] : []));
  const variety = columns.findIndex(({ header }) => header === 'variety');
  const ratings = rows.flatMap((row, r) =>
    scores.flatMap((i) => {
      const cell = nth(row, i);
      if (isNothing(cell)) return [];
      return [[nth(seasons, r), [nth(row, variety), nth(ids, r), nth(columns, i).header ?? '', cell]] as const];
    }),
  );
  const measured = rows.flatMap((row, r) =>
    measures.every((i) => isNothing(nth(row, i)))
      ? []
      : [[nth(seasons, r), [nth(row, variety), nth(ids, r), ...measures.map((i) => nth(row, i))]] as const],
  );
  const ripe = columns.findIndex(({ header }) => header === 'first_ripe');
  const observations = rows.flatMap((row, r) =>
    ripe < 0 || isNothing(nth(row, ripe))
      ? []
      : [[nth(seasons, r), [nth(row, ripe), nth(ids, r), 'first-ripe']] as const],
  );
  return {
    ratings: collected(ratings, ['variety', 'planting', 'trait', 'score']),
    measurements: collected(measured, [
      'variety',
      'planting',
      ...measures.map((i) => nth(columns, i).header ?? nth(columns, i).title),
    ]),
    observations: collected(observations, ['date', 'planting', 'event']),
  };
}

/**
 * A sheet with a row a planting, a column a day and columns of scores as the tables of the contract: plantings, pickings
 * and scores. Every filled cell goes somewhere.
 *
 * @param rows     cells as they are kept, days year first
 * @param seasons  the season of every row
 * @param options  what the grower says of bare numbers under days, and the traits that are declared
 */
export function wideTables(
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
  { picked, traits }: Pick<AdoptOptions, 'picked' | 'traits'>,
): WideTables {
  const ids = idsOf(rows, seasons, columns);
  const at = (is: (column: ColumnProposal) => boolean): readonly number[] =>
    columns.flatMap((column, i) => (is(column) ? [i] : []));
  const days = at(({ why }) => why === 'day');
  const plain = at(
    (column) =>
      column.why !== 'day' &&
      traitKind(column, traits) === null &&
      !(column.header === null && column.why === 'said') &&
      column.header !== 'planting' &&
      column.header !== 'season' &&
      column.header !== 'first_ripe',
  );
  const contents = [...new Set(days.map((i) => contentOf(nth(columns, i), picked)))];
  const plantings = rows.map((row, r) => [nth(seasons, r), [nth(ids, r), ...plain.map((i) => nth(row, i))]] as const);
  const harvests = rows.flatMap((row, r) =>
    days.flatMap((i) => {
      const cell = nth(row, i);
      if (isNothing(cell)) return [];
      const own = contentOf(nth(columns, i), picked);
      const day = (nth(columns, i).header ?? '').slice(0, 10);
      return [[nth(seasons, r), [day, nth(ids, r), ...contents.map((one) => (one === own ? cell : ''))]] as const];
    }),
  );
  const heads = plain.map((i) => nth(columns, i).header ?? nth(columns, i).title);
  return {
    plantings: collected(plantings, ['planting', ...heads]),
    harvests: collected(harvests, ['date', 'planting', ...contents]),
    ...notedIn(rows, seasons, columns, ids, traits),
  };
}
