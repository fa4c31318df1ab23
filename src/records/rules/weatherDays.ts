import { isoDate, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { Place } from '../../terms/place.ts';
import { fileOnly } from '../../terms/place.ts';
import type { WeatherDay } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { middle } from './groups.ts';
import type { SeasonSpan } from './seasonDays.ts';

/** Longer gaps are not interpolated (methods.md A3) [d]. */
const LONGEST_GAP = 3;
/** The middle of the season's highest temperatures lies between these where anything is grown for its fruit [°C]. */
const COOLEST_SUMMER = 8;
const HOTTEST_SUMMER = 45;

/** Days of the weather with the place of each. */
export interface PlacedDay {
  readonly own: WeatherDay;
  readonly place: Place;
}

/** The season that weather is wanted for. */
export interface WeatherSpan {
  readonly span: SeasonSpan;
  /** First day on which anything was planted out; null where that is not known. */
  readonly from: Day | null;
}

/** Warns of days of other years, of gaps in the time of growing, and of a summer that none was. */
export function reportWeather(
  days: readonly PlacedDay[],
  { span, from, file }: WeatherSpan & { readonly file: string },
  { log }: CheckContext,
): void {
  const years = new Set([span.firstDay, span.lastDay].map((day) => partsOf(day).year));
  const isOther = ({ own }: PlacedDay): boolean => !years.has(partsOf(own.day).year);
  const strange = days.filter(isOther);
  if (strange.length > 0) {
    const facts = { from: isoDate(span.firstDay), to: isoDate(span.lastDay) };
    log.add(
      'weather-of-other-year',
      strange.map(({ place }) => place),
      '',
      facts,
    );
  }
  const inside = days.filter(({ own }) => own.day <= span.lastDay && (from === null || own.day >= from));
  let last = from === null ? null : ((from - 1) as Day);
  for (const { own, place } of inside) {
    const missing = last === null ? 0 : own.day - last - 1;
    if (missing > LONGEST_GAP) {
      const facts = { days: String(missing), from: isoDate((last! + 1) as Day), to: isoDate((own.day - 1) as Day) };
      log.add('weather-gap', place, '', facts);
    }
    last = own.day;
  }
  if (inside.length < 30) return;
  const high = middle(inside.map(({ own }) => own.tmaxC));
  if (high < COOLEST_SUMMER || high > HOTTEST_SUMMER)
    log.add('weather-unlikely', fileOnly(file), `${Math.round(high)} °C`);
}
