import { foldName } from '../../terms/names.ts';
import type { Score } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../columns.ts';
import type { CheckContext } from '../context.ts';
import { dayIn, neededIn, placeIn, textIn } from '../row.ts';
import { yesNoIn } from '../wordCells.ts';
import { rowsOf } from '../rows.ts';
import { noteOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex } from '../target.ts';
import { longValueIn, traitSpec, wideValuesIn } from '../traitValues.ts';

/** Checks ratings.csv, long or wide. */
export function checkRatings(
  source: SourceFile,
  index: SeasonIndex,
  span: SeasonSpan,
  context: CheckContext,
): readonly Score[] {
  const traits = [...context.settings.traits.values()].filter(({ kind }) => kind !== 'measure');
  const shape = traitSpec(traits, 'score', ['date', 'taster', 'variety', 'planting', 'blind', 'notes']);
  const required = [['date'], ['taster'], ['variety', 'planting'], ...shape.required];
  const known = openKnown(source, { ...shape, required }, context);
  if (!known) return [];
  const scores: Score[] = [];
  const seen = new Set<string>();
  for (const row of rowsOf(known, (text) => isNamed(text, index))) {
    const target = targetIn(row, index, context);
    const day = dayIn(row, 'date', context);
    if (day === null && textIn(row, 'date') === null) neededIn(row, 'date');
    const taster = neededIn(row, 'taster');
    const isBlind = yesNoIn(row, 'blind');
    const long = known.index.has('trait') ? longValueIn(row, 'score', traits, context) : null;
    const values = [...wideValuesIn(row, traits, context), ...(long ? [long] : [])];
    if (!target || day === null || taster === null) continue;
    noteOutside(row, 'date', day, span, context);
    const planting = textIn(row, 'planting') === null ? null : (target.planting?.fields.id ?? null);
    const given = values.map(({ trait, value }) => `${trait.key} ${value}`);
    const sign = [foldName(taster), target.variety.id, planting, day, ...given].join('|');
    if (given.length > 0 && seen.has(sign))
      context.log.add('row-twice', placeIn(row, 'date'), textIn(row, 'date') ?? '', { table: 'ratings.csv' });
    seen.add(sign);
    for (const { trait, value } of values) {
      scores.push({ day, taster, variety: target.variety.id, planting, trait: trait.key, score: value, isBlind });
    }
  }
  return scores;
}
