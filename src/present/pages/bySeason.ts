import type { SeasonSeen } from '../../analyse/seen.ts';
import { plantModel, ratingModel, ripeningModel } from '../../analyse/traitsSeen.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import type { Estimate } from '../../terms/estimate.ts';
import { traitFacts } from '../../terms/traits.ts';
import { expectedIn } from '../nextSeason/source.ts';
import type { AdviceSource } from '../nextSeason/source.ts';

/** A point of a small picture: its place along the seasons, its height, in words where it is the variety's own. */
export interface SeasonPoint {
  readonly at: number;
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly text: string;
}

/** One goal through the seasons: what was seen of a variety and of the others, and what is expected next. */
export interface SeasonPicture {
  readonly trait: string;
  readonly title: string;
  readonly years: readonly string[];
  readonly own: readonly SeasonPoint[];
  readonly others: readonly (readonly { readonly at: number; readonly estimate: number }[])[];
  readonly next: SeasonPoint | null;
  readonly from: number;
  readonly to: number;
  readonly isLowerBetter: boolean;
}

/** What was seen of a trait, whatever kind it is; undefined where nothing was. */
function estimateOf(seen: SeasonSeen, trait: string, variety: string): Estimate | undefined {
  if (trait === 'first_ripe') return ripeningModel(seen)?.estimates.get(variety);
  return (plantModel(seen, trait) ?? ratingModel(seen, trait))?.estimates.get(variety);
}

/** So many seasons are shown, the newest. */
const SHOWN = 8;

/** A small picture for each goal of the class. */
export function seasonPictures(source: AdviceSource, outcome: ClassOutcome, variety: string): readonly SeasonPicture[] {
  const { trial, writing, next } = source;
  const seasons = source.seasons.slice(-SHOWN);
  const members = trial.varieties.filter(({ classId, id }) => classId === outcome.classId && id !== variety);
  return outcome.case.goals.flatMap(({ trait }): readonly SeasonPicture[] => {
    const facts = traitFacts(trait, trial.settings.traits);
    const pointsOf = (id: string): readonly SeasonPoint[] =>
      seasons.flatMap((seen, at) => {
        const own = estimateOf(seen, trait, id);
        if (!own || own.estimate === null) return [];
        const { estimate, low, high } = own;
        return [{ at, estimate, low, high, text: writing.parted(own, facts.unit)[0] }];
      });
    const own = pointsOf(variety);
    const expected = expectedIn(next, trait, outcome.classId, variety);
    if (own.length === 0 || !expected) return [];
    const others = members.map(({ id }) => pointsOf(id)).filter((points) => points.length > 0);
    const ahead: SeasonPoint = {
      at: seasons.length,
      ...expected,
      text: writing.parted(expected, facts.unit)[0],
    };
    const all = [...own, ...others.flat(), ahead].map(({ estimate }) => estimate);
    const ends = [...own, ahead].flatMap(({ low, high }) => [low, high]).filter((end) => end !== null);
    return [
      {
        trait,
        title: writing.words.capital(writing.trait(trait)),
        years: [
          ...seasons.map(({ season }) => String(season.year)),
          writing.words.bench.variety.nextMark(String(next.season)),
        ],
        own,
        others,
        next: ahead,
        from: Math.min(...all, ...ends),
        to: Math.max(...all, ...ends),
        isLowerBetter: facts.better === 'lower',
      },
    ];
  });
}
