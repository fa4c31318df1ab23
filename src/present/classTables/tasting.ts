import { answers, ratingModels } from '../../analyse/traitsSeen.ts';
import type { RatingModel } from '../../analyse/ratings.ts';
import type { VarietySeen } from '../../analyse/seen.ts';
import type { Share } from '../../terms/estimate.ts';
import type { Writing } from '../numbers.ts';
import { classScores, lettersNote, lettersOf, tastersAmong, variety, withN } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';

function shareCell(share: Share | undefined, writing: Writing): string {
  const { figure } = writing.words;
  if (!share) return figure.notRecorded;
  const ends =
    share.low === null || share.high === null
      ? ''
      : ` (${figure.range(writing.number(share.low * 100), writing.percent(share.high, 0))})`;
  return `${figure.kOfN(String(share.k), String(share.n))}${ends}`;
}

/** How many tasted: by the scores, or, of a season known from totals, those said of the variety that most tasted. */
function tastersOf(source: Source, key: string, model: RatingModel): number {
  const said = source.own.map((v) => model.estimates.get(v.variety.id)?.tasters ?? 0);
  return Math.max(tastersAmong(classScores(source, key)), ...said);
}

function tastersLine(source: Source, ratings: readonly (readonly [string, RatingModel])[]): string {
  const { writing } = source;
  const { tables: say } = writing.words;
  const tasterWords = (n: number): string => (n === 1 ? say.onePerson : say.tasters(n));
  const lines = ratings.map(
    ([key, model]) =>
      `${writing.trait(key)}: ${tasterWords(tastersOf(source, key, model))}${model.kendallW === null ? '' : `, ${say.kendall(writing.number(model.kendallW, 2))}`}`,
  );
  return `${lines.join('; ')}. ${say.theseTasters}`;
}

export function tastingTable(source: Source): TableWords | null {
  const { own, writing, seen } = source;
  const { tables: say, figure } = writing.words;
  const ratings = ratingModels(seen).filter(([, model]) => own.some((v) => model.estimates.has(v.variety.id)));
  const asked = answers(seen).filter(([, shares]) => own.some((v) => shares.has(v.variety.id)));
  if (ratings.length === 0 && asked.length === 0) return null;
  const lead = ratings[0]?.[1];
  const rank = (v: VarietySeen): number => lead?.estimates.get(v.variety.id)?.estimate ?? -Infinity;
  const hasHeatClaims = own.some((v) => v.variety.claimHeat !== null);
  return {
    caption: say.tasting(source.percent),
    head: [
      say.variety,
      ...ratings.flatMap(([key, { trait }]) => [
        say.ratingScale(writing.trait(key), String(trait.from), String(trait.to)),
        '',
      ]),
      ...asked.map(([key]) => (key === 'again' ? say.again : writing.trait(key))),
      ...(hasHeatClaims ? [say.claimedHeat] : []),
    ],
    rows: own
      .filter(
        (v) =>
          ratings.some(([, model]) => model.estimates.has(v.variety.id)) ||
          asked.some(([, shares]) => shares.has(v.variety.id)),
      )
      .toSorted((a, b) => rank(b) - rank(a))
      .map((v) => [
        variety(v),
        ...ratings.flatMap(([key, model]) => {
          const estimate = model.estimates.get(v.variety.id);
          return [
            estimate ? withN(writing.interval(estimate, 'points'), estimate.tasters, writing) : figure.notTasted,
            lettersOf(source, key, v.variety.id),
          ];
        }),
        ...asked.map(([, shares]) => shareCell(shares.get(v.variety.id), writing)),
        ...(hasHeatClaims ? [heatClaim(v, writing)] : []),
      ]),
    foot: [
      tastersLine(source, ratings),
      ...(hasHeatClaims ? [say.heatNote] : []),
      ...(ratings[0] ? lettersNote(source, ratings[0][0]) : []),
    ],
  };
}

function heatClaim(v: VarietySeen, { number, words: { tables: say, figure } }: Writing): string {
  if (!v.variety.claimHeat) return '';
  const [low, high] = v.variety.claimHeat;
  if (low !== null && high !== null) return say.shu(figure.range(number(low), number(high)));
  return low === null ? say.shuUpTo(number(high!)) : say.shuFrom(number(low));
}
