import type { Estimate } from '../terms/estimate.ts';
import type { Settings } from '../terms/settings.ts';
import { utcMilliseconds } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { traitName, wordsFor } from './words/catalogue.ts';
import type { Words } from './words/english.ts';

/** How figures are written: by the trial's language and the units it shows. */
export interface Writing {
  readonly words: Words;
  readonly trait: (key: string) => string;
  /** A share or level as a percentage, `95 %`. */
  readonly percent: (share: number, decimals?: number) => string;
  readonly number: (value: number, decimals?: number) => string;
  readonly date: (day: Day) => string;
  /** Value and unit of a stored quantity as shown: g, cm, mm in, ounces and inches out where the trial says so. */
  readonly shown: (
    value: number,
    unit: string,
  ) => { readonly value: number; readonly unit: string; readonly decimals: number };
  readonly quantity: (value: number, unit: string) => string;
  /** `1,240 g (1,010 to 1,520)`. */
  readonly interval: (estimate: Pick<Estimate, 'estimate' | 'low' | 'high'>, unit: string) => string;
}

const US: Readonly<Record<string, readonly [unit: string, factor: number, decimals: number]>> = {
  g: ['oz', 1 / 28.349523125, 1],
  cm: ['in', 1 / 2.54, 1],
  mm: ['in', 1 / 25.4, 2],
};
const DECIMALS: Readonly<Record<string, number>> = { g: 0, cm: 1, mm: 1, d: 0, fruits: 1, points: 1 };

function unitWord(unit: string): string {
  if (unit === 'points' || unit === 'fruits') return '';
  return unit === 'd' ? ' days' : ` ${unit}`;
}

/** Makes the writing of a trial. */
export function writingOf(settings: Pick<Settings, 'language' | 'units'>): Writing {
  const formats = new Map<number, Intl.NumberFormat>();
  const number = (value: number, decimals = 0): string => {
    let format = formats.get(decimals);
    if (!format) {
      format = new Intl.NumberFormat(settings.language, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
      });
      formats.set(decimals, format);
    }
    return format.format(value === 0 ? 0 : value);
  };
  const dates = new Intl.DateTimeFormat(settings.language, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const shown: Writing['shown'] = (value, unit) => {
    if (unit === 'share') return { value: value * 100, unit: '%', decimals: 0 };
    const us = settings.units === 'us' ? US[unit] : undefined;
    if (us) return { value: value * us[1], unit: us[0], decimals: us[2] };
    return { value, unit, decimals: DECIMALS[unit] ?? 1 };
  };
  const quantity: Writing['quantity'] = (value, unit) => {
    const out = shown(value, unit);
    return `${number(out.value, out.decimals)}${unitWord(out.unit)}`;
  };
  /** A figure is written to the place where the half-width of its interval has its second digit, never finer than its unit. */
  const roundingStep = (estimate: number, low: number | null, high: number | null, unit: string): number => {
    const finest = 10 ** -shown(0, unit).decimals;
    const ends = [low, high]
      .filter((end) => end !== null)
      .map((end) => Math.abs(shown(end, unit).value - shown(estimate, unit).value));
    const half = Math.max(...ends);
    return half > 0 ? Math.max(finest, 10 ** (Math.floor(Math.log10(half)) - 1)) : finest;
  };
  const plain = (value: number, unit: string, step: number): string => {
    const out = shown(value, unit);
    return number(Math.round(out.value / step) * step, Math.max(0, Math.round(-Math.log10(step))));
  };
  const words = wordsFor(settings.language);
  return {
    words,
    trait: (key) => traitName(key, words),
    percent: (share, decimals = (share * 100) % 1 === 0 ? 0 : 1) => `${number(share * 100, decimals)} %`,
    number,
    date: (day) => dates.format(utcMilliseconds(day)),
    shown,
    quantity,
    interval({ estimate, low, high }, unit) {
      if (estimate === null) return low === null && high === null ? 'not known' : 'not reached';
      if (low === null && high === null) return quantity(estimate, unit);
      const step = roundingStep(estimate, low, high, unit);
      const end = (value: number | null): string => (value === null ? 'not reached' : plain(value, unit, step));
      return `${plain(estimate, unit, step)}${unitWord(shown(0, unit).unit)} (${end(low)} to ${end(high)})`;
    },
  };
}
