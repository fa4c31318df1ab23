import { ODD_LETTERS, STRAY_QUOTE } from '../terms/names.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { Place } from '../terms/place.ts';

export type OddLetter = 'quote-in-cell' | 'letter-lost' | 'control-character' | 'backslash-in-cell' | 'scripts-mixed';

// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/;
/** A word of Latin letters with Greek or Cyrillic ones among them; the μ before a unit is none. */
const MIXED =
  /\p{Script=Latin}\p{M}*[\p{Script=Greek}\p{Script=Cyrillic}]|[\p{Script=Greek}\p{Script=Cyrillic}]\p{M}*\p{Script=Latin}/u;
const MICRO = /\u03bc(?=[gmlL])/g;

/** What is odd about the letters of a cell; null for nearly every cell. */
export function oddLetter(cell: string): OddLetter | null {
  if (STRAY_QUOTE.test(cell) && cell.split('"').length % 2 === 0) return 'quote-in-cell';
  if (!ODD_LETTERS.test(cell)) return null;
  if (cell.includes('\ufffd')) return 'letter-lost';
  if (CONTROL.test(cell)) return 'control-character';
  if (MIXED.test(cell.replaceAll(MICRO, ''))) return 'scripts-mixed';
  return cell.includes('\\') ? 'backslash-in-cell' : null;
}

/**
 * Warns of the odd letters of a row.
 *
 * @param words  column of free words, in which a backslash is nothing odd
 */
export function reportOddLetters(
  cells: readonly string[],
  words: number | undefined,
  placeOf: (index: number) => Place,
  log: ProblemLog,
): void {
  cells.forEach((cell, i) => {
    const odd = oddLetter(cell);
    if (odd !== null && (odd !== 'backslash-in-cell' || i !== words)) log.add(odd, placeOf(i), cell.trim());
  });
}
