import type { VarietyId } from './ids.ts';
import type { Place } from './place.ts';

export type StandsIn = 'ground' | 'bed' | 'pot' | 'bag';

export type North = 'top' | 'bottom' | 'left' | 'right';

/** A bed or a group of pots, lasting over years: places in rows across and columns along. */
export interface Bed {
  readonly id: string;
  readonly rows: number;
  readonly columns: number;
  readonly standsIn: StandsIn | null;
  readonly containerL: number | null;
  /** Classes that alone stand here; null for any. */
  readonly classes: readonly string[] | null;
  /** Places that stay empty, row and column from 1. */
  readonly leaveOut: readonly (readonly [row: number, column: number])[];
  /** Side of the map that lies to the north. */
  readonly north: North;
  readonly place: Place;
}

/** What the grower asks of a variety for next season. */
export interface Wish {
  readonly variety: VarietyId;
  readonly isRefused: boolean;
  /** Exactly so many plants; null where that is left to the plan. */
  readonly plants: number | null;
  readonly atLeast: number | null;
  readonly atMost: number | null;
  readonly bed: string | null;
  readonly isTall: boolean;
  /** Seeds at hand; null where they were not counted. */
  readonly seeds: number | null;
  readonly savesSeed: boolean;
  readonly place: Place;
}

/** A month and a day of it. */
export interface DayOfYear {
  readonly month: number;
  readonly date: number;
}

/** The `plan` part of trial.yaml. */
export interface PlanSettings {
  /** Null: the year after the last one recorded. */
  readonly season: number | null;
  readonly seed: number;
  readonly layout: 'spread' | 'together';
  readonly plants: 'by-share' | 'equal';
  readonly keepApart: readonly (readonly [string, string])[];
  readonly plantOut: DayOfYear | null;
  readonly raiseWeeks: ReadonlyMap<string, number>;
  /** A frost later than the day comes in a year with the chance. */
  readonly lastFrost: { readonly day: DayOfYear; readonly laterIn: number } | null;
  readonly frostRisk: number;
  readonly tasting: { readonly day: DayOfYear | null; readonly tasters: number; readonly samples: number };
  readonly paper: 'A4' | 'Letter';
  /** Width and height of a label, mm. */
  readonly labelMm: readonly [number, number];
  /** Plants that a newcomer begins with. */
  readonly newcomerPlants: number;
}
