import type { Day } from '../../terms/day.ts';
import { isoDate } from '../../terms/day.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../columns.ts';
import type { CheckContext } from '../context.ts';
import { addPicked, emptyRecord } from '../draft.ts';
import type { PlantingDraft, RecordDraft } from '../draft.ts';
import { countIn, dayIn, placeIn, quantityIn, rowsOf, textIn, wordIn } from '../row.ts';
import type { Row } from '../row.ts';
import { reportOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { targetIn } from '../target.ts';
import type { SeasonIndex } from '../target.ts';

const SPEC = {
  required: [
    ['planting', 'variety'],
    ['fruits', 'weight', 'unusable_fruits', 'unusable_weight'],
  ],
  columns: ['date', 'planting', 'variety', 'fruits', 'stage', 'unusable_fruits', 'notes'],
  quantities: [
    { name: 'weight', dimension: 'mass' },
    { name: 'unusable_weight', dimension: 'mass' },
  ],
} as const;

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
  day: Day,
  plantings: readonly PlantingDraft[],
  span: SeasonSpan,
  context: CheckContext,
): void {
  if (reportOutside(row, 'date', day, span, context)) return;
  const { from, to } = standing(plantings);
  const found = (): string => textIn(row, 'date') ?? '';
  if (from !== null && day < from) {
    context.log.add('picked-before-transplanting', placeIn(row, 'date'), found(), { transplanted: isoDate(from) });
  }
  if (to !== null && day > to)
    context.log.add('picked-after-removal', placeIn(row, 'date'), found(), { removed: isoDate(to) });
}

/** Usable figures of a picking; a weight without fruits, or fruits without weight, where the other is 0, is doubtful. */
function agree(row: Row, fruits: number | null, grams: number | null, { log }: CheckContext): boolean {
  const disagree = (fruits === 0 && grams !== null && grams > 0) || (grams === 0 && fruits !== null && fruits > 0);
  if (disagree) log.add('weight-and-fruits-disagree', placeIn(row, fruits === 0 ? 'fruits' : 'weight'), '0');
  return !disagree;
}

/** What was picked under a variety's name although it has several plantings. */
export type JointRecords = ReadonlyMap<string, RecordDraft>;

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
  const known = openKnown(source, SPEC, context.log);
  if (!known) return joint;
  for (const row of rowsOf(known)) {
    const target = targetIn(row, index, context);
    const day = dayIn(row, 'date', context);
    const picked = {
      day,
      stage: wordIn(row, 'stage', ['ripe', 'green']) ?? 'ripe',
      fruits: countIn(row, 'fruits'),
      grams: quantityIn(row, 'weight'),
      cullFruits: countIn(row, 'unusable_fruits'),
      cullGrams: quantityIn(row, 'unusable_weight'),
    } as const;
    if (!target || (day === null && textIn(row, 'date') !== null)) continue;
    const empty =
      picked.fruits === null && picked.grams === null && picked.cullFruits === null && picked.cullGrams === null;
    if (empty) {
      context.log.add('picking-empty', placeIn(row, 'planting'), '');
      continue;
    }
    if (day !== null) reportWhen(row, day, target.plantings, span, context);
    const sound = agree(row, picked.fruits, picked.grams, context)
      ? picked
      : { ...picked, fruits: picked.fruits || null, grams: picked.grams || null };
    let record = target.planting?.record ?? joint.get(target.variety.id);
    if (!record) joint.set(target.variety.id, (record = emptyRecord()));
    if (addPicked(record, sound))
      context.log.add('row-twice', placeIn(row, 'date'), textIn(row, 'date') ?? '', { table: 'harvests.csv' });
  }
  return joint;
}
