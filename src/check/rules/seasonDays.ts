import { dayOf, isoDate, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { Settings } from '../../terms/settings.ts';
import type { CheckContext } from '../context.ts';
import { placeIn, textIn } from '../row.ts';
import type { Row } from '../row.ts';

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

/** Reports a date outside its season; harvests and observations must lie inside, the rest is noted. */
export function reportOutside(row: Row, column: string, day: Day, span: SeasonSpan, { log }: CheckContext, isNote = false): boolean {
  if (day >= span.firstDay && day <= span.lastDay) return false;
  log.add(isNote ? 'outside-season-note' : 'outside-season', placeIn(row, column), textIn(row, column) ?? '', {
    from: isoDate(span.firstDay),
    to: isoDate(span.lastDay),
  });
  return true;
}
