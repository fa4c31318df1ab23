import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { SEASON_TABLES } from '../../src/records/seasonDrafts.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { foldName, nearestName } from '../../src/terms/names.ts';

// The names that a grower of the demo can mistype: its varieties, the columns and tables of the contract.
const VARIETIES = readFileSync(new URL('../../data/varieties.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',')[0]!);
const COLUMNS = [
  'planting',
  'variety',
  'plants',
  'block',
  'column',
  'transplanted',
  'removed',
  'cause',
  'stands_in',
  'topped',
  'fruits',
  'weight_g',
  'unusable_fruits',
  'taster',
  'blind',
  'score',
  'germinated',
  'checked',
  'temperature_c',
  'first_ripe',
  'mother',
  'father',
  'generation',
  'retired',
  'colour_ripe',
  'former_ids',
  'also_known_as',
];
const NAMES = [...VARIETIES, ...COLUMNS, ...SEASON_TABLES.map((name) => name.replace('.csv', ''))];
const { uniform } = randomStream('typos');
const below = (n: number): number => Math.floor(uniform() * n);

/** One letter put in, left out, changed, or two neighbours swapped. */
function typo(word: string): string {
  const at = below(word.length);
  const letter = String.fromCharCode(97 + below(26));
  const kind = below(4);
  if (kind === 0) return word.slice(0, at) + letter + word.slice(at);
  if (kind === 1) return word.slice(0, at) + word.slice(at + 1);
  if (kind === 2) return word.slice(0, at) + letter + word.slice(at + 1);
  const i = Math.min(at, word.length - 2);
  return word.slice(0, i) + word[i + 1] + word[i] + word.slice(i + 2);
}

it('offers the right name for 90 and more of 100 slips of one letter', () => {
  const right = Array.from({ length: 100 }, (_, i) => {
    const name = NAMES[i % NAMES.length]!;
    let wrong = typo(name);
    while (NAMES.some((other) => foldName(other) === foldName(wrong))) wrong = typo(name);
    return nearestName(wrong, NAMES) === name;
  });
  expect(right.filter(Boolean).length).toBeGreaterThanOrEqual(90);
});

it('is silent for 50 words that have nothing to do with any of them', () => {
  const words =
    'umbrella bicycle thunder kitchen marble sparrow lantern-oil violin harbour candle mountain pillow engine compass ' +
    'window saddle ribbonless crystal whistle anchor blanket drawer feather glacier hammer island jacket kettle ladder ' +
    'mirror needle orchard-wall pencil quilt rocket scarf tunnel valley wagon yellow zipper bottle carpet donkey elbow ' +
    'fabric grocer helmet insect jungle';
  const list = words.split(' ');
  expect(list).toHaveLength(50);
  expect(list.filter((word) => nearestName(word, NAMES) !== null)).toEqual([]);
});
