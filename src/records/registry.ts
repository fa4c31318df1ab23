import { foldName, nearestName } from '../terms/names.ts';
import type { Variety } from '../terms/trial.ts';
import { looksLikeDate } from '../sheet/cells/spreadsheet.ts';
import type { CheckContext } from '../sheet/context.ts';
import { placeIn, textIn } from '../sheet/row.ts';
import type { Row } from '../sheet/row.ts';

/** Finds varieties by whatever people call them. */
export interface VarietyRegistry {
  readonly find: (name: string) => Variety | null;
  readonly nearest: (name: string) => string | null;
  readonly varieties: readonly Variety[];
}

/**
 * Registry of the varieties by id, name, former id and other names, all folded.
 *
 * @param varieties  sound varieties, no two with the same fold (the table's own check)
 */
export function varietyRegistry(varieties: readonly Variety[]): VarietyRegistry {
  const byFold = new Map<string, Variety>();
  const add = (name: string, variety: Variety): void => {
    const fold = foldName(name);
    if (!byFold.has(fold)) byFold.set(fold, variety);
  };
  for (const variety of varieties) add(variety.id, variety);
  for (const variety of varieties) add(variety.name, variety);
  for (const variety of varieties) [...variety.alsoKnownAs, ...variety.formerIds].forEach((name) => add(name, variety));
  const asWritten = new Map<string, Variety | null>();
  return {
    varieties,
    find(name) {
      let variety = asWritten.get(name);
      if (variety === undefined) {
        variety = byFold.get(foldName(name)) ?? null;
        if (asWritten.size < 100_000) asWritten.set(name, variety);
      }
      return variety;
    },
    nearest: (name) =>
      nearestName(
        name,
        varieties.flatMap((v) => [v.id, ...(v.name === v.id ? [] : [v.name]), ...v.alsoKnownAs]),
      ),
  };
}

/** The variety a row names, or null; an unknown name is reported with the nearest. */
export function varietyIn(row: Row, column: string, registry: VarietyRegistry, { log }: CheckContext): Variety | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const variety = registry.find(text);
  if (variety) return variety;
  const near = registry.nearest(text);
  if (looksLikeDate(text)) log.add('became-a-date', placeIn(row, column), text, { column });
  else log.add('unknown-variety', placeIn(row, column), text, near === null ? {} : { near });
  return null;
}
