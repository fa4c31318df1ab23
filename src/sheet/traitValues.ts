import { foldHeader, nearestName } from '../terms/names.ts';
import type { RecordedTrait } from '../terms/traits.ts';
import { measureDimension, wideColumns } from './cells/traitColumns.ts';
import { parseNumber } from './cells/numbers.ts';
import { parseQuantity } from './cells/quantity.ts';
import { unitWords } from './cells/units.ts';
import type { CheckContext } from './context.ts';
import { placeIn, quantityIn, reportBound, signedIn, textIn, whyUnreadable } from './row.ts';
import { isNoAnswer, parseYesNo } from './wordCells.ts';
import type { Row } from './row.ts';

/** A value of a declared trait: a score, 0 or 1 for no or yes, or a measure in the trait's stored unit. */
export interface TraitValue {
  readonly trait: RecordedTrait;
  readonly value: number;
}

function reportScale(row: Row, column: string, text: string, trait: RecordedTrait, { log }: CheckContext): void {
  const facts = trait.kind === 'rating' ? { from: String(trait.from), to: String(trait.to) } : { from: '0', to: '' };
  log.add('score-outside-scale', placeIn(row, column), text, { trait: trait.key, ...facts });
}

const RANGE = /^(\d+(?:[.,]\d+)?)\s*(?:-|–|to|bis)\s*(\d+(?:[.,]\d+)?)$/i;
const ABOUT = /^(\d+(?:[.,]\d+)?)\s*[+-]$/;

/** A score that is written as a range, or with a plus: its middle, or the number itself; null for any other. */
function looseScore(text: string): number | null {
  const number = (part: string | undefined): number => Number(part?.replace(',', '.'));
  const range = RANGE.exec(text);
  if (range) return (number(range[1]) + number(range[2])) / 2;
  const about = ABOUT.exec(text);
  return about ? number(about[1]) : null;
}

/** True for a text that can be a score: a number, a range, or a number with a plus. */
export const isScoreText = (text: string): boolean =>
  looseScore(text) !== null || parseNumber(text, !/\d\.\d/.test(text)) !== null || isNoAnswer(text);

function scoreOf(row: Row, column: string, text: string, trait: RecordedTrait, context: CheckContext): number | null {
  if (trait.kind !== 'measure' && isNoAnswer(text)) {
    context.log.add('answer-left-out', placeIn(row, column), text);
    return null;
  }
  if (trait.kind === 'yes-no') {
    const answer = parseYesNo(text);
    if (answer !== null) return answer ? 1 : 0;
    context.log.add('word-unknown', placeIn(row, column), text, { column, words: 'yes, no' });
    return null;
  }
  const loose = trait.kind === 'rating' ? looseScore(text) : null;
  if (loose !== null) context.log.add('score-taken-as', placeIn(row, column), text);
  const value = loose ?? parseNumber(text, row.from.decimalCommas.has(row.from.index.get(column) ?? -1));
  if (value === null) {
    const place = placeIn(row, column);
    if (!reportBound(row, text, place, column))
      context.log.add(whyUnreadable(text) ?? 'number-unreadable', place, text, { column });
    return null;
  }
  if (trait.kind === 'rating' && (value < trait.from || value > trait.to)) {
    reportScale(row, column, text, trait, context);
    return null;
  }
  return value;
}

/** Values of a wide row: one column for each trait. */
export function wideValuesIn(row: Row, traits: readonly RecordedTrait[], context: CheckContext): readonly TraitValue[] {
  const values: TraitValue[] = [];
  for (const trait of traits) {
    const column = foldHeader(trait.key);
    const dimension = trait.kind === 'measure' ? measureDimension(trait) : null;
    let value: number | null = null;
    if (dimension) {
      const stored = quantityIn(row, column);
      value = stored === null ? null : stored * dimension.toTrait;
    } else if (trait.kind === 'measure') value = signedIn(row, column);
    else {
      const text = textIn(row, column);
      value = text === null ? null : scoreOf(row, column, text, trait, context);
    }
    if (value !== null) values.push({ trait, value });
  }
  return values;
}

/** The value of a long row: the trait's name in one column, its value in another. */
export function longValueIn(
  row: Row,
  column: string,
  traits: readonly RecordedTrait[],
  context: CheckContext,
): TraitValue | null {
  const name = textIn(row, 'trait');
  const text = textIn(row, column);
  if (name === null || text === null) return null;
  const trait = traits.find(({ key }) => foldHeader(key) === foldHeader(name));
  if (!trait) {
    const keys = traits.map(({ key }) => key);
    const near = nearestName(name, keys);
    const facts = { traits: keys.join(', '), ...(near === null ? {} : { near }) };
    context.log.add('unknown-trait', placeIn(row, 'trait'), name, facts);
    return null;
  }
  const dimension = trait.kind === 'measure' ? measureDimension(trait) : null;
  if (!dimension) {
    const value = scoreOf(row, column, text, trait, context);
    return value === null ? null : { trait, value };
  }
  const commas = row.from.decimalCommas.has(row.from.index.get(column) ?? -1);
  const result = parseQuantity(text, dimension.dimension, dimension.bareUnit, commas);
  if (result.kind === 'value' && result.value >= 0) return { trait, value: result.value * dimension.toTrait };
  if (reportBound(row, text, placeIn(row, column), trait.key)) return null;
  const code = result.kind === 'value' ? 'number-negative' : (whyUnreadable(text) ?? 'quantity-unreadable');
  context.log.add(code, placeIn(row, column), text, {
    column,
    quantity: trait.key,
    units: unitWords(dimension.dimension),
  });
  return null;
}

/** Columns of declared traits that a table of scores or measures may have. */
export function traitSpec(traits: readonly RecordedTrait[], longColumn: string, columns: readonly string[]) {
  const wide = wideColumns(traits);
  const names = [...wide.columns, ...wide.quantities.map(({ name }) => name)];
  return {
    takesTraits: true,
    required: [['trait', ...names]],
    columns: [...columns, 'trait', longColumn, ...wide.columns],
    quantities: wide.quantities,
  };
}
