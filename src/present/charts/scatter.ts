import type { TopLevelSpec } from 'vega-lite';
import { COLOUR, CONFIG, INK, ROOM_FOR_VALUES } from './config.ts';
import type { Drawing } from './config.ts';
import type { ScatterChart } from './kinds.ts';
import { AXIS_ROOM, brokenLines, textWidth } from './text.ts';

const HEIGHT = 320;
const LINE = 14;
const SIZE = 12;

/** From the least to the largest value with a margin, so that places on the chart are known before it is drawn. */
function domainOf(ends: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const margin = high > low ? 0.06 * (high - low) : 1;
  return [low - margin, high + margin];
}

/** A place for every name beside its mark where it covers no other name; in data units. */
function labelsOf(
  chart: ScatterChart,
  width: number,
  [x0, x1]: readonly [number, number],
  [y0, y1]: readonly [number, number],
) {
  const placed: { left: number; right: number; middle: number }[] = [];
  const steps = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5];
  return chart.rows.map(({ name, x, y }) => {
    const [px, py] = [((x - x0) / (x1 - x0)) * width, HEIGHT - ((y - y0) / (y1 - y0)) * HEIGHT];
    const length = textWidth(name, SIZE);
    const isLeft = px + 10 + length > width + 90;
    const left = isLeft ? px - 10 - length : px + 10;
    const isFree = (middle: number): boolean =>
      placed.every((own) => own.right < left || own.left > left + length || Math.abs(own.middle - middle) >= LINE);
    const middle = py - 9 + LINE * (steps.find((step) => isFree(py - 9 + LINE * step)) ?? 0);
    placed.push({ left, right: left + length, middle });
    return {
      name,
      x,
      y,
      labelX: x0 + (left / width) * (x1 - x0),
      labelY: y0 + ((HEIGHT - middle) / HEIGHT) * (y1 - y0),
    };
  });
}

/** Two measures against each other: a mark a variety, its intervals as a cross. */
export function scatter(chart: ScatterChart, width: number): Drawing {
  const domainX = domainOf(chart.rows.flatMap(({ lowX, highX }) => [lowX, highX]));
  const domainY = domainOf(chart.rows.flatMap(({ lowY, highY }) => [lowY, highY]));
  // The corners span the domain, so that the specification holds no number and is compiled once.
  const axis = (field: string, title: string) =>
    ({
      field,
      type: 'quantitative',
      scale: { nice: false, zero: false },
      axis: { title: brokenLines(title, width + AXIS_ROOM), tickCount: width > ROOM_FOR_VALUES ? 5 : 3 },
    }) as const;
  const x = (field: string) => axis(field, chart.axisX);
  const y = (field: string) => axis(field, chart.axisY);
  const data = { name: 'rows' };
  const cross = { type: 'rule', strokeWidth: 1.25, opacity: 0.7, aria: false };
  const layer: object[] = [
    {
      data: { name: 'corners' },
      mark: { type: 'point', opacity: 0, aria: false },
      encoding: { x: x('x'), y: y('y') },
    },
    { data, mark: cross, encoding: { x: x('lowX'), x2: { field: 'highX' }, y: y('y'), color: COLOUR } },
    { data, mark: cross, encoding: { x: x('x'), y: y('lowY'), y2: { field: 'highY' }, color: COLOUR } },
    {
      data,
      mark: { type: 'point', filled: true, size: 90, opacity: 1, stroke: 'var(--paper)', strokeWidth: 1 },
      encoding: {
        x: x('x'),
        y: y('y'),
        color: COLOUR,
        shape: { condition: { test: "datum.group === 'new'", value: 'diamond' }, value: 'circle' },
        description: { field: 'description', type: 'nominal' },
      },
    },
    {
      data: { name: 'labels' },
      mark: { type: 'text', align: 'left', baseline: 'middle', color: INK, fontSize: SIZE, limit: 0, aria: false },
      encoding: { x: x('labelX'), y: y('labelY'), text: { field: 'name' } },
    },
  ];
  const corners = [0, 1].map((i) => ({ x: domainX[i], y: domainY[i] }));
  const spec = { width, height: HEIGHT, config: CONFIG, datasets: {}, layer };
  const rows = chart.rows.map((row) => ({ ...row, description: `${row.name}, ${row.status}: ${row.written}` }));
  return {
    spec: spec as unknown as TopLevelSpec,
    data: { rows, corners, labels: labelsOf(chart, width, domainX, domainY) },
  };
}
