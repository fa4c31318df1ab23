import type { Day } from '../terms/day.ts';
import { shownColumns } from '../terms/published.ts';
import type { CheckContext } from '../sheet/context.ts';
import { textIn, unknownIn } from '../sheet/row.ts';
import type { Row } from '../sheet/row.ts';
import type { Target } from './target.ts';

/** Keeps what a row says beside its record. */
export type TakeRemark = (row: Row, target: Target, day: Day | null) => void;

/** What is kept of the notes and unknown columns of a table's rows: what `publish.show` names, so nothing by default. */
export function remarkTaker({ settings, remarks }: CheckContext): TakeRemark {
  const { show } = settings.publish;
  if (show.length === 0) return () => undefined;
  const showsNotes = show.includes('notes');
  return (row, target, day) => {
    const note = showsNotes ? textIn(row, 'notes') : null;
    const parts = [...(note === null ? [] : [note]), ...shownColumns(unknownIn(row), show)];
    if (parts.length === 0) return;
    const planting = target.planting?.fields.id ?? null;
    remarks.push({ day, garden: target.garden, variety: target.variety.id, planting, text: parts.join('; ') });
  };
}
