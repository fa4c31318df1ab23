import type { Day } from '../terms/day.ts';
import type { Picked, Picking, Planting, PlantingEvent } from '../terms/trial.ts';

interface PickedDraft {
  fruits: number;
  grams: number;
  fruitsUnweighed: number;
  gramsUncounted: number;
}

interface PickingDraft {
  readonly ripe: PickedDraft;
  readonly green: PickedDraft;
  cullFruits: number;
  cullGrams: number;
  hasCulls: boolean;
  /** What was picked in each row of this day, to find rows written twice. */
  readonly rows: string[];
}

/** Pickings and events of a planting, or of a variety's plantings together, while the tables are read. */
export interface RecordDraft {
  readonly days: Map<Day | null, PickingDraft>;
  readonly events: PlantingEvent[];
}

/** A planting as its own row tells it. */
export type PlantingFields = Omit<Planting, 'pickings' | 'events' | 'joins'>;

export interface PlantingDraft {
  readonly fields: PlantingFields;
  readonly record: RecordDraft;
}

export function emptyRecord(): RecordDraft {
  return { days: new Map(), events: [] };
}

/** One row of harvests.csv, or the totals of a planting. */
export interface PickedRow {
  readonly day: Day | null;
  readonly stage: 'ripe' | 'green';
  readonly fruits: number | null;
  readonly grams: number | null;
  readonly cullFruits: number | null;
  readonly cullGrams: number | null;
}

function emptyPicked(): PickedDraft {
  return { fruits: 0, grams: 0, fruitsUnweighed: 0, gramsUncounted: 0 };
}

/**
 * Adds a row to a record.
 *
 * @returns true if the same figures stood there already for that day
 */
export function addPicked(record: RecordDraft, row: PickedRow): boolean {
  let day = record.days.get(row.day);
  if (!day) {
    day = { ripe: emptyPicked(), green: emptyPicked(), cullFruits: 0, cullGrams: 0, hasCulls: false, rows: [] };
    record.days.set(row.day, day);
  }
  const picked = row.stage === 'green' ? day.green : day.ripe;
  picked.fruits += row.fruits ?? 0;
  picked.grams += row.grams ?? 0;
  if (row.grams === null) picked.fruitsUnweighed += row.fruits ?? 0;
  if (row.fruits === null) picked.gramsUncounted += row.grams ?? 0;
  day.cullFruits += row.cullFruits ?? 0;
  day.cullGrams += row.cullGrams ?? 0;
  day.hasCulls ||= row.cullFruits !== null || row.cullGrams !== null;
  const sign = `${row.stage[0]}${row.fruits}/${row.grams}/${row.cullFruits}/${row.cullGrams}`;
  const isTwice = row.day !== null && day.rows.includes(sign);
  day.rows.push(sign);
  return isTwice;
}

function addedPicked(a: Picked, b: Picked): Picked {
  return {
    fruits: a.fruits + b.fruits,
    grams: a.grams + b.grams,
    fruitsUnweighed: a.fruitsUnweighed + b.fruitsUnweighed,
    gramsUncounted: a.gramsUncounted + b.gramsUncounted,
  };
}

function pickingsOf(records: readonly RecordDraft[]): readonly Picking[] {
  const byDay = new Map<Day | null, Picking>();
  for (const record of records) {
    for (const [day, draft] of record.days) {
      const known = byDay.get(day);
      const { rows: _rows, ...own } = draft;
      byDay.set(
        day,
        known
          ? {
              day,
              ripe: addedPicked(known.ripe, own.ripe),
              green: addedPicked(known.green, own.green),
              cullFruits: known.cullFruits + own.cullFruits,
              cullGrams: known.cullGrams + own.cullGrams,
              hasCulls: known.hasCulls || own.hasCulls,
            }
          : { day, ...own },
      );
    }
  }
  return [...byDay.values()].toSorted((a, b) => (a.day ?? -Infinity) - (b.day ?? -Infinity));
}

/** A planting with what was recorded of it. */
export function finishPlanting({ fields, record }: PlantingDraft): Planting {
  const events = record.events.toSorted((a, b) => a.day - b.day);
  return { ...fields, pickings: pickingsOf([record]), events, joins: [] };
}

function shared<V>(values: readonly V[]): V | null {
  return values.every((value) => value === values[0]) ? values[0]! : null;
}

/**
 * Plantings of one variety as a single unit, because they were recorded together.
 * Plants lost by accident are not among its plants; the unit is removed when its last planting is.
 *
 * @param drafts   the plantings, at least one
 * @param records  what was recorded under the variety's name
 */
export function joinPlantings(drafts: readonly PlantingDraft[], records: readonly RecordDraft[]): Planting {
  const kept = drafts.filter(({ fields }) => fields.cause !== 'accident');
  const members = (kept.length > 0 ? kept : drafts).map(({ fields }) => fields);
  const first = members[0]!;
  const starts = (of: (fields: PlantingFields) => Day | null): Day | null => {
    const days = members.map(of).filter((day) => day !== null);
    return days.length === members.length ? (Math.min(...days) as Day) : null;
  };
  const removed = members.every((fields) => fields.removed !== null)
    ? members.reduce((last, fields) => (fields.removed! > last.removed! ? fields : last))
    : null;
  const all = [...drafts.map(({ record }) => record), ...records];
  return {
    ...first,
    id: `${first.variety}*`,
    plants: members.reduce((sum, { plants }) => sum + plants, 0),
    bed: shared(members.map(({ bed }) => bed)),
    block: shared(members.map(({ block }) => block)),
    row: null,
    column: null,
    sown: starts(({ sown }) => sown),
    transplanted: starts(({ transplanted }) => transplanted),
    removed: removed?.removed ?? null,
    cause: removed?.cause ?? null,
    standsIn: shared(members.map(({ standsIn }) => standsIn)),
    topped: shared(members.map(({ topped }) => topped)),
    pickings: pickingsOf(all),
    events: all.flatMap(({ events }) => events).toSorted((a, b) => a.day - b.day),
    joins: drafts.map(({ fields }) => fields.id),
  };
}
