import type { RecordedTrait, MeasureTrait } from '../../terms/traits.ts';
import { foldHeader } from '../../terms/names.ts';
import type { QuantityColumn } from '../knownTable.ts';
import { unitOf } from './units.ts';
import type { Dimension, Unit } from './units.ts';

export interface TraitDimension {
  readonly dimension: Dimension;
  /** Unit of a bare number: the trait's declared unit. */
  readonly bareUnit: Unit;
  /** From the dimension's stored unit (cm, g) to the trait's (mm stays mm). */
  readonly toTrait: number;
}

/** How a measure's unit is read and stored; null for a unit of its own (°Brix, lobes), whose numbers are kept as they are. */
export function measureDimension(trait: MeasureTrait): TraitDimension | null {
  if (trait.unit === 'mm') return { dimension: 'length', bareUnit: unitOf('length', 'mm')!, toTrait: 10 };
  if (trait.unit === 'cm')
    return { dimension: 'length', bareUnit: { dimension: 'length', factor: trait.factor }, toTrait: 1 };
  if (trait.unit === 'g')
    return { dimension: 'mass', bareUnit: { dimension: 'mass', factor: trait.factor }, toTrait: 1 };
  return null;
}

/** Columns that hold a declared trait in a wide table. */
export function wideColumns(traits: Iterable<RecordedTrait>): {
  readonly columns: readonly string[];
  readonly quantities: readonly QuantityColumn[];
} {
  const columns: string[] = [];
  const quantities: QuantityColumn[] = [];
  for (const trait of traits) {
    const dimension = trait.kind === 'measure' ? measureDimension(trait) : null;
    const name = foldHeader(trait.key);
    if (dimension) quantities.push({ name, dimension: dimension.dimension, bareUnit: dimension.bareUnit });
    else columns.push(name);
  }
  return { columns, quantities };
}
