import { normalCdf, normalDensity } from './normal.ts';
import { notConverged } from './notConverged.ts';
import { findRoot } from './root.ts';
import { cell, nth } from './element.ts';

/** A time known exactly (low = high), to lie between two, or to be over one (high = Infinity); low may be 0. */
export interface CensoredTime {
  readonly low: number;
  readonly high: number;
  readonly group: number;
}

export interface LogNormalFit {
  /** Median of each group's time, as a logarithm. */
  readonly locations: readonly number[];
  readonly sigma: number;
  /** Inverse of the observed information of the locations, the scale being estimated too. */
  readonly covariance: readonly (readonly number[])[];
  readonly logLikelihood: number;
}

/** Derivatives of one observation's log-likelihood in location m and log scale t. */
export interface Derivatives {
  value: number;
  m: number;
  t: number;
  mm: number;
  mt: number;
  tt: number;
}

function exactTime(z: number, sigma: number): Derivatives {
  return {
    value: -Math.log(sigma) - 0.5 * z * z - 0.5 * Math.log(2 * Math.PI),
    m: z / sigma,
    t: z * z - 1,
    mm: -1 / (sigma * sigma),
    mt: (-2 * z) / sigma,
    tt: -2 * z * z,
  };
}

/** Mills' ratio Φ(-x) / φ(x), x ≥ 0; far out by its continued fraction (Abramowitz & Stegun 26.2.14). */
function millsRatio(x: number): number {
  if (x === Infinity) return 0;
  if (x < 8) return normalCdf(-x) / normalDensity(x);
  let fraction = x;
  for (let k = 40; k >= 1; k--) fraction = x + k / fraction;
  return 1 / fraction;
}

/** (bⁿ φ(b) - aⁿ φ(a)) / D for n = 0 … 3 and ln D, where D = Φ(b) - Φ(a) and 0 ≤ a < b; never 0 / 0. */
function upperMoments(a: number, b: number): readonly [readonly number[], number] {
  const fall = b === Infinity ? 0 : Math.exp(-0.5 * (b - a) * (b + a));
  const d = Math.max(millsRatio(a) - fall * millsRatio(b), 1e-300);
  const moments = [0, 1, 2, 3].map((n) => ((fall === 0 ? 0 : b ** n * fall) - a ** n) / d);
  return [moments, Math.log(d) - 0.5 * a * a - 0.5 * Math.log(2 * Math.PI)];
}

function moments(a: number, b: number): readonly [readonly number[], number] {
  if (a >= 0) return upperMoments(a, b);
  if (b <= 0) {
    const [mirrored, log] = upperMoments(-b, -a);
    return [mirrored.map((c, n) => (n % 2 === 0 ? -c : c)), log];
  }
  const d = normalCdf(b) - normalCdf(a);
  const power = (x: number, n: number): number => (Number.isFinite(x) ? x ** n * normalDensity(x) : 0);
  return [[0, 1, 2, 3].map((n) => (power(b, n) - power(a, n)) / d), Math.log(d)];
}

function betweenTimes(a: number, b: number, sigma: number): Derivatives {
  const [[c0, c1, c2, c3], value] = moments(a, b) as [readonly [number, number, number, number], number];
  return {
    value,
    m: -c0 / sigma,
    t: -c1,
    mm: -(c1 + c0 * c0) / (sigma * sigma),
    mt: (c0 - c2 - c0 * c1) / sigma,
    tt: c1 - c3 - c1 * c1,
  };
}

/** Derivatives of a time's log-likelihood at a location and a spread. */
export function timeDerivatives(
  { low, high }: Pick<CensoredTime, 'low' | 'high'>,
  location: number,
  sigma: number,
): Derivatives {
  const [a, b] = [(Math.log(low) - location) / sigma, (Math.log(high) - location) / sigma];
  return low === high ? exactTime(a, sigma) : betweenTimes(a, b, sigma);
}

/** A slope, in likelihood per spread, that no digit of a location shows. */
const FLAT = 1e-13;

/** Best location of a group for a scale: Newton on a concave function, steps kept short. */
function locate(times: readonly CensoredTime[], sigma: number, start: number): number {
  let location = start;
  for (let i = 0; i < 500; i++) {
    let [m, mm] = [0, 0];
    for (const time of times) {
      const own = timeDerivatives(time, location, sigma);
      m += own.m;
      mm += own.mm;
    }
    // Between looks far apart the likelihood is flat to the last digit: the place is as good as any near it.
    if (!(mm < 0) || Math.abs(m) * sigma < FLAT) return location;
    const step = Math.max(-2 * sigma, Math.min(2 * sigma, -m / mm));
    location += step;
    if (Math.abs(step) < 1e-9 * Math.max(1, Math.abs(location))) return location;
  }
  return notConverged('the location of a group of times');
}

/** Where a group's search begins: the mean logarithm of its times, middles of intervals, ends of follow-up. */
function startOf(times: readonly CensoredTime[]): number {
  const middle = (low: number, high: number): number =>
    low > 0 ? (Math.log(low) + Math.log(high)) / 2 : Math.log(high / 2);
  const logs = times.map(({ low, high }) => (high === Infinity ? Math.log(low) : middle(low, high)));
  return logs.reduce((sum, log) => sum + log, 0) / logs.length;
}

/** True if one time fits every observation of a group: then no spread is the likeliest. */
function couldBeOneTime(times: readonly CensoredTime[]): boolean {
  return Math.max(...times.map(({ low }) => low)) <= Math.min(...times.map(({ high }) => high));
}

/** Log scales between which the slope of the likelihood turns from up to down; null if it never rises. */
export function logSigmaBracket(slope: (logSigma: number) => number): readonly [number, number] | null {
  let low = Math.log(0.2);
  let high = low;
  while (slope(high) > 0 && high < 4) high += 0.7;
  while (slope(low) <= 0 && low > Math.log(1e-4)) low -= 0.7;
  return slope(low) > 0 && slope(high) <= 0 ? [low, high] : null;
}

/**
 * Accelerated failure time model: log-normal, a location for each group, one scale.
 *
 * @param times   times with their groups; every group has one that is not right-censored
 * @param groups  number of groups
 * @returns       the fit; null where the likelihood has no maximum with spread (every group could be one time)
 * @source Kalbfleisch & Prentice (2002), The Statistical Analysis of Failure Time Data, ch. 3
 */
export function fitLogNormal(times: readonly CensoredTime[], groups: number): LogNormalFit | null {
  const byGroup = Array.from({ length: groups }, (_, group) => times.filter((time) => time.group === group));
  if (byGroup.every(couldBeOneTime)) return null;
  const starts = byGroup.map(startOf);
  const locations = (sigma: number): readonly number[] => byGroup.map((own, g) => locate(own, sigma, nth(starts, g)));
  const slope = (logSigma: number): number => {
    const sigma = Math.exp(logSigma);
    const found = locations(sigma);
    return times.reduce((sum, time) => sum + timeDerivatives(time, nth(found, time.group), sigma).t, 0);
  };
  const bracket = logSigmaBracket(slope);
  if (!bracket) return null;
  const sigma = Math.exp(findRoot(slope, ...bracket, 1e-12));
  const at = locations(sigma);
  const mm = new Float64Array(groups);
  const mt = new Float64Array(groups);
  let [tt, logLikelihood] = [0, 0];
  for (const time of times) {
    const own = timeDerivatives(time, nth(at, time.group), sigma);
    mm[time.group]! -= own.mm;
    mt[time.group]! -= own.mt;
    tt -= own.tt;
    logLikelihood += own.value - (time.low === time.high ? Math.log(time.low) : 0);
  }
  // A group between looks so far apart that its likelihood is flat tells nothing of the scale.
  const part = (g: number): number => (cell(mm, g) > 0 ? cell(mt, g) / cell(mm, g) : 0);
  const scaleVariance = 1 / (tt - mm.reduce((sum, value, g) => sum + part(g) ** 2 * value, 0));
  const covariance = at.map((_, i) =>
    at.map((__, j) => (i === j ? 1 / cell(mm, i) : 0) + part(i) * part(j) * scaleVariance),
  );
  return { locations: at, sigma, covariance, logLikelihood };
}
