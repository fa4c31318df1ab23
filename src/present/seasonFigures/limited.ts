import type { Chart } from '../charts/kinds.ts';
import type { Writing } from '../numbers.ts';
import type { Figure } from './figure.ts';

/** More rows, or names of a chart with two axes, than this no reader takes in. */
const MOST_ROWS = 60;
const MOST_NAMES = 40;
/** Then so many are drawn. */
const DRAWN = 40;
/** Charts of figures that stand in the tables of the same page: there the rest need not be said twice. */
const SAID_TWICE: ReadonlySet<Chart['kind']> = new Set(['dots', 'shares', 'scatter']);

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

/** A figure that a reader can take in: of very many varieties the first are drawn, which it says. */
export function limited(figure: Figure, { words, number }: Writing): Figure {
  const { chart, measure, rows } = figure;
  const names = namesOf(chart);
  const most = chart.kind === 'steps' || chart.kind === 'scatter' ? MOST_NAMES : MOST_ROWS;
  if (names.length <= most) return figure;
  const kept = new Set(names.slice(0, DRAWN));
  const left = new Set(names.slice(DRAWN));
  return {
    ...figure,
    measure: `${measure} ${words.charts.drawnOf(number(DRAWN), number(names.length))}`,
    chart: only(chart, kept),
    rows: SAID_TWICE.has(chart.kind) ? rows.filter(([name]) => name === undefined || !left.has(name)) : rows,
  };
}
