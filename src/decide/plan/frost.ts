import { tQuantile, tUpperTail } from '../../numerics/distributions.ts';
import { normalQuantile } from '../../numerics/normal.ts';

/** Spread of the last frost from spring to spring, days, and how many springs it is worth. */
const SPREAD = 13;
const WORTH = 10;

/** Last frost next spring: Student t around a middle. Days count in a year of 365 days. */
export interface FrostRisk {
  /** Springs that are recorded. */
  readonly springs: number;
  readonly hasStated: boolean;
  readonly middle: number;
  readonly scale: number;
  readonly df: number;
}

/**
 * What is known of next spring's last frost.
 *
 * @param days    day of the year of the last frost, a figure a spring
 * @param stated  a day after which a frost comes in a year with a chance; null where none is stated
 * @returns       null where nothing is known
 * @source spread of 13 days: Illinois State Water Survey, nine districts; conjugate normal model; reference case o04
 */
export function frostRisk(
  days: readonly number[],
  stated: { readonly day: number; readonly laterIn: number } | null,
): FrostRisk | null {
  const springs = days.length;
  const worth = stated ? WORTH : 0;
  if (springs + worth === 0) return null;
  const told = stated ? stated.day - SPREAD * normalQuantile(1 - stated.laterIn) : 0;
  const total = days.reduce((sum, day) => sum + day, 0);
  const mean = springs > 0 ? total / springs : told;
  const squares =
    WORTH * SPREAD ** 2 +
    days.reduce((sum, day) => sum + (day - mean) ** 2, 0) +
    (stated && springs > 0 ? ((worth * springs) / (worth + springs)) * (mean - told) ** 2 : 0);
  const df = WORTH + springs - (stated ? 0 : 1);
  const known = worth + springs;
  return {
    springs,
    hasStated: stated !== null,
    middle: (worth * told + total) / known,
    scale: Math.sqrt((squares / df) * (1 + 1 / known)),
    df,
  };
}

/** Chance that a frost comes after a day of the year. */
export const frostAfterDay = ({ middle, scale, df }: FrostRisk, day: number): number =>
  tUpperTail((day - middle) / scale, df);

/** First day of the year after which a frost comes with no more than a chance. */
export const safeDay = ({ middle, scale, df }: FrostRisk, chance: number): number =>
  Math.ceil(middle + scale * tQuantile(1 - chance, df) - 1e-9);

/** True where what is stated and what was recorded lie two spreads apart or more. */
export function disagrees(
  days: readonly number[],
  stated: { readonly day: number; readonly laterIn: number } | null,
): boolean {
  if (!stated || days.length === 0) return false;
  const told = stated.day - SPREAD * normalQuantile(1 - stated.laterIn);
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length;
  return Math.abs(mean - told) >= 2 * SPREAD;
}
