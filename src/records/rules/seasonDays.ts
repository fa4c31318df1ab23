import { dayOf, isoDate, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { Settings } from '../../terms/settings.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { placeIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';

/** First and last day on which anything of a season may be recorded. */
export interface SeasonSpan {
  readonly firstDay: Day;
  readonly lastDay: Day;
}

/**
 * The span of a season: from its first sowing (else planting out, else New Year) to its last day. A `season_end`
 * earlier in the year than the start falls in the following year.
 */
export function seasonSpan(year: number, starts: readonly Day[], settings: Settings): SeasonSpan {
  const own = settings.seasons.get(year);
  const newYear = dayOf(year, 1, 1)!;
  const inYear = starts.filter((day) => partsOf(day).year === year);
  const start = inYear.length > 0 ? (Math.min(...inYear) as Day) : newYear;
  const { month, date } = settings.seasonEnd;
  const endIn = (y: number): Day => dayOf(y, month, date) ?? dayOf(y, month, date - 1)!;
  const lastDay = own?.end ?? (endIn(year) < start ? endIn(year + 1) : endIn(year));
  return { firstDay: starts.length > 0 ? (Math.min(...starts) as Day) : newYear, lastDay };
}

function isOutside(day: Day, { firstDay, lastDay }: SeasonSpan): boolean {
  return day < firstDay || day > lastDay;
}

function facts({ firstDay, lastDay }: SeasonSpan): { readonly from: string; readonly to: string } {
  return { from: isoDate(firstDay), to: isoDate(lastDay) };
}

/** Reports a date of a harvest or observation outside its season; true if it is. */
export function reportOutside(row: Row, column: string, day: Day, span: SeasonSpan, { log }: CheckContext): boolean {
  if (!isOutside(day, span)) return false;
  const found = column === 'date' ? (textIn(row, column) ?? '') : isoDate(day);
  log.add('outside-season', placeIn(row, column), found, facts(span));
  return true;
}

/** Notes a date of a rating or measurement outside its season. */
export function noteOutside(row: Row, column: string, day: Day, span: SeasonSpan, { log }: CheckContext): void {
  if (isOutside(day, span))
    log.add('outside-season-note', placeIn(row, column), textIn(row, column) ?? '', facts(span));
}
