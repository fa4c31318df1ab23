import type { WorkingScale } from './scales.ts';

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

/** What members like best of what they were sent: told by answers.csv, no other table holds it. */
export interface RankingTrait extends TraitCommon {
  readonly kind: 'ranking';
}

/** A declared trait that tables of a season hold, a value a row. */
export type RecordedTrait = RatingTrait | YesNoTrait | MeasureTrait;

/** A trait declared in trial.yaml. */
export type DeclaredTrait = RecordedTrait | RankingTrait;

/** Of declared traits, those that tables of a season hold. */
export const recordedTraits = (traits: ReadonlyMap<string, DeclaredTrait>): readonly RecordedTrait[] =>
  [...traits.values()].filter((trait) => trait.kind !== 'ranking');

/** Keys of declared traits that members rank. */
export const rankedTraits = (traits: ReadonlyMap<string, DeclaredTrait>): readonly string[] =>
  [...traits.values()].filter(({ kind }) => kind === 'ranking').map(({ key }) => key);

/** The traits every trial has. */
export const builtInTraits = ['yield', 'fruits', 'first_ripe'] as const;

/** Shares counted in events that `must` can limit: of so many fruit or plants, so many were. */
export const countedShares = ['hot', 'off_type'] as const;

/** What is known of a trait before anything is recorded of it: the one place that says it. */
export interface TraitFacts {
  readonly key: string;
  readonly kind: 'amount' | 'days' | DeclaredTrait['kind'];
  /** Unit in which it is stored and written: g, fruits, d, points, share, or that of a measure. */
  readonly unit: string;
  /** The same as results.json names it: per plant where it is. */
  readonly publishedUnit: string;
  readonly better: Better;
  readonly scale: WorkingScale;
  /** Ends of the scale, stored unit; null where there are none. */
  readonly ends: readonly [number, number] | null;
  /** A of the half-normal priors, working scale; null where it is the SD of the varieties' means (methods page B). */
  readonly priorScale: number | null;
  /**
   * Standard deviation of one unit (plant, planting or cell) where no season has one, working scale; a part of the
   * value where `isRelative`.
   *
   * @source methods page B: common practice, no source; 20 % of a measure from memory
   */
  readonly assumedSd: { readonly size: number; readonly isRelative: boolean };
  /** True where one more plant tells as much as one more unit: yield, fruits, days, measures. */
  readonly isPerPlant: boolean;
}

type Facts = Omit<TraitFacts, 'key' | 'publishedUnit'>;

const LOGARITHMIC = { scale: 'log', ends: null, priorScale: 0.5, isPerPlant: true } as const;
const amount = (unit: string): Facts => ({
  ...LOGARITHMIC,
  kind: 'amount',
  unit,
  better: 'higher',
  assumedSd: { size: 0.4, isRelative: false },
});

const ALWAYS: Readonly<Record<string, Facts>> = {
  yield: amount('g'),
  early_yield: amount('g'),
  fruits: amount('fruits'),
  first_ripe: {
    ...LOGARITHMIC,
    kind: 'days',
    unit: 'd',
    better: 'lower',
    assumedSd: { size: 0.15, isRelative: false },
  },
};

const SHARE = { unit: 'share', ends: [0, 1], isPerPlant: false } as const;

function declaredFacts(declared: DeclaredTrait): Facts {
  const { better } = declared;
  switch (declared.kind) {
    case 'rating': {
      const { from, to } = declared;
      return {
        kind: 'rating',
        unit: 'points',
        better,
        scale: 'plain',
        ends: [from, to],
        priorScale: (to - from) / 4,
        assumedSd: { size: (to - from) / 5, isRelative: false },
        isPerPlant: false,
      };
    }
    case 'yes-no':
      return {
        ...SHARE,
        kind: 'yes-no',
        better,
        scale: 'plain',
        priorScale: 0.25,
        assumedSd: { size: 0.2, isRelative: true },
      };
    case 'ranking':
      return {
        ...SHARE,
        kind: 'ranking',
        better,
        scale: 'worth',
        priorScale: 1,
        // Every worth comes with a variance of its own (methods page, rankings).
        assumedSd: { size: 1, isRelative: false },
      };
    case 'measure':
      return {
        kind: 'measure',
        unit: declared.unit,
        better,
        scale: 'plain',
        ends: null,
        priorScale: null,
        assumedSd: { size: 0.2, isRelative: true },
        isPerPlant: true,
      };
  }
}

/** A counted share that `must` may limit: it is no goal and has no values of its own. */
const COUNTED: Facts = declaredFacts({ key: '', kind: 'yes-no', better: 'none' });

const PER_PLANT: Readonly<Record<string, string>> = { g: 'g/plant', fruits: 'fruits/plant' };

/**
 * Facts of a trait.
 *
 * @param key     its key: yield, early_yield, fruits, first_ripe, a counted share, or as declared
 * @param traits  the traits that trial.yaml declares
 */
export function traitFacts(key: string, traits: ReadonlyMap<string, DeclaredTrait>): TraitFacts {
  const declared = traits.get(key);
  const facts = ALWAYS[key] ?? (declared ? declaredFacts(declared) : COUNTED);
  const publishedUnit = facts.kind === 'amount' ? (PER_PLANT[facts.unit] ?? facts.unit) : facts.unit;
  return { key, ...facts, publishedUnit };
}

/**
 * Traits that count where a class has no goals: yield, days, and every rating with a good direction.
 *
 * @param traits  the trial's declared traits by key
 * @returns       keys, in the order in which they are told
 */
export function usualGoals(traits: ReadonlyMap<string, DeclaredTrait>): readonly string[] {
  const rated = [...traits.values()].filter(({ kind, better }) => kind === 'rating' && better !== 'none');
  return ['yield', 'first_ripe', ...rated.map(({ key }) => key)];
}

/** What takes the place of the yield where fruits are counted and hardly weighed. */
export const COUNT_FOR_YIELD = 'fruits';
