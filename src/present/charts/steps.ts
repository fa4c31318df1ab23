import type { TopLevelSpec } from 'vega-lite';
import { CONFIG, INK, ROOM_FOR_VALUES } from './config.ts';
import type { Drawing } from './config.ts';
import type { StepChart } from './kinds.ts';
import { AXIS_ROOM, brokenLines } from './text.ts';

/** Labels at the right edge, in order of height and spread so that none covers another. */
function endLabels(chart: StepChart) {
  const last = new Map<string, StepChart['rows'][number]>();
  for (const row of chart.rows) last.set(row.name, row);
  const top = Math.max(...chart.rows.map(({ y }) => y));
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

/** Step lines that end in a label each. */
export function steps(chart: StepChart, width: number): Drawing {
  const x = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { zero: false, nice: false },
      axis: { title: brokenLines(chart.axisX, width + AXIS_ROOM), tickCount: width > ROOM_FOR_VALUES ? 5 : 3 },
    }) as const;
  const y = (field: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { zero: true },
      axis: { title: chart.axisY, tickCount: 4 },
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
        mark: { type: 'text', align: 'left', dx: 4, color: INK, fontSize: 13, limit: 0 },
        encoding: { x: x('labelX'), y: y('labelY'), text: { field: 'name' } },
      },
    ],
  };
  return { spec: spec as unknown as TopLevelSpec, data: { rows: chart.rows, ends: endLabels(chart) } };
}
