import { describe, expect, it } from 'vitest';
import type { DotChart } from '../../src/present/charts/kinds.ts';
import { limited } from '../../src/present/seasonFigures/limited.ts';
import { check } from '../sites/folder.ts';
import { SMALL } from '../sites/hostile.ts';
import { writingOf } from '../../src/present/numbers.ts';

const writing = writingOf(check(SMALL).trial!.settings);

function figureOf(count: number) {
  const names = Array.from({ length: count }, (_, i) => `Row ${i}`);
  const chart: DotChart = {
    kind: 'dots',
    axis: 'yield, g',
    zero: true,
    ratioTo: null,
    rows: names.map((name, i) => ({
      name,
      group: 'new',
      status: 'new',
      estimate: i,
      low: null,
      high: null,
      written: String(i),
    })),
    plants: names.map((name, i) => ({ name, value: i })),
  };
  return {
    id: 'yield',
    title: 'Yield',
    measure: 'g.',
    chart,
    head: ['Variety', 'g'],
    rows: names.map((name) => [name, '1']),
  };
}

describe('a chart', () => {
  it('of as many varieties as can be taken in stays whole', () => {
    const figure = figureOf(60);
    expect(limited(figure, writing)).toBe(figure);
  });
  it('of more draws the first, with their plants and rows, and says so', () => {
    const { chart, measure, rows } = limited(figureOf(61), writing);
    const { rows: drawn, plants } = chart as DotChart;
    expect(drawn.map(({ name }) => name)).toEqual(Array.from({ length: 40 }, (_, i) => `Row ${i}`));
    expect(plants.map(({ name }) => name)).toEqual(drawn.map(({ name }) => name));
    expect(rows).toHaveLength(40);
    expect(measure).toBe('g. Drawn are the first 40 of 61 varieties; all stand in the tables of this page.');
  });
});
