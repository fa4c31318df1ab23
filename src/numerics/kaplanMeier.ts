import { normalQuantile } from './normal.ts';
import { nth } from './element.ts';

export interface SurvivalStep {
  readonly time: number;
  readonly atRisk: number;
  readonly events: number;
  readonly censored: number;
  readonly survival: number;
  /** Greenwood's sum of d / (n (n - d)) up to this time. */
  readonly hazardVariance: number;
}

export interface SurvivalQuantile {
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Kaplan-Meier curve.
 *
 * @param times   follow-up times
 * @param events  true where the event was seen at that time, false where follow-up ended
 * @returns       one step for each distinct time, in order
 * @source Kaplan & Meier (1958), J. Am. Stat. Assoc. 53:457
 */
export function kaplanMeier(times: readonly number[], events: readonly boolean[]): readonly SurvivalStep[] {
  const order = times.map((_, i) => i).toSorted((a, b) => nth(times, a) - nth(times, b));
  const steps: SurvivalStep[] = [];
  let survival = 1;
  let hazardVariance = 0;
  let atRisk = times.length;
  for (let start = 0; start < order.length;) {
    const time = nth(times, nth(order, start));
    let end = start;
    let died = 0;
    while (end < order.length && times[nth(order, end)] === time) {
      if (events[nth(order, end)]) died++;
      end++;
    }
    survival *= 1 - died / atRisk;
    hazardVariance += died === 0 ? 0 : died / (atRisk * (atRisk - died));
    steps.push({ time, atRisk, events: died, censored: end - start - died, survival, hazardVariance });
    atRisk -= end - start;
    start = end;
  }
  return steps;
}

/** First time a falling curve is at or below the share; halfway to its next drop where it meets it exactly. */
function crossing(
  steps: readonly SurvivalStep[],
  height: (step: SurvivalStep) => number | null,
  share: number,
): number | null {
  const drops = steps.filter((step) => step.events > 0);
  const at = drops.findIndex((step) => {
    const value = height(step);
    return value !== null && value <= share + 1e-12;
  });
  if (at < 0) return null;
  const value = height(nth(drops, at))!;
  const meets = Math.abs(value - share) <= 1e-12;
  const next = drops.slice(at + 1).find((step) => {
    const later = height(step);
    return later === null || later < value - 1e-12;
  });
  if (!meets) return nth(drops, at).time;
  return next ? (nth(drops, at).time + next.time) / 2 : nth(drops, at).time;
}

/**
 * Quantile of the time to an event with log-log limits.
 *
 * @param steps  a Kaplan-Meier curve
 * @param share  share still without the event, 0.5 for the median
 * @param level  interval level
 * @returns      times; null where the curve or its limit does not reach the share
 * @source Brookmeyer & Crowley (1982), Biometrics 38:29; Greenwood variance on the log-log scale
 */
export function survivalQuantile(steps: readonly SurvivalStep[], share: number, level: number): SurvivalQuantile {
  const z = normalQuantile(0.5 + level / 2);
  const limit =
    (side: number) =>
    (step: SurvivalStep): number | null => {
      if (step.survival <= 0 || step.survival >= 1) return step.survival <= 0 ? null : step.survival;
      const spread = Math.sqrt(step.hazardVariance) / Math.abs(Math.log(step.survival));
      return step.survival ** Math.exp(side * z * spread);
    };
  return {
    estimate: crossing(steps, (step) => step.survival, share),
    low: crossing(steps, limit(1), share),
    high: crossing(steps, limit(-1), share),
  };
}
