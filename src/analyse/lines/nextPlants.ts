import { betaCdf } from '../../numerics/distributions.ts';
import { nth } from '../../numerics/element.ts';
import { goodShares, plantGenotypes } from './geneModels.ts';
import type { GenePedigree, GenePosterior } from './geneModels.ts';

/** One trait of a cross, with the states that are wanted. */
export interface WantedTrait {
  readonly pedigree: GenePedigree;
  readonly posterior: GenePosterior;
  /** States, counted from 0. */
  readonly good: readonly number[];
}

/** A mother whose seed is sown: where she stands in the pedigree of each trait, and how many of her offspring grow. */
export interface SownMother {
  readonly paths: readonly (readonly number[])[];
  readonly plants: number;
}

/** A share of offspring that is wanted, with its chance. */
type Shares = readonly (readonly [share: number, chance: number])[];

/** What a trait may be under one model: the model's share, and each mother's wanted shares. */
interface Case {
  readonly share: number;
  readonly mothers: readonly Shares[];
}

/** Distribution of the wanted share where no gene model holds: every state alike. */
function unknownShares(good: number, states: number, points: number): Shares {
  const cdf = (x: number): number => betaCdf(x, good, states - good);
  return Array.from(
    { length: points },
    (_, i) => [(i + 0.5) / points, cdf((i + 1) / points) - cdf(i / points)] as const,
  );
}

function gathered(shares: readonly number[], chances: readonly number[]): Shares {
  const sums = new Map<number, number>();
  shares.forEach((share, g) => sums.set(share, (sums.get(share) ?? 0) + nth(chances, g)));
  return [...sums].filter(([, chance]) => chance > 1e-15);
}

function casesOf(
  { pedigree, posterior, good }: WantedTrait,
  at: number,
  mothers: readonly SownMother[],
  points: number,
) {
  const models = posterior.models
    .filter(({ share }) => share > 1e-12)
    .map((model): Case => {
      const shares = goodShares(model, good);
      return {
        share: model.share,
        mothers: mothers.map(({ paths }) => gathered(shares, plantGenotypes(pedigree, model, nth(paths, at)))),
      };
    });
  const unknown = unknownShares(good.length, pedigree.states, points);
  return [...models, { share: posterior.other.share, mothers: mothers.map(() => unknown) }];
}

/** The wanted shares of several traits together: their genes are taken as not linked. */
function together(a: Shares, b: Shares): Shares {
  return a.flatMap(([one, p]) => b.map(([other, q]) => [one * other, p * q] as const));
}

/** What a forecast of next year's plants needs, worked out once for all numbers of plants. */
export interface WantedForecast {
  /** Share of a mother's offspring that is wanted, expected; a figure a mother. */
  readonly shares: readonly number[];
  /** Chance of at least one wanted plant among so many of each mother. */
  readonly chance: (plants: readonly number[]) => number;
}

/**
 * Next year's plants from chosen mothers: those with a good state in every trait. Within a model mothers are taken as
 * independent, which is exact where the mother of all is the F1.
 *
 * @param traits   one to three
 * @param mothers  at least one; their `plants` are not looked at
 * @source methods page L4; reference case o34
 */
export function wantedForecast(traits: readonly WantedTrait[], mothers: readonly SownMother[]): WantedForecast {
  const points = traits.length === 1 ? 200 : 40;
  let cases: readonly Case[] = [{ share: 1, mothers: mothers.map(() => [[1, 1]] as const) }];
  traits.forEach((trait, at) => {
    const own = casesOf(trait, at, mothers, points);
    cases = cases.flatMap((before) =>
      own.map((one) => ({
        share: before.share * one.share,
        mothers: before.mothers.map((shares, m) => together(shares, nth(one.mothers, m))),
      })),
    );
  });
  const sum = (shares: Shares, of: (share: number) => number): number =>
    shares.reduce((total, [share, chance]) => total + chance * of(share), 0);
  return {
    shares: mothers.map((_, m) =>
      cases.reduce((total, own) => total + own.share * sum(nth(own.mothers, m), (share) => share), 0),
    ),
    chance: (plants) =>
      cases.reduce((total, own) => {
        const none = plants.reduce(
          (product, n, m) => product * sum(nth(own.mothers, m), (share) => (1 - share) ** n),
          1,
        );
        return total + own.share * (1 - none);
      }, 0),
  };
}

/** More plants than this nobody grows for one look. */
const MOST_PLANTS = 200;

/**
 * The fewest plants of one mother among which a wanted one is found with a chance.
 *
 * @param chance  0 to 1
 * @returns       null where 200 are not enough: the plant may lack it
 */
export function plantsForChance(forecast: WantedForecast, chance: number): number | null {
  const reaches = (n: number): boolean => forecast.chance([n]) >= chance;
  if (!reaches(MOST_PLANTS)) return null;
  let [under, enough] = [0, MOST_PLANTS];
  while (enough - under > 1) {
    const middle = Math.floor((under + enough) / 2);
    if (reaches(middle)) enough = middle;
    else under = middle;
  }
  return enough;
}
