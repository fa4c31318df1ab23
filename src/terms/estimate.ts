/** Why there is no figure, or no interval. The words are made in `present`. */
export type Reason =
  | 'not-recorded'
  | 'nothing-picked'
  | 'no-residual-df'
  | 'no-spread'
  | 'too-wide'
  | 'not-estimable'
  | 'not-connected'
  | 'alone-in-garden'
  | 'one-taster'
  | 'none-ripened'
  | 'known-from-totals'
  | 'fewer-than-half-ripened';

/** An estimate with its interval; `low` and `high` are null together, with a reason. */
export interface Estimate {
  readonly n: number;
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly reason: Reason | null;
}

/** k of n with an interval for the share. */
export interface Share {
  readonly k: number;
  readonly n: number;
  readonly low: number | null;
  readonly high: number | null;
}
