import { isoDate, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { isCrossedByHand, isLotOf } from '../../terms/lines.ts';
import type { SeedLot, SeedPlant } from '../../terms/lines.ts';
import { foldId } from '../../terms/names.ts';
import { pickingsOf, sownOf, totalsOf } from '../../terms/record.ts';
import type { Place } from '../../terms/place.ts';
import type { Planting, Season, Variety } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';

/** The planting that a plant for seed is; undefined where none is recorded. */
export function plantOf({ season, planting }: SeedPlant, seasons: readonly Season[]): Planting | undefined {
  return seasons.find(({ year }) => year === season)?.plantings.find(({ id }) => foldId(id) === foldId(planting));
}

/** Day of the first ripe fruit that is recorded; null where none is. */
function firstRipe(plant: Planting): number | null {
  const days = [
    totalsOf(plant)?.firstRipe ?? null,
    ...plant.events.filter(({ event }) => event === 'first-ripe').map(({ day }) => day),
    ...pickingsOf(plant)
      .filter(({ ripe }) => ripe.fruits > 0 || ripe.grams > 0)
      .map(({ day }) => day),
  ].filter((day) => day !== null);
  return days.length === 0 ? null : Math.min(...days);
}

/** Reports a lot that was sown before it was saved, or after it was gone. */
function reportTimes(
  { id, saved, goneIn }: SeedLot,
  { year, sown, place }: { readonly year: number; readonly sown: Day | null; readonly place: Place },
  log: CheckContext['log'],
): void {
  const isEarly = saved !== null && (sown === null ? year < partsOf(saved).year : sown < saved);
  if (isEarly && saved !== null)
    log.add('test-before-saved', place, sown === null ? String(year) : isoDate(sown), { saved: isoDate(saved) });
  if (goneIn !== null && year > goneIn) log.add('lot-gone', place, id, { gone: String(goneIn) });
}

/**
 * Reports what is wrong or doubtful with seed lots and what was sown of them, and finds what grows from each.
 *
 * @param varieties  with their parents resolved
 */
export function checkLots(
  lots: ReadonlyMap<string, SeedLot>,
  varieties: readonly Variety[],
  seasons: readonly Season[],
  { log }: CheckContext,
): readonly SeedLot[] {
  const resolved = [...lots.values()].map((lot): SeedLot => {
    const from = lot.from.map((own) => {
      const plant = plantOf(own, seasons);
      if (!plant) log.add('from-unknown', lot.place, `${own.season}/${own.planting}`);
      const ripe = plant ? firstRipe(plant) : null;
      if (ripe !== null && lot.saved !== null && lot.saved < ripe && plant)
        log.add('saved-before-ripe', lot.place, lot.id, { ripe: isoDate(ripe as typeof lot.saved) });
      return { ...own, variety: plant?.variety ?? null };
    });
    if (isCrossedByHand(lot) && from.length > 0)
      log.add('lot-crossed', lot.place, lot.id, { father: lot.father ?? '' });
    if (new Set(from.map(({ variety }) => variety)).size > 1) log.add('lot-from-unlike', lot.place, lot.id);
    return { ...lot, from };
  });
  const byId = new Map(resolved.map((lot) => [lot.id, lot]));
  for (const { year, plantings } of seasons) {
    for (const { lot: id, variety: grown, sown, place } of plantings) {
      const lot = id === null ? undefined : byId.get(id);
      if (lot) reportTimes(lot, { year, sown, place }, log);
      const variety = varieties.find((own) => own.id === grown);
      if (lot && variety && !isLotOf(lot, variety))
        log.add('lot-of-other', place, lot.id, {
          variety: lot.variety ?? lot.from.map((own) => `${own.season}/${own.planting}`).join(', '),
        });
    }
  }
  for (const [id, lot] of byId) {
    const seeds = sownOf(id, seasons);
    if (lot.seeds && seeds > lot.seeds)
      log.add('lot-overdrawn', lot.place, String(seeds), { seeds: String(lot.seeds) });
  }
  return resolved;
}
