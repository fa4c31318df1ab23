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
      readonly kind: 'date-order' | 'no-unit' | 'twice' | 'number' | 'date' | 'thousands' | 'answer';
      readonly title: string;
      readonly found: string;
      readonly line: number | null;
      /** Lines of further such cells. */
      readonly more?: readonly number[];
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

/** A cell of a column, tidied, with its line and the number of its row. */
export interface CellText {
  readonly text: string;
  readonly line: number;
  readonly row: number;
}

type Asked = Extract<Question['kind'], 'number' | 'date' | 'no-unit' | 'thousands' | 'answer'>;

/** One question about all the cells that do not fit their column; none where all do. */
export function asksOf(kind: Asked, title: string, wrong: readonly CellText[]): readonly Question[] {
  const [one, ...rest] = wrong;
  return one ? [{ kind, title, found: one.text, line: one.line, more: rest.map(({ line }) => line) }] : [];
}

/** True for a number of fruits, a limit of one, or a trace. */
export const isCount = (text: string): boolean => /^(?:[<>≤≥]=? ?)?\d+$|^trace$/i.test(text);

/** Questions about the cells of one column. */
export function questionsOf(
  { title, header }: ColumnProposal,
  cells: readonly CellText[],
  read: (text: string, row: number) => DateResult,
): readonly Question[] {
  if (header === null) return [];
  const filled = cells.filter(({ text }) => !isNothing(text));
  const ask = (kind: Asked, isWrong: (cell: CellText) => boolean): readonly Question[] =>
    asksOf(kind, title, filled.filter(isWrong));
  if (DAY_COLUMNS.has(header)) return ask('date', ({ text, row }) => read(text, row).kind !== 'day');
  if (COUNT_COLUMNS.has(header)) return ask('number', ({ text }) => !isCount(text));
  const dimension = quantityDimension(bare(header));
  if (!dimension) return [];
  const unit = header === bare(header) ? null : unitOf(dimension, header.slice(bare(header).length + 1));
  const hasCommas = filled.every(({ text }) => !/\d\.\d/.test(text));
  const kindOf = ({ text }: CellText): string =>
    parseQuantity(text.replace(/^[<>≤≥]=? ?/, ''), dimension, unit, hasCommas).kind;
  const marked = filled.filter(({ text }) => /\d[.,]\d/.test(text));
  const isThousand = marked.every(({ text }) => /^[1-9]\d{0,2}[.,]\d{3}(?!\d)/.test(text));
  if (dimension === 'mass' && marked.length > 0 && isThousand) return asksOf('thousands', title, marked);
  return [
    ...ask('no-unit', (cell) => kindOf(cell) === 'unit-missing'),
    ...ask('number', (cell) => kindOf(cell) === 'unreadable' && !/^trace$/i.test(cell.text)),
  ];
}
