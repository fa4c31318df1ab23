import { describe, expect, it } from 'vitest';
import { drawPlane } from '../../src/main/draw.ts';
import type { PlaneChart } from '../../src/present/charts/kinds.ts';

const chart: PlaneChart = {
  kind: 'scatter',
  axisX: 'yield, g',
  axisY: 'flavour',
  rows: [
    { name: 'One', x: 900, lowX: 400, highX: 1900, y: 5.2, lowY: 4.1, highY: 5.9 },
    { name: 'Two', x: 2100, lowX: 1400, highX: 2900, y: 5.6, lowY: 5.1, highY: 5.9 },
  ].map((row) => ({ ...row, group: 'new', status: 'new', written: '' })),
};

describe('a chart with two axes', () => {
  it('writes the numbers of its axes in the language of the site', async () => {
    const [english, german] = [await drawPlane(chart, 560, 'a', 'en'), await drawPlane(chart, 560, 'a', 'de')];
    expect(english).toMatch(/>1,000</);
    expect(english).toMatch(/>5\.0</);
    expect(german).toMatch(/>1\.000</);
    expect(german).toMatch(/>5,0</);
    expect(german).not.toMatch(/>1,000</);
  });
});
