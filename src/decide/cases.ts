import type { ClassValues } from '../analyse/expected/posterior.ts';
import type { WorkingScale } from '../terms/scales.ts';
import type { Better, Limit } from '../terms/traits.ts';

/** A trait as stage two and the verdicts take it: plain data, published for the page where readers set own weights. */
export interface TraitCase {
  readonly trait: string;
  readonly scale: WorkingScale;
  readonly better: Better;
  /** Ends of the scale, shown unit; null where there are none. */
  readonly ends: readonly [number, number] | null;
  /** A of the half-normal priors, working scale. */
  readonly priorScale: number;
  readonly classes: readonly ClassValues[];
  /** Squared standard error that one more season would have, by class; of one plant where `perPlant`. */
  readonly nextSeason: { readonly variance: Readonly<Record<string, number>>; readonly perPlant: boolean };
}

/** What counts in a class: a trait with its weight and the range its points run over. */
export interface Goal {
  readonly trait: string;
  readonly weight: number;
  /** As given in trial.yaml, shown unit; null for the range worked out from the class. */
  readonly good: Limit | null;
  readonly bad: Limit | null;
}

/** What must not be missed. */
export interface MustLimit {
  readonly trait: string;
  readonly atMost: number | null;
  readonly atLeast: number | null;
}

/** Who stands in the class's competition. */
export interface Competitor {
  readonly id: string;
  /** False for a check variety that is only the bar. */
  readonly competes: boolean;
  /** A limit that its records do not show to be kept: it cannot be a keep. */
  readonly untested: boolean;
  /** A limit that its counted fruit shows to be missed. */
  readonly missed: boolean;
  /** Traits whose limits its counted fruit decides, whatever else is known of them. */
  readonly counted: readonly string[];
  /** What those who tasted or grew it last said of growing it again; null where they differed or nobody said. */
  readonly wanted: 'yes' | 'no' | null;
}

export interface ClassCase {
  readonly classId: string;
  readonly spots: number;
  readonly bar: 'newcomer' | 'check';
  readonly checkVariety: string | null;
  readonly competitors: readonly Competitor[];
  readonly goals: readonly Goal[];
  readonly must: readonly MustLimit[];
  /** What a squared standard error grows by with each plant where a variety's plants stand together; else 0. */
  readonly together: number;
}

export interface VerdictSettings {
  readonly keepFrom: number;
  readonly dropBelow: number;
  readonly simulations: number;
  readonly seed: number;
}
