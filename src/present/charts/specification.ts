import type { Drawing } from './config.ts';
import { dots } from './dots.ts';
import type { Chart, ScatterChart, StepChart } from './kinds.ts';
import { scatter } from './scatter.ts';
import { shares } from './shares.ts';
import { stacks } from './stacks.ts';
import { steps } from './steps.ts';
import { strips } from './strips.ts';

/** A chart of rows as SVG text; null for one with two axes, which Vega draws. */
export function rowChart(
  chart: Chart,
  width: number,
  number: (value: number, decimals?: number) => string,
): string | null {
  switch (chart.kind) {
    case 'dots':
      return dots(chart, width, number);
    case 'shares':
      return shares(chart, width, number);
    case 'stacks':
      return stacks(chart, width, number);
    case 'strips':
      return strips(chart, width, number);
    default:
      return null;
  }
}

/** Vega-Lite specification of a chart with two axes; every number is in its data, it computes nothing. */
export function specification(chart: StepChart | ScatterChart, width: number): Drawing {
  return chart.kind === 'steps' ? steps(chart, width) : scatter(chart, width);
}
