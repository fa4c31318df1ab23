import { recordedTraits } from '../../terms/traits.ts';
import { foldName } from '../../terms/names.ts';
import type { Day } from '../../terms/day.ts';
import type { Row } from '../../sheet/row.ts';
import type { DeclaredTrait } from '../../terms/traits.ts';
import type { Score, Serving } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { dayIn, isFilled, neededIn, placeIn, textIn } from '../../sheet/row.ts';
import { yesNoIn } from '../../sheet/wordCells.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { reportFills, see, watchFills } from '../../sheet/fillDown.ts';
import { oneSpelling } from '../rules/nearNames.ts';
import type { Spelling } from '../rules/nearNames.ts';
import { LONE_GROWER, reportTasters } from '../rules/scores.ts';
import { noteOutside } from '../rules/seasonDays.ts';
import type { SeasonSpan } from '../rules/seasonDays.ts';
import { remarkTaker } from '../remarks.ts';
import { isNamed, targetIn } from '../target.ts';
import type { SeasonIndex } from '../target.ts';
import { longValueIn, traitSpec, wideValuesIn } from '../../sheet/traitValues.ts';

/** True for a row with a value of some trait. */
const isScored = (row: Row, traits: readonly DeclaredTrait[]): boolean =>
  isFilled(row, 'score') || isFilled(row, 'trait') || traits.some(({ key }) => isFilled(row, key));

const COLUMNS = ['date', 'garden', 'taster', 'order', 'code', 'variety', 'planting', 'blind', 'notes'];

function ratedOn(row: Row, isDated: boolean, context: CheckContext): Day | null {
  const day = isDated ? dayIn(row, 'date', context) : null;
  if (isDated && day === null && textIn(row, 'date') === null) neededIn(row, 'date');
  return day;
}

/** What ratings.csv holds: scores, and the samples of a tasting with their codes. */
export interface Rated {
  readonly scores: readonly Score[];
  readonly servings: readonly Serving[];
}

/** A sample under a code; null for a row without one, or of a variety that is not known. */
function servingIn(row: Row, index: SeasonIndex): Serving | null {
  const [taster, code, name] = [textIn(row, 'taster'), textIn(row, 'code'), textIn(row, 'variety')];
  const variety = name === null ? null : index.registry.find(name);
  const order = Number(textIn(row, 'order'));
  if (taster === null || code === null || !variety || !Number.isInteger(order) || order < 1) return null;
  return { taster, order, code, variety: variety.id };
}

/** Checks ratings.csv, long or wide; without the columns taster and date it is one grower's, of the season. */
export function checkRatings(source: SourceFile, index: SeasonIndex, span: SeasonSpan, context: CheckContext): Rated {
  const traits = recordedTraits(context.settings.traits).filter(({ kind }) => kind !== 'measure');
  const shape = traitSpec(traits, 'score', COLUMNS);
  const required = [['variety', 'planting'], ...shape.required];
  const known = openKnown(source, { ...shape, required }, context);
  if (!known) return { scores: [], servings: [] };
  const scores: Score[] = [];
  const servings: Serving[] = [];
  const seen = new Set<string>();
  const fills = watchFills();
  const remark = remarkTaker(context);
  const tasters = new Map<string, Spelling>();
  for (const row of rowsOf(known, (text) => isNamed(text, index))) {
    const serving = servingIn(row, index);
    if (serving) servings.push(serving);
    // A row to be filled in says nothing yet.
    if (!isScored(row, traits)) continue;
    const target = targetIn(row, index, context);
    const isDated = known.index.has('date');
    const day = ratedOn(row, isDated, context);
    const taster = known.index.has('taster') ? neededIn(row, 'taster') : LONE_GROWER;
    if (taster !== null && taster !== LONE_GROWER && !tasters.has(taster))
      tasters.set(taster, { name: taster, place: placeIn(row, 'taster') });
    const isBlind = yesNoIn(row, 'blind');
    const long = known.index.has('trait') ? longValueIn(row, 'score', traits, context) : null;
    const values = [...wideValuesIn(row, traits, context), ...(long ? [long] : [])];
    for (const { trait, value } of values)
      if (trait.kind === 'rating') see(fills, long ? 'score' : trait.key, value, row.raw.line);
    if (!target || (isDated && day === null) || taster === null) continue;
    if (day !== null) noteOutside(row, 'date', day, span, context);
    const planting = textIn(row, 'planting') === null ? null : (target.planting?.fields.id ?? null);
    const given = values.map(({ trait, value }) => `${trait.key} ${value}`);
    const sign = [foldName(taster), target.key, planting, day, ...given].join('|');
    if (given.length > 0 && seen.has(sign))
      context.log.add('row-twice', placeIn(row, isDated ? 'date' : 'variety'), textIn(row, 'date') ?? '', {
        table: 'ratings.csv',
      });
    seen.add(sign);
    remark(row, target, day);
    const by = target.garden === context.gardens.own ? taster : target.garden;
    const scored = { day, taster: by, variety: target.variety.id, planting, isBlind };
    for (const { trait, value } of values) scores.push({ ...scored, trait: trait.key, score: value });
  }
  reportFills(fills, source.path, context.log);
  const spelled = oneSpelling(scores.map(({ taster }) => taster));
  const named = scores.map((score) => ({ ...score, taster: spelled(score.taster) }));
  const own = [...tasters.values()].filter(({ name }) => spelled(name) === name);
  reportTasters(own, named, context);
  return { scores: named, servings };
}
