import type { Day } from '../terms/day.ts';
import type { Picked, Picking, PlantingRecord } from '../terms/picked.ts';
import type { Planting, PlantingEvent } from '../terms/trial.ts';
import { nth } from '../numerics/element.ts';

/** Numbers kept of one row: day, twice its line and 1 for green fruit, fruits, grams. */
const WIDTH = 4;
/** The same of culls, by number and weight, kept from the first row on that has any. */
const CULLS = 2;
const MISSING = -1;
const OPEN = -2;
const TRACE = -3;
const NO_DAY = -1e9;
/** So many rows of a planting are looked through for a row written twice. */
const LOOK_BACK = 2000;

/**
 * Pickings and events of a planting, or of a variety's plantings together, while the tables are read. Rows are kept
 * as plain numbers outside the garbage collector's reach, so that a million of them stay small.
 */
export interface RecordDraft {
  rows: Float64Array;
  /** Culls of each row; null while there are none. */
  culls: Float64Array | null;
  /** Numbers in use at the start of `rows`. */
  used: number;
  /** True while every row came on or after the day of the one before it. */
  inOrder: boolean;
  readonly events: PlantingEvent[];
}

/** A planting as its own row tells it. */
export type PlantingFields = Omit<Planting, 'record' | 'events' | 'joins'> & {
  /** What totals.csv says beside weights and numbers; null for a planting of plantings.csv. */
  readonly totals: { readonly firstRipe: Day | null; readonly traits: ReadonlyMap<string, number> } | null;
};

export interface PlantingDraft {
  readonly fields: PlantingFields;
  readonly record: RecordDraft;
}

export function emptyRecord(): RecordDraft {
  return { rows: new Float64Array(0), culls: null, used: 0, inOrder: true, events: [] };
}

/** A figure of a picking: a number, not recorded, only known to be over a limit, or a trace. */
export type Amount = number | null | 'open' | 'trace';

/** One row of harvests.csv, or the totals of a planting. */
export interface PickedRow {
  readonly day: Day | null;
  readonly stage: 'ripe' | 'green';
  readonly fruits: Amount;
  readonly grams: Amount;
  readonly cullFruits: number | null;
  readonly cullGrams: number | null;
  /** Line of the row in its table. */
  readonly line: number;
}

const NOTHING: Picked = {
  fruits: 0,
  grams: 0,
  fruitsUnweighed: 0,
  gramsUncounted: 0,
  fruitsOpen: 0,
  gramsOpen: 0,
  traces: 0,
};

function stored(amount: Amount): number {
  return amount === 'open' ? OPEN : amount === 'trace' ? TRACE : (amount ?? MISSING);
}

function usableOf(fruits: number, grams: number): Picked {
  return {
    fruits: Math.max(0, fruits),
    grams: Math.max(0, grams),
    // A trace was weighed, as good as nothing.
    fruitsUnweighed: grams === MISSING || grams === OPEN ? Math.max(0, fruits) : 0,
    gramsUncounted: fruits < 0 ? Math.max(0, grams) : 0,
    fruitsOpen: fruits === OPEN ? 1 : 0,
    // Fruits of which the number is not known and none was weighed have no weight that could be made up.
    gramsOpen: grams === OPEN || (grams === MISSING && fruits === OPEN) ? 1 : 0,
    traces: fruits === TRACE || grams === TRACE ? 1 : 0,
  };
}

/** A longer list with the same numbers at its start. */
function grown(rows: Float64Array, length: number): Float64Array {
  const larger = new Float64Array(length);
  larger.set(rows);
  return larger;
}

/** Keeps the culls of the row that is added next. */
function addCulls(record: RecordDraft, fruits: number, grams: number): void {
  const at = (record.used / WIDTH) * CULLS;
  if (!record.culls && fruits === MISSING && grams === MISSING) return;
  record.culls ??= new Float64Array(at).fill(MISSING);
  if (at + CULLS > record.culls.length) record.culls = grown(record.culls, 2 * at + CULLS);
  record.culls[at] = fruits;
  record.culls[at + 1] = grams;
}

const cullsOf = ({ culls }: RecordDraft, at: number, which: 0 | 1): number =>
  culls ? nth(culls, (at / WIDTH) * CULLS + which) : MISSING;

/** True if the record has the figures of a new row already on that day; never of a row without one. */
function isKnown(record: RecordDraft, day: number, stage: number, figures: readonly number[]): boolean {
  const { rows, used, inOrder } = record;
  const end = day === NO_DAY ? used : Math.max(0, used - LOOK_BACK * WIDTH);
  for (let at = used - WIDTH; at >= end; at -= WIDTH) {
    if (rows[at] !== day) {
      if (inOrder) return false;
      continue;
    }
    const isLike =
      rows[at + 3] === figures[1] &&
      rows[at + 2] === figures[0] &&
      nth(rows, at + 1) % 2 === stage &&
      cullsOf(record, at, 0) === figures[2] &&
      cullsOf(record, at, 1) === figures[3];
    if (isLike) return true;
  }
  return false;
}

/**
 * Adds a row to a record.
 *
 * @returns true if the same figures stood there already for that day
 */
export function addPicked(record: RecordDraft, row: PickedRow): boolean {
  const day = row.day ?? NO_DAY;
  const stage = row.stage === 'green' ? 1 : 0;
  const [fruits, grams] = [stored(row.fruits), stored(row.grams)];
  const [cullFruits, cullGrams] = [row.cullFruits ?? MISSING, row.cullGrams ?? MISSING];
  const { used } = record;
  if (used > 0 && day < nth(record.rows, used - WIDTH)) record.inOrder = false;
  const isLast = used > 0 && nth(record.rows, used - WIDTH) === day;
  const isTwice = (isLast || !record.inOrder) && isKnown(record, day, stage, [fruits, grams, cullFruits, cullGrams]);
  if (used + WIDTH > record.rows.length) record.rows = grown(record.rows, Math.max(8 * WIDTH, 2 * used));
  addCulls(record, cullFruits, cullGrams);
  const { rows } = record;
  rows[used] = day;
  rows[used + 1] = 2 * row.line + stage;
  rows[used + 2] = fruits;
  rows[used + 3] = grams;
  record.used = used + WIDTH;
  return isTwice;
}

/** Takes one kept row; figures that are not known are 0, a row without a date has the day null. */
export type TakeRow = (fruits: number, grams: number, line: number, day: number | null, isGreen: boolean) => void;

/** Goes through the rows of a record in the order of the table, without a copy of them: there may be very many. */
export function eachPicked({ rows, used }: RecordDraft, take: TakeRow): void {
  for (let at = 0; at < used; at += WIDTH) {
    const day = nth(rows, at);
    const green = nth(rows, at + 1) % 2;
    const fruits = nth(rows, at + 2);
    const grams = nth(rows, at + 3);
    const line = (nth(rows, at + 1) - green) / 2;
    take(fruits > 0 ? fruits : 0, grams > 0 ? grams : 0, line, day === NO_DAY ? null : day, green === 1);
  }
}

/** The one day on which every dated row of a record stands; null where there are several, or none. */
export function onlyDay({ rows, used }: RecordDraft): { readonly day: number; readonly rows: number } | null {
  let day = NO_DAY;
  let dated = 0;
  for (let at = 0; at < used; at += WIDTH) {
    const own = nth(rows, at);
    if (own === NO_DAY) continue;
    if (day !== NO_DAY && own !== day) return null;
    day = own;
    dated++;
  }
  return dated === 0 ? null : { day, rows: dated };
}

function addedPicked(a: Picked, b: Picked): Picked {
  return {
    fruits: a.fruits + b.fruits,
    grams: a.grams + b.grams,
    fruitsUnweighed: a.fruitsUnweighed + b.fruitsUnweighed,
    gramsUncounted: a.gramsUncounted + b.gramsUncounted,
    fruitsOpen: a.fruitsOpen + b.fruitsOpen,
    gramsOpen: a.gramsOpen + b.gramsOpen,
    traces: a.traces + b.traces,
  };
}

/** What was picked, added up by day, in order of days; rows without a day come first. */
function pickingsOf(records: readonly RecordDraft[]): readonly Picking[] {
  const byDay = new Map<number, Picking>();
  for (const record of records) {
    const { rows, used } = record;
    for (let at = 0; at < used; at += WIDTH) {
      const [day, stage, fruits, grams] = [nth(rows, at), nth(rows, at + 1), nth(rows, at + 2), nth(rows, at + 3)];
      const [cullFruits, cullGrams] = [cullsOf(record, at, 0), cullsOf(record, at, 1)];
      const usable = usableOf(fruits, grams);
      const known = byDay.get(day);
      const [ripe, green] = [known?.ripe ?? NOTHING, known?.green ?? NOTHING];
      byDay.set(day, {
        day: day === NO_DAY ? null : (day as Day),
        ripe: stage % 2 === 0 ? addedPicked(ripe, usable) : ripe,
        green: stage % 2 === 1 ? addedPicked(green, usable) : green,
        cullFruits: (known?.cullFruits ?? 0) + Math.max(0, cullFruits),
        cullGrams: (known?.cullGrams ?? 0) + Math.max(0, cullGrams),
        hasCulls: known?.hasCulls === true || cullFruits !== MISSING || cullGrams !== MISSING,
      });
    }
  }
  return [...byDay].toSorted(([a], [b]) => a - b).map(([, picking]) => picking);
}

/** The last day of any row; null where none has one. */
function lastDay(records: readonly RecordDraft[]): Day | null {
  let last = NO_DAY;
  for (const { rows, used } of records) for (let at = 0; at < used; at += WIDTH) last = Math.max(last, nth(rows, at));
  return last === NO_DAY ? null : (last as Day);
}

/** A planting's record as its totals, or its pickings, have it; pickings are added up when they are first asked for. */
export function recordOf(totals: PlantingFields['totals'], records: readonly RecordDraft[]): PlantingRecord {
  if (totals) return { kind: 'totals', pickings: pickingsOf(records), ...totals };
  if (records.every(({ used }) => used === 0)) return { kind: 'nothing' };
  let known: readonly Picking[] | null = null;
  return {
    kind: 'pickings',
    last: lastDay(records),
    get pickings() {
      return (known ??= pickingsOf(records));
    },
  };
}

/** A planting with what was recorded of it. */
export function finishPlanting({ fields: { totals, ...fields }, record }: PlantingDraft): Planting {
  return {
    ...fields,
    record: recordOf(totals, [record]),
    events: record.events.toSorted((a, b) => a.day - b.day),
    joins: [],
  };
}
