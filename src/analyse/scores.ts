import { isOfClub } from '../terms/gardens.ts';
import { varietyId } from '../terms/ids.ts';
import { totalsOf } from '../terms/record.ts';
import type { Share } from '../terms/estimate.ts';
import type { Settings } from '../terms/settings.ts';
import type { DeclaredTrait } from '../terms/traits.ts';
import type { Score, Season } from '../terms/trial.ts';
import { nth } from '../numerics/element.ts';
import { wilsonInterval } from '../numerics/wilson.ts';
import { cellsOf } from './ratings.ts';

/**
 * Answers of a yes-no trait by variety: k of n.
 *
 * @param level  such as 0.95
 * @source Wilson (1927) JASA 22:209
 */
export function answerShares(scores: readonly Score[], level: number): ReadonlyMap<string, Share> {
  const counts = new Map<string, { k: number; n: number }>();
  for (const { variety, score } of scores) {
    const own = counts.get(variety) ?? { k: 0, n: 0 };
    own.k += score;
    own.n++;
    counts.set(variety, own);
  }
  const shares = new Map<string, Share>();
  for (const [variety, { k, n }] of counts) {
    const [low, high] = wilsonInterval(k, n, level);
    shares.set(variety, { k, n, low, high });
  }
  return shares;
}

/** A season's scores; in a club the garden is the taster, whoever tasted there. */
export function inGardens(season: Season, { gardens }: Pick<Settings, 'gardens'>): readonly Score[] {
  if (!isOfClub(season)) return season.scores;
  return season.scores.map((score) =>
    season.gardens.includes(score.taster) ? score : { ...score, taster: gardens.own },
  );
}

/** One answer of each garden about each variety: what most of its own were. */
function oneOfGarden(scores: readonly Score[]): readonly Score[] {
  return cellsOf(scores, ({ taster }) => taster).map(({ rater, variety, mean: share }, i) => ({
    ...nth(scores, i),
    taster: rater,
    variety: varietyId(variety),
    planting: null,
    score: share >= 0.5 ? 1 : 0,
  }));
}

/** Scores of a season by declared trait; totals count where the season has no scores of the trait. */
export function scoresByTrait(season: Season, settings: Settings): ReadonlyMap<DeclaredTrait, readonly Score[]> {
  const byTrait = new Map<DeclaredTrait, readonly Score[]>();
  const all = inGardens(season, settings);
  for (const trait of settings.traits.values()) {
    if (trait.kind === 'measure') continue;
    const own = all.filter((score) => score.trait === trait.key);
    const found = isOfClub(season) || own.length === 0 ? [...own, ...scoresFromTotals(season, trait.key)] : own;
    const scores = isOfClub(season) && trait.kind === 'yes-no' ? oneOfGarden(found) : found;
    if (scores.length > 0) byTrait.set(trait, scores);
  }
  return byTrait;
}

function scoresFromTotals(season: Season, trait: string): readonly Score[] {
  return season.plantings.flatMap((planting) => {
    const { variety, id } = planting;
    const score = totalsOf(planting)?.traits.get(trait);
    return score === undefined
      ? []
      : [
          {
            day: null,
            taster: isOfClub(season) ? planting.garden : 'notebook',
            variety,
            planting: id,
            trait,
            score,
            isBlind: null,
          },
        ];
  });
}
