import type { Season } from '../../terms/trial.ts';
import type { Weeks } from './days.ts';

interface Warmth {
  /** Mean of the nights' and of the days' temperatures, °C. */
  readonly low: number;
  readonly high: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, own) => sum + own, 0) / values.length;

/** Warmth and rain of weeks; a week without a record is null in `warm`. Rain is null where nobody recorded any. */
export function weatherByWeek(
  { weather }: Season,
  weeks: Weeks,
): { readonly warm: readonly (Warmth | null)[]; readonly rain: readonly number[] | null } | null {
  const own = Array.from({ length: weeks.count }, (_, i) => weather.filter(({ day }) => weeks.indexOf(day) === i));
  if (own.every((days) => days.length === 0)) return null;
  return {
    warm: own.map((days) =>
      days.length === 0
        ? null
        : { low: mean(days.map(({ tminC }) => tminC)), high: mean(days.map(({ tmaxC }) => tmaxC)) },
    ),
    rain: weather.some(({ rainMm }) => rainMm !== null)
      ? own.map((days) => days.reduce((sum, { rainMm }) => sum + (rainMm ?? 0), 0))
      : null,
  };
}
