/**
 * Makes the demo trial's tables: an invented club, invented varieties, invented figures from a seeded generator.
 * Run from the project's root: node --import tsx data/make-demo.ts
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runPlan } from '../src/main/plan.ts';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { dayOf, isoDate } from '../src/terms/day.ts';
import type { Day } from '../src/terms/day.ts';
import { normalQuantile } from '../src/numerics/normal.ts';

const generator = xoroshiro128plus(20260520);
const uniform = (): number => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
const normal = (): number => normalQuantile(uniform());
const between = (low: number, high: number): number => low + (high - low) * uniform();
const poisson = (mean: number): number => {
  let k = 0;
  for (let p = uniform(); p > Math.exp(-Math.min(mean, 600)); p *= uniform()) k++;
  return k;
};

interface Invented {
  readonly id: string;
  readonly name: string;
  readonly class: string;
  /** grams a plant, grams a fruit, days to first ripe, flavour, heat */
  readonly grams: number;
  readonly each: number;
  readonly days: number;
  readonly flavour: number;
  readonly heat: number;
  readonly years: readonly number[];
  readonly more?: Readonly<Record<string, string>>;
}

const v = (
  id: string,
  cls: string,
  figures: readonly [number, number, number, number, number],
  years: string,
  more: Record<string, string> = {},
): Invented => ({
  id,
  name: id
    .split('-')
    .map((word) => (word === 'of' ? word : word[0]!.toUpperCase() + word.slice(1)))
    .join(' '),
  class: cls,
  grams: figures[0],
  each: figures[1],
  days: figures[2],
  flavour: figures[3],
  heat: figures[4],
  years: [...years].map((year) => 2020 + Number(year)),
  more,
});

const VARIETIES: readonly Invented[] = [
  v('marrow-lantern', 'sweet', [1380, 120, 80, 7.6, 0], '3456', {
    claim_days: '80',
    claim_days_max: '85',
    colour_ripe: 'red',
  }),
  v('tollgate-amber', 'sweet', [980, 105, 78, 7.3, 0], '3456', { claim_days: '75', colour_ripe: 'amber' }),
  v('quarry-bell', 'sweet', [1420, 150, 95, 5.1, 0], '456', { claim_days: '90', colour_ripe: 'dark red' }),
  v('wren-hill', 'sweet', [760, 62, 72, 7.0, 0], '56', { colour_ripe: 'yellow' }),
  v('bishops-pocket', 'sweet', [640, 130, 92, 4.9, 0], '6', { claim_days: '78', colour_ripe: 'orange' }),
  v('long-barrow', 'sweet', [900, 110, 101, 6.6, 0], '6', { claim_days: '85', colour_ripe: 'red' }),
  v('ashpit-crossing-f2', 'sweet', [850, 80, 86, 6.3, 0.6], '4', {
    kind: 'line',
    generation: 'F2',
    mother: 'tollgate-amber',
    father: 'unknown',
  }),
  v('ashpit-crossing-f3', 'sweet', [930, 85, 84, 6.6, 0.4], '5', { kind: 'line', generation: 'F3' }),
  v('ashpit-crossing-f4', 'sweet', [1010, 88, 82, 6.9, 0.2], '6', { kind: 'line', generation: 'F4' }),
  v('chapel-ribbon', 'frying', [900, 34, 66, 7.7, 0.4], '3456', { colour_ripe: 'red' }),
  v('saltcote', 'frying', [900, 41, 76, 6.8, 0.3], '456', { colour_ripe: 'red' }),
  v('ferry-lane', 'frying', [470, 28, 74, 4.8, 1.2], '56', { colour_ripe: 'orange' }),
  v('ropewalk', 'frying', [760, 38, 74, 7.1, 0.3], '6', { colour_ripe: 'red' }),
  v('kiln-spark', 'hot', [420, 9, 86, 6.0, 6.5], '3456', {
    colour_ripe: 'red',
    claim_heat_min: '15000',
    claim_heat_max: '30000',
  }),
  v('beacon-stile', 'hot', [310, 7, 112, 7.2, 8.6], '456', {
    colour_ripe: 'orange',
    claim_heat_min: '80000',
    former_ids: 'beacon-ember',
  }),
  v('cinder-row', 'hot', [480, 12, 92, 5.2, 5.2], '56', { colour_ripe: 'red' }),
  v('farrier', 'hot', [360, 8, 96, 6.7, 7.4], '6', { colour_ripe: 'chocolate' }),
  v('nightwatch', 'hot', [250, 10, 132, 6.9, 9.2], '6', { colour_ripe: 'purple', claim_days: '110' }),
  v('smithy-cross-f2', 'hot', [380, 9, 93, 6.1, 6.0], '5', {
    kind: 'line',
    generation: 'F2',
    mother: 'kiln-spark',
    father: 'cinder-row',
  }),
  v('smithy-cross-f3', 'hot', [400, 10, 91, 6.3, 6.2], '6', { kind: 'line', generation: 'F3' }),
  v('gatehouse-round', 'salad', [2300, 95, 68, 6.3, 0], '3456', { colour_ripe: 'red' }),
  v('lychgate', 'salad', [2250, 110, 72, 8.3, 0], '456', { colour_ripe: 'pink' }),
  v('millrace', 'salad', [2600, 88, 63, 4.8, 0], '56', { colour_ripe: 'red' }),
  v('pinfold', 'salad', [2150, 100, 74, 6.9, 0], '6', { colour_ripe: 'yellow' }),
  v('bellrope', 'cherry', [1700, 14, 60, 7.2, 0], '3456', { colour_ripe: 'red' }),
  v('hedge-sparrow', 'cherry', [1700, 11, 57, 8.5, 0], '456', { colour_ripe: 'orange' }),
  v('thimble-rain', 'cherry', [1150, 9, 62, 5.2, 0], '6', { colour_ripe: 'yellow' }),
];

const FROM: Readonly<Record<string, string>> = {
  'smithy-cross-f2': '2024/smithy-cross-f1',
  'ashpit-crossing-f3': '2024/ashpit-crossing-f2-3',
  'ashpit-crossing-f4': '2025/ashpit-crossing-f3-2',
  'smithy-cross-f3': '2025/smithy-cross-f2-4',
};
const TASTERS = [
  ['Ada Thorn', 0.6],
  ['Berwick Moss', -0.7],
  ['Corin Lamb', 0.1],
  ['Dilys Frame', 0.9],
  ['Edda Pike', -0.4],
  ['Finn Oakes', -0.2],
] as const;
const YEARS: Readonly<Record<number, readonly [yieldFactor: number, daysFactor: number]>> = {
  2023: [0.9, 1.04],
  2024: [1.08, 0.97],
  2025: [0.82, 1.07],
  2026: [1, 1],
};
const day = (year: number, month: number, date: number): Day => dayOf(year, month, date)!;
const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  `${rows.map((row) => row.map((cell) => (/[",\n]/.test(String(cell)) ? `"${String(cell).replaceAll('"', '""')}"` : cell)).join(',')).join('\n')}\n`;
const write = (path: string, rows: readonly (readonly (string | number)[])[]): void =>
  writeFileSync(new URL(path, import.meta.url), csv(rows));

const columns = [
  'kind',
  'generation',
  'mother',
  'father',
  'claim_days',
  'claim_days_max',
  'claim_heat_min',
  'claim_heat_max',
  'colour_ripe',
  'former_ids',
];
const NEWCOMERS = [
  [
    'amber-hook',
    'Amber Hook',
    'sweet',
    'Capsicum annuum',
    '',
    'green',
    'open-pollinated',
    '',
    '',
    '',
    78,
    '',
    '',
    '',
    'orange',
    '',
  ],
  [
    'stile-copper',
    'Stile Copper',
    'frying',
    'Capsicum annuum',
    '',
    'green',
    'hybrid',
    '',
    '',
    '',
    70,
    '',
    '',
    '',
    'red',
    '',
  ],
];
write('varieties.csv', [
  ['variety', 'name', 'class', 'species', 'from', 'colour_unripe', ...columns],
  ...VARIETIES.map((own) => [
    own.id,
    own.name.replace(/ F(\d)$/i, ' F$1'),
    own.class,
    own.class === 'salad' || own.class === 'cherry' ? 'Solanum lycopersicum' : 'Capsicum annuum',
    FROM[own.id] ?? '',
    'green',
    ...columns.map((column) => own.more?.[column] ?? (column === 'kind' ? 'open-pollinated' : '')),
  ]),
  [
    'smithy-cross-f1',
    'Smithy Cross F1',
    'hot',
    'Capsicum annuum',
    '',
    'green',
    'line',
    'F1',
    'kiln-spark',
    'cinder-row',
    '',
    '',
    '',
    '',
    '',
    '',
  ],
  // For next season: never grown.
  ...NEWCOMERS,
]);

/** The first plant of the Smithy Cross, in 2024. */
const F1 = 'smithy-cross-f1';
const F1_PICKED = [
  ['2024-08-19', 6, 58],
  ['2024-08-27', 11, 104],
  ['2024-09-05', 13, 121],
  ['2024-09-15', 9, 86],
  ['2024-09-26', 4, 35],
] as const;

/** States of plants: date, planting, variety, plants, leaf, unripe fruit, note. */
const STATES: Readonly<Record<number, readonly string[]>> = {
  2024: [
    '2024-08-25,smithy-cross-f1,,,dark,purple,',
    ...'dark,dark,dark,green,dark,dark,green,dark'
      .split(',')
      .map((leaf, i) => `2024-08-25,ashpit-crossing-f2${i === 0 ? '' : `-${i + 1}`},,,${leaf},,`),
  ],
  2025: [
    '2025-04-20,,smithy-cross-f2,22,dark,,seedling tray of 30; the eight set out are among them',
    '2025-04-20,,smithy-cross-f2,8,green,,',
    '2025-08-28,smithy-cross-f2,,,dark,purple,',
    '2025-08-28,smithy-cross-f2-2,,,dark,green,',
    '2025-08-28,smithy-cross-f2-3,,,green,green,',
    '2025-08-28,smithy-cross-f2-4,,,dark,purple,seed saved: upright and early',
    '2025-08-28,smithy-cross-f2-5,,,dark,purple,',
    '2025-08-28,smithy-cross-f2-6,,,green,green,',
    '2025-08-28,smithy-cross-f2-7,,,dark,green,seed saved',
    '2025-08-28,smithy-cross-f2-8,,,dark,purple,',
    '2025-08-28,,kiln-spark,5,green,green,',
    '2025-08-28,,cinder-row,5,dark,purple,',
    ...'dark,dark,dark,green,dark,dark'
      .split(',')
      .map((leaf, i) => `2025-08-25,ashpit-crossing-f3${i === 0 ? '' : `-${i + 1}`},,,${leaf},,`),
  ],
  2026: 'purple,purple,green,purple,purple,green'
    .split(',')
    .map((fruit, i) => `2026-08-25,smithy-cross-f3${i === 0 ? '' : `-${i + 1}`},,,dark,${fruit},`),
};

/** Sowings of lots that were counted. */
const LOT_ROWS: Readonly<Record<number, readonly string[]>> = {
  2026: [
    ',2026-03-02,12,10,26,sc-4,soil',
    ',2026-02-10,10,6,26,marrow-lantern-22,paper',
    ',2026-03-02,12,6,26,marrow-lantern-22,soil',
    ',2026-03-02,10,7,26,kiln-spark-23,soil',
  ],
};

write('seeds.csv', [
  'lot,variety,from,saved,seeds,weight_g,pollination,stored,treated,gone,notes'.split(','),
  ...[
    'kiln-spark-23,kiln-spark,,2023,60,,,room,,,bought packet',
    'sc-4,smithy-cross-f3,2025/smithy-cross-f2-4,2025-09-28,90,,bagged,room,,,',
    'sc-7,,2025/smithy-cross-f2-7,2025-09-28,40,,open,room,,,not sown yet',
    'sc-4-2,,2026/smithy-cross-f3-2,2026-09-30,,0.6,bagged,cold,,,',
    'ac-mix,,2026/ashpit-crossing-f4;2026/ashpit-crossing-f4-3,2026-10-02,80,,open,room,,,two plants mixed',
    'marrow-lantern-22,marrow-lantern,,2022,35,,open,room,,,home saved from three plants',
    'quarry-bell-24,quarry-bell,,2024,20,,,room,yes,,treated',
    'wren-hill,wren-hill,,,15,,,room,,,a swap without a year',
  ].map((row) => row.split(',')),
]);

const seasonEffects = new Map(
  VARIETIES.map(({ id }) => [
    id,
    new Map(
      [2023, 2024, 2025, 2026].map((year) => [year, [normal() * 0.12, normal() * 0.04, normal() * 0.3] as const]),
    ),
  ]),
);

function notebook(): void {
  const rows = VARIETIES.filter(({ years }) => years.includes(2023)).map((own) => {
    const [y, d, f] = seasonEffects.get(own.id)!.get(2023)!;
    const grams = Math.round((own.grams * 4 * Math.exp(y + normal() * 0.2) * YEARS[2023]![0]) / 50) * 50;
    const ripe = isoDate((day(2023, 5, 24) + Math.round(own.days * YEARS[2023]![1] * Math.exp(d) - 4)) as Day);
    return [own.id, 4, grams, ripe, Math.round(own.flavour + f), own.flavour + f > 6 ? 'yes' : 'no'];
  });
  write('2023/totals.csv', [['variety', 'plants', 'weight_g', 'first_ripe', 'flavour', 'again'], ...rows]);
}

interface Plant {
  readonly id: string;
  readonly own: Invented;
  readonly block: number;
  readonly removed: Day | null;
  readonly cause: string;
}

function plantsOf(year: number): readonly Plant[] {
  const plants: Plant[] = [];
  for (const own of VARIETIES) {
    if (!own.years.includes(year)) continue;
    const isLine = own.more?.['kind'] === 'line';
    const n = isLine ? (own.id.endsWith('f2') ? 8 : 6) : own.class === 'sweet' ? 4 : own.class === 'cherry' ? 2 : 3;
    for (let i = 0; i < n; i++) {
      const lost = uniform() < 0.03;
      const accident = year === 2026 && own.id === 'saltcote' && i === 1;
      const removed = accident
        ? day(year, 6, 30)
        : lost
          ? ((day(year, 7, 1) + Math.floor(between(0, 70))) as Day)
          : null;
      const cause = accident ? 'accident' : lost ? (uniform() < 0.5 ? 'disease' : 'pest') : '';
      plants.push({ id: i === 0 ? own.id : `${own.id}-${i + 1}`, own, block: i + 1, removed, cause });
    }
  }
  return plants;
}

/** Where a class stands, by place in the class: peppers in beds by block, hot ones in pots, tomatoes in the ground. */
const STANDS: Readonly<Record<string, string>> = {
  sweet: 'bed',
  frying: 'bed',
  hot: 'pot',
  salad: 'ground',
  cherry: 'ground',
};

/** Place along its row: in the sweet bed each row is a block in an order of its own, elsewhere a variety has a column. */
function columnsOf(year: number, plants: readonly Plant[]): (id: string) => number {
  const shuffle = xoroshiro128plus(year);
  const columns = new Map<string, number>();
  for (const row of [0, 1, 2, 3]) {
    const left = plants.filter(({ own, block }) => own.class === 'sweet' && (block - 1) % 4 === row);
    for (let column = 1; left.length > 0; column++) {
      const at = (shuffle.next() >>> 0) % left.length;
      columns.set(left.splice(at, 1)[0]!.id, column);
    }
  }
  return (id) => {
    const known = columns.get(id);
    if (known !== undefined) return known;
    const { own } = plants.find((plant) => plant.id === id)!;
    const varieties = plants.filter((plant) => plant.own.class === own.class).map((plant) => plant.own.id);
    return 1 + [...new Set(varieties)].indexOf(own.id);
  };
}

function season(year: number): void {
  const plants = plantsOf(year);
  const out = day(year, 5, year === 2026 ? 20 : year === 2025 ? 21 : 22);
  const end = day(year, 10, 24);
  const harvests: (string | number)[][] = [];
  const observations: (string | number)[][] = [];
  const measurements: (string | number)[][] = [];
  for (const { id, own, block, removed } of plants) {
    const [y, d] = seasonEffects.get(own.id)!.get(year)!;
    const spread = own.more?.['kind'] === 'line' ? 0.4 : 0.28;
    const total =
      own.grams *
      YEARS[year]![0] *
      Math.exp(y + normal() * spread + (own.class === 'sweet' ? [0.12, 0.02, -0.05, -0.1][(block - 1) % 4]! : 0));
    const firstRipe = (out + Math.round(own.days * YEARS[year]![1] * Math.exp(d + normal() * 0.06))) as Day;
    const each = own.each * Math.exp(normal() * 0.08);
    if (firstRipe > out + 70 && firstRipe - 8 < end)
      observations.push([isoDate((firstRipe - 4 - Math.floor(between(0, 4))) as Day), id, 'unripe', '', '']);
    const stop = removed ?? end;
    const picks: Day[] = [];
    for (let at = firstRipe; at <= stop; at = (at + 6 + Math.floor(between(0, 4))) as Day) picks.push(at);
    const shares = picks.map((_, i) => Math.exp(-0.5 * ((i - picks.length * 0.4) / (picks.length * 0.35)) ** 2));
    const full = shares.reduce((sum, share) => sum + share, 0);
    picks.forEach((at, i) => {
      const fruits = Math.max(i === 0 ? 1 : 0, poisson((total / each) * (shares[i]! / full)));
      if (fruits === 0) return;
      const culls = uniform() < 0.15 ? 1 + poisson(0.4) : '';
      harvests.push([isoDate(at), id, fruits, Math.round(fruits * each * Math.exp(normal() * 0.04)), 'ripe', culls]);
    });
    if (removed === null && firstRipe > end - 25 && firstRipe - 30 < end) {
      const green = poisson(total / each / 3);
      if (green > 0) harvests.push([isoDate(end), id, green, Math.round(green * each * 0.8), 'green', '']);
    }
    if (picks.length > 1) {
      const size = Math.cbrt(each);
      const shape =
        own.class === 'frying'
          ? [4.6, 0.85]
          : own.class === 'hot'
            ? [3.2, 0.9]
            : own.class === 'sweet'
              ? [1.9, 1.55]
              : [1.15, 1.25];
      for (let k = 0; k < 2; k++) {
        const pepper = own.class !== 'salad' && own.class !== 'cherry';
        measurements.push([
          isoDate(picks[1]!),
          id,
          (size * shape[0]! * Math.exp(normal() * 0.08)).toFixed(1),
          (size * shape[1]! * Math.exp(normal() * 0.06)).toFixed(1),
          pepper ? (size * 0.9 * Math.exp(normal() * 0.1)).toFixed(1) : '',
        ]);
      }
    }
  }
  const folder = `${year}/`;
  if (year === 2024) {
    for (const [at, fruits, grams] of F1_PICKED) harvests.push([at, F1, fruits, grams, 'ripe', '']);
  }
  const columnOf = columnsOf(year, plants);
  write(`${folder}plantings.csv`, [
    ['planting', 'variety', 'bed', 'row', 'column', 'block', 'stands_in', 'removed', 'cause'],
    ...plants.map(({ id, own, block, removed, cause }) => [
      id,
      own.id,
      `${own.class} ${STANDS[own.class]}`,
      own.class === 'sweet' ? ((block - 1) % 4) + 1 : block,
      columnOf(id),
      own.class === 'sweet' ? `row ${((block - 1) % 4) + 1}` : own.class,
      STANDS[own.class]!,
      removed === null ? '' : isoDate(removed),
      cause,
    ]),
    ...(year === 2024 ? [[F1, F1, 'hot pot', 1, 9, 'hot', 'pot', '', '']] : []),
  ]);
  harvests.sort((a, b) => String(a[0]).localeCompare(String(b[0])));
  write(`${folder}harvests.csv`, [['date', 'planting', 'fruits', 'weight_g', 'stage', 'unusable_fruits'], ...harvests]);
  if (year === 2026) {
    observations.push(['2026-09-12', 'ferry-lane', 'hot', 1, 3], ['2026-08-20', 'ropewalk', 'off-type', 1, 3]);
  }
  write(`${folder}observations.csv`, [['date', 'planting', 'event', 'count', 'of'], ...observations]);
  write(`${folder}measurements.csv`, [
    [
      'date',
      'planting',
      'variety',
      'plants',
      'fruit_length_cm',
      'fruit_width_cm',
      'wall_mm',
      'leaf',
      'fruit_unripe',
      'notes',
    ],
    ...measurements.map(([at, id, ...sizes]) => [at!, id!, '', '', ...sizes, '', '', '']),
    ...(STATES[year] ?? []).map((text) => {
      const [at, id, variety, plants, leaf, fruit, note] = text.split(',') as [
        string,
        string,
        string,
        string,
        string,
        string,
        string,
      ];
      return [at, id, variety, plants, '', '', '', leaf, fruit, note];
    }),
  ]);
  const ratings = TASTERS.slice(0, year === 2024 ? 4 : 6).flatMap(([taster, generosity]) =>
    VARIETIES.filter(({ years }) => years.includes(year)).flatMap((own) => {
      if (uniform() < 0.12) return [];
      const flavour = Math.min(
        9,
        Math.max(1, Math.round(own.flavour + seasonEffects.get(own.id)!.get(year)![2] + generosity + normal() * 1.1)),
      );
      const heat =
        own.class === 'salad' || own.class === 'cherry'
          ? ''
          : Math.min(10, Math.max(0, Math.round(own.heat + normal() * 0.8)));
      return [[`${year}-09-12`, taster, own.id, flavour, heat, flavour + normal() > 6.3 ? 'yes' : 'no', 'yes']];
    }),
  );
  write(`${folder}ratings.csv`, [['date', 'taster', 'variety', 'flavour', 'heat', 'again', 'blind'], ...ratings]);
  write(`${folder}germination.csv`, [
    ['variety', 'sown', 'seeds', 'germinated', 'temperature_c', 'lot', 'method'],
    ...VARIETIES.filter(({ years }) => years.includes(year)).map((own) => {
      const seeds = 8 + 2 * Math.floor(between(0, 5));
      let up = 0;
      for (let i = 0; i < seeds; i++) if (uniform() < (own.class === 'hot' ? 0.74 : 0.88)) up++;
      return [own.id, `${year}-03-0${year === 2024 ? 4 : year === 2025 ? 3 : 2}`, seeds, up, 26, '', ''];
    }),
    ...(LOT_ROWS[year] ?? []).map((row) => row.split(',')),
  ]);
  const weather: (string | number)[][] = [...april(year)];
  for (let at = day(year, 5, 1); at <= end; at = (at + 1) as Day) {
    const season01 = Math.sin(((at - day(year, 4, 20)) / 183) * Math.PI);
    const tmax = 10 + 14 * season01 + normal() * 2.6 + (year === 2025 ? -1.6 : year === 2024 ? 0.8 : 0);
    weather.push([
      isoDate(at),
      (tmax - between(7, 12)).toFixed(1),
      tmax.toFixed(1),
      uniform() < 0.35 ? between(0.4, 12).toFixed(1) : 0,
    ]);
  }
  write(`${folder}weather.csv`, [['date', 'tmin_c', 'tmax_c', 'rain_mm'], ...weather]);
}

/** The days of a spring before May, of a stream of its own. */
function april(year: number): readonly (string | number)[][] {
  const stream = xoroshiro128plus(31 * year);
  const spread = (): number => (stream.next() >>> 0) / 2 ** 32;
  const rows: (string | number)[][] = [];
  const last = year === 2023 ? day(year, 6, 30) : day(year, 4, 30);
  for (let at = day(year, 4, 1); at <= last; at = (at + 1) as Day) {
    const tmax = 9 + 0.13 * (at - day(year, 4, 1)) + 8 * (spread() - 0.4);
    rows.push([
      isoDate(at),
      (tmax - 7 - 5 * spread()).toFixed(1),
      tmax.toFixed(1),
      spread() < 0.4 ? (9 * spread()).toFixed(1) : 0,
    ]);
  }
  return rows;
}

for (const year of [2023, 2024, 2025, 2026]) mkdirSync(new URL(`${year}/`, import.meta.url), { recursive: true });
notebook();
write('2023/weather.csv', [['date', 'tmin_c', 'tmax_c', 'rain_mm'], ...april(2023)]);
for (const year of [2024, 2025, 2026]) season(year);

/** Beds that the plan stands in, and what the club asks of it. */
write('places.csv', [
  ['bed', 'rows', 'columns', 'stands_in', 'container_l', 'classes', 'leave_out', 'north'],
  ['sweet bed', 4, 8, 'bed', '', 'sweet', '', 'top'],
  ['frying bed', 3, 4, 'bed', '', 'frying', '', 'top'],
  ['hot pots', 3, 7, 'pot', 12, 'hot', '', 'top'],
  ['salad ground', 3, 4, 'ground', '', 'salad', '1:1', 'top'],
  ['cherry ground', 2, 3, 'ground', '', 'cherry', '', 'top'],
]);
rmSync(new URL('2027/', import.meta.url), { recursive: true, force: true });
mkdirSync(new URL('2027/', import.meta.url), { recursive: true });
write('2027/wishes.csv', [
  ['variety', 'at_least', 'tall', 'seeds', 'save_seed'],
  ['wren-hill', '', '', 40, 'yes'],
  ['saltcote', 2, '', '', ''],
  ['amber-hook', '', 'yes', '', ''],
]);
const planned = mkdtempSync(join(tmpdir(), 'keeprow-demo-'));
await runPlan(
  fileURLToPath(new URL('..', import.meta.url)),
  { out: planned, season: 2027, take: true },
  { json: false, strict: false, quiet: true },
);
rmSync(planned, { recursive: true });
