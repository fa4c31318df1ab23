import { chiSquareUpperTail } from './distributions.ts';
import { nth } from './element.ts';
import { logGamma } from './gamma.ts';

const logFactorial = (n: number): number => logGamma(n + 1);

/** Beyond so many tables they are not counted one by one. */
const MOST_TABLES = 200_000;

function choose(n: number, k: number): number {
  return Math.exp(logFactorial(n) - logFactorial(k) - logFactorial(n - k));
}

/**
 * P-value of counts under a ratio: the sum of the probabilities of all tables that are not more probable than the one
 * seen; by chi-square where there are over 200,000 tables.
 *
 * @param counts  of at least two kinds, whole numbers
 * @param parts   the ratio, as long as counts, all above 0
 * @returns       null where chi-square would be needed and an expected count is under 5
 * @source exact multinomial test; reference case o30
 */
export function multinomialP(counts: readonly number[], parts: readonly number[]): number | null {
  const n = counts.reduce((sum, own) => sum + own, 0);
  const whole = parts.reduce((sum, own) => sum + own, 0);
  const kinds = counts.length;
  if (choose(n + kinds - 1, kinds - 1) > MOST_TABLES) {
    const expected = parts.map((own) => (n * own) / whole);
    if (expected.some((own) => own < 5)) return null;
    const x = counts.reduce((sum, own, i) => sum + (own - nth(expected, i)) ** 2 / nth(expected, i), 0);
    return chiSquareUpperTail(x, kinds - 1);
  }
  const logs = parts.map((own) => Math.log(own / whole));
  const logChance = (table: readonly number[]): number =>
    table.reduce((sum, own, i) => sum + own * nth(logs, i) - logFactorial(own), logFactorial(n));
  const seen = logChance(counts) + 1e-9;
  let p = 0;
  const visit = (table: readonly number[], left: number): void => {
    if (table.length === kinds - 1) {
      const log = logChance([...table, left]);
      if (log <= seen) p += Math.exp(log);
      return;
    }
    for (let own = 0; own <= left; own++) visit([...table, own], left - own);
  };
  visit([], n);
  return Math.min(1, p);
}

/**
 * Exact P-value of several counts out of so many each having one share: given the sum, the tables that are not more
 * probable than the one seen.
 *
 * @param counts  successes of each batch, whole numbers
 * @param sizes   their sizes, as long
 * @source multivariate hypergeometric; reference case o36
 */
export function sharesAgreeP(counts: readonly number[], sizes: readonly number[]): number {
  const logOf = (k: number, n: number): number => logFactorial(n) - logFactorial(k) - logFactorial(n - k);
  const total = counts.reduce((sum, own) => sum + own, 0);
  const all = sizes.reduce((sum, own) => sum + own, 0);
  const whole = logOf(total, all);
  const seen = counts.reduce((sum, own, i) => sum + logOf(own, nth(sizes, i)), -whole) + 1e-9;
  let p = 0;
  const visit = (i: number, left: number, log: number): void => {
    const size = nth(sizes, i);
    if (i === sizes.length - 1) {
      if (left > size) return;
      const own = log + logOf(left, size);
      if (own <= seen) p += Math.exp(own);
      return;
    }
    for (let k = 0; k <= Math.min(left, size); k++) visit(i + 1, left - k, log + logOf(k, size));
  };
  visit(0, total, -whole);
  return Math.min(1, p);
}
