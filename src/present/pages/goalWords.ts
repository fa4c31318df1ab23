import type { AdviceSource } from '../nextSeason/source.ts';

/**
 * What a goal says of a variety, in a gardener's words: `Tastes better`, `Ripens 12 days sooner`.
 *
 * @param effect       points of the score
 * @param estimate     expected value, stored unit
 * @param bar          what it is set against; null where that is not known
 * @param gaveNothing  true where it gave nothing when it was last grown: then nothing is said of how it compares
 */
export function goalWords(
  { writing, trial }: Pick<AdviceSource, 'writing' | 'trial'>,
  trait: string,
  effect: number,
  { estimate, bar, gaveNothing }: { estimate: number; bar: number | null; gaveNothing: boolean },
): string {
  const { goal } = writing.words.bench.variety;
  if (trait === 'yield') return gaveNothing ? goal.noYield : goal.yield(effect);
  if (trait === 'flavour') return goal.flavour(effect);
  if (trait === 'first_ripe') {
    const days = bar === null ? 0 : bar - estimate;
    return goal.first_ripe(Math.sign(days) * Math.abs(effect), writing.number(Math.abs(days), 0));
  }
  if (trial.settings.traits.get(trait)?.kind === 'ranking') return goal.ranked(writing.trait(trait), effect);
  return goal.other(writing.trait(trait), effect);
}
