import { parseFraction } from './numbers.ts';
import { toStored, unitOf } from './units.ts';
import type { Dimension, Unit } from './units.ts';
import { nth } from '../../numerics/element.ts';

export type QuantityResult =
  /** With the units that the cell itself names. */
  | { readonly kind: 'value'; readonly value: number; readonly units: readonly Unit[] }
  | { readonly kind: 'unreadable' | 'unit-missing' };

/** A number with its unit; only areas have a 2 in theirs: 1lb2oz is a pound and two ounces. */
const PART = /^\s*([+-]?[\d.,\s\u00a0/⁄½⅓⅔¼¾⅛⅜⅝⅞]*[\d½⅓⅔¼¾⅛⅜⅝⅞])\s*((?:[\p{L}°]+|["″”])²?\.?)?/u;
const AREA_PART = /^\s*([+-]?[\d.,\s\u00a0/⁄½⅓⅔¼¾⅛⅜⅝⅞]*[\d½⅓⅔¼¾⅛⅜⅝⅞])\s*(\p{L}+(?:²|2(?!\d))?\.?)?/u;

/**
 * A quantity as people write it: 340, 340 g, 1 lb 3 oz, 3 1/2 in, ½ kg.
 *
 * @param text          the cell, not empty
 * @param dimension     what is measured
 * @param headerUnit    unit of a bare number, null where none is declared
 * @param decimalComma  true where the column writes decimals with a comma
 * @returns             the value in the stored unit, or why there is none
 */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  headerUnit: Unit | null,
  decimalComma: boolean,
): QuantityResult {
  const plain = parseFraction(text, decimalComma);
  if (plain !== null) {
    return headerUnit ? { kind: 'value', value: toStored(plain, headerUnit), units: [] } : { kind: 'unit-missing' };
  }
  let rest = text;
  let total = 0;
  let smallest = Infinity;
  const units: Unit[] = [];
  while (rest.trim() !== '') {
    const part = (dimension === 'area' ? AREA_PART : PART).exec(rest);
    const number = part ? parseFraction(nth(part, 1).trim(), decimalComma) : null;
    const unit = part?.[2] === undefined ? null : unitOf(dimension, part[2]);
    if (!part || number === null || !unit) return { kind: 'unreadable' };
    // "1 lb 3 oz" steps down; "3 oz 1 lb" or "1 lb 3 lb" is a slip of the pen. A compound never has a sign.
    if (unit.factor >= smallest || (units.length > 0 && (number < 0 || total < 0))) return { kind: 'unreadable' };
    smallest = unit.factor;
    total += toStored(number, unit);
    units.push(unit);
    rest = rest.slice(part[0].length);
  }
  return units.length === 0 || (dimension === 'temperature' && units.length > 1)
    ? { kind: 'unreadable' }
    : { kind: 'value', value: total, units };
}
