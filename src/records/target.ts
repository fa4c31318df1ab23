import type { Place } from '../terms/place.ts';
import { foldId, nearestName } from '../terms/names.ts';
import type { Variety } from '../terms/trial.ts';
import { looksLikeDate } from '../sheet/cells/spreadsheet.ts';
import type { CheckContext } from '../sheet/context.ts';
import type { PlantingDraft } from './draft.ts';
import type { VarietyRegistry } from './registry.ts';
import { varietyIn } from './registry.ts';
import { gardenIn, inGarden, withoutGarden } from './gardenIn.ts';
import { placeIn, textIn } from '../sheet/row.ts';
import type { Row } from '../sheet/row.ts';
import { nth } from '../numerics/element.ts';

/** The plantings of a season by id and by variety, and those of other seasons by id. */
export interface SeasonIndex {
  readonly byId: ReadonlyMap<string, PlantingDraft>;
  /** Plantings by their id as it was written, filled as rows name them. */
  readonly byWritten: Map<string, PlantingDraft>;
  /** By variety, within its garden. */
  readonly byVariety: ReadonlyMap<string, readonly PlantingDraft[]>;
  /** Season in which a planting id stands, for ids of other seasons. */
  readonly elsewhere: ReadonlyMap<string, number>;
  /** Ids as rows write them, gardens aside. */
  readonly ids: ReadonlySet<string>;
  readonly registry: VarietyRegistry;
  /** The trial's own garden. */
  readonly own: string;
}

/** What a row is about: one planting, or a variety with all its plantings of the season. */
export interface Target {
  readonly variety: Variety;
  readonly garden: string;
  /** The variety within its garden: what records under its name go by. */
  readonly key: string;
  readonly planting: PlantingDraft | null;
  readonly plantings: readonly PlantingDraft[];
}

/** True for a planting or variety of the season, whatever word it is called by. */
export function isNamed(text: string, { ids, registry }: SeasonIndex): boolean {
  return ids.has(foldId(text)) || registry.find(text) !== null;
}

export function seasonIndex(
  drafts: readonly PlantingDraft[],
  registry: VarietyRegistry,
  elsewhere: ReadonlyMap<string, number>,
  own: string,
): SeasonIndex {
  const byId = new Map<string, PlantingDraft>();
  const byVariety = new Map<string, PlantingDraft[]>();
  const ids = new Set<string>();
  for (const draft of drafts) {
    const { id, garden } = draft.fields;
    byId.set(foldId(id), draft);
    ids.add(foldId(withoutGarden(id, garden, own)));
    const key = inGarden(draft.fields.variety, garden, own);
    byVariety.set(key, [...(byVariety.get(key) ?? []), draft]);
  }
  return { byId, byWritten: new Map(), byVariety, elsewhere, ids, registry, own };
}

function plantingOf(
  id: string,
  garden: string,
  place: () => Place,
  index: SeasonIndex,
  { log }: CheckContext,
): PlantingDraft | null {
  const within = inGarden(id, garden, index.own);
  const known = index.byWritten.get(within);
  if (known) return known;
  const draft = index.byId.get(foldId(within));
  if (draft) {
    index.byWritten.set(within, draft);
    return draft;
  }
  const season = index.elsewhere.get(foldId(id));
  if (season !== undefined) log.add('planting-of-other-season', place(), id, { season: String(season) });
  else if (looksLikeDate(id)) log.add('became-a-date', place(), id, { column: 'planting' });
  else {
    const near = nearestName(
      id,
      [...index.byId.values()].flatMap(({ fields }) =>
        fields.garden === garden ? [withoutGarden(fields.id, garden, index.own)] : [],
      ),
    );
    log.add('unknown-planting', place(), id, near === null ? {} : { near });
  }
  return null;
}

/** What a row is about; null where that was reported. */
export function targetIn(row: Row, index: SeasonIndex, context: CheckContext): Target | null {
  const id = textIn(row, 'planting');
  const name = textIn(row, 'variety');
  if (id === null && name === null) {
    if (row.marred.length > 0) return null;
    context.log.add(
      'neither-planting-nor-variety',
      placeIn(row, row.from.index.has('planting') ? 'planting' : 'variety'),
    );
    return null;
  }
  const variety = name === null ? null : varietyIn(row, 'variety', index.registry, context);
  const garden = gardenIn(row, context);
  if (garden === null) return null;
  if (id === null) {
    if (!variety) return null;
    const key = inGarden(variety.id, garden, index.own);
    const plantings = index.byVariety.get(key);
    if (plantings)
      return { variety, garden, key, planting: plantings.length === 1 ? nth(plantings, 0) : null, plantings };
    context.log.add('variety-not-in-season', placeIn(row, 'variety'), name ?? '');
    return null;
  }
  const planting = plantingOf(id, garden, () => placeIn(row, 'planting'), index, context);
  if (!planting || (name !== null && !variety)) return null;
  if (variety && planting.fields.variety !== variety.id) {
    const facts = { planting: id, variety: planting.fields.variety };
    context.log.add('planting-and-variety-differ', placeIn(row, 'variety'), name ?? '', facts);
    return null;
  }
  const own = variety ?? index.registry.find(planting.fields.variety);
  const key = inGarden(planting.fields.variety, garden, index.own);
  return own ? { variety: own, garden, key, planting, plantings: [planting] } : null;
}
