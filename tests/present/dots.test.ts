import * as vega from 'vega';
import { compile } from 'vega-lite';
import { describe, expect, it } from 'vitest';
import { dots } from '../../src/present/charts/dots.ts';
import type { DotChart } from '../../src/present/charts/kinds.ts';
import { numberWriter } from '../../src/present/numbers.ts';
import { dotsByVega } from '../bench/dotsByVega.ts';

const english = numberWriter('en');

/** The picture that Vega draws of the same rows: an independent program. */
async function byVega(chart: DotChart, width: number): Promise<string> {
  const { spec, data } = dotsByVega(chart, width);
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
