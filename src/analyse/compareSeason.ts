import { plantModels, ratingModels, ripeningModel } from './traitsSeen.ts';
import { afresh } from '../terms/recall.ts';
import { traitFacts } from '../terms/traits.ts';
import { classLookup } from '../terms/trial.ts';
import type { Trial } from '../terms/trial.ts';
import { compareClass } from './comparisons.ts';
import type { ClassComparisons } from './comparisons.ts';
import type { ClassMeans } from './plantTypes.ts';
import type { RatingModel } from './ratings.ts';
import type { SeasonSeen } from './seen.ts';
import { nth } from '../numerics/element.ts';

/** Comparisons within classes, by trait and class. */
export type SeasonComparisons = ReadonlyMap<string, ReadonlyMap<string, ClassComparisons>>;

/** A rating's means, class by class. */
function ratingClasses({ means }: RatingModel, classOf: (variety: string) => string): readonly ClassMeans[] {
  if (!means) return [];
  const ids = new Set(means.varieties.map(classOf));
  return [...ids].map((classId) => {
    const own = means.varieties.flatMap((variety, i) => (classOf(variety) === classId ? [i] : []));
    return {
      classId,
      varieties: own.map((i) => nth(means.varieties, i)),
      estimates: own.map((i) => nth(means.estimates, i)),
      covariance: own.map((i) => own.map((j) => nth(nth(means.covariance, i), j))),
    };
  });
}

/** Letters of a further part begin with its number: they say nothing of those of another part. */
const numbered = (letters: ReadonlyMap<string, string>, part: number): ReadonlyMap<string, string> =>
  part === 0 ? letters : new Map([...letters].map(([id, own]) => [id, `${part + 1}${own}`]));

/** Comparisons by class; parts of a class that no garden joins stand beside each other, the largest first. */
function partsTogether(compared: readonly [string, ClassComparisons][]): ReadonlyMap<string, ClassComparisons> {
  const byClass = new Map<string, ClassComparisons[]>();
  for (const [id, own] of compared) byClass.set(id, [...(byClass.get(id) ?? []), own]);
  return new Map(
    [...byClass].map(([id, parts]) => [
      id,
      {
        letters: new Map(parts.flatMap(({ letters }, part) => [...numbered(letters, part)])),
        againstCheck: parts.find(({ againstCheck }) => againstCheck !== null)?.againstCheck ?? null,
        newAgainstReturning: parts.find((own) => own.newAgainstReturning !== null)?.newAgainstReturning ?? null,
      },
    ]),
  );
}

/**
 * Every comparison of a season: of yield, fruits, first ripe fruit, measures and ratings, class by class.
 *
 * @param recall  gives what was worked out before
 * @returns       by trait and class id; a class without degrees of freedom has none
 * @source methods page A2
 */
export function compareSeason({ settings, varieties }: Trial, seen: SeasonSeen, recall = afresh): SeasonComparisons {
  const classOf = classLookup(varieties);
  const fresh = new Set<string>(
    seen.varieties.filter(({ status }) => status === 'new').map(({ variety }) => variety.id),
  );
  const fits = [
    ...plantModels(seen).map(([key, model]) => ({
      key,
      df: model.residualDf,
      isRatio: model.family !== 'gaussian',
      means: model.classes,
    })),
    ...ratingModels(seen).map(([key, model]) => ({
      key,
      df: model.residualDf,
      isRatio: false,
      means: ratingClasses(model, classOf),
    })),
  ];
  const ripening = ripeningModel(seen);
  if (ripening) {
    const { residualDf: df, classes: means } = ripening;
    fits.push({ key: 'first_ripe', df, isRatio: true, means });
  }
  return new Map(
    fits.map(({ key, df, isRatio, means }) => {
      const lowerIsBetter = traitFacts(key, settings.traits).better === 'lower';
      const compared = means.map((own): [string, ClassComparisons] => {
        const checkVariety = settings.classes.get(own.classId)?.checkVariety ?? null;
        const options = {
          df,
          level: settings.interval,
          isRatio,
          lowerIsBetter,
          checkVariety,
          fresh: own.varieties.filter((id) => fresh.has(id)),
        };
        const { classId, estimates, covariance } = own;
        const input = { means: { classId, varieties: own.varieties, estimates, covariance }, options };
        return [classId, recall('comparisons', input, (known) => compareClass(known.means, known.options))];
      });
      return [key, partsTogether(compared)];
    }),
  );
}
