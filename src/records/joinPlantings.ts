import { mean } from 'simple-statistics';
import { plantingId } from '../terms/ids.ts';
import type { Day } from '../terms/day.ts';
import type { Planting } from '../terms/trial.ts';
import { given, nth } from '../numerics/element.ts';
import { recordOf } from './draft.ts';
import type { PlantingDraft, PlantingFields, RecordDraft } from './draft.ts';

function shared<V>(values: readonly V[]): V | null {
  return values.every((value) => value === values[0]) ? nth(values, 0) : null;
}

/** What several rows say of one unit: the first of their days, the means of their scores and measures. */
function totalsTogether(members: readonly PlantingFields[]): PlantingFields['totals'] {
  const all = members.flatMap(({ totals }) => (totals ? [totals] : []));
  if (all.length === 0) return null;
  const days = all.flatMap(({ firstRipe }) => (firstRipe === null ? [] : [firstRipe]));
  const keys = new Set(all.flatMap(({ traits }) => [...traits.keys()]));
  const meanOf = (key: string): number => mean(all.flatMap(({ traits }) => traits.get(key) ?? []));
  return {
    firstRipe: days.length === 0 ? null : (Math.min(...days) as Day),
    traits: new Map([...keys].map((key) => [key, meanOf(key)])),
  };
}

/**
 * Plantings of one variety as a single unit, because they were recorded together.
 * Plants lost by accident are not among its plants; the unit is removed when its last planting is.
 *
 * @param drafts   the plantings, at least one
 * @param records  what was recorded under the variety's name
 * @param key      the variety, within its garden
 */
export function joinPlantings(
  drafts: readonly PlantingDraft[],
  records: readonly RecordDraft[],
  key: string,
): Planting {
  const kept = drafts.filter(({ fields }) => fields.cause !== 'accident');
  const members = (kept.length > 0 ? kept : drafts).map(({ fields }) => fields);
  const first = nth(members, 0);
  const starts = (of: (fields: PlantingFields) => Day | null): Day | null => {
    const days = members.map(of).filter((day) => day !== null);
    return days.length === members.length ? (Math.min(...days) as Day) : null;
  };
  const removed = members.every((fields) => fields.removed !== null)
    ? members.reduce((last, fields) => (given(fields.removed) > given(last.removed) ? fields : last))
    : null;
  const all = [...drafts.map(({ record }) => record), ...records];
  const { totals: _, ...fields } = first;
  return {
    ...fields,
    id: plantingId(`${key}*`),
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
    record: recordOf(totalsTogether(members), all),
    events: all.flatMap(({ events }) => events).toSorted((a, b) => a.day - b.day),
    joins: drafts.map(({ fields }) => fields.id),
  };
}
