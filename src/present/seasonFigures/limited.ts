import type { Chart } from '../charts/kinds.ts';
import type { Writing } from '../numbers.ts';
import type { Figure } from './figure.ts';

/** So many rows are drawn of a chart of rows, and so many names of one with two axes. */
const MOST_ROWS = 60;
const MOST_NAMES = 40;

/** Names of a chart, in its order. */
function namesOf(chart: Chart): readonly string[] {
  const named = chart.kind === 'strips' ? chart.strips : chart.rows;
  return [...new Set(named.map(({ name }) => name))];
}

/** A chart with some of its names alone. */
function only(chart: Chart, kept: ReadonlySet<string>): Chart {
  const of = <Own extends { readonly name: string }>(rows: readonly Own[]): readonly Own[] =>
    rows.filter(({ name }) => kept.has(name));
  switch (chart.kind) {
    case 'dots':
      return {
        ...chart,
        rows: of(chart.rows),
        plants: of(chart.plants),
        ...(chart.pulls ? { pulls: of(chart.pulls) } : {}),
      };
    case 'strips':
      return { ...chart, strips: of(chart.strips) };
    case 'shares':
      return { ...chart, rows: of(chart.rows) };
    case 'stacks':
      return { ...chart, rows: of(chart.rows) };
    case 'steps':
      return { ...chart, rows: of(chart.rows) };
    case 'scatter':
      return { ...chart, rows: of(chart.rows) };
  }
}

/** A figure that a reader can take in: of very many varieties the first are drawn, which it says; all are in its table. */
export function limited(figure: Figure, { words, number }: Writing): Figure {
  const { chart, measure } = figure;
  const names = namesOf(chart);
  const most = chart.kind === 'steps' || chart.kind === 'scatter' ? MOST_NAMES : MOST_ROWS;
  if (names.length <= most) return figure;
  return {
    ...figure,
    measure: `${measure} ${words.charts.drawnOf(number(most), number(names.length))}`,
    chart: only(chart, new Set(names.slice(0, most))),
  };
}
