import type { Drawing } from './config.ts';
import type { Chart, DotChart } from './kinds.ts';
import { scatter } from './scatter.ts';
import { shares } from './shares.ts';
import { stacks } from './stacks.ts';
import { steps } from './steps.ts';
import { strips } from './strips.ts';

/** Vega-Lite specification of a chart; every number is in its data, it computes nothing. */
export function specification(chart: Exclude<Chart, DotChart>, width: number): Drawing {
  switch (chart.kind) {
    case 'steps':
      return steps(chart, width);
    case 'strips':
      return strips(chart, width);
    case 'shares':
      return shares(chart, width);
    case 'scatter':
      return scatter(chart, width);
    case 'stacks':
      return stacks(chart, width);
  }
}
