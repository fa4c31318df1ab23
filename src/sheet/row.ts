import type { Place } from '../terms/place.ts';
import type { Day } from '../terms/day.ts';
import { isoDate } from '../terms/day.ts';
import type { RawRow } from '../read/records.ts';
import { INVISIBLES } from '../terms/names.ts';
import type { DateResult } from './cells/dates.ts';
import { mayBeBound, parseBound } from './cells/bounds.ts';
import { parseNumber } from './cells/numbers.ts';
import { parseQuantity } from './cells/quantity.ts';
import { isScientific, looksLikeDate, serialDays } from './cells/spreadsheet.ts';
import { unitWords } from './cells/units.ts';
import type { CheckContext } from './context.ts';
import type { KnownTable } from './knownTable.ts';
import { follow } from './dateTrail.ts';
import { keyed } from '../numerics/element.ts';

/** One row of a table whose header is understood. */
export interface Row {
  readonly from: KnownTable;
  readonly raw: RawRow;
  /** Columns whose cells hold what a spreadsheet left in place of a value: reported, and read as empty. */
  readonly marred: readonly number[];
}

const NOT_RECORDED = new Set(['', 'na', 'n/a', '-', '.']);

/** First letters of the words for "not recorded". */
const NOTHING_STARTS = new Set([...'-.nN'].map((letter) => letter.charCodeAt(0)));

/** Most cells: plain characters, so nothing to clean away, and none of the words for "not recorded". */
function isPlain(cell: string): boolean {
  for (let i = 0; i < cell.length; i++) {
    const code = cell.charCodeAt(i);
    if (code < 33 || code > 126) return false;
  }
  return cell.length > 3 || !NOTHING_STARTS.has(cell.charCodeAt(0));
}

/** A cell without what nobody sees, its odd blanks made plain ones; null where nothing is recorded. */
function clean(cell: string): string | null {
  if (cell === '') return null;
  if (isPlain(cell)) return cell;
  const text = cell
    .replaceAll(INVISIBLES, '')
    .replaceAll(/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, ' ')
    .trim();
  return text.length <= 3 && NOT_RECORDED.has(text.toLowerCase()) ? null : text;
}

/** Place of a cell; of the row where the column is absent; of a quantity, its filled cell. */
export function placeIn(row: Row, column: string): Place {
  const parts = row.from.quantity.get(column);
  const part = parts?.find(({ index }) => clean(row.raw.cells[index] ?? '') !== null) ?? parts?.[0];
  const index = row.from.index.get(column) ?? part?.index ?? 0;
  return row.from.table.placeOf(row.raw, index);
}

/** Text of a cell; null where nothing is recorded. */
export function textIn(row: Row, column: string): string | null {
  const index = row.from.index.get(column);
  return index === undefined ? null : clean(row.raw.cells[index] ?? '');
}

/** True if anything is written in a column, or in one of a quantity's. */
export function isFilled(row: Row, name: string): boolean {
  const plain = row.from.index.get(name);
  const all = plain === undefined ? (row.from.quantity.get(name) ?? []).map(({ index }) => index) : [plain];
  return all.some((i) => clean(row.raw.cells[i] ?? '') !== null);
}

/** A column as the grower called it; the contract's name for one that is not in the header. */
function titleOf(row: Row, column: string): string {
  const index = row.from.index.get(column) ?? row.from.quantity.get(column)?.[0]?.index;
  return (index === undefined ? undefined : row.from.table.titles[index]?.trim()) ?? column;
}

/** Text that must be there. */
export function neededIn(row: Row, column: string): string | null {
  const text = textIn(row, column);
  if (text === null && !row.marred.includes(row.from.index.get(column) ?? -1))
    row.from.log.add('value-missing', placeIn(row, column), '', { column: titleOf(row, column) });
  return text;
}

/** The two readings of an ambiguous date, for its message. */
export function readings(result: DateResult): Readonly<Record<string, string>> {
  if (result.kind !== 'ambiguous') return {};
  const shown = (day: Day | null): string => (day === null ? '–' : isoDate(day));
  return { dayFirst: shown(result.dayFirst), monthFirst: shown(result.monthFirst) };
}

export function dayIn(row: Row, column: string, { dates, log }: CheckContext): Day | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const result = dates(text);
  if (result.kind === 'day') {
    if (column === 'date') follow(row.from.trail, result.day, row.raw.line);
    return result.day;
  }
  const serial = result.kind === 'unreadable' ? serialDays(text) : null;
  if (serial) {
    log.add('date-serial', placeIn(row, column), text, { first: serial[0], second: serial[1] });
    return null;
  }
  const facts = { column, ...readings(result) };
  log.add(`date-${result.kind}`, placeIn(row, column), text, facts);
  return null;
}

function numberAt(row: Row, column: string): number | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const value = parseNumber(text, row.from.decimalCommas.has(keyed(row.from.index, column)));
  if (value === null) {
    row.from.log.add(whyUnreadable(text) ?? 'number-unreadable', placeIn(row, column), text, {
      column: titleOf(row, column),
    });
  }
  return value;
}

/** Why a number cannot be read, where a spreadsheet did it. */
export function whyUnreadable(text: string): 'number-scientific' | 'became-a-date' | null {
  if (isScientific(text)) return 'number-scientific';
  return looksLikeDate(text) ? 'became-a-date' : null;
}

/** Reports a limit or a trace where no figure can be made of it; false for anything else. */
export function reportBound(row: Row, text: string, place: Place, column: string): boolean {
  const bound = parseBound(text);
  if (bound === null) return false;
  row.from.log.add('bound-unused', place, text, { column: titleOf(row, column) });
  row.from.limited.push({ kind: bound.kind, column, written: text, place });
  return true;
}

/** A number that is not negative; null where nothing is recorded or it was reported. */
export function numberIn(row: Row, column: string): number | null {
  const value = numberAt(row, column);
  if (value !== null && value < 0) {
    row.from.log.add('number-negative', placeIn(row, column), textIn(row, column) ?? '', {
      column: titleOf(row, column),
    });
    return null;
  }
  return value;
}

/** A number of any sign. */
export const signedIn = (row: Row, column: string): number | null => numberAt(row, column);

/** A whole number that is not negative. */
export function countIn(row: Row, column: string): number | null {
  const value = numberIn(row, column);
  if (value !== null && !Number.isInteger(value)) {
    row.from.log.add('not-whole', placeIn(row, column), textIn(row, column) ?? '', { column: titleOf(row, column) });
    return null;
  }
  return value;
}

/** A figure of which only a limit is known, or that there was a trace. */
export type Limit = { readonly kind: 'below' | 'above'; readonly value: number } | { readonly kind: 'trace' };

/** What a table makes of a limit: a number that stands for it, or a word. */
export type TakeLimit<T> = (limit: Limit, column: string, written: string, place: Place) => T;

/** A whole number that is not negative, or what becomes of a limit to it. */
export function limitedCountIn<T>(row: Row, column: string, take: TakeLimit<T>): number | null | T {
  const cell = row.raw.cells[row.from.index.get(column) ?? -1];
  if (cell === undefined || !mayBeBound(cell)) return countIn(row, column);
  const text = textIn(row, column);
  const bound = text === null ? null : parseBound(text);
  if (text === null || bound === null) return countIn(row, column);
  if (bound.kind === 'trace') return take(bound, column, text, placeIn(row, column));
  const value = parseNumber(bound.limit, row.from.decimalCommas.has(keyed(row.from.index, column)));
  if (value !== null && value >= 0) return take({ kind: bound.kind, value }, column, text, placeIn(row, column));
  row.from.log.add('number-unreadable', placeIn(row, column), text, { column: titleOf(row, column) });
  return null;
}

/** A quantity in its stored unit, or what becomes of a limit to it. */
export function limitedQuantityIn<T>(row: Row, name: string, take: TakeLimit<T>): number | null | T {
  const { quantity, decimalCommas, table, log } = row.from;
  const parts = quantity.get(name) ?? [];
  for (const { index, unit, dimension } of parts) {
    const cell = row.raw.cells[index] ?? '';
    const text = mayBeBound(cell) ? clean(cell) : null;
    const bound = text === null ? null : parseBound(text);
    if (text === null || bound === null) continue;
    const place = table.placeOf(row.raw, index);
    const filled = parts.filter((part) => clean(row.raw.cells[part.index] ?? '') !== null);
    if (filled.length > 1) {
      log.add('quantity-twice', place, text, { quantity: titleOf(row, name) });
      return null;
    }
    if (bound.kind === 'trace') return take(bound, name, text, place);
    const result = parseQuantity(bound.limit, dimension, unit, decimalCommas.has(index));
    if (result.kind === 'value' && result.value >= 0)
      return take({ kind: bound.kind, value: result.value }, name, text, place);
    log.add('quantity-unreadable', place, text, { quantity: titleOf(row, name), units: unitWords(dimension) });
    return null;
  }
  return quantityIn(row, name);
}

/** A quantity in its stored unit; several columns of it may stand in a file, one filled in a row. */
export function quantityIn(row: Row, name: string, signed = false): number | null {
  const { log, table, decimalCommas, quantity } = row.from;
  let found: number | null = null;
  let filled = false;
  for (const { index, unit, dimension } of quantity.get(name) ?? []) {
    const text = clean(row.raw.cells[index] ?? '');
    if (text === null) continue;
    const place = (): Place => table.placeOf(row.raw, index);
    if (filled) {
      log.add('quantity-twice', place(), text, { quantity: titleOf(row, name) });
      continue;
    }
    filled = true;
    const result = parseQuantity(text, dimension, unit, decimalCommas.has(index));
    if (result.kind !== 'value') {
      if (reportBound(row, text, place(), name)) continue;
      const code = result.kind === 'unit-missing' ? 'unit-missing' : (whyUnreadable(text) ?? 'quantity-unreadable');
      log.add(code, place(), text, {
        quantity: titleOf(row, name),
        column: titleOf(row, name),
        units: unitWords(dimension),
      });
    } else if (result.value < 0 && !signed) log.add('number-negative', place(), text, { column: titleOf(row, name) });
    else {
      found = result.value;
      const isSaid = unit !== null && table.columns[index] !== name;
      if (isSaid && result.units.length > 0 && !result.units.some(({ factor }) => factor === unit.factor))
        log.add('unit-unlike-heading', place(), text);
    }
  }
  return found;
}

/** Cells of columns that the contract does not know, by their titles. */
export function unknownIn(row: Row): ReadonlyMap<string, string> {
  const cells = new Map<string, string>();
  for (const { index, title } of row.from.unknown) {
    const text = clean(row.raw.cells[index] ?? '');
    if (text !== null) cells.set(title, text);
  }
  return cells;
}
