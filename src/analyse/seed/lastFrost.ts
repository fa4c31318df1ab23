import { tQuantile } from '../../numerics/distributions.ts';
import { nth } from '../../numerics/element.ts';

/**
 * The day after which a frost still comes with a chance next year.
 *
 * @param days    days of the year of the last frost, a figure a year; three or more
 * @param chance  0 to 1
 * @source t prediction limit of one more year; reference case o38
 */
export function frostAfter(days: readonly number[], chance: number): number {
  const n = days.length;
  const mean = days.reduce((sum, own) => sum + own, 0) / n;
  const sd = Math.sqrt(days.reduce((sum, own) => sum + (own - mean) ** 2, 0) / (n - 1));
  return mean + tQuantile(1 - chance, n - 1) * sd * Math.sqrt(1 + 1 / n);
}

/** Days from sowing to coming up of peppers by the soil's temperature, °C. */
const EMERGENCE: readonly (readonly [number, number])[] = [
  [15, 25],
  [20, 13],
  [25, 8],
  [30, 8],
  [35, 9],
];

/**
 * Days that pepper seed takes to come up.
 *
 * @param soilC  °C
 * @returns      null outside 15 to 35 °C
 * @source Harrington & Minges (1954), straight lines between its points; reference case o38
 */
export function daysToEmerge(soilC: number): number | null {
  const above = EMERGENCE.findIndex(([at]) => at >= soilC);
  if (above < 0 || soilC < nth(nth(EMERGENCE, 0), 0)) return null;
  const [to, later] = nth(EMERGENCE, above);
  if (above === 0) return later;
  const [from, days] = nth(EMERGENCE, above - 1);
  return days + ((later - days) * (soilC - from)) / (to - from);
}
