import type { VarietySeen } from '../../analyse/seen.ts';
import type { Share } from '../../terms/estimate.ts';
import type { Writing } from '../numbers.ts';
import { lettersNote, lettersOf, variety } from './source.ts';
import type { Source } from './source.ts';
import type { TableWords } from '../tables.ts';

function shareCell(share: Share | undefined, writing: Writing): string {
  if (!share) return 'not recorded';
  const ends =
    share.low === null || share.high === null
      ? ''
      : ` (${writing.number(share.low * 100)} to ${writing.number(share.high * 100)} %)`;
  return `${share.k} of ${share.n}${ends}`;
}

export function tastingTable(source: Source): TableWords | null {
  const { own, writing, seen } = source;
  const ratings = [...seen.ratings].filter(([, model]) => own.some((v) => model.estimates.has(v.variety.id)));
  const answers = [...seen.answers].filter(([, shares]) => own.some((v) => shares.has(v.variety.id)));
  if (ratings.length === 0 && answers.length === 0) return null;
  const lead = ratings[0]?.[1];
  const rank = (v: VarietySeen): number => lead?.estimates.get(v.variety.id)?.estimate ?? -Infinity;
  const hasHeatClaims = own.some((v) => v.variety.claimHeat !== null);
  return {
    caption: `Tasting, with ${source.percent} intervals; n counts tasters`,
    head: [
      'Variety',
      ...ratings.flatMap(([key, { trait }]) => [`${key.replaceAll('_', ' ')}, ${trait.from} to ${trait.to}`, '']),
      ...answers.map(([key]) => (key === 'again' ? 'would grow it again' : key.replaceAll('_', ' '))),
      ...(hasHeatClaims ? ['Claimed heat'] : []),
    ],
    rows: own
      .filter(
        (v) =>
          ratings.some(([, model]) => model.estimates.has(v.variety.id)) ||
          answers.some(([, shares]) => shares.has(v.variety.id)),
      )
      .toSorted((a, b) => rank(b) - rank(a))
      .map((v) => [
        variety(v),
        ...ratings.flatMap(([key, model]) => {
          const estimate = model.estimates.get(v.variety.id);
          return [
            estimate ? `${writing.interval(estimate, 'points')}; n ${estimate.tasters}` : 'not tasted',
            lettersOf(source, key, v.variety.id),
          ];
        }),
        ...answers.map(([, shares]) => shareCell(shares.get(v.variety.id), writing)),
        ...(hasHeatClaims ? [heatClaim(v, writing)] : []),
      ]),
    foot: [
      ratings
        .map(
          ([key, model]) =>
            `${key.replaceAll('_', ' ')}: ${model.tasters === 1 ? 'one person’s taste' : `${model.tasters} tasters`}${model.kendallW === null ? '' : `, Kendall’s W ${writing.number(model.kendallW, 2)}`}`,
        )
        .join('; ') + '. The intervals are for these tasters, not for people at large.',
      ...(hasHeatClaims
        ? ['Claimed heat is in Scoville units of dry fruit; tasters’ points cannot be turned into them.']
        : []),
      ...(ratings[0] ? lettersNote(source, ratings[0][0]) : []),
    ],
  };
}

function heatClaim(v: VarietySeen, { number }: Writing): string {
  if (!v.variety.claimHeat) return '';
  const [low, high] = v.variety.claimHeat;
  if (low !== null && high !== null) return `${number(low)} to ${number(high)} SHU`;
  return low === null ? `up to ${number(high!)} SHU` : `${number(low)} SHU or more`;
}
