import type { Drawing } from './config.ts';
import { dots } from './dots.ts';
import type { PlaneChart, RowChart } from './kinds.ts';
import { scatter } from './scatter.ts';
import { shares } from './shares.ts';
import { stacks } from './stacks.ts';
import { steps } from './steps.ts';
import { strips } from './strips.ts';

/** A chart of rows as SVG text. */
export function rowChart(chart: RowChart, width: number, number: (value: number, decimals?: number) => string): string {
  switch (chart.kind) {
    case 'dots':
      return dots(chart, width, number);
    case 'shares':
      return shares(chart, width, number);
    case 'stacks':
      return stacks(chart, width, number);
    case 'strips':
      return strips(chart, width, number);
  }
}

/** Vega-Lite specification of a chart with two axes; every number is in its data, it computes nothing. */
export function specification(chart: PlaneChart, width: number): Drawing {
  return chart.kind === 'steps' ? steps(chart, width) : scatter(chart, width);
}
