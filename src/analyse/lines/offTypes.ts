import { betaQuantile, binomialQuantile } from '../../numerics/distributions.ts';

/**
 * Off-types that a line of so many plants may have where one in a hundred is allowed.
 *
 * @param plants  looked at
 * @returns       the most that are seen with a chance of 95 of 100
 * @source UPOV test guidelines: of 20 plants 1; other numbers computed (reference case o32)
 */
export const offTypesAllowed = (plants: number): number => binomialQuantile(0.95, plants, 0.01);

/**
 * Upper limit of the share of off-types, one-sided, 95 %.
 *
 * @param k  off-types of n plants
 * @source Clopper & Pearson (1934) Biometrika 26:404; reference case o32
 */
export const offTypesAtMost = (k: number, n: number): number => (k === n ? 1 : betaQuantile(0.95, k + 1, n - k));
