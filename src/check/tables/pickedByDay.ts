import { partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { foldHeader } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openTable } from '../../read/table.ts';
import { unitOf } from '../cells/units.ts';
import type { Unit } from '../cells/units.ts';
import { openKnown } from '../columns.ts';
import type { KnownTable } from '../knownTable.ts';
import type { CheckContext } from '../context.ts';
import type { Amount } from '../draft.ts';
import { limitedCountIn, limitedQuantityIn, placeIn, textIn } from '../row.ts';
import type { Row, TakeLimit } from '../row.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';

/** A column of a pickings sheet that is headed by its day. */
interface DayColumn {
  readonly name: string;
  readonly title: string;
  readonly day: Day;
  /** What it holds: fruits, a weight in a unit, or a weight with its unit in the cell. */
  readonly holds: 'fruits' | 'weight';
  readonly unit: Unit | null;
}

/** A pickings sheet with one column a day. */
export interface DaySheet {
  /** Null where the table cannot be used. */
  readonly known: KnownTable | null;
  readonly days: readonly DayColumn[];
}

const FRUITS = /^(?:fruits?|count|number|no\.?|pcs|früchte|stück|anzahl)$/i;

function holdsOf(word: string): Pick<DayColumn, 'holds' | 'unit'> | null {
  if (word === '') return { holds: 'weight', unit: null };
  if (FRUITS.test(word)) return { holds: 'fruits', unit: null };
  const unit = unitOf('mass', word.replace(/^weight[\s_]*/i, ''));
  return unit ? { holds: 'weight', unit } : null;
}

/** The day and the content that a title names: 2026-08-03, 3 Aug fruits, 2026-08-03 (g); null for any other. */
function dayColumn(title: string, { firstDay, lastDay }: SeasonSpan, { dates }: CheckContext): DayColumn | null {
  const { year } = partsOf(lastDay);
  const parts = /^(.*\d.*?)[\s_]+[([]?([^\s()[\]\d]+)[)\]]?$/.exec(title);
  for (const [text, word] of [[title, ''], ...(parts ? [[parts[1]!, parts[2]!]] : [])] as [string, string][]) {
    const holds = holdsOf(word);
    if (!holds) continue;
    for (const written of [text, `${text} ${year}`, `${text} ${year - 1}`]) {
      const read = dates(written.trim());
      if (read.kind !== 'day' || (written !== text && (read.day < firstDay || read.day > lastDay))) continue;
      return { name: foldHeader(title), title, day: read.day, ...holds };
    }
  }
  return null;
}

/**
 * Opens harvests.csv as a sheet with one column a day, where its header has such columns and none for the date.
 *
 * @returns null where the table has the usual columns
 */
export function openDaySheet(source: SourceFile, span: SeasonSpan, context: CheckContext): DaySheet | null {
  const isDaySheet = (columns: readonly string[]): boolean =>
    columns.some((name) => /^(?:planting|variety)$/.test(name));
  const peek = openTable(source, isDaySheet);
  if ('kind' in peek || peek.columns.includes('date')) return null;
  const days = peek.titles.map((title) => dayColumn(title, span, context)).filter((column) => column !== null);
  if (days.length === 0) return null;
  const columns = ['planting', 'variety', 'stage', 'notes', ...days.map(({ name }) => name)];
  const spec = { required: [['planting', 'variety']], columns, quantities: [] };
  const known = openKnown(source, spec, context);
  if (!known) return { known: null, days };
  const weights = days
    .filter(({ holds }) => holds === 'weight')
    .map(({ name, unit }) => [name, [{ index: known.index.get(name)!, unit, dimension: 'mass' as const }]] as const);
  return { known: { ...known, quantity: new Map(weights) }, days };
}

/** What was picked of a planting on a day. */
export interface DayPicked {
  readonly day: Day;
  readonly column: string;
  readonly fruits: Amount;
  readonly grams: Amount;
}

/** What a row of a day sheet says was picked, day by day; an empty cell says nothing. */
export function pickedByDay(row: Row, days: readonly DayColumn[], take: TakeLimit<Amount>): readonly DayPicked[] {
  const byDay = new Map<Day, DayPicked>();
  for (const { name, title, day, holds, unit } of days) {
    const text = textIn(row, name);
    if (text === null) continue;
    const known = byDay.get(day) ?? { day, column: name, fruits: null, grams: null };
    if (holds === 'fruits') byDay.set(day, { ...known, fruits: limitedCountIn(row, name, take) });
    else if (unit === null && /^[\d.,\s½¼¾/]+$/.test(text))
      row.from.log.add('date-column-unit', placeIn(row, name), text, { title });
    else byDay.set(day, { ...known, grams: limitedQuantityIn(row, name, take) });
  }
  return [...byDay.values()].filter(({ fruits, grams }) => fruits !== null || grams !== null);
}
