import { conjugateGradients } from '../../numerics/conjugateGradients.ts';
import type { LinearMap } from '../../numerics/conjugateGradients.ts';
import { cell } from '../../numerics/element.ts';
import { randomStream } from '../../numerics/random.ts';
import type { GardenSpreads } from './gardenCells.ts';
import { openElimination, weightsOf } from './networkElimination.ts';
import { summed } from './networkRows.ts';
import type { Network } from './networkRows.ts';

/** A network given the spreads. */
export interface NetworkGiven {
  readonly network: Network;
  readonly spreads: GardenSpreads;
  /** Rows to what is left of them once gardens' seasons and u are taken out, over their variance: Q x. */
  readonly eliminate: LinearMap;
  /** Solves for the cells of variety × season: (Z'QZ + G⁻¹)⁻¹ of a vector of them, to a part of its length. */
  readonly solve: (right: Float64Array, tolerance: number) => Float64Array;
}

/** G⁻¹ of the cells and the arrow of each variety: its v with its w, and what its own rows say. */
function openCells(
  { varietyOf, cellOf, varieties }: Network,
  { between, withSeason }: GardenSpreads,
  inverse: Float64Array,
) {
  const size = varietyOf.length;
  const [v2, w2] = [between ** 2, withSeason ** 2];
  const counts = summed(new Float64Array(size).fill(1), varietyOf, varieties);
  const joined = counts.map((count) => v2 / ((w2 + count * v2) * w2));
  const eased = summed(inverse, cellOf, size).map((own) => 1 / (own + 1 / w2));
  const easedBy = summed(eased, varietyOf, varieties);
  const sums = new Float64Array(varieties);
  const prior: LinearMap = (b, into) => {
    sums.fill(0);
    for (let i = 0; i < size; i++) sums[varietyOf[i]!]! += cell(b, i);
    for (let i = 0; i < size; i++) into[i] = cell(b, i) / w2 - cell(joined, varietyOf[i]!) * cell(sums, varietyOf[i]!);
  };
  const arrow: LinearMap = (b, into) => {
    sums.fill(0);
    for (let i = 0; i < size; i++) sums[varietyOf[i]!]! += cell(eased, i) * cell(b, i);
    for (let i = 0; i < size; i++) {
      const k = varietyOf[i]!;
      const part = cell(joined, k) / (1 - cell(joined, k) * cell(easedBy, k));
      into[i] = cell(eased, i) * (cell(b, i) + part * cell(sums, k));
    }
  };
  return { prior, arrow };
}

/**
 * A network given the four spreads, each > 0: gardens eliminated one by one, cells of variety × season by conjugate
 * gradients with each variety's arrow as preconditioner. Time and memory grow with the rows.
 *
 * @source gardens page 3; Hestenes & Stiefel (1952) J. Res. Natl. Bur. Stand. 49:409
 */
export function networkGiven(network: Network, spreads: GardenSpreads): NetworkGiven {
  const { cellOf } = network;
  const rows = cellOf.length;
  const weights = weightsOf(network, spreads);
  const eliminate = openElimination(network, weights);
  const { prior, arrow } = openCells(network, spreads, weights.inverse);
  const [spread, left] = [new Float64Array(rows), new Float64Array(rows)];
  const product: LinearMap = (b, into) => {
    for (let i = 0; i < rows; i++) spread[i] = b[cellOf[i]!]!;
    eliminate(spread, left);
    prior(b, into);
    for (let i = 0; i < rows; i++) into[cellOf[i]!]! += cell(left, i);
  };
  return {
    network,
    spreads,
    eliminate,
    solve: (right, tolerance) => conjugateGradients(product, arrow, right, tolerance),
  };
}

/** What is left of a solution's right side where nothing else is asked for. */
const EXACT = 1e-10;
/** The same for draws, whose number alone makes them err by a twentieth. */
const FOR_DRAWS = 1e-5;

/** P x of a vector of rows: what is left of it once everything that is random or flat is taken out. */
export function projected(
  { network: { cellOf, varietyOf }, eliminate, solve }: NetworkGiven,
  x: Float64Array,
  tolerance = EXACT,
): Float64Array {
  const rows = x.length;
  const into = new Float64Array(rows);
  eliminate(x, into);
  const cells = solve(summed(into, cellOf, varietyOf.length), tolerance);
  const left = x.slice();
  for (let i = 0; i < rows; i++) left[i]! -= cells[cellOf[i]!]!;
  eliminate(left, into);
  return into;
}

/** Cells of variety × season given what the gardens said: their means. */
export function cellMeans(
  { network: { cellOf, varietyOf }, eliminate, solve }: NetworkGiven,
  theta: Float64Array,
  tolerance = EXACT,
): Float64Array {
  const left = new Float64Array(theta.length);
  eliminate(theta, left);
  return solve(summed(left, cellOf, varietyOf.length), tolerance);
}

/**
 * Draws of how far cells can be from their means, by perturbing and solving.
 *
 * @param name   of the stream of random numbers
 * @param count  how many
 * @returns      draws from N(0, (Z'QZ + G⁻¹)⁻¹)
 * @source García-Cortés, Moreno, Varona & Altarriba (1992) J. Anim. Breed. Genet. 109:358
 */
export function errorDraws(given: NetworkGiven, name: string, count: number): readonly Float64Array[] {
  const { network, spreads } = given;
  const { cellOf, runOf, varietyOf, variance } = network;
  const { normal } = randomStream(`errors/${name}`);
  const normals = (length: number, sd: number): Float64Array => Float64Array.from({ length }, () => sd * normal());
  return Array.from({ length: count }, () => {
    const ofVariety = normals(network.varieties, spreads.between);
    const cells = normals(varietyOf.length, spreads.withSeason);
    for (let i = 0; i < cells.length; i++) cells[i]! += ofVariety[varietyOf[i]!]!;
    const ofRun = normals(network.runFrom.length - 1, spreads.withGarden);
    const rows = Float64Array.from(variance, (own, i) => {
      const sd = Math.sqrt(own + spreads.rest ** 2);
      return cells[cellOf[i]!]! + ofRun[runOf[i]!]! + sd * normal();
    });
    const found = cellMeans(given, rows, FOR_DRAWS);
    return cells.map((own, i) => own - cell(found, i));
  });
}
