import type { Picked, Picking, Planting, Season } from '../../terms/trial.ts';
import type { CheckContext } from '../context.ts';

/** Whether a planting that yielded nothing was looked at: what the absence of a picking means. */
export type PickRecord = 'picked' | 'nothing' | 'not-recorded';

/** What is known of a planting's yield: picked, known to have given nothing, or not recorded. */
export function pickRecord(
  planting: Planting,
  season: Season,
  pickings: readonly Picking[] = planting.pickings,
): PickRecord {
  if (pickings.length > 0) return 'picked';
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
export function hasUndatedRipening({ pickings }: Pick<Planting, 'pickings'>): boolean {
  const ripe = pickings.filter((own) => gaveSomething(own.ripe));
  return ripe.length > 0 && ripe.every(({ day }) => day === null);
}

/** True in a season in which anybody recorded ripening: harvests, a dated picking of ripe fruit, a look, a first ripe day. */
export function isRipeningRecorded({ ripeningUnits, hasHarvests }: Season): boolean {
  if (hasHarvests) return true;
  return ripeningUnits.some(
    ({ events, pickings, totals }) =>
      (totals !== null && totals.firstRipe !== null) ||
      events.some(({ event }) => event === 'first-ripe' || event === 'unripe') ||
      pickings.some(({ day, ripe }) => day !== null && gaveSomething(ripe)),
  );
}

/**
 * True for a planting of which it is known when it ripened, or that it did not while it stood: in a season in which
 * ripening was recorded every planting with a record of its own, a removal among them; not one whose ripe fruit has no
 * date.
 */
export function isRipeningKnown(planting: Planting, season: Season, isRecorded: boolean): boolean {
  const { events, pickings, totals, removed } = planting;
  if ((totals !== null && totals.firstRipe !== null) || events.some(({ event }) => event === 'first-ripe')) return true;
  if (!isRecorded || hasUndatedRipening(planting)) return false;
  const isComplete = totals === null && season.hasHarvests && season.harvestsComplete;
  return isComplete || pickings.length > 0 || events.length > 0 || removed !== null;
}

/** Warns, where no table of harvests does, of plantings of which nothing is known in a season that recorded ripening. */
function reportRipeningUnknown(season: Season, { log }: CheckContext): void {
  if (season.hasHarvests || !isRipeningRecorded(season)) return;
  const unknown = season.ripeningUnits.filter(
    (planting) => planting.cause !== 'accident' && !isRipeningKnown(planting, season, true),
  );
  if (unknown.length > 0)
    log.add(
      'ripening-not-recorded',
      unknown.map(({ place }) => place),
      unknown.map(({ id }) => id).join(', '),
    );
}

/** Warns of plantings without pickings in a season with harvests, where nothing says that they gave nothing. */
export function reportNotRecorded(season: Season, context: CheckContext): void {
  reportRipeningUnknown(season, context);
  if (!season.hasHarvests) return;
  const { log } = context;
  // Who only counts fruit leaves no weight out.
  const isWeighed = season.yieldUnits.some(({ pickings }) =>
    pickings.some(({ ripe, green }) => ripe.grams + green.grams + ripe.gramsOpen + green.gramsOpen > 0),
  );
  for (const planting of season.yieldUnits) {
    if (planting.totals || planting.cause === 'accident') continue;
    const { pickings } = planting;
    const isNoted = planting.events.some(({ event }) => event === 'first-ripe');
    if (hasUndatedRipening({ pickings }) && !isNoted) log.add('ripening-not-dated', planting.place, planting.id);
    if (pickRecord(planting, season, pickings) === 'not-recorded')
      log.add('yield-not-recorded', planting.place, planting.id);
    let [fruits, unweighed, uncounted] = [0, 0, false];
    // Of a figure over a limit its own message says that it is not known.
    const hasOpen = (of: 'fruitsOpen' | 'gramsOpen'): boolean =>
      pickings.some(({ ripe, green }) => ripe[of] + green[of] > 0);
    for (const { ripe, green } of pickings) {
      fruits += ripe.fruits + green.fruits;
      unweighed += ripe.fruitsUnweighed + green.fruitsUnweighed;
      uncounted ||= ripe.gramsUncounted > 0 || green.gramsUncounted > 0;
    }
    if (isWeighed && fruits > 0 && unweighed > 0 && !hasOpen('gramsOpen')) {
      const share = Math.round((100 * unweighed) / fruits);
      const facts = { unweighed: String(unweighed), fruits: String(fruits), percent: String(share) };
      log.add(
        unweighed > 0.25 * fruits ? 'too-many-unweighed' : 'unweighed-fruits',
        planting.place,
        planting.id,
        facts,
      );
    }
    if (uncounted && fruits > 0 && !hasOpen('fruitsOpen')) log.add('fruits-not-recorded', planting.place, planting.id);
  }
}

/** Warns of plantings without the date that days are counted from. */
export function reportNoStart(season: Season, context: CheckContext): void {
  const from = context.settings.firstRipeFrom;
  for (const planting of season.ripeningUnits) {
    const hasRipe = planting.totals
      ? planting.totals.firstRipe !== null
      : planting.events.some(({ event }) => event === 'first-ripe' || event === 'unripe') ||
        planting.pickings.some(({ day }) => day !== null);
    if (hasRipe && planting[from] === null)
      context.log.add('no-start-date', planting.place, planting.id, { column: from });
  }
}
