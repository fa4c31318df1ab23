/**
 * Do the shares keep their word, and does the advice pay? npm run bench:verdicts [gardens a setting].
 * Prints tables for the README and the methods page; nothing is asserted. Invented gardens from seeded generators.
 */
import { shownValue } from '../../src/terms/scales.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { expectedTrait } from '../../src/analyse/expected/expectedTrait.ts';
import { seasonScale } from '../../src/analyse/expected/posterior.ts';
import { classValues, markedValues } from '../../src/analyse/expected/values.ts';
import type { SeasonResult } from '../../src/analyse/expected/seasonEstimates.ts';
import { ownVariance } from '../../src/analyse/expected/spreads.ts';
import { adviseClass } from '../../src/decide/adviseClass.ts';
import type { ClassAdvice } from '../../src/decide/adviseClass.ts';
import type { TraitForecast } from '../../src/decide/adviseVariety.ts';
import type { ClassCase } from '../../src/decide/cases.ts';
import { pointsOf } from '../../src/decide/points.ts';
import { neededScore, partOfLast } from '../../src/decide/spots.ts';
import { traitFacts } from '../../src/terms/traits.ts';
import type { DeclaredTrait } from '../../src/terms/traits.ts';

const GARDENS = Number(process.argv[2] ?? 1600);
const ONLY = process.argv[3];
/** Varieties in every tenth of the shares; more gardens are drawn until there are so many, six times at most. */
const ENOUGH = GARDENS < 1000 ? 0 : 1000;
const VERDICTS = { keepFrom: 0.8, dropBelow: 0.2, simulations: 2000, seed: 1 };
const LEVEL = 1.959963984540054;

const FLAVOUR: DeclaredTrait = { key: 'flavour', kind: 'rating', from: 1, to: 9, better: 'higher' };
const TRAITS = [
  { key: 'yield', declared: undefined, scale: 0.5, weight: 3, middle: Math.log(1000), better: 'higher' },
  { key: 'flavour', declared: FLAVOUR, scale: 2, weight: 4, middle: 5, better: 'higher' },
  { key: 'first_ripe', declared: undefined, scale: 0.5, weight: 2, middle: Math.log(75), better: 'lower' },
] as const;

interface Setting {
  readonly name: string;
  readonly inModel: boolean;
  /** Multiplies the standard deviations between varieties and from season to season, drawn from their priors. */
  readonly spread?: number;
  /** σ_v of the log traits fixed instead (a rating's in proportion). */
  readonly fixed?: number;
  /** σ_w as a part of the fixed σ_v; a third without it. */
  readonly ratio?: number;
  readonly tails?: boolean;
  readonly correlation?: number;
  readonly seasons?: number;
  /** Every variety with so many plants in every season. */
  readonly even?: boolean;
  readonly varieties?: number;
  readonly plants?: readonly [number, number];
}

const SETTINGS: readonly Setting[] = [
  { name: 'the model, variances from the priors', inModel: true },
  { name: 'the model, every variety in every season with 3 plants', inModel: true, even: true },
  { name: 'heavier tails (t with 3 df)', inModel: false, tails: true },
  { name: 'traits correlated, 0.6', inModel: false, correlation: 0.6 },
  { name: 'traits correlated, -0.4', inModel: false, correlation: -0.4 },
  { name: 'spreads twice the priors', inModel: false, spread: 2 },
  { name: 'spreads half the priors', inModel: false, spread: 0.5 },
  { name: 'σ_v 0.15', inModel: false, fixed: 0.15 },
  { name: 'σ_v 0.3', inModel: false, fixed: 0.3 },
  { name: 'σ_v 0.8', inModel: false, fixed: 0.8 },
  { name: 'σ_v 0.15, one season', inModel: false, fixed: 0.15, seasons: 1 },
  { name: 'σ_v 0.3, one season', inModel: false, fixed: 0.3, seasons: 1 },
  { name: 'σ_v 0.8, one season', inModel: false, fixed: 0.8, seasons: 1 },
  { name: 'σ_v 0.3, σ_w as large', inModel: false, fixed: 0.3, ratio: 1 },
  { name: 'σ_v 0.3, σ_w as large, one season', inModel: false, fixed: 0.3, ratio: 1, seasons: 1 },
  {
    name: 'a typical home trial: 14 varieties, 1 to 8 plants',
    inModel: false,
    fixed: 0.3,
    varieties: 14,
    plants: [1, 8],
    seasons: 2,
  },
];

type Stream = ReturnType<typeof randomStream>;
const whole = (r: Stream, low: number, high: number): number => low + Math.floor(r.uniform() * (high - low + 1));

/** Chi-square over its df. */
function dispersion(r: Stream, df: number): number {
  let sum = 0;
  for (let i = 0; i < df; i++) sum += r.normal() ** 2;
  return sum / df;
}

/** Standard normal, or t with 3 df scaled to the same variance. */
function noise(r: Stream, tails: boolean): number {
  return tails ? r.normal() / Math.sqrt(dispersion(r, 3)) / Math.sqrt(3) : r.normal();
}

interface Garden {
  readonly classCase: ClassCase;
  readonly forecasts: ReadonlyMap<string, TraitForecast>;
  /** Next season as it will be, working scale: trait → varieties, then one newcomer a spot. */
  readonly truth: readonly {
    readonly values: readonly number[];
    readonly newcomers: readonly number[];
    readonly middle: number;
  }[];
  readonly seen: readonly SeasonResult[][];
  readonly seasons: number;
}

function drawGarden(r: Stream, setting: Setting): Garden {
  const seasons = setting.seasons ?? whole(r, 1, 5);
  const n = setting.varieties ?? whole(r, 5, 30);
  const spots = Math.max(1, Math.round(n * (0.2 + 0.4 * r.uniform())));
  const ids = Array.from({ length: n }, (_, i) => `v${String(i).padStart(2, '0')}`);
  const [few, many] = setting.plants ?? [1, 6];
  const plants = ids.map((_, i) => {
    const first = setting.even || i === 0 ? 0 : whole(r, 0, seasons - 1);
    return Array.from({ length: seasons }, (__, s) => {
      if (s < first || (!setting.even && s > first && r.uniform() < 0.25)) return 0;
      return setting.even ? 3 : whole(r, few, many);
    });
  });
  const common = ids.map(() => noise(r, setting.tails ?? false));
  const rho = setting.correlation ?? 0;
  const forecasts = new Map<string, TraitForecast>();
  const truth: Garden['truth'][number][] = [];
  const seen: SeasonResult[][] = [];
  for (const [t, { key, declared, scale, middle, better }] of TRAITS.entries()) {
    const half = (): number => Math.abs(r.normal());
    const between =
      setting.fixed === undefined ? half() * scale * (setting.spread ?? 1) : setting.fixed * (scale / 0.5);
    const within =
      setting.fixed === undefined
        ? half() * seasonScale(between, scale * (setting.spread ?? 1))
        : between * (setting.ratio ?? 1 / 3);
    const draw = (): number => noise(r, setting.tails ?? false);
    // A common part makes every pair of traits correlate so; its sign turns for the middle trait where they are at odds.
    const share = Math.sqrt(Math.abs(rho));
    const sign = (rho < 0 && t === 1 ? -1 : 1) * (better === 'lower' ? -1 : 1);
    const v = ids.map((_, i) => between * (share * sign * common[i]! + Math.sqrt(1 - share * share) * draw()));
    const m = Array.from({ length: seasons }, () => middle + 0.3 * scale * r.normal());
    const unit = (key === 'flavour' ? 1.3 : key === 'yield' ? 0.25 + 0.3 * r.uniform() : 0.1) ** 2;
    const results: SeasonResult[] = [];
    const spreads: { variance: number | null; df: number }[] = [];
    for (let s = 0; s < seasons; s++) {
      const grown = ids.flatMap((_, i) => (plants[i]![s]! > 0 ? [i] : []));
      const units = (i: number): number => (key === 'flavour' ? 4 : plants[i]![s]!);
      const df = grown.reduce((sum, i) => sum + units(i) - 1, 0);
      const phi = df > 0 ? unit * dispersion(r, df) : null;
      spreads.push({ variance: phi, df });
      for (const i of grown) {
        const theta = m[s]! + v[i]! + within * draw() + Math.sqrt(unit / units(i)) * draw();
        const variance = phi === null ? null : ownVariance(phi / units(i), df);
        results.push({
          year: 2020 + s,
          variety: ids[i]!,
          classId: 'c',
          theta,
          variance,
          units: units(i),
          isLaterThan: false,
          floor: null,
        });
      }
    }
    const facts = traitFacts(key, new Map(declared ? [[key, declared]] : []));
    const values = markedValues(facts, { results, spreads, counts: null })!;
    const classes = [classValues(values, 'c', ids)!];
    const nextSeason = { variance: { c: values.unitVariance }, perPlant: key !== 'flavour' };
    const own = {
      trait: key,
      scale: values.scale,
      better,
      ends: facts.ends,
      priorScale: values.priorScale,
      classes,
      nextSeason,
    };
    forecasts.set(key, { own, expected: expectedTrait(classes, values.priorScale, 0.95) });
    const level = m.reduce((sum, x) => sum + x, 0) / seasons;
    truth.push({
      values: v.map((x) => level + x + within * draw()),
      newcomers: Array.from({ length: spots }, () => level + between * draw() + within * draw()),
      middle: level,
    });
    seen.push(results);
  }
  const goals = TRAITS.map(({ key, weight }) => ({ trait: key, weight, good: null, bad: null }));
  const competitors = ids.map((id) => ({
    id,
    competes: true,
    untested: false,
    missed: false,
    counted: [],
    wanted: null,
  }));
  const classCase: ClassCase = {
    classId: 'c',
    spots,
    bar: 'newcomer',
    checkVariety: 'v00',
    competitors,
    goals,
    must: [],
    together: 0,
  };
  return { classCase, forecasts, truth, seen, seasons };
}

/** Goal-weighted points of working-scale values, one a trait; a trait without one is at the class's middle. */
function scoreOf(advice: ClassAdvice, forecasts: Garden['forecasts'], values: readonly number[]): number {
  const total = advice.goals.reduce((sum, { weight }) => sum + weight, 0);
  return advice.goals.reduce((sum, { trait, weight, range }, g) => {
    return sum + (weight / total) * pointsOf(range, shownValue(forecasts.get(trait)!.own, values[g]!));
  }, 0);
}

const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;

/** What two simple rules would grow: whatever beat the check this year, and the highest plain means. */
function simpleRules(
  { classCase, forecasts, seen, seasons }: Garden,
  advice: ClassAdvice,
): readonly (readonly string[])[] {
  const { spots, competitors } = classCase;
  const scored = (keep: (own: SeasonResult) => boolean): ReadonlyMap<string, number> => {
    const scores = new Map<string, number>();
    for (const { id } of competitors) {
      const values = seen.map((results) =>
        results.filter((own) => own.variety === id && keep(own)).map(({ theta }) => theta!),
      );
      if (values.every((list) => list.length > 0)) scores.set(id, scoreOf(advice, forecasts, values.map(mean)));
    }
    return scores;
  };
  const best = (scores: ReadonlyMap<string, number>): readonly string[] =>
    [...scores]
      .toSorted((a, b) => b[1] - a[1])
      .slice(0, spots)
      .map(([id]) => id);
  const thisYear = scored(({ year }) => year === 2019 + seasons);
  const check = thisYear.get('v00') ?? -Infinity;
  return [
    best(new Map([...thisYear].filter(([id, score]) => (id !== 'v00' ? score > check : true)))),
    best(scored(() => true)),
  ];
}

interface Tally {
  gardens: number;
  readonly tenths: { n: number; earned: number; share: number; perGarden: { n: number; earned: number }[] }[];
  brier: number;
  varieties: number;
  readonly verdicts: Map<string, number>;
  readonly lead: readonly number[][];
}

function run(setting: Setting): Tally {
  const tally: Tally = {
    gardens: 0,
    tenths: Array.from({ length: 10 }, () => ({ n: 0, earned: 0, share: 0, perGarden: [] })),
    brier: 0,
    varieties: 0,
    verdicts: new Map(),
    lead: [[], []],
  };
  const isEnough = (): boolean => tally.tenths.every(({ n }) => n >= ENOUGH);
  for (let g = 0; g < GARDENS || (!isEnough() && g < 6 * GARDENS); g++) {
    tally.gardens++;
    const garden = drawGarden(randomStream(`${setting.name}/${g}`), setting);
    const { classCase, forecasts, truth } = garden;
    const advice = adviseClass(classCase, forecasts, VERDICTS, false);
    const scores = new Map(
      classCase.competitors.map(({ id }, i) => [
        id,
        scoreOf(
          advice,
          forecasts,
          truth.map(({ values }) => values[i]!),
        ),
      ]),
    );
    const bar = scoreOf(
      advice,
      forecasts,
      truth.map(({ middle }) => middle),
    );
    const list = Float64Array.from(scores.values());
    const needed = neededScore(list, bar, classCase.spots);
    const part = partOfLast(list, classCase.spots, needed);
    const perTenth = Array.from({ length: 10 }, () => ({ n: 0, earned: 0 }));
    for (const { variety, share, verdict } of advice.varieties) {
      const score = scores.get(variety)!;
      const earned = score >= needed ? (score === needed ? part : 1) : 0;
      const tenth = Math.min(9, Math.floor(share * 10));
      perTenth[tenth]!.n++;
      perTenth[tenth]!.earned += earned;
      tally.tenths[tenth]!.share += share;
      tally.brier += (share - earned) ** 2;
      tally.varieties++;
      tally.verdicts.set(verdict, (tally.verdicts.get(verdict) ?? 0) + 1);
    }
    perTenth.forEach(({ n, earned }, t) => {
      const own = tally.tenths[t]!;
      own.n += n;
      own.earned += earned;
      if (n > 0) own.perGarden.push({ n, earned });
    });
    const newcomers = Array.from({ length: classCase.spots }, (_, k) =>
      scoreOf(
        advice,
        forecasts,
        truth.map((own) => own.newcomers[k]!),
      ),
    );
    // Spots left over go to newcomers, the same ones for every rule.
    const worth = (list: readonly string[]): number =>
      mean(newcomers.map((newcomer, k) => (k < list.length ? scores.get(list[k]!)! : newcomer)));
    const advised = worth(advice.list);
    simpleRules(garden, advice).forEach((list, rule) => tally.lead[rule]!.push(advised - worth(list)));
  }
  return tally;
}

const pct = (x: number): string => (100 * x).toFixed(1);

function print(setting: Setting, tally: Tally): void {
  console.log(
    `\n${setting.name}: ${tally.gardens} gardens, ${tally.varieties} varieties, Brier score ${(tally.brier / tally.varieties).toFixed(3)}`,
  );
  const allowed = setting.inModel ? 0.03 : 0.08;
  tally.tenths.forEach(({ n, earned, share, perGarden }, t) => {
    if (n === 0) return;
    const p = earned / n;
    const half = (LEVEL * Math.sqrt(perGarden.reduce((sum, own) => sum + (own.earned - p * own.n) ** 2, 0))) / n;
    const off = p - share / n;
    const held = Math.abs(off) - half <= allowed;
    const bar = '#'.repeat(Math.round(p * 40)).padEnd(40);
    console.log(
      `  ${t / 10}-${(t + 1) / 10}  n ${String(n).padStart(6)}  said ${pct(share / n).padStart(5)}  earned ${pct(p).padStart(5)} (${pct(p - half)} to ${pct(p + half)})  |${bar}|${held ? '' : `  off by more than ${allowed}`}`,
    );
  });
  ['whatever beat the check this year', 'the highest mean'].forEach((rule, k) => {
    const list = tally.lead[k]!;
    const average = mean(list);
    const half =
      LEVEL * Math.sqrt(list.reduce((sum, x) => sum + (x - average) ** 2, 0) / (list.length - 1) / list.length);
    console.log(
      `  the list against ${rule}: ${average.toFixed(2)} points a spot (${(average - half).toFixed(2)} to ${(average + half).toFixed(2)})`,
    );
  });
  const all = [...tally.verdicts].toSorted().map(([verdict, count]) => `${verdict} ${pct(count / tally.varieties)} %`);
  console.log(`  verdicts: ${all.join(', ')}`);
}

for (const setting of SETTINGS) {
  if (ONLY === undefined || setting.name.includes(ONLY)) print(setting, run(setting));
}
