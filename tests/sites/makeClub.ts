import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { nth } from '../../src/numerics/element.ts';
import { randomStream } from '../../src/numerics/random.ts';

// The Marrowdale club's members' sheets, invented: `npx tsx tests/sites/makeClub.ts` writes tests/sites/club/data.

const { normal, uniform } = randomStream('marrowdale members');
const at = (path: string): URL => new URL(`./club/data/${path}`, import.meta.url);

interface Sort {
  readonly id: string;
  readonly name: string;
  readonly classId: string;
  /** Grams a plant, days to ripe fruit, taste from 1 to 9. */
  readonly grams: number;
  readonly days: number;
  readonly taste: number;
}

const sort = (id: string, classId: string, grams: number, days: number, taste: number): Sort => ({
  id,
  name: id.replace(/(?:^|-)(\w)/g, (_, letter: string) => ` ${letter.toUpperCase()}`).trim(),
  classId,
  grams,
  days,
  taste,
});

const SORTS: readonly Sort[] = [
  sort('stile-bell', 'sweet', 1150, 74, 6.2),
  sort('gatepost', 'sweet', 900, 69, 6.8),
  sort('tarn-horn', 'sweet', 1400, 80, 5.6),
  sort('drovers-red', 'sweet', 1020, 72, 7.4),
  sort('low-barn', 'sweet', 760, 66, 6.0),
  sort('fellside', 'sweet', 1230, 77, 7.0),
  sort('beck-cherry', 'tomato', 2300, 58, 7.6),
  sort('wall-end', 'tomato', 3100, 70, 5.9),
  sort('cart-track', 'tomato', 2700, 64, 6.6),
  sort('hay-loft', 'tomato', 2500, 66, 7.0),
  sort('mill-race', 'tomato', 2900, 68, 6.2),
  sort('sheepfold', 'tomato', 2000, 61, 6.9),
];

const day = (n: number): string => new Date(Date.UTC(2026, 4, 20 + n)).toISOString().slice(0, 10);

const cell = (own: Sort, level: number, plants: number, late: number): string => {
  const u = Math.exp(level + 0.18 * normal() + 0.24 * normal() + (0.36 * normal()) / Math.sqrt(plants));
  const ripe = Math.round(own.days * Math.exp(0.05 * normal()) + late);
  const taste = Math.min(9, Math.max(1, Math.round(own.taste + 0.9 * normal())));
  const again = taste + 3 * uniform() > 7 ? 'yes' : 'no';
  return [own.id, plants, Math.round((own.grams * plants * u) / 5) * 5, day(ripe), taste, again].join(',');
};

const HEADER = 'variety,plants,weight_g,first_ripe,taste,again';
const write = (path: string, lines: readonly string[]): void => {
  mkdirSync(dirname(at(path).pathname), { recursive: true });
  writeFileSync(at(path), `${lines.join('\n')}\n`);
};

/** What each garden was sent; g13 and g14 grow what nobody else has, so that they stand apart. */
const CIRCLE = SORTS.filter(({ id }) => id !== 'mill-race' && id !== 'sheepfold');
const given = (g: number): readonly Sort[] =>
  g >= 12
    ? SORTS.filter(({ id }) => id === 'mill-race' || id === 'sheepfold')
    : [0, 2, 3, 5, 7].map((step) => nth(CIRCLE, (g * 3 + step) % CIRCLE.length));
const code = (g: number): string => `m${String(g + 1).padStart(2, '0')}`;
/** Those who sent no sheet by the club's evening. */
const SILENT = new Set([3, 6, 7, 10, 11]);

rmSync(at('.'), { recursive: true, force: true });
write('trial.yaml', [
  'title: Marrowdale Growers’ Club, members’ trial',
  'place: Gardens of the dale',
  'classes:',
  '  sweet: {name: Sweet peppers, spots: 3, check_variety: stile-bell}',
  '  tomato: {name: Tomatoes, spots: 3}',
  'traits:',
  '  taste: {kind: rating, from: 1, to: 9, better: higher}',
  '  choice: {kind: ranking}',
  'goals: {sweet: {yield: 3, taste: 3, first_ripe: 2}, tomato: {yield: 2, taste: 4, first_ripe: 1, choice: 2}}',
  'seasons:',
  '  2025: {transplanted: 2025-05-20, finished: yes}',
  '  2026: {transplanted: 2026-05-20, finished: yes}',
]);
write('varieties.csv', [
  'variety,name,class,first_grown',
  ...SORTS.map(({ id, name, classId }, i) => `${id},${name},${classId},${i % 3 === 0 ? 2026 : 2024}`),
]);
write('gardens.csv', [
  'garden,region,setting,publish',
  'home,dale,open,yes',
  ...Array.from({ length: 14 }, (_, g) =>
    [code(g), g % 2 === 0 ? 'dale' : 'hill', g % 5 === 4 ? 'cover' : 'open', g === 4 ? 'yes' : ''].join(','),
  ),
]);
write('2025/season.csv', [
  HEADER,
  ...SORTS.filter((_, i) => i % 3 !== 0).map((own) => cell(own, 0.1, 3, 4).replaceAll('2026-', '2025-')),
]);
write('2026/season.csv', [
  HEADER,
  ...SORTS.filter((_, i) => i % 2 === 0 && i < 10).map((own) => cell(own, 0.05, 3, 0)),
]);
write('2026/sent.csv', [
  'garden,variety,label',
  ...Array.from({ length: 14 }, (_, g) => given(g).map(({ id }, i) => `${code(g)},${id},${'abcde'[i]}`)).flat(),
]);
write('2026/answers.csv', [
  'garden,choice_best,choice_worst',
  ...Array.from({ length: 12 }, (_, g) => {
    const liked = given(g)
      .map(({ id, taste }, i) => ({ id, i, liked: taste + normal() }))
      .toSorted((a, b) => b.liked - a.liked);
    return `${code(g)},${'abcde'[nth(liked, 0).i]},${g % 6 === 5 ? '' : 'abcde'[nth(liked, -1).i]}`;
  }),
]);
for (let g = 0; g < 14; g++) {
  if (SILENT.has(g)) continue;
  const [level, late] = [0.4 * normal(), 3 * normal()];
  const plants = 1 + Math.floor(3 * uniform());
  write(`2026/gardens/${code(g)}.csv`, [HEADER, ...given(g).map((own) => cell(own, level, plants, late))]);
}
