import type { ClassCase, TraitCase, VerdictSettings } from './cases.ts';
import type { TraitDraws } from './draws.ts';
import { extentOf, pointsOf } from './points.ts';
import type { PointRange } from './points.ts';
import { openSums, summary } from './simulatedSums.ts';
import type { SimulatedSums, Sums } from './simulatedSums.ts';
import { cell, nth } from '../numerics/element.ts';
import { lastSpot } from './spots.ts';
import type { SpotCount } from './spots.ts';

/** A trait that is drawn: for its points, or for a limit on it. */
export interface DrawnTrait {
  readonly trait: TraitCase;
  readonly draws: TraitDraws;
  /** Null for a trait that only has a limit. */
  readonly range: PointRange | null;
}

interface ScoredTrait extends DrawnTrait {
  readonly range: PointRange;
}

const isScored = (one: DrawnTrait): one is ScoredTrait => one.range !== null;

export interface Simulated {
  /** One for every weighting, in their order; the first is the class's own. */
  readonly counts: readonly SpotCount[];
  /** The class's own weighting as if no limit were set; null where none is. */
  readonly unlimited: SpotCount | null;
  /** Draws in which a variety misses a limit, for every limit of the class. */
  readonly missed: readonly Float64Array[];
  readonly sums: SimulatedSums;
}

const BATCH = 250;

const array = (size: number): Float64Array => new Float64Array(size);

interface Batch {
  readonly values: readonly Float64Array[];
  readonly newcomer: readonly Float64Array[];
  /** Goals × batch × varieties. */
  readonly points: readonly Float64Array[];
  readonly newcomerPoints: readonly Float64Array[];
  readonly missed: Uint8Array;
  /** How many of the batch's draws count: fewer in the last one. */
  readonly size: number;
}

/** Marks the draws in which a variety misses a limit on the trait; where its fruit was counted, the count has decided. */
function markMissed(
  own: ClassCase,
  { trait }: DrawnTrait,
  values: Float64Array,
  batch: Batch,
  missed: readonly Float64Array[],
): void {
  const n = own.competitors.length;
  own.must.forEach(({ trait: limited, atMost, atLeast }, m) => {
    if (limited !== trait.trait) return;
    const [from, to] = [atLeast ?? -Infinity, atMost ?? Infinity];
    const misses = nth(missed, m);
    for (let i = 0; i < n; i++) {
      if (nth(own.competitors, i).counted.includes(limited)) continue;
      for (let at = i; at < batch.size * n; at += n) {
        const value = shownValue(cell(values, at), trait);
        if (value >= from && value <= to) continue;
        batch.missed[at] = 1;
        misses[i]!++;
      }
    }
  });
}

function shownValue(x: number, { isLog, ends }: TraitCase): number {
  const value = isLog ? Math.exp(x) : x;
  return ends ? Math.min(ends[1], Math.max(ends[0], value)) : value;
}

/** Points of a goal's draws, with the sums that are made of them. */
function scoreGoal({ trait, range }: ScoredTrait, g: number, own: ClassCase, batch: Batch, sums: Sums): void {
  const n = own.competitors.length;
  const [from, to] = extentOf(range);
  const [values, newcomer] = [nth(batch.values, g), nth(batch.newcomer, g)];
  const [points, x, xx, p, px] = [
    nth(batch.points, g),
    nth(sums.x, g),
    nth(sums.xx, g),
    nth(sums.p, g),
    nth(sums.px, g),
  ];
  const competes = own.competitors.map((one) => one.competes);
  const newcomers = nth(batch.newcomerPoints, g);
  let outside = 0;
  for (let j = 0; j < batch.size; j++) {
    for (let i = 0; i < n; i++) {
      const worked = cell(values, j * n + i);
      const value = shownValue(worked, trait);
      const own100 = pointsOf(range, value);
      points[j * n + i] = own100;
      x[i]! += worked;
      xx[i]! += worked * worked;
      p[i]! += own100;
      px[i]! += own100 * worked;
      if (!competes[i]) continue;
      if (value < from || value > to) outside++;
    }
    newcomers[j] = pointsOf(range, shownValue(cell(newcomer, j), trait));
  }
  sums.outside[g]! += outside;
}

function drawBatch(
  drawn: readonly DrawnTrait[],
  own: ClassCase,
  batch: Batch,
  sums: Sums,
  missed: readonly Float64Array[],
): void {
  const n = own.competitors.length;
  batch.missed.fill(0);
  own.competitors.forEach((competitor, i) => {
    if (!competitor.missed) return;
    for (let j = 0; j < BATCH; j++) batch.missed[j * n + i] = 1;
  });
  drawn.forEach((one, t) => {
    one.draws.next(nth(batch.values, t), nth(batch.newcomer, t));
    markMissed(own, one, nth(batch.values, t), batch, missed);
    if (isScored(one)) scoreGoal(one, t, own, batch, sums);
  });
}

/** Scores of a batch under one weighting: goal-weighted mean of points. */
function scoresOf(
  batch: Batch,
  weights: readonly number[],
  n: number,
  into: Float64Array,
  newcomer: Float64Array,
): void {
  const total = weights.reduce((sum, w) => sum + w, 0);
  into.fill(0);
  newcomer.fill(0);
  weights.forEach((weight, g) => {
    const part = weight / total;
    const points = nth(batch.points, g);
    for (let at = 0; at < n * BATCH; at++) into[at]! += part * cell(points, at);
    const ofNewcomer = nth(batch.newcomerPoints, g);
    for (let j = 0; j < BATCH; j++) newcomer[j]! += part * cell(ofNewcomer, j);
  });
}

interface Counting {
  readonly n: number;
  readonly spots: number;
  readonly competing: readonly number[];
  /** Position of the check variety where it is the bar; else -1. */
  readonly check: number;
  readonly scores: Float64Array;
  /** Of the goals, as in the batch. */
  readonly points: readonly Float64Array[];
  readonly newcomer: Float64Array;
  readonly missed: Uint8Array;
  readonly size: number;
}

/** Counts who earns a spot in every draw of a batch. */
function countBatch(counting: Counting, { earned, above }: SpotCount, sums: Sums | null): void {
  const { n, spots, competing, check, scores, points, newcomer, missed, size } = counting;
  const list = Array.from(competing, () => 0);
  for (let j = 0; j < size; j++) {
    const row = j * n;
    for (let c = 0; c < competing.length; c++) {
      const at = row + competing[c]!;
      list[c] = missed[at] ? -Infinity : cell(scores, at);
    }
    const bar = check >= 0 ? cell(scores, row + check) : cell(newcomer, j);
    const { score: last, part } = lastSpot(list, spots);
    const needed = Math.max(bar, last);
    for (let c = 0; c < competing.length; c++) {
      const i = competing[c]!;
      const score = cell(scores, row + i);
      if (sums) {
        const margin = score - needed;
        sums.margin[i]! += margin;
        sums.marginSquared[i]! += margin * margin;
        sums.gain[i]! += score - cell(newcomer, j);
        sums.s[i]! += score;
        for (let g = 0; g < points.length; g++) sums.ps[g]! += points[g]![row + i]! * score;
      }
      if (score < bar || missed[row + i]) continue;
      above[i]!++;
      if (score >= needed) earned[i]! += score === last ? part : 1;
    }
  }
}

/**
 * Simulated next seasons of a class: who earns one of its spots, under several weightings at once.
 *
 * @param own         the class
 * @param drawn       its traits, the goals first and in their order
 * @param weightings  weights of the goals; the first is the class's own
 * @source methods page C
 */
export function simulateClass(
  own: ClassCase,
  drawn: readonly DrawnTrait[],
  weightings: readonly (readonly number[])[],
  { simulations }: Pick<VerdictSettings, 'simulations'>,
): Simulated {
  const n = own.competitors.length;
  const goals = drawn.filter(({ range }) => range !== null).length;
  const whole: Omit<Batch, 'size'> = {
    values: drawn.map(() => array(n * BATCH)),
    newcomer: drawn.map(() => array(BATCH)),
    points: Array.from({ length: goals }, () => array(n * BATCH)),
    newcomerPoints: Array.from({ length: goals }, () => array(BATCH)),
    missed: new Uint8Array(n * BATCH),
  };
  const sums = openSums(goals, n);
  const counts = weightings.map(() => ({ earned: array(n), above: array(n) }));
  const unlimited = own.must.length > 0 ? { earned: array(n), above: array(n) } : null;
  const missedDraws = own.must.map(() => array(n));
  const free = new Uint8Array(n * BATCH);
  const [scores, newcomer] = [array(n * BATCH), array(BATCH)];
  const competing = own.competitors.flatMap(({ competes }, i) => (competes ? [i] : []));
  const check = own.bar === 'check' ? own.competitors.findIndex(({ id }) => id === own.checkVariety) : -1;
  for (let done = 0; done < simulations; done += BATCH) {
    const batch = { ...whole, size: Math.min(BATCH, simulations - done) };
    drawBatch(drawn, own, batch, sums, missedDraws);
    weightings.forEach((weights, k) => {
      scoresOf(batch, weights, n, scores, newcomer);
      const { missed, points, size } = batch;
      const counting = { n, spots: own.spots, competing, check, scores, points, newcomer, missed, size };
      countBatch(counting, nth(counts, k), k === 0 ? sums : null);
      if (k === 0 && unlimited) countBatch({ ...counting, missed: free }, unlimited, null);
    });
    for (let g = 0; g < goals; g++) {
      const [bar, step, from] = check >= 0 ? [nth(batch.points, g), n, check] : [nth(batch.newcomerPoints, g), 1, 0];
      for (let j = 0; j < batch.size; j++) sums.bar[g]! += cell(bar, j * step + from);
    }
  }
  return { counts, unlimited, missed: missedDraws, sums: summary(sums, competing, simulations) };
}
