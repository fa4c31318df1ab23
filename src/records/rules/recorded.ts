import {
  hasUndatedRipening,
  isRipeningKnown,
  isRipeningRecorded,
  isTooManyUnweighed,
  pickingsOf,
  pickRecord,
  totalsOf,
} from '../../terms/record.ts';
import type { Season } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';

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
  const isWeighed = season.yieldUnits.some((unit) =>
    pickingsOf(unit).some(({ ripe, green }) => ripe.grams + green.grams + ripe.gramsOpen + green.gramsOpen > 0),
  );
  for (const planting of season.yieldUnits) {
    if (totalsOf(planting) || planting.cause === 'accident') continue;
    const pickings = pickingsOf(planting);
    const isNoted = planting.events.some(({ event }) => event === 'first-ripe');
    if (hasUndatedRipening(planting) && !isNoted) log.add('ripening-not-dated', planting.place, planting.id);
    if (pickRecord(planting, season) === 'not-recorded') log.add('yield-not-recorded', planting.place, planting.id);
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
        isTooManyUnweighed(unweighed, fruits) ? 'too-many-unweighed' : 'unweighed-fruits',
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
    const totals = totalsOf(planting);
    const hasRipe = totals
      ? totals.firstRipe !== null
      : planting.events.some(({ event }) => event === 'first-ripe' || event === 'unripe') ||
        pickingsOf(planting).some(({ day }) => day !== null);
    if (hasRipe && planting[from] === null)
      context.log.add('no-start-date', planting.place, planting.id, { column: from });
  }
}
