import { nth } from '../../numerics/element.ts';

/** What a unit measures; values of one dimension are stored in one unit. */
export type Dimension = 'mass' | 'length' | 'area' | 'volume' | 'temperature' | 'depth';

interface Unit {
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset?: number;
}

/** Units by the words people write; factors to g, cm, m², l, °C and mm (of rain). Exact by definition (NIST SP 811). */
const UNITS: Readonly<Record<Dimension, readonly (readonly [words: string, factor: number, offset?: number])[]>> = {
  mass: [
    ['g gr gram grams gramme grammes', 1],
    ['kg kgs kilo kilos kilogram kilograms', 1000],
    ['mg milligram milligrams', 0.001],
    ['oz ounce ounces', 28.349523125],
    ['lb lbs pound pounds', 453.59237],
  ],
  length: [
    ['cm centimetre centimetres centimeter centimeters', 1],
    ['mm millimetre millimetres millimeter millimeters', 0.1],
    ['m metre metres meter meters', 100],
    ['in inch inches " ″ ”', 2.54],
    ['ft foot feet', 30.48],
  ],
  area: [
    ['m2 m² sqm', 1],
    ['ft2 ft² sqft', 0.09290304],
  ],
  volume: [
    ['l litre litres liter liters', 1],
    ['ml millilitre millilitres milliliter milliliters', 0.001],
    ['gal gallon gallons', 3.785411784],
  ],
  temperature: [
    ['c °c celsius', 1],
    ['f °f fahrenheit', 5 / 9, -32],
  ],
  depth: [
    ['mm millimetre millimetres millimeter millimeters', 1],
    ['in inch inches " ″ ”', 25.4],
  ],
};

const byWord = new Map<string, Unit>();
for (const [dimension, units] of Object.entries(UNITS) as [Dimension, (typeof UNITS)[Dimension]][]) {
  for (const [words, factor, offset] of units) {
    for (const word of words.split(' ')) {
      byWord.set(`${dimension} ${word}`, offset === undefined ? { dimension, factor } : { dimension, factor, offset });
    }
  }
}

/** A unit of the dimension by its word, whatever its case; null if there is none. */
export function unitOf(dimension: Dimension, word: string): Unit | null {
  return byWord.get(`${dimension} ${word.toLowerCase().replace(/\.$/, '')}`) ?? null;
}

/** Value in the stored unit of the dimension: g, cm, m², l, °C, mm of rain. */
export function toStored(value: number, unit: Unit): number {
  return (value + (unit.offset ?? 0)) * unit.factor;
}

export type { Unit };

/** Words of the units a header or a cell may name, for messages. */
export function unitWords(dimension: Dimension): string {
  return UNITS[dimension].map(([words]) => nth(words.split(' '), 0)).join(', ');
}
