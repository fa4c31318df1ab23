import type { RawRow } from '../read/records.ts';
import type { Table } from '../read/table.ts';
import type { CheckContext } from './context.ts';
import type { KnownTable } from './knownTable.ts';
import { nth } from '../numerics/element.ts';

/** Columns of words: a comma or a point in them is none of a number. */
const WORDS = new Set(
  (
    'notes name source planting variety taster event bed block class species kind mother father from also_known_as ' +
    'former_ids colour_ripe colour_unripe cause stage stands_in trait date sown transplanted removed checked first_ripe ' +
    'topped blind generation retired'
  ).split(' '),
);

/** How the numbers of a column are written. */
interface Written {
  commas: number;
  commaThousands: number;
  points: number;
  pointThousands: number;
  /** Whole numbers of a hundred and more: what a thousand with a mark stands among. */
  hundreds: number;
  commaRow: RawRow | null;
  pointRow: RawRow | null;
}

function look(cell: string, row: RawRow, at: Written): void {
  const number = /^\s*[+-]?(\d*)([.,])(\d+)(?!\d)/.exec(cell);
  if (!number) {
    if (/^\s*\d{3,}\s*$/.test(cell)) at.hundreds++;
    return;
  }
  const isThousand = nth(number, 3).length === 3 && /^[1-9]\d{0,2}$/.test(nth(number, 1));
  if (number[2] === '.') {
    at.points++;
    if (isThousand) at.pointThousands++;
    at.pointRow ??= row;
  } else {
    at.commas++;
    if (isThousand) at.commaThousands++;
    at.commaRow ??= row;
  }
}

/** Columns of whole numbers: a point in them can only be one of thousands. */
const COUNTS = new Set(['plants', 'fruits', 'unusable_fruits', 'seeds', 'germinated', 'count', 'of']);

/** Columns of a table by what they hold; whole numbers are found by their names where they are not given. */
type NumberColumns = Pick<KnownTable, 'index' | 'quantity'> & { readonly counts?: ReadonlySet<number> };

function countsIn(index: KnownTable['index']): ReadonlySet<number> {
  return new Set([...index].flatMap(([name, i]) => (COUNTS.has(name) ? [i] : [])));
}

const commaLanguages = new Map<string, boolean>();

/** True for a language that writes decimals with a comma, and so thousands with a point. */
function usesCommas(language: string): boolean {
  let own = commaLanguages.get(language);
  if (own === undefined) {
    own = new Intl.NumberFormat(language).format(1.5).includes(',');
    commaLanguages.set(language, own);
  }
  return own;
}

/**
 * Columns whose numbers are written with a decimal comma. A column in which every comma may be one of thousands is
 * reported, and so is a weight in which every point may be.
 */
export function findDecimalCommas(
  table: Table,
  { index, quantity, counts = countsIn(index) }: NumberColumns,
  { log, settings }: Pick<CheckContext, 'log' | 'settings'>,
): ReadonlySet<number> {
  const found = new Set<number>();
  if (!table.mayHaveDecimalMarks) return found;
  const weights = new Set(
    [...quantity.values()].flat().flatMap((part) => (part.dimension === 'mass' ? part.index : [])),
  );
  const numeric = new Set([
    ...[...quantity.values()].flat().map((part) => part.index),
    ...counts,
    ...[...index].flatMap(([name, i]) => (WORDS.has(name) ? [] : [i])),
  ]);
  const seen = new Map(
    [...numeric].map((i): [number, Written] => [
      i,
      { commas: 0, commaThousands: 0, points: 0, pointThousands: 0, hundreds: 0, commaRow: null, pointRow: null },
    ]),
  );
  for (const row of table.rows()) {
    if ('kind' in row) break;
    for (const [i, at] of seen) look(row.cells[i] ?? '', row, at);
  }
  for (const [i, at] of seen) {
    const { commas, commaThousands, points, pointThousands, hundreds, commaRow, pointRow } = at;
    const ask = (row: RawRow): void => log.add('number-ambiguous', table.placeOf(row, i), nth(row.cells, i).trim());
    if (commaRow && points === 0 && commaThousands < commas) found.add(i);
    else if (commaRow && points === 0) ask(commaRow);
    else if (pointRow && counts.has(i) && pointThousands > 0) ask(pointRow);
    else if (pointRow && commas === 0 && weights.has(i) && pointThousands === points) {
      if (usesCommas(settings.language) || hundreds > 0) ask(pointRow);
    }
  }
  return found;
}
