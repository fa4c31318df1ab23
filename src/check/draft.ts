import type { Day } from '../terms/day.ts';
import type { Picked, Picking, Planting, PlantingEvent } from '../terms/trial.ts';

/** Numbers kept of one row: day, stage, fruits, grams, culls by number and weight, and the row before it of that day. */
const WIDTH = 7;
const MISSING = -1;
const NO_DAY = -1e9;

/**
 * Pickings and events of a planting, or of a variety's plantings together, while the tables are read. Rows are kept
 * as plain numbers, so that a million of them stay small.
 */
export interface RecordDraft {
  readonly rows: number[];
  /** Where the latest row of a day begins in `rows`. */
  readonly latest: Map<number, number>;
  readonly events: PlantingEvent[];
}

/** A planting as its own row tells it. */
export type PlantingFields = Omit<Planting, 'pickings' | 'events' | 'joins'>;

export interface PlantingDraft {
  readonly fields: PlantingFields;
  readonly record: RecordDraft;
}

export function emptyRecord(): RecordDraft {
  return { rows: [], latest: new Map(), events: [] };
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

/**
 * Adds a row to a record.
 *
 * @returns true if the same figures stood there already for that day
 */
export function addPicked({ rows, latest }: RecordDraft, row: PickedRow): boolean {
  const day = row.day ?? NO_DAY;
  const own = [
    row.stage === 'green' ? 1 : 0,
    row.fruits ?? MISSING,
    row.grams ?? MISSING,
    row.cullFruits ?? MISSING,
    row.cullGrams ?? MISSING,
  ];
  const before = latest.get(day) ?? MISSING;
  let isTwice = false;
  for (let at = before; at >= 0 && row.day !== null && !isTwice; at = rows[at + WIDTH - 1]!) {
    isTwice = own.every((value, i) => rows[at + 1 + i] === value);
  }
  latest.set(day, rows.length);
  rows.push(day, own[0]!, own[1]!, own[2]!, own[3]!, own[4]!, before);
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

/** What was picked, added up by day, in order of days; rows without a day come first. */
function pickingsOf(records: readonly RecordDraft[]): readonly Picking[] {
  const byDay = new Map<number, Picking>();
  for (const { rows } of records) {
    for (let at = 0; at < rows.length; at += WIDTH) {
      const [day, stage, fruits, grams, cullFruits, cullGrams] = rows.slice(at, at + WIDTH - 1) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const usable: Picked = {
        fruits: Math.max(0, fruits),
        grams: Math.max(0, grams),
        fruitsUnweighed: grams === MISSING ? Math.max(0, fruits) : 0,
        gramsUncounted: fruits === MISSING ? Math.max(0, grams) : 0,
      };
      const known = byDay.get(day);
      const [ripe, green] = [known?.ripe ?? NOTHING, known?.green ?? NOTHING];
      byDay.set(day, {
        day: day === NO_DAY ? null : (day as Day),
        ripe: stage === 0 ? addedPicked(ripe, usable) : ripe,
        green: stage === 1 ? addedPicked(green, usable) : green,
        cullFruits: (known?.cullFruits ?? 0) + Math.max(0, cullFruits),
        cullGrams: (known?.cullGrams ?? 0) + Math.max(0, cullGrams),
        hasCulls: known?.hasCulls === true || cullFruits !== MISSING || cullGrams !== MISSING,
      });
    }
  }
  return [...byDay].toSorted(([a], [b]) => a - b).map(([, picking]) => picking);
}

/** A planting with what was recorded of it; its pickings are added up when they are asked for. */
export function finishPlanting({ fields, record }: PlantingDraft): Planting {
  return {
    ...fields,
    get pickings() {
      return pickingsOf([record]);
    },
    events: record.events.toSorted((a, b) => a.day - b.day),
    joins: [],
  };
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
    get pickings() {
      return pickingsOf(all);
    },
    events: all.flatMap(({ events }) => events).toSorted((a, b) => a.day - b.day),
    joins: drafts.map(({ fields }) => fields.id),
  };
}
