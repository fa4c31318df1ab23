import { dayOf, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { Season, Trial } from '../../terms/trial.ts';
import { nth } from '../../numerics/element.ts';
import { frostAfter } from './lastFrost.ts';

/** When a class may be planted out and sown next year. */
export interface SowingDates {
  readonly classId: string;
  /** What is known of each spring: last frost, or the day the soil was warm. */
  readonly seen: readonly { readonly year: number; readonly day: Day }[];
  /** Days next year that a frost passes with a chance, and the sowing before each; empty with fewer than three years. */
  readonly dates: readonly { readonly chance: number; readonly out: Day; readonly sow: Day | null }[];
}

const CHANCES = [0.5, 0.25, 0.1] as const;
const FEWEST_YEARS = 3;
/** The record begins so many days before the last frost, and has no longer gap after it. */
const [BEFORE, GAP] = [14, 3] as const;

/** First and last day of the half-year in which spring lies: the second where planting out is in it. */
function springOf({ year, plantings }: Season): readonly [Day, Day] {
  const out = plantings.map((own) => own.transplanted).filter((day) => day !== null);
  const isSouth = out.length > 0 && partsOf(Math.min(...out) as Day).month > 6;
  const day = (month: number, date: number): Day => dayOf(year, month, date) ?? (0 as Day);
  return isSouth ? [day(7, 1), day(12, 31)] : [day(1, 1), day(6, 30)];
}

/** Day of the last frost of a season's spring; null where its weather does not show it. */
export function lastFrostOf(season: Season, frostC: number): Day | null {
  const [from, to] = springOf(season);
  const days = season.weather.filter(({ day }) => day >= from && day <= to);
  const frosts = days.filter(({ tminC }) => tminC <= frostC);
  const last = frosts.at(-1)?.day;
  if (last === undefined || nth(days, 0).day > last - BEFORE) return null;
  const after = days.filter(({ day }) => day >= last).map(({ day }) => day);
  const hasGap = after.some((day, i) => i > 0 && day - nth(after, i - 1) > GAP);
  return hasGap ? null : last;
}

const dayOfYear = (day: Day): number => day - (dayOf(partsOf(day).year, 1, 1) ?? day) + 1;

/**
 * Sowing and planting out of each class that says how many weeks lie between.
 *
 * @source methods page L13
 */
export function sowingDates(trial: Trial): readonly SowingDates[] {
  const { settings, seasons } = trial;
  const seen = seasons.flatMap((season) => {
    const day = lastFrostOf(season, settings.frostC);
    return day === null ? [] : [{ year: season.year, day }];
  });
  const newYear = dayOf((seasons.at(-1)?.year ?? 2000) + 1, 1, 1) ?? (0 as Day);
  const days = seen.map(({ day }) => dayOfYear(day));
  return [...settings.classes.values()]
    .filter(({ sowWeeksBefore }) => sowWeeksBefore !== null)
    .map(({ id, sowWeeksBefore }) => ({
      classId: id,
      seen,
      dates:
        seen.length < FEWEST_YEARS
          ? []
          : CHANCES.map((chance) => {
              const out = (newYear + Math.ceil(frostAfter(days, chance)) - 1) as Day;
              return { chance, out, sow: (out - Math.round(7 * (sowWeeksBefore ?? 0))) as Day };
            }),
    }));
}
