import { foldHeader, nearestName } from '../terms/names.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { RawRow } from '../read/records.ts';
import type { Table } from '../read/table.ts';
import { unitOf } from './cells/units.ts';
import type { KnownTable, QuantityPart, TableSpec } from './knownTable.ts';
import { first, nth } from '../numerics/element.ts';

/** What a row of units says of columns that have none. */
export const NO_UNIT = /^\(?(?:no\.?|nr\.?|number|count|n|pcs|date|id|name|-)?\)?$/i;

/** A cell of a row of units without its brackets. */
export function unitWord(cell: string | undefined): string {
  return (cell ?? '').trim().replace(/^[([](.*)[)\]]$/, '$1');
}

/** Reads a row below the header that holds nothing but units; null where the row is a record like any other. */
export function unitsRow(
  table: Table,
  quantity: ReadonlyMap<string, readonly QuantityPart[]>,
  log: ProblemLog,
): { readonly line: number; readonly quantity: Map<string, QuantityPart[]> } | null {
  if (quantity.size === 0) return null;
  const next = table.rows().next();
  if (next.done === true || 'kind' in next.value) return null;
  const first: RawRow = next.value;
  const word = (index: number): string => unitWord(first.cells[index]);
  const parts = [...quantity.values()].flat();
  let named = 0;
  const withUnits = new Map(
    [...quantity].map(([name, own]) => [
      name,
      own.map((part) => {
        const unit = unitOf(part.dimension, word(part.index));
        if (unit) named++;
        return unit ? { ...part, unit } : part;
      }),
    ]),
  );
  const isUnits = first.cells.every((cell, i) => {
    const part = parts.find(({ index }) => index === i);
    return part && unitOf(part.dimension, word(i)) !== null ? true : NO_UNIT.test(cell.trim());
  });
  if (!isUnits || named === 0) return null;
  for (const { index, unit, dimension } of parts) {
    const own = unitOf(dimension, word(index));
    const isSaid = unit !== null && !quantity.has(nth(table.columns, index));
    if (own && isSaid && own.factor !== unit.factor)
      log.add('units-differ', table.placeOf(first, index), (first.cells[index] ?? '').trim());
  }
  return { line: first.line, quantity: withUnits };
}

/** Says which rows around the header were not taken for records. */
export function reportAround({ above, file, header }: Table, unitsLine: number | null, log: ProblemLog): void {
  if (above.length > 0) {
    const places = above.map(({ line }) => ({ file, line, column: 1 }));
    log.add(
      'rows-before-header',
      places,
      nth(above, 0)
        .cells.find((cell) => cell.trim() !== '')!
        .trim(),
      {
        line: String(header.line),
      },
    );
  }
  if (unitsLine !== null) log.add('units-row', { file, line: unitsLine, column: 1 });
}

/** The line of trial.yaml that would declare a column as a trait; null for one that seems none. */
function declarationOf(title: string): string | null {
  const parts = /^(.*?)[\s_]*[([]?(cm|mm|g|°?brix)[)\]]?$/i.exec(title.trim());
  const key = foldHeader(parts?.[1] ?? '').replaceAll(/[^a-z0-9_]/g, '');
  return parts && /^[a-z]/.test(key)
    ? `traits: {${key}: {kind: measure, unit: ${nth(parts, 2).toLowerCase()}, better: none}}`
    : null;
}

/** Reports columns that the table does not know: near ones by themselves, the others once. */
export function reportHeader(table: Table, spec: TableSpec, unknown: KnownTable['unknown'], log: ProblemLog): void {
  const names = [...spec.columns, ...spec.quantities.map((q) => q.name)];
  const strange: string[] = [];
  for (const { index, title } of unknown) {
    const near = nearestName(
      title,
      names.filter((name) => !table.columns.includes(name)),
    );
    const line = near === null && spec.takesTraits === true ? declarationOf(title) : null;
    if (line !== null) log.add('trait-undeclared', table.placeOf(table.header, index), title, { line });
    else if (near === null) strange.push(title);
    else log.add('column-near', table.placeOf(table.header, index), title, { near });
  }
  if (strange.length > 0) {
    const strangest = first(unknown, ({ title }) => title === strange[0]);
    log.add('column-unknown', table.placeOf(table.header, strangest.index), strange.join(', '));
  }
}

/** A column without a title whose cells are filled: its values would be lost without a word. */
export function reportUntitled(table: Table, log: ProblemLog): void {
  const untitled = table.columns.flatMap((column, i) => (column === '' ? [i] : []));
  if (untitled.length === 0) return;
  for (const row of table.rows()) {
    if ('kind' in row) return;
    const filled = untitled.find((i) => (row.cells[i] ?? '').trim() !== '');
    if (filled === undefined) continue;
    log.add('header-empty', table.placeOf(row, filled), nth(row.cells, filled).trim());
    return;
  }
}
