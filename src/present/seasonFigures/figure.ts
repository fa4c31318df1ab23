import type { SeasonComparisons } from '../../analyse/compareSeason.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Chart } from '../charts/kinds.ts';
import type { Writing } from '../numbers.ts';

/** A chart with the words around it and its table. */
export interface Figure {
  readonly id: string;
  readonly title: string;
  readonly measure: string;
  readonly chart: Chart;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What the charts of a class are made from. */
export interface ChartSource {
  readonly seen: SeasonSeen;
  readonly compared: SeasonComparisons;
  readonly trial: Trial;
  readonly classId: string;
  readonly writing: Writing;
}
