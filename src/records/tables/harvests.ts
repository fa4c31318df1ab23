import type { Day } from '../../terms/day.ts';
import { isoDate } from '../../terms/day.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { addPicked, emptyRecord } from '../draft.ts';
import type { Amount, PickedRow, PlantingDraft, RecordDraft } from '../draft.ts';
import {
  countIn,
  dayIn,
  isFilled,
  limitedCountIn,
  limitedQuantityIn,
  placeIn,
  quantityIn,
  textIn,
} from '../../sheet/row.ts';
import { wordIn } from '../../sheet/wordCells.ts';
import type { Row, TakeLimit } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportFills, see, watchFills } from '../../sheet/fillDown.ts';
import type { FillWatch } from '../../sheet/fillDown.ts';
import { reportOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { remarkTaker } from '../remarks.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex, Target } from '../target.ts';
import { follow } from '../../sheet/dateTrail.ts';
import { plainPickings } from './plainPickings.ts';
import type { TakePicked } from './plainPickings.ts';
import { openDaySheet, pickedByDay } from './pickedByDay.ts';
import type { DaySheet } from './pickedByDay.ts';

const SPEC = {
  required: [
    ['planting', 'variety'],
    ['fruits', 'weight', 'unusable_fruits', 'unusable_weight'],
  ],
  columns: ['date', 'garden', 'planting', 'variety', 'fruits', 'stage', 'unusable_fruits', 'notes'],
  quantities: [
    { name: 'weight', dimension: 'mass' },
    { name: 'unusable_weight', dimension: 'mass' },
  ],
} as const;

const FIGURES = ['fruits', 'weight', 'unusable_fruits', 'unusable_weight'] as const;
const STAGES = ['ripe', 'green'] as const;
const stageIn = (row: Row): 'ripe' | 'green' => wordIn(row, 'stage', STAGES) ?? 'ripe';

/** Earliest planting out and, if all were removed, the last removal. */
function standing(plantings: readonly PlantingDraft[]): { readonly from: Day | null; readonly to: Day | null } {
  let from: Day | null = null;
  let to: Day | null = plantings[0]?.fields.removed ?? null;
  for (const { fields } of plantings) {
    if (fields.transplanted !== null && (from === null || fields.transplanted < from)) from = fields.transplanted;
    to = to === null || fields.removed === null ? null : fields.removed > to ? fields.removed : to;
  }
  return { from, to };
}

function reportWhen(
  row: Row,
  { day, column }: DatedRow,
  plantings: readonly PlantingDraft[],
  span: SeasonSpan,
  context: CheckContext,
): void {
  if (day === null || reportOutside(row, column, day, span, context)) return;
  const { from, to } = standing(plantings);
  const found = (): string => (column === 'date' ? (textIn(row, 'date') ?? '') : isoDate(day));
  if (from !== null && day < from) {
    context.log.add('picked-before-transplanting', placeIn(row, column), found(), { transplanted: isoDate(from) });
  }
  if (to !== null && day > to)
    context.log.add('picked-after-removal', placeIn(row, column), found(), { removed: isoDate(to) });
}

/** What a limit counts as: half of it where it is an upper one; nothing that is known where it is a lower one. */
function limitTaker({ log, limited }: CheckContext): TakeLimit<Amount> {
  return (limit, column, written, place) => {
    log.add(`value-${limit.kind}`, place, written, { column });
    limited.push({ kind: limit.kind, column, written, place });
    if (limit.kind === 'below') return limit.value / 2;
    return limit.kind === 'above' ? 'open' : 'trace';
  };
}

/** Usable figures of a picking; a weight without fruits, or fruits without weight, where the other is 0, is doubtful. */
function agree(row: Row, { fruits, grams, column }: DatedRow, { log }: CheckContext): boolean {
  if (fruits !== 0 && grams !== 0) return true;
  const isSome = (amount: Amount): boolean => amount !== null && amount !== 0;
  const disagree = (fruits === 0 && isSome(grams)) || (grams === 0 && isSome(fruits));
  if (disagree)
    log.add(
      'weight-and-fruits-disagree',
      placeIn(row, column === 'date' ? (fruits === 0 ? 'fruits' : 'weight') : column),
      '0',
    );
  return !disagree;
}

/** A picking with the column that says when it was. */
type DatedRow = PickedRow & { readonly column: string };

/** The picking of a row; null where there is none, or its day was reported. */
function pickedOnce(row: Row, take: TakeLimit<Amount>, context: CheckContext): DatedRow | null {
  const day = dayIn(row, 'date', context);
  const picked: DatedRow = {
    column: 'date',
    day,
    stage: stageIn(row),
    fruits: limitedCountIn(row, 'fruits', take),
    grams: limitedQuantityIn(row, 'weight', take),
    cullFruits: countIn(row, 'unusable_fruits'),
    cullGrams: quantityIn(row, 'unusable_weight'),
    line: row.raw.line,
  };
  if (day === null && (textIn(row, 'date') !== null || row.marred.length > 0)) return null;
  const { fruits, grams, cullFruits, cullGrams } = picked;
  if (fruits !== null || grams !== null || cullFruits !== null || cullGrams !== null) return picked;
  const isWritten = FIGURES.some((name) => isFilled(row, name));
  if (row.marred.length === 0 && !isWritten) context.log.add('picking-empty', placeIn(row, 'planting'), '');
  return null;
}

/** The pickings of a row with one column a day. */
function pickedOnDays(row: Row, { days }: DaySheet, take: TakeLimit<Amount>): readonly DatedRow[] {
  const stage = stageIn(row);
  return pickedByDay(row, days, take).map((own) => ({
    ...own,
    stage,
    cullFruits: null,
    cullGrams: null,
    line: row.raw.line,
  }));
}

/** What was picked under a variety's name although it has several plantings. */
export type JointRecords = ReadonlyMap<string, RecordDraft>;

/** Record of what a row is about: its planting's, or that of a variety with several. */
function recordOf(target: Target, joint: Map<string, RecordDraft>): RecordDraft {
  const known = target.planting?.record ?? joint.get(target.key);
  if (known) return known;
  const made = emptyRecord();
  joint.set(target.key, made);
  return made;
}

/** What goes in with a row's pickings: where they are added, and how they are looked at. */
interface Adding {
  readonly joint: Map<string, RecordDraft>;
  readonly span: SeasonSpan;
  readonly context: CheckContext;
}

function reportTwice(row: Row, column: string, { log }: CheckContext): void {
  log.add('row-twice', placeIn(row, column), textIn(row, column) ?? '', { table: 'harvests.csv' });
}

function addRow(row: Row, target: Target, one: DatedRow, { joint, span, context }: Adding): void {
  const totalled = target.plantings.find(({ fields }) => fields.totals !== null);
  if (totalled) {
    context.log.add('totals-and-harvests', placeIn(row, one.column), totalled.fields.id, {
      planting: totalled.fields.id,
    });
    return;
  }
  reportWhen(row, one, target.plantings, span, context);
  const sound = agree(row, one, context) ? one : { ...one, fruits: one.fruits || null, grams: one.grams || null };
  if (addPicked(recordOf(target, joint), sound)) reportTwice(row, one.column, context);
}

/** Rows of harvests.csv as they go by: how many have a day, and whether their figures were drawn down. */
interface Watched {
  readonly fills: FillWatch;
  readonly undated: number[];
  dated: number;
}

function watch(watched: Watched, { fruits, grams, day, line }: PickedRow): void {
  if (day === null) watched.undated.push(line);
  else watched.dated++;
  see(watched.fills, 'fruits', typeof fruits === 'number' ? fruits : null, line);
  see(watched.fills, 'weight', typeof grams === 'number' ? grams : null, line);
}

function reportWatched({ fills, undated, dated }: Watched, file: string, { log }: CheckContext): void {
  reportFills(fills, file, log);
  if (dated > 0 && undated.length > 0)
    log.add(
      'date-missing',
      undated.map((line) => ({ file, line, column: 1 })),
    );
}

/**
 * Checks harvests.csv; pickings are added to their plantings.
 *
 * @returns what was recorded under the name of a variety with several plantings
 */
export function checkHarvests(
  source: SourceFile,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
): JointRecords {
  const joint = new Map<string, RecordDraft>();
  const sheet = openDaySheet(source, span, context);
  const known = sheet ? sheet.known : openKnown(source, SPEC, context);
  if (!known) return joint;
  const take = limitTaker(context);
  const remark = remarkTaker(context);
  const watched: Watched = { fills: watchFills(), undated: [], dated: 0 };
  const adding: Adding = { joint, span, context };
  const takePlain: TakePicked = (draft, one, raw) => {
    follow(known.trail, one.day, one.line);
    watch(watched, one);
    if (addPicked(draft.record, one)) reportTwice({ from: known, raw: raw(), marred: [] }, 'date', context);
  };
  const plain = sheet ? null : plainPickings(known, index, span, context, takePlain);
  for (const row of rowsOf(known, (text) => isNamed(text, index), plain)) {
    const target = targetIn(row, index, context);
    if (sheet) {
      const picked = pickedOnDays(row, sheet, take);
      if (!target) continue;
      for (const one of picked) addRow(row, target, one, adding);
      remark(row, target, null);
      continue;
    }
    const one = pickedOnce(row, take, context);
    if (!one) continue;
    watch(watched, one);
    if (!target) continue;
    addRow(row, target, one, adding);
    remark(row, target, one.day);
  }
  reportWatched(watched, source.path, context);
  return joint;
}
