import { cell } from '../numerics/element.ts';

// Cells where they stand in the text of a table, read without a copy of them: for tables of very many rows.

const [ZERO, POINT] = [48, 46];
const TENS = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);

/** Whole number of one to nine digits; -1 for anything else. */
export function wholeAt(text: string, from: number, to: number): number {
  if (to === from || to - from > 9) return -1;
  let value = 0;
  for (let i = from; i < to; i++) {
    const digit = text.charCodeAt(i) - ZERO;
    if (digit < 0 || digit > 9) return -1;
    value = 10 * value + digit;
  }
  return value;
}

/** Number of digits with or without a decimal point, a digit on both sides of it, fifteen at most; -1 for anything else. */
export function decimalAt(text: string, from: number, to: number): number {
  if (to === from || to - from > 15) return -1;
  let [value, point] = [0, -1];
  for (let i = from; i < to; i++) {
    const digit = text.charCodeAt(i) - ZERO;
    if (digit >= 0 && digit <= 9) value = 10 * value + digit;
    else if (digit === POINT - ZERO && point < 0 && i > from && i < to - 1) point = i;
    else return -1;
  }
  // Both are whole numbers that a double holds: their quotient is the nearest there is, as it is of the text.
  return point < 0 ? value : value / cell(TENS, to - point - 1);
}

/** True where a cell is a word, letter by letter. */
export function isWordAt(text: string, from: number, to: number, word: string): boolean {
  if (to - from !== word.length) return false;
  for (let i = 0; i < word.length; i++) if (text.charCodeAt(from + i) !== word.charCodeAt(i)) return false;
  return true;
}

/** Words by their letters: finds which of them stands in a text. */
export type WordFinder = (text: string, from: number, to: number) => number;

/**
 * Opens a table of words.
 *
 * @returns  the position of the word that stands between two places of a text; -1 where none of them does
 */
export function openWords(words: readonly string[]): WordFinder {
  let size = 16;
  while (size < 4 * words.length) size *= 2;
  const slots = new Int32Array(size).fill(-1);
  const slotOf = (text: string, from: number, to: number): number => {
    let hash = 0x811c9dc5;
    for (let i = from; i < to; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
    return (hash ^ (hash >>> 15)) & (size - 1);
  };
  words.forEach((word, i) => {
    let at = slotOf(word, 0, word.length);
    while (slots[at] !== -1) at = (at + 1) & (size - 1);
    slots[at] = i;
  });
  return (text, from, to) => {
    for (let at = slotOf(text, from, to); ; at = (at + 1) & (size - 1)) {
      const found = slots[at]!;
      if (found < 0 || isWordAt(text, from, to, words[found]!)) return found;
    }
  };
}
