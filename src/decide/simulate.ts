import { shownValue } from '../terms/scales.ts';
import type { ClassCase, TraitCase, VerdictSettings } from './cases.ts';
import type { TraitDraws } from './draws.ts';
import { extentOf, pointsAlong, slopesOf } from './points.ts';
import type { PointRange } from './points.ts';
import { countBatch } from './countSpots.ts';
import type { Batch, Counting } from './countSpots.ts';
import { openSums, summary } from './simulatedSums.ts';
import type { SimulatedSums, Sums } from './simulatedSums.ts';
import { cell, nth } from '../numerics/element.ts';
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

/** One goal's weight times a factor, beside the class's own weights. */
export interface ChangedWeight {
  /** Position among the class's goals. */
  readonly goal: number;
  readonly factor: number;
}

/** Even: draws go in pairs. */
const BATCH = 250;

const array = (size: number): Float64Array => new Float64Array(size);

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
        const value = shownValue(trait, cell(values, at));
        if (value >= from && value <= to) continue;
        batch.missed[at] = 1;
        misses[i]!++;
      }
    }
  });
}

/** Points of a goal's draws, with the sums that are made of them. */
function scoreGoal({ trait, range }: ScoredTrait, g: number, own: ClassCase, batch: Batch, sums: Sums): void {
  const n = own.competitors.length;
  const [from, to] = extentOf(range);
  const slopes = slopesOf(range);
  const [values, newcomer] = [nth(batch.values, g), nth(batch.newcomer, g)];
  const [points, newcomers] = [nth(batch.points, g), nth(batch.newcomerPoints, g)];
  let outside = 0;
  own.competitors.forEach(({ competes }, i) => {
    let [x, xx, p, px] = [0, 0, 0, 0];
    for (let at = i; at < batch.size * n; at += n) {
      const worked = cell(values, at);
      const value = shownValue(trait, worked);
      const own100 = pointsAlong(slopes, value);
      points[at] = own100;
      x += worked;
      xx += worked * worked;
      p += own100;
      px += own100 * worked;
      if (competes && (value < from || value > to)) outside++;
    }
    nth(sums.x, g)[i]! += x;
    nth(sums.xx, g)[i]! += xx;
    nth(sums.p, g)[i]! += p;
    nth(sums.px, g)[i]! += px;
  });
  for (let j = 0; j < batch.size; j++) newcomers[j] = pointsAlong(slopes, shownValue(trait, cell(newcomer, j)));
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

/** Scores of a batch under the class's own weights: weighted means of points. */
function scoreBatch(batch: Batch, weights: readonly number[], n: number): void {
  const total = weights.reduce((sum, w) => sum + w, 0);
  batch.scores.fill(0);
  batch.newcomerScores.fill(0);
  weights.forEach((weight, g) => {
    const part = weight / total;
    const [points, ofNewcomer] = [nth(batch.points, g), nth(batch.newcomerPoints, g)];
    for (let at = 0; at < n * batch.size; at++) batch.scores[at]! += part * cell(points, at);
    for (let j = 0; j < batch.size; j++) batch.newcomerScores[j]! += part * cell(ofNewcomer, j);
  });
}

/**
 * Simulated next seasons of a class: who earns one of its spots, under several weightings at once.
 *
 * @param own      the class
 * @param drawn    its traits, the goals first and in their order
 * @param changes  weightings beside the class's own
 * @source methods page C
 */
export function simulateClass(
  own: ClassCase,
  drawn: readonly DrawnTrait[],
  changes: readonly ChangedWeight[],
  { simulations }: Pick<VerdictSettings, 'simulations'>,
): Simulated {
  const n = own.competitors.length;
  const goals = drawn.filter(({ range }) => range !== null).length;
  const whole: Omit<Batch, 'size'> = {
    values: drawn.map(() => array(n * BATCH)),
    newcomer: drawn.map(() => array(BATCH)),
    points: Array.from({ length: goals }, () => array(n * BATCH)),
    newcomerPoints: Array.from({ length: goals }, () => array(BATCH)),
    scores: array(n * BATCH),
    newcomerScores: array(BATCH),
    missed: new Uint8Array(n * BATCH),
  };
  const sums = openSums(goals, n);
  const count = (): SpotCount => ({ earned: array(n), above: array(n) });
  const counts = [count(), ...changes.map(count)];
  const unlimited = own.must.length > 0 ? count() : null;
  const missedDraws = own.must.map(() => array(n));
  const free = new Uint8Array(n * BATCH);
  const competing = own.competitors.flatMap(({ competes }, i) => (competes ? [i] : []));
  const check = own.bar === 'check' ? own.competitors.findIndex(({ id }) => id === own.checkVariety) : -1;
  const weights = own.goals.map(({ weight }) => weight);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const plain: Counting = { n, spots: own.spots, competing, check, missed: whole.missed, changed: null };
  const changed = changes.map(({ goal, factor }): Counting => {
    const more = (nth(weights, goal) / total) * (factor - 1);
    return { ...plain, changed: { goal, more } };
  });
  for (let done = 0; done < simulations; done += BATCH) {
    const batch = { ...whole, size: Math.min(BATCH, simulations - done) };
    drawBatch(drawn, own, batch, sums, missedDraws);
    scoreBatch(batch, weights, n);
    countBatch(plain, batch, nth(counts, 0), sums);
    changed.forEach((counting, k) => countBatch(counting, batch, nth(counts, k + 1), null));
    if (unlimited) countBatch({ ...plain, missed: free }, batch, unlimited, null);
    for (let g = 0; g < goals; g++) {
      const [bar, step, from] = check >= 0 ? [nth(batch.points, g), n, check] : [nth(batch.newcomerPoints, g), 1, 0];
      let added = 0;
      for (let j = 0; j < batch.size; j++) added += cell(bar, j * step + from);
      sums.bar[g]! += added;
    }
  }
  return { counts, unlimited, missed: missedDraws, sums: summary(sums, competing, simulations) };
}
