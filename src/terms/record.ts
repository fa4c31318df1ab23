import type { Day } from './day.ts';
import type { Picked, Picking, PlantingRecord } from './picked.ts';
import type { Planting, Season } from './trial.ts';

/** Pickings of a planting, in order of days; rows without a day come first. */
export function pickingsOf({ record }: Pick<Planting, 'record'>): readonly Picking[] {
  return record.kind === 'nothing' ? [] : record.pickings;
}

/** What totals.csv says of a planting; null where it is known from pickings, or not at all. */
export function totalsOf({ record }: Pick<Planting, 'record'>): Extract<PlantingRecord, { kind: 'totals' }> | null {
  return record.kind === 'totals' ? record : null;
}

/** Up to this share of a planting's fruits may lack a weight: it is made up from the mean of the others. */
const UNWEIGHED_AT_MOST = 0.25;

/** True where too many fruits were not weighed to make up their weight. Common practice, no source. */
export function isTooManyUnweighed(unweighed: number, fruits: number): boolean {
  return unweighed > UNWEIGHED_AT_MOST * fruits;
}

/** Whether a planting that yielded nothing was looked at: what the absence of a picking means. */
export type PickRecord = 'picked' | 'nothing' | 'not-recorded';

/**
 * What is known of a planting's yield: picked, known to have given nothing, or not recorded.
 *
 * @param season  the planting's own; says whether its harvests are complete
 * @source methods page A1
 */
export function pickRecord(planting: Planting, season: Season): PickRecord {
  if (pickingsOf(planting).length > 0) return 'picked';
  const { removed, cause, events } = planting;
  const lost = events.some(({ event }) => event === 'lost');
  const removedEarly = removed !== null && removed < season.lastDay && cause !== 'season-end';
  const nothing = events.some(({ event }) => event === 'nothing-picked');
  return lost || removedEarly || nothing || season.harvestsComplete ? 'nothing' : 'not-recorded';
}

/** True for fruit of any number or weight, a limit or a trace among them. */
export function gaveSomething({ fruits, grams, fruitsOpen, gramsOpen, traces }: Picked): boolean {
  return fruits > 0 || grams > 0 || fruitsOpen + gramsOpen + traces > 0;
}

/** True where ripe fruit was picked and none of it has a date: it ripened, and when is not known. */
export function hasUndatedRipening(planting: Planting): boolean {
  const ripe = pickingsOf(planting).filter((own) => gaveSomething(own.ripe));
  return ripe.length > 0 && ripe.every(({ day }) => day === null);
}

/** True in a season in which anybody recorded ripening: harvests, a dated picking of ripe fruit, a look, a first ripe day. */
export function isRipeningRecorded({ ripeningUnits, hasHarvests }: Season): boolean {
  if (hasHarvests) return true;
  return ripeningUnits.some(
    (planting) =>
      (totalsOf(planting)?.firstRipe ?? null) !== null ||
      planting.events.some(({ event }) => event === 'first-ripe' || event === 'unripe') ||
      pickingsOf(planting).some(({ day, ripe }) => day !== null && gaveSomething(ripe)),
  );
}

/**
 * True for a planting of which it is known when it ripened, or that it did not while it stood: in a season in which
 * ripening was recorded every planting with a record of its own, a removal among them; not one whose ripe fruit has no
 * date.
 *
 * @param isRecorded  what `isRipeningRecorded` says of the season
 * @source methods page A3
 */
export function isRipeningKnown(planting: Planting, season: Season, isRecorded: boolean): boolean {
  const { events, removed } = planting;
  const totals = totalsOf(planting);
  if ((totals !== null && totals.firstRipe !== null) || events.some(({ event }) => event === 'first-ripe')) return true;
  if (!isRecorded || hasUndatedRipening(planting)) return false;
  const isComplete = totals === null && season.hasHarvests && season.harvestsComplete;
  return isComplete || pickingsOf(planting).length > 0 || events.length > 0 || removed !== null;
}

/** Whether anything but plantings and weather was recorded, and the last day on which anything was. */
export function recordsOf(season: Season): { readonly any: boolean; readonly last: Day | null } {
  let any = false;
  let last: Day | null = null;
  const see = (day: Day | null): void => {
    any = true;
    if (day !== null && (last === null || day > last)) last = day;
  };
  for (const unit of new Set([...season.plantings, ...season.yieldUnits, ...season.ripeningUnits])) {
    if (unit.record.kind === 'pickings') see(unit.record.last);
    else for (const { day } of pickingsOf(unit)) see(day);
    for (const { day } of unit.events) see(day);
    if (unit.removed !== null) see(unit.removed);
  }
  for (const { day } of season.scores) see(day);
  for (const { day } of season.measurements) see(day);
  if (season.answers.length > 0) see(null);
  const found = any;
  for (const { day } of season.weather) see(day);
  return { any: found, last };
}

/** Seeds sown of a lot: those counted in a season, at least as many as there are plants of it. */
export function sownOf(lot: string, seasons: readonly Season[]): number {
  const sum = (numbers: readonly number[]): number => numbers.reduce((total, own) => total + own, 0);
  return sum(
    seasons.map(({ seedBatches, plantings }) => {
      const counted = sum(seedBatches.filter((own) => own.lot === lot).map(({ seeds }) => seeds));
      return Math.max(counted, sum(plantings.filter((own) => own.lot === lot).map(({ plants }) => plants)));
    }),
  );
}
