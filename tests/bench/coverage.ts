/**
 * How often intervals called 95 % contain the truth, over random small gardens: npm run bench:coverage.
 * Prints a table for the methods page; nothing is asserted. Invented gardens from a seeded generator.
 */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { seasonKey } from '../../src/terms/ids.ts';
import { fitPlantModel } from '../../src/analyse/plantModel.ts';
import type { ClassMeans } from '../../src/analyse/plantTypes.ts';
import { fitRatings } from '../../src/analyse/ratings.ts';
import { fitRipening } from '../../src/analyse/ripeningModel.ts';
import { normalQuantile } from '../../src/numerics/normal.ts';
import { studentizedRangeQuantile } from '../../src/numerics/range.ts';
import { plantingId, varietyId } from '../../src/terms/ids.ts';
import type { Planting, Score, Season } from '../../src/terms/trial.ts';

const GARDENS = Number(process.argv[2] ?? 2000);
const VARIETIES = 14;
const RHO = 0.2;
const generator = xoroshiro128plus(95);
const uniform = (): number => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
const normal = (): number => normalQuantile(uniform());

/** Gamma with mean 1 and this coefficient of variation (Marsaglia & Tsang 2000). */
function gamma(cv: number): number {
  const shape = 1 / (cv * cv);
  if (shape < 1) return gamma(1 / Math.sqrt(shape + 1)) * ((shape + 1) / shape) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normal();
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return (d * v) / shape;
  }
}

/** Poisson with extra spread (variance φ times the mean) by a gamma mean. */
function count(mean: number, phi: number): number {
  const rate = phi > 1 ? mean * gamma(Math.sqrt((phi - 1) / mean)) : mean;
  let k = 0;
  for (let p = uniform(); p > Math.exp(-rate); p *= uniform()) k++;
  return k;
}

function planting(id: number, variety: number, plants = 1): Planting {
  return {
    id: plantingId(`p${id}`),
    garden: 'home',
    variety: varietyId(`v${variety}`),
    plants,
    bed: null,
    block: null,
    row: null,
    column: null,
    sown: null,
    transplanted: null,
    removed: null,
    cause: null,
    areaM2: null,
    containerL: null,
    standsIn: null,
    topped: null,
    lot: null,
    notes: null,
    unknownColumns: new Map(),
    record: { kind: 'nothing' },
    events: [],
    joins: [],
    place: { file: '', line: null, column: null },
  };
}

function season(layout: 'spread' | 'together'): Season {
  return {
    key: seasonKey(2026),
    year: 2026,
    firstDay: null,
    lastDay: 0 as Season['lastDay'],
    lookEvery: 7,
    layout,
    harvestsComplete: true,
    earlyUntil: null,
    hasHarvests: true,
    gardens: ['home'],
    plantings: [],
    yieldUnits: [],
    ripeningUnits: [],
    scores: [],
    measurements: [],
    seedBatches: [],
    weather: [],
    limited: [],
    remarks: [],
    states: [],
    servings: [],
    sent: [],
    answers: [],
  };
}

interface Setting {
  readonly plants: readonly number[];
  readonly cv: number;
  readonly spotCv: number;
  readonly layout: 'spread' | 'together';
  /** Plants of a planting, recorded together; one without it. */
  readonly each?: number;
}

/** Plantings; plants of a variety share their spot where they stand together. */
function units(
  { plants, spotCv, layout, each = 1 }: Setting,
  means: readonly number[],
  draw: (mean: number) => number,
) {
  let id = 0;
  return means.flatMap((mean, v) => {
    const shared = Math.exp(spotCv * normal());
    return Array.from({ length: plants[v % plants.length]! }, () => {
      const spot = layout === 'together' ? shared : Math.exp(spotCv * normal());
      const sum = Array.from({ length: each }, () => draw(mean * spot)).reduce((all, own) => all + own, 0);
      return { planting: planting(id++, v, each), classId: 'all', plants: each, y: sum / each };
    });
  });
}

const percent = (share: number): string => (100 * share).toFixed(1);

function yields(
  setting: Setting,
  family: 'gamma' | 'poisson',
): { readonly cover: number; readonly separated: number; readonly df: number } {
  let [inside, intervals, separated, df] = [0, 0, 0, 0];
  const options = {
    family,
    level: 0.95,
    spotCorrelation: RHO,
    gardenCorrelation: 0.4,
    isYield: true,
    withBlocks: true,
  } as const;
  for (let g = 0; g < GARDENS; g++) {
    const equal = g % 2 === 0;
    const means = Array.from(
      { length: VARIETIES },
      () => (family === 'gamma' ? 1000 : 20) * (equal ? 1 : Math.exp(0.3 * normal())),
    );
    const draw =
      family === 'gamma'
        ? (m: number) => m * gamma(setting.cv)
        : (m: number) => count(m, 1 + 20 * setting.cv * setting.cv);
    // A spot's lognormal effect has a mean a little over 1; the truth is the mean over spots.
    const lift = Math.exp(0.5 * setting.spotCv ** 2);
    const model = fitPlantModel(season(setting.layout), units(setting, means, draw), options);
    df = model.residualDf;
    means.forEach((mean, v) => {
      const own = model.estimates.get(`v${v}`);
      if (own?.low == null) return;
      intervals++;
      if (own.low <= mean * lift && own.high! >= mean * lift) inside++;
    });
    if (equal && model.classes[0] && separates(model.classes[0], df)) separated++;
  }
  return { cover: inside / intervals, separated: separated / Math.ceil(GARDENS / 2), df };
}

/** True where letters separate any two varieties of a class. */
function separates({ estimates, covariance }: ClassMeans, df: number): boolean {
  const critical = studentizedRangeQuantileKnown(estimates.length, df) / Math.SQRT2;
  return estimates.some((a, i) =>
    estimates.some((b, j) => j < i && Math.abs(a - b) > critical * Math.sqrt(covariance[i]![i]! + covariance[j]![j]!)),
  );
}

const CLASSES = { few: 5, middling: 30, many: 130 } as const;

/** Fruits of three classes in one fit, five equal varieties each: variance of a plant μ + (0.4 μ)². */
function fruitsByClass(plants: number): readonly { name: string; cover: number; separated: number }[] {
  const names = Object.keys(CLASSES) as (keyof typeof CLASSES)[];
  const inside = names.map(() => 0);
  const separated = names.map(() => 0);
  for (let g = 0; g < GARDENS; g++) {
    let id = 0;
    const list = names.flatMap((classId, c) =>
      Array.from({ length: 5 * plants }, (_, i) => ({
        planting: planting(id++, 5 * c + Math.floor(i / plants)),
        classId,
        plants: 1,
        y: count(CLASSES[classId], 1 + 0.16 * CLASSES[classId]),
      })),
    );
    const options = {
      family: 'poisson',
      level: 0.95,
      spotCorrelation: RHO,
      gardenCorrelation: 0.4,
      isYield: true,
      withBlocks: true,
    } as const;
    const model = fitPlantModel(season('spread'), list, options);
    model.classes.forEach((own, c) => {
      if (separates(own, model.residualDf)) separated[c]!++;
      for (const variety of own.varieties) {
        const { low, high } = model.estimates.get(variety)!;
        if (low! <= CLASSES[names[c]!] && high! >= CLASSES[names[c]!]) inside[c]!++;
      }
    });
  }
  return names.map((name, c) => ({ name, cover: inside[c]! / (5 * GARDENS), separated: separated[c]! / GARDENS }));
}

const known = new Map<string, number>();
function studentizedRangeQuantileKnown(k: number, df: number): number {
  const key = `${k} ${df}`;
  const value = known.get(key) ?? studentizedRangeQuantile(0.95, k, df);
  known.set(key, value);
  return value;
}

function ripening(n: number, censored: number, layout: 'spread' | 'together', spotSd: number): number {
  let [inside, intervals] = [0, 0];
  const sd = 0.1;
  for (let g = 0; g < GARDENS; g++) {
    const truths = Array.from({ length: VARIETIES }, () => Math.log(85) + 0.1 * normal());
    const end = Math.exp(Math.log(85) + normalQuantile(1 - Math.max(censored, 1e-9)) * Math.hypot(0.1, sd, spotSd));
    let id = 0;
    const list = truths.flatMap((truth, v) => {
      const shared = spotSd * normal();
      return Array.from({ length: n }, () => {
        const day = Math.exp(truth + sd * normal() + (layout === 'together' ? shared : spotSd * normal()));
        // A look a week: the fruit is found at the next look after it ripened.
        const foundOn = Math.ceil(day / 7) * 7;
        const ripe = foundOn <= end ? foundOn : null;
        return {
          unit: planting(id++, v),
          ripe,
          lastUnripe: null,
          watchedInCurve: end,
          watchedInModel: Math.floor(end / 7) * 7,
        };
      });
    });
    const model = fitRipening(list, {
      level: 0.95,
      spotCorrelation: RHO,
      layouts: new Map([['all', layout]]),
      lookEvery: 7,
      classOf: () => 'all',
    });
    truths.forEach((truth, v) => {
      const own = model.estimates.get(`v${v}`);
      if (own?.low == null) return;
      intervals++;
      if (Math.log(own.low) <= truth && Math.log(own.high!) >= truth) inside++;
    });
  }
  return inside / intervals;
}

function ratings(tasters: number): number {
  let [inside, intervals] = [0, 0];
  for (let g = 0; g < GARDENS; g++) {
    const truths = Array.from({ length: VARIETIES }, () => 5 + 0.8 * normal());
    const generous = Array.from({ length: tasters }, () => 0.7 * normal());
    const middle = generous.reduce((sum, x) => sum + x, 0) / tasters;
    const scores = truths.flatMap((truth, v) =>
      generous.flatMap((extra, t): readonly Score[] => {
        if (uniform() < 0.1) return [];
        const score = Math.min(20, Math.max(-10, Math.round(2 * (truth + extra + normal())) / 2));
        return [
          {
            day: null,
            taster: `t${t}`,
            variety: varietyId(`v${v}`),
            planting: null,
            trait: 'flavour',
            score,
            isBlind: true,
          },
        ];
      }),
    );
    const model = fitRatings({ key: 'flavour', kind: 'rating', from: -10, to: 20, better: 'higher' }, scores, 0.95);
    truths.forEach((truth, v) => {
      const own = model.estimates.get(`v${v}`);
      if (own?.low == null) return;
      intervals++;
      // The estimate is a mean over these tasters.
      if (own.low <= truth + middle && own.high! >= truth + middle) inside++;
    });
  }
  return inside / intervals;
}

const out = (line: string): void => void process.stdout.write(`${line}\n`);
out(
  `${GARDENS} gardens a setting, ${VARIETIES} varieties, spot correlation ${RHO}; per cent of 95 % intervals that hold the truth`,
);
out('trait        plants   CV %  spot CV %  layout     cover  letters separate equal varieties');
for (const [layout, spots] of [
  ['spread', [0, 0.1, 0.2]],
  ['together', [0, 0.1, 0.2]],
] as const) {
  for (const spotCv of spots) {
    for (const plants of [[2], [3], [8], [2, 3, 6]]) {
      for (const cv of [0.2, 0.4, 0.6]) {
        const { cover, separated } = yields({ plants, cv, spotCv, layout }, 'gamma');
        out(
          `yield        ${plants.join('/').padEnd(7)}  ${(100 * cv).toFixed(0).padEnd(4)}  ${(100 * spotCv).toFixed(0).padEnd(9)}  ${layout.padEnd(9)}  ${percent(cover)}   ${percent(separated)}`,
        );
      }
    }
  }
}
for (const each of [4, 6]) {
  for (const plants of [[2], [3]]) {
    const { cover, separated } = yields({ plants, cv: 0.4, spotCv: 0.2, layout: 'together', each }, 'gamma');
    out(
      `yield        ${`${plants.join('/')} of ${each}`.padEnd(7)}  40    20         together   ${percent(cover)}   ${percent(separated)}`,
    );
  }
}
for (const plants of [[2], [4], [8]]) {
  const { cover, separated } = yields({ plants, cv: 0.3, spotCv: 0, layout: 'spread' }, 'poisson');
  out(
    `fruits       ${plants.join('/').padEnd(7)}  30    0          spread     ${percent(cover)}   ${percent(separated)}`,
  );
}
for (const [layout, spot] of [
  ['spread', 0],
  ['together', 0],
  ['together', 0.05],
] as const) {
  for (const n of [2, 4, 8])
    for (const censored of [0, 0.2, 0.4])
      out(
        `first ripe   ${String(n).padEnd(7)}  10    ${(100 * spot).toFixed(0).padEnd(9)}  ${layout.padEnd(9)}  ${percent(ripening(n, censored, layout, spot))}   censored ${100 * censored} %`,
      );
}
for (const tasters of [3, 5, 8])
  out(`ratings      ${tasters} tasters                            ${percent(ratings(tasters))}`);
for (const plants of [2, 3, 6])
  for (const { name, cover, separated } of fruitsByClass(plants))
    out(
      `fruits ${String(CLASSES[name as keyof typeof CLASSES]).padEnd(4)}  ${String(plants).padEnd(7)}  40    0          spread     ${percent(cover)}   ${percent(separated)}   three classes in one fit`,
    );
