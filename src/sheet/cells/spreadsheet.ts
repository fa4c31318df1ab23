import { isoDate } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { nth } from '../../numerics/element.ts';

export type SpreadsheetMark = 'spreadsheet-error' | 'column-too-narrow' | 'cell-formula';

const ERROR = /^(?:#(?:REF!|NAME\?|VALUE!|DIV\/0!|N\/A|NULL!|NUM!|SPILL!|CALC!|GETTING_DATA)|Err:\d{3})$/i;
const FORMULA = /^=\s*(?:[-+$(\d"]|[A-Za-z]{1,3}\$?\d|[A-Za-z.]+\(|'[^']+'!|[\p{L}\w.]+!\$?[A-Za-z])/u;

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

/** Languages in which spreadsheets write the names of months here and around. */
const LANGUAGES = ['en', 'de', 'fr', 'es', 'it', 'nl', 'pl', 'sv'];
let monthStarts: Set<string> | null = null;

/** True for the name of a month, or a short form of three letters and more. */
function isMonth(word: string): boolean {
  if (!monthStarts) {
    monthStarts = new Set();
    for (const language of LANGUAGES) {
      const format = new Intl.DateTimeFormat(language, { month: 'long', timeZone: 'UTC' });
      for (let month = 0; month < 12; month++) {
        const name = format.format(Date.UTC(2001, month, 1)).toLowerCase();
        for (let length = 3; length <= name.length; length++) monthStarts.add(name.slice(0, length));
      }
    }
  }
  return monthStarts.has(word.toLowerCase());
}

/** True for what a spreadsheet makes of 1/2 or of a code such as MAR1: a day and a month, with or without a year. */
export function looksLikeDate(text: string): boolean {
  if (/^\d{4}-\d{2}-\d{2}(?:[ T]0{1,2}:00(?::00)?)?$/.test(text)) return true;
  if (/^\d{1,2}[/.-]\d{1,2}[/.-](?:\d{2}|\d{4})$/.test(text)) return true;
  const word = /^\d{1,2}[-. ](\p{L}{3,})\.?(?:[- ]\d{2,4})?$/u.exec(text) ?? /^(\p{L}{3,})\.?[- ]\d{1,4}$/u.exec(text);
  return word !== null && isMonth(nth(word, 1));
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
