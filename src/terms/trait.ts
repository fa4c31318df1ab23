export type Better = 'higher' | 'lower' | 'between' | 'none';

/** Where a value is good and where it is bad; two numbers where the best lies between limits. */
export type Limit = number | readonly [number, number];

interface TraitCommon {
  readonly key: string;
  readonly better: Better;
}

export interface RatingTrait extends TraitCommon {
  readonly kind: 'rating';
  readonly from: number;
  readonly to: number;
}

export interface YesNoTrait extends TraitCommon {
  readonly kind: 'yes-no';
}

export interface MeasureTrait extends TraitCommon {
  readonly kind: 'measure';
  /** Unit as declared and stored: cm stays cm, in becomes cm. */
  readonly unit: string;
  /** What one unit of a bare number is in the stored unit: 2.54 for a measure declared in inches. */
  readonly factor: number;
}

/** A trait declared in trial.yaml. */
export type DeclaredTrait = RatingTrait | YesNoTrait | MeasureTrait;

/** The traits every trial has. */
export const builtInTraits = ['yield', 'fruits', 'first_ripe'] as const;

/** Shares counted in events that `must` can limit: of so many fruit or plants, so many were. */
export const countedShares = ['hot', 'off_type'] as const;
