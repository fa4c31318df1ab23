import type { SeasonSeen } from '../analyse/seen.ts';
import type { ClassSettings } from '../terms/settings.ts';
import { isLine } from '../terms/trial.ts';
import type { Trial, Variety } from '../terms/trial.ts';

/** Why a variety that was grown is no candidate for a spot. */
export type NoCandidate = 'retired' | 'early-line' | 'followed-by-descendant' | 'untried';

const FIXED_FROM = 5;

/** Ids of lines from which a later generation was grown. */
function parentsOfGrown(trial: Trial, seasons: readonly SeasonSeen[]): ReadonlySet<string> {
  const grown = new Set(seasons.flatMap(({ varieties }) => varieties.map(({ variety }) => variety.id)));
  const parents = new Set<string>();
  for (const { id, mother, father, from } of trial.varieties) {
    if (!grown.has(id)) continue;
    if (mother !== null) parents.add(mother);
    if (father !== null) parents.add(father);
    for (const plant of from) {
      const isPast = seasons.some(({ season }) => season.year === plant.season);
      if (isPast && plant.variety !== null && plant.variety !== id) parents.add(plant.variety);
    }
  }
  return parents;
}

/**
 * Every variety of a class that was ever grown, with the reason why it does not compete, if there is one.
 *
 * @param target  the season that is advised on
 * @source methods page C
 */
export function candidatesOf(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  own: ClassSettings,
  target: number,
): readonly { readonly variety: Variety; readonly excluded: NoCandidate | null }[] {
  const grown = new Set(seasons.flatMap(({ varieties }) => varieties.map(({ variety }) => variety.id)));
  const parents = parentsOfGrown(trial, seasons);
  const lastSeason = trial.seasons.at(-1)?.year ?? target;
  // "retired: yes" has no date: advice on a season that has been is not to know of it.
  const isRetired = ({ retired }: Variety): boolean =>
    retired === true ? target > lastSeason : retired !== false && retired <= target;
  return trial.varieties
    .filter(({ id, classId }) => classId === own.id && grown.has(id))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map((variety) => {
      if (isRetired(variety)) return { variety, excluded: 'retired' };
      if (isLine(variety) && parents.has(variety.id)) return { variety, excluded: 'followed-by-descendant' };
      const isEarly = isLine(variety) && (variety.generation ?? 0) < FIXED_FROM && !own.linesCompete;
      return { variety, excluded: isEarly ? 'early-line' : null };
    });
}
