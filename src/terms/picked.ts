import type { Day } from './day.ts';

/** All that was picked of a planting on one day; `day` is null for rows without a date. */
export interface Picking {
  readonly day: Day | null;
  readonly ripe: Picked;
  readonly green: Picked;
  readonly cullFruits: number;
  readonly cullGrams: number;
  readonly hasCulls: boolean;
}

/** Usable fruit of one stage: what was counted, what was weighed, and what lacks the other figure. */
export interface Picked {
  /** Fruits counted, weighed or not. */
  readonly fruits: number;
  /** Grams weighed, counted or not. */
  readonly grams: number;
  /** Fruits counted but not weighed. */
  readonly fruitsUnweighed: number;
  /** Grams weighed but not counted. */
  readonly gramsUncounted: number;
  /** Rows of which the number, or the weight, is only known to be over a limit. */
  readonly fruitsOpen: number;
  readonly gramsOpen: number;
  /** Rows that say no more than that there was something: a trace. */
  readonly traces: number;
}

/** What is known of a planting's fruit, worked out once when its tables have been read. */
export type PlantingRecord =
  | { readonly kind: 'nothing' }
  | {
      readonly kind: 'pickings';
      /** The last day on which anything was picked; null where no row has a day. */
      readonly last: Day | null;
      readonly pickings: readonly Picking[];
    }
  | {
      /** Known only from totals.csv: its picking without a day, its first ripe day, its values of declared traits. */
      readonly kind: 'totals';
      readonly pickings: readonly Picking[];
      readonly firstRipe: Day | null;
      readonly traits: ReadonlyMap<string, number>;
    };
