import type { Day } from '../terms/day.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Settings } from '../terms/settings.ts';
import type { Cause, Planting, Season } from '../terms/trial.ts';
import { kaplanMeier, survivalQuantile } from '../numerics/kaplanMeier.ts';
import { gaveSomething, isRipeningKnown, isRipeningRecorded, pickingsOf, totalsOf } from '../terms/record.ts';
import type { SurvivalStep } from '../numerics/kaplanMeier.ts';

/** When a planting ripened, or how long it was seen unripe; days from its start. */
export interface Ripening {
  readonly unit: Planting;
  /** Days to the first ripe fruit; null if never ripe while it was watched. */
  readonly ripe: number | null;
  /** Days on which it was last known to be unripe before that; null where no look was recorded. */
  readonly lastUnripe: number | null;
  /** Days to its removal; in the curve to the end of the season where it was lost to disease, pests or weakness. */
  readonly watchedInCurve: number;
  readonly watchedInModel: number;
}

export interface RipeningCurve {
  readonly ripe: number;
  readonly unripe: number;
  /** Those of the unripe that were lost by accident. */
  readonly accidents: number;
  readonly median: Estimate;
  readonly steps: readonly SurvivalStep[];
}

function firstRipeDay(unit: Planting): Day | null {
  const picked = pickingsOf(unit).flatMap(({ day, ripe }) => (day !== null && gaveSomething(ripe) ? [day] : []));
  const seen = unit.events.filter(({ event }) => event === 'first-ripe').map(({ day }) => day);
  const told = totalsOf(unit)?.firstRipe;
  const days = [...picked, ...seen, ...(told ? [told] : [])];
  return days.length > 0 ? (Math.min(...days) as Day) : null;
}

/** Last day on which a planting stood; from `removed`, else from an event `lost`. */
function standsUntil(unit: Planting, end: Day): Day {
  const lost = unit.events.find(({ event }) => event === 'lost')?.day ?? null;
  const removed = unit.removed ?? lost;
  return removed === null || removed > end ? end : removed;
}

/** A planting lost to these can never ripen, however long it is waited for. */
const LOSSES: readonly (Cause | null)[] = ['disease', 'pest', 'weak'];

/** True for a planting that died of itself: as unripe it stays to the season's end. */
function isLost({ cause, events }: Planting): boolean {
  return LOSSES.includes(cause) || (cause === null && events.some(({ event }) => event === 'lost'));
}

/**
 * Ripening of every unit that has a start date.
 *
 * @source methods page A3; Kaplan & Meier (1958); Aalen & Johansen (1978) for plants that die
 */
export function seasonRipening(season: Season, settings: Settings): readonly Ripening[] {
  const list: Ripening[] = [];
  const isRecorded = isRipeningRecorded(season);
  for (const unit of season.ripeningUnits) {
    const start = unit[settings.firstRipeFrom];
    if (start === null || !isRipeningKnown(unit, season, isRecorded)) continue;
    const ripe = firstRipeDay(unit);
    const until = standsUntil(unit, season.lastDay);
    const looks = unit.events
      .filter(({ event, day }) => event === 'unripe' && (ripe === null || day < ripe))
      .map(({ day }) => day);
    list.push({
      unit,
      ripe: ripe === null ? null : ripe - start,
      lastUnripe: looks.length > 0 ? Math.max(...looks) - start : null,
      watchedInCurve: (isLost(unit) ? season.lastDay : until) - start,
      watchedInModel: until - start,
    });
  }
  return list;
}

/**
 * Kaplan-Meier curve and median of some plantings, one each.
 *
 * @param list   days to first ripe fruit, or to when a planting was last seen unripe
 * @param level  of the interval of the median, such as 0.95
 * @source methods page A3; Kaplan & Meier (1958) JASA 53:457; Brookmeyer & Crowley (1982) Biometrics 38:29
 */
export function ripeningCurve(list: readonly Ripening[], level: number): RipeningCurve {
  const ripe = list.filter((own) => own.ripe !== null).length;
  const steps = kaplanMeier(
    list.map((own) => own.ripe ?? own.watchedInCurve),
    list.map((own) => own.ripe !== null),
  );
  const { estimate, low, high } = survivalQuantile(steps, 0.5, level);
  const reason = estimate === null ? (ripe === 0 ? 'none-ripened' : 'fewer-than-half-ripened') : null;
  const accidents = list.filter((own) => own.ripe === null && own.unit.cause === 'accident').length;
  return {
    ripe,
    unripe: list.length - ripe,
    accidents,
    steps,
    median: { n: list.length, estimate, low, high, reason },
  };
}
