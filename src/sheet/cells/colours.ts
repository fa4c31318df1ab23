/** Colours of fruit in plain words, as CSS colours; the words of CSS itself are taken too. */
const WORDS: Readonly<Record<string, string>> = {
  green: '#4c8c3a',
  'light green': '#9cc46b',
  'dark green': '#2f5d2a',
  'yellow green': '#b5c94a',
  lime: '#a5cf3f',
  white: '#f1eedd',
  cream: '#efe6c2',
  ivory: '#f0e9cf',
  yellow: '#e8c22e',
  'pale yellow': '#efe08a',
  gold: '#d9a520',
  amber: '#d98e1f',
  orange: '#e0761b',
  apricot: '#eba35a',
  red: '#c0281f',
  'dark red': '#8b1a1a',
  scarlet: '#d02f1c',
  crimson: '#a51c30',
  pink: '#dd7d8a',
  purple: '#5b2f63',
  violet: '#5f3b85',
  lilac: '#a98bbd',
  brown: '#6b3f26',
  chocolate: '#5a3421',
  black: '#2b2226',
  mahogany: '#6a2a1c',
  peach: '#f0b48a',
  burgundy: '#6d1a2d',
};
const CSS_WORDS = new Set(
  (
    'aqua beige bisque coral cornsilk darkgreen darkorange darkred darkviolet firebrick forestgreen goldenrod ' +
    'greenyellow indianred indigo khaki lawngreen limegreen linen magenta maroon midnightblue navy olive olivedrab ' +
    'orangered orchid plum rosybrown salmon sandybrown seagreen sienna tan tomato turquoise wheat yellowgreen'
  ).split(' '),
);

/** A colour word or CSS colour as a CSS colour; null if it is neither. */
export function cssColour(text: string): string | null {
  const word = text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
  if (Object.hasOwn(WORDS, word)) return WORDS[word]!;
  if (CSS_WORDS.has(word)) return word;
  return /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/.test(word) ? word : null;
}
