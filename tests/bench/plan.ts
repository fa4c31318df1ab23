/**
 * What the plan's rules gain: npm run bench:plan [runs].
 * Prints the mean score of all plants above the class mean under five ways of giving out places, and the variance of a
 * difference under layouts and fields; nothing is asserted. Invented varieties from seeded generators.
 */
import { blocksOf, plantsOfEach } from '../../src/decide/plan/plants.ts';
import type { Wanted } from '../../src/decide/plan/plants.ts';
import { layoutOf } from '../../src/decide/plan/layout.ts';
import type { Spot } from '../../src/decide/plan/stretches.ts';
import { choleskyFactor, solveLower, solveUpper } from '../../src/numerics/cholesky.ts';
import { nth } from '../../src/numerics/element.ts';
import { randomStream } from '../../src/numerics/random.ts';
import type { Bed } from '../../src/terms/plan.ts';

const RUNS = Number(process.argv[2] ?? 100);
const line = (text: string): void => void process.stdout.write(`${text}\n`);

/** Traits by weight, with the variance of a plant's error in squares of the spread between varieties. */
const TRAITS = [
  { weight: 3, plant: (0.4 / 0.3) ** 2 },
  { weight: 4, taster: 1 },
  { weight: 2, plant: 0.5 },
] as const;
const POINTS = 15;
const SEASON = 1 / 9;
const TASTERS = 4;
const LOST = 0.08;
const DRAWS = 300;
const total = Math.hypot(...TRAITS.map(({ weight }) => weight));

interface Grown {
  readonly id: string;
  readonly truth: readonly number[];
  /** Sum of weights and of weighted results of each trait over the seasons. */
  readonly seen: { weight: number; sum: number }[];
}

const policies = ['everything equal', 'same varieties, equal', 'list only, equal', 'newcomers × 2', 'plan'] as const;
type Policy = (typeof policies)[number];

/** One grower's seasons under a policy: mean score of all plants above the class mean, a figure a season. */
function seasons(policy: Policy, places: number, spots: number, known: number, count: number, name: string): number[] {
  const { normal, uniform } = randomStream(name);
  const fresh = (i: number): Grown => ({
    id: `v${String(i).padStart(4, '0')}`,
    truth: TRAITS.map(() => normal()),
    seen: TRAITS.map(() => ({ weight: 0, sum: 0 })),
  });
  let next = 0;
  const tried = Array.from({ length: known }, () => fresh(next++));
  const grow = (own: Grown, plants: number): void => {
    let alive = 0;
    for (let i = 0; i < plants; i++) if (uniform() > LOST) alive++;
    if (alive === 0) return;
    TRAITS.forEach((trait, t) => {
      const noise = 'plant' in trait ? trait.plant / alive : trait.taster / TASTERS;
      const variance = SEASON + noise;
      const result = nth(own.truth, t) + Math.sqrt(variance) * normal();
      nth(own.seen, t).weight += 1 / variance;
      nth(own.seen, t).sum += result / variance;
    });
  };
  for (let s = 0; s < 2; s++) for (const own of tried) grow(own, Math.max(1, Math.round(places / known)));
  const score = (values: readonly number[]): number =>
    (POINTS * values.reduce((sum, own, t) => sum + nth(TRAITS, t).weight * own, 0)) / total;
  const gains: number[] = [];
  for (let season = 0; season < count; season++) {
    const shares = tried.map(() => 0);
    for (let d = 0; d < DRAWS; d++) {
      const drawn = tried.map(({ seen }) =>
        score(seen.map(({ weight, sum }) => sum / (1 + weight) + Math.sqrt(1 / (1 + weight) + SEASON) * normal())),
      );
      const needed = Math.max(0, drawn.toSorted((a, b) => b - a)[Math.min(spots, drawn.length) - 1] ?? 0);
      drawn.forEach((own, i) => (shares[i]! += own >= needed ? 1 / DRAWS : 0));
    }
    const newcomers = Array.from({ length: places }, () => fresh(next++));
    const wanted: Wanted[] = [
      ...tried.map(({ id }, i): Wanted => ({
        variety: id,
        kind: 'tried',
        share: nth(shares, i),
        verdict: nth(shares, i) < 0.2 ? 'drop' : 'try-again',
        isCheck: false,
        plants: null,
        atLeast: null,
        atMost: null,
      })),
      ...newcomers.map(({ id }): Wanted => ({
        variety: id,
        kind: 'newcomer',
        share: null,
        verdict: null,
        isCheck: false,
        plants: null,
        atLeast: null,
        atMost: null,
      })),
    ];
    const asked = (count_: number | null): readonly number[] =>
      plantsOfEach({
        places,
        spots,
        newcomers: count_,
        newcomerPlants: 1,
        isEqual: false,
        bar: 'newcomer',
        varieties: wanted,
      }).plants;
    const usual = Math.max(1, Math.round(places / 10));
    const planned = asked(policy === 'newcomers × 2' ? 2 * usual : policy === 'list only, equal' ? 0 : null);
    const all = [...tried, ...newcomers];
    const grown = all.filter((_, i) =>
      policy === 'everything equal' ? i < tried.length + usual : nth(planned, i) > 0,
    );
    const isEqual = policy !== 'plan' && policy !== 'newcomers × 2';
    const plants = grown.map((own, i) => {
      if (!isEqual) return nth(planned, all.indexOf(own));
      return Math.floor(places / grown.length) + (i < places % grown.length ? 1 : 0);
    });
    const mean = grown.reduce((sum, own, i) => sum + nth(plants, i) * score(own.truth), 0) / Math.max(1, places);
    gains.push(mean);
    grown.forEach((own, i) => {
      grow(own, nth(plants, i));
      if (!tried.includes(own)) tried.push(own);
    });
  }
  return gains;
}

const average = (numbers: readonly number[]): number => numbers.reduce((sum, own) => sum + own, 0) / numbers.length;

const GIVEN: Readonly<Record<string, string>> = {
  '20/1': '2.2 | 8.3 | 11.0 | 10.1 | 12.1',
  '20/6': '0.3 | 10.8 | 11.5 | 13.2 | 15.1',
  '40/1': '-0.1 | 6.6 | 11.3 | 9.9 | 11.1',
  '40/6': '1.0 | 9.4 | 11.8 | 13.8 | 15.2',
  '60/1': '1.7 | 7.4 | 12.2 | 10.6 | 11.9',
  '60/6': '2.1 | 10.3 | 12.8 | 14.5 | 16.0',
};

line(`Mean score of all plants above the class mean, ${RUNS} runs, two seasons known (given: 700 runs)`);
line(`places, spots, known | seasons | ${policies.join(' | ')}`);
for (const [places, spots, known] of [
  [20, 4, 10],
  [40, 6, 14],
  [60, 8, 20],
] as const) {
  const found = policies.map((policy) =>
    Array.from({ length: RUNS }, (_, run) => seasons(policy, places, spots, known, 6, `plan/${places}/${run}`)),
  );
  for (const count of [1, 6] as const)
    line(
      `${places}, ${spots}, ${known} | ${count} | ${found.map((runs) => average(runs.map((own) => average(own.slice(0, count)))).toFixed(1)).join(' | ')} (given: ${GIVEN[`${places}/${count}`]})`,
    );
}

/* Variance of a difference of varieties under a field, in percent of plants that are independent. */
const bed: Bed = {
  id: 'bed',
  rows: 4,
  columns: 12,
  standsIn: null,
  containerL: null,
  classes: null,
  leaveOut: [],
  north: 'top',
  place: { file: '', line: null, column: null },
};
const SPOTS: readonly Spot[] = Array.from({ length: 48 }, (_, i) => ({
  bed,
  row: (i % 4) + 1,
  column: Math.floor(i / 4) + 1,
}));
const VARIETIES = Array.from({ length: 12 }, (_, v) => ({
  variety: `v${String(v).padStart(2, '0')}`,
  plants: 4,
  isTall: false,
  savesSeed: false,
}));

interface Field {
  readonly name: string;
  readonly alike: number;
  readonly along: number;
  readonly across: number;
  readonly given: string;
}
const FIELDS: readonly Field[] = [
  { name: 'even', alike: 0, along: 0, across: 0, given: '100 | 100 | 100 | 100 | 105 | 124' },
  {
    name: 'neighbours alike 0.2',
    alike: 0.2,
    along: 0,
    across: 0,
    given: '121 (70) | 98 (88) | 85 (100) | 84 (102) | 87 | 101',
  },
  {
    name: '+ slope along, 1 sd',
    alike: 0.2,
    along: 1,
    across: 0,
    given: '163 (51) | 103 (85) | 86 (100) | 85 (102) | 87 | 101',
  },
  {
    name: '+ slope along, 2 sd',
    alike: 0.2,
    along: 2,
    across: 0,
    given: '292 (29) | 120 (77) | 88 (100) | 87 (101) | 88 | 101',
  },
  {
    name: '+ slope across, 1 sd',
    alike: 0.2,
    along: 0,
    across: 1,
    given: '121 (85) | 123 (79) | 100 (100) | 84 (126) | 87 | 104',
  },
];

/** A layout: variety and block of every place. */
type Layout = readonly { readonly variety: number; readonly block: number }[];

function spread(blocks: number, run: number): Layout {
  const size = Math.max(1, Math.round(48 / blocks));
  if (blocks === 4) {
    const found = layoutOf({
      stretch: { classId: 'all', spots: SPOTS },
      varieties: VARIETIES,
      fixed: [],
      layout: 'spread',
      stream: `bench/${run}`,
    });
    return found.plants.map((own) => ({
      variety: VARIETIES.findIndex(({ variety }) => variety === own.variety),
      block: own.block,
    }));
  }
  // Other numbers of blocks: the same places, blocks as long as they are asked for.
  return spread(4, run).map((own, i) => ({ variety: own.variety, block: Math.floor(i / size) }));
}

function random(run: number): Layout {
  const { uniform } = randomStream(`bench/random/${run}`);
  return Array.from({ length: 4 }, (_, block) =>
    Array.from({ length: 12 }, (_own, variety) => ({ variety, u: uniform() }))
      .toSorted((a, b) => a.u - b.u)
      .map(({ variety }) => ({ variety, block })),
  ).flat();
}

function together(run: number, clumps: number): Layout {
  const { uniform } = randomStream(`bench/together/${clumps}/${run}`);
  const order = (): readonly number[] =>
    Array.from({ length: 12 }, (_, variety) => ({ variety, u: uniform() }))
      .toSorted((a, b) => a.u - b.u)
      .map(({ variety }) => variety);
  return Array.from({ length: clumps }, (_, block) =>
    order().flatMap((variety) => Array.from({ length: 4 / clumps }, () => ({ variety, block }))),
  ).flat();
}

/** True variance of a difference, and what the analysis believes, both mean over pairs and over one field. */
function variances(layout: Layout, field: Field): readonly [truth: number, belief: number] {
  const n = layout.length;
  const blocks = Math.max(...layout.map(({ block }) => block)) + 1;
  const p = 12 + blocks - 1;
  const x = layout.map(({ variety, block }) =>
    Array.from({ length: p }, (_, j): number => (j === variety || (block > 0 && j === 11 + block) ? 1 : 0)),
  );
  const cross = new Float64Array(p * p);
  for (const row of x)
    for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) cross[i * p + j]! += nth(row, i) * nth(row, j);
  const factor = choleskyFactor(cross, p);
  if (!factor) return [Number.NaN, Number.NaN];
  const coefficients = x.map((row) => solveUpper(factor, p, solveLower(factor, p, Float64Array.from(row))));
  const trend = SPOTS.map(({ row, column }) => (field.along * (column - 6.5)) / 11 + (field.across * (row - 2.5)) / 3);
  const covariance = (a: number, b: number): number => {
    const [one, other] = [nth(SPOTS, a), nth(SPOTS, b)];
    const apart = Math.abs(one.row - other.row) + Math.abs(one.column - other.column);
    return (a === b ? 1 : field.alike ** apart) + nth(trend, a) * nth(trend, b);
  };
  const all = Array.from({ length: n }, (_, a) => Array.from({ length: n }, (_own, b) => covariance(a, b)));
  let truth = 0;
  let plain = 0;
  let pairs = 0;
  for (let v = 0; v < 12; v++)
    for (let w = 0; w < v; w++) {
      const l = coefficients.map((own) => nth(own, v) - nth(own, w));
      for (let a = 0; a < n; a++) for (let b = 0; b < n; b++) truth += nth(l, a) * nth(l, b) * nth(nth(all, a), b);
      plain += l.reduce((sum, own) => sum + own * own, 0);
      pairs++;
    }
  // Expected residual mean square: tr(MΣ)/(n - p), M the residual projection.
  let residual = 0;
  for (let a = 0; a < n; a++)
    for (let b = 0; b < n; b++) {
      const hat = nth(x, a).reduce((sum: number, own, j) => sum + own * nth(nth(coefficients, b), j), 0);
      residual += ((a === b ? 1 : 0) - hat) * nth(nth(all, a), b);
    }
  return [truth / pairs, (plain / pairs) * (residual / (n - p))];
}

line('');
line(
  `Average variance of a difference, 12 × 4 plants in 4 × 12, % of independent plants; in brackets the belief in % of it`,
);
const LAYOUTS: readonly (readonly [string, (run: number) => Layout])[] = [
  ['together', (run) => together(run, 1)],
  ['two clumps', (run) => together(run, 2)],
  ['random blocks', random],
  ['spread, 4 blocks', (run) => spread(4, run)],
  ['6 blocks', (run) => spread(6, run)],
  ['12 blocks', (run) => spread(12, run)],
];
line(`field | ${LAYOUTS.map(([name]) => name).join(' | ')}`);
for (const field of FIELDS)
  line(
    `${field.name} | ${LAYOUTS.map(([, of]) => {
      const runs = Array.from({ length: Math.max(4, Math.round(RUNS / 10)) }, (_, run) => variances(of(run), field));
      const [truth, belief] = [average(runs.map(([own]) => own)), average(runs.map(([, own]) => own))];
      return `${Math.round((100 * truth) / 0.5)} (${Math.round((100 * belief) / truth)})`;
    }).join(' | ')} (given: ${field.given})`,
  );
line(`blocks of the rule: ${blocksOf(48, 12)}`);
