import type { TopLevelSpec } from 'vega-lite';
import { CONFIG, writtenValues, ROOM_FOR_VALUES } from './config.ts';
import type { Drawing } from './config.ts';
import type { ShareChart } from './kinds.ts';
import { NAMES_ROOM, brokenLines } from './text.ts';

/** Share of simulated seasons in which a variety earns a spot: a bar each, the limits of the verdicts as lines. */
export function shares(chart: ShareChart, width: number): Drawing {
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
