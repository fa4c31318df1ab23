import type { Day } from '../terms/day.ts';
import type { Picked, Picking, Planting, PlantingEvent } from '../terms/trial.ts';


/** A picking while its rows are added up; once they are, it is the Picking itself. */
interface PickingDraft {
  readonly day: Day | null;
  ripe: Picked;
  green: Picked;
  cullFruits: number;
  cullGrams: number;
  hasCulls: boolean;
  /** What was picked in each row of this day, to find rows written twice; null while there is one row. */
  rows: string[] | null;
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

const NOTHING: Picked = { fruits: 0, grams: 0, fruitsUnweighed: 0, gramsUncounted: 0 };

function signOf({ ripe, green, cullFruits, cullGrams }: Picking): string {
  return `${ripe.fruits}/${ripe.grams}/${green.fruits}/${green.grams}/${cullFruits}/${cullGrams}`;
}

function ownPicking(row: PickedRow): PickingDraft {
  const usable = {
    fruits: row.fruits ?? 0,
    grams: row.grams ?? 0,
    fruitsUnweighed: row.grams === null ? (row.fruits ?? 0) : 0,
    gramsUncounted: row.fruits === null ? (row.grams ?? 0) : 0,
  };
  return {
    day: row.day,
    ripe: row.stage === 'ripe' ? usable : NOTHING,
    green: row.stage === 'green' ? usable : NOTHING,
    cullFruits: row.cullFruits ?? 0,
    cullGrams: row.cullGrams ?? 0,
    hasCulls: row.cullFruits !== null || row.cullGrams !== null,
    rows: null,
  };
}

function addTo(day: PickingDraft, own: Picking): void {
  day.ripe = addedPicked(day.ripe, own.ripe);
  day.green = addedPicked(day.green, own.green);
  day.cullFruits += own.cullFruits;
  day.cullGrams += own.cullGrams;
  day.hasCulls ||= own.hasCulls;
}

/**
 * Adds a row to a record.
 *
 * @returns true if the same figures stood there already for that day
 */
export function addPicked(record: RecordDraft, row: PickedRow): boolean {
  const own = ownPicking(row);
  const day = record.days.get(row.day);
  if (!day) {
    record.days.set(row.day, own);
    return false;
  }
  day.rows ??= [signOf(day)];
  const sign = signOf(own);
  const isTwice = row.day !== null && day.rows.includes(sign);
  day.rows.push(sign);
  addTo(day, own);
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

function inOrderOfDays(pickings: Iterable<Picking>): readonly Picking[] {
  return [...pickings].sort((a, b) => (a.day ?? -Infinity) - (b.day ?? -Infinity));
}

function joinedPickings(records: readonly RecordDraft[]): readonly Picking[] {
  const byDay = new Map<Day | null, PickingDraft>();
  for (const record of records) {
    for (const [day, draft] of record.days) {
      const known = byDay.get(day);
      if (known) addTo(known, draft);
      else byDay.set(day, { ...draft, rows: null });
    }
  }
  return inOrderOfDays(byDay.values());
}

/** A planting with what was recorded of it. */
export function finishPlanting({ fields, record }: PlantingDraft): Planting {
  const events = record.events.toSorted((a, b) => a.day - b.day);
  return { ...fields, pickings: inOrderOfDays(record.days.values()), events, joins: [] };
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
    pickings: joinedPickings(all),
    events: all.flatMap(({ events }) => events).toSorted((a, b) => a.day - b.day),
    joins: drafts.map(({ fields }) => fields.id),
  };
}
