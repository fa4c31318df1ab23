import { partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { foldHeader } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openTable } from '../../read/table.ts';
import type { Table } from '../../read/table.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import type { Unit } from '../../sheet/cells/units.ts';
import { openKnown } from '../../sheet/columns.ts';
import { findDecimalCommas } from '../../sheet/decimalCommas.ts';
import type { KnownTable } from '../../sheet/knownTable.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { Amount } from '../draft.ts';
import { limitedCountIn, limitedQuantityIn, placeIn, readings, textIn } from '../../sheet/row.ts';
import type { Row, TakeLimit } from '../../sheet/row.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { keyed, nth } from '../../numerics/element.ts';

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

const FRUITS = /^(?:fruits?|count|number|no\.?|pcs|pieces|früchte|stück|anzahl)$/i;

/** What a word behind a day says that the column holds; null for any other word. */
export function holdsOf(word: string): Pick<DayColumn, 'holds' | 'unit'> | null {
  if (word === '') return { holds: 'weight', unit: null };
  if (FRUITS.test(word)) return { holds: 'fruits', unit: null };
  const unit = unitOf('mass', word.replace(/^weight[\s_]*/i, ''));
  return unit ? { holds: 'weight', unit } : null;
}

const WEEKDAY = /^\p{L}{2,}\.?,?\s+(?=\d)/u;

/** A day as a head may have it: as it stands, without its weekday, with the year of the season or the one before. */
export function waysToRead(text: string, year: number): readonly string[] {
  const plain = text.trim().replace(WEEKDAY, '');
  const short = plain.replace(/\.$/, '');
  const years = [year, year - 1];
  return [
    text.trim(),
    plain,
    ...years.map((own) => `${text.trim()} ${own}`),
    ...years.map((own) => `${plain} ${own}`),
    ...years.map((own) => `${short}.${own}`),
    ...years.map((own) => `${short}/${own}`),
  ];
}

/** A head without the word behind the day: `3 Aug` of `3 Aug (g)`. */
export const withoutContent = (title: string): string => nth(title.split(/[\s_]+(?=[([]?\p{L}+[)\]]?$)/u), 0).trim();

/** True for a head that looks like a day, or like the figures of a sheet with dates in a column. */
function isFigureOrDay(title: string): boolean {
  return (
    /^\D{0,12}\d{1,8}(?:[./ -]|$)/.test(title) ||
    /^(?:fruits|(?:unusable_)?weight|unusable_fruits)(?:_|$)/.test(foldHeader(title))
  );
}

/** Reports a head beside days that looks like one and cannot be read. */
function reportHeads(table: Table, days: readonly DayColumn[], { dates, log }: CheckContext): boolean {
  let isSound = true;
  table.titles.forEach((title, i) => {
    if (days.some((day) => day.title === title) || !isFigureOrDay(title)) return;
    const read = dates(withoutContent(title));
    const { kind } = read;
    const code =
      kind === 'ambiguous' ? 'date-ambiguous' : kind === 'impossible' ? 'date-impossible' : 'date-unreadable';
    log.add(code, table.placeOf(table.header, i), title, { column: 'date', ...readings(read) });
    isSound = false;
  });
  return isSound;
}

/** The day and the content that a title names: 2026-08-03, 3 Aug fruits, 2026-08-03 (g); null for any other. */
function dayColumn(title: string, { firstDay, lastDay }: SeasonSpan, { dates }: CheckContext): DayColumn | null {
  const { year } = partsOf(lastDay);
  const parts = /^(.*\d.*?)[\s_]+[([]?([^\s()[\]\d]+)[)\]]?$/.exec(title);
  for (const [text, word] of [[title, ''], ...(parts ? [[nth(parts, 1), nth(parts, 2)]] : [])] as [string, string][]) {
    const holds = holdsOf(word);
    if (!holds) continue;
    for (const written of waysToRead(text, year)) {
      const read = dates(written);
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
  const columns = ['garden', 'planting', 'variety', 'stage', 'notes', ...days.map(({ name }) => name)];
  const spec = { required: [['planting', 'variety']], columns, quantities: [], isDaySheet: true };
  const known = reportHeads(peek, days, context) ? openKnown(source, spec, context) : null;
  if (!known) return { known, days };
  const weights = days
    .filter(({ holds }) => holds === 'weight')
    .map(({ name, unit }) => [name, [{ index: keyed(known.index, name), unit, dimension: 'mass' as const }]] as const);
  const quantity = new Map(weights);
  const counts = new Set(days.flatMap(({ name, holds }) => (holds === 'fruits' ? [keyed(known.index, name)] : [])));
  const decimalCommas = findDecimalCommas(known.table, { index: new Map(), quantity, counts }, context);
  return { known: { ...known, quantity, decimalCommas }, days };
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
    const isBare = holds === 'weight' && unit === null && /^[\d.,\s½¼¾/]+$/.test(text);
    // Nothing needs no unit.
    if (isBare && /^0+$/.test(text)) byDay.set(day, { ...known, fruits: known.fruits ?? 0 });
    else if (isBare) row.from.log.add('date-column-unit', placeIn(row, name), text, { title });
    else if (known[holds === 'fruits' ? 'fruits' : 'grams'] !== null)
      row.from.log.add('quantity-twice', placeIn(row, name), text, { quantity: title });
    else if (holds === 'fruits') byDay.set(day, { ...known, fruits: limitedCountIn(row, name, take) });
    else byDay.set(day, { ...known, grams: limitedQuantityIn(row, name, take) });
  }
  return [...byDay.values()].filter(({ fruits, grams }) => fruits !== null || grams !== null);
}
