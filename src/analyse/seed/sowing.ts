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
  /** When the soil is warm enough for the class; null where no temperature is set or no spring shows it. */
  readonly warm: WarmSoil | null;
}

/** Days by which the soil has been as warm as asked for over a week. */
export interface WarmSoil {
  /** °C. */
  readonly least: number;
  readonly seen: readonly { readonly year: number; readonly day: Day }[];
  /** Days next year by which it is not yet so with a chance; empty with fewer than three years. */
  readonly dates: readonly { readonly chance: number; readonly day: Day }[];
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

const WEEK = 7;

/** A class's days, a row a chance: frost and warm soil side by side. */
export function sowingRows({ dates, warm }: SowingDates): readonly {
  readonly chance: number;
  readonly out: Day | null;
  readonly sow: Day | null;
  readonly warm: Day | null;
}[] {
  const soil = warm?.dates ?? [];
  return CHANCES.flatMap((chance, i) => {
    const [frost, own] = [dates[i], soil[i]];
    return frost || own ? [{ chance, out: frost?.out ?? null, sow: frost?.sow ?? null, warm: own?.day ?? null }] : [];
  });
}

/** Last day of the first week of a spring in which the soil was so warm on average; null where that is not shown. */
export function warmDayOf(season: Season, least: number): Day | null {
  const [from, to] = springOf(season);
  const days = season.weather.flatMap(({ day, soilC }) =>
    soilC !== null && day >= from && day <= to ? [{ day, soilC }] : [],
  );
  const weeks = days.slice(WEEK - 1).flatMap(({ day }, i) => {
    const week = days.slice(i, i + WEEK);
    const isWhole = day - nth(week, 0).day === WEEK - 1;
    return isWhole ? [{ day, mean: week.reduce((sum, own) => sum + own.soilC, 0) / WEEK }] : [];
  });
  const at = weeks.findIndex(({ mean }) => mean >= least);
  // A record that begins warm does not show when it became so.
  return at > 0 ? nth(weeks, at).day : null;
}

function warmSoil({ seasons }: Trial, least: number | null, nextYear: Day): WarmSoil | null {
  if (least === null) return null;
  const seen = seasons.flatMap((season) => {
    const day = warmDayOf(season, least);
    return day === null ? [] : [{ year: season.year, day }];
  });
  if (seen.length === 0) return null;
  const days = seen.map(({ day }) => dayOfYear(day));
  const dates = CHANCES.map((chance) => ({
    chance,
    day: (nextYear + Math.ceil(frostAfter(days, chance)) - 1) as Day,
  }));
  return { least, seen, dates: seen.length < FEWEST_YEARS ? [] : dates };
}

const dayOfYear = (day: Day): number => day - (dayOf(partsOf(day).year, 1, 1) ?? day) + 1;

/**
 * Sowing and planting out of each class that says how many weeks lie between, and when the soil is as warm as it asks.
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
    .filter(({ sowWeeksBefore, soilMinC }) => sowWeeksBefore !== null || soilMinC !== null)
    .map(({ id, sowWeeksBefore, soilMinC }) => ({
      classId: id,
      seen,
      warm: warmSoil(trial, soilMinC, newYear),
      dates:
        seen.length < FEWEST_YEARS
          ? []
          : CHANCES.map((chance) => {
              const out = (newYear + Math.ceil(frostAfter(days, chance)) - 1) as Day;
              const sow = sowWeeksBefore === null ? null : ((out - Math.round(7 * sowWeeksBefore)) as Day);
              return { chance, out, sow };
            }),
    }));
}
