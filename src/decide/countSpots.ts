import { cell, nth } from '../numerics/element.ts';
import type { Sums } from './simulatedSums.ts';
import { neededScore, partOfLast } from './spots.ts';
import type { SpotCount } from './spots.ts';

/** Some draws of a class: values, points and scores. */
export interface Batch {
  readonly values: readonly Float64Array[];
  readonly newcomer: readonly Float64Array[];
  /** Goals × batch × varieties. */
  readonly points: readonly Float64Array[];
  readonly newcomerPoints: readonly Float64Array[];
  /** Goal-weighted means of points. */
  readonly scores: Float64Array;
  readonly newcomerScores: Float64Array;
  readonly missed: Uint8Array;
  /** How many of the batch's draws count: fewer in the last one. */
  readonly size: number;
}

/** What is counted in a batch. */
export interface Counting {
  readonly n: number;
  readonly spots: number;
  readonly competing: readonly number[];
  /** Position of the check variety where it is the bar; else -1. */
  readonly check: number;
  readonly missed: Uint8Array;
  /** A goal whose weight is another one, with what it adds to a score for each of its points; null as the class has it. */
  readonly changed: { readonly goal: number; readonly more: number } | null;
}

/** Counts who earns a spot in every draw of a batch. */
export function countBatch(counting: Counting, batch: Batch, { earned, above }: SpotCount, sums: Sums | null): void {
  const { n, spots, competing, check, missed, changed } = counting;
  const { scores, newcomerScores, size } = batch;
  const list = new Float64Array(competing.length);
  const scored = new Float64Array(competing.length);
  const more = changed?.more ?? 0;
  const [points, newcomerPoints] = [
    nth(batch.points, changed?.goal ?? 0),
    nth(batch.newcomerPoints, changed?.goal ?? 0),
  ];
  for (let j = 0; j < size; j++) {
    const row = j * n;
    for (let c = 0; c < competing.length; c++) {
      const at = row + competing[c]!;
      scored[c] = cell(scores, at) + more * cell(points, at);
      list[c] = missed[at] ? -Infinity : cell(scored, c);
    }
    const bar =
      check >= 0
        ? cell(scores, row + check) + more * cell(points, row + check)
        : cell(newcomerScores, j) + more * cell(newcomerPoints, j);
    const needed = neededScore(list, bar, spots);
    if (sums) addMargins(sums, { scored, competing, needed, newcomer: cell(newcomerScores, j) }, batch.points, row);
    let got = 0;
    for (let c = 0; c < competing.length; c++) {
      const score = cell(list, c);
      if (score < bar) continue;
      above[competing[c]!]!++;
      if (score < needed) continue;
      earned[competing[c]!]!++;
      got++;
    }
    if (got <= spots) continue;
    const part = partOfLast(list, spots, needed);
    for (let c = 0; c < competing.length; c++) if (list[c] === needed) earned[competing[c]!]! -= 1 - part;
  }
}

/** Sums over one draw of the class's own weights. */
function addMargins(
  sums: Sums,
  drawn: {
    readonly scored: Float64Array;
    readonly competing: readonly number[];
    readonly needed: number;
    readonly newcomer: number;
  },
  points: readonly Float64Array[],
  row: number,
): void {
  const { scored, competing, needed, newcomer } = drawn;
  for (let c = 0; c < competing.length; c++) {
    const [i, score] = [competing[c]!, cell(scored, c)];
    const margin = score - needed;
    sums.margin[i]! += margin;
    sums.marginSquared[i]! += margin * margin;
    sums.gain[i]! += score - newcomer;
    sums.s[i]! += score;
    for (let g = 0; g < points.length; g++) sums.ps[g]! += points[g]![row + i]! * score;
  }
}
