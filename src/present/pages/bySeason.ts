import { quantileSorted } from 'simple-statistics';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { plantModel, ratingModel, ripeningModel } from '../../analyse/traitsSeen.ts';
import type { ClassOutcome } from '../../decide/nextSeason.ts';
import { onceEach, oncePer } from '../../terms/once.ts';
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

/** Where a class stands in a season: its lowest and highest estimate, and the middle half between. */
export interface SeasonBand {
  readonly at: number;
  readonly ends: readonly [number, number];
  readonly half: readonly [number, number];
}

/** One goal through the seasons: what was seen of a variety and of the others, and what is expected next. */
export interface SeasonPicture {
  readonly trait: string;
  readonly title: string;
  readonly years: readonly string[];
  readonly own: readonly SeasonPoint[];
  /** Empty where there are too many to be told apart: then the band stands for them. */
  readonly others: readonly (readonly ClassPoint[])[];
  readonly band: readonly SeasonBand[];
  readonly next: SeasonPoint | null;
  readonly from: number;
  readonly to: number;
  readonly isLowerBetter: boolean;
}

interface ClassPoint {
  readonly at: number;
  readonly estimate: number;
}

/** What was seen of a trait, whatever kind it is; undefined where nothing was. */
function estimateOf(seen: SeasonSeen, trait: string, variety: string): Estimate | undefined {
  if (trait === 'first_ripe') return ripeningModel(seen)?.estimates.get(variety);
  return (plantModel(seen, trait) ?? ratingModel(seen, trait))?.estimates.get(variety);
}

/** So many seasons are shown, the newest. */
const SHOWN = 8;
/** So many others are drawn one by one. */
const MOST_OTHERS = 24;

interface ClassSeen {
  readonly byVariety: ReadonlyMap<string, readonly ClassPoint[]>;
  readonly band: readonly SeasonBand[];
}

function bandOf(points: readonly ClassPoint[], at: number): readonly SeasonBand[] {
  const values = points
    .filter((own) => own.at === at)
    .map(({ estimate }) => estimate)
    .toSorted((a, b) => a - b);
  if (values.length === 0) return [];
  const of = (p: number): number => quantileSorted(values, p);
  return [{ at, ends: [of(0), of(1)], half: [of(0.25), of(0.75)] }];
}

/** What was seen of a trait in a class: the same for the pages of all its varieties. */
const classSeen = oncePer((source: AdviceSource) =>
  onceEach((classId: string) => onceEach((trait: string) => seenOfClass(source, classId, trait))),
);

function seenOfClass(source: AdviceSource, classId: string, trait: string): ClassSeen {
  const members = source.trial.varieties.filter((own) => own.classId === classId);
  const seasons = source.seasons.slice(-SHOWN);
  const byVariety = new Map(
    members.map(({ id }) => [
      id,
      seasons.flatMap((seen, at): readonly ClassPoint[] => {
        const estimate = estimateOf(seen, trait, id)?.estimate ?? null;
        return estimate === null ? [] : [{ at, estimate }];
      }),
    ]),
  );
  const points = [...byVariety.values()].flat();
  return { byVariety, band: seasons.flatMap((_, at) => bandOf(points, at)) };
}

/** A small picture for each goal of the class. */
export function seasonPictures(source: AdviceSource, outcome: ClassOutcome, variety: string): readonly SeasonPicture[] {
  const { trial, writing, next } = source;
  const seasons = source.seasons.slice(-SHOWN);
  return outcome.case.goals.flatMap(({ trait }): readonly SeasonPicture[] => {
    const facts = traitFacts(trait, trial.settings.traits);
    const own = seasons.flatMap((seen, at): readonly SeasonPoint[] => {
      const found = estimateOf(seen, trait, variety);
      if (!found || found.estimate === null) return [];
      const { estimate, low, high } = found;
      return [{ at, estimate, low, high, text: writing.parted(found, facts.unit)[0] }];
    });
    const expected = expectedIn(next, trait, outcome.classId, variety);
    if (own.length === 0 || !expected) return [];
    const { byVariety, band } = classSeen(source)(outcome.classId)(trait);
    const others = [...byVariety].flatMap(([id, points]) => (id !== variety && points.length > 0 ? [points] : []));
    const isMany = others.length > MOST_OTHERS;
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
        others: isMany ? [] : others,
        band: isMany ? band : [],
        next: ahead,
        from: Math.min(...all, ...ends),
        to: Math.max(...all, ...ends),
        isLowerBetter: facts.better === 'lower',
      },
    ];
  });
}
