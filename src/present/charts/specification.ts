import type { Drawing } from './config.ts';
import { dots } from './dots.ts';
import type { Chart } from './kinds.ts';
import { shares } from './shares.ts';
import { steps } from './steps.ts';
import { strips } from './strips.ts';

/** Vega-Lite specification of a chart; every number is in its data, it computes nothing. */
export function specification(chart: Chart, width: number): Drawing {
  if (chart.kind === 'dots') return dots(chart, width);
  if (chart.kind === 'shares') return shares(chart, width);
  return chart.kind === 'steps' ? steps(chart, width) : strips(chart, width);
}
