import type { TopLevelSpec } from 'vega-lite';
import { COLOUR, CONFIG, INK, writtenValues } from '../../src/present/charts/config.ts';
import type { Drawing } from '../../src/present/charts/config.ts';
import type { DotChart } from '../../src/present/charts/kinds.ts';

const RATIO_TICKS = [0.1, 0.25, 0.5, 1, 2, 4, 10];

/** The chart of dots as Vega-Lite would draw it: what the program's own drawing is compared with. */
export function dotsByVega(chart: DotChart, width: number): Drawing {
  // Order of the rows: the first layer's data come first in the joint domain, so the specification names no variety.
  const y = { field: 'name', type: 'nominal', sort: null, axis: { title: null, domain: false, ticks: false } } as const;
  const isRatio = chart.ratioTo !== null;
  const scale = isRatio ? { type: 'log', nice: false, padding: 12 } : { zero: chart.zero, nice: true };
  const ticks = isRatio ? { values: RATIO_TICKS, format: '~g' } : { tickCount: 5 };
  const x = (field: string) => ({ field, type: 'quantitative', scale, axis: { title: chart.axis, ...ticks } }) as const;
  const colour = { color: COLOUR };
  const layer: object[] = [
    {
      data: { name: 'intervals' },
      mark: { type: 'rule', strokeWidth: 2.5, aria: false },
      encoding: { y, x: x('low'), x2: { field: 'high' }, ...colour },
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
        ...colour,
        shape: { condition: { test: "datum.group === 'new'", value: 'diamond' }, value: 'circle' },
        description: { field: 'description', type: 'nominal' },
      },
    },
  ];
  if (chart.pulls) {
    layer.splice(2, 0, {
      data: { name: 'pulls' },
      mark: { type: 'rule', color: INK, strokeWidth: 1, yOffset: 8, aria: false },
      encoding: { y, x: x('from'), x2: { field: 'to' } },
    });
  }
  const line = isRatio ? 1 : chart.reference;
  if (line !== undefined) {
    layer.push({
      data: { name: 'reference' },
      mark: { type: 'rule', color: 'var(--check)', strokeWidth: 1, aria: false },
      encoding: { x: x('value') },
    });
  }
  layer.push(...writtenValues(width, y, 'rows'));
  const spec = { width, height: { step: 26 }, config: CONFIG, datasets: {}, layer };
  return { spec: spec as unknown as TopLevelSpec, data: dataOf(chart, line) };
}

/** The chart's rows by the names of the specification's data. */
function dataOf(chart: DotChart, line: number | undefined): Drawing['data'] {
  const rows = chart.rows.map((row) => ({ ...row, description: `${row.name}, ${row.status}: ${row.written}` }));
  const intervals = rows.map(({ name, group, estimate, low, high }) => ({
    name,
    group,
    low: low ?? estimate,
    high: high ?? estimate,
  }));
  return {
    rows,
    intervals,
    plants: chart.plants,
    ...(chart.pulls ? { pulls: chart.pulls } : {}),
    ...(line === undefined ? {} : { reference: [{ value: line }] }),
  };
}
