import { mean } from 'simple-statistics';
import { tQuantile } from '../../numerics/distributions.ts';
import { squaresOf } from './spread.ts';

/** Plants of a line and of the check variety beside them, working scale. */
export interface Beside {
  readonly line: readonly number[];
  readonly check: readonly number[];
}

export interface Response {
  /** Working scale: how much more the offspring give above their check than the parents' generation did. */
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly df: number;
}

/**
 * What last year's choice gave: the line's plants beside the same check variety in both seasons.
 *
 * @param level  of the interval, 0 to 1
 * @returns      null where a group has fewer than two plants
 * @source Falconer & Mackay (1996) ch. 11; reference case o40
 */
export function responseOf(before: Beside, after: Beside, level: number): Response | null {
  const groups = [before.line, before.check, after.line, after.check];
  if (groups.some((own) => own.length < 2)) return null;
  const checks = [before.check, after.check].map(squaresOf);
  const checkVariance = checks.reduce((sum, { ss }) => sum + ss, 0) / checks.reduce((sum, { df }) => sum + df, 0);
  const lineVariance = (values: readonly number[]): number => {
    const { ss, df } = squaresOf(values);
    return ss / df / values.length;
  };
  const variance =
    lineVariance(before.line) +
    lineVariance(after.line) +
    checkVariance * (1 / before.check.length + 1 / after.check.length);
  const estimate = mean(after.line) - mean(after.check) - (mean(before.line) - mean(before.check));
  // The degrees of freedom of the offspring and the checks alone, as in the reference case: fewer, so wider.
  const df = checks.reduce((sum, own) => sum + own.df, 0) + after.line.length - 1;
  const half = tQuantile(1 - (1 - level) / 2, df) * Math.sqrt(variance);
  return { estimate, low: estimate - half, high: estimate + half, df };
}

/**
 * Share of a mother's deviation that comes back in her selfed offspring: slope of family means on mothers.
 *
 * @param mothers   what each mother showed, in any unit; six or more
 * @param families  means of their families, as long, same unit
 * @returns         null for fewer than six families
 * @source Galton (1877) Nature 15:492; reference case o35
 */
export function comesBack(
  mothers: readonly number[],
  families: readonly number[],
  level: number,
): { readonly slope: number; readonly low: number; readonly high: number; readonly df: number } | null {
  const n = mothers.length;
  if (n < 6) return null;
  const [mx, my] = [mean(mothers), mean(families)];
  const sxx = mothers.reduce((sum, own) => sum + (own - mx) ** 2, 0);
  if (sxx === 0) return null;
  const sxy = mothers.reduce((sum, own, i) => sum + (own - mx) * ((families[i] ?? my) - my), 0);
  const slope = sxy / sxx;
  const rest = families.reduce((sum, own, i) => sum + (own - my - slope * ((mothers[i] ?? mx) - mx)) ** 2, 0);
  const half = tQuantile(1 - (1 - level) / 2, n - 2) * Math.sqrt(rest / (n - 2) / sxx);
  return { slope, low: slope - half, high: slope + half, df: n - 2 };
}
