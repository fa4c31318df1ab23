import type { LimitedValue } from '../terms/trial.ts';
import type { SourceFile } from '../read/decode.ts';
import type { PlantingDraft } from './draft.ts';

export const SEASON_TABLES = [
  'plantings.csv',
  'harvests.csv',
  'observations.csv',
  'ratings.csv',
  'measurements.csv',
  'germination.csv',
  'weather.csv',
  'totals.csv',
  'season.csv',
  'wishes.csv',
  'sent.csv',
  'answers.csv',
] as const;
export type SeasonTable = (typeof SEASON_TABLES)[number];

export type Tables = ReadonlyMap<SeasonTable, SourceFile>;

/** A season's plantings as read, before its records are laid against them. */
export interface SeasonDrafts {
  readonly year: number;
  readonly tables: Tables;
  /** Full records of gardens, and members' sheets among them. */
  readonly gardens: ReadonlyMap<string, Tables>;
  readonly planted: readonly PlantingDraft[];
  readonly totalled: readonly PlantingDraft[];
  readonly limited: LimitedValue[];
}
