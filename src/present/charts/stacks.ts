import { svgText } from '../svgText.ts';
import { hundredAxis } from './axis.ts';
import { framed, px } from './frame.ts';
import type { StackChart } from './kinds.ts';

const STEP = 26;
const BAR = 16;
/** Opacity of the lowest score and of the highest. */
const [PALE, DARK] = [0.05, 1];

type Row = StackChart['rows'][number];

/** The parts of a row beside one another, each as wide as its share. */
function partsOf({ name, parts }: Row, row: number, width: number): readonly string[] {
  const total = parts.reduce((sum, { count }) => sum + count, 0);
  let done = 0;
  return parts.map(({ shade, count, written }) => {
    const from = (done / total) * width;
    done += count;
    const to = (done / total) * width;
    const label = svgText(`${name}: ${written}`);
    const opacity = px(PALE + (DARK - PALE) * shade);
    return `<path aria-label="${label}" role="graphics-symbol" d="M${px(from)},${row * STEP + (STEP - BAR) / 2}H${px(to)}v${BAR}H${px(from)}Z" fill-opacity="${opacity}"/>`;
  });
}

/**
 * Shares of scores, a line a variety, low scores pale and high ones dark.
 *
 * @param width   of the plot between names and written values, px
 * @param number  writes the axis's numbers in the site's language
 */
export function stacks(chart: StackChart, width: number, number: (value: number) => string): string {
  const { rows } = chart;
  const axis = hundredAxis(width, (value) => `${number(value)}%`);
  const marks = [
    '<g role="graphics-object" fill="var(--check)" stroke="var(--ink)" stroke-width=".75">',
    ...rows.flatMap((row, i) => partsOf(row, i, width)),
    '</g>',
  ];
  return framed({ width, step: STEP, baseline: 17, rows, gap: 4, axis, title: chart.axis }, marks.join(''));
}
