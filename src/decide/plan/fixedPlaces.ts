import type { Bed } from '../../terms/plan.ts';
import { fileOnly } from '../../terms/place.ts';
import { foldId, nearestName } from '../../terms/names.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import type { Planting } from '../../terms/trial.ts';
import { fixedRows, wishOf } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { spotKey, spotsFrom, spotsOfBed } from './stretches.ts';
import type { FixedPlant, Spot } from './stretches.ts';

/** A bed by its name, whatever its letters' case. */
const bedNamed = (name: string | null, beds: readonly Bed[]): Bed | undefined =>
  name === null ? undefined : beds.find(({ id }) => foldId(id) === foldId(name));

/** The bed of a row: as named, else the only one; reported where there is none of the name. */
function bedOf(own: Planting, beds: readonly Bed[], log: ProblemLog): Bed | null {
  const bed = own.bed === null && beds.length === 1 ? beds[0] : bedNamed(own.bed, beds);
  if (bed) return bed;
  const near = nearestName(
    own.bed ?? '',
    beds.map(({ id }) => id),
  );
  const facts = { beds: beds.map(({ id }) => id).join(', '), ...(near === null ? {} : { near }) };
  log.add('plan-bed-unknown', own.place, own.bed ?? '', facts);
  return null;
}

/** Plants that their grower put in a place, each reported where that is no place, or taken. */
export function fixedPlants(source: PlanSource, beds: readonly Bed[], log: ProblemLog): readonly FixedPlant[] {
  const { trial } = source;
  const taken = new Map<string, Planting>();
  const fixed: FixedPlant[] = [];
  for (const own of [...fixedRows(source).values()]
    .flat()
    .toSorted((a, b) => (a.place.line ?? 0) - (b.place.line ?? 0))) {
    const { row, column } = own;
    if (row === null || column === null) continue;
    const bed = bedOf(own, beds, log);
    if (!bed) continue;
    const at = { row: String(row), column: String(column), bed: bed.id };
    const spots = spotsFrom(bed, row, column, own.plants);
    if (spots.length < own.plants) {
      log.add('plan-place-outside', own.place, own.id, { ...at, rows: String(bed.rows), columns: String(bed.columns) });
      continue;
    }
    const other = spots.map((spot) => taken.get(spotKey(spot))).find((one) => one !== undefined);
    if (other) {
      log.add('plan-place-twice', own.place, own.id, { ...at, line: String(other.place.line ?? '') });
      continue;
    }
    const classId = trial.varieties.find(({ id }) => id === own.variety)?.classId ?? 'all';
    for (const spot of spots) {
      taken.set(spotKey(spot), own);
      fixed.push({ variety: own.variety, classId, spot });
    }
  }
  return fixed;
}

/** So many of some places, each as far from those before as can be. */
function farApart(spots: readonly Spot[], count: number): readonly Spot[] {
  const chosen: Spot[] = [];
  const apart = (a: Spot, b: Spot): number => Math.hypot(a.row - b.row, a.column - b.column);
  while (chosen.length < count) {
    const left = spots.filter((spot) => !chosen.includes(spot));
    const least = (spot: Spot): number => Math.min(...chosen.map((own) => apart(own, spot)));
    const [first, ...rest] = left;
    if (!first) break;
    chosen.push(
      chosen.length === 0 ? first : rest.reduce((best, own) => (least(own) > least(best) ? own : best), first),
    );
  }
  return chosen;
}

/** Places for varieties that are wished into a bed: as far apart along it as it allows. */
export function wishedPlaces(
  source: PlanSource,
  beds: readonly Bed[],
  grown: readonly (readonly [classId: string, varieties: ReadonlyMap<string, number>])[],
  fixed: readonly FixedPlant[],
  log: ProblemLog,
): readonly FixedPlant[] {
  const taken = new Set(fixed.map(({ spot }) => spotKey(spot)));
  const added: FixedPlant[] = [];
  for (const [classId, varieties] of grown)
    for (const [variety, plants] of varieties) {
      const wish = wishOf(source, variety);
      if (!wish || wish.bed === null) continue;
      const bed = bedNamed(wish.bed, beds);
      if (!bed) {
        const names = beds.map(({ id }) => id);
        const near = nearestName(wish.bed, names);
        const facts = { beds: names.join(', '), ...(near === null ? {} : { near }) };
        log.add('plan-bed-unknown', wish.place, wish.bed, facts);
        continue;
      }
      const standing = fixed.filter((own) => own.variety === variety).length;
      const free = spotsOfBed(bed).filter((spot) => !taken.has(spotKey(spot)));
      const wanted = plants - standing;
      if (free.length < wanted) {
        const facts = { class: classId, plants: String(wanted), places: String(free.length) };
        log.add('plan-class-no-place', wish.place, variety, facts);
        continue;
      }
      for (const spot of farApart(free, wanted)) {
        taken.add(spotKey(spot));
        added.push({ variety, classId, spot });
      }
    }
  return added;
}

/** Where the rows of a season stand in its file, for problems about all of them. */
export const planFile = (year: number) => fileOnly(`data/${year}`);
