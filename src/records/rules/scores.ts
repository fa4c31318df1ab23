import { isOfClub } from '../../terms/gardens.ts';
import { totalsOf } from '../../terms/record.ts';
import { foldName } from '../../terms/names.ts';
import { fileOnly } from '../../terms/place.ts';
import type { Score, Season } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { nearPairs } from './nearNames.ts';
import type { Spelling } from './nearNames.ts';
import { nth } from '../../numerics/element.ts';

/** The taster of a table without tasters: a lone grower, who knows that it is one. */
export const LONE_GROWER = 'grower';

/** Notes ratings that one person gave, and scores of totals.csv that ratings.csv puts aside. */
export function reportScores(season: Season, { settings, log }: CheckContext): void {
  // In a club a member's ratings and another's sheet stand side by side.
  if (isOfClub(season)) return;
  const ratings = fileOnly(`data/${season.year}/ratings.csv`);
  for (const trait of settings.traits.values()) {
    if (trait.kind === 'measure') continue;
    const own = season.scores.filter((score) => score.trait === trait.key);
    if (own.length === 0) continue;
    const tasters = new Set(own.map(({ taster }) => foldName(taster)));
    if (trait.kind === 'rating' && tasters.size === 1 && !tasters.has(LONE_GROWER)) {
      log.add('scores-by-one-taster', ratings, trait.key);
    }
    const totalled = season.plantings.find((planting) => totalsOf(planting)?.traits.has(trait.key));
    if (totalled) log.add('totals-and-ratings', totalled.place, trait.key);
  }
}

/** Warns of spellings that seem to be one taster; two who scored the same on one day are two. */
export function reportTasters(tasters: readonly Spelling[], scores: readonly Score[], { log }: CheckContext): void {
  const given = new Map<string, Set<string>>();
  for (const { taster, variety, planting, trait, day } of scores) {
    const own = given.get(taster) ?? new Set<string>();
    given.set(taster, own.add([variety, planting, trait, day].join('|')));
  }
  const areTwo = (a: string, b: string): boolean => {
    const [first, second] = [given.get(a), given.get(b)];
    return first !== undefined && second !== undefined && [...first].some((sign) => second.has(sign));
  };
  for (const [a, b] of nearPairs(tasters, true, areTwo)) log.add('taster-near', b.place, b.name, { near: a.name });
}

const MANY_VARIETIES = 6;

/** Warns of a taster who gave one score to many varieties that others tell apart, or one away from the scale's ends. */
export function reportSameScores(scores: readonly Score[], file: string, { log, settings }: CheckContext): void {
  const place = fileOnly(file);
  for (const trait of settings.traits.values()) {
    if (trait.kind !== 'rating') continue;
    const own = scores.filter((score) => score.trait === trait.key);
    const byTaster = new Map<string, Score[]>();
    for (const score of own) {
      const known = byTaster.get(foldName(score.taster));
      if (known) known.push(score);
      else byTaster.set(foldName(score.taster), [score]);
    }
    for (const list of byTaster.values()) {
      const varieties = new Set(list.map(({ variety }) => variety));
      const value = nth(list, 0).score;
      if (varieties.size < MANY_VARIETIES || list.some(({ score }) => score !== value)) continue;
      const ours = new Set(list);
      const others = own.filter((score) => !ours.has(score) && varieties.has(score.variety));
      const agreeing = others.filter(({ score }) => score === value).length;
      const differ = new Set(others.map(({ score }) => score)).size >= 3 && 2 * agreeing < others.length;
      if (differ || (others.length === 0 && value > trait.from && value < trait.to)) {
        const facts = { scores: String(varieties.size), trait: trait.key };
        log.add('taster-one-score', place, String(value), facts);
      }
    }
  }
}
