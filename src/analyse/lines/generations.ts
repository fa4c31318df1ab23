/**
 * Share of the genes in which the parents of a cross differ that are still mixed in a plant of a generation, on average.
 *
 * @param generation  filial: 1 of an F1
 * @param crossing    share of seed of foreign pollen at each step, 0 to 1; foreign pollen differs in all of them
 * @returns           0 to 1
 * @source Falconer & Mackay (1996) Introduction to quantitative genetics, ch. 5; reference case o32
 */
export const mixedShare = (generation: number, crossing = 0): number =>
  mixedThrough(Array<number>(Math.max(0, generation - 1)).fill(crossing));

/** The same with a share of foreign pollen for each step from the F1 on. */
export const mixedThrough = (crossings: readonly number[]): number =>
  crossings.reduce((share, crossing) => ((1 - crossing) * share) / 2 + crossing, 1);

/** What the mixed share comes to after very many generations with foreign pollen, 0 to 1. */
export const mixedAtLast = (crossing: number): number => (2 * crossing) / (1 + crossing);

/**
 * Inherited variance within a family from one plant, as a part of the F2's.
 *
 * @param generation  of the family's plants: 2 of an F2
 * @source Falconer & Mackay (1996), families of F2-derived descent
 */
export const familySpread = (generation: number): number => 0.5 ** (generation - 2);

/**
 * Chance that a plant that shows the dominant state of one gene is mixed in it.
 *
 * @param generation  of the plant: 2 of an F2, bagged at each step
 * @param offspring   selfed offspring seen, none of them with the other state
 * @source Fisher (1936) Annals of Science 1:115; reference case o31
 */
export function mixedGivenNone(generation: number, offspring: number): number {
  const mixed = mixedShare(generation);
  const prior = mixed / (mixed + (1 - mixed) / 2);
  const unseen = prior * 0.75 ** offspring;
  return unseen / (unseen + 1 - prior);
}

/** Chance that at least one of some seeds is of foreign pollen, each with chance `crossing`. */
export const someCrossed = (crossing: number, seeds: number): number => 1 - (1 - crossing) ** seeds;

/** As many mothers giving seed alike would be as good as these shares of a seed lot (they add up to 1). */
export const effectiveMothers = (shares: readonly number[]): number =>
  1 / shares.reduce((sum, own) => sum + own ** 2, 0);
