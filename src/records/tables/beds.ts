import type { Bed } from '../../terms/plan.ts';
import { foldId, foldName, nearestName } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { countIn, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { wordIn } from '../../sheet/wordCells.ts';

const SPEC = {
  required: [['bed'], ['rows'], ['columns']],
  columns: ['bed', 'rows', 'columns', 'stands_in', 'classes', 'leave_out', 'north', 'notes'],
  quantities: [{ name: 'container', dimension: 'volume', bareUnit: unitOf('volume', 'l') }],
} as const;

const partsIn = (row: Row, column: string): readonly string[] =>
  (textIn(row, column) ?? '')
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** Classes that alone stand in a bed; null for any. */
function classesIn(row: Row, { settings, log }: CheckContext): readonly string[] | null {
  const parts = partsIn(row, 'classes');
  if (parts.length === 0) return null;
  const known = [...settings.classes.keys()];
  return parts.flatMap((part) => {
    const own = known.find((id) => foldName(id) === foldName(part));
    if (own !== undefined) return [own];
    const near = nearestName(part, known);
    const facts = { classes: known.join(', '), ...(near === null ? {} : { near }) };
    log.add('unknown-class', placeIn(row, 'classes'), part, facts);
    return [];
  });
}

/** Places that stay empty: `2:7;2:8`, row and column. */
function leftOutIn(row: Row, rows: number, columns: number, { log }: CheckContext): Bed['leaveOut'] {
  return partsIn(row, 'leave_out').flatMap((part): Bed['leaveOut'] => {
    const match = /^(\d+)\s*:\s*(\d+)$/.exec(part);
    const [at, along] = [Number(match?.[1]), Number(match?.[2])];
    if (match && at >= 1 && at <= rows && along >= 1 && along <= columns) return [[at, along]];
    log.add('place-unreadable', placeIn(row, 'leave_out'), part, { rows: String(rows), columns: String(columns) });
    return [];
  });
}

/** Most rows or columns of a bed. */
const MOST = 1000;

/** Checks places.csv: the beds, in the order of the file. */
export function checkBeds(source: SourceFile, context: CheckContext): readonly Bed[] {
  const known = openKnown(source, SPEC, context);
  if (!known) return [];
  const beds = new Map<string, Bed>();
  for (const row of rowsOf(known)) {
    const id = neededIn(row, 'bed');
    const size = (column: string): number | null => {
      if (neededIn(row, column) === null) return null;
      const own = countIn(row, column);
      if (own === null || (own >= 1 && own <= MOST)) return own;
      context.log.add('bed-size-unfit', placeIn(row, column), String(own), { most: String(MOST) });
      return null;
    };
    const [rows, columns] = [size('rows'), size('columns')];
    if (id === null || rows === null || columns === null) continue;
    const other = beds.get(foldId(id));
    if (other) {
      context.log.add('bed-twice', placeIn(row, 'bed'), id, { line: String(other.place.line ?? '') });
      continue;
    }
    beds.set(foldId(id), {
      id,
      rows,
      columns,
      standsIn: wordIn(row, 'stands_in', ['ground', 'bed', 'pot', 'bag'] as const),
      containerL: quantityIn(row, 'container'),
      classes: classesIn(row, context),
      leaveOut: leftOutIn(row, rows, columns, context),
      north: wordIn(row, 'north', ['top', 'bottom', 'left', 'right'] as const) ?? 'top',
      place: placeIn(row, 'bed'),
    });
  }
  return [...beds.values()];
}
