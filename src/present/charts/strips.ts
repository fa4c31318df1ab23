import { plainAxis } from './axis.ts';
import type { Axis } from './axis.ts';
import { ROOM_FOR_VALUES } from './config.ts';
import { framed, groupColour, px } from './frame.ts';
import type { StripChart } from './kinds.ts';

const STEP = 34;
/** Height of a share of one, px: a curve ends below the row above. */
const WHOLE = 0.85 * STEP;

type Strip = StripChart['strips'][number];

/** Stairs that hold each share up to the day of the next, and the last one up to the end. */
function stairs({ steps }: Strip, base: number, last: number, at: Axis['at']): string {
  const [first, ...rest] = steps;
  const y = (share: number): string => px(base - WHOLE * share);
  if (!first) return '';
  return `M${px(at(first.x))},${y(first.share)}${rest.map(({ x, share }) => `H${px(at(x))}V${y(share)}`).join('')}H${px(at(last))}`;
}

/**
 * A curve of shares for each variety on a line of its own.
 *
 * @param width   of the plot between names and notes, px
 * @param number  writes the axis's numbers in the site's language
 */
export function strips(chart: StripChart, width: number, number: (value: number, decimals?: number) => string): string {
  const { strips: own } = chart;
  const days = own.flatMap(({ steps }) => steps.map(({ x }) => x));
  const last = Math.max(...days);
  const axis = plainAxis(days, width, number, width > ROOM_FOR_VALUES ? 6 : 3);
  const bases = own.map((_, i) => (i + 1) * STEP);
  const marks = [
    '<g stroke="var(--rule)" stroke-width=".5">',
    ...bases.map((base) => `<path d="M0,${base}h${width}"/>`),
    '</g>',
    ...own.map((strip, i) => {
      const colour = groupColour(strip.group);
      const line = stairs(strip, bases[i]!, last, axis.at);
      const first = strip.steps[0];
      const area = first ? `${line}V${bases[i]!}H${px(axis.at(first.x))}Z` : '';
      return `<path d="${area}" fill="${colour}" opacity=".3"/><path d="${line}" stroke="${colour}" stroke-width="1.5"/>`;
    }),
  ];
  const rows = own.map(({ name, note }) => ({ name, written: note }));
  return framed({ width, step: STEP, baseline: STEP - 3, rows, gap: 8, axis, title: chart.axis }, marks.join(''));
}
