import type { Place } from '../terms/place.ts';
import { foldId, nearestName } from '../terms/names.ts';
import type { Variety } from '../terms/trial.ts';
import { looksLikeDate } from '../sheet/cells/spreadsheet.ts';
import type { CheckContext } from '../sheet/context.ts';
import type { PlantingDraft } from './draft.ts';
import type { VarietyRegistry } from './registry.ts';
import { varietyIn } from './registry.ts';
import { placeIn, textIn } from '../sheet/row.ts';
import type { Row } from '../sheet/row.ts';
import { nth } from '../numerics/element.ts';

/** The plantings of a season by id and by variety, and those of other seasons by id. */
export interface SeasonIndex {
  readonly byId: ReadonlyMap<string, PlantingDraft>;
  /** Plantings by their id as it was written, filled as rows name them. */
  readonly byWritten: Map<string, PlantingDraft>;
  readonly byVariety: ReadonlyMap<string, readonly PlantingDraft[]>;
  /** Season in which a planting id stands, for ids of other seasons. */
  readonly elsewhere: ReadonlyMap<string, number>;
  readonly registry: VarietyRegistry;
}

/** What a row is about: one planting, or a variety with all its plantings of the season. */
export interface Target {
  readonly variety: Variety;
  readonly planting: PlantingDraft | null;
  readonly plantings: readonly PlantingDraft[];
}

/** True for a planting or variety of the season, whatever word it is called by. */
export function isNamed(text: string, { byId, registry }: SeasonIndex): boolean {
  return byId.has(foldId(text)) || registry.find(text) !== null;
}

export function seasonIndex(
  drafts: readonly PlantingDraft[],
  registry: VarietyRegistry,
  elsewhere: ReadonlyMap<string, number>,
): SeasonIndex {
  const byId = new Map<string, PlantingDraft>();
  const byVariety = new Map<string, PlantingDraft[]>();
  for (const draft of drafts) {
    byId.set(foldId(draft.fields.id), draft);
    byVariety.set(draft.fields.variety, [...(byVariety.get(draft.fields.variety) ?? []), draft]);
  }
  return { byId, byWritten: new Map(), byVariety, elsewhere, registry };
}

function plantingOf(id: string, place: () => Place, index: SeasonIndex, { log }: CheckContext): PlantingDraft | null {
  const known = index.byWritten.get(id);
  if (known) return known;
  const draft = index.byId.get(foldId(id));
  if (draft) {
    index.byWritten.set(id, draft);
    return draft;
  }
  const season = index.elsewhere.get(foldId(id));
  if (season !== undefined) log.add('planting-of-other-season', place(), id, { season: String(season) });
  else if (looksLikeDate(id)) log.add('became-a-date', place(), id, { column: 'planting' });
  else {
    const near = nearestName(
      id,
      [...index.byId.values()].map(({ fields }) => fields.id),
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
  if (id === null) {
    if (!variety) return null;
    const plantings = index.byVariety.get(variety.id);
    if (plantings) return { variety, planting: plantings.length === 1 ? nth(plantings, 0) : null, plantings };
    context.log.add('variety-not-in-season', placeIn(row, 'variety'), name ?? '');
    return null;
  }
  const planting = plantingOf(id, () => placeIn(row, 'planting'), index, context);
  if (!planting || (name !== null && !variety)) return null;
  if (variety && planting.fields.variety !== variety.id) {
    const facts = { planting: id, variety: planting.fields.variety };
    context.log.add('planting-and-variety-differ', placeIn(row, 'variety'), name ?? '', facts);
    return null;
  }
  const own = variety ?? index.registry.find(planting.fields.variety);
  return own ? { variety: own, planting, plantings: [planting] } : null;
}
