import { randomStream } from '../../src/numerics/random.ts';
import { csvText } from '../../src/terms/csv.ts';

// Random trials for the second count in R (audit.R): 5 to 20 varieties, 1 to 5 seasons, 1 to 8 plants, deaths, frost, gaps.

export interface AuditTrial {
  /** Files of the trial folder, below data/. */
  readonly files: Readonly<Record<string, string>>;
  /** What trial.yaml says, for a reader without YAML: `reading.csv`, a row a setting. */
  readonly reading: string;
}

const DAY = 86_400_000;
const CLASSES = ['sweet', 'hot', 'salad'] as const;
const iso = (time: number): string => new Date(time).toISOString().slice(0, 10);

interface Variety {
  readonly id: string;
  readonly classId: string;
  readonly grams: number;
  readonly fruit: number;
  readonly days: number;
  readonly flavour: number;
  readonly length: number;
  readonly first: number;
}

interface Dice {
  readonly uniform: () => number;
  readonly normal: () => number;
  readonly below: (n: number) => number;
  readonly between: (low: number, high: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
}

function diceOf(name: string): Dice {
  const { uniform, normal } = randomStream(name);
  return {
    uniform,
    normal,
    below: (n) => Math.floor(uniform() * n),
    between: (low, high) => low + (high - low) * uniform(),
    pick: (list) => list[Math.floor(uniform() * list.length)]!,
  };
}

interface Made {
  readonly plantings: (readonly string[])[];
  readonly harvests: (readonly string[])[];
  readonly observations: (readonly string[])[];
  readonly ratings: (readonly string[])[];
  readonly measurements: (readonly string[])[];
}

interface SeasonPlan {
  readonly year: number;
  readonly cv: number;
  readonly blocks: number;
  readonly frost: number | null;
  readonly tasters: number;
  readonly measured: boolean;
  /** Effect of the year, and of each block, on logarithms. */
  readonly level: number;
  readonly blockLevel: readonly number[];
}

const FIRST = (year: number): number => Date.UTC(year, 4, 20);

/** One planting's pickings and looks. */
function grow(made: Made, dice: Dice, plan: SeasonPlan, own: Variety, w: number, block: number, own2: number): void {
  const { uniform, normal, between, below } = dice;
  const id = `p${made.plantings.length + 1}`;
  const start = FIRST(plan.year) + below(4) * DAY;
  const fate = uniform();
  const cause = fate < 0.04 ? 'disease' : fate < 0.06 ? 'weak' : fate < 0.09 ? 'accident' : '';
  const removed = cause === '' ? null : FIRST(plan.year) + Math.round(between(20, 110)) * DAY;
  const end = removed ?? (plan.frost === null ? Date.UTC(plan.year, 9, 31) : plan.frost);
  const said = removed !== null ? cause : plan.frost === null ? '' : 'frost';
  made.plantings.push([
    id,
    own.id,
    String(w),
    plan.blocks === 0 ? '' : `b${block + 1}`,
    iso(start),
    said === '' ? '' : iso(end),
    said,
  ]);
  const plant = own.grams * Math.exp(plan.level + own2 + (plan.blockLevel[block] ?? 0) + plan.cv * normal()) * w;
  const ripe = start + Math.round(own.days * Math.exp(0.08 * normal() + 0.3 * own2) - (w > 1 ? 3 : 0)) * DAY;
  if (uniform() < 0.25) made.observations.push([iso(Math.min(ripe, end) - (1 + below(9)) * DAY), id, 'unripe', '']);
  const times = 1 + below(5);
  for (let k = 0; k < times; k++) {
    const day = ripe + k * (8 + below(8)) * DAY;
    if (day > end) break;
    const fruits = Math.max(1, Math.round((plant / own.fruit / times) * Math.exp(0.2 * normal())));
    const grams = Math.max(1, Math.round(fruits * own.fruit * Math.exp(0.1 * normal())));
    const gap = uniform() < 0.04;
    made.harvests.push([
      iso(day),
      id,
      String(fruits),
      gap ? '' : String(grams),
      k > 2 && uniform() < 0.3 ? 'green' : 'ripe',
    ]);
  }
}

function season(dice: Dice, plan: SeasonPlan, grown: readonly Variety[]): Made {
  const { uniform, normal, below, between } = dice;
  const made: Made = { plantings: [], harvests: [], observations: [], ratings: [], measurements: [] };
  for (const own of grown) {
    const change = 0.12 * normal();
    const each = plan.blocks > 0 ? plan.blocks : 1 + below(8);
    for (let b = 0; b < each; b++) {
      if (plan.blocks > 0 && uniform() < 0.08) continue;
      grow(made, dice, plan, own, uniform() < 0.8 ? 1 : 2 + below(3), b % Math.max(1, plan.blocks), change);
    }
    if (!plan.measured) continue;
    for (const [id, variety, , , , removed] of made.plantings) {
      if (variety !== own.id || removed !== '' || uniform() < 0.2) continue;
      const size = own.length * Math.exp(0.08 * normal());
      for (let k = 0; k < 1 + below(2); k++)
        made.measurements.push([iso(Date.UTC(plan.year, 7, 20)), id!, (size + between(-0.5, 0.5)).toFixed(1)]);
    }
  }
  for (let t = 0; t < plan.tasters; t++) {
    const generous = 0.8 * normal();
    for (const own of grown) {
      if (uniform() < 0.2 || !made.plantings.some(([, variety]) => variety === own.id)) continue;
      const score = Math.min(9, Math.max(1, Math.round(own.flavour + generous + normal())));
      made.ratings.push([iso(Date.UTC(plan.year, 8, 1)), `Taster ${'ABCDEF'[t]}`, own.id, String(score)]);
    }
  }
  return made;
}

/** The garden of a number, the same for the same number. */
export function auditTrial(number: number): AuditTrial {
  const dice = diceOf(`audit ${number}`);
  const { uniform, normal, below, between, pick } = dice;
  const classes = CLASSES.slice(0, 1 + below(3));
  const years = [2022, 2023, 2024, 2025, 2026].slice(4 - below(5));
  const n = 5 + below(16);
  const middle = new Map(
    classes.map((id) => [id, { grams: 150 * 20 ** uniform(), fruit: 8 * 25 ** uniform(), days: between(60, 95) }]),
  );
  const varieties = Array.from({ length: n }, (_, i): Variety => {
    const classId = classes[i % classes.length]!;
    const { grams, fruit, days } = middle.get(classId)!;
    return {
      id: `v${i + 1}`,
      classId,
      grams: grams * Math.exp(0.35 * normal()),
      fruit: fruit * Math.exp(0.3 * normal()),
      days: days * Math.exp(0.1 * normal()),
      flavour: 5.5 + 1.2 * normal(),
      length: between(4, 12),
      first: i < classes.length ? years[0]! : pick(years),
    };
  });
  const reading = {
    scale: pick(['ratio', 'ratio', 'difference']),
    layout: pick(['spread', 'together']),
    spot_correlation: pick([0.2, 0.2, 0, 0.4]),
    look_every: pick([0, 7, 7, 3]),
    interval: pick([0.95, 0.95, 0.9]),
    spots: 1 + below(5),
  };
  const files: Record<string, string> = {};
  for (const year of years) {
    const blocks = pick([0, 0, 2, 3, 4]);
    const plan: SeasonPlan = {
      year,
      cv: between(0.15, 0.6),
      blocks,
      frost: uniform() < 0.4 ? Date.UTC(year, 8, 5 + below(40)) : null,
      tasters: below(7),
      measured: uniform() < 0.6,
      level: 0.2 * normal(),
      blockLevel: Array.from({ length: blocks }, () => 0.2 * normal()),
    };
    const grown = varieties.filter(({ first }) => first === year || (first < year && uniform() < 0.75));
    const made = season(dice, plan, grown);
    files[`${year}/plantings.csv`] = csvText([
      ['planting', 'variety', 'plants', 'block', 'transplanted', 'removed', 'cause'],
      ...made.plantings,
    ]);
    files[`${year}/harvests.csv`] = csvText([['date', 'planting', 'fruits', 'weight_g', 'stage'], ...made.harvests]);
    files[`${year}/observations.csv`] = csvText([['date', 'planting', 'event', 'notes'], ...made.observations]);
    if (made.ratings.length > 0)
      files[`${year}/ratings.csv`] = csvText([['date', 'taster', 'variety', 'flavour'], ...made.ratings]);
    if (made.measurements.length > 0)
      files[`${year}/measurements.csv`] = csvText([['date', 'planting', 'length_cm'], ...made.measurements]);
  }
  files['varieties.csv'] = csvText([
    ['variety', 'class', 'first_grown'],
    ...varieties.map(({ id, classId, first }) => [id, classId, String(first)]),
  ]);
  const checks = classes.map((id) => [id, varieties.find(({ classId }) => classId === id)!.id] as const);
  files['trial.yaml'] = `title: Audit ${number}
season_end: 10-31
interval: ${reading.interval}
spot_correlation: ${reading.spot_correlation}
classes:
${checks.map(([id, check]) => `  ${id}: {check_variety: ${check}, scale: ${reading.scale}, spots: ${reading.spots}}`).join('\n')}
traits:
  flavour: {kind: rating, from: 1, to: 9, better: higher}
  length: {kind: measure, unit: cm, better: none}
seasons:
${years.map((year) => `  ${year}: {harvests: complete, layout: ${reading.layout}, look_every: ${reading.look_every}}`).join('\n')}
`;
  return {
    files,
    reading: csvText([
      ['setting', 'value'],
      ...Object.entries(reading).map(([key, value]) => [key, String(value)]),
      ...checks.map(([id, check]) => [`check ${id}`, check]),
    ]),
  };
}
