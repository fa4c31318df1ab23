import type { Season, Trial, Variety } from '../../terms/trial.ts';

/** What is planned of a class. */
export interface PlannedClass {
  readonly name: string;
  /** Most plants first, then as in varieties.csv. */
  readonly varieties: readonly { readonly variety: Variety; readonly plants: number }[];
}

/** Plants of each variety that a planned season names, class by class; classes without any are left out. */
export function plannedByClass({ plantings }: Season, { settings, varieties }: Trial): readonly PlannedClass[] {
  const plants = new Map<string, number>();
  for (const own of plantings) plants.set(own.variety, (plants.get(own.variety) ?? 0) + own.plants);
  return [...settings.classes.values()].flatMap(({ id, name }) => {
    const own = varieties
      .filter((variety) => variety.classId === id && plants.has(variety.id))
      .map((variety) => ({ variety, plants: plants.get(variety.id) ?? 0 }))
      .toSorted((a, b) => b.plants - a.plants);
    return own.length === 0 ? [] : [{ name, varieties: own }];
  });
}
