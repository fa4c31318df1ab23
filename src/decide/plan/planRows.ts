import type { Bed } from '../../terms/plan.ts';
import { foldId } from '../../terms/names.ts';
import { classLookup } from '../../terms/trial.ts';
import type { Planting } from '../../terms/trial.ts';
import { fixedRows } from './asked.ts';
import type { PlanSource } from './asked.ts';
import type { ClassLayout } from './layoutTypes.ts';
import type { PlannedRow } from './planned.ts';
import { spotKey, spotsFrom } from './stretches.ts';
import type { Spot } from './stretches.ts';

/** Names blocks by the bed they lie in: `long bed A`. */
function blockNames(layouts: readonly ClassLayout[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const inBed = new Map<string, number>();
  for (const { classId, plants } of layouts)
    for (const { spot, block } of plants) {
      const key = `${classId}/${block}`;
      if (names.has(key)) continue;
      const at = inBed.get(spot.bed.id) ?? 0;
      inBed.set(spot.bed.id, at + 1);
      const letter = at < 26 ? String.fromCharCode(65 + at) : String(at + 1);
      names.set(key, `${spot.bed.id} ${letter}`);
    }
  return names;
}

/** Order of two places along the beds. */
const along = (a: Spot, b: Spot, beds: readonly Bed[]): number =>
  beds.findIndex(({ id }) => id === a.bed.id) - beds.findIndex(({ id }) => id === b.bed.id) ||
  a.column - b.column ||
  a.row - b.row;

/** Rows of the proposal: the grower's own first, then the rest along the beds, each with an id of its own. */
export function rowsOf(
  source: PlanSource,
  beds: readonly Bed[],
  layouts: readonly ClassLayout[],
): readonly PlannedRow[] {
  const names = blockNames(layouts);
  const placed = layouts.flatMap(({ classId, plants }) =>
    plants.map((own) => ({ ...own, classId, name: names.get(`${classId}/${own.block}`) ?? null })),
  );
  const at = new Map(placed.map((own) => [spotKey(own.spot), own]));
  const own = [...fixedRows(source).values()].flat().toSorted((a, b) => (a.place.line ?? 0) - (b.place.line ?? 0));
  const taken = new Set(own.map(({ id }) => id.toLowerCase()));
  const used = new Set<string>();
  const isFree = (planting: Planting): boolean => planting.row === null || planting.column === null;
  const claim = (planting: Planting) => {
    const bed = beds.find(({ id }) => planting.bed !== null && foldId(id) === foldId(planting.bed)) ?? beds[0];
    const held =
      bed && !isFree(planting)
        ? spotsFrom(bed, planting.row ?? 0, planting.column ?? 0, planting.plants).flatMap(
            (spot) => at.get(spotKey(spot)) ?? [],
          )
        : placed
            .filter((one) => one.variety === planting.variety && !used.has(spotKey(one.spot)))
            .slice(0, planting.plants);
    for (const one of held) used.add(spotKey(one.spot));
    return held[0] ?? null;
  };
  const fixedFirst = [...own.filter((one) => !isFree(one)), ...own.filter(isFree)].map(
    (planting) => [planting, claim(planting)] as const,
  );
  const claimed = new Map(fixedFirst);
  const classOf = classLookup(source.trial.varieties);
  const fixed = own.map((planting): PlannedRow => {
    const found = claimed.get(planting) ?? null;
    const { id, variety, plants } = planting;
    const classId = classOf(variety);
    return { id, variety, classId, plants, spot: found?.spot ?? null, block: found?.name ?? null, fixed: planting };
  });
  const rest = placed
    .filter(({ spot }) => !used.has(spotKey(spot)))
    .toSorted((a, b) => along(a.spot, b.spot, beds))
    .map(({ variety, classId, plants, spot, name }): PlannedRow => {
      let id = variety;
      for (let i = 2; taken.has(id.toLowerCase()); i++) id = `${variety}-${i}`;
      taken.add(id.toLowerCase());
      return { id, variety, classId, plants, spot, block: name, fixed: null };
    });
  return [...fixed, ...rest];
}
