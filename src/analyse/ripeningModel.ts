import { fUpperTail, tQuantile } from '../numerics/distributions.ts';
import { fitLogNormal } from '../numerics/logNormal.ts';
import type { CensoredTime } from '../numerics/logNormal.ts';
import { equalityF } from '../numerics/wald.ts';
import type { Estimate } from '../terms/estimate.ts';
import { guarded } from './guard.ts';
import type { ClassF, ClassMeans } from './plantTypes.ts';
import type { Ripening } from './ripening.ts';
import { togetherFactor } from './units.ts';
import type { Layout } from './units.ts';

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

/** Smallest time that has a logarithm: a fruit ripe on the day of planting out ripened within half a day. */
const SHORTEST = 0.5;

function timeOf(own: Ripening, group: number, lookEvery: number) {
  if (own.ripe === null) return { low: Math.max(SHORTEST, own.watchedInModel), high: Infinity, group };
  const high = Math.max(SHORTEST, own.ripe);
  if (lookEvery === 0) return { low: high, high, group };
  return { low: Math.max(0, own.ripe - lookEvery, own.lastUnripe ?? 0), high, group };
}

function without(list: readonly Ripening[], reason: 'no-residual-df' | 'no-spread'): ReadonlyMap<string, Estimate> {
  const estimates = new Map<string, Estimate>();
  for (const variety of new Set(list.map(({ unit }) => unit.variety))) {
    const own = list.filter(({ unit }) => unit.variety === variety);
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
      varieties: own.map((i) => varieties[i]!),
      estimates: own.map((i) => locations[i]!),
      covariance: own.map((i) => own.map((j) => covariance[i]![j]!)),
    };
  });
}

function classF({ estimates, covariance }: ClassMeans, residualDf: number): ClassF | null {
  const test = equalityF(estimates, covariance);
  return test && { value: test.f, df1: test.df1, df2: residualDf, p: fUpperTail(test.f, test.df1, residualDf) };
}

/** Where each variety's one time lies where no spread is the likeliest; null where looks leave no room for it. */
function boundsOf(
  times: readonly CensoredTime[],
  varieties: number,
): readonly (readonly [low: number, high: number])[] | null {
  const bounds = Array.from({ length: varieties }, (_, group): readonly [number, number] => {
    const own = times.filter((time) => time.group === group);
    return [Math.max(SHORTEST, ...own.map(({ low }) => low)), Math.min(...own.map(({ high }) => high))];
  });
  return bounds.every(([low, high]) => low < high && Number.isFinite(high)) ? bounds : null;
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
  const locations = bounds.map(([low, high]) => (Math.log(low) + Math.log(high)) / 2);
  const variances = bounds.map(([low, high]) => (Math.log(high / low) / 2 / t) ** 2);
  varieties.forEach((variety, i) => {
    const n = used.filter(({ unit }) => unit.variety === variety).length;
    const [low, high] = bounds[i]!;
    estimates.set(variety, { n, estimate: Math.exp(locations[i]!), low, high, reason: null });
  });
  const covariance = variances.map((own, i) => variances.map((_, j) => (i === j ? own : 0)));
  const classes = byClass({ varieties, locations, covariance }, classOf);
  return { ...how, residualDf, dispersion: null, estimates, classes, f: new Map() };
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
  const bounds = fit || residualDf <= 0 ? null : boundsOf(times, varieties.length);
  if (bounds) return withinLooks({ used, varieties, bounds, residualDf, estimates }, how, options);
  if (!fit) {
    for (const [variety, estimate] of without(used, residualDf > 0 ? 'no-spread' : 'no-residual-df'))
      estimates.set(variety, estimate);
    return { ...how, residualDf, dispersion: null, estimates, classes: [], f: new Map() };
  }
  const correction = used.length / residualDf;
  const counts = varieties.map((variety) => used.filter(({ unit }) => unit.variety === variety).length);
  const plants = varieties.map((variety) =>
    used.reduce((sum, { unit }) => sum + (unit.variety === variety ? unit.plants : 0), 0),
  );
  const inflation = varieties.map((variety, i) =>
    togetherFactor(options.layouts.get(options.classOf(variety)), plants[i]!, options.spotCorrelation),
  );
  const covariance = fit.covariance.map((row, i) =>
    row.map((value, j) => value * correction * Math.sqrt(inflation[i]! * inflation[j]!)),
  );
  const t = tQuantile(0.5 + options.level / 2, residualDf);
  varieties.forEach((variety, i) => {
    const half = t * Math.sqrt(covariance[i]![i]!);
    const location = fit.locations[i]!;
    const [low, high] = [Math.exp(location - half), Math.exp(location + half)];
    const days = times
      .filter(({ group }) => group === i)
      .map((time) => (time.high === Infinity ? time.low : time.high));
    estimates.set(variety, guarded({ n: counts[i]!, estimate: Math.exp(location), low, high }, days, true));
  });
  const classes = byClass({ varieties, locations: fit.locations, covariance }, options.classOf);
  const f = new Map(classes.map((own) => [own.classId, classF(own, residualDf)]));
  return { ...how, residualDf, dispersion: fit.sigma ** 2 * correction, estimates, classes, f };
}
