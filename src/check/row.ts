import type { Place } from '../terms/place.ts';
import type { Day } from '../terms/day.ts';
import { isoDate } from '../terms/day.ts';
import type { RawRow } from '../read/records.ts';
import { nearestName } from '../terms/names.ts';
import { parseNumber } from './cells/numbers.ts';
import { parseQuantity } from './cells/quantity.ts';
import { unitWords } from './cells/units.ts';
import type { CheckContext } from './context.ts';
import type { KnownTable } from './columns.ts';

/** One row of a table whose header is understood. */
export interface Row {
  readonly from: KnownTable;
  readonly raw: RawRow;
}

const NOT_RECORDED = new Set(['', 'na', 'n/a', '-', '.']);

/** Most cells: over three plain characters, so nothing to clean away and none of the words for "not recorded". */
function isPlain(cell: string): boolean {
  if (cell.length <= 3) return false;
  for (let i = 0; i < cell.length; i++) {
    const code = cell.charCodeAt(i);
    if (code < 33 || code > 126) return false;
  }
  return true;
}

const INVISIBLE = /[\u200b\ufeff]/;
const INVISIBLES = /[\u200b\ufeff]/g;

function clean(cell: string): string | null {
  if (cell === '') return null;
  if (isPlain(cell)) return cell;
  const text = (INVISIBLE.test(cell) ? cell.replaceAll(INVISIBLES, '') : cell).trim();
  return text.length <= 3 && NOT_RECORDED.has(text.toLowerCase()) ? null : text;
}

/** Rows of a table; rows with too many or too few cells are reported and left out. */
export function* rowsOf(from: KnownTable): Generator<Row> {
  const { table, log } = from;
  const width = table.columns.length;
  for (const raw of table.rows()) {
    if ('kind' in raw) {
      log.add(raw.kind, { file: table.file, line: raw.line, column: 1 });
      continue;
    }
    if (raw.cells.length !== width) {
      const extra = raw.cells.slice(width).some((cell) => cell.trim() !== '');
      if (raw.cells.length > width && !extra) {
        yield { from, raw };
        continue;
      }
      const facts = { cells: String(raw.cells.length), columns: String(width) };
      const column = raw.cells.length > width ? width : Math.max(0, raw.cells.length - 1);
      log.add(raw.cells.length > width ? 'row-too-long' : 'row-too-short', table.placeOf(raw, column), '', facts);
      continue;
    }
    yield { from, raw };
  }
}

/** Place of a cell; of the row where the column is absent. */
export function placeIn(row: Row, column: string): Place {
  const index = row.from.index.get(column) ?? row.from.quantity.get(column)?.[0]?.index ?? 0;
  return row.from.table.placeOf(row.raw, index);
}

/** Text of a cell; null where nothing is recorded. */
export function textIn(row: Row, column: string): string | null {
  const index = row.from.index.get(column);
  return index === undefined ? null : clean(row.raw.cells[index] ?? '');
}

/** Text that must be there. */
export function neededIn(row: Row, column: string): string | null {
  const text = textIn(row, column);
  if (text === null) row.from.log.add('value-missing', placeIn(row, column), '', { column });
  return text;
}

export function dayIn(row: Row, column: string, { dates, log }: CheckContext): Day | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const result = dates(text);
  if (result.kind === 'day') return result.day;
  const facts: Record<string, string> = { column };
  if (result.kind === 'ambiguous') {
    if (result.dayFirst !== null) facts['dayFirst'] = isoDate(result.dayFirst);
    if (result.monthFirst !== null) facts['monthFirst'] = isoDate(result.monthFirst);
  }
  log.add(`date-${result.kind}`, placeIn(row, column), text, facts);
  return null;
}

function numberAt(row: Row, column: string): number | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const value = parseNumber(text, row.from.decimalCommas.has(row.from.index.get(column)!));
  if (value === null) row.from.log.add('number-unreadable', placeIn(row, column), text, { column });
  return value;
}

/** A number that is not negative; null where nothing is recorded or it was reported. */
export function numberIn(row: Row, column: string): number | null {
  const value = numberAt(row, column);
  if (value !== null && value < 0) {
    row.from.log.add('number-negative', placeIn(row, column), textIn(row, column) ?? '', { column });
    return null;
  }
  return value;
}

/** A number of any sign. */
export function signedIn(row: Row, column: string): number | null {
  return numberAt(row, column);
}

/** A whole number that is not negative. */
export function countIn(row: Row, column: string): number | null {
  const value = numberIn(row, column);
  if (value !== null && !Number.isInteger(value)) {
    row.from.log.add('not-whole', placeIn(row, column), textIn(row, column) ?? '', { column });
    return null;
  }
  return value;
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
      log.add('quantity-twice', place(), text, { quantity: name });
      continue;
    }
    filled = true;
    const result = parseQuantity(text, dimension, unit, decimalCommas.has(index));
    if (result.kind !== 'value') {
      const code = result.kind === 'unit-missing' ? 'unit-missing' : 'quantity-unreadable';
      log.add(code, place(), text, { quantity: name, units: unitWords(dimension) });
    } else if (result.value < 0 && !signed) log.add('number-negative', place(), text, { column: name });
    else found = result.value;
  }
  return found;
}

/** One of some words. */
export function wordIn<W extends string>(row: Row, column: string, words: readonly W[]): W | null {
  const text = textIn(row, column);
  if (text === null) return null;
  if ((words as readonly string[]).includes(text)) return text as W;
  const folded = text.toLowerCase().replace(/[\s_-]+/g, '-');
  const word = words.find((w) => w === folded);
  if (word !== undefined) return word;
  const near = nearestName(text, words);
  const facts = { column, words: words.join(', '), ...(near === null ? {} : { near }) };
  row.from.log.add('word-unknown', placeIn(row, column), text, facts);
  return null;
}

const YES = new Set(['yes', 'y', 'true', '1']);
const NO = new Set(['no', 'n', 'false', '0']);

/** Yes or no as people write it; null for anything else. */
export function parseYesNo(text: string): boolean | null {
  const word = text.toLowerCase();
  if (YES.has(word)) return true;
  return NO.has(word) ? false : null;
}

export function yesNoIn(row: Row, column: string): boolean | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const answer = parseYesNo(text);
  if (answer === null) row.from.log.add('word-unknown', placeIn(row, column), text, { column, words: 'yes, no' });
  return answer;
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
