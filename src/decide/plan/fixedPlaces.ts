import type { Bed } from '../../terms/plan.ts';
import { fileOnly } from '../../terms/place.ts';
import { nearestName } from '../../terms/names.ts';
import type { ProblemLog } from '../../terms/problem.ts';
import type { Planting } from '../../terms/trial.ts';
import { fixedRows, wishOf } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { spotKey, spotsOfBed } from './stretches.ts';
import type { FixedPlant, Spot } from './stretches.ts';

/** The bed of a row: as named, else the only one; reported where there is none of the name. */
function bedOf(own: Planting, beds: readonly Bed[], log: ProblemLog): Bed | null {
  const bed = own.bed === null && beds.length === 1 ? beds[0] : beds.find(({ id }) => id === own.bed);
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
    const spot: Spot = { bed, row, column };
    const at = { row: String(row), column: String(column), bed: bed.id };
    if (!spotsOfBed(bed).some((one) => spotKey(one) === spotKey(spot))) {
      log.add('plan-place-outside', own.place, own.id, { ...at, rows: String(bed.rows), columns: String(bed.columns) });
      continue;
    }
    const other = taken.get(spotKey(spot));
    if (other) {
      log.add('plan-place-twice', own.place, own.id, { ...at, line: String(other.place.line ?? '') });
      continue;
    }
    taken.set(spotKey(spot), own);
    const classId = trial.varieties.find(({ id }) => id === own.variety)?.classId ?? 'all';
    fixed.push({ variety: own.variety, classId, spot });
  }
  return fixed;
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
      const bed = beds.find(({ id }) => id === wish.bed);
      if (!bed) {
        log.add('plan-bed-unknown', wish.place, wish.bed, { beds: beds.map(({ id }) => id).join(', ') });
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
      for (let i = 0; i < wanted; i++) {
        const spot = free[Math.floor(((i + 0.5) * free.length) / wanted)];
        if (!spot) continue;
        taken.add(spotKey(spot));
        added.push({ variety, classId, spot });
      }
    }
  return added;
}

/** Where the rows of a season stand in its file, for problems about all of them. */
export const planFile = (year: number) => fileOnly(`data/${year}`);
