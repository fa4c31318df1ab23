import type { TopLevelSpec } from 'vega-lite';
import { CONFIG, ROOM_FOR_VALUES, writtenValues } from './config.ts';
import type { Drawing } from './config.ts';
import type { StackChart } from './kinds.ts';
import { NAMES_ROOM, brokenLines } from './text.ts';

/** Shares of scores, a line a variety, low scores pale and high ones dark; a number in every part that has room. */
export function stacks(chart: StackChart, width: number): Drawing {
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
