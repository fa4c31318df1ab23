import { csvText } from '../terms/csv.ts';
import { foldHeader, foldName } from '../terms/names.ts';
import type { RawRow } from '../read/records.ts';
import { openTable } from '../read/table.ts';
import { nth } from '../numerics/element.ts';

/** What tells one record of a table from another, by the table's name. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  varieties: ['name'],
  plantings: ['planting'],
  totals: ['variety'],
  season: ['planting'],
  harvests: ['date', 'planting', 'variety', 'stage'],
  ratings: ['date', 'taster', 'variety', 'planting', 'trait'],
  measurements: ['date', 'variety', 'planting', 'trait'],
  observations: ['date', 'planting', 'variety', 'event'],
  germination: ['variety', 'sown'],
  weather: ['date'],
};

export type Added =
  | {
      readonly kind: 'added';
      readonly text: string;
      readonly rows: number;
      readonly kept: number;
      readonly differing: readonly string[];
    }
  /** Why nothing can be added. */
  | { readonly kind: 'refused'; readonly why: string };

/**
 * Adds the rows of a table that a file does not have yet, below what stands there: no byte of it changes.
 *
 * @param table   the table's name, such as `harvests`
 * @param bytes   the file as it is
 * @param wanted  rows, header first
 * @returns       the lines to append, how many, and how many stood there already
 */
export function addRows(table: string, bytes: Uint8Array, wanted: readonly (readonly string[])[]): Added {
  const known = openTable({ path: `${table}.csv`, bytes });
  if ('kind' in known) return { kind: 'refused', why: 'it cannot be read' };
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (isWide) return { kind: 'refused', why: 'it is UTF-16: save it as CSV in UTF-8' };
  const text = new TextDecoder().decode(bytes);
  if (known.titles.length > 1 && known.delimiter !== ',')
    return { kind: 'refused', why: 'its cells are not parted by commas: save it with commas' };
  const [head = [], ...rows] = wanted;
  const at = known.columns.map((name) => head.findIndex((own) => foldHeader(own) === name));
  const lost = head.find(
    (name, i) => !known.columns.includes(foldHeader(name)) && rows.some((row) => nth(row, i) !== ''),
  );
  if (lost !== undefined) return { kind: 'refused', why: `it has no column ${lost}` };
  const named = (KEYS[table] ?? []).filter((name) => known.columns.includes(name));
  const keys = named.length > 0 ? named : known.columns;
  const keyOf = (cell: (column: number) => string): string =>
    keys.map((name) => foldName(cell(known.columns.indexOf(name)))).join('|');
  const there = new Map<string, RawRow>();
  for (const row of known.rows()) {
    if ('kind' in row) continue;
    const cell = (i: number): string => row.cells[i] ?? '';
    there.set(keyOf(cell), row);
    // A variety is known by its id and its other names too.
    if (table === 'varieties')
      for (const column of ['variety', 'also_known_as'])
        for (const name of cell(known.columns.indexOf(column)).split(';')) there.set(foldName(name), row);
  }
  const lines = rows.map((row) => at.map((i) => (i < 0 ? '' : nth(row, i))));
  const fresh = lines.filter((line) => !there.has(keyOf((i) => nth(line, i))));
  // What stands there is left; where the sheet says another thing of it, that is told.
  const differing = lines.flatMap((line) => {
    const row = there.get(keyOf((i) => nth(line, i)));
    if (!row || table === 'varieties') return [];
    return known.columns.flatMap((_, i) => {
      const [own, wantedCell] = [(row.cells[i] ?? '').trim(), nth(line, i).trim()];
      const isSame = wantedCell === '' || foldName(own) === foldName(wantedCell) || Number(own) === Number(wantedCell);
      return isSame
        ? []
        : [
            `line ${row.line}: ${nth(known.titles, i)} ${own === '' ? 'nothing' : own} there, ${wantedCell} in the sheet`,
          ];
    });
  });
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const start = text === '' || text.endsWith('\n') ? '' : lineEnd;
  const added = fresh.length === 0 ? '' : start + csvText(fresh, lineEnd);
  if (known.windowsLine !== null && /[^\n\r -~]/.test(added))
    return { kind: 'refused', why: 'it is Windows-1252: save it as CSV in UTF-8' };
  return { kind: 'added', text: added, rows: fresh.length, kept: lines.length - fresh.length, differing };
}
