import { atLeastOf } from '../../numerics/betaBinomial.ts';

/** What every lot is worth before it is tested: 4 of 5 came up. Common practice, no source. */
const [CAME_UP, DID_NOT] = [4, 1] as const;
/** Chance with which the plants are to be had. */
const CERTAINTY = 0.95;
/** One spare plant for every so many begun. */
const SPARE = 4;
const MOST = 10_000;

/** Sowings that were counted, added up. */
export interface Counted {
  readonly germinated: number;
  readonly of: number;
}

/** Seeds for the plants of a variety. */
export interface SeedsNeeded {
  readonly spare: number;
  readonly seeds: number;
  /** Chance of the plants and the spare ones with so many seeds. */
  readonly chance: number;
}

/**
 * Chance of at least so many plants from seeds of which so many came up before.
 *
 * @source Beta(4 + germinated, 1 + not); reference case o03
 */
export function chanceOfPlants(plants: number, seeds: number, { germinated, of }: Counted): number {
  const [a, b] = [CAME_UP + germinated, DID_NOT + of - germinated];
  return atLeastOf(plants, seeds, a / (a + b), 1 / (a + b + 1));
}

/** The fewest seeds that give so many plants and their spares in 95 of 100. @source reference case o03 */
export function seedsNeeded(plants: number, counted: Counted): SeedsNeeded {
  const spare = Math.ceil(plants / SPARE);
  const wanted = plants + spare;
  let seeds = wanted;
  while (seeds < MOST && chanceOfPlants(wanted, seeds, counted) < CERTAINTY) seeds++;
  return { spare, seeds, chance: chanceOfPlants(wanted, seeds, counted) };
}
