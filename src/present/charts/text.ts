import type { Chart } from './kinds.ts';

/** Of names, ticks and titles, px. */
export const FONT_SIZE = 13;

/** Mean width of a character as a share of its size, on the safe side for system fonts. */
const CHARACTER = 0.6;

/** Width of a text before a browser has set it, px. */
export const textWidth = (text: string, size: number): number => CHARACTER * size * [...text].length;

/** Words in lines of at most a width, as even as their words allow. */
export function brokenLines(text: string, width: number): readonly string[] {
  const count = Math.ceil(textWidth(text, FONT_SIZE) / width);
  if (count <= 1) return [text];
  const most = textWidth(text, FONT_SIZE) / count;
  const out: string[] = [];
  for (const word of text.split(/ +/)) {
    const last = out.at(-1);
    if (last === undefined || textWidth(last, FONT_SIZE) + textWidth(word, FONT_SIZE) / 2 > most) out.push(word);
    else out[out.length - 1] = `${last} ${word}`;
  }
  return out;
}

/** Room that a title has beside the plot, of an upright axis, px. */
export const AXIS_ROOM = 40;

/** Room of a phone's page, px: what is wider is made smaller, and its text with it. */
const PHONE = 280;
const WIDEST = 170;
const NARROWEST = 76;
/** The upright axis of a chart that has one, with its title, px. */
const UPRIGHT = 56;

/** Width of a chart's plot on a phone, px: with the names beside it the text keeps its size. */
export function narrowWidth(chart: Chart): number {
  const names =
    chart.kind === 'strips'
      ? chart.strips.map(({ name }) => name)
      : chart.kind === 'scatter'
        ? []
        : chart.rows.map(({ name }) => name);
  const room =
    PHONE -
    26 -
    (chart.kind === 'steps' ? UPRIGHT : 0) -
    Math.max(0, ...names.map((name) => textWidth(name, FONT_SIZE)));
  return Math.round(Math.min(WIDEST, Math.max(NARROWEST, room)));
}
