import { nth } from '../../numerics/element.ts';
import { orders } from './ratios.ts';

/** How a trait may be inherited: by one gene or two, with a state for each genotype. */
export interface GeneModel {
  readonly ratio: string;
  readonly genes: 1 | 2;
  /** State of the genotypes aa, Aa, AA; or of aabb, aabB, aaBB, aAbb and so on. */
  readonly map: readonly number[];
  readonly prior: number;
}

/**
 * Priors of one gene, of two, and of none of the models: a judgement, no source. Within each, ratios share alike, and
 * within a ratio the ways in which its states can be assigned.
 */
export const GENE_PRIORS = { one: 0.6, two: 0.3, other: 0.1 } as const;

const ONE: readonly (readonly number[])[] = [
  [1, 0, 0],
  [0.25, 0.5, 0.25],
  [0, 0, 1],
];
const TWO: readonly (readonly number[])[] = ONE.flatMap((a) => ONE.map((b) => a.flatMap((x) => b.map((y) => x * y))));

/** Chances of an offspring's genotypes by its selfed mother's. */
export const selfing = (genes: 1 | 2): readonly (readonly number[])[] => (genes === 1 ? ONE : TWO);
/** The genotype that is mixed in all genes: that of the F1. */
export const mixed = (genes: 1 | 2): number => (genes === 1 ? 1 : 4);

const byGenes = (of: (hasA: boolean, hasB: boolean) => number): readonly number[] =>
  [0, 1, 2].flatMap((a) => [0, 1, 2].map((b) => of(a > 0, b > 0)));

const BASES: Readonly<Record<number, readonly (readonly [string, 1 | 2, readonly number[]])[]>> = {
  2: [
    ['3:1', 1, [1, 0, 0]],
    ['9:7', 2, byGenes((a, b) => (a && b ? 0 : 1))],
    ['15:1', 2, byGenes((a, b) => (a || b ? 0 : 1))],
    ['13:3', 2, byGenes((a, b) => (a || !b ? 0 : 1))],
  ],
  3: [
    ['1:2:1', 1, [0, 1, 2]],
    ['9:3:4', 2, byGenes((a, b) => (a && b ? 0 : a ? 1 : 2))],
    ['12:3:1', 2, byGenes((a, b) => (a ? 0 : b ? 1 : 2))],
    ['9:6:1', 2, byGenes((a, b) => (a && b ? 0 : a || b ? 1 : 2))],
  ],
  4: [['9:3:3:1', 2, byGenes((a, b) => (a && b ? 0 : a ? 1 : b ? 2 : 3))]],
};

/** True for an assignment of states that another one mirrors. */
function isMirrored(ratio: string, order: readonly number[]): boolean {
  if (ratio === '1:2:1') return nth(order, 0) > nth(order, 2);
  return ratio === '9:3:3:1' && nth(order, 1) > nth(order, 2);
}

/**
 * The models of a trait with so many states, with their priors.
 *
 * @param states  2 to 4
 */
export function geneModels(states: number): readonly GeneModel[] {
  const bases = BASES[states] ?? [];
  const genes = new Set(bases.map(([, own]) => own));
  const { one, two } = GENE_PRIORS;
  const shareOf = (own: 1 | 2): number => (genes.size === 2 ? (own === 1 ? one : two) : one + two);
  return bases.flatMap(([ratio, own, map]) => {
    const kept = orders([...Array(states).keys()]).filter((order) => !isMirrored(ratio, order));
    const alike = bases.filter(([, other]) => other === own).length;
    const prior = shareOf(own) / alike / kept.length;
    return kept.map((order) => ({ ratio, genes: own, map: map.map((state) => nth(order, state)), prior }));
  });
}
