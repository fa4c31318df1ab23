import { fileOnly } from '../../terms/place.ts';
import type { Place } from '../../terms/place.ts';
import type { MeasureTrait } from '../../terms/traits.ts';
import type { Measurement } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { timesFacts } from './fruitSizes.ts';
import { middle, spreadOf, unlikeOthers } from './groups.ts';
import type { SeasonLogs } from './groups.ts';
import { nth } from '../../numerics/element.ts';

// Values of measures that hardly are what was measured. How far is too far: common practice, no source.

/** So many times the middle of the variety's other values, or one over it. */
const TIMES = 4;
const FEWEST_OTHERS = 3;
/** So many times the largest, or the smallest by that, of the class's other values, where the variety has few. */
const TIMES_OF_CLASS = 3;
const FEWEST_OF_CLASS = 5;
/** Sizes of the same varieties in another season, by the middle variety: inches for centimetres are 2.5. */
const TIMES_BETWEEN_SEASONS = 2;
/** Values of one variety spread by a sixth or so [SD of logs]; those of a mix by more. */
const MIXED = 0.35;
const TIMES_SPREAD = 2.5;
const FEWEST_VALUES = 20;

/** Nothing that grows in a bed is so large: 20 m, 500 kg. */
const ABSURD: Readonly<Record<string, number>> = { cm: 2000, mm: 20_000, g: 500_000 };

/** A measurement with the place of its row. */
export interface PlacedMeasure {
  readonly own: Measurement;
  readonly place: Place;
}

/** The measurements of a season. */
export interface SeasonMeasures {
  readonly year: number;
  readonly file: string;
  readonly measures: readonly PlacedMeasure[];
}

/** Logs of the values of a trait by variety, those over zero. */
function logsOf({ year, file, measures }: SeasonMeasures, trait: string): SeasonLogs {
  const groups = new Map<string, number[]>();
  for (const { own } of measures) {
    if (own.trait !== trait || !(own.value > 0)) continue;
    const list = groups.get(own.variety);
    if (list) list.push(Math.log(own.value));
    else groups.set(own.variety, [Math.log(own.value)]);
  }
  return { year, file, groups: new Map([...groups].map(([variety, own]) => [variety, Float64Array.from(own)])) };
}

const shown = (value: number): string => String(Number(value.toPrecision(4)));

/** Reports a length or weight of nothing, or beyond anything. */
function reportAbsurd(seasons: readonly SeasonMeasures[], { key, unit }: MeasureTrait, { log }: CheckContext): void {
  const most = ABSURD[unit];
  if (most === undefined) return;
  for (const { own, place } of seasons.flatMap(({ measures }) => measures)) {
    if (own.trait !== key) continue;
    if (own.value === 0) log.add('measure-zero', place, '0', { trait: key });
    else if (own.value > most) log.add('measure-absurd', place, `${shown(own.value)} ${unit}`, { trait: key });
  }
}

interface Neighbours {
  readonly byVariety: ReadonlyMap<string, readonly number[]>;
  readonly byClass: ReadonlyMap<string, readonly number[]>;
}

/** True for a value far from the others of its variety, or of its class where these are few. */
function isFar(log: number, variety: string, classId: string, { byVariety, byClass }: Neighbours): number | null {
  const without = (values: readonly number[]): readonly number[] => {
    const at = values.indexOf(log);
    return values.filter((_, i) => i !== at);
  };
  const own = without(byVariety.get(variety) ?? []);
  if (own.length >= FEWEST_OTHERS) {
    const off = log - middle(own);
    return Math.abs(off) > Math.log(TIMES) ? Math.exp(off) : null;
  }
  const like = without(byClass.get(classId) ?? []);
  if (like.length < FEWEST_OF_CLASS) return null;
  const limit = Math.log(TIMES_OF_CLASS);
  if (log <= Math.max(...like) + limit && log >= Math.min(...like) - limit) return null;
  return Math.exp(log - middle(like));
}

function reportLone(
  seasons: readonly SeasonMeasures[],
  { key, unit }: MeasureTrait,
  classOf: (variety: string) => string,
  { log }: CheckContext,
): void {
  const [byVariety, byClass] = [new Map<string, number[]>(), new Map<string, number[]>()];
  for (const season of seasons)
    for (const [variety, values] of logsOf(season, key).groups) {
      byVariety.set(variety, [...(byVariety.get(variety) ?? []), ...values]);
      byClass.set(classOf(variety), [...(byClass.get(classOf(variety)) ?? []), ...values]);
    }
  for (const { own, place } of seasons.flatMap(({ measures }) => measures)) {
    if (own.trait !== key || !(own.value > 0)) continue;
    const times = isFar(Math.log(own.value), own.variety, classOf(own.variety), { byVariety, byClass });
    if (times === null) continue;
    const facts = { trait: key, times: String(Number(times.toPrecision(2))) };
    log.add('measure-unlike-others', place, `${shown(own.value)} ${unit}`, facts);
  }
}

/** Warns of a season in which the values of a variety are mixed up: one column has slipped, or was sorted by itself. */
function reportMixed(seasons: readonly SeasonLogs[], trait: string, { log }: CheckContext): void {
  const spreads = seasons.map(({ groups }) => spreadOf(groups));
  spreads.forEach((spread, i) => {
    if (!spread || spread.values < FEWEST_VALUES || spread.groups < 4) return;
    const others = spreads.flatMap((own, j) => (j !== i && own && own.values >= FEWEST_VALUES ? [own.within] : []));
    const isWide = spread.within > MIXED && (others.length === 0 || spread.within > TIMES_SPREAD * middle(others));
    const isMixed = others.length > 0 || spread.chance > 0.01;
    if (isWide && isMixed) log.add('measures-not-of-variety', fileOnly(nth(seasons, i).file), trait, { trait });
  });
}

/** Reports values of measures that cannot be, and warns of those that are unlike the others. */
export function reportMeasures(
  seasons: readonly SeasonMeasures[],
  classOf: (variety: string) => string,
  context: CheckContext,
): void {
  for (const trait of context.settings.traits.values()) {
    if (trait.kind !== 'measure') continue;
    reportAbsurd(seasons, trait, context);
    const logs = seasons.map((season) => logsOf(season, trait.key)).filter(({ groups }) => groups.size > 0);
    const doubtful = unlikeOthers(logs, TIMES_BETWEEN_SEASONS);
    if (doubtful) {
      const facts = { trait: trait.key, ...timesFacts(doubtful.times, doubtful.season, doubtful.others) };
      context.log.add('measures-unlike-seasons', fileOnly(doubtful.season.file), trait.key, facts);
    } else reportLone(seasons, trait, classOf, context);
    // Lobes and the like differ little from variety to variety.
    if (ABSURD[trait.unit] !== undefined) reportMixed(logs, trait.key, context);
  }
}

/** Logs of fruit length and width in cm of a season by variety, for the comparison with weights; empty where not known. */
export function fruitMeasures(season: SeasonMeasures | null, trait: MeasureTrait | null): SeasonLogs['groups'] {
  if (!season || !trait || (trait.unit !== 'cm' && trait.unit !== 'mm')) return new Map();
  const logs = logsOf(season, trait.key).groups;
  const shift = trait.unit === 'mm' ? Math.log(10) : 0;
  return new Map([...logs].map(([variety, values]) => [variety, values.map((value) => value - shift)]));
}
