import { recordedTraits } from '../../terms/traits.ts';
import type { Day } from '../../terms/day.ts';
import type { StateCount } from '../../terms/lines.ts';
import { foldHeader, foldName, nearestName } from '../../terms/names.ts';
import { nth } from '../../numerics/element.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { countIn, dayIn, neededIn, placeIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportFills, see, watchFills } from '../../sheet/fillDown.ts';
import type { PlacedMeasure } from '../rules/measured.ts';
import { noteOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { remarkTaker } from '../remarks.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex, Target } from '../target.ts';
import { longValueIn, traitSpec, wideValuesIn } from '../../sheet/traitValues.ts';

/** What measurements.csv says. */
export interface Measured {
  readonly measures: readonly PlacedMeasure[];
  /** As the table has them, before any rule between its rows. */
  readonly states: readonly StateCount[];
}

/** States of the plants that a row is about, from a column a trait, or from trait and value. */
function statesIn(row: Row, target: Target, day: Day | null, { settings, log }: CheckContext): readonly StateCount[] {
  const traits = [...settings.states.values()];
  const named = textIn(row, 'trait');
  return traits.flatMap((trait) => {
    const isLong = named !== null && foldHeader(named) === foldHeader(trait.key);
    const column = isLong ? 'value' : foldHeader(trait.key);
    const text = textIn(row, column);
    if (text === null) return [];
    const state =
      trait.states.find((own) => own === text) ?? trait.states.find((own) => foldName(own) === foldName(text));
    const place = placeIn(row, column);
    if (state === undefined) {
      const near = nearestName(text, trait.states);
      log.add('state-unknown', place, text, {
        trait: trait.key,
        states: trait.states.join(', '),
        ...(near === null ? {} : { near }),
      });
      return [];
    }
    const isOfPlanting = textIn(row, 'planting') !== null;
    if (!isOfPlanting) neededIn(row, 'plants');
    const planting = isOfPlanting ? (target.planting?.fields.id ?? null) : null;
    const plants = countIn(row, 'plants') ?? 1;
    return [{ day, variety: target.variety.id, planting, trait: trait.key, state, plants, place }];
  });
}

/** Checks measurements.csv, long or wide. */
export function checkMeasurements(
  source: SourceFile,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
): Measured {
  const traits = recordedTraits(context.settings.traits).filter(({ kind }) => kind === 'measure');
  const shape = traitSpec(traits, 'value', ['date', 'garden', 'variety', 'planting', 'plants', 'notes']);
  const stateColumns = [...context.settings.states.keys()].map(foldHeader);
  const required = [
    ['variety', 'planting'],
    [...nth(shape.required, 0), ...stateColumns],
  ];
  const columns = [...shape.columns, ...stateColumns];
  const known = openKnown(source, { ...shape, required, columns }, context);
  if (!known) return { measures: [], states: [] };
  const states: StateCount[] = [];
  const measured: PlacedMeasure[] = [];
  const fills = watchFills();
  const remark = remarkTaker(context);
  const seen = new Set<string>();
  for (const row of rowsOf(known, (text) => isNamed(text, index))) {
    const target = targetIn(row, index, context);
    const isDated = known.index.has('date');
    const day = isDated ? dayIn(row, 'date', context) : null;
    if (isDated && day === null && textIn(row, 'date') === null) neededIn(row, 'date');
    const isLong = known.index.has('trait') && !stateColumns.includes(foldHeader(textIn(row, 'trait') ?? ''));
    const long = isLong ? longValueIn(row, 'value', traits, context) : null;
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
    states.push(...statesIn(row, target, day, context));
    for (const { trait, value } of values) {
      const isElsewhere = target.garden !== context.gardens.own;
      const planting = (target.planting ?? (isElsewhere ? target.plantings[0] : null))?.fields.id ?? null;
      const place = placeIn(row, known.index.has('trait') ? 'value' : foldHeader(trait.key));
      measured.push({ own: { day, variety: target.variety.id, planting, trait: trait.key, value }, place });
    }
  }
  reportFills(fills, source.path, context.log);
  return { measures: measured, states };
}
