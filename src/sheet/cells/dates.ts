import { dayOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { DateOrder } from '../../terms/settings.ts';
import { nth } from '../../numerics/element.ts';

export type DateResult =
  | { readonly kind: 'day'; readonly day: Day }
  | { readonly kind: 'unreadable' | 'impossible' }
  | { readonly kind: 'ambiguous'; readonly dayFirst: Day | null; readonly monthFirst: Day | null };

export type DateReader = (text: string) => DateResult;

function monthNames(languages: readonly string[]): Map<string, number> {
  const names = new Map<string, number>();
  for (const locale of ['en', ...languages]) {
    for (const style of ['long', 'short'] as const) {
      for (const options of [{ month: style }, { month: style, day: 'numeric' }] as Intl.DateTimeFormatOptions[]) {
        const format = new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
        for (let month = 0; month < 12; month++) {
          const part = format.formatToParts(Date.UTC(2001, month, 1)).find((p) => p.type === 'month');
          const name = part?.value.toLowerCase().replace(/\.$/, '');
          if (name && !/^\d+$/.test(name) && !names.has(name)) names.set(name, month + 1);
        }
      }
    }
  }
  names.set('sept', 9);
  return names;
}

function made(year: number, month: number, date: number): DateResult {
  const day = dayOf(year, month, date);
  return day === null ? { kind: 'impossible' } : { kind: 'day', day };
}

function slashed(text: string, order: DateOrder): DateResult | null {
  const match = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text);
  if (!match) return null;
  const [first, second, year] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (order === 'day-first') return made(year, second, first);
  if (order === 'month-first') return made(year, first, second);
  return { kind: 'ambiguous', dayFirst: dayOf(year, second, first), monthFirst: dayOf(year, first, second) };
}

/**
 * Makes the reader of a trial's dates: ISO 8601, 2026/08/03, 3 Aug 2026, and day or month first where that is set.
 *
 * @param languages  the trial's language, or several where it is not known, for names of months
 * @param order      how 03/08/2026 is to be read
 */
export function dateReader(languages: readonly string[], order: DateOrder): DateReader {
  const months = monthNames(languages);
  const known = new Map<string, DateResult>();
  const read = (text: string): DateResult => {
    // A time of the day may follow, as phones and spreadsheets add it; it says nothing of the day.
    const iso =
      /^(\d{4})-(\d{2})-(\d{2})(?:[T ]\d{1,2}:\d{2}(?::\d{2})?)?$/.exec(text) ??
      /^(\d{4})\/(\d{1,2})\/(\d{1,2})$/.exec(text);
    if (iso) return made(Number(iso[1]), Number(iso[2]), Number(iso[3]));
    const worded = /^(\d{1,2})(?:st|nd|rd|th|\.)?[\s-]+([\p{L}]+)\.?,?[\s-]+(\d{4})$/u.exec(text);
    if (worded) {
      const month = months.get(nth(worded, 2).toLowerCase());
      if (month !== undefined) return made(Number(worded[3]), month, Number(worded[1]));
    }
    const monthFirst = /^([\p{L}]+)\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/u.exec(text);
    if (monthFirst) {
      const month = months.get(nth(monthFirst, 1).toLowerCase());
      if (month !== undefined) return made(Number(monthFirst[3]), month, Number(monthFirst[2]));
    }
    return slashed(text, order) ?? { kind: 'unreadable' };
  };
  let lastText = '';
  let last: DateResult = { kind: 'unreadable' };
  return (text) => {
    // Rows of a day stand together.
    if (text === lastText) return last;
    let result = known.get(text);
    if (!result) {
      result = read(text);
      if (known.size < 10_000) known.set(text, result);
    }
    lastText = text;
    last = result;
    return result;
  };
}
