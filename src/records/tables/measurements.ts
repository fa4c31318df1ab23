import { foldHeader } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { dayIn, neededIn, placeIn, textIn } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportFills, see, watchFills } from '../../sheet/fillDown.ts';
import type { PlacedMeasure } from '../rules/measured.ts';
import { noteOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { remarkTaker } from '../remarks.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex } from '../target.ts';
import { longValueIn, traitSpec, wideValuesIn } from '../../sheet/traitValues.ts';

/** Checks measurements.csv, long or wide. */
export function checkMeasurements(
  source: SourceFile,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
): readonly PlacedMeasure[] {
  const traits = [...context.settings.traits.values()].filter(({ kind }) => kind === 'measure');
  const shape = traitSpec(traits, 'value', ['date', 'variety', 'planting', 'notes']);
  const required = [['variety', 'planting'], ...shape.required];
  const known = openKnown(source, { ...shape, required }, context);
  if (!known) return [];
  const measured: PlacedMeasure[] = [];
  const fills = watchFills();
  const remark = remarkTaker(context);
  const seen = new Set<string>();
  for (const row of rowsOf(known, (text) => isNamed(text, index))) {
    const target = targetIn(row, index, context);
    const isDated = known.index.has('date');
    const day = isDated ? dayIn(row, 'date', context) : null;
    if (isDated && day === null && textIn(row, 'date') === null) neededIn(row, 'date');
    const long = known.index.has('trait') ? longValueIn(row, 'value', traits, context) : null;
    const values = [...wideValuesIn(row, traits, context), ...(long ? [long] : [])];
    for (const { trait, value } of values) see(fills, long ? 'value' : trait.key, value, row.raw.line);
    if (!target || (isDated && day === null)) continue;
    if (day !== null) noteOutside(row, 'date', day, span, context);
    const sign = row.raw.cells.join('|');
    // Two fruits may share one figure, hardly all of several.
    if (values.length > 1 && seen.has(sign))
      context.log.add('row-twice', placeIn(row, isDated ? 'date' : 'variety'), textIn(row, 'date') ?? '', {
        table: 'measurements.csv',
      });
    seen.add(sign);
    remark(row, target, day);
    for (const { trait, value } of values) {
      const planting = target.planting?.fields.id ?? null;
      const place = placeIn(row, known.index.has('trait') ? 'value' : foldHeader(trait.key));
      measured.push({ own: { day, variety: target.variety.id, planting, trait: trait.key, value }, place });
    }
  }
  reportFills(fills, source.path, context.log);
  return measured;
}
