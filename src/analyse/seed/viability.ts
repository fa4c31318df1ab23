import { atLeastOf, logBetaBinomial } from '../../numerics/betaBinomial.ts';
import { cell, nth } from '../../numerics/element.ts';
import { normalCdf, normalDensity } from '../../numerics/normal.ts';

/** A germination test, or a sowing that was counted. */
export interface SeedTest {
  /** Years since the seed was saved. */
  readonly age: number;
  readonly seeds: number;
  readonly germinated: number;
}

export type Stored = 'room' | 'cold';

/**
 * How seed loses its germination with age: probit at the start less age over sigma. Middle of sigma in years, by where it
 * is kept.
 *
 * @source Ellis & Roberts (1980) Ann. Bot. 45:13; Demir et al. (2009) HortScience 44:1679; Yildirim et al. (2020)
 */
const SIGMA: Readonly<Record<Stored, number>> = { room: 3, cold: 9 };
const LOG_SIGMA_SD = 0.5;
/** Probit of fresh seed. */
const [FRESH, FRESH_SD] = [1.3, 0.8] as const;
/** Correlation of the seeds of one sowing, and its weights. */
const CORRELATIONS = [0, 0.02, 0.05, 0.1, 0.2] as const;
const CORRELATION_WEIGHTS = [0.2, 0.25, 0.25, 0.2, 0.1] as const;
/** Points of the grid over fresh germination and over loss with age, 5 SD to both sides; of seed with one age. */
const STEPS = [101, 101] as const;
const STEPS_OF_ONE_AGE = [2001, 1] as const;
const REACH = 5;
/** Points of germination at which chances of sowings are worked out. */
const BINS = 400;

/** Standard scores of a grid; the middle alone for one point. */
const scores = (steps: number): Float64Array =>
  Float64Array.from({ length: steps }, (_, i) => (steps === 1 ? 0 : REACH * ((2 * i) / (steps - 1) - 1)));

/** What is known of a lot: weights over fresh germination, loss with age, and likeness of seeds sown together. */
export interface Viability {
  readonly fresh: Float64Array;
  readonly sigma: Float64Array;
  /** Weight of each pair, a list a correlation; all add up to 1. */
  readonly weights: readonly Float64Array[];
}

const inside = (p: number): number => Math.min(1 - 1e-9, Math.max(1e-9, p));

/**
 * What tests tell of a lot.
 *
 * @param tests     none tells what is known of pepper seed in general
 * @param isOneAge  true where seed is sown in the season of its tests, or its age is not known: nothing is lost between
 * @source methods page L12; reference cases o36, o37
 */
export function viabilityOf(tests: readonly SeedTest[], stored: Stored, isOneAge = false): Viability {
  const [rows, columns] = isOneAge ? STEPS_OF_ONE_AGE : STEPS;
  const [zs, ys] = [scores(rows), scores(columns)];
  const fresh = zs.map((z) => FRESH + FRESH_SD * z);
  const sigma = ys.map((y) => (isOneAge ? Infinity : SIGMA[stored] * Math.exp(LOG_SIGMA_SD * y)));
  const prior = new Float64Array(rows * columns);
  const chances = tests.map(() => new Float64Array(rows * columns));
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const at = i * columns + j;
      prior[at] = Math.log(normalDensity(cell(zs, i)) * normalDensity(cell(ys, j)));
      tests.forEach(({ age }, t) => {
        nth(chances, t)[at] = inside(normalCdf(cell(fresh, i) - age / cell(sigma, j)));
      });
    }
  }
  const logs = CORRELATIONS.map((correlation, c) => {
    const own = prior.map((log) => log + Math.log(nth(CORRELATION_WEIGHTS, c)));
    tests.forEach(({ seeds, germinated }, t) => {
      const of = nth(chances, t);
      for (let at = 0; at < own.length; at++) own[at]! += logBetaBinomial(germinated, seeds, cell(of, at), correlation);
    });
    return own;
  });
  const top = Math.max(...logs.map((own) => own.reduce((most, log) => Math.max(most, log), -Infinity)));
  const weights = logs.map((own) => own.map((log) => Math.exp(log - top)));
  const total = weights.reduce((sum, own) => sum + own.reduce((part, w) => part + w, 0), 0);
  return { fresh, sigma, weights: weights.map((own) => own.map((w) => w / total)) };
}

/** Germination at an age in every cell of the grid. */
function cellsAt({ fresh, sigma }: Viability, age: number): Float64Array {
  const cells = new Float64Array(fresh.length * sigma.length);
  fresh.forEach((own, i) => {
    sigma.forEach((loss, j) => (cells[i * sigma.length + j] = normalCdf(own - age / loss)));
  });
  return cells;
}

/** Germination at an age with its weights, a list a correlation: the cells of one age, else equal bins from 0 to 1. */
function germinations(
  viability: Viability,
  age: number,
): { readonly at: Float64Array; readonly weights: readonly Float64Array[] } {
  const cells = cellsAt(viability, age);
  if (viability.sigma.length === 1) return { at: cells, weights: viability.weights };
  const bins = cells.map((own) => Math.min(BINS - 1, Math.floor(BINS * own)));
  const weights = viability.weights.map((own) => {
    const sums = new Float64Array(BINS);
    own.forEach((w, i) => (sums[nth(bins, i)] = nth(sums, nth(bins, i)) + w));
    return sums;
  });
  return { at: Float64Array.from({ length: BINS }, (_, b) => (b + 0.5) / BINS), weights };
}

/**
 * Germination expected at an age, with its interval; shares 0 to 1. It is the lot's, not the next test's.
 *
 * @param level  of the interval, 0 to 1
 */
export function germinationAt(
  viability: Viability,
  age: number,
  level: number,
): { readonly mean: number; readonly low: number; readonly high: number } {
  const cells = cellsAt(viability, age);
  let mean = 0;
  for (const own of viability.weights) own.forEach((w, i) => (mean += w * nth(cells, i)));
  const { at, weights } = germinations(viability, age);
  const all = at.map((_, i) => weights.reduce((sum, own) => sum + nth(own, i), 0));
  const weightAt = (i: number): number => all[i] ?? 0;
  // Trapezoid rule with its first correction, up to a point; between two points the density is straight.
  const quantile = (p: number): number => {
    let sum = 0;
    let under = 0;
    for (let i = 0; i < at.length; i++) {
      const [before, own] = [weightAt(i - 1), weightAt(i)];
      const upTo = sum + own / 2 - (weightAt(i + 1) - before) / 24;
      if (upTo >= p && i > 0) {
        const missing = (p - under) / (upTo - under);
        const lean = before + own > 0 ? (own - before) / (before + own) : 0;
        const part = missing + lean * missing * (1 - missing);
        return nth(at, i - 1) + (nth(at, i) - nth(at, i - 1)) * part;
      }
      sum += own;
      under = upTo;
    }
    return nth(at, -1);
  };
  return { mean, low: quantile((1 - level) / 2), high: quantile(1 - (1 - level) / 2) };
}

/** So many seeds at most are told to be sown of one lot. */
export const MOST_SEEDS = 200;

/**
 * The fewest seeds of one sowing that give at least so many plants with a chance.
 *
 * @param plants     wanted, at least 1
 * @param certainty  0 to 1
 * @returns          null where 200 are not enough
 */
export function seedsFor(viability: Viability, age: number, plants: number, certainty: number): number | null {
  const { at, weights } = germinations(viability, age);
  const reaches = (seeds: number): boolean => {
    let chance = 0;
    weights.forEach((own, c) => {
      own.forEach((w, i) => {
        if (w > 1e-12) chance += w * atLeastOf(plants, seeds, inside(nth(at, i)), nth(CORRELATIONS, c));
      });
    });
    return chance >= certainty;
  };
  if (!reaches(MOST_SEEDS)) return null;
  let [under, enough] = [plants - 1, MOST_SEEDS];
  while (enough - under > 1) {
    const middle = Math.floor((under + enough) / 2);
    if (reaches(middle)) enough = middle;
    else under = middle;
  }
  return enough;
}
