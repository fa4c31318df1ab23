import { csvText } from '../../src/terms/csv.ts';
import { randomStream } from '../../src/numerics/random.ts';
import type { Folder } from '../sites/folder.ts';

// Trials of any tables that the contract allows, the odd ones more often than in a garden: everything lost, nothing
// ripe, all alike, one of each, overlapping blocks, counts alone, taste alone, seasons known from totals.

type Rows = (readonly string[])[];
type Cells = Readonly<Record<string, string>>;

const DAY = 86_400_000;
const YEARS = [2023, 2024, 2025, 2026] as const;
const iso = (time: number): string => new Date(time).toISOString().slice(0, 10);

class Dice {
  readonly uniform: () => number;
  readonly normal: () => number;
  constructor(name: string) {
    ({ uniform: this.uniform, normal: this.normal } = randomStream(name));
  }
  below(n: number): number {
    return Math.floor(this.uniform() * n);
  }
  is(chance: number): boolean {
    return this.uniform() < chance;
  }
  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}

/** Rows as a table with every column that any row has. */
function table(rows: readonly Cells[]): string {
  const head = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return csvText([head, ...rows.map((row) => head.map((key) => row[key] ?? ''))] as Rows);
}

interface Kind {
  readonly classes: readonly string[];
  readonly varieties: readonly { readonly id: string; readonly classId: string; readonly size: number }[];
  readonly from: number;
  readonly to: number;
}

interface SeasonHabits {
  readonly year: number;
  readonly weighs: boolean;
  readonly counts: boolean;
  readonly dates: boolean;
  readonly noise: number;
  readonly dies: number;
  readonly blocks: number;
  readonly gives: number;
  readonly large: boolean;
}

function habitsOf(dice: Dice, year: number): SeasonHabits {
  return {
    year,
    weighs: dice.is(0.75),
    counts: dice.is(0.75),
    dates: dice.is(0.85),
    noise: dice.pick([0, 0, 0.02, 0.3, 0.6, 1.5]),
    dies: dice.pick([0, 0, 0.1, 0.5, 1]),
    blocks: dice.pick([0, 0, 2, 3, 5]),
    gives: dice.pick([1, 1, 0.9, 0.6, 0.2, 0]),
    large: dice.is(0.3),
  };
}

function planting(dice: Dice, habits: SeasonHabits, id: string, variety: string, b: number): Cells {
  const start = Date.UTC(habits.year, 4, 20) + (dice.is(0.3) ? dice.below(20) : 0) * DAY;
  const dead = dice.is(habits.dies);
  return {
    planting: id,
    variety,
    plants: String(habits.large ? 1 + dice.below(6) : 1),
    ...(habits.blocks > 0 && dice.is(0.95) ? { block: `b${1 + ((b + dice.below(2)) % habits.blocks)}` } : {}),
    ...(dice.is(0.2) ? { stands_in: dice.pick(['ground', 'bed', 'pot', 'bag']) } : {}),
    ...(dice.is(0.2) ? { bed: dice.pick(['north', 'south']) } : {}),
    ...(dice.is(0.15) ? { topped: dice.pick(['yes', 'no']) } : {}),
    ...(dice.is(0.9) ? { transplanted: iso(start) } : {}),
    ...(dead
      ? {
          removed: iso(start + (5 + dice.below(120)) * DAY),
          cause: dice.pick(['frost', 'disease', 'pest', 'weak', 'accident', 'accident', 'other']),
        }
      : {}),
  };
}

function pickings(dice: Dice, habits: SeasonHabits, own: Cells, size: number): readonly Cells[] {
  if (!dice.is(habits.gives)) return [];
  const start = own['transplanted'] ? Date.parse(own['transplanted']) : Date.UTC(habits.year, 4, 20);
  const end = own['removed'] ? Date.parse(own['removed']) : Date.UTC(habits.year, 9, 31);
  return Array.from({ length: 1 + dice.below(3) }, (): Cells => {
    const day = Math.min(end, start + (45 + dice.below(60)) * DAY);
    const value = size * Math.exp(habits.noise * dice.normal()) * Number(own['plants']);
    const grams = dice.is(0.03) ? '<5' : dice.is(0.03) ? '0' : value.toFixed(value < 1 ? 3 : 0);
    return {
      planting: own['planting']!,
      ...(habits.dates && dice.is(0.97) ? { date: iso(day) } : {}),
      ...(habits.counts || !habits.weighs ? { fruits: String(Math.max(0, Math.round(value / 40))) } : {}),
      ...(habits.weighs && dice.is(0.95) ? { weight_g: grams } : {}),
      ...(dice.is(0.05) ? { stage: 'green' } : {}),
      ...(dice.is(0.05) ? { unusable_fruits: String(dice.below(4)) } : {}),
    };
  }).filter((row) => Object.keys(row).length > 1);
}

function looks(dice: Dice, habits: SeasonHabits, own: Cells): readonly Cells[] {
  const start = own['transplanted'] ? Date.parse(own['transplanted']) : Date.UTC(habits.year, 4, 20);
  const end = own['removed'] ? Date.parse(own['removed']) : Date.UTC(habits.year, 9, 31);
  const day = (): string => iso(Math.min(end, start + (20 + dice.below(90)) * DAY));
  const of = 1 + dice.below(12);
  const rows: Cells[] = [];
  if (dice.is(0.15)) rows.push({ date: day(), planting: own['planting']!, event: dice.pick(['unripe', 'first-ripe']) });
  if (dice.is(0.1))
    rows.push({
      date: day(),
      planting: own['planting']!,
      event: dice.pick(['hot', 'off-type']),
      count: String(dice.below(of + 1)),
      of: String(of),
    });
  if (dice.is(0.03)) rows.push({ date: day(), planting: own['planting']!, event: 'nothing-picked' });
  return rows;
}

function tastings(dice: Dice, kind: Kind, year: number, grown: readonly string[]): readonly Cells[] {
  const tasters = dice.pick([1, 1, 2, 3, 5]);
  const tasted = dice.pick([1, 0.8, 0.4]);
  const alike = dice.is(0.15);
  return Array.from({ length: tasters }, (_, t) =>
    grown
      .filter(() => dice.is(tasted))
      .map((variety): Cells => {
        const score = alike ? kind.from : kind.from + dice.below(kind.to - kind.from + 1);
        return {
          date: iso(Date.UTC(year, 7, 20 + (tasters === 1 ? dice.below(3) : 0))),
          taster: `T${t + 1}`,
          variety,
          ...(dice.is(0.95) ? { flavour: String(score) } : {}),
          ...(dice.is(0.3) ? { again: dice.pick(['yes', 'no']) } : {}),
          ...(dice.is(0.3) ? { heat: String(dice.below(11)) } : {}),
        };
      }),
  ).flat();
}

function totals(dice: Dice, kind: Kind, habits: SeasonHabits, grown: readonly string[]): readonly Cells[] {
  const sizes = new Map(kind.varieties.map(({ id, size }) => [id, size]));
  return grown.map((variety): Cells => {
    const plants = 1 + dice.below(5);
    const grams = sizes.get(variety)! * plants * Math.exp(habits.noise * dice.normal());
    return {
      variety,
      plants: String(plants),
      ...(habits.weighs ? { weight_g: dice.is(0.1) ? '0' : String(Math.round(grams)) } : {}),
      ...(habits.counts ? { fruits: String(Math.round(grams / 40)) } : {}),
      ...(dice.is(0.5)
        ? { transplanted: `${habits.year}-05-20`, first_ripe: `${habits.year}-08-0${1 + dice.below(9)}` }
        : {}),
      ...(dice.is(0.7) ? { flavour: String(kind.from + dice.below(kind.to - kind.from + 1)) } : {}),
      ...(dice.is(0.5) ? { again: dice.pick(['yes', 'no']) } : {}),
    };
  });
}

function seasonTables(dice: Dice, kind: Kind, year: number): Folder {
  const habits = habitsOf(dice, year);
  const grown = kind.varieties.filter(() => dice.is(0.8)).map(({ id }) => id);
  if (grown.length === 0) grown.push(kind.varieties[0]!.id);
  if (dice.is(0.2)) return { [`${year}/totals.csv`]: table(totals(dice, kind, habits, grown)) };
  const most = dice.pick([1, 1, 2, 3, 4]);
  const plantings = grown.flatMap((variety) =>
    Array.from({ length: 1 + dice.below(most) }, (_, b) => planting(dice, habits, `${variety}-${b + 1}`, variety, b)),
  );
  const sizes = new Map(kind.varieties.map(({ id, size }) => [id, size]));
  const picked = dice.is(0.85)
    ? plantings.flatMap((own) => pickings(dice, habits, own, sizes.get(own['variety']!)!))
    : [];
  const seen = dice.is(0.6) ? plantings.flatMap((own) => looks(dice, habits, own)) : [];
  const scores = dice.is(0.6) ? tastings(dice, kind, year, grown) : [];
  const measured = dice.is(0.4)
    ? plantings
        .filter(() => dice.is(0.7))
        .map((own): Cells => ({
          date: `${year}-08-15`,
          planting: own['planting']!,
          length_cm: (dice.is(0.5) ? 8 : 4 + dice.below(9)).toFixed(1),
        }))
    : [];
  const sown = dice.is(0.3)
    ? grown.map((variety): Cells => {
        const seeds = 1 + dice.below(20);
        return { variety, sown: `${year}-03-01`, seeds: String(seeds), germinated: String(dice.below(seeds + 1)) };
      })
    : [];
  const tables = {
    plantings,
    harvests: picked,
    observations: seen,
    ratings: scores,
    measurements: measured,
    germination: sown,
  };
  return Object.fromEntries(
    Object.entries(tables).flatMap(([name, rows]) => (rows.length === 0 ? [] : [[`${year}/${name}.csv`, table(rows)]])),
  );
}

function goalLines(dice: Dice, classes: readonly string[]): string {
  const goals = ['yield', 'fruits', 'first_ripe', 'flavour', 'again', 'length'];
  const lines: string[] = [];
  if (dice.is(0.4)) {
    const own = classes
      .filter(() => dice.is(0.8))
      .map(
        (id) =>
          `  ${id}: {${
            goals
              .filter(() => dice.is(0.5))
              .map((g) => `${g}: ${1 + dice.below(4)}`)
              .join(', ') || 'yield: 1'
          }}`,
      );
    if (own.length > 0) lines.push('goals:', ...own);
  }
  if (dice.is(0.3))
    lines.push(
      'must:',
      `  ${classes[0]!}: {${dice.pick(['heat: {at_most: 2}', 'yield: {at_least: 300}', 'off_type: {at_most: 0.1}', 'flavour: {at_least: 4}'])}}`,
    );
  return lines.join('\n');
}

function settings(dice: Dice, kind: Kind, years: readonly number[]): string {
  const scale = dice.pick(['ratio', 'ratio', 'difference']);
  const classLines = kind.classes.map((id) => {
    const own = kind.varieties.filter((v) => v.classId === id).map((v) => v.id);
    const parts = [
      `scale: ${scale}`,
      ...(own.length > 0 && dice.is(0.7) ? [`check_variety: ${dice.pick(own)}`] : []),
      ...(dice.is(0.5) ? [`spots: ${dice.below(6)}`] : []),
      ...(dice.is(0.3) ? ['bar: check'] : []),
    ];
    return `  ${id}: {${parts.join(', ')}}`;
  });
  const seasons = years.map((year) => {
    const parts = [
      ...(dice.is(0.4) ? ['harvests: complete'] : []),
      ...(dice.is(0.3) ? [`layout: ${dice.pick(['together', 'spread'])}`] : []),
      ...(dice.is(0.3) ? [`look_every: ${dice.pick([0, 1, 7, 21])}`] : []),
      ...(dice.is(0.3) ? [`early_until: ${year}-08-01`] : []),
    ];
    return `  ${year}: {${parts.join(', ')}}`;
  });
  return `title: Any trial
season_end: 10-31
interval: ${dice.pick([0.95, 0.95, 0.8, 0.99])}
spot_correlation: ${dice.pick([0.2, 0.2, 0, 0.9])}
first_ripe_from: transplanted
units: ${dice.pick(['metric', 'metric', 'us'])}
language: ${dice.pick(['en-GB', 'en-GB', 'de'])}
classes:
${classLines.join('\n')}
traits:
  flavour: {kind: rating, from: ${kind.from}, to: ${kind.to}, better: higher}
  heat: {kind: rating, from: 0, to: 10, better: ${dice.pick(['none', 'lower'])}}
  length: {kind: measure, unit: cm, better: ${dice.pick(['none', 'higher', 'between'])}}
seasons:
${seasons.join('\n')}
${goalLines(dice, kind.classes)}
verdicts: {simulations: ${dice.pick([100, 1000, 1000, 4000])}, keep_from: ${dice.pick([0.8, 0.8, 0.6])}}
`;
}

/** The trial folder of a number, the same for the same number. */
export function anyTrial(number: number): Folder {
  const dice = new Dice(`any trial ${number}`);
  const classes = ['sweet', 'hot', 'salad'].slice(0, 1 + dice.below(3));
  const size = dice.pick([0.5, 40, 400, 2000]);
  const spread = dice.pick([0, 0.3, 2]);
  const [from, to] = dice.pick([
    [1, 9],
    [0, 10],
    [1, 2],
    [1, 5],
  ] as const);
  const kind: Kind = {
    classes,
    from,
    to,
    varieties: Array.from({ length: 1 + dice.below(8) }, (_, i) => ({
      id: `v${i + 1}`,
      classId: dice.pick(classes),
      size: size * Math.exp(spread * dice.normal()),
    })),
  };
  const years = YEARS.filter(() => dice.is(0.5));
  if (years.length === 0) years.push(2026);
  return {
    'trial.yaml': settings(dice, kind, years),
    'varieties.csv': table(
      kind.varieties.map(({ id, classId }): Cells => ({
        variety: id,
        class: classId,
        ...(dice.is(0.1) ? { first_grown: '2022' } : {}),
        ...(dice.is(0.1) ? { retired: 'yes' } : {}),
        ...(dice.is(0.2) ? { claim_days: '75', claim_days_max: '80' } : {}),
      })),
    ),
    ...Object.assign({}, ...years.map((year) => seasonTables(dice, kind, year))),
  };
}
