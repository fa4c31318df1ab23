import { isoDate } from '../../terms/day.ts';
import { nearestName } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { emptyRecord } from '../draft.ts';
import type { RecordDraft } from '../draft.ts';
import { countIn, dayIn, neededIn, placeIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { remarkTaker } from '../remarks.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex, Target } from '../target.ts';
import { nth } from '../../numerics/element.ts';

const SPEC = {
  required: [['date'], ['planting', 'variety'], ['event']],
  columns: ['date', 'garden', 'planting', 'variety', 'event', 'count', 'of', 'notes'],
  quantities: [],
} as const;

/** Events that mean something to the figures; any other word is kept as a note. */
export const EVENTS = [
  'first-flower',
  'first-set',
  'unripe',
  'first-ripe',
  'topped',
  'lost',
  'nothing-picked',
  'off-type',
  'hot',
] as const;

function eventIn(row: Row, { log }: CheckContext): string | null {
  const text = neededIn(row, 'event');
  if (text === null) return null;
  const event = text.toLowerCase().replace(/[\s_-]+/g, '-');
  if ((EVENTS as readonly string[]).includes(event)) return event;
  const near = nearestName(text, EVENTS);
  if (near === null) log.add('event-unknown', placeIn(row, 'event'), text);
  else log.add('event-near', placeIn(row, 'event'), text, { near });
  return event;
}

/** Plants an event counts: `count` of `of`, by default one of the plants it is about. */
function countsIn(
  row: Row,
  event: string,
  target: Target,
  { log }: CheckContext,
): { count: number | null; of: number | null } {
  const [count, of] = [countIn(row, 'count'), countIn(row, 'of')];
  if (event !== 'off-type' && event !== 'hot') return { count, of };
  const plants = target.plantings.reduce((sum, { fields }) => sum + fields.plants, 0);
  const counts = { count: count ?? 1, of: of ?? plants };
  if (counts.count > counts.of) {
    log.add('count-over-of', placeIn(row, 'count'), String(counts.count), { of: String(counts.of) });
    return { count: null, of: null };
  }
  return counts;
}

/** Events under the name of a variety with several plantings that say which of them ripened first: none in particular. */
export type JointRipening = ReadonlyMap<string, RecordDraft>;

/**
 * Checks observations.csv; events are added to their plantings.
 *
 * @returns first-ripe events under the name of a variety with several plantings
 */
export function checkObservations(
  source: SourceFile,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
): JointRipening {
  const joint = new Map<string, RecordDraft>();
  const seen = new Set<string>();
  const known = openKnown(source, SPEC, context);
  if (!known) return joint;
  const remark = remarkTaker(context);
  for (const row of rowsOf(known, (text) => isNamed(text, index))) {
    const target = targetIn(row, index, context);
    const day = dayIn(row, 'date', context);
    if (day === null && textIn(row, 'date') === null) neededIn(row, 'date');
    const event = eventIn(row, context);
    if (!target || day === null || event === null) continue;
    const counts = countsIn(row, event, target, context);
    if (reportOutside(row, 'date', day, span, context)) continue;
    const removed = target.planting?.fields.removed ?? null;
    if (event === 'first-ripe' && removed !== null && day > removed) {
      context.log.add('picked-after-removal', placeIn(row, 'date'), textIn(row, 'date') ?? '', {
        removed: isoDate(removed),
      });
    }
    const noted = { day, event, ...counts, place: placeIn(row, 'event') };
    const sign = [
      target.planting?.fields.id,
      target.key,
      day,
      event,
      counts.count,
      counts.of,
      textIn(row, 'notes'),
    ].join('|');
    if (seen.has(sign))
      context.log.add('row-twice', placeIn(row, 'date'), textIn(row, 'date') ?? '', { table: 'observations.csv' });
    seen.add(sign);
    remark(row, target, day);
    if (target.planting) target.planting.record.events.push(noted);
    else if (event === 'first-ripe') {
      const record = joint.get(target.key) ?? emptyRecord();
      record.events.push(noted);
      joint.set(target.key, record);
    } else if (event === 'off-type' || event === 'hot') nth(target.plantings, 0).record.events.push(noted);
    else for (const { record } of target.plantings) record.events.push(noted);
  }
  return joint;
}
