import type { BlockVariance } from '../../numerics/blockVariance.ts';
import type { FixedPlant, Spot, Stretch } from './stretches.ts';

/** Plants of a variety that are planned for one place: one, or a clump side by side. */
export interface PlannedPlant {
  readonly variety: string;
  readonly plants: number;
  /** The first place of a clump. */
  readonly spot: Spot;
  /** Number of the block in its class, from 0. */
  readonly block: number;
}

export interface ClassLayout {
  readonly classId: string;
  /** In order along the beds. */
  readonly plants: readonly PlannedPlant[];
  /** Places of each block. */
  readonly sizes: readonly number[];
  /** How well it compares its varieties; null for clumps, or where the blocks do not join them. */
  readonly variance: BlockVariance | null;
  /** Pairs of plants side by side that could not be avoided, by variety; clumps aside. */
  readonly besides: ReadonlyMap<string, number>;
  /** True for clumps. */
  readonly isTogether: boolean;
  /** Tall plants without a place on the north side. */
  readonly tallOver: number;
}

export interface LayoutAsked {
  readonly stretch: Stretch;
  /** Plants of each variety that is grown, in the order of their ids. */
  readonly varieties: readonly {
    readonly variety: string;
    readonly plants: number;
    readonly isTall: boolean;
    readonly savesSeed: boolean;
  }[];
  readonly fixed: readonly FixedPlant[];
  readonly layout: 'spread' | 'together';
  /** Name of its random numbers: seed, plan, season and class. */
  readonly stream: string;
}
