import type { Family } from '../numerics/additiveData.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { CountSpread } from './classSpread.ts';
import type { BlockFactor } from './blocks.ts';
import type { Layout } from './units.ts';

export interface ClassF {
  readonly value: number;
  readonly df1: number;
  readonly df2: number;
  readonly p: number;
}

/** Estimates of a class on the working scale (log for gamma and poisson) with their covariance, dispersion included. */
export interface ClassMeans {
  readonly classId: string;
  readonly varieties: readonly string[];
  readonly estimates: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** One season's fit of a trait measured on plantings. */
export interface PlantModel {
  readonly family: Family;
  readonly factor: BlockFactor['kind'] | 'garden';
  /** Varieties that gardens join, by class: nothing compares those of different parts; null for one garden. */
  readonly parts: ReadonlyMap<string, readonly (readonly string[])[]> | null;
  /** Units that tell no difference between varieties, by class: alone in their garden, or in one that gave nothing. */
  readonly leftOut: ReadonlyMap<string, { readonly lone: number; readonly empty: number }> | null;
  /** By class. */
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly residualDf: number;
  readonly dispersion: number | null;
  readonly cvPercent: number | null;
  /** Of fruit numbers; null for every other model. */
  readonly counts: CountSpread | null;
  /** Plants of every variety in the fit: those that stand together tell less than as many apart. */
  readonly plants: ReadonlyMap<string, number>;
  /** Classes whose recorded blocks are left out, since a planting of theirs gave nothing. */
  readonly withoutBlocks: ReadonlySet<string>;
  /** Dispersion of a class relative to the season's, at the class's mean; null where it is one for all. */
  readonly scales: ReadonlyMap<string, number> | null;
  readonly spotCorrelation: number;
  readonly estimates: ReadonlyMap<string, Estimate>;
  /** Classes with intervals. */
  readonly classes: readonly ClassMeans[];
  readonly f: ReadonlyMap<string, ClassF | null>;
  readonly lsd: ReadonlyMap<string, number | null>;
}

export interface ModelOptions {
  readonly family: Family;
  readonly level: number;
  readonly spotCorrelation: number;
  /** The same of plants of a variety in one garden of a club. */
  readonly gardenCorrelation: number;
  /** True for yield and fruits: a variety of which nothing was picked is 0 without an interval. */
  readonly isYield: boolean;
  /** False: blocks are left out of the model, so that estimates are total over plants. */
  readonly withBlocks: boolean;
}
