/**
 * Do forecasts for lines and seed keep their word? npm run bench:lines [crosses a row].
 * Prints said → happened for the methods page; nothing is asserted. Invented crosses from seeded generators.
 */
import { breedsTrue, genePosterior } from '../../src/analyse/lines/geneModels.ts';
import type { GenePedigree, GenePlant } from '../../src/analyse/lines/geneModels.ts';
import { geneModels, mixed, selfing } from '../../src/analyse/lines/geneKinds.ts';
import type { GeneModel } from '../../src/analyse/lines/geneKinds.ts';
import { inheritedDraws, shareWeights, trulyBest } from '../../src/analyse/lines/inherited.ts';
import { wantedForecast } from '../../src/analyse/lines/nextPlants.ts';
import { spreadRatio, squaresOf } from '../../src/analyse/lines/spread.ts';
import { seedsFor, viabilityOf } from '../../src/analyse/seed/viability.ts';
import { normalCdf } from '../../src/numerics/normal.ts';
import { randomStream } from '../../src/numerics/random.ts';

const CROSSES = Number(process.argv[2] ?? 400);
const { uniform, normal } = randomStream('bench:lines');
const pick = (weights: readonly number[]): number => {
  let u = uniform() * weights.reduce((sum, own) => sum + own, 0);
  return weights.findIndex((own) => (u -= own) <= 0);
};

/** Pairs of said and happened, in bands of what was said. */
function bands(
  pairs: readonly (readonly [said: number, happened: boolean | number])[],
  edges: readonly number[],
): string {
  return edges
    .slice(0, -1)
    .map((from, i) => {
      const own = pairs.filter(([said]) => said >= from && said < (edges[i + 1] ?? 1));
      if (own.length === 0) return '–';
      const mean = (of: (pair: (typeof own)[number]) => number): number =>
        Math.round((100 * own.reduce((sum, pair) => sum + of(pair), 0)) / own.length);
      return `${mean(([said]) => said)} → ${mean(([, happened]) => Number(happened))}`;
    })
    .join(', ');
}

const EDGES = [0, 0.05, 0.4, 0.9, 0.97, 1.01];

interface Drawn {
  readonly genotype: number;
  readonly state: number;
}

function offspring(model: GeneModel, mother: number, wrong: number): Drawn {
  const genotype = pick(selfing(model.genes)[mother]!);
  const state = model.map[genotype]!;
  return { genotype, state: uniform() < wrong ? 1 - state : state };
}

/** An F2 of 12 with an F3 of 8 from one dark plant; what is said of the F2 plants, and what is true. */
function genes(wrong: number, priors: readonly [one: number, two: number]) {
  const truths: [number, boolean][] = [];
  const sixths: [number, boolean][] = [];
  const models = geneModels(2);
  for (let i = 0; i < CROSSES; i++) {
    const model = models[pick(models.map(({ genes: n, prior }) => prior * (n === 1 ? priors[0] : priors[1])))]!;
    const root = mixed(model.genes);
    const f2 = Array.from({ length: 12 }, () => offspring(model, root, wrong));
    if (new Set(f2.map(({ state }) => state)).size < 2) continue;
    const mother = f2.findIndex(({ state }) => state === 0);
    const f3 = Array.from({ length: 8 }, () => offspring(model, f2[mother]!.genotype, wrong));
    const plants: GenePlant[] = f2.map(({ state }, at) => ({
      state,
      family:
        at === mother
          ? { counts: [0, 1].map((own) => f3.filter((one) => one.state === own).length), plants: [] }
          : null,
    }));
    const pedigree: GenePedigree = {
      states: 2,
      f2: { counts: [0, 0], plants },
      bulks: [],
      f1: null,
      parents: null,
      calledWrong: 0.02,
    };
    const posterior = genePosterior(pedigree);
    f2.forEach(({ genotype, state }, at) => {
      const shares = selfing(model.genes)[genotype]!.reduce(
        (sum, own, g) => sum + (model.map[g] === state ? own : 0),
        0,
      );
      truths.push([breedsTrue(pedigree, posterior, [at], [state]), shares > 0.999]);
      const forecast = wantedForecast([{ pedigree, posterior, good: [1] }], [{ paths: [[at]], plants: 0 }]);
      const next = Array.from({ length: 6 }, () => offspring(model, genotype, 0));
      sixths.push([forecast.chance([6]), next.some((own) => own.state === 1)]);
    });
  }
  return [bands(truths, EDGES), bands(sixths, EDGES)] as const;
}

/** Whether intervals of the spread hold, and how often a line that varies is shown to. */
function spread(share: number, plants: number): string {
  let [holds, shown] = [0, 0];
  const n = 10 * CROSSES;
  for (let i = 0; i < n; i++) {
    const line = squaresOf(Array.from({ length: plants }, () => normal() / Math.sqrt(1 - share)));
    const fixed = { ss: Array.from({ length: 18 }, normal).reduce((sum, own) => sum + own ** 2, 0), df: 18 };
    const own = spreadRatio(line, fixed, 0.95)!;
    if (own.low <= 1 / (1 - share) && own.high >= 1 / (1 - share)) holds++;
    if (own.low > 1) shown++;
  }
  return `limits hold ${Math.round((100 * holds) / n)}, shown to vary ${Math.round((100 * shown) / n)}`;
}

/** The plant said to be the best, of 10 of an F2, and what it passes on, in plant SDs. */
function best(share: number): string {
  const said: number[] = [];
  const right: number[] = [];
  const passed: [number, number][] = [];
  for (let i = 0; i < CROSSES; i++) {
    const inherited = Array.from({ length: 10 }, () => Math.sqrt(share) * normal());
    const values = inherited.map((own) => own + Math.sqrt(1 - share) * normal());
    const rest = Math.sqrt(1 - share);
    const fixed = {
      ss: Array.from({ length: 18 }, () => rest * normal()).reduce((sum, own) => sum + own ** 2, 0),
      df: 18,
    };
    const weights = shareWeights([{ line: squaresOf(values), fixed, part: 1 }], 'low');
    const { deviations } = inheritedDraws(values, fixed, { weights, part: 1 }, `bench/${i}`, 1000);
    const chances = trulyBest(deviations, 3).best;
    const at = chances.indexOf(Math.max(...chances));
    said.push(chances[at]!);
    right.push(inherited[at] === Math.max(...inherited) ? 1 : 0);
    const mean = inherited.reduce((sum, own) => sum + own, 0) / 10;
    passed.push([deviations.reduce((sum, row) => sum + row[at]!, 0) / deviations.length, inherited[at]! - mean]);
  }
  const mean = (list: readonly number[]): number => list.reduce((sum, own) => sum + own, 0) / list.length;
  const percent = (list: readonly number[]): number => Math.round(100 * mean(list));
  return `${percent(said)} → ${percent(right)}; passed on ${mean(passed.map(([own]) => own)).toFixed(2)} → ${mean(passed.map(([, own]) => own)).toFixed(2)}`;
}

/** Six plants are wanted with 90 of 100: how often that many come up, next year. */
function sowing(faster: number): string {
  let [enough, told] = [0, 0];
  for (let i = 0; i < CROSSES / 4; i++) {
    const fresh = 1.3 + 0.8 * normal();
    const sigma = (3 * Math.exp(0.5 * normal())) / faster;
    const up = (age: number, seeds: number): number => {
      const p = normalCdf(fresh - age / sigma);
      return Array.from({ length: seeds }, uniform).filter((u) => u < p).length;
    };
    const lot = viabilityOf([{ age: 0.4, seeds: 20, germinated: up(0.4, 20) }], 'room');
    const seeds = seedsFor(lot, 1.4, 6, 0.9);
    if (seeds === null) continue;
    told++;
    if (up(1.4, seeds) >= 6) enough++;
  }
  return `90 → ${Math.round((100 * enough) / told)}`;
}

const row = (name: string, text: string): void => void process.stdout.write(`| ${name} | ${text} |\n`);
process.stdout.write(
  `said → happened, of 100; ${CROSSES} crosses a row\n\n| rule | said → happened |\n| --- | --- |\n`,
);
for (const [name, wrong, priors] of [
  ['as assumed', 0.02, [1, 1]],
  ['two genes twice as common', 0.02, [0.5, 2]],
  ['8 % called wrongly', 0.08, [1, 1]],
] as const) {
  const [truth, sixth] = genes(wrong, priors);
  row(`breeds true, ${name}`, truth);
  row(`one of six as wanted, ${name}`, sixth);
}
for (const share of [0, 0.5, 0.8]) row(`spread of 8 plants, ${share} inherited`, spread(share, 8));
for (const share of [0.1, 0.3, 0.6]) row(`truly the best, ${share} inherited`, best(share));
row('seeds for 6 plants next year', sowing(1));
row('the same, ageing twice as fast', sowing(2));
