import type { PictureWords } from './tables.ts';

/** Marks around a quantity that is written in two systems of units: first the one the site shows, then the other. */
const OPEN = '\uE000';
const MIDDLE = '\uE001';
const CLOSE = '\uE002';
const TOKEN = /\uE000([^\uE001]*)\uE001([^\uE002]*)\uE002/g;
/** Tags with their attributes, quotation marks minded. */
const TAG = /<(?:"[^"]*"|'[^']*'|[^>"'])*>/g;

/** Both writings of a quantity as one text, to be told apart when the page is written. */
export function inBothUnits(shown: string, other: string): string {
  return shown === other ? shown : `${OPEN}${shown}${MIDDLE}${other}${CLOSE}`;
}

/** The text in the units that the site shows. */
export function plainUnits(text: string): string {
  return text.includes(OPEN) ? text.replace(TOKEN, '$1') : text;
}

/** The text in the other units. */
export function otherUnits(text: string): string {
  return text.includes(OPEN) ? text.replace(TOKEN, '$2') : text;
}

/** A picture with its words in both systems of units, and the drawing of the other one where it differs. */
export function pictureInBothUnits(here: PictureWords, there: PictureWords): PictureWords {
  const both = (a: string, b: string): string => inBothUnits(plainUnits(a), plainUnits(b));
  return {
    ...here,
    title: both(here.title, there.title),
    measure: both(here.measure, there.measure),
    head: here.head.map((cell, i) => both(cell, there.head[i] ?? cell)),
    other(own) {
      const other = there.drawn();
      return own.wide === other.wide ? null : other;
    },
  };
}

/**
 * A page with every quantity in an element that carries the other writing, so that a reader can switch without a
 * reload; inside tags, titles and scripts the shown one alone.
 */
export function writeUnits(html: string): string {
  if (!html.includes(OPEN)) return html;
  let at = 0;
  let out = '';
  let svg = 0;
  let raw = false;
  const text = (part: string): string => {
    if (raw) return plainUnits(part);
    const name = svg > 0 ? 'tspan' : 'span';
    return part.replace(
      TOKEN,
      (_, shown: string, other: string) => `<${name} class="unit" data-other="${other}">${shown}</${name}>`,
    );
  };
  for (const match of html.matchAll(TAG)) {
    const tag = match[0];
    out += text(html.slice(at, match.index)) + plainUnits(tag);
    at = match.index + tag.length;
    if (tag.startsWith('<svg')) svg++;
    else if (tag.startsWith('</svg')) svg--;
    else if (/^<\/?(?:title|script)\b/.test(tag)) raw = !tag.startsWith('</') && !tag.endsWith('/>');
  }
  return out + text(html.slice(at));
}
