import { cell } from '../../numerics/element.ts';
import { oncePer } from '../../terms/once.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass } from './gardenCells.ts';

/** A class's rows of all gardens side by side: what it costs grows with their number alone. */
export interface Network {
  /** Of each row: cell of variety × season, variety in a garden, season in a garden; all numbered through the class. */
  readonly cellOf: Int32Array;
  readonly runOf: Int32Array;
  readonly levelOf: Int32Array;
  readonly theta: Float64Array;
  readonly variance: Float64Array;
  readonly varietyOf: Int32Array;
  readonly varieties: number;
  /** Where the rows of each variety in a garden begin, and where the last one's end. */
  readonly runFrom: Int32Array;
  /** Where the varieties of each garden begin, and its seasons; and where the last one's end. */
  readonly runsFrom: Int32Array;
  readonly levelsFrom: Int32Array;
}

/** The rows of a class as a network. */
export const networkOf = oncePer((own: GardenClass): Network => {
  const { gardens, varietyOf } = packedGardens(own);
  const rows = gardens.reduce((sum, { theta }) => sum + theta.length, 0);
  const [cellOf, runOf, levelOf] = [new Int32Array(rows), new Int32Array(rows), new Int32Array(rows)];
  const [theta, variance] = [new Float64Array(rows), new Float64Array(rows)];
  const [runsFrom, levelsFrom] = [new Int32Array(gardens.length + 1), new Int32Array(gardens.length + 1)];
  const runFrom: number[] = [];
  let [at, levels] = [0, 0];
  gardens.forEach((garden, g) => {
    cellOf.set(garden.cell, at);
    theta.set(garden.theta, at);
    variance.set(garden.variance, at);
    for (let k = 0; k + 1 < garden.from.length; k++) {
      for (let i = garden.from[k]!; i < garden.from[k + 1]!; i++) runOf[at + i] = runFrom.length;
      runFrom.push(at + garden.from[k]!);
    }
    for (let i = 0; i < garden.season.length; i++) levelOf[at + i] = levels + garden.season[i]!;
    at += garden.theta.length;
    levels += garden.seasons;
    runsFrom[g + 1] = runFrom.length;
    levelsFrom[g + 1] = levels;
  });
  return {
    cellOf,
    runOf,
    levelOf,
    theta,
    variance,
    varietyOf,
    varieties: own.varieties.length,
    runFrom: Int32Array.from([...runFrom, rows]),
    runsFrom,
    levelsFrom,
  };
});

/** Sums rows by where they belong. */
export function summed(rows: Float64Array, where: Int32Array, size: number): Float64Array {
  const sums = new Float64Array(size);
  for (let i = 0; i < rows.length; i++) sums[where[i]!]! += cell(rows, i);
  return sums;
}
