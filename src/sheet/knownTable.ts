import type { ProblemLog } from '../terms/problem.ts';
import type { LimitedValue } from '../terms/trial.ts';
import type { Table } from '../read/table.ts';
import type { Dimension, Unit } from './cells/units.ts';
import type { DateTrail } from './dateTrail.ts';

/** A quantity that may stand under several headers: `weight_g`, `weight_oz`, bare `weight`. */
export interface QuantityColumn {
  readonly name: string;
  readonly dimension: Dimension;
  /** Unit of a bare number under a header without one; null: an error. */
  readonly bareUnit?: Unit | null;
}

export interface TableSpec {
  /** Columns of which at least one must be there, group by group; quantities by their bare name. */
  readonly required: readonly (readonly string[])[];
  readonly columns: readonly string[];
  readonly quantities: readonly QuantityColumn[];
  /** True where a column may be that of a declared trait. */
  readonly takesTraits?: boolean;
  /** True for a table of a member of a club: nothing in it may tell who that is. */
  readonly isMembers?: boolean;
  /** True where the caller looks for decimal commas itself. */
  readonly isDaySheet?: boolean;
}

/** A column of a quantity with its unit. */
export interface QuantityPart {
  readonly index: number;
  readonly unit: Unit | null;
  readonly dimension: Dimension;
}

/** A table whose header is understood. */
export interface KnownTable {
  readonly table: Table;
  readonly index: ReadonlyMap<string, number>;
  readonly quantity: ReadonlyMap<string, readonly QuantityPart[]>;
  readonly unknown: readonly { readonly index: number; readonly title: string }[];
  readonly decimalCommas: ReadonlySet<number>;
  /** Line of a row of units below the header; null without one. */
  readonly unitsLine: number | null;
  /** Plain columns of which a record must fill one, group by group. */
  readonly needed: readonly (readonly number[])[];
  /** Figures of which only a limit was written, added as rows are read. */
  readonly limited: LimitedValue[];
  /** Dates of the column `date`, followed as rows are read. */
  readonly trail: DateTrail;
  readonly log: ProblemLog;
}
