import type { AdditiveFit, MarginalMeans } from './additive.ts';
import type { AdditiveData, Family } from './additiveData.ts';
import { choleskyFactor, solveLower, solveUpper } from './cholesky.ts';
import type { Cholesky } from './cholesky.ts';
import { connectedParts } from './connected.ts';
import { cell, nth } from './element.ts';
import { notConverged } from './notConverged.ts';

/** Treatments in many small blocks, which are eliminated one by one: linear in the number of blocks. */
export interface BlocksData extends Omit<AdditiveData, 'block' | 'weight'> {
  /** Block of each response, 0-based, every block present. */
  readonly block: readonly number[];
}

export interface BlocksFit extends AdditiveFit {
  /** Connected part of each group: nothing compares groups of different parts. */
  readonly partOf: readonly number[];
  readonly parts: number;
}

const MOST_STEPS = 500;
const SMALLEST_PART = 1e-6;
const ROUNDING = 1e-14;
const CLOSE_ENOUGH = 1e-9;

/** Working response and weights of a step of Fisher scoring. */
export interface Working {
  readonly z: Float64Array;
  readonly w: Float64Array;
}

/** A solution of the normal equations: group + block. */
export interface Solved {
  /** Effects of the groups, adding up to 0 in each part. */
  readonly groups: Float64Array;
  /** Effects of the blocks, each with its weight. */
  readonly blocks: Float64Array;
  readonly blockWeight: Float64Array;
  readonly factor: Cholesky;
}

function working({ family, y, relativeVariance }: BlocksData, eta: Float64Array): Working {
  const mean = (e: number): number => (family === 'gaussian' ? e : Math.exp(e));
  const isLog = family !== 'gaussian';
  const z = eta.map((e, i) => e + (isLog ? (nth(y, i) - mean(e)) / mean(e) : nth(y, i) - e));
  const w = eta.map((e, i) => (family === 'poisson' ? mean(e) : 1) / nth(relativeVariance, i));
  return { z, w };
}

/** Which group and block each response belongs to. */
export interface BlocksTable {
  readonly group: readonly number[];
  readonly block: readonly number[];
  readonly groups: number;
  readonly rowsOfBlock: readonly (readonly number[])[];
  readonly partOf: readonly number[];
  readonly parts: number;
}

type Table = BlocksData & BlocksTable;

/** Groups and blocks, every one present, numbered from 0. */
export function blocksTable(group: readonly number[], block: readonly number[]): BlocksTable {
  const { ofRow: partOf, count: parts } = connectedParts(group, block);
  const rowsOfBlock: number[][] = [];
  block.forEach((b, i) => (rowsOfBlock[b] ??= []).push(i));
  return { group, block, groups: partOf.length, rowsOfBlock, partOf, parts };
}

/** Normal equations of groups within blocks, C = δ Σw - Σ wᵢwⱼ/W, made regular part by part. */
export function solveBlocks({ group, groups, rowsOfBlock, partOf }: BlocksTable, { z, w }: Working): Solved {
  const matrix = new Float64Array(groups * groups);
  const right = new Float64Array(groups);
  const means = new Float64Array(rowsOfBlock.length);
  const blockWeight = new Float64Array(rowsOfBlock.length);
  rowsOfBlock.forEach((rows, b) => {
    let [total, sum] = [0, 0];
    for (const i of rows) {
      total += cell(w, i);
      sum += cell(w, i) * cell(z, i);
    }
    means[b] = sum / total;
    blockWeight[b] = total;
    for (const i of rows) {
      const at = nth(group, i) * groups;
      matrix[at + nth(group, i)]! += cell(w, i);
      right[nth(group, i)]! += cell(w, i) * (cell(z, i) - cell(means, b));
      for (const j of rows) matrix[at + nth(group, j)]! -= (cell(w, i) * cell(w, j)) / total;
    }
  });
  const scale = matrix.reduce((most, own) => Math.max(most, own), 0) || 1;
  for (let i = 0; i < groups; i++)
    for (let j = 0; j < groups; j++) if (partOf[i] === partOf[j]) matrix[i * groups + j]! += scale / groups;
  const factor = choleskyFactor(matrix, groups) ?? notConverged('the fit of varieties within gardens');
  const effects = solveUpper(factor, groups, solveLower(factor, groups, right));
  const blocks = means.map((mean, b) => {
    const shift = nth(rowsOfBlock, b).reduce((sum, i) => sum + cell(w, i) * cell(effects, nth(group, i)), 0);
    return mean - shift / cell(blockWeight, b);
  });
  return { groups: effects, blocks, blockWeight, factor };
}

/** group + block of every response. */
export const predictBlocks = ({ group, block }: BlocksTable, { groups, blocks }: Solved): Float64Array =>
  Float64Array.from(group, (g, i) => cell(groups, g) + cell(blocks, nth(block, i)));

/** Half the deviance up to a constant: what a step must not make larger. */
function distance({ family, y, relativeVariance }: Table, eta: Float64Array): number {
  return eta.reduce((sum, e, i) => {
    const own = nth(y, i);
    return sum + (family === 'poisson' ? Math.exp(e) - own * e : own * Math.exp(-e) + e) / nth(relativeVariance, i);
  }, 0);
}

/** Quasi-likelihood by scoring, steps halved where they go too far. */
function scored(table: Table): { readonly eta: Float64Array; readonly last: Solved } {
  const average = table.y.reduce((sum, own) => sum + own, 0) / table.y.length;
  // Half of the way to the middle: the logarithm of a zero is none.
  let eta: Float64Array = Float64Array.from(table.y, (own) => Math.log((own + average) / 2));
  let change = Infinity;
  for (let i = 0; i < MOST_STEPS && change >= 1e-13; i++) {
    const next = predictBlocks(table, solveBlocks(table, working(table, eta)));
    change = next.reduce((most, own, j) => Math.max(most, Math.abs(own - cell(eta, j))), 0);
    const from = distance(table, eta);
    const start = eta;
    const step = (part: number): Float64Array => next.map((own, j) => cell(start, j) + part * (own - cell(start, j)));
    // The first step leaves the start, which is no sum of effects.
    const isTooFar = (part: number): boolean =>
      i > 0 && part > SMALLEST_PART && !(distance(table, step(part)) <= from + ROUNDING * Math.abs(from));
    let part = 1;
    while (isTooFar(part)) part /= 2;
    eta = part === 1 ? next : step(part);
  }
  if (!(change < CLOSE_ENOUGH)) notConverged('the fit of varieties within gardens');
  return { eta, last: solveBlocks(table, working(table, eta)) };
}

const unitVariance = (family: Family, mean: number): number =>
  family === 'gamma' ? mean * mean : family === 'poisson' ? mean : 1;

/** Means of groups averaged over blocks, each block alike; groups and blocks of one part. */
export function blockMeans(table: BlocksTable, { w }: Pick<Working, 'w'>, solved: Solved) {
  return (groups: readonly number[], blocks: readonly number[]): MarginalMeans => {
    const size = table.groups;
    const pull = new Float64Array(size);
    let [middle, variance] = [0, 0];
    for (const b of blocks) {
      const total = cell(solved.blockWeight, b);
      middle += cell(solved.blocks, b) / blocks.length;
      variance += 1 / total / blocks.length ** 2;
      for (const i of nth(table.rowsOfBlock, b)) pull[nth(table.group, i)]! += cell(w, i) / total / blocks.length;
    }
    const halves = groups.map((group) => {
      const contrast = pull.map((own) => -own);
      contrast[group]! += 1;
      return solveLower(solved.factor, size, contrast);
    });
    const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, own, i) => sum + own * cell(b, i), 0);
    return {
      estimates: groups.map((group) => middle + cell(solved.groups, group)),
      covariance: halves.map((a) => halves.map((b) => variance + dot(a, b))),
    };
  };
}

/**
 * Groups (varieties) within blocks (gardens), effects of both flat: least squares, or quasi-likelihood with a logarithm.
 * The variance of a response is φ V(μ) times its relative variance, the inverse of its weight.
 *
 * @param data  responses of blocks of two and more; no group and no block that is all zero in the families with a logarithm
 * @returns     a fit whose marginal means hold for groups and blocks of one part
 * @throws NotConverged where zeros leave the fit without a maximum
 * @source Yates (1936) Ann. Eugen. 7:121; McCullagh & Nelder (1989) ch. 9; reference cases o1 and o6
 */
export function fitBlocks(data: BlocksData): BlocksFit {
  const offset = data.family === 'gaussian' ? (data.y[0] ?? 0) : 0;
  const table: Table = {
    ...data,
    ...blocksTable(data.group, data.block),
    y: data.y.map((own) => own - offset),
  };
  const plain = (): { readonly eta: Float64Array; readonly last: Solved } => {
    const last = solveBlocks(table, working(table, new Float64Array(data.y.length)));
    return { eta: predictBlocks(table, last), last };
  };
  const { eta, last } = data.family === 'gaussian' ? plain() : scored(table);
  const fitted = Array.from(eta, (e) => (data.family === 'gaussian' ? e + offset : Math.exp(e)));
  const residualDf = data.y.length - table.groups - table.rowsOfBlock.length + table.parts;
  const pearson = data.y.reduce((sum, y, i) => {
    const mean = nth(fitted, i);
    return sum + (y - mean) ** 2 / (unitVariance(data.family, mean) * nth(data.relativeVariance, i));
  }, 0);
  return {
    family: data.family,
    groups: table.groups,
    fitted,
    residualDf,
    dispersion: residualDf > 0 ? pearson / residualDf : null,
    offset,
    marginalMeans: blockMeans(table, working(table, eta), last),
    partOf: table.partOf,
    parts: table.parts,
  };
}
