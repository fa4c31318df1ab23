import type { ClassCase, TraitCase, VerdictSettings } from './cases.ts';
import type { TraitDraws } from './draws.ts';
import { extentOf, pointsOf } from './points.ts';
import type { PointRange } from './points.ts';
import { lastSpot } from './spots.ts';
import type { SpotCount } from './spots.ts';

/** A trait that is drawn: for its points, or for a limit on it. */
export interface DrawnTrait {
  readonly trait: TraitCase;
  readonly draws: TraitDraws;
  /** Null for a trait that only has a limit. */
  readonly range: PointRange | null;
}

/** What the simulated seasons say with the club's own weights, beside who earned a spot. */
export interface SimulatedSums {
  /** Mean points, goals × varieties. */
  readonly points: readonly Float64Array[];
  /** Mean points of the bar, one a goal. */
  readonly barPoints: Float64Array;
  /** Variance of the points over all competitors and draws, one a goal. */
  readonly pointVariance: Float64Array;
  /** Share of draws that fall outside a goal's range. */
  readonly cutOff: Float64Array;
  /** Slope of the points on the working scale, goals × varieties. */
  readonly slope: readonly Float64Array[];
  /** Mean of the score above the newcomer's. */
  readonly gain: Float64Array;
  /** Variance of the score above what earns a spot. */
  readonly marginVariance: Float64Array;
}

export interface Simulated {
  /** One for every weighting, in their order; the first is the class's own. */
  readonly counts: readonly SpotCount[];
  readonly sums: SimulatedSums;
}

const BATCH = 250;

function cut(value: number, ends: TraitCase['ends']): number {
  return ends ? Math.min(ends[1], Math.max(ends[0], value)) : value;
}

/** Running sums over the draws of the first weighting; tables are goals × varieties. */
interface Sums {
  readonly x: readonly Float64Array[];
  readonly xx: readonly Float64Array[];
  readonly p: readonly Float64Array[];
  readonly px: readonly Float64Array[];
  readonly pp: Float64Array;
  readonly bar: Float64Array;
  readonly outside: Float64Array;
  readonly gain: Float64Array;
  readonly margin: Float64Array;
  readonly marginSquared: Float64Array;
}

const array = (size: number): Float64Array => new Float64Array(size);

function openSums(goals: number, n: number): Sums {
  const table = (): readonly Float64Array[] => Array.from({ length: goals }, () => array(n));
  return {
    x: table(),
    xx: table(),
    p: table(),
    px: table(),
    pp: array(goals),
    bar: array(goals),
    outside: array(goals),
    gain: array(n),
    margin: array(n),
    marginSquared: array(n),
  };
}

function summary(sums: Sums, competing: readonly number[], draws: number): SimulatedSums {
  const n = competing.length;
  const mean = (sum: Float64Array): Float64Array => sum.map((own) => own / draws);
  const points = sums.p.map(mean);
  const slopeOf = (g: number, i: number): number => {
    const [x, p] = [sums.x[g]![i]!, sums.p[g]![i]!];
    const variance = sums.xx[g]![i]! - (x * x) / draws;
    return variance > 0 ? (sums.px[g]![i]! - (x * p) / draws) / variance : 0;
  };
  return {
    points,
    barPoints: mean(sums.bar),
    pointVariance: sums.pp.map((sum, g) => {
      const average = competing.reduce((total, i) => total + points[g]![i]!, 0) / n;
      return sum / (draws * n) - average ** 2;
    }),
    cutOff: sums.outside.map((count) => count / (draws * n)),
    slope: sums.px.map((row, g) => row.map((_, i) => slopeOf(g, i))),
    gain: mean(sums.gain),
    marginVariance: sums.marginSquared.map((sum, i) => sum / draws - (sums.margin[i]! / draws) ** 2),
  };
}

interface Batch {
  readonly values: readonly Float64Array[];
  readonly newcomer: readonly Float64Array[];
  /** Goals × varieties × batch. */
  readonly points: readonly Float64Array[];
  readonly newcomerPoints: readonly Float64Array[];
  readonly missed: Uint8Array;
  /** How many of the batch's draws count: fewer in the last one. */
  readonly size: number;
}

function drawBatch(drawn: readonly DrawnTrait[], own: ClassCase, batch: Batch, sums: Sums): void {
  const n = own.competitors.length;
  own.competitors.forEach(({ missed }, i) => batch.missed.fill(missed ? 1 : 0, i * BATCH, (i + 1) * BATCH));
  let g = 0;
  drawn.forEach(({ trait, draws, range }, t) => {
    const [values, newcomer] = [batch.values[t]!, batch.newcomer[t]!];
    draws.next(values, newcomer);
    const shown = (x: number): number => cut(trait.isLog ? Math.exp(x) : x, trait.ends);
    const limits = own.must.filter((limit) => limit.trait === trait.trait);
    const goal = range === null ? -1 : g++;
    const [from, to] = range === null ? [0, 0] : extentOf(range);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < batch.size; j++) {
        const at = i * BATCH + j;
        const value = shown(values[at]!);
        for (const { atMost, atLeast } of limits) {
          if ((atMost !== null && value > atMost) || (atLeast !== null && value < atLeast)) batch.missed[at] = 1;
        }
        if (!range) continue;
        const points = pointsOf(range, value);
        batch.points[goal]![at] = points;
        sums.x[goal]![i]! += values[at]!;
        sums.xx[goal]![i]! += values[at]! ** 2;
        sums.p[goal]![i]! += points;
        sums.px[goal]![i]! += points * values[at]!;
        if (!own.competitors[i]!.competes) continue;
        sums.pp[goal]! += points * points;
        if (value < from || value > to) sums.outside[goal]!++;
      }
    }
    if (range) for (let j = 0; j < BATCH; j++) batch.newcomerPoints[goal]![j] = pointsOf(range, shown(newcomer[j]!));
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
    const points = batch.points[g]!;
    for (let at = 0; at < n * BATCH; at++) into[at]! += part * points[at]!;
    for (let j = 0; j < BATCH; j++) newcomer[j]! += part * batch.newcomerPoints[g]![j]!;
  });
}

interface Counting {
  readonly own: ClassCase;
  readonly competing: readonly number[];
  readonly check: number;
  readonly scores: Float64Array;
  readonly newcomer: Float64Array;
  readonly missed: Uint8Array;
  readonly size: number;
}

/** Counts who earns a spot in every draw of a batch. */
function countBatch(
  { own, competing, check, scores, newcomer, missed, size }: Counting,
  count: SpotCount,
  sums: Sums | null,
): void {
  const list = Array.from(competing, () => 0);
  for (let j = 0; j < size; j++) {
    competing.forEach((i, c) => (list[c] = missed[i * BATCH + j] ? -Infinity : scores[i * BATCH + j]!));
    const bar = check >= 0 ? scores[check * BATCH + j]! : newcomer[j]!;
    const { score: last, part } = lastSpot(list, own.spots);
    const needed = Math.max(bar, last);
    for (const i of competing) {
      const score = missed[i * BATCH + j] ? -Infinity : scores[i * BATCH + j]!;
      if (score >= bar) count.above[i]!++;
      if (score >= needed) count.earned[i]! += score === last ? part : 1;
      if (!sums) continue;
      const margin = scores[i * BATCH + j]! - needed;
      sums.margin[i]! += margin;
      sums.marginSquared[i]! += margin * margin;
      sums.gain[i]! += scores[i * BATCH + j]! - newcomer[j]!;
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
  const [scores, newcomer] = [array(n * BATCH), array(BATCH)];
  const competing = own.competitors.flatMap(({ competes }, i) => (competes ? [i] : []));
  const check = own.bar === 'check' ? own.competitors.findIndex(({ id }) => id === own.checkVariety) : -1;
  for (let done = 0; done < simulations; done += BATCH) {
    const batch = { ...whole, size: Math.min(BATCH, simulations - done) };
    drawBatch(drawn, own, batch, sums);
    weightings.forEach((weights, k) => {
      scoresOf(batch, weights, n, scores, newcomer);
      const counting = { own, competing, check, scores, newcomer, missed: batch.missed, size: batch.size };
      countBatch(counting, counts[k]!, k === 0 ? sums : null);
    });
    for (let g = 0; g < goals; g++) {
      const [bar, from] = check >= 0 ? [batch.points[g]!, check * BATCH] : [batch.newcomerPoints[g]!, 0];
      for (let j = 0; j < batch.size; j++) sums.bar[g]! += bar[from + j]!;
    }
  }
  return { counts, sums: summary(sums, competing, simulations) };
}
