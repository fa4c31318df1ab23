import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import type { VerdictSettings } from './cases.ts';

/** One trait's part in what another season would teach about a variety. */
export interface Learning {
  /** Points of the score for one step of the working scale. */
  readonly slope: number;
  /** Posterior variance of the variety's own part. */
  readonly variance: number;
  /** Variance of one more season's result: season-to-season spread and standard error. */
  readonly noise: number;
}

/**
 * Chance that one more season moves the share over a limit, so that the verdict is settled. The score above what
 * earns a spot is taken as normal; another season narrows the variety's own part of it.
 *
 * @param share     share now
 * @param variance  variance of the score above what earns a spot
 * @param traits    what the season would teach, trait by trait
 * @returns         chance, 0 to 1
 * @source methods page C; preposterior analysis, Raiffa & Schlaifer (1961) Applied Statistical Decision Theory, ch. 5
 */
export function chanceToSettle(
  share: number,
  variance: number,
  traits: readonly Learning[],
  { keepFrom, dropBelow }: Pick<VerdictSettings, 'keepFrom' | 'dropBelow'>,
): number {
  let learnt = 0;
  for (const own of traits) learnt += (own.slope * own.variance) ** 2 / (own.variance + own.noise);
  learnt = Math.min(learnt, 0.999 * variance);
  if (!(learnt > 0)) return 0;
  const inside = (p: number): number => normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, p)));
  const mean = inside(share) * Math.sqrt(variance);
  const left = Math.sqrt(variance - learnt);
  const step = Math.sqrt(learnt);
  return normalCdf((mean - inside(keepFrom) * left) / step) + normalCdf((inside(dropBelow) * left - mean) / step);
}
