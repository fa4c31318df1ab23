import { nth } from '../../numerics/element.ts';

/** Value of up to nine digits, -1 for anything else: the quick way for most cells. */
function wholeNumber(text: string): number {
  let value = text.length === 0 ? -1 : 0;
  for (let i = 0; i < text.length; i++) {
    const digit = text.charCodeAt(i) - 48;
    if (digit < 0 || digit > 9) return -1;
    value = 10 * value + digit;
  }
  return value;
}

/** A number written with digits and at most one decimal mark; null for anything else (1e3, 1 000, 0x10). */
export function parseNumber(text: string, decimalComma: boolean): number | null {
  const whole = text.length <= 9 ? wholeNumber(text) : -1;
  if (whole >= 0) return whole;
  const pattern = decimalComma ? /^[+-]?(?:\d+(?:,\d+)?|,\d+)$/ : /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)$/;
  if (!pattern.test(text)) return null;
  const value = Number(decimalComma ? text.replace(',', '.') : text);
  return Number.isFinite(value) ? value : null;
}

const VULGAR = '½⅓⅔¼¾⅛⅜⅝⅞';
const VULGAR_VALUES = [1 / 2, 1 / 3, 2 / 3, 1 / 4, 3 / 4, 1 / 8, 3 / 8, 5 / 8, 7 / 8];

/**
 * A quantity's number, fractions included: 3, 3.5, 1/2, 3 1/2, ½, 3½.
 *
 * @returns the number, or null if it is none
 */
export function parseFraction(text: string, decimalComma: boolean): number | null {
  const plain = parseNumber(text, decimalComma);
  if (plain !== null) return plain;
  const written = /^(?:(\d+)[\s\u00a0]+)?(\d+)\s*[/⁄]\s*(\d+)$/.exec(text);
  if (written) {
    const [, whole, top, bottom] = written;
    return Number(bottom) === 0 ? null : Number(whole ?? 0) + Number(top) / Number(bottom);
  }
  const vulgar = new RegExp(`^(\\d+)?\\s*([${VULGAR}])$`).exec(text);
  if (vulgar) return Number(vulgar[1] ?? 0) + nth(VULGAR_VALUES, VULGAR.indexOf(nth(vulgar, 2)));
  return null;
}
