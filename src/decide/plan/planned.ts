import type { Problem } from '../../terms/problem.ts';
import type { Bed } from '../../terms/plan.ts';
import type { Planting } from '../../terms/trial.ts';
import type { ClassDates, FrostAhead, VarietyAhead } from './dates.ts';
import type { ClassLayout } from './layoutTypes.ts';
import type { Wanted } from './plants.ts';
import type { SeedsNeeded } from './seeds.ts';
import type { Spot } from './stretches.ts';
import type { TastingPlan } from './tasting.ts';

/** A row of the proposal: a planting of next season. */
export interface PlannedRow {
  readonly id: string;
  readonly variety: string;
  readonly classId: string;
  readonly plants: number;
  readonly spot: Spot | null;
  readonly block: string | null;
  /** The grower's own row; null for one of the proposal. */
  readonly fixed: Planting | null;
}

/** Seed for a variety's plants. */
export interface SeedsAhead extends SeedsNeeded {
  /** Seeds at hand; null where nobody counted. */
  readonly atHand: number | null;
  /** Chance of the plants with the seeds at hand. */
  readonly chanceAtHand: number | null;
  readonly buy: number;
  readonly lots: readonly string[];
  /** A lot that holds all the seeds; null where none does. */
  readonly wholeLot: string | null;
}

/** A variety that will be grown. */
export interface PlannedVariety {
  readonly variety: string;
  readonly kind: Wanted['kind'];
  readonly plants: number;
  readonly isCheck: boolean;
  readonly share: number | null;
  readonly ahead: VarietyAhead | null;
  readonly seeds: SeedsAhead;
  /** For "try again": chance that so many plants settle it; else null. */
  readonly settles: number | null;
}

/** A class in the plan. */
export interface ClassPlan {
  readonly classId: string;
  readonly places: number;
  readonly spots: number;
  /** Varieties in order: the list, further ones, newcomers, lines. */
  readonly varieties: readonly PlannedVariety[];
  readonly free: number;
  readonly cut: readonly string[];
  readonly waiting: readonly string[];
  readonly layout: ClassLayout;
  readonly dates: ClassDates;
  /** Residual degrees of freedom, and the ratio of yields that is told with 80 % power; null where no spread is known. */
  readonly tells: { readonly df: number; readonly ratio: number } | null;
}

export interface Plan {
  readonly year: number;
  readonly beds: readonly Bed[];
  readonly classes: readonly ClassPlan[];
  /** Fixed rows first, as they are; then along the beds. */
  readonly rows: readonly PlannedRow[];
  readonly frost: FrostAhead | null;
  readonly tasting: TastingPlan | null;
}

/** A plan with what is to be told of it; no plan where one of the problems is an error. */
export interface MadePlan {
  readonly plan: Plan | null;
  readonly problems: readonly Problem[];
}
