/**
 * The scale a trait is worked out on: as it is; its logarithm, so that differences are ratios; or the logarithm of a worth,
 * which is shown as the share in which it stands before one of worth 1.
 */
export type WorkingScale = 'plain' | 'log' | 'worth';

/** A value of a working scale in the trait's stored unit. */
export function fromWorking(scale: WorkingScale, x: number): number {
  if (scale === 'plain') return x;
  return scale === 'log' ? Math.exp(x) : 1 / (1 + Math.exp(-x));
}

/** The same, cut to the ends of the trait's scale. */
export function shownValue(
  { scale, ends }: { readonly scale: WorkingScale; readonly ends: readonly [number, number] | null },
  x: number,
): number {
  const value = fromWorking(scale, x);
  return ends ? Math.min(ends[1], Math.max(ends[0], value)) : value;
}
