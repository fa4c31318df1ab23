import type { TopLevelSpec } from 'vega-lite';
import { COLOUR, CONFIG, INK, ROOM_FOR_VALUES } from '../../src/present/charts/config.ts';
import type { Drawing } from '../../src/present/charts/config.ts';
import type { Chart, DotChart, ShareChart, StackChart, StripChart } from '../../src/present/charts/kinds.ts';
import { specification } from '../../src/present/charts/specification.ts';
import { brokenLines } from '../../src/present/charts/text.ts';

/** Charts of rows as Vega-Lite would draw them: what the program's own drawings are compared with. */

/** Room that a title has beside the plot, of names, px. */
const NAMES_ROOM = 70;

/** Values written at the right edge, a line a variety; none where the chart is narrow. */
function writtenValues(width: number, y: object, data: string): readonly object[] {
  if (width <= ROOM_FOR_VALUES) return [];
  return [
    {
      data: { name: data },
      mark: { type: 'text', align: 'left', color: INK, fontSize: 12, limit: 0, aria: false },
      encoding: { y, x: { value: width + 12 }, text: { field: 'written' } },
    },
  ];
}

/** Share of simulated seasons in which a variety earns a spot: a bar each, the limits of the verdicts as lines. */
export function sharesByVega(chart: ShareChart, width: number): Drawing {
  const y = { field: 'name', type: 'nominal', sort: null, axis: { title: null, domain: false, ticks: false } } as const;
  const x = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { domain: [0, 100], nice: false },
      axis: {
        title: brokenLines(chart.axis, width + NAMES_ROOM),
        values: width > ROOM_FOR_VALUES ? [0, 20, 40, 60, 80, 100] : [0, 50, 100],
      },
    }) as const;
  const layer: object[] = [
    {
      data: { name: 'rows' },
      mark: { type: 'rule', color: 'var(--rule)', strokeWidth: 2, aria: false },
      encoding: { y, x: x('zero'), x2: { field: 'above' } },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'bar', height: 12, color: 'var(--check)' },
      encoding: { y, x: x('share'), description: { field: 'description', type: 'nominal' } },
    },
    {
      data: { name: 'limits' },
      mark: { type: 'rule', color: 'var(--ink)', strokeWidth: 1, strokeDash: [3, 3], aria: false },
      encoding: { x: x('value') },
    },
  ];
  layer.push(...writtenValues(width, y, 'rows'));
  const spec = { width, height: { step: 26 }, config: CONFIG, datasets: {}, layer };
  const rows = chart.rows.map((row) => ({ ...row, zero: 0, description: `${row.name}: ${row.written}` }));
  return { spec: spec as unknown as TopLevelSpec, data: { rows, limits: chart.limits.map((value) => ({ value })) } };
}

/** Shares of scores, a line a variety, low scores pale and high ones dark; a number in every part that has room. */
export function stacksByVega(chart: StackChart, width: number): Drawing {
  const y = { field: 'name', type: 'nominal', sort: null, axis: { title: null, domain: false, ticks: false } } as const;
  const x = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { domain: [0, 1], nice: false },
      axis: {
        title: brokenLines(chart.axis, width + NAMES_ROOM),
        format: '%',
        tickCount: width > ROOM_FOR_VALUES ? 5 : 2,
      },
    }) as const;
  const layer: object[] = [
    {
      data: { name: 'rows' },
      mark: { type: 'bar', height: 16, color: 'var(--check)', stroke: 'var(--ink)', strokeWidth: 0.75 },
      encoding: {
        y,
        x: x('from'),
        x2: { field: 'to' },
        fillOpacity: {
          field: 'shade',
          type: 'quantitative',
          scale: { domain: [0, 1], range: [0.05, 1] },
          legend: null,
        },
        description: { field: 'description', type: 'nominal' },
      },
    },
  ];
  layer.push(...writtenValues(width, y, 'labels'));
  const spec = { width, height: { step: 26 }, config: CONFIG, datasets: {}, layer };
  const rows = chart.rows.flatMap(({ name, parts }) => {
    const total = parts.reduce((sum, { count }) => sum + count, 0);
    let done = 0;
    return parts.map(({ score, shade, count, written }) => {
      const from = done / total;
      done += count;
      return { name, score, shade, from, to: done / total, description: `${name}: ${written}` };
    });
  });
  const labels = chart.rows.map(({ name, written }) => ({ name, written }));
  return { spec: spec as unknown as TopLevelSpec, data: width > ROOM_FOR_VALUES ? { rows, labels } : { rows } };
}

const STRIP = 34;

function marksOf(count: number, width: number, axisTitle: string): readonly object[] {
  const x = {
    field: 'x',
    type: 'quantitative',
    scale: { zero: false, nice: true },
    axis: { title: brokenLines(axisTitle, width + NAMES_ROOM), tickCount: width > ROOM_FOR_VALUES ? 6 : 3 },
  };
  const y = (field: string) => ({
    field,
    type: 'quantitative',
    scale: { domain: [0, count], nice: false },
    axis: null,
  });
  const text = { type: 'text', baseline: 'bottom', fontSize: 13, color: INK, limit: 0, aria: false };
  const notes = {
    data: { name: 'labels' },
    mark: { ...text, align: 'left', fontSize: 12 },
    encoding: { x: { value: width + 12 }, y: y('y'), text: { field: 'note' } },
  };
  return [
    {
      data: { name: 'labels' },
      mark: { type: 'rule', color: 'var(--rule)', strokeWidth: 0.5, aria: false },
      encoding: { x: { value: 0 }, x2: { value: width }, y: y('y') },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'area', interpolate: 'step-after', opacity: 0.3, aria: false },
      encoding: { x, y: y('y'), y2: { field: 'base' }, detail: { field: 'name' }, color: COLOUR },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'line', interpolate: 'step-after', strokeWidth: 1.5, aria: false },
      encoding: { x, y: y('y'), detail: { field: 'name' }, color: COLOUR },
    },
    {
      data: { name: 'labels' },
      mark: { ...text, align: 'right' },
      encoding: { x: { value: -8 }, y: y('y'), text: { field: 'name' } },
    },
    ...(width > ROOM_FOR_VALUES ? [notes] : []),
  ];
}

/** A curve of shares for each variety on a line of its own. */
export function stripsByVega(chart: StripChart, width: number): Drawing {
  const count = chart.strips.length;
  const last = Math.max(...chart.strips.flatMap(({ steps: own }) => own.map((step) => step.x)));
  const rows = chart.strips.flatMap(({ name, group, steps: own }, i) => {
    const base = count - 1 - i;
    const ends = [...own, { x: last, share: own.at(-1)?.share ?? 0 }];
    return ends.map((step) => ({ name, group, base, x: step.x, y: base + 0.85 * step.share }));
  });
  const labels = chart.strips.map(({ name, note }, i) => ({ name, note, y: count - 1 - i }));
  const spec = { width, height: count * STRIP, config: CONFIG, datasets: {}, layer: marksOf(count, width, chart.axis) };
  return { spec: spec as unknown as TopLevelSpec, data: { rows, labels } };
}

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

/** Any chart as Vega-Lite draws it. */
export function chartByVega(chart: Chart, width: number): Drawing {
  switch (chart.kind) {
    case 'dots':
      return dotsByVega(chart, width);
    case 'shares':
      return sharesByVega(chart, width);
    case 'stacks':
      return stacksByVega(chart, width);
    case 'strips':
      return stripsByVega(chart, width);
    default:
      return specification(chart, width);
  }
}
