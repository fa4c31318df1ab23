import { normalCdf, normalQuantile } from '../../numerics/normal.ts';
import type { Day } from '../../terms/day.ts';

/** Expected days to first ripe fruit with their prediction interval. */
export interface DaysExpected {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/** When a variety is to be ripe next season. */
export interface RipeAhead {
  readonly expected: Day;
  /** SD of the logarithm of the days. */
  readonly sdLog: number;
  /** Chance that half of its plants are ripe by the season's end. */
  readonly chance: number;
  /** Last day to plant it out for 80 of 100. */
  readonly latest: Day;
}

const WANTED = 0.8;

/**
 * Days to first ripe fruit set against a season.
 *
 * @param level  of the prediction interval, 0 to 1
 * @source reference case o05
 */
export function ripeAhead({ estimate, low, high }: DaysExpected, level: number, plantOut: Day, end: Day): RipeAhead {
  const sdLog = (Math.log(high) - Math.log(low)) / (2 * normalQuantile((1 + level) / 2));
  const days = end - plantOut;
  const chance = days <= 0 ? 0 : normalCdf((Math.log(days) - Math.log(estimate)) / sdLog);
  const needed = Math.exp(Math.log(estimate) + sdLog * normalQuantile(WANTED));
  return {
    expected: (plantOut + Math.floor(estimate + 0.5)) as Day,
    sdLog,
    chance,
    latest: (end - Math.ceil(needed - 1e-9)) as Day,
  };
}

/**
 * Day on which so many degree days are reached, the day of planting out counted.
 *
 * @param from    day of planting out
 * @param daily   degree days of a day; null where the weather does not tell
 * @param until   last day that is looked at
 * @returns       null where they are not reached, or the weather has a gap before
 * @source reference case o05
 */
export function warmthReached(
  from: Day,
  degreeDays: number,
  daily: (day: Day) => number | null,
  until: Day,
): Day | null {
  let sum = 0;
  for (let day = from; day <= until; day = (day + 1) as Day) {
    const own = daily(day);
    if (own === null) return null;
    sum += own;
    if (sum >= degreeDays) return day;
  }
  return null;
}
