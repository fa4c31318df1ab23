import type { Day } from './day.ts';
import type { GardenSettings } from './gardens.ts';
import type { PlanSettings } from './plan.ts';
import type { StateTrait } from './lines.ts';
import type { DeclaredTrait, Limit } from './traits.ts';

export type Scale = 'ratio' | 'difference';
export type DateOrder = 'iso' | 'day-first' | 'month-first';

export interface ClassSettings {
  readonly id: string;
  readonly name: string;
  readonly checkVariety: string | null;
  readonly spots: number | null;
  readonly bar: 'newcomer' | 'check';
  readonly linesCompete: boolean;
  /** Plants of a line that are grown a year. */
  readonly linePlants: number;
  /** Weeks from sowing to planting out; null where nothing says when to sow. */
  readonly sowWeeksBefore: number | null;
  /** Soil temperature at which it is sown or planted, °C. */
  readonly soilMinC: number | null;
  /** Places in next season's plan; null for its part of last season. */
  readonly places: number | null;
  /** Newcomers in next season's plan; null for as many as its places allow. */
  readonly newcomers: number | null;
}

export interface SeasonSettings {
  readonly end: Day | null;
  readonly sown: Day | null;
  readonly transplanted: Day | null;
  readonly lookEvery: number;
  readonly layout: 'together' | 'spread' | null;
  readonly harvestsComplete: boolean;
  readonly earlyUntil: Day | null;
  /** Whether the season is over; null where trial.yaml says nothing of it. */
  readonly finished: boolean | null;
}

export interface TraitRange {
  readonly good: Limit | null;
  readonly bad: Limit | null;
}

export interface Settings {
  readonly title: string;
  readonly place: string | null;
  readonly language: string;
  readonly units: 'metric' | 'us';
  readonly dates: DateOrder;
  readonly interval: number;
  readonly degreeDays: { readonly baseC: number; readonly capC: number | null; readonly method: 1 | 2 };
  readonly firstRipeFrom: 'transplanted' | 'sown';
  readonly spotCorrelation: number;
  /** Where members of a club keep records. */
  readonly gardens: GardenSettings;
  readonly seasonEnd: { readonly month: number; readonly date: number };
  readonly seasons: ReadonlyMap<number, SeasonSettings>;
  readonly scale: Scale;
  readonly classes: ReadonlyMap<string, ClassSettings>;
  readonly traits: ReadonlyMap<string, DeclaredTrait>;
  /** Traits of which every plant shows one of a few states. */
  readonly states: ReadonlyMap<string, StateTrait>;
  /** Ranges of every trait, by class; the key '*' holds for all classes. */
  readonly ranges: ReadonlyMap<string, ReadonlyMap<string, TraitRange>>;
  readonly goals: ReadonlyMap<string, ReadonlyMap<string, number>>;
  /** Weights of states among the goals of a class: they count for plants of lines only. */
  readonly stateGoals: ReadonlyMap<string, ReadonlyMap<string, number>>;
  /** Chance with which the wanted plants are to be had, 0 to 1. */
  readonly certainty: number;
  /** A night of so much or less is a frost, °C. */
  readonly frostC: number;
  /** Least and greatest share of seed of foreign pollen, by species in lower case. */
  readonly outcrossing: ReadonlyMap<string, readonly [number, number]>;
  readonly must: ReadonlyMap<
    string,
    ReadonlyMap<string, { readonly atMost: number | null; readonly atLeast: number | null }>
  >;
  readonly verdicts: {
    readonly keepFrom: number;
    readonly dropBelow: number;
    readonly simulations: number;
    readonly seed: number;
  };
  readonly publish: {
    readonly url: string | null;
    readonly licence: string;
    readonly show: readonly string[];
    /** Parts of the site that are left out: seed. */
    readonly hide: readonly string[];
    readonly people: 'codes' | 'initials' | 'names';
  };
  /** How next season is planned. */
  readonly plan: PlanSettings;
}
