import type { Trial } from '../terms/trial.ts';
import type { CheckContext } from '../sheet/context.ts';
import type { TrialFiles } from './folder.ts';
import type { VarietyRegistry } from './registry.ts';
import { checkBeds } from './tables/beds.ts';
import { checkWishes } from './tables/wishes.ts';

/** Beds, and the wishes of every season. */
export function checkPlans(
  { beds, seasons }: TrialFiles,
  registry: VarietyRegistry,
  context: CheckContext,
): Pick<Trial, 'beds' | 'wishes'> {
  const wishes = [...seasons].flatMap(([year, tables]) => {
    const source = tables.get('wishes.csv');
    return source ? [[year, checkWishes(source, registry, context)] as const] : [];
  });
  return { beds: beds ? checkBeds(beds, context) : [], wishes: new Map(wishes) };
}
