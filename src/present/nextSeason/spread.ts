import { fromWorking } from '../../terms/scales.ts';
import { traitFacts } from '../../terms/traits.ts';
import type { AdviceSource } from './source.ts';

/** How much varieties differ, and one variety from season to season, a sentence a trait that counts. */
export function spreadWords({ next, trial, writing }: AdviceSource): readonly string[] {
  const { words, number, percent, trait: name } = writing;
  const counted = new Set(next.classes.flatMap(({ case: own }) => own.goals.map(({ trait }) => trait)));
  return [...next.forecasts].flatMap(([trait, { values, expected }]) => {
    if (!counted.has(trait)) return [];
    const unit = traitFacts(trait, trial.settings.traits).unit;
    const size = (sd: number): string => {
      if (values.scale === 'log') return percent(Math.exp(sd) - 1, 0);
      if (unit === 'share') {
        const share = values.scale === 'worth' ? fromWorking('worth', sd) - 0.5 : sd;
        return words.nextSeason.of100(number(100 * share, 0));
      }
      return unit === 'points' ? number(sd, 1) : writing.quantity(sd, unit);
    };
    return [words.nextSeason.spread(name(trait), size(expected.between), size(expected.withSeason))];
  });
}
