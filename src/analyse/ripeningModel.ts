import { grouped } from '../terms/groups.ts';
import { fUpperTail, tQuantile } from '../numerics/distributions.ts';
import { fitLogNormal } from '../numerics/logNormal.ts';
import type { CensoredTime, LogNormalFit } from '../numerics/logNormal.ts';
import { equalityF } from '../numerics/wald.ts';
import type { Estimate } from '../terms/estimate.ts';
import { guarded } from './guard.ts';
import type { ClassF, ClassMeans } from './plantTypes.ts';
import type { Ripening } from './ripening.ts';
import { togetherFactor } from './units.ts';
import type { Layout } from './units.ts';
import { nth } from '../numerics/element.ts';

/** Days to first ripe fruit by an accelerated failure time model, log-normal, one scale for the season. */
export interface RipeningModel {
  /** By class. */
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly residualDf: number;
  /** Square of the scale of log days, corrected for small samples; null where no spread can be seen. */
  readonly dispersion: number | null;
  readonly spotCorrelation: number;
  readonly estimates: ReadonlyMap<string, Estimate>;
  readonly classes: readonly ClassMeans[];
  readonly f: ReadonlyMap<string, ClassF | null>;
}

export interface RipeningModelOptions {
  readonly level: number;
  readonly spotCorrelation: number;
  readonly layouts: ReadonlyMap<string, Layout>;
  /** Days between looks at the plants: a fruit found ripe may have been ripe for so long. 0: days are exact. */
  readonly lookEvery: number;
  readonly classOf: (variety: string) => string;
}

/** Smallest time that has a logarithm: nothing ripens sooner than half a day after planting out. */
const SHORTEST = 0.5;

/** The times between which a unit ripened, or after which. */
export function timeOf(own: Ripening, group: number, lookEvery: number) {
  if (own.ripe === null) return { low: Math.max(SHORTEST, own.watchedInModel), high: Infinity, group };
  const high = Math.max(SHORTEST, own.ripe);
  if (lookEvery === 0) return { low: high, high, group };
  return { low: Math.max(SHORTEST, own.ripe - lookEvery, own.lastUnripe ?? 0), high, group };
}

function without(list: readonly Ripening[], reason: 'no-residual-df' | 'no-spread'): ReadonlyMap<string, Estimate> {
  const estimates = new Map<string, Estimate>();
  for (const [variety, own] of grouped(list, ({ unit }) => unit.variety)) {
    const logs = own.map((one) => Math.log(Math.max(SHORTEST, one.ripe ?? one.watchedInModel)));
    const isCensored = own.some(({ ripe }) => ripe === null);
    const estimate = isCensored ? null : Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
    estimates.set(variety, { n: own.length, estimate, low: null, high: null, reason });
  }
  return estimates;
}

interface Located {
  readonly varieties: readonly string[];
  readonly locations: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

function byClass(
  { varieties, locations, covariance }: Located,
  classOf: (variety: string) => string,
): readonly ClassMeans[] {
  return [...new Set(varieties.map(classOf))].map((classId) => {
    const own = varieties.flatMap((variety, i) => (classOf(variety) === classId ? [i] : []));
    return {
      classId,
      varieties: own.map((i) => nth(varieties, i)),
      estimates: own.map((i) => nth(locations, i)),
      covariance: own.map((i) => own.map((j) => nth(nth(covariance, i), j))),
    };
  });
}

/** Test of equal varieties of a class. */
export function classF({ estimates, covariance }: ClassMeans, residualDf: number): ClassF | null {
  const test = equalityF(estimates, covariance);
  return test && { value: test.f, df1: test.df1, df2: residualDf, p: fUpperTail(test.f, test.df1, residualDf) };
}

type Bounds = readonly [low: number, high: number];

/** Between which looks each variety's time lies, if it has one time; empty (low not below high) where it has not. */
function boundsOf(times: readonly CensoredTime[], varieties: number): readonly Bounds[] {
  return Array.from({ length: varieties }, (_, group): Bounds => {
    const own = times.filter((time) => time.group === group);
    return [Math.max(...own.map(({ low }) => low)), Math.min(...own.map(({ high }) => high))];
  });
}

function hasRoom([low, high]: Bounds): boolean {
  return low < high && Number.isFinite(high);
}

/** So many spreads between a variety's looks, and the model sees no more than the looks. */
const FLAT = 6;

function middleOf([low, high]: Bounds): number {
  return (Math.log(low) + Math.log(high)) / 2;
}

/** Half of the way between the looks stands for t times the standard error. */
function varianceOf([low, high]: Bounds, t: number): number {
  return (Math.log(high / low) / 2 / t) ** 2;
}

interface AtBoundary {
  readonly used: readonly Ripening[];
  readonly varieties: readonly string[];
  readonly bounds: readonly (readonly [low: number, high: number])[];
  readonly residualDf: number;
  readonly estimates: Map<string, Estimate>;
}

/**
 * Plantings that differ by less than the days between looks have no spread to see: a variety's time lies between its
 * latest look before and its earliest after, and half of that stands for t times its standard error.
 */
function withinLooks(
  { used, varieties, bounds, residualDf, estimates }: AtBoundary,
  how: Pick<RipeningModel, 'layouts' | 'spotCorrelation'>,
  { level, classOf }: RipeningModelOptions,
): RipeningModel {
  const t = tQuantile(0.5 + level / 2, residualDf);
  const locations = bounds.map(middleOf);
  const variances = bounds.map((own) => varianceOf(own, t));
  const units = grouped(used, ({ unit }) => unit.variety);
  varieties.forEach((variety, i) => {
    const n = units.get(variety)?.length ?? 0;
    const [low, high] = nth(bounds, i);
    estimates.set(variety, { n, estimate: Math.exp(nth(locations, i)), low, high, reason: null });
  });
  const covariance = variances.map((own, i) => variances.map((_, j) => (i === j ? own : 0)));
  const classes = byClass({ varieties, locations, covariance }, classOf);
  return { ...how, residualDf, dispersion: null, estimates, classes, f: new Map() };
}

/**
 * The fit corrected for small samples and for plants that stand together; for a variety whose looks lie so far apart
 * that the model tells nothing more, the looks themselves.
 */
function correctedFit(
  fit: LogNormalFit,
  { used, varieties, bounds, residualDf }: Omit<AtBoundary, 'estimates'>,
  { layouts, classOf, spotCorrelation, level }: RipeningModelOptions,
): Located {
  const t = tQuantile(0.5 + level / 2, residualDf);
  const isFlat = bounds.map((own) => hasRoom(own) && Math.log(own[1] / own[0]) > FLAT * fit.sigma);
  const units = grouped(used, ({ unit }) => unit.variety);
  const inflation = varieties.map((variety) => {
    const plants = (units.get(variety) ?? []).reduce((sum, { unit }) => sum + unit.plants, 0);
    return togetherFactor(layouts.get(classOf(variety)), plants, spotCorrelation);
  });
  const factor = (i: number, j: number): number =>
    (used.length / residualDf) * Math.sqrt(nth(inflation, i) * nth(inflation, j));
  return {
    varieties,
    locations: fit.locations.map((at, i) => (isFlat[i] ? middleOf(nth(bounds, i)) : at)),
    covariance: fit.covariance.map((row, i) =>
      row.map((value, j) => {
        if (!isFlat[i] && !isFlat[j]) return value * factor(i, j);
        return i === j ? varianceOf(nth(bounds, i), t) : 0;
      }),
    ),
  };
}

/**
 * Fits the model to the plantings of the varieties of which one at least ripened.
 *
 * @param list     ripening of the season's units
 * @returns        the model; estimates are days, null where no planting of a variety ripened
 * @source methods page A3; Kalbfleisch & Prentice (2002). Small samples: se times √(n / (n - p)), t on n - p
 */
export function fitRipening(list: readonly Ripening[], options: RipeningModelOptions): RipeningModel {
  const ripened = new Set(list.filter(({ ripe }) => ripe !== null).map(({ unit }) => unit.variety));
  const used = list.filter(({ unit }) => ripened.has(unit.variety));
  const varieties = [...ripened];
  const residualDf = used.length - varieties.length;
  const how = { layouts: options.layouts, spotCorrelation: options.spotCorrelation };
  const estimates = new Map<string, Estimate>();
  for (const { unit } of list) {
    const n = (estimates.get(unit.variety)?.n ?? 0) + 1;
    estimates.set(unit.variety, { n, estimate: null, low: null, high: null, reason: 'none-ripened' });
  }
  const times = used.map((own) => timeOf(own, varieties.indexOf(own.unit.variety), options.lookEvery));
  const fit = residualDf > 0 ? fitLogNormal(times, varieties.length) : null;
  const bounds = boundsOf(times, varieties.length);
  if (!fit && residualDf > 0 && bounds.every(hasRoom))
    return withinLooks({ used, varieties, bounds, residualDf, estimates }, how, options);
  if (!fit) {
    for (const [variety, estimate] of without(used, residualDf > 0 ? 'no-spread' : 'no-residual-df'))
      estimates.set(variety, estimate);
    return { ...how, residualDf, dispersion: null, estimates, classes: [], f: new Map() };
  }
  const located = correctedFit(fit, { used, varieties, bounds, residualDf }, options);
  const t = tQuantile(0.5 + options.level / 2, residualDf);
  varieties.forEach((variety, i) => {
    const half = t * Math.sqrt(nth(nth(located.covariance, i), i));
    const location = nth(located.locations, i);
    const [low, high] = [Math.exp(location - half), Math.exp(location + half)];
    const own = times.filter(({ group }) => group === i);
    const days = own.map((time) => (time.high === Infinity ? time.low : time.high));
    estimates.set(variety, guarded({ n: own.length, estimate: Math.exp(location), low, high }, days, true));
  });
  const classes = byClass(located, options.classOf);
  const f = new Map(classes.map((own) => [own.classId, classF(own, residualDf)]));
  const dispersion = (fit.sigma ** 2 * used.length) / residualDf;
  return { ...how, residualDf, dispersion, estimates, classes, f };
}
