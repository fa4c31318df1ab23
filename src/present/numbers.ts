import type { Estimate } from '../terms/estimate.ts';
import type { Settings } from '../terms/settings.ts';
import { utcMilliseconds } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { inBothUnits } from './units.ts';
import { traitName, wordsFor } from './words/catalogue.ts';
import type { Words } from './words/en/index.ts';

/** How figures are written: by the trial's language and the units it shows. */
export interface Writing {
  readonly words: Words;
  readonly trait: (key: string) => string;
  /** A share or level as a percentage, `95 %`. */
  readonly percent: (share: number, decimals?: number) => string;
  readonly number: (value: number, decimals?: number) => string;
  readonly date: (day: Day) => string;
  /** Value and unit of a stored quantity as shown: g, cm, mm in, ounces and inches out where the trial says so. */
  readonly shown: (value: number, unit: string) => ShownQuantity;
  /** `340 g`, with the other system's writing behind marks that `writeUnits` or `plainUnits` resolve. */
  readonly quantity: (value: number, unit: string, decimals?: number) => string;
  /** A value rounded as a figure with its interval is, or with more digits: `1,240 g`. */
  readonly alike: (value: number, limits: Limits, unit: string, more?: number) => string;
  /** `1,240 g (1,010 to 1,520)`, with the other system's writing as in `quantity`. */
  readonly interval: (estimate: Limits, unit: string) => string;
  /** The same in two parts: `1,240 g` and `1,010 to 1,520`; the second empty without an interval. */
  readonly parted: (estimate: Limits, unit: string) => readonly [figure: string, range: string];
}

type UnitSystem = Settings['units'];

type Limits = Pick<Estimate, 'estimate' | 'low' | 'high'>;

interface ShownQuantity {
  readonly value: number;
  readonly unit: string;
  readonly decimals: number;
}

const US: Readonly<Record<string, readonly [unit: string, factor: number, decimals: number]>> = {
  g: ['oz', 1 / 28.349523125, 1],
  kg: ['lb', 1 / 0.45359237, 0],
  cm: ['in', 1 / 2.54, 1],
  mm: ['in', 1 / 25.4, 2],
  rain: ['in', 1 / 25.4, 1],
};
const DECIMALS: Readonly<Record<string, number>> = {
  g: 0,
  kg: 0,
  cm: 1,
  mm: 1,
  d: 0,
  fruits: 1,
  points: 1,
  '°C': 1,
  rain: 0,
};

/** A stored quantity as one system of units shows it. */
function shownIn(value: number, unit: string, system: UnitSystem): ShownQuantity {
  if (unit === 'share') return { value: value * 100, unit: '%', decimals: 0 };
  if (unit === '°C' && system === 'us') return { value: value * 1.8 + 32, unit: '°F', decimals: 0 };
  const us = system === 'us' ? US[unit] : undefined;
  if (us) return { value: value * us[1], unit: us[0], decimals: us[2] };
  return { value, unit: unit === 'rain' ? 'mm' : unit, decimals: DECIMALS[unit] ?? 1 };
}

function unitWord(written: string, unit: string, { figure }: Words): string {
  if (unit === 'points' || unit === 'fruits') return '';
  return ` ${(written === '1' ? figure.unitsOfOne[unit] : undefined) ?? figure.units[unit] ?? unit}`;
}

/**
 * Power of ten to which a figure is written: where the half-width of its interval has its second digit, or the figure
 * itself or its lower limit the first where that is finer, but never finer than its unit.
 */
function lastPlace({ estimate, low, high }: Limits, unit: string, system: UnitSystem): number {
  const shown = (value: number): number => shownIn(value, unit, system).value;
  const { decimals } = shownIn(0, unit, system);
  const ends = [low, high].filter((end) => end !== null).map((end) => Math.abs(shown(end) - shown(estimate!)));
  const half = Math.max(0, ...ends);
  if (half === 0) return -decimals;
  const first = (value: number): number => Math.floor(Math.log10(value));
  const digits = [shown(estimate!), low === null ? 0 : shown(low)].filter((value) => value > 0).map(first);
  return Math.max(-decimals, Math.min(first(half) - 1, ...digits.filter((digit) => digit >= -decimals)));
}

/** Writes numbers of a language with a fixed number of decimals. */
export function numberWriter(language: string): Writing['number'] {
  const formats = new Map<number, Intl.NumberFormat>();
  return (value, decimals = 0) => {
    let format = formats.get(decimals);
    if (!format) {
      format = new Intl.NumberFormat(language, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        // No minus before what is rounded to nothing.
        signDisplay: 'negative',
      });
      formats.set(decimals, format);
    }
    return format.format(value);
  };
}

interface Written {
  readonly quantityIn: (value: number, unit: string, system: UnitSystem, decimals?: number) => string;
  /** With the last place that its interval allows. */
  readonly alikeIn: (value: number, limits: Limits, unit: string, system: UnitSystem, more?: number) => string;
  /** An end of an interval, without its unit. */
  readonly endIn: (value: number | null, limits: Limits, unit: string, system: UnitSystem) => string;
}

/** Quantities in one system of units. */
function writtenIn(words: Words, number: Writing['number']): Written {
  const rounded = (value: number, place: number): string =>
    place > 0 ? number(Math.round(value / 10 ** place) * 10 ** place) : number(value, -place);
  return {
    quantityIn(value, unit, system, decimals) {
      const out = shownIn(value, unit, system);
      const written = number(out.value, decimals ?? out.decimals);
      return `${written}${unitWord(written, out.unit, words)}`;
    },
    alikeIn(value, limits, unit, system, more = 0) {
      const written = rounded(shownIn(value, unit, system).value, lastPlace(limits, unit, system) - more);
      return `${written}${unitWord(written, shownIn(0, unit, system).unit, words)}`;
    },
    endIn: (value, limits, unit, system) =>
      value === null
        ? words.figure.notReached
        : rounded(shownIn(value, unit, system).value, lastPlace(limits, unit, system)),
  };
}

/** Makes the writing of a trial. */
export function writingOf(settings: Pick<Settings, 'language' | 'units'>): Writing {
  const words = wordsFor(settings.language);
  const number = numberWriter(settings.language);
  const dates = new Intl.DateTimeFormat(settings.language, {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const systems: readonly [UnitSystem, UnitSystem] = settings.units === 'us' ? ['us', 'metric'] : ['metric', 'us'];
  const { quantityIn, alikeIn, endIn } = writtenIn(words, number);
  const intervalIn = (estimate: number, limits: Limits, unit: string, system: UnitSystem): string =>
    words.figure.interval(
      alikeIn(estimate, limits, unit, system),
      endIn(limits.low, limits, unit, system),
      endIn(limits.high, limits, unit, system),
    );
  const both = (write: (system: UnitSystem) => string): string => inBothUnits(write(systems[0]), write(systems[1]));
  const partedIn = ({ estimate, low, high }: Limits, unit: string): readonly [string, string] => {
    const limits = { estimate, low, high };
    if (estimate === null) return [words.figure.notKnown, ''];
    if (low === null || high === null) return [both((system) => quantityIn(estimate, unit, system)), ''];
    return [
      both((system) => alikeIn(estimate, limits, unit, system)),
      both((system) => words.figure.range(endIn(low, limits, unit, system), endIn(high, limits, unit, system))),
    ];
  };
  return {
    words,
    trait: (key) => traitName(key, words),
    percent: (share, decimals = (share * 100) % 1 === 0 ? 0 : 1) => `${number(share * 100, decimals)} %`,
    number,
    date: (day) => dates.format(utcMilliseconds(day)),
    shown: (value, unit) => shownIn(value, unit, settings.units),
    quantity: (value, unit, decimals) => both((system) => quantityIn(value, unit, system, decimals)),
    alike: (value, limits, unit, more) => both((system) => alikeIn(value, limits, unit, system, more)),
    parted: (limits, unit) => partedIn(limits, unit),
    interval(limits, unit) {
      const { estimate, low, high } = limits;
      if (estimate === null) return low === null && high === null ? words.figure.notKnown : words.figure.notReached;
      if (low === null && high === null) return both((system) => quantityIn(estimate, unit, system));
      return both((system) => intervalIn(estimate, limits, unit, system));
    },
  };
}
