import type { Day } from '../../terms/day.ts';
import { utcMilliseconds } from '../../terms/day.ts';
import { plantingsOf } from '../../terms/ofVariety.ts';
import { onceEach, oncePer } from '../../terms/once.ts';
import { gramsByDay } from '../../analyse/summaries.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { Settings } from '../../terms/settings.ts';
import type { Season } from '../../terms/trial.ts';

/** Dates without a year, as a reader of one season's page needs them. */
export interface DayWriting {
  /** `28 July`. */
  readonly long: (day: number) => string;
  /** `28 Jul`. */
  readonly short: (day: number) => string;
  /** `Jul`. */
  readonly month: (day: number) => string;
}

/** Opening the platform's calendar costs more than all dates of a page: it is opened once a language. */
const writings = new Map<string, DayWriting>();

/** Dates in the trial's language. */
export function dayWriting({ language }: Pick<Settings, 'language'>): DayWriting {
  const own = writings.get(language) ?? openWriting(language);
  writings.set(language, own);
  return own;
}

function openWriting(language: string): DayWriting {
  const format = (options: Intl.DateTimeFormatOptions) => {
    const own = new Intl.DateTimeFormat(language, { ...options, timeZone: 'UTC' });
    return (day: number): string => own.format(utcMilliseconds(Math.round(day) as Day));
  };
  return {
    long: format({ day: 'numeric', month: 'long' }),
    short: format({ day: 'numeric', month: 'short' }),
    month: format({ month: 'short' }),
  };
}

/** Plantings of each variety by the day from which their days are counted. */
const startsOf = oncePer((season: Season) =>
  onceEach((from: Settings['firstRipeFrom']) =>
    onceEach((variety: string) => {
      const counts = new Map<Day, number>();
      for (const planting of plantingsOf(season, variety)) {
        const day = planting[from];
        if (day !== null) counts.set(day, (counts.get(day) ?? 0) + 1);
      }
      return counts;
    }),
  ),
);

/** The day from which the days of a class are counted: that of most of its plantings; null where none is known. */
export function startOf({ season }: SeasonSeen, varieties: Iterable<string>, settings: Settings): Day | null {
  const counts = new Map<Day, number>();
  const startOfVariety = startsOf(season)(settings.firstRipeFrom);
  for (const id of varieties)
    for (const [day, plantings] of startOfVariety(id)) counts.set(day, (counts.get(day) ?? 0) + plantings);
  return [...counts].toSorted((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? null;
}

/** Monday of the week of a day: day 0 was a Thursday (1 January 1970). */
export function mondayOf(day: number): number {
  return day - ((((day + 3) % 7) + 7) % 7);
}

const WEEK = 7;

/** The weeks of a season in which anything was picked, from the first to the last. */
export interface Weeks {
  readonly first: number;
  readonly count: number;
  readonly indexOf: (day: number) => number;
}

/** Weeks that hold all of some days; null without a day. */
export function weeksOf(days: readonly number[]): Weeks | null {
  if (days.length === 0) return null;
  const first = mondayOf(days.reduce((least, day) => Math.min(least, day), Infinity));
  const last = mondayOf(days.reduce((most, day) => Math.max(most, day), -Infinity));
  const indexOf = (day: number): number => Math.floor((day - first) / WEEK);
  return { first, count: indexOf(last) + 1, indexOf };
}

/** Weeks of a season in which anything was weighed; null without a day. */
export const weeksPicked = oncePer((seen: SeasonSeen): Weeks | null =>
  weeksOf(seen.varieties.flatMap(({ variety }) => gramsByDay(seen, variety.id).map(({ day }) => day))),
);

/** Sums by week. */
export function byWeek(
  weeks: Weeks,
  values: readonly { readonly day: number; readonly grams: number }[],
): readonly number[] {
  const sums = Array.from({ length: weeks.count }, () => 0);
  for (const { day, grams } of values) sums[weeks.indexOf(day)] = (sums[weeks.indexOf(day)] ?? 0) + grams;
  return sums;
}

/** Beginnings of months within weeks, as places along them. */
export function monthMarks(
  weeks: Weeks,
  month: (day: number) => string,
): readonly { readonly at: number; readonly text: string }[] {
  const marks: { at: number; text: string }[] = [];
  let last = '';
  for (let day = weeks.first; day < weeks.first + WEEK * weeks.count; day++) {
    const text = month(day);
    if (text !== last) marks.push({ at: (day - weeks.first) / WEEK, text });
    last = text;
  }
  // A month that begins too close before the next would run into it.
  return marks.filter(({ at }, i) => (marks[i + 1]?.at ?? Infinity) - at > 0.6);
}
