import { quickselect } from 'simple-statistics';
import { fUpperTail } from '../../numerics/distributions.ts';
import { cell } from '../../numerics/element.ts';

/** Logs of figures by what they belong to. */
export type LogGroups = ReadonlyMap<string, Float64Array>;

/** How figures spread about the means of their groups, and the means about each other. */
export interface Spread {
  readonly values: number;
  readonly groups: number;
  /** SD within groups as the middle two thirds show it, whatever a few stray values are. */
  readonly within: number;
  /** Chance of means so far apart where the groups are all alike. */
  readonly chance: number;
}

/** One-way analysis of variance of the groups; null with fewer than two groups or no group of two. */
export function spreadOf(groups: LogGroups): Spread | null {
  let [values, total] = [0, 0];
  for (const own of groups.values()) {
    values += own.length;
    for (const value of own) total += value;
  }
  const df2 = values - groups.size;
  if (groups.size < 2 || df2 < 1) return null;
  let [within, between] = [0, 0];
  for (const own of groups.values()) {
    const mean = own.reduce((sum, value) => sum + value, 0) / own.length;
    for (const value of own) within += (value - mean) ** 2;
    between += own.length * (mean - total / values) ** 2;
  }
  const df1 = groups.size - 1;
  const chance = within === 0 ? 0 : fUpperTail(between / df1 / (within / df2), df1, df2);
  return { values, groups: groups.size, within: middleSpread(groups) * Math.sqrt(values / df2), chance };
}

/** Distance from the middle of its group that 68 of 100 values keep: an SD where they are normal. */
function middleSpread(groups: LogGroups): number {
  let at = 0;
  const distances = new Float64Array([...groups.values()].reduce((sum, own) => sum + own.length, 0));
  for (const own of groups.values()) {
    const centre = middle(own);
    for (const value of own) distances[at++] = Math.abs(value - centre);
  }
  const rank = Math.floor(0.68 * distances.length);
  quickselect(distances as unknown as number[], rank);
  return cell(distances, rank);
}

/** Middle of some numbers; NaN of none. */
export function middle(values: ArrayLike<number>): number {
  const all = Float64Array.from(values);
  const half = all.length >> 1;
  if (all.length === 0) return NaN;
  quickselect(all as unknown as number[], half);
  if (all.length % 2 === 1) return cell(all, half);
  // What lies before the upper one of the two in the middle is no larger: the lower one is the largest of it.
  return (all.subarray(0, half).reduce((most, own) => Math.max(most, own), -Infinity) + cell(all, half)) / 2;
}

/** A season's figures by variety, for the comparison with other seasons. */
export interface SeasonLogs {
  readonly year: number;
  readonly file: string;
  readonly groups: LogGroups;
}

/**
 * Seasons of which the figures are so many times those of the same varieties in the others.
 *
 * @param limit      times, or one over it, from which a season is doubtful; of fewer than three varieties its square
 * @returns          the season and the times, most first; one alone, since the others are then measured without it
 */
export function unlikeOthers(
  seasons: readonly SeasonLogs[],
  limit: number,
): { readonly season: SeasonLogs; readonly times: number; readonly others: readonly SeasonLogs[] } | null {
  let worst: { season: SeasonLogs; times: number; others: readonly SeasonLogs[] } | null = null;
  // Of two seasons the newer one is named: the older was looked at before.
  for (const season of seasons.toReversed()) {
    const others = seasons.filter((own) => own !== season);
    const ratios = [...season.groups].flatMap(([variety, values]) => {
      const elsewhere = others.flatMap(({ groups }) => {
        const own = groups.get(variety);
        return own ? [middle(own)] : [];
      });
      return elsewhere.length === 0 ? [] : [middle(values) - middle(elsewhere)];
    });
    if (ratios.length === 0) continue;
    const log = middle(ratios);
    const least = Math.log(limit) * (ratios.length < 3 ? 2 : 1);
    if (Math.abs(log) > least && Math.abs(log) > 1.001 * Math.abs(Math.log(worst?.times ?? 1)))
      worst = { season, times: Math.exp(log), others };
  }
  return worst;
}
