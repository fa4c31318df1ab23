import { fileOnly } from '../../terms/place.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { eachPicked, onlyDay } from '../draft.ts';
import type { PlantingDraft } from '../draft.ts';

/** So many rows of one planting and stage on one day, one after the other, are hardly as many pickings. */
const OFTEN = 3;

/** Rows in which a planting was picked again and again on a day: its name, or the date, was drawn down. */
export function reportOften({ record }: PlantingDraft, file: string, { log }: CheckContext): void {
  let [last, isGreen, times] = [NaN, false, 0];
  eachPicked(record, (_, __, line, day, green) => {
    times = day !== null && day === last && green === isGreen ? times + 1 : 1;
    [last, isGreen] = [day ?? NaN, green];
    if (times === OFTEN) log.add('picked-often-a-day', { file, line, column: 1 });
  });
}

/** Every dated picking of a season on one day. */
export function reportOneDay(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): void {
  const days = drafts.map(({ record }) => onlyDay(record));
  const first = days[0]?.day;
  if (first === undefined || days.length < 3 || !days.every((own) => own?.day === first)) return;
  if (days.reduce((sum, own) => sum + (own?.rows ?? 0), 0) >= 6) log.add('all-on-one-day', fileOnly(file));
}
