import type { ProblemLog } from '../terms/problem.ts';
import { nearestName } from '../terms/names.ts';
import { openTable } from '../read/table.ts';
import type { Table } from '../read/table.ts';
import type { SourceFile } from '../read/decode.ts';
import type { RawRow } from '../read/records.ts';
import { fileOnly } from '../terms/place.ts';
import { unitOf, unitWords } from './cells/units.ts';
import type { Dimension, Unit } from './cells/units.ts';

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
}

interface QuantityPart {
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
  readonly log: ProblemLog;
}

function quantityOf(
  column: string,
  spec: TableSpec,
): { readonly name: string; readonly part: Omit<QuantityPart, 'index'> } | 'unit' | null {
  let badUnit = false;
  for (const { name, dimension, bareUnit } of spec.quantities) {
    if (column === name) return { name, part: { unit: bareUnit ?? null, dimension } };
    if (!column.startsWith(`${name}_`)) continue;
    const unit = unitOf(dimension, column.slice(name.length + 1));
    if (unit) return { name, part: { unit, dimension } };
    badUnit = true;
  }
  return badUnit ? 'unit' : null;
}

/** Columns whose numbers are written with a decimal comma; a column that could be either is reported. */
function findDecimalCommas(table: Table, log: ProblemLog): ReadonlySet<number> {
  const found = new Set<number>();
  if (!table.mayHaveDecimalCommas) return found;
  const seen = table.columns.map(() => ({ commas: 0, thousands: 0, points: 0, row: null as RawRow | null }));
  for (const row of table.rows()) {
    if ('kind' in row) break;
    row.cells.forEach((raw, i) => {
      const at = seen[i];
      const number = /^\s*[+-]?(\d*)([.,])(\d+)(?!\d)/.exec(raw);
      if (!at || !number) return;
      if (number[2] === '.') at.points++;
      else {
        at.commas++;
        at.row ??= row;
        if (number[3]!.length === 3 && /^[1-9]\d{0,2}$/.test(number[1]!)) at.thousands++;
      }
    });
  }
  seen.forEach(({ commas, thousands, points, row }, i) => {
    if (commas === 0 || !row) return;
    if (points === 0 && thousands < commas) found.add(i);
    else if (points === 0) log.add('number-ambiguous', table.placeOf(row, i), row.cells[i]!.trim());
  });
  return found;
}

/** Reports what keeps a file from being read as a table. */
export function reportFault(file: string, fault: Exclude<ReturnType<typeof openTable>, Table>, log: ProblemLog): void {
  const line = 'line' in fault ? fault.line : null;
  const found = fault.kind === 'too-many-columns' ? String(fault.count) : '';
  log.add(fault.kind, line === null ? fileOnly(file) : { file, line, column: 1 }, found);
}

function reportHeader(table: Table, spec: TableSpec, unknown: KnownTable['unknown'], log: ProblemLog): void {
  const names = [...spec.columns, ...spec.quantities.map((q) => q.name)];
  const strange: string[] = [];
  for (const { index, title } of unknown) {
    const near = nearestName(
      title,
      names.filter((name) => !table.columns.includes(name)),
    );
    if (near === null) strange.push(title);
    else log.add('column-near', table.placeOf(table.header, index), title, { near });
  }
  if (strange.length > 0) {
    const first = unknown.find(({ title }) => title === strange[0])!;
    log.add('column-unknown', table.placeOf(table.header, first.index), strange.join(', '));
  }
}

/** A column without a title whose cells are filled: its values would be lost without a word. */
function reportUntitled(table: Table, log: ProblemLog): void {
  const untitled = table.columns.flatMap((column, i) => (column === '' ? [i] : []));
  if (untitled.length === 0) return;
  for (const row of table.rows()) {
    if ('kind' in row) return;
    const filled = untitled.find((i) => (row.cells[i] ?? '').trim() !== '');
    if (filled === undefined) continue;
    log.add('header-empty', table.placeOf(row, filled), row.cells[filled]!.trim());
    return;
  }
}

/** Says that a file was read as Windows-1252. */
export function reportWindows(file: string, line: number | null, log: ProblemLog): void {
  if (line !== null) log.add('read-as-windows', { file, line, column: 1 });
}

/**
 * Opens a table and understands its header; every fault of the header is reported.
 *
 * @returns the table, or null where it cannot be used
 */
export function openKnown(source: SourceFile, spec: TableSpec, log: ProblemLog): KnownTable | null {
  const table = openTable(source);
  if ('kind' in table) {
    reportFault(source.path, table, log);
    return null;
  }
  reportWindows(source.path, table.windowsLine, log);
  const index = new Map<string, number>();
  const quantity = new Map<string, QuantityPart[]>();
  const unknown: { index: number; title: string }[] = [];
  let sound = true;
  const known = new Set(spec.columns);
  table.columns.forEach((column, i) => {
    const place = table.placeOf(table.header, i);
    if (column === '') return;
    if (table.columns.indexOf(column) < i) {
      log.add('header-twice', place, table.titles[i]);
      sound = false;
      return;
    }
    if (known.has(column)) {
      index.set(column, i);
      return;
    }
    const found = quantityOf(column, spec);
    if (found === 'unit') {
      const dimension = spec.quantities.find(({ name }) => column.startsWith(`${name}_`))!.dimension;
      log.add('unit-unknown', place, table.titles[i], { units: unitWords(dimension) });
      sound = false;
    } else if (found) quantity.set(found.name, [...(quantity.get(found.name) ?? []), { ...found.part, index: i }]);
    else unknown.push({ index: i, title: table.titles[i]! });
  });
  reportHeader(table, spec, unknown, log);
  reportUntitled(table, log);
  for (const group of spec.required) {
    if (group.some((name) => index.has(name) || quantity.has(name))) continue;
    log.add('column-missing', table.placeOf(table.header, 0), table.titles.join(', '), { column: group.join(' or ') });
    sound = false;
  }
  return sound ? { table, index, quantity, unknown, decimalCommas: findDecimalCommas(table, log), log } : null;
}
