import { expectedSpreads } from '../analyse/expected/expectedTrait.ts';
import { adviseClass } from './adviseClass.ts';
import type { ClassAdvice } from './adviseClass.ts';
import type { TraitForecast } from './adviseVariety.ts';
import type { ClassCase, TraitCase, VerdictSettings } from './cases.ts';

/** What the page where readers set their own weights works from: stage two's figures, nothing of the records. */
export interface WeightsData {
  readonly settings: VerdictSettings;
  readonly traits: readonly TraitCase[];
  readonly classes: readonly ClassCase[];
}

/**
 * Posteriors of the published traits, by the same code that the build used.
 *
 * @returns  by trait
 */
export function openForecasts({ traits }: WeightsData): ReadonlyMap<string, TraitForecast> {
  return new Map(traits.map((own) => [own.trait, { own, expected: expectedSpreads(own.classes, own.priorScale) }]));
}

/**
 * Verdicts of a class under a reader's own weights and spots; null where every weight is 0.
 *
 * @param weights  by trait; a trait without one keeps the class's own
 */
export function adviseWith(
  own: ClassCase,
  forecasts: ReadonlyMap<string, TraitForecast>,
  settings: VerdictSettings,
  weights: ReadonlyMap<string, number>,
  spots: number,
): ClassAdvice | null {
  const goals = own.goals.map((goal) => ({ ...goal, weight: weights.get(goal.trait) ?? goal.weight }));
  if (goals.every(({ weight }) => weight === 0)) return null;
  return adviseClass({ ...own, goals, spots }, forecasts, settings, false);
}
