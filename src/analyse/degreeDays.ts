import type { Settings } from '../terms/settings.ts';
import type { WeatherDay } from '../terms/trial.ts';

/** A gap of so many days in the weather is bridged; a longer one has no degree days. */
const LONGEST_GAP = 3;

/**
 * Degree days of one day.
 *
 * @param tminC  lowest temperature [°C]
 * @param tmaxC  highest temperature [°C]
 * @returns      degree days [°C d], ≥ 0
 * @source McMaster & Wilhelm (1997), Agric. For. Meteorol. 87:291-300, methods 1 and 2; the cap as in maize "86/50"
 */
export function degreeDaysOf(tminC: number, tmaxC: number, { baseC, capC, method }: Settings['degreeDays']): number {
  const cap = (value: number): number => (capC === null ? value : Math.min(value, capC));
  if (method === 1) return Math.max(0, cap((tminC + tmaxC) / 2) - baseC);
  const bounded = (value: number): number => Math.max(baseC, cap(value));
  return (bounded(tminC) + bounded(tmaxC)) / 2 - baseC;
}

/** Degree days from one day to another, the first counted, the second not; null where the weather has a gap. */
export type DegreeDayClock = (from: number, to: number) => number | null;

/**
 * Clock of a season in degree days.
 *
 * @param weather  days in order; up to 3 missing days in a row are interpolated
 * @returns        the clock, or null without weather
 */
export function degreeDayClock(
  weather: readonly WeatherDay[],
  settings: Settings['degreeDays'],
): DegreeDayClock | null {
  if (weather.length === 0) return null;
  const daily = new Map<number, number>();
  weather.forEach((day, i) => {
    const own = degreeDaysOf(day.tminC, day.tmaxC, settings);
    daily.set(day.day, own);
    const next = weather[i + 1];
    const gap = next ? next.day - day.day - 1 : 0;
    if (!next || gap === 0 || gap > LONGEST_GAP) return;
    const after = degreeDaysOf(next.tminC, next.tmaxC, settings);
    for (let k = 1; k <= gap; k++) daily.set(day.day + k, own + ((after - own) * k) / (gap + 1));
  });
  return (from, to) => {
    let sum = 0;
    for (let day = from; day < to; day++) {
      const own = daily.get(day);
      if (own === undefined) return null;
      sum += own;
    }
    return sum;
  };
}
