import type { SeasonSeen } from '../analyse/seen.ts';
import { traitValues } from '../analyse/expected/values.ts';
import { afresh } from '../terms/recall.ts';
import { fromWorking } from '../terms/scales.ts';
import { traitFacts } from '../terms/traits.ts';
import type { Trial } from '../terms/trial.ts';
import { candidatesOf } from './candidates.ts';
import type { ClassAdvice } from './adviseClass.ts';
import type { ClassCase } from './cases.ts';
import { adviseNextSeason } from './nextSeason.ts';
import { pointsOf } from './points.ts';
import { neededScore } from './spots.ts';
import { keyed, nth } from '../numerics/element.ts';

/** How advice of the winter before fared in the season it was for. */
export interface AdviceKept {
  readonly advised: readonly string[];
  /** Those of them that were grown, and so can be judged. */
  readonly grown: readonly string[];
  /** Those that earned one of the spots by what was seen. */
  readonly earned: readonly string[];
}

export interface LastWinter {
  readonly classId: string;
  readonly season: number;
  readonly keeps: AdviceKept;
  readonly list: AdviceKept;
}

/** Varieties that stood in a season's competition: those advised on, and newcomers that the rule does not leave out. */
function competing(trial: Trial, seasons: readonly SeasonSeen[], own: ClassCase): ReadonlySet<string> {
  const settings = trial.settings.classes.get(own.classId);
  const year = nth(seasons, -1).season.year;
  const advised = own.competitors.filter(({ competes }) => competes).map(({ id }) => id);
  const known = new Set(own.competitors.map(({ id }) => id));
  const fresh = (settings ? candidatesOf(trial, seasons, settings, year) : [])
    .filter(({ variety, excluded }) => excluded === null && !known.has(variety.id))
    .map(({ variety }) => variety.id);
  return new Set([...advised, ...fresh]);
}

/** Scores of a season by what was seen in it: the same goals and ranges, an unrecorded trait at the class's middle. */
function scoresSeen(trial: Trial, seen: SeasonSeen, advice: ClassAdvice, own: ClassCase) {
  const scores = new Map<string, number>();
  const grown: readonly string[] = seen.varieties
    .filter(({ variety }) => variety.classId === own.classId)
    .map(({ variety }) => variety.id);
  let newcomer = 0;
  const total = advice.goals.reduce((sum, { weight }) => sum + weight, 0);
  for (const { trait, weight, range } of advice.goals) {
    const found = traitValues([seen], traitFacts(trait, trial.settings.traits), () => own.classId);
    const here = new Map(
      (found?.values ?? [])
        .filter(({ variety }) => grown.includes(variety))
        .map(({ variety, theta }) => [variety, theta]),
    );
    if (here.size === 0) continue;
    const middle = [...here.values()].reduce((sum, theta) => sum + theta, 0) / here.size;
    const points = (theta: number): number =>
      (weight / total) * pointsOf(range, fromWorking(found?.scale ?? 'plain', theta));
    newcomer += points(middle);
    for (const id of grown) scores.set(id, (scores.get(id) ?? 0) + points(here.get(id) ?? middle));
  }
  return { scores, newcomer };
}

function kept(advised: readonly string[], scores: ReadonlyMap<string, number>, needed: number): AdviceKept {
  const grown = advised.filter((id) => scores.has(id));
  return { advised, grown, earned: grown.filter((id) => keyed(scores, id) >= needed) };
}

/**
 * The same rule run on the seasons before the last, and what became of its advice: a spot counts as earned by the
 * season's own figures, which carry their own error.
 *
 * @param seasons  what was seen, in order of years
 * @param recall   gives what was worked out before
 * @returns        one entry a class that could be advised then and was grown since; empty with one season
 * @source methods page C
 */
export function lastWinter(trial: Trial, seasons: readonly SeasonSeen[], recall = afresh): readonly LastWinter[] {
  const last = seasons.at(-1);
  if (!last || seasons.length < 2) return [];
  const then = adviseNextSeason(trial, seasons.slice(0, -1), false, recall);
  return then.classes.flatMap(({ advice, case: own }): readonly LastWinter[] => {
    if (!advice) return [];
    const { scores, newcomer } = scoresSeen(trial, last, advice, own);
    if (scores.size === 0) return [];
    const bar = own.bar === 'check' ? (scores.get(own.checkVariety ?? '') ?? newcomer) : newcomer;
    const eligible = competing(trial, seasons, own);
    const stood = [...scores].filter(([id]) => eligible.has(id)).map(([, score]) => score);
    if (stood.length === 0) return [];
    const needed = neededScore(Float64Array.from(stood), bar, own.spots);
    const keeps = advice.varieties.filter(({ verdict }) => verdict === 'keep').map(({ variety }) => variety);
    return [
      {
        classId: own.classId,
        season: last.season.year,
        keeps: kept(keeps, scores, needed),
        list: kept(advice.list, scores, needed),
      },
    ];
  });
}
