import type { Wish } from '../../terms/plan.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { countIn, neededIn, placeIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { yesNoIn } from '../../sheet/wordCells.ts';
import { varietyIn } from '../registry.ts';
import type { VarietyRegistry } from '../registry.ts';

const SPEC = {
  required: [['variety']],
  columns: ['variety', 'grow', 'plants', 'at_least', 'at_most', 'bed', 'tall', 'seeds', 'save_seed', 'notes'],
  quantities: [],
} as const;

/** Says how the wishes of a row speak against one another; null where they do not. */
function againstItself({ isRefused, plants, atLeast, atMost }: Omit<Wish, 'variety' | 'place'>): string | null {
  if (isRefused && ((plants ?? 0) > 0 || (atLeast ?? 0) > 0))
    return `grow no, ${plants === null ? `at_least ${atLeast}` : `plants ${plants}`}`;
  if (atLeast !== null && atMost !== null && atLeast > atMost) return `at_least ${atLeast}, at_most ${atMost}`;
  if (plants === null) return null;
  if (atLeast !== null && plants < atLeast) return `plants ${plants}, at_least ${atLeast}`;
  return atMost !== null && plants > atMost ? `plants ${plants}, at_most ${atMost}` : null;
}

function wishIn(row: Row): Omit<Wish, 'variety' | 'place'> {
  return {
    isRefused: yesNoIn(row, 'grow') === false,
    plants: countIn(row, 'plants'),
    atLeast: countIn(row, 'at_least'),
    atMost: countIn(row, 'at_most'),
    bed: textIn(row, 'bed'),
    isTall: yesNoIn(row, 'tall') === true,
    seeds: countIn(row, 'seeds'),
    savesSeed: yesNoIn(row, 'save_seed') === true,
  };
}

/** Checks wishes.csv: what the grower asks of varieties for a season. */
export function checkWishes(source: SourceFile, registry: VarietyRegistry, context: CheckContext): readonly Wish[] {
  const known = openKnown(source, SPEC, context);
  if (!known) return [];
  const wishes = new Map<string, Wish>();
  for (const row of rowsOf(known)) {
    if (neededIn(row, 'variety') === null) continue;
    const variety = varietyIn(row, 'variety', registry, context);
    const own = wishIn(row);
    const place = placeIn(row, 'variety');
    const against = againstItself(own);
    if (against !== null) context.log.add('plan-wish-contradicts', place, textIn(row, 'variety') ?? '', { against });
    if (!variety) continue;
    const other = wishes.get(variety.id);
    if (other) {
      context.log.add('wish-twice', place, variety.id, { line: String(other.place.line ?? '') });
      continue;
    }
    wishes.set(variety.id, { ...own, variety: variety.id, place });
  }
  return [...wishes.values()];
}
