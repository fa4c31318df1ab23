/** A calendar day as the number of days since 1970-01-01 (proleptic Gregorian, no time zone). */
export type Day = number & { readonly __brand: 'Day' };

const MS = 86_400_000;

/**
 * The day with this year, month and day of the month; null if there is none (2026-02-30).
 *
 * @param year   1 to 9999
 * @param month  1 to 12
 * @param date   1 to 31
 */
export function dayOf(year: number, month: number, date: number): Day | null {
  const stamp = Date.UTC(2000, month - 1, date);
  const probe = new Date(stamp);
  probe.setUTCFullYear(year, month - 1, date);
  const sound = probe.getUTCFullYear() === year && probe.getUTCMonth() === month - 1 && probe.getUTCDate() === date;
  return sound && year >= 1 ? (Math.round(probe.getTime() / MS) as Day) : null;
}

/** Year, month (1-12) and day of the month of a day (days since 1970-01-01). */
export function partsOf(day: Day): { readonly year: number; readonly month: number; readonly date: number } {
  const at = new Date(day * MS);
  return { year: at.getUTCFullYear(), month: at.getUTCMonth() + 1, date: at.getUTCDate() };
}

/** ISO 8601 date, such as 2026-08-03. */
export function isoDate(day: Day): string {
  const { year, month, date } = partsOf(day);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`;
}

/** ISO 8601; null for no day. */
export const isoDateOrNull = (day: Day | null): string | null => (day === null ? null : isoDate(day));

/** Midnight UTC of a day (days since 1970-01-01) in milliseconds since 1970-01-01, for Intl and for time scales. */
export function utcMilliseconds(day: Day): number {
  return day * MS;
}

/** True for a day that is known. */
export const isDay = (day: Day | null | undefined): day is Day => day !== null && day !== undefined;
