import type { TraitValues } from '../analyse/expected/values.ts';
import type { Settings, TraitRange } from '../terms/settings.ts';
import { COUNT_FOR_YIELD, traitFacts, usualGoals } from '../terms/traits.ts';
import type { Goal, MustLimit } from './cases.ts';

/**
 * Traits that count in a class: as the goals say, else the usual ones.
 *
 * @returns  weights by trait, above 0 and in any unit (only their ratios count)
 */
export function weightsOf(
  classId: string,
  settings: Settings,
): { readonly weights: ReadonlyMap<string, number>; readonly areDefault: boolean } {
  const given = [...(settings.goals.get(classId) ?? [])].filter(([, weight]) => weight > 0);
  if (given.length > 0) return { weights: new Map(given), areDefault: false };
  return { weights: new Map(usualGoals(settings.traits).map((key) => [key, 1])), areDefault: true };
}

/** What trial.yaml sets of a trait's points in a class; undefined where it says nothing of it. */
export function rangeSet({ ranges }: Settings, classId: string, trait: string): TraitRange | undefined {
  const own = ranges.get(trait);
  return own?.get(classId) ?? own?.get('*');
}

export interface ClassGoals {
  readonly goals: readonly Goal[];
  readonly areDefault: boolean;
  /** Fruits stand in for the yield, which was hardly weighed. */
  readonly countsOnly: boolean;
  /** Goals that nobody recorded in the class: they do not enter the score. */
  readonly unrecorded: readonly string[];
}

/**
 * Goals of a class of which there are records. Where the goals are the usual ones and none of them was recorded, the
 * answers to "again" stand in for them.
 */
export function goalsOf(classId: string, settings: Settings, traits: ReadonlyMap<string, TraitValues>): ClassGoals {
  const { weights, areDefault } = weightsOf(classId, settings);
  const isRecorded = (trait: string): boolean =>
    traits.get(trait)?.values.some((value) => value.classId === classId) ?? false;
  // Who counts fruits and hardly weighs has their number in place of the yield.
  const count = (trait: string): number =>
    traits.get(trait)?.values.filter((value) => value.classId === classId).length ?? 0;
  const countsOnly = areDefault && count(COUNT_FOR_YIELD) > 2 * count('yield');
  const meant = [...weights].map(
    ([trait, weight]) => [countsOnly && trait === 'yield' ? COUNT_FOR_YIELD : trait, weight] as const,
  );
  const recorded = meant.filter(([trait]) => isRecorded(trait));
  if (recorded.length === 0 && areDefault && isRecorded('again')) recorded.push(['again', 1]);
  const goals = recorded.map(([trait, weight]): Goal => {
    const range = rangeSet(settings, classId, trait);
    const { kind } = traitFacts(trait, settings.traits);
    const share = kind === 'yes-no' || kind === 'ranking';
    // The points of a share are the share itself.
    return { trait, weight, good: range?.good ?? (share ? 1 : null), bad: range?.bad ?? (share ? 0 : null) };
  });
  return {
    goals,
    areDefault,
    countsOnly,
    unrecorded: areDefault ? [] : [...weights.keys()].filter((trait) => !isRecorded(trait)),
  };
}

/** Limits of a class, in the order of trial.yaml. */
export function mustOf(classId: string, settings: Settings): readonly MustLimit[] {
  return [...(settings.must.get(classId) ?? [])].map(([trait, limit]) => ({ trait, ...limit }));
}
