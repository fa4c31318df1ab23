/** One row of a chart of estimates: a variety with its interval and its plants' own values. */
export interface DotRow {
  readonly name: string;
  readonly group: 'new' | 'returning';
  /** The group in words. */
  readonly status: string;
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly written: string;
}

export interface DotChart {
  readonly kind: 'dots';
  readonly axis: string;
  readonly rows: readonly DotRow[];
  readonly plants: readonly { readonly name: string; readonly value: number }[];
  readonly zero: boolean;
  /** The check variety's line at 1 on a logarithmic axis, with words at both ends; null: a plain axis. */
  readonly ratioTo: string | null;
  /** Lines from where a variety's own records stand to its mark, so that the pull is seen; absent: none. */
  readonly pulls?: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  /** A vertical line, such as what a newcomer is expected to bring; absent: none. */
  readonly reference?: number;
}

export interface StepChart {
  readonly kind: 'steps';
  readonly axisX: string;
  readonly axisY: string;
  readonly rows: readonly { readonly name: string; readonly x: number; readonly y: number }[];
}

/** A curve of shares for each variety on a line of its own, on one axis of days. */
export interface StripChart {
  readonly kind: 'strips';
  readonly axis: string;
  readonly strips: readonly {
    readonly name: string;
    readonly group: 'new' | 'returning';
    /** Written at the right edge. */
    readonly note: string;
    readonly steps: readonly { readonly x: number; readonly share: number }[];
  }[];
}

/** Shares of simulated seasons, 0 to 100, with the limits of the verdicts. */
export interface ShareChart {
  readonly kind: 'shares';
  readonly axis: string;
  readonly rows: readonly {
    readonly name: string;
    readonly share: number;
    readonly above: number;
    /** Written at the right edge. */
    readonly written: string;
  }[];
  readonly limits: readonly number[];
}

/** Two measures of a variety against each other, each with its interval. */
export interface ScatterChart {
  readonly kind: 'scatter';
  readonly axisX: string;
  readonly axisY: string;
  readonly rows: readonly {
    readonly name: string;
    readonly group: 'new' | 'returning';
    readonly status: string;
    readonly x: number;
    readonly lowX: number;
    readonly highX: number;
    readonly y: number;
    readonly lowY: number;
    readonly highY: number;
    readonly written: string;
  }[];
}

/** Counts of scores, a line a variety; shade 0 is the scale's low end, 1 its high end. */
export interface StackChart {
  readonly kind: 'stacks';
  readonly axis: string;
  readonly rows: readonly {
    readonly name: string;
    readonly written: string;
    readonly parts: readonly {
      readonly score: number;
      readonly shade: number;
      readonly count: number;
      readonly written: string;
    }[];
  }[];
}

/** Charts of rows on one axis, and those with two axes. */
export type RowChart = DotChart | StripChart | ShareChart | StackChart;
export type PlaneChart = StepChart | ScatterChart;
export type Chart = RowChart | PlaneChart;

export const isRowChart = (chart: Chart): chart is RowChart => chart.kind !== 'steps' && chart.kind !== 'scatter';
