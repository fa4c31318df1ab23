import type { TopLevelSpec } from 'vega-lite';
import { COLOUR, CONFIG, INK, ROOM_FOR_VALUES } from './config.ts';
import type { Drawing } from './config.ts';
import type { StripChart } from './kinds.ts';
import { NAMES_ROOM, brokenLines } from './text.ts';

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
export function strips(chart: StripChart, width: number): Drawing {
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
