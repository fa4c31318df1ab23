import * as vega from 'vega';
import { compile } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { dots } from '../../src/present/charts/dots.ts';
import type { Chart, DotChart, ShareChart, StackChart, StripChart } from '../../src/present/charts/kinds.ts';
import { shares } from '../../src/present/charts/shares.ts';
import { stacks } from '../../src/present/charts/stacks.ts';
import { strips } from '../../src/present/charts/strips.ts';
import { numberWriter } from '../../src/present/numbers.ts';
import { chartByVega } from '../bench/rowsByVega.ts';

const english = numberWriter('en');

/** The picture that Vega draws of the same rows: an independent program. */
async function byVega(chart: Chart, width: number): Promise<string> {
  const { spec, data } = chartByVega(chart, width);
  const view = new vega.View(vega.parse(compile(spec).spec), { renderer: 'none' });
  for (const [name, rows] of Object.entries(data))
    view.data(
      name,
      rows.map((row) => ({ ...row })),
    );
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}

const numbers = (svg: string, pattern: RegExp): readonly (readonly number[])[] =>
  [...svg.matchAll(pattern)].map((match) => match.slice(1).map(Number));

const labels = (svg: string): readonly string[] => [...svg.matchAll(/aria-label="([^"]*: [^"]*)"/g)].map(([, x]) => x!);

function chartOf(
  values: readonly (readonly [low: number, estimate: number, high: number])[],
  more: Partial<DotChart>,
): DotChart {
  return {
    kind: 'dots',
    axis: 'yield, g',
    zero: false,
    ratioTo: null,
    plants: [],
    rows: values.map(([low, estimate, high], i) => ({
      name: `Variety ${i}`,
      group: i % 2 === 0 ? ('new' as const) : ('returning' as const),
      status: i % 2 === 0 ? 'new' : 'returning',
      estimate,
      low,
      high,
      written: `${estimate} g`,
    })),
    ...more,
  };
}

const CHARTS: readonly (readonly [what: string, chart: DotChart])[] = [
  [
    'grams',
    chartOf(
      [
        [501.7, 801, 1231.8],
        [714.2, 1077, 2203.9],
        [1080, 1522, 2122],
      ],
      {},
    ),
  ],
  [
    'from nothing up',
    chartOf(
      [
        [501.7, 801, 1231.8],
        [714.2, 1077, 2203.9],
      ],
      { zero: true },
    ),
  ],
  [
    'scores',
    chartOf(
      [
        [4.9, 5.3, 5.8],
        [9.2, 9.7, 10],
      ],
      { plants: [{ name: 'Variety 1', value: 8.25 }] },
    ),
  ],
  [
    'small numbers',
    chartOf(
      [
        [0.0012, 0.0031, 0.0044],
        [0.0021, 0.0022, 0.0023],
      ],
      {},
    ),
  ],
  [
    'below nothing',
    chartOf(
      [
        [-12.5, -3.25, 4],
        [-1, 0, 7],
      ],
      { reference: 2.5 },
    ),
  ],
  ['one value', chartOf([[7, 7, 7]], {})],
  [
    'pulls',
    chartOf(
      [
        [60, 70, 81],
        [71, 77, 88],
      ],
      { pulls: [{ name: 'Variety 0', from: 55, to: 70 }], reference: 93.3 },
    ),
  ],
  [
    'ratios',
    chartOf(
      [
        [0.2, 0.71, 2.46],
        [0.1, 0.39, 1.46],
      ],
      { ratioTo: 'Ferry Lane' },
    ),
  ],
  [
    'far ratios',
    chartOf(
      [
        [0.02, 0.71, 24.6],
        [0.9, 1.39, 1.46],
      ],
      { ratioTo: 'Ferry Lane' },
    ),
  ],
  [
    'large numbers',
    chartOf(
      [
        [123456, 234567, 345678],
        [1e6, 2e6, 3.1e6],
      ],
      {},
    ),
  ],
];

describe('charts of dots', () => {
  it.each(CHARTS)('stand where Vega draws them: %s', async (_, chart) => {
    for (const width of [560, 170]) {
      const [own, other] = [dots(chart, width, english), await byVega(chart, width)];
      const marks = numbers(own, /graphics-symbol" transform="translate\(([^,]+),([^)]+)\)"/g);
      const marksThere = numbers(other, /roledescription="point" transform="translate\(([^,]+),([^)]+)\)"/g);
      const lines = numbers(own, /d="M([^,]+),([\d.]+)H([^"]+)"/g);
      const linesThere = numbers(
        other,
        /translate\(([^,]+),([^)]+)\)" x2="([^"]+)" y2="0" stroke="var\(--(?:new|returning|ink)/g,
      ).map(([x, y, length]) => [x!, y!, x! + length!]);
      expect(marks).toHaveLength(chart.rows.length);
      expect(lines).toHaveLength(chart.rows.length + (chart.pulls?.length ?? 0));
      expect(linesThere).toHaveLength(lines.length);
      const pairs = [
        ...marks.map((mark, i) => [mark, marksThere[i]!]),
        ...lines.map((line, i) => [line, linesThere[i]!]),
      ];
      for (const [here, there] of pairs) here!.forEach((value, i) => expect(value).toBeCloseTo(there![i]!, 1));
      expect(labels(own)).toEqual(labels(other).filter((label) => label.startsWith('Variety')));
    }
  });

  it('write the numbers of their axis in the language of the site', () => {
    const chart = chartOf(
      [
        [501.7, 801, 1231.8],
        [714.2, 1077, 2203.9],
      ],
      {},
    );
    expect(dots(chart, 560, english)).toContain('>1,000</text>');
    expect(dots(chart, 560, numberWriter('de'))).toContain('>1.000</text>');
    const ratios = chartOf([[0.3, 0.7, 2.4]], { ratioTo: 'Ferry Lane' });
    expect(dots(ratios, 560, numberWriter('de'))).toContain('>0,5</text>');
  });

  it('keep the labels of a narrow axis apart, and break its title into lines', () => {
    const chart = chartOf(
      [
        [123456, 234567, 345678],
        [1e6, 2e6, 3.1e6],
      ],
      { axis: 'a title that is far longer than the plot and its names are wide' },
    );
    const svg = dots(chart, 170, english);
    const ticks = [...svg.matchAll(/<text x="([^"]+)" y="70">([^<]+)/g)].map(
      ([, x, text]) => [Number(x), text!] as const,
    );
    expect(ticks.length).toBeGreaterThan(1);
    ticks.slice(1).forEach(([x, text], i) => {
      const [before, textBefore] = ticks[i]!;
      expect(x - before).toBeGreaterThan(((text.length + textBefore.length) / 2) * 7);
    });
    expect(svg).not.toContain(chart.axis);
    expect(Number(/width="(\d+)"/.exec(svg)![1])).toBeLessThan(290);
  });

  it('let no name break out of the picture', () => {
    const chart = chartOf([[1, 2, 3]], { axis: '<b>&' });
    const svg = dots({ ...chart, rows: chart.rows.map((row) => ({ ...row, name: '"><script>' })) }, 560, english);
    expect(svg).not.toMatch(/<script|<b>|&(?!amp;|lt;|gt;|quot;)/);
  });
});

/** Corners of a path, px: turns only, so that two ways to write it come to the same. */
function corners(path: string): readonly (readonly [number, number])[] {
  const all: [number, number][] = [];
  let [x, y] = [0, 0];
  for (const [, letter, rest] of path.matchAll(/([MLHVhv])([^MLHVhvZ]*)/g)) {
    const given = rest!.split(',').map(Number);
    if (letter === 'M' || letter === 'L') [x, y] = [given[0]!, given[1]!];
    if (letter === 'H') x = given[0]!;
    if (letter === 'V') y = given[0]!;
    if (letter === 'h') x += given[0]!;
    if (letter === 'v') y += given[0]!;
    all.push([x, y]);
  }
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.02;
  const apart = all.filter(([a, b], i) => i === 0 || !near(all[i - 1]![0], a) || !near(all[i - 1]![1], b));
  return apart.filter(([a, b], i) => {
    const [before, after] = [apart[i - 1], apart[i + 1]];
    if (!before || !after) return true;
    return !((near(before[0], a) && near(after[0], a)) || (near(before[1], b) && near(after[1], b)));
  });
}

const pathsWith = (svg: string, look: RegExp): readonly (readonly (readonly [number, number])[])[] =>
  [...svg.matchAll(/<path[^>]*>/g)]
    .map(([path]) => path)
    .filter((path) => look.test(path))
    .map((path) => corners(/ d="([^"]*)"/.exec(path)![1]!));

function expectSame(here: readonly unknown[], there: readonly unknown[]): void {
  const flat = (all: readonly unknown[]): readonly number[] => all.flat(9) as readonly number[];
  expect(flat(here)).toHaveLength(flat(there).length);
  flat(here).forEach((value, i) => expect(Math.abs(value - flat(there)[i]!)).toBeLessThan(0.06));
}

/** Ticks with their labels, from left to right. */
const axisOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/>([\d.,]+%?)<\/text>/g)].map(([, label]) => label!).filter((label) => /^\d/.test(label));

const SHARES: ShareChart = {
  kind: 'shares',
  axis: 'of 100 simulated seasons',
  limits: [20, 80],
  rows: [
    { name: 'Wren Hill', share: 94.1, above: 99.2, written: '94 of 100' },
    { name: 'Quarry & Bell', share: 0, above: 12.5, written: 'fewer than 1' },
  ],
};

const STACKS: StackChart = {
  kind: 'stacks',
  axis: 'share of scores',
  rows: [
    {
      name: 'Wren Hill',
      written: '8.1',
      parts: [
        { score: 7, shade: 0.75, count: 1, written: '7: 1' },
        { score: 8, shade: 0.875, count: 4, written: '8: 4' },
        { score: 9, shade: 1, count: 2, written: '9: 2' },
      ],
    },
    { name: 'Ferry Lane', written: '3', parts: [{ score: 3, shade: 0.25, count: 3, written: '3: 3' }] },
  ],
};

const STRIPS: StripChart = {
  kind: 'strips',
  axis: 'days from planting out',
  strips: [
    {
      name: 'Wren Hill',
      group: 'new',
      note: '3 of 3 ripe',
      steps: [
        { x: 0, share: 0 },
        { x: 61, share: 1 / 3 },
        { x: 70, share: 1 },
      ],
    },
    {
      name: 'Ferry Lane',
      group: 'returning',
      note: '1 of 4 ripe',
      steps: [
        { x: 0, share: 0 },
        { x: 83, share: 0.25 },
      ],
    },
  ],
};

describe('charts of shares, scores and curves', () => {
  it.each([560, 170])('stand where Vega draws them, %d px wide: shares', async (width) => {
    const [own, other] = [shares(SHARES, width, english), await byVega(SHARES, width)];
    expectSame(pathsWith(own, /graphics-symbol/), pathsWith(other, /roledescription="bar"/));
    expect(labels(own)).toEqual(labels(other).filter((label) => !label.includes('axis')));
    expect(axisOf(own)).toEqual(axisOf(other));
    const limits = numbers(other, /translate\(([^,]+),[^)]+\)" x2="0" y2="-?52" stroke="var\(--ink/g);
    expectSame(numbers(own, /d="M([\d.]+),0v52"/g), limits);
  });
  it.each([560, 170])('stand where Vega draws them, %d px wide: scores', async (width) => {
    const [own, other] = [stacks(STACKS, width, english), await byVega(STACKS, width)];
    const left = (all: readonly (readonly (readonly [number, number])[])[]) =>
      all.map((path) => [Math.min(...path.map(([x]) => x)), Math.max(...path.map(([x]) => x)), path[0]![1]]);
    expectSame(left(pathsWith(own, /graphics-symbol/)), left(pathsWith(other, /roledescription="bar"/)));
    expectSame(numbers(own, /fill-opacity="([^"]+)"/g), numbers(other, /fill-opacity="([^"]+)"/g));
    expect(labels(own)).toEqual(labels(other).filter((label) => !label.includes('axis')));
    expect(axisOf(own)).toEqual(axisOf(other));
  });
  it.each([560, 170])('stand where Vega draws them, %d px wide: curves', async (width) => {
    const [own, other] = [strips(STRIPS, width, english), await byVega(STRIPS, width)];
    expectSame(pathsWith(own, /stroke-width="1.5"/), pathsWith(other, /stroke-width="1.5"/));
    const area = (svg: string) =>
      pathsWith(svg, /opacity="0?\.3"/).map((path) => path.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]));
    expectSame(area(own), area(other));
    expect(axisOf(own)).toEqual(axisOf(other));
  });
  it('write what they name so that it cannot leave the picture', () => {
    const name = '"><script>';
    const rows = SHARES.rows.map((row) => ({ ...row, name }));
    expect(shares({ ...SHARES, rows }, 560, english)).not.toContain('<script');
    expect(stacks({ ...STACKS, rows: STACKS.rows.map((row) => ({ ...row, name })) }, 560, english)).not.toContain(
      '<script',
    );
    expect(strips({ ...STRIPS, strips: STRIPS.strips.map((row) => ({ ...row, name })) }, 560, english)).not.toContain(
      '<script',
    );
  });
});
