import { svgText } from '../svgText.ts';
import { hundredAxis } from './axis.ts';
import { framed, px } from './frame.ts';
import type { ShareChart } from './kinds.ts';

const STEP = 26;
const BAR = 12;

/**
 * Share of simulated seasons in which a variety earns a spot: a bar each, the limits of the verdicts as lines.
 *
 * @param width   of the plot between names and written values, px
 * @param number  writes the axis's numbers in the site's language
 */
export function shares(chart: ShareChart, width: number, number: (value: number) => string): string {
  const { rows, limits } = chart;
  const axis = hundredAxis(width, number);
  const { at } = axis;
  const marks = [
    '<g stroke="var(--rule)" stroke-width="2">',
    ...rows.map(({ above }, i) => `<path d="M0,${i * STEP + STEP / 2}H${px(at(above))}"/>`),
    '</g><g role="graphics-object" fill="var(--check)">',
    ...rows.map(
      ({ name, share, written }, i) =>
        `<path aria-label="${svgText(`${name}: ${written}`)}" role="graphics-symbol" d="M0,${i * STEP + (STEP - BAR) / 2}H${px(at(share))}v${BAR}H0Z"/>`,
    ),
    '</g><g stroke="var(--ink)" stroke-dasharray="3,3">',
    ...limits.map((limit) => `<path d="M${px(at(limit))},0v${rows.length * STEP}"/>`),
    '</g>',
  ];
  return framed({ width, step: STEP, baseline: 17, rows, gap: 4, axis, title: chart.axis }, marks.join(''));
}
