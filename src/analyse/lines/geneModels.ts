import { nth } from '../../numerics/element.ts';
import { logGamma } from '../../numerics/gamma.ts';
import { GENE_PRIORS, geneModels, mixed, selfing } from './geneKinds.ts';
import type { GeneModel } from './geneKinds.ts';

/** A plant of a selfing pedigree: its state, counted from 0, and the family from its own seed. */
export interface GenePlant {
  /** Null where it was not looked at. */
  readonly state: number | null;
  readonly family: GeneFamily | null;
}

/** Plants from one selfed mother: those that stand by themselves, and others counted by state. */
export interface GeneFamily {
  /** Numbers of plants by state, none of them among `plants`; as long as there are states. */
  readonly counts: readonly number[];
  readonly plants: readonly GenePlant[];
}

/** Plants of a generation from the mixed seed of many mothers. */
export interface GeneBulk extends GeneFamily {
  readonly generation: number;
}

/** Everything that was seen of one trait in a cross. */
export interface GenePedigree {
  /** How many states the trait has: 2 to 4. */
  readonly states: number;
  readonly f2: GeneFamily;
  readonly bulks: readonly GeneBulk[];
  readonly f1: number | null;
  readonly parents: readonly [number, number] | null;
  /** Chance that a plant is called wrongly, 0 to 1. */
  readonly calledWrong: number;
}

export interface GenePosterior {
  readonly models: readonly (GeneModel & { readonly logLikelihood: number; readonly share: number })[];
  /** None of the models: its prior, and what is left to it. */
  readonly other: { readonly prior: number; readonly logLikelihood: number; readonly share: number };
}

/** Chances of the states that are called, by genotype. */
function calls({ map }: GeneModel, states: number, wrong: number): readonly (readonly number[])[] {
  return map.map((state) =>
    Array.from({ length: states }, (_, called) => (called === state ? 1 - wrong : wrong / (states - 1))),
  );
}

interface Peeling {
  readonly selfed: readonly (readonly number[])[];
  readonly called: readonly (readonly number[])[];
}

/** Logarithm of the sum over an offspring's genotypes of chance times likelihood, by the mother's genotype. */
function throughMeiosis(rows: readonly (readonly number[])[], logs: readonly number[]): readonly number[] {
  const top = Math.max(...logs);
  const likelihoods = logs.map((own) => Math.exp(own - top));
  return rows.map((row) => top + Math.log(row.reduce((sum, own, g) => sum + own * nth(likelihoods, g), 0)));
}

/**
 * Log-likelihood of a family by its mother's genotype.
 *
 * @param rows  chances of its plants' genotypes, a row a mother; by default those of selfing
 */
function familyLogs(family: GeneFamily, peeling: Peeling, rows = peeling.selfed): readonly number[] {
  const { called } = peeling;
  const logs = rows.map((row) =>
    family.counts.reduce((sum, count, state) => {
      if (count === 0) return sum;
      const chance = row.reduce((own, share, g) => own + share * nth(nth(called, g), state), 0);
      return sum + count * Math.log(chance);
    }, 0),
  );
  return family.plants.reduce<readonly number[]>((sums, plant) => {
    const own = throughMeiosis(rows, plantLogs(plant, peeling));
    return sums.map((sum, g) => sum + nth(own, g));
  }, logs);
}

/** Log-likelihood of a plant and its descendants by its genotype. */
function plantLogs({ state, family }: GenePlant, peeling: Peeling): readonly number[] {
  const own = peeling.called.map((row) => (state === null ? 0 : Math.log(nth(row, state))));
  if (!family) return own;
  const below = familyLogs(family, peeling);
  return own.map((log, g) => log + nth(below, g));
}

/** Chances of the genotypes in a generation from the F1 by selfing without choice. */
function inGeneration(genes: 1 | 2, generation: number): readonly number[] {
  const selfed = selfing(genes);
  let chances: readonly number[] = selfed.map((_, g) => (g === mixed(genes) ? 1 : 0));
  for (let g = 1; g < generation; g++)
    chances = chances.map((_, to) => chances.reduce((sum, own, from) => sum + own * nth(nth(selfed, from), to), 0));
  return chances;
}

/** Crosses of two homozygous parents from which an F1 that is mixed in all genes comes, each way round. */
export const PARENTS: Readonly<Record<1 | 2, readonly (readonly [number, number])[]>> = {
  1: [
    [0, 2],
    [2, 0],
  ],
  2: [
    [0, 8],
    [2, 6],
    [8, 0],
    [6, 2],
  ],
};

/** States of a family's plants, its own and all their descendants': each family with shares of its own. */
function otherLog({ counts, plants }: GeneFamily): number {
  const all = [...counts];
  let below = 0;
  for (const { state, family } of plants) {
    if (state !== null) all[state] = (all[state] ?? 0) + 1;
    if (family) below += otherLog(family);
  }
  const total = all.reduce((sum, own) => sum + own, 0);
  return (
    logGamma(all.length) + all.reduce((sum, own) => sum + logGamma(own + 1), 0) - logGamma(all.length + total) + below
  );
}

/** Log-likelihood of all that was seen under a model. */
function modelLog(model: GeneModel, pedigree: GenePedigree): number {
  const { states, f1, f2, parents, bulks, calledWrong } = pedigree;
  const called = calls(model, states, calledWrong);
  const peeling = { selfed: selfing(model.genes), called };
  const root = mixed(model.genes);
  let log = nth(familyLogs(f2, peeling), root);
  for (const bulk of bulks) log += nth(familyLogs(bulk, peeling, [inGeneration(model.genes, bulk.generation)]), 0);
  if (f1 !== null) log += Math.log(nth(nth(called, root), f1));
  if (parents) {
    const [one, other] = parents;
    const crosses = PARENTS[model.genes];
    const chance = crosses.reduce((sum, [a, b]) => sum + nth(nth(called, a), one) * nth(nth(called, b), other), 0);
    log += Math.log(chance / crosses.length);
  }
  return log;
}

/**
 * What is left to each gene model by all that was seen of a trait in a selfing pedigree (peeling).
 *
 * @source Elston & Stewart (1971) Human Heredity 21:523; reference case o34
 */
export function genePosterior(pedigree: GenePedigree): GenePosterior {
  const { states, f1, f2, parents, bulks } = pedigree;
  const models = geneModels(states).map((model) => ({ ...model, logLikelihood: modelLog(model, pedigree) }));
  const known = (f1 === null ? 0 : 1) + (parents ? 2 : 0);
  const otherLikelihood = otherLog(f2) + bulks.reduce((sum, own) => sum + otherLog(own), 0) - known * Math.log(states);
  const top = Math.max(otherLikelihood, ...models.map(({ logLikelihood }) => logLikelihood));
  const weights = models.map(({ prior, logLikelihood }) => prior * Math.exp(logLikelihood - top));
  const otherWeight = GENE_PRIORS.other * Math.exp(otherLikelihood - top);
  const total = weights.reduce((sum, own) => sum + own, otherWeight);
  return {
    models: models.map((model, i) => ({ ...model, share: nth(weights, i) / total })),
    other: { prior: GENE_PRIORS.other, logLikelihood: otherLikelihood, share: otherWeight / total },
  };
}

/**
 * Chances of the genotypes of one plant under a model, from all that was seen.
 *
 * @param path  its number in the F2, then in that plant's family, and so on; counted from 0
 */
export function plantGenotypes(pedigree: GenePedigree, model: GeneModel, path: readonly number[]): readonly number[] {
  const selfed = selfing(model.genes);
  const peeling = { selfed, called: calls(model, pedigree.states, pedigree.calledWrong) };
  let before: readonly number[] = selfed.map((_, g) => (g === mixed(model.genes) ? 0 : -Infinity));
  let family = pedigree.f2;
  for (const [depth, at] of path.entries()) {
    const plant = nth(family.plants, at);
    const rest = familyLogs({ ...family, plants: family.plants.filter((_, i) => i !== at) }, peeling);
    const logs = before.map((own, g) => own + nth(rest, g));
    const top = Math.max(...logs);
    const mothers = logs.map((own) => Math.exp(own - top));
    const chances = selfed.map((_, to) =>
      mothers.reduce((sum, own, from) => sum + own * nth(nth(selfed, from), to), 0),
    );
    const isLast = depth === path.length - 1;
    const own = plantLogs(isLast ? plant : { ...plant, family: null }, peeling);
    before = chances.map((chance, g) => Math.log(chance) + nth(own, g));
    if (!isLast && plant.family) family = plant.family;
  }
  const top = Math.max(...before);
  const weights = before.map((own) => Math.exp(own - top));
  const total = weights.reduce((sum, own) => sum + own, 0);
  return weights.map((own) => own / total);
}

/** Shares of offspring with one of the good states, by the genotype of their selfed mother. */
export function goodShares(model: GeneModel, good: readonly number[]): readonly number[] {
  const isGood = model.map.map((state) => (good.includes(state) ? 1 : 0));
  return selfing(model.genes).map((row) => row.reduce((sum, own, g) => sum + own * nth(isGood, g), 0));
}

/** Chance that a plant breeds true for good states, among the gene models, 0 to 1. */
export function breedsTrue(
  pedigree: GenePedigree,
  { models, other }: GenePosterior,
  path: readonly number[],
  good: readonly number[],
): number {
  const sum = models.reduce((total, model) => {
    const shares = goodShares(model, good);
    const genotypes = plantGenotypes(pedigree, model, path);
    return total + model.share * genotypes.reduce((own, chance, g) => own + (nth(shares, g) > 0.999 ? chance : 0), 0);
  }, 0);
  return sum / (1 - other.share);
}
