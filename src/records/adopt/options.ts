import type { DateOrder } from '../../terms/settings.ts';
import type { AdoptedTrait } from './columnCells.ts';

/** What the grower says of columns, by title; null leaves a column as it is. */
export type Said = ReadonlyMap<string, string | AdoptedTrait | null>;

export interface AdoptOptions {
  readonly said: Said;
  readonly table: string | null;
  readonly season: number | null;
  readonly order: DateOrder | null;
  /** What bare numbers under days are: a unit of weight, or fruits. */
  readonly picked: string | null;
  /** The trial's language, or all there are where there is no trial yet: for names of months. */
  readonly languages: readonly string[];
  /** Keys of traits that the trial has declared already. */
  readonly traits: ReadonlyMap<string, 'rating' | 'measure'>;
}
