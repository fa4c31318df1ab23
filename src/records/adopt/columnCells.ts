import { INVISIBLES } from '../../terms/names.ts';
import type { DateResult } from '../../sheet/cells/dates.ts';
import { parseQuantity } from '../../sheet/cells/quantity.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { COUNT_COLUMNS, DAY_COLUMNS, quantityDimension } from './meanings.ts';

/** A trait that the grower declares for a column, since no cell can tell its scale or unit. */
export interface AdoptedTrait {
  readonly kind: 'rating' | 'measure';
  readonly key: string;
  /** Scale of a rating; unit of a measure. */
  readonly from?: number;
  readonly to?: number;
  readonly unit?: string;
  /** Which end is better; without it what the key tells, if it does. */
  readonly better?: 'higher' | 'lower' | 'none';
}

/** What a column of another sheet is. */
export interface ColumnProposal {
  readonly title: string;
  /** Header of the contract; null where the column is kept as it is, or left out because the grower says so. */
  readonly header: string | null;
  readonly trait: AdoptedTrait | null;
  readonly why: 'said' | 'name' | 'trait' | 'day' | 'day-unclear' | 'scale' | 'unknown';
}

/** What keeps a sheet from being adopted as it is; none of it is guessed. */
export type Question =
  | { readonly kind: 'unreadable' | 'which-table' | 'no-season' }
  | {
      readonly kind: 'date-order' | 'no-unit' | 'twice' | 'number' | 'date' | 'thousands';
      readonly title: string;
      readonly found: string;
      readonly line: number | null;
    }
  | { readonly kind: 'plants' | 'trait-needed' | 'two-weights' | 'direction'; readonly title: string }
  | { readonly kind: 'scale' | 'unused' | 'days-unit'; readonly title: string; readonly found: string }
  | { readonly kind: 'fault' | 'too-long'; readonly line: number; readonly found: string }
  | { readonly kind: 'trait-elsewhere'; readonly title: string; readonly found: string }
  | { readonly kind: 'no-such-column'; readonly title: string; readonly found: string };

/** A cell without what nobody sees. */
export const tidy = (cell: string): string => cell.replaceAll(INVISIBLES, '').trim();
/** True where a cell records nothing. */
export const isNothing = (cell: string): boolean => /^(?:|na|n\/a|-|\.)$/i.test(cell);

/** A header without its unit. */
export const bare = (header: string): string =>
  Object.entries({ weight: 0, unusable_weight: 0, tmin: 0, tmax: 0, rain: 0 }).find(([name]) =>
    header.startsWith(`${name}_`),
  )?.[0] ?? header;

/** Questions about the cells of one column. */
export function questionsOf(
  { title, header }: ColumnProposal,
  cells: readonly { readonly text: string; readonly line: number; readonly row: number }[],
  read: (text: string, row: number) => DateResult,
): readonly Question[] {
  if (header === null) return [];
  const filled = cells.filter(({ text }) => !isNothing(text));
  const first = (
    kind: 'number' | 'date' | 'no-unit' | 'thousands',
    wrong: { text: string; line: number } | undefined,
  ): readonly Question[] => (wrong ? [{ kind, title, found: wrong.text, line: wrong.line }] : []);
  if (DAY_COLUMNS.has(header))
    return first(
      'date',
      filled.find(({ text, row }) => read(text, row).kind !== 'day'),
    );
  if (COUNT_COLUMNS.has(header))
    return first(
      'number',
      filled.find(({ text }) => !/^(?:[<>≤≥]=? ?)?\d+$|^trace$/i.test(text)),
    );
  const dimension = quantityDimension(bare(header));
  if (!dimension) return [];
  const unit = header === bare(header) ? null : unitOf(dimension, header.slice(bare(header).length + 1));
  const hasCommas = filled.every(({ text }) => !/\d\.\d/.test(text));
  const results = filled.map((cell) => ({
    ...cell,
    kind: parseQuantity(cell.text.replace(/^[<>≤≥]=? ?/, ''), dimension, unit, hasCommas).kind,
  }));
  const marked = filled.filter(({ text }) => /\d[.,]\d/.test(text));
  const isThousand = marked.every(({ text }) => /^[1-9]\d{0,2}[.,]\d{3}(?!\d)/.test(text));
  if (dimension === 'mass' && marked.length > 0 && isThousand) return first('thousands', marked[0]);
  return first(
    'no-unit',
    results.find(({ kind }) => kind === 'unit-missing'),
  ).concat(
    first(
      'number',
      results.find(({ kind, text }) => kind === 'unreadable' && !/^trace$/i.test(text)),
    ),
  );
}
