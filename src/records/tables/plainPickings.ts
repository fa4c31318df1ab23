import type { Day } from '../../terms/day.ts';
import { cell, nth } from '../../numerics/element.ts';
import { decimalAt, isWordAt, openWords, wholeAt } from '../../read/plainCells.ts';
import type { PlainLines, RawRow } from '../../read/records.ts';
import { spreadsheetMark } from '../../sheet/cells/spreadsheet.ts';
import { toStored } from '../../sheet/cells/units.ts';
import type { Unit } from '../../sheet/cells/units.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { KnownTable } from '../../sheet/knownTable.ts';
import type { PickedRow, PlantingDraft } from '../draft.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import type { SeasonIndex } from '../target.ts';

/** What a column holds of a plain row; any other column is empty in one. */
const [NOTHING, DATE, PLANTING, FRUITS, WEIGHT, STAGE] = [0, 1, 2, 3, 4, 5];

interface PlainColumns {
  readonly kinds: Uint8Array;
  readonly unit: Unit | null;
  readonly delimiter: number;
}

/** Columns of a table whose rows may be plain ones; null where none can be. */
function plainColumns({ table, index, quantity, decimalCommas }: KnownTable): PlainColumns | null {
  const [date, planting, fruits, stage] = ['date', 'planting', 'fruits', 'stage'].map((name) => index.get(name));
  const weights = quantity.get('weight') ?? [];
  const isOdd = table.mayHaveOddLetters || decimalCommas.size > 0 || index.has('garden') || weights.length > 1;
  if (table.delimiter === null || isOdd || date === undefined || planting === undefined) return null;
  const kinds = new Uint8Array(table.columns.length).fill(NOTHING);
  kinds[date] = DATE;
  kinds[planting] = PLANTING;
  if (fruits !== undefined) kinds[fruits] = FRUITS;
  if (stage !== undefined) kinds[stage] = STAGE;
  for (const { index: own, unit } of weights) if (unit) kinds[own] = WEIGHT;
  return { kinds, unit: weights[0]?.unit ?? null, delimiter: table.delimiter.charCodeAt(0) };
}

/** Day of a date as the contract writes it, by its digits as one number; NaN for anything else. */
function openDays({ dates }: Pick<CheckContext, 'dates'>): (text: string, from: number, to: number) => number {
  const known = new Map<number, number>();
  let [last, lastDay] = [-1, NaN];
  return (text, from, to) => {
    if (to - from !== 10 || text[from + 4] !== '-' || text[from + 7] !== '-') return NaN;
    const [year, month, date] = [
      wholeAt(text, from, from + 4),
      wholeAt(text, from + 5, from + 7),
      wholeAt(text, from + 8, to),
    ];
    if (year < 0 || month < 0 || date < 0) return NaN;
    const key = (year * 100 + month) * 100 + date;
    if (key === last) return lastDay;
    let day = known.get(key);
    if (day === undefined) {
      const read = dates(text.slice(from, to));
      known.set(key, (day = read.kind === 'day' ? read.day : NaN));
    }
    [last, lastDay] = [key, day];
    return day;
  };
}

/** Plantings that a plain row may be of, with the days on which each may be picked. */
function plainPlantings({ byId, own }: SeasonIndex, { firstDay, lastDay }: SeasonSpan) {
  const drafts = [...byId.values()].filter(
    ({ fields }) => fields.garden === own && fields.totals === null && isPlainName(fields.id),
  );
  return {
    drafts,
    find: openWords(drafts.map(({ fields }) => fields.id)),
    from: Float64Array.from(drafts, ({ fields }) => Math.max(firstDay, fields.transplanted ?? -Infinity)),
    to: Float64Array.from(drafts, ({ fields }) => Math.min(lastDay, fields.removed ?? Infinity)),
  };
}

/** A name that says what it is: no word for "not recorded", and nothing that a spreadsheet left. */
const isPlainName = (id: string): boolean =>
  /^(?:[!-~]{4,}|(?![-.nN])[!-~]{1,3})$/.test(id) && spreadsheetMark(id) === null;

/** What becomes of a plain row. */
export type TakePicked = (draft: PlantingDraft, picked: PickedRow & { readonly day: Day }, raw: () => RawRow) => void;

/**
 * Reads rows of harvests.csv that hold a date, the id of a planting, whole fruits or a plain weight, a stage or none, and
 * nothing else, on a day on which that planting can be picked: nearly all of a long table. No rule of such a row has
 * anything to say, so that what is taken here is what the usual way would make of it.
 *
 * @param take  is given the rows, in the order of the table with those that go the usual way
 * @returns     null where no row of the table can be plain
 */
export function plainPickings(
  known: KnownTable,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
  take: TakePicked,
): PlainLines | null {
  const columns = context.garden === null ? plainColumns(known) : null;
  if (!columns) return null;
  const { kinds, unit, delimiter } = columns;
  const { drafts, find, from: first, to: last } = plainPlantings(index, span);
  const dayAt = openDays(context);
  let [day, planting, fruits, grams, isGreen] = [NaN, -1, 0, 0, false];
  /** Takes a cell that is not empty; false where it is not plain. */
  const read = (kind: number, text: string, from: number, to: number): boolean => {
    if (kind === DATE) return !Number.isNaN((day = dayAt(text, from, to)));
    if (kind === PLANTING) return (planting = find(text, from, to)) >= 0;
    if (kind === FRUITS) return (fruits = wholeAt(text, from, to)) > 0;
    if (kind === WEIGHT) return unit !== null && (grams = toStored(decimalAt(text, from, to), unit)) > 0;
    isGreen = kind === STAGE && isWordAt(text, from, to, 'green');
    return isGreen || (kind === STAGE && isWordAt(text, from, to, 'ripe'));
  };
  return {
    look(text, from, to) {
      [day, planting, fruits, grams, isGreen] = [NaN, -1, 0, 0, false];
      let at = from;
      for (let column = 0; column < kinds.length; column++) {
        let end = at;
        while (end < to && text.charCodeAt(end) !== delimiter) end++;
        if (end > at && !read(kinds[column]!, text, at, end)) return false;
        if ((end === to) !== (column === kinds.length - 1)) return false;
        at = end + 1;
      }
      return planting >= 0 && fruits + grams > 0 && day >= cell(first, planting) && day <= cell(last, planting);
    },
    take(line, raw) {
      const stage = isGreen ? 'green' : 'ripe';
      const figures = { fruits: fruits > 0 ? fruits : null, grams: grams > 0 ? grams : null };
      take(nth(drafts, planting), { day: day as Day, stage, ...figures, cullFruits: null, cullGrams: null, line }, raw);
    },
  };
}
