import { isoDate } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';

export type SpreadsheetMark = 'spreadsheet-error' | 'column-too-narrow' | 'cell-formula';

const ERROR = /^(?:#(?:REF!|NAME\?|VALUE!|DIV\/0!|N\/A|NULL!|NUM!|SPILL!|CALC!|GETTING_DATA)|Err:\d{3})$/i;
const FORMULA = /^=\s*(?:[-+$(\d"]|[A-Za-z]{1,3}\$?\d|[A-Za-z.]+\()/;

/** What a spreadsheet left in a cell in place of a value; null for anything else. */
export function spreadsheetMark(cell: string): SpreadsheetMark | null {
  const text = cell.trim();
  if (/^#{3,}$/.test(text)) return 'column-too-narrow';
  if (ERROR.test(text)) return 'spreadsheet-error';
  return FORMULA.test(text) ? 'cell-formula' : null;
}

/** True for a number with a power of ten, as spreadsheets shorten long ones. */
export function isScientific(text: string): boolean {
  return /^[+-]?\d+(?:[.,]\d+)?e[+-]?\d+$/i.test(text);
}

/** True for what a spreadsheet makes of 1/2 or of a code such as MAR1: a day and a month, with or without a year. */
export function looksLikeDate(text: string): boolean {
  return (
    /^\d{4}-\d{2}-\d{2}(?:[ T]0{1,2}:00(?::00)?)?$/.test(text) ||
    /^\d{1,2}[/.-]\d{1,2}[/.-](?:\d{2}|\d{4})$/.test(text) ||
    /^\d{1,2}[-. ]\p{L}{3,4}\.?(?:[- ]\d{2,4})?$/u.test(text) ||
    /^\p{L}{3,4}\.?[- ]\d{1,4}$/u.test(text)
  );
}

const FIRST_SERIAL = 20_000;
const LAST_SERIAL = 60_000;

/**
 * The days that a spreadsheet's day number can stand for.
 *
 * @returns the day counted from 1900 and from 1904; null where the text is no such number
 * @source ECMA-376-1 (2016) §18.17.4.1: serial 1 is 1900-01-01, with a 29 February 1900; 0 is 1904-01-01 in the other base
 */
export function serialDays(text: string): readonly [first: string, second: string] | null {
  if (!/^\d{5}(?:\.\d+)?$/.test(text)) return null;
  const serial = Math.floor(Number(text));
  if (serial < FIRST_SERIAL || serial > LAST_SERIAL) return null;
  const from = (year: number, month: number, date: number): string =>
    isoDate((Date.UTC(year, month, date) / 86_400_000 + serial) as Day);
  return [from(1899, 11, 30), from(1904, 0, 1)];
}
