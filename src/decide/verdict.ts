import type { Competitor, VerdictSettings } from './cases.ts';

export type Verdict = 'keep' | 'drop' | 'no-room' | 'try-again';

/** A little over 0.01, so that 0.79 is on the edge of 0.8 in doubles too. */
const EDGE = 0.01 + 1e-12;

/**
 * Verdict from the shares of simulated seasons.
 *
 * @param share  share in which the variety earns a spot
 * @param above  share in which its score reaches the bar, ≥ share
 * @source methods page C
 */
export function verdictOf(
  share: number,
  above: number,
  { keepFrom, dropBelow }: VerdictSettings,
  { untested }: Pick<Competitor, 'untested'>,
): Verdict {
  if (share >= keepFrom && !untested) return 'keep';
  if (above < dropBelow) return 'drop';
  return share < dropBelow ? 'no-room' : 'try-again';
}

/**
 * A share in whole hundredths that does not say more than the verdict: 0.799 is 79 where keeping begins at 0.8.
 *
 * @returns 0 to 100
 */
export function hundredths(
  share: number,
  { keepFrom, dropBelow }: Pick<VerdictSettings, 'keepFrom' | 'dropBelow'>,
): number {
  const near = Math.round(100 * share);
  const isOver = [keepFrom, dropBelow].some((limit) => share < limit && near >= 100 * limit);
  return isOver ? Math.floor(100 * share) : near;
}

/**
 * True where a share lies so close to a limit that the draw of random numbers could turn the verdict.
 *
 * @param share  share in which the variety earns a spot
 * @param above  share in which its score reaches the bar: what a drop is decided by
 */
export function isOnTheEdge(share: number, above: number, { keepFrom, dropBelow }: VerdictSettings): boolean {
  const isNear = (value: number, limit: number): boolean => Math.abs(value - limit) <= EDGE;
  return isNear(share, keepFrom) || isNear(share, dropBelow) || isNear(above, dropBelow);
}

/** Where a variety stands for next season: its verdict, a young line that is followed plant by plant, or none. */
export type Standing = Verdict | 'line' | 'none';
