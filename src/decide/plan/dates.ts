import { degreeDaysOf } from '../../analyse/degreeDays.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import { dayOf, isDay, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { DayOfYear } from '../../terms/plan.ts';
import type { Season, Trial, Variety } from '../../terms/trial.ts';
import { middleOf } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { disagrees, frostAfterDay, frostRisk, safeDay } from './frost.ts';
import type { FrostRisk } from './frost.ts';
import { ripeAhead, warmthReached } from './ripening.ts';
import type { DaysExpected, RipeAhead } from './ripening.ts';

const COMMON_YEAR = 2023;

/** Day of a year of 365 days; 29 February counts as 1 March would. */
export function dayOfYear(month: number, date: number): number {
  const start = dayOf(COMMON_YEAR, 1, 1) as Day;
  return (
    (dayOf(COMMON_YEAR, month, month === 2 && date === 29 ? 28 : date) as Day) -
    start +
    1 +
    (month === 2 && date === 29 ? 1 : 0)
  );
}

const ofDay = (day: Day): number => {
  const { month, date } = partsOf(day);
  return dayOfYear(month, date);
};

/** A day of the year in a year. */
export function inYear(day: number, year: number): Day {
  const { month, date } = partsOf(((dayOf(COMMON_YEAR, 1, 1) as Day) + Math.round(day) - 1) as Day);
  return dayOf(year, month, date) as Day;
}

const asDay = ({ month, date }: DayOfYear, year: number): Day => dayOf(year, month, date) as Day;

/** Last day of frost of a season's spring; the day before its record begins where it shows none. Null without weather. */
function lastFrost(
  { weather, plantings, lastDay }: Season,
  frostC: number,
): { readonly day: Day; readonly isBefore: boolean } | null {
  const out = middleOf(plantings.flatMap(({ transplanted }) => transplanted ?? []));
  const [first] = weather;
  if (!first || out === null) return null;
  const until = (out + lastDay) / 2;
  if (first.day >= until) return null;
  const frost = weather.findLast(({ day, tminC }) => day < until && tminC <= frostC);
  return frost ? { day: frost.day, isBefore: false } : { day: (first.day - 1) as Day, isBefore: true };
}

/** What is known of a frost after planting out. */
export interface FrostAhead {
  readonly risk: FrostRisk;
  /** Springs of which the record shows no frost: they count as late as they can be. */
  readonly unseen: number;
  readonly disagrees: boolean;
  /** Days of the year, on average and as stated. */
  readonly recorded: number | null;
  readonly stated: number | null;
  /** First day with no more risk than is set. */
  readonly safe: Day;
}

export function frostAhead({ trial, year }: PlanSource): FrostAhead | null {
  const { plan, frostC } = trial.settings;
  const seen = trial.seasons.flatMap((season) => lastFrost(season, frostC) ?? []);
  const days = seen.map(({ day }) => ofDay(day));
  const stated = plan.lastFrost && {
    day: dayOfYear(plan.lastFrost.day.month, plan.lastFrost.day.date),
    laterIn: plan.lastFrost.laterIn,
  };
  const risk = frostRisk(days, stated);
  return (
    risk && {
      risk,
      unseen: seen.filter(({ isBefore }) => isBefore).length,
      disagrees: disagrees(days, stated),
      recorded: middleOf(days),
      stated: stated?.day ?? null,
      safe: inYear(safeDay(risk, plan.frostRisk), year),
    }
  );
}

/** Days of a class: sown, potted on, hardened off, planted out. */
export interface ClassDates {
  readonly classId: string;
  readonly plantOut: Day | null;
  readonly sow: Day | null;
  readonly potOn: Day | null;
  readonly hardenOff: Day | null;
  /** Chance of a frost after planting out; null where nothing is known. */
  readonly frost: number | null;
}

/** Weeks from sowing to planting out. Common practice, no source. */
function usualWeeks(species: string | null): number {
  const name = (species ?? '').toLowerCase();
  if (name.startsWith('capsicum annuum')) return 9;
  if (name.startsWith('capsicum')) return 11;
  if (name.startsWith('solanum lycopersicum')) return 7;
  return name.startsWith('solanum melongena') ? 9 : 8;
}

/** Weeks after sowing at which seedlings are potted on, and days before planting out at which they are hardened off. */
const POT_ON_WEEKS = 4;
const HARDEN_DAYS = 10;

function raisingDays({ trial }: PlanSource, classId: string, varieties: readonly Variety[]): number {
  const own = trial.settings.classes.get(classId);
  const set = trial.settings.plan.raiseWeeks.get(classId) ?? own?.sowWeeksBefore ?? null;
  if (set !== null) return Math.round(7 * set);
  const ids = new Set<string>(varieties.map(({ id }) => id));
  const past = middleOf(
    trial.seasons.flatMap(({ plantings }) =>
      plantings.flatMap(({ variety, sown, transplanted }) =>
        ids.has(variety) && sown !== null && transplanted !== null ? [transplanted - sown] : [],
      ),
    ),
  );
  return past ?? 7 * usualWeeks(varieties[0]?.species ?? null);
}

/** Middle days on which a class was sown and planted out in a season that has begun. */
function daysOfSeason(season: Season | null, classId: string, { varieties }: Pick<Trial, 'varieties'>) {
  const ids = new Set<string>(varieties.filter((own) => own.classId === classId).map(({ id }) => id));
  const own = (season?.plantings ?? []).filter(({ variety }) => ids.has(variety));
  const middle = (days: readonly (Day | null)[]): Day | null => middleOf(days.filter(isDay)) as Day | null;
  return {
    sow: middle(own.map(({ sown }) => sown)),
    plantOut: middle(own.map(({ transplanted }) => transplanted)),
  };
}

export function classDates(source: PlanSource, classId: string, frost: FrostAhead | null): ClassDates {
  const { trial, year, hasBegun } = source;
  const { plantOut: set } = trial.settings.plan;
  const varieties = trial.varieties.filter((own) => own.classId === classId);
  const past = middleOf(
    trial.seasons.flatMap(({ plantings }) =>
      plantings.flatMap(({ transplanted }) => (transplanted ? [ofDay(transplanted)] : [])),
    ),
  );
  const own = hasBegun ? daysOfSeason(trial.planned, classId, trial) : null;
  const plantOut = own?.plantOut
    ? own.plantOut
    : set
      ? asDay(set, year)
      : past === null
        ? (frost?.safe ?? null)
        : inYear(past, year);
  if (plantOut === null) return { classId, plantOut, sow: null, potOn: null, hardenOff: null, frost: null };
  const raising = raisingDays(source, classId, varieties);
  const sow = own?.sow ?? ((plantOut - raising) as Day);
  return {
    classId,
    plantOut,
    sow,
    potOn: raising > 7 * POT_ON_WEEKS + HARDEN_DAYS ? ((sow + 7 * POT_ON_WEEKS) as Day) : null,
    hardenOff: raising > HARDEN_DAYS ? ((plantOut - HARDEN_DAYS) as Day) : null,
    frost: frost && frostAfterDay(frost.risk, ofDay(plantOut)),
  };
}

/** When a variety is to be ripe. */
export interface VarietyAhead extends RipeAhead {
  readonly days: DaysExpected;
  /** True for one that was never tried: its class's middle stands for it. */
  readonly isClass: boolean;
  /** When it would have ripened in the warmth of each season recorded. */
  readonly inWarmthOf: readonly { readonly year: number; readonly day: Day }[];
}

/** Expected days to first ripe fruit of a variety, else of its class's middle; null where nothing is known. */
function daysOf({ next, trial }: PlanSource, variety: string, classId: string) {
  const forecast = next?.forecasts.get('first_ripe');
  const own = forecast?.expected.classes.find((one) => one.classId === classId);
  if (!forecast || !own) return null;
  const found = own.varieties.find((one) => one.variety === variety);
  if (found) {
    const days = { estimate: Math.exp(found.mean), low: Math.exp(found.low), high: Math.exp(found.high) };
    return { days, isClass: false };
  }
  const half =
    normalQuantile((1 + trial.settings.interval) / 2) *
    Math.hypot(forecast.expected.between, forecast.expected.withSeason);
  const [low, high] = [Math.exp(own.classMean - half), Math.exp(own.classMean + half)];
  return { days: { estimate: Math.exp(own.classMean), low, high }, isClass: true };
}

/** Days on which a variety would have been ripe in the warmth of past seasons, planted out as it will be. */
function inWarmth({ trial, seasons }: PlanSource, variety: string, plantOut: Day): VarietyAhead['inWarmthOf'] {
  const needed = middleOf(
    seasons.flatMap((seen) => {
      const curve = seen.varieties.find((own) => own.variety.id === variety)?.ripeningDegreeDays;
      const estimate = curve?.median.estimate ?? null;
      return estimate === null ? [] : [estimate];
    }),
  );
  if (needed === null) return [];
  return trial.seasons.flatMap(({ year, weather, lastDay }) => {
    const { month, date } = partsOf(plantOut);
    const from = dayOf(year, month, date);
    const daily = new Map(
      weather.map((own) => [own.day, degreeDaysOf(own.tminC, own.tmaxC, trial.settings.degreeDays)]),
    );
    const day = from === null ? null : warmthReached(from, needed, (own) => daily.get(own) ?? null, lastDay);
    return day === null ? [] : [{ year, day }];
  });
}

/** When a variety is to be ripe, planted out on a day; null where nothing is known of its class. */
export function varietyAhead(source: PlanSource, variety: string, dates: ClassDates): VarietyAhead | null {
  const { settings } = source.trial;
  const known = daysOf(source, variety, dates.classId);
  const from = settings.firstRipeFrom === 'sown' ? dates.sow : dates.plantOut;
  if (!known || from === null || dates.plantOut === null) return null;
  const end = settings.seasons.get(source.year)?.end ?? asDay(settings.seasonEnd, source.year);
  const ahead = ripeAhead(known.days, settings.interval, from, end);
  return { ...ahead, ...known, inWarmthOf: inWarmth(source, variety, dates.plantOut) };
}

/** The season's last day. */
export const seasonEnd = ({ trial, year }: PlanSource): Day =>
  trial.settings.seasons.get(year)?.end ?? asDay(trial.settings.seasonEnd, year);
