import type { TopLevelSpec } from 'vega-lite';

/** One row of a chart of estimates: a variety with its interval and its plants' own values. */
export interface DotRow {
  readonly name: string;
  readonly group: 'new' | 'returning';
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
}

export interface StepChart {
  readonly kind: 'steps';
  readonly axisX: string;
  readonly axisY: string;
  readonly rows: readonly { readonly name: string; readonly x: number; readonly y: number }[];
  readonly share: boolean;
}

export type Chart = DotChart | StepChart;

const FONT = 'system-ui, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif';
const INK = 'var(--ink)';
const CONFIG = {
  background: 'transparent',
  font: FONT,
  axis: {
    labelColor: INK,
    titleColor: INK,
    domainColor: 'var(--rule)',
    tickColor: 'var(--rule)',
    grid: false,
    labelFontSize: 13,
    titleFontSize: 13,
    titleFontWeight: 'normal',
    labelLimit: 0,
    titleLimit: 0,
  },
  view: { stroke: null },
} as const;

const COLOUR = {
  condition: { test: "datum.group === 'new'", value: 'var(--new)' },
  value: 'var(--returning)',
} as const;

/** Vega-Lite specification of a chart; every number is in its data, it computes nothing. */
export function specification(
  chart: Chart,
  width: number,
): { readonly spec: TopLevelSpec; readonly data: Record<string, readonly object[]> } {
  return chart.kind === 'dots' ? dots(chart, width) : steps(chart, width);
}

function dots(chart: DotChart, width: number) {
  // Order of the rows: the first layer's data come first in the joint domain, so the specification names no variety.
  const y = { field: 'name', type: 'nominal', sort: null, axis: { title: null, domain: false, ticks: false } } as const;
  const x = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { zero: chart.zero, nice: true },
      axis: { title: chart.axis, tickCount: 5 },
    }) as const;
  const spec = {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    width,
    height: { step: 26 },
    config: CONFIG,
    datasets: {},
    layer: [
      {
        data: { name: 'intervals' },
        mark: { type: 'rule', strokeWidth: 2.5, aria: false },
        encoding: { y, x: x('low'), x2: { field: 'high' }, color: COLOUR },
      },
      {
        data: { name: 'plants' },
        mark: { type: 'tick', color: 'var(--rule)', thickness: 2, size: 12, aria: false },
        encoding: { y, x: x('value') },
      },
      {
        data: { name: 'rows' },
        mark: { type: 'point', filled: true, size: 90, opacity: 1, stroke: 'var(--paper)', strokeWidth: 1 },
        encoding: {
          y,
          x: x('estimate'),
          color: COLOUR,
          shape: { condition: { test: "datum.group === 'new'", value: 'diamond' }, value: 'circle' },
          description: { field: 'description', type: 'nominal' },
        },
      },
    ],
  };
  const rows = chart.rows.map((row) => ({ ...row, description: `${row.name}, ${row.group}: ${row.written}` }));
  const intervals = rows.map(({ name, group, estimate, low, high }) => ({
    name,
    group,
    low: low ?? estimate,
    high: high ?? estimate,
  }));
  return { spec: spec as unknown as TopLevelSpec, data: { rows, intervals, plants: chart.plants } };
}

/** Labels at the right edge, in order of height and spread so that none covers another. */
function endLabels(chart: StepChart) {
  const last = new Map<string, StepChart['rows'][number]>();
  for (const row of chart.rows) last.set(row.name, row);
  const top = chart.share ? 1 : Math.max(...chart.rows.map(({ y }) => y));
  const right = Math.max(...chart.rows.map(({ x }) => x));
  const left = Math.min(...chart.rows.map(({ x }) => x));
  const gap = top / 15;
  const ends = [...last.values()].toSorted((a, b) => b.y - a.y || a.x - b.x);
  let next = Infinity;
  return ends.map((end) => {
    next = Math.min(end.y, next - gap);
    return { ...end, labelX: right + (right - left) * 0.06, labelY: next };
  });
}

function steps(chart: StepChart, width: number) {
  const scale = chart.share ? { domainMax: 1 } : { zero: true };
  const x = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { zero: false, nice: false },
      axis: { title: chart.axisX, tickCount: 5 },
    }) as const;
  const y = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale,
      axis: { title: chart.axisY, tickCount: 4, ...(chart.share ? { format: '.0%' } : {}) },
    }) as const;
  const ends = { name: 'ends' };
  const spec = {
    width,
    height: 260,
    config: CONFIG,
    datasets: {},
    layer: [
      {
        data: { name: 'rows' },
        mark: { type: 'line', interpolate: 'step-after', strokeWidth: 2, color: 'var(--returning)', aria: false },
        encoding: { x: x('x'), y: y('y'), detail: { field: 'name' } },
      },
      {
        data: ends,
        mark: { type: 'rule', color: 'var(--rule)', strokeWidth: 0.75, aria: false },
        encoding: { x: x('x'), y: y('y'), x2: { field: 'labelX' }, y2: { field: 'labelY' } },
      },
      {
        data: ends,
        mark: { type: 'text', align: 'left', dx: 4, color: INK, fontSize: 12, limit: 0 },
        encoding: { x: x('labelX'), y: y('labelY'), text: { field: 'name' } },
      },
    ],
  };
  return { spec: spec as unknown as TopLevelSpec, data: { rows: chart.rows, ends: endLabels(chart) } };
}
