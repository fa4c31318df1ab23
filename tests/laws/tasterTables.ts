import { compareClass } from '../../src/analyse/comparisons.ts';
import { fitRatings } from '../../src/analyse/ratings.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { varietyId } from '../../src/terms/ids.ts';
import type { RatingTrait } from '../../src/terms/traits.ts';

const FLAVOUR: RatingTrait = { key: 'flavour', kind: 'rating', from: 1, to: 9, better: 'higher' };

export type Given = readonly (readonly [taster: string, variety: string, score: number])[];

/** Everything that is said of a table of scores, against the variety `a`, `d` being new. */
export function saidOfScores(given: Given) {
  const scores = given.map(([taster, variety, score]) => ({
    day: null,
    taster,
    variety: varietyId(variety),
    planting: null,
    trait: 'flavour',
    score,
    isBlind: null,
  }));
  const model = fitRatings(FLAVOUR, scores, 0.95);
  const options = { df: model.residualDf, level: 0.95, isRatio: false, lowerIsBetter: false, checkVariety: 'a' };
  const compared = model.means && compareClass({ classId: 'all', ...model.means }, { ...options, fresh: ['d'] });
  return { model, compared };
}

/** Two or three tasters who score four varieties, each with three chances of four; the same for the same number. */
export function randomTable(number: number): Given {
  const { uniform } = randomStream(`tasters ${number}`);
  const tasters = 2 + Math.floor(uniform() * 2);
  return Array.from({ length: tasters }, (_, t) =>
    ['a', 'b', 'c', 'd'].flatMap((variety) =>
      uniform() < 0.75 ? [[`T${t}`, variety, 1 + Math.floor(uniform() * 9)] as const] : [],
    ),
  ).flat();
}

/** Figures of a table that are not finite. */
export function notFinite(given: Given): readonly number[] {
  if (given.length === 0) return [];
  const { model, compared } = saidOfScores(given);
  const estimates = [...model.estimates.values()].flatMap(({ estimate, low, high }) => [estimate, low, high]);
  const contrasts = [...(compared?.againstCheck?.varieties ?? []), compared?.newAgainstReturning ?? null];
  const figures = contrasts.flatMap((own) => (own ? [own.estimate, own.low, own.high, own.p] : []));
  return [...estimates, ...figures].filter((figure) => figure !== null).filter((figure) => !Number.isFinite(figure));
}
