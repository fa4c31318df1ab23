import type { ProblemLog } from '../terms/problem.ts';
import { openTable } from '../read/table.ts';
import type { Table } from '../read/table.ts';
import type { SourceFile } from '../read/decode.ts';
import { fileOnly } from '../terms/place.ts';
import { unitOf, unitWords } from './cells/units.ts';
import type { CheckContext } from './context.ts';
import { reportAround, reportHeader, reportUntitled, unitsRow } from './header.ts';
import type { KnownTable, QuantityPart, TableSpec } from './knownTable.ts';
import { tellsPersons } from './persons.ts';
import { findDecimalCommas } from './decimalCommas.ts';
import { newTrail } from './dateTrail.ts';
import { first, nth } from '../numerics/element.ts';

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

/** Columns by the names of the contract: where no column is called variety, the one called name is it. */
function byContract(columns: readonly string[], spec: TableSpec): readonly string[] {
  const isNamed = !columns.includes('variety') && spec.columns.includes('variety') && !spec.columns.includes('name');
  return isNamed ? columns.map((column) => (column === 'name' ? 'variety' : column)) : columns;
}

/** True if a header has every column that the table must have. */
function hasRequired(written: readonly string[], spec: TableSpec): boolean {
  const { required, quantities } = spec;
  const columns = byContract(written, spec);
  const isIn = (name: string): boolean =>
    columns.includes(name) ||
    quantities.some(
      (own) =>
        own.name === name &&
        columns.some(
          (column) => column.startsWith(`${name}_`) && unitOf(own.dimension, column.slice(name.length + 1)) !== null,
        ),
    );
  return required.every((group) => group.some(isIn));
}

/** Reports what keeps a file from being read as a table. */
export function reportFault(file: string, fault: Exclude<ReturnType<typeof openTable>, Table>, log: ProblemLog): void {
  const line = 'line' in fault ? fault.line : null;
  const found = fault.kind === 'too-many-columns' ? String(fault.count) : '';
  log.add(fault.kind, line === null ? fileOnly(file) : { file, line, column: 1 }, found);
}

/** Says that a file was read as Windows-1252. */
export function reportWindows(file: string, line: number | null, log: ProblemLog): void {
  if (line !== null) log.add('read-as-windows', { file, line, column: 1 });
}

/** What the columns of a header are; null where one keeps the table from being used. */
function understand(
  table: Table,
  spec: TableSpec,
  log: ProblemLog,
): Pick<KnownTable, 'index' | 'quantity' | 'unknown'> | null {
  const index = new Map<string, number>();
  const quantity = new Map<string, QuantityPart[]>();
  const unknown: { index: number; title: string }[] = [];
  const known = new Set(spec.columns);
  let sound = true;
  const columns = byContract(table.columns, spec);
  if ((spec.isMembers === true || columns.includes('garden')) && tellsPersons(table, columns, log)) return null;
  columns.forEach((column, i) => {
    const place = table.placeOf(table.header, i);
    if (column === '') return;
    if (columns.indexOf(column) < i) {
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
      const dimension = first(spec.quantities, ({ name }) => column.startsWith(`${name}_`)).dimension;
      log.add('unit-unknown', place, nth(table.titles, i), { units: unitWords(dimension) });
      sound = false;
    } else if (found) quantity.set(found.name, [...(quantity.get(found.name) ?? []), { ...found.part, index: i }]);
    else unknown.push({ index: i, title: nth(table.titles, i) });
  });
  reportHeader(table, spec, unknown, log);
  reportUntitled(table, log);
  for (const group of spec.required) {
    if (group.some((name) => index.has(name) || quantity.has(name))) continue;
    log.add('column-missing', table.placeOf(table.header, 0), table.titles.join(', '), { column: group.join(' or ') });
    sound = false;
  }
  return sound ? { index, quantity, unknown } : null;
}

/**
 * Opens a table and understands its header; every fault of the header is reported.
 *
 * @returns the table, or null where it cannot be used
 */
export function openKnown(
  source: SourceFile,
  spec: TableSpec,
  { log, limited, settings }: Pick<CheckContext, 'log' | 'limited' | 'settings'>,
): KnownTable | null {
  const table = openTable(source, (columns) => hasRequired(columns, spec));
  if ('kind' in table) {
    reportFault(source.path, table, log);
    return null;
  }
  reportWindows(source.path, table.windowsLine, log);
  const header = understand(table, spec, log);
  if (!header) return null;
  const units = unitsRow(table, header.quantity, log);
  reportAround(table, units?.line ?? null, log);
  return {
    ...header,
    table,
    quantity: units?.quantity ?? header.quantity,
    decimalCommas: spec.isDaySheet === true ? new Set() : findDecimalCommas(table, header, { log, settings }),
    unitsLine: units?.line ?? null,
    needed: spec.required
      .filter((group) => group.every((name) => spec.columns.includes(name)))
      .map((group) => group.flatMap((name) => header.index.get(name) ?? [])),
    limited,
    trail: newTrail(),
    log,
  };
}
