import { svgText } from '../svgText.ts';
import { plainAxis, ratioAxis } from './axis.ts';
import type { Axis } from './axis.ts';
import { framed, groupColour, px } from './frame.ts';
import type { DotChart, DotRow } from './kinds.ts';

/** Height of a line, px. */
const STEP = 26;
/** Half the height of a mark, px. */
const RADIUS = 4.743;

/** Middle of a row, px from the top. */
const middleOf = (row: number): number => row * STEP + STEP / 2;

/** Everything that the axis must hold. */
function valuesOf({ rows, plants, pulls, zero, reference, ratioTo }: DotChart): readonly number[] {
  return [
    ...rows.flatMap(({ estimate, low, high }) => [estimate, low ?? estimate, high ?? estimate]),
    ...plants.map(({ value }) => value),
    ...(pulls ?? []).flatMap(({ from, to }) => [from, to]),
    ...(ratioTo === null ? (reference === undefined ? [] : [reference]) : [1]),
    ...(ratioTo === null && zero ? [0] : []),
  ];
}

function mark(row: DotRow, x: number, y: number): string {
  const r = RADIUS;
  const shape =
    row.group === 'new' ? `M${-r},0L0,${-r}L${r},0L0,${r}Z` : `M${r},0A${r},${r},0,1,1,${-r},0A${r},${r},0,1,1,${r},0`;
  const label = svgText(`${row.name}, ${row.status}: ${row.written}`);
  return `<path aria-label="${label}" role="graphics-symbol" transform="translate(${px(x)},${y})" d="${shape}" fill="${groupColour(row.group)}" stroke="var(--paper)"/>`;
}

const level = (from: number, to: number, y: number, look: string): string =>
  `<path d="M${px(from)},${y}H${px(to)}" ${look}/>`;

/** Intervals, plants, pulls, marks and the line of reference. */
function marks(chart: DotChart, { at }: Axis): string {
  const { rows, plants, pulls, ratioTo } = chart;
  const places = new Map(rows.map(({ name }, i) => [name, middleOf(i)]));
  const placed = <Own extends { readonly name: string }>(
    all: readonly Own[],
    draw: (one: Own, y: number) => string,
  ): string =>
    all
      .map((one) => {
        const y = places.get(one.name);
        return y === undefined ? '' : draw(one, y);
      })
      .join('');
  const line = ratioTo === null ? chart.reference : 1;
  return [
    `<g stroke-width="2.5">`,
    ...rows.map((row, i) =>
      level(
        at(row.low ?? row.estimate),
        at(row.high ?? row.estimate),
        middleOf(i),
        `stroke="${groupColour(row.group)}"`,
      ),
    ),
    `</g><g stroke="var(--rule)" stroke-width="2" opacity=".7">`,
    placed(plants, ({ value }, y) => `<path d="M${px(at(value))},${y - 6}v12"/>`),
    `</g><g stroke="var(--ink)">`,
    placed(pulls ?? [], ({ from, to }, y) => level(at(from), at(to), y + 8, '')),
    `</g><g role="graphics-object">`,
    ...rows.map((row, i) => mark(row, at(row.estimate), middleOf(i))),
    '</g>',
    line === undefined ? '' : `<path d="M${px(at(line))},0v${rows.length * STEP}" stroke="var(--check)"/>`,
  ].join('');
}

/**
 * Estimates with their intervals over the plants' own values, a line a variety, as SVG text.
 *
 * @param chart   its rows and words, in one system of units
 * @param width   width of the plot between names and written values, px
 * @param number  writes the axis's numbers in the site's language
 */
export function dots(chart: DotChart, width: number, number: (value: number, decimals?: number) => string): string {
  const axis = (chart.ratioTo === null ? plainAxis : ratioAxis)(valuesOf(chart), width, number);
  const frame = { width, step: STEP, baseline: 17, rows: chart.rows, gap: 4, axis, title: chart.axis };
  return framed(frame, marks(chart, axis));
}
