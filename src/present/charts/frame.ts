import { svgText } from '../svgText.ts';
import type { Axis } from './axis.ts';
import { FONT, ROOM_FOR_VALUES } from './config.ts';
import { FONT_SIZE, brokenLines, textWidth } from './text.ts';

const VALUE_SIZE = 12;
const MARGIN = 6;
const LINE_HEIGHT = 16;

/** A chart of rows around its marks: names on the left, written values on the right, an axis below. */
export interface Frame {
  /** Of the plot between names and written values, px. */
  readonly width: number;
  /** Height of a row, and where its texts stand in it, px from its top. */
  readonly step: number;
  readonly baseline: number;
  readonly rows: readonly { readonly name: string; readonly written: string }[];
  /** Between a name and the plot, px. */
  readonly gap: number;
  readonly axis: Axis;
  readonly title: string;
}

export const groupColour = (group: 'new' | 'returning'): string =>
  group === 'new' ? 'var(--new)' : 'var(--returning)';

/** Places are kept to hundredths of a px. */
export const px = (value: number): string => String(Math.round(value * 100) / 100);

/** True where a chart is wide enough for its written values. */
const hasRoom = ({ width }: Frame): boolean => width > ROOM_FOR_VALUES;

/**
 * Draws a chart of rows as SVG text.
 *
 * @param marks  SVG of what stands in the plot, from its upper left corner
 */
export function framed(frame: Frame, marks: string): string {
  const { width, step, baseline, rows, gap, axis } = frame;
  const left = MARGIN + gap + Math.max(...rows.map(({ name }) => textWidth(name, FONT_SIZE)));
  const right =
    MARGIN + (hasRoom(frame) ? 12 + Math.max(...rows.map(({ written }) => textWidth(written, VALUE_SIZE))) : 10);
  const full = Math.ceil(left + width + right);
  const title = brokenLines(frame.title, full - 2 * MARGIN);
  const half = Math.max(...title.map((line) => textWidth(line, FONT_SIZE))) / 2;
  // Under the middle of the plot, unless it would leave the picture there.
  const middle = Math.min(Math.max(width / 2, half - left + MARGIN), width + right - half - MARGIN);
  const bottom = rows.length * step;
  const height = bottom + 26 + title.length * LINE_HEIGHT + MARGIN;
  const texts = (x: number, of: 'name' | 'written'): readonly string[] =>
    rows.map((row, i) => `<text x="${x}" y="${i * step + baseline}">${svgText(row[of])}</text>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="marks" width="${full}" height="${height}" viewBox="0 0 ${full} ${height}">`,
    `<g transform="translate(${px(left)},${MARGIN})" font-family="${svgText(FONT)}" font-size="${FONT_SIZE}px" fill="none">`,
    `<path d="M0,${bottom}h${width}" stroke="var(--rule)"/><g text-anchor="middle" fill="var(--ink)">`,
    ...axis.ticks.map(
      ({ value, label }) =>
        `<path d="M${px(axis.at(value))},${bottom}v5" stroke="var(--rule)"/><text x="${px(axis.at(value))}" y="${bottom + 18}">${svgText(label)}</text>`,
    ),
    ...title.map((line, i) => `<text x="${px(middle)}" y="${bottom + 36 + i * LINE_HEIGHT}">${svgText(line)}</text>`),
    '</g><g text-anchor="end" fill="var(--ink)">',
    ...texts(-gap, 'name'),
    '</g>',
    marks,
    hasRoom(frame) ? `<g font-size="${VALUE_SIZE}px" fill="var(--ink)">` : '',
    ...(hasRoom(frame) ? texts(width + 12, 'written') : []),
    hasRoom(frame) ? '</g>' : '',
    '</g></svg>',
  ].join('');
}
