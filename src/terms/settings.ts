import type { Day } from './day.ts';
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
  readonly seasonEnd: { readonly month: number; readonly date: number };
  readonly seasons: ReadonlyMap<number, SeasonSettings>;
  readonly scale: Scale;
  readonly classes: ReadonlyMap<string, ClassSettings>;
  readonly traits: ReadonlyMap<string, DeclaredTrait>;
  /** Ranges of every trait, by class; the key '*' holds for all classes. */
  readonly ranges: ReadonlyMap<string, ReadonlyMap<string, TraitRange>>;
  readonly goals: ReadonlyMap<string, ReadonlyMap<string, number>>;
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
    readonly people: 'codes' | 'initials' | 'names';
  };
}
