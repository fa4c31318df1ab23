/**
 * Do shares and intervals over gardens keep their word? npm run bench:verdicts:gardens [worlds]. Prints tables;
 * nothing is asserted. Invented clubs: 14 varieties, each in ten gardens with two plants, six spots, one goal; the
 * spreads of gardens page 2.4, or drawn from the priors.
 */
import { expectedInGarden, expectedOverGardens } from '../../src/analyse/expected/gardenExpected.ts';
import type { GardenClass, GardenValue } from '../../src/analyse/expected/gardenCells.ts';
import { openGardenDraws } from '../../src/decide/gardenDraws.ts';
import { neededScore } from '../../src/decide/spots.ts';
import { nth } from '../../src/numerics/element.ts';
import { randomStream } from '../../src/numerics/random.ts';

const WORLDS = Number(process.argv.find((own) => /^\d+$/.test(own)) ?? 100);
const A = 0.5;
const [VARIETIES, SPOTS, EACH, PLANTS, CV, DRAWS] = [14, 6, 4, 2, 0.36, 1000];
const GARDENS = Math.round((10 * VARIETIES) / EACH);

interface Spreads {
  readonly v: number;
  readonly w: number;
  readonly u: number;
  readonly r: number;
}

/** A club's records over some seasons, and what is true of it. */
function world(name: string, { v, w, u, r }: Spreads, seasons: number) {
  const { normal, uniform } = randomStream(name);
  const varieties = Array.from({ length: VARIETIES }, (_, i) => `v${String(i).padStart(2, '0')}`);
  const own = varieties.map(() => v * normal());
  const garden = Array.from({ length: GARDENS }, () => varieties.map(() => u * normal()));
  const levels: number[] = [];
  const values: GardenValue[] = [];
  let ofFirst = 0;
  for (let s = 0; s < seasons; s++) {
    const season = varieties.map(() => w * normal());
    const start = Math.floor(VARIETIES * uniform());
    for (let g = 0; g < GARDENS; g++) {
      const level = 7 + 0.4 * normal();
      levels.push(level);
      if (g === 0) ofFirst += level / seasons;
      for (let k = 0; k < EACH; k++) {
        const i = (start + g * EACH + k * 3) % VARIETIES;
        const theta =
          level +
          nth(own, i) +
          nth(season, i) +
          nth(nth(garden, g), i) +
          r * normal() +
          (CV * normal()) / Math.sqrt(PLANTS);
        values.push({ variety: nth(varieties, i), garden: `g${g}`, season: s, theta, variance: CV ** 2 / PLANTS });
      }
    }
  }
  const middle = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  const next = varieties.map((_, i) => nth(own, i) + w * normal());
  const there = varieties.map((_, i) => nth(next, i) + nth(nth(garden, 0), i) + r * normal());
  return { varieties, values, club: { level: middle, next }, garden: { level: ofFirst, next: there } };
}

/** Share in which each variety earns a spot, and whether it did in the season that came. */
function earned(own: GardenClass, cells: Parameters<typeof openGardenDraws>[1], name: string, garden: string | null) {
  const n = own.varieties.length;
  const draws = openGardenDraws(own, cells, name, garden);
  const [values, newcomer] = [new Float64Array(DRAWS * n), new Float64Array(DRAWS)];
  draws.next(values, newcomer);
  const shares = new Float64Array(n);
  for (let j = 0; j < DRAWS; j++) {
    const list = Array.from({ length: n }, (_, i) => values[j * n + i]! - newcomer[j]!);
    const score = neededScore(Float64Array.from(list), 0, SPOTS);
    list.forEach((value, i) => {
      if (value >= score) shares[i]! += 1 / DRAWS;
    });
  }
  return shares;
}

interface Tally {
  held: number;
  intervals: number;
  width: number;
  readonly tenths: { n: number; share: number; earned: number }[];
  decided: number;
  gained: number;
  best: number;
  worlds: number;
}

const tally = (): Tally => ({
  held: 0,
  intervals: 0,
  width: 0,
  tenths: Array.from({ length: 10 }, () => ({ n: 0, share: 0, earned: 0 })),
  decided: 0,
  gained: 0,
  best: 0,
  worlds: 0,
});

function count(
  into: Tally,
  shares: Float64Array,
  truth: { readonly level: number; readonly next: readonly number[] },
  expected: readonly { readonly low: number; readonly high: number }[],
): void {
  const score = neededScore(Float64Array.from(truth.next), 0, SPOTS);
  expected.forEach(({ low, high }, i) => {
    const value = truth.level + nth(truth.next, i);
    into.intervals++;
    into.width += (high - low) / 2;
    if (value >= low && value <= high) into.held++;
    const share = shares[i]!;
    const tenth = nth(into.tenths, Math.min(9, Math.floor(share * 10)));
    tenth.n++;
    tenth.share += share;
    if (nth(truth.next, i) >= 0 && nth(truth.next, i) >= score) tenth.earned++;
    if (share >= 0.8 || share < 0.2) into.decided++;
  });
  const listed = [...shares.keys()].toSorted((a, b) => shares[b]! - shares[a]!).slice(0, SPOTS);
  const gain = (list: readonly number[]): number =>
    list.reduce((sum, i) => sum + Math.exp(nth(truth.next, i)) - 1, 0) / SPOTS;
  into.gained += gain(listed);
  into.best += gain([...truth.next.keys()].toSorted((a, b) => nth(truth.next, b) - nth(truth.next, a)).slice(0, SPOTS));
  into.worlds++;
}

function told(name: string, own: Tally): void {
  const cover = (own.held / own.intervals).toFixed(3);
  const width = Math.exp(own.width / own.intervals).toFixed(2);
  const more = `${((100 * own.gained) / own.worlds).toFixed(0)} (${((100 * own.best) / own.worlds).toFixed(0)})`;
  const decided = `${((100 * own.decided) / own.intervals).toFixed(0)} %`;
  process.stdout.write(`| ${name} | ${more} | ${decided} | ${cover}, ${width} |\n`);
  const cells = own.tenths.map(({ n, share, earned: times }) =>
    n === 0 ? '–' : `${(share / n).toFixed(2)}→${(times / n).toFixed(2)} (${n})`,
  );
  process.stdout.write(`|   share → earned, by tenths | ${cells.join(' ')} |\n`);
}

const half = (normal: () => number, scale: number): number => Math.abs(normal()) * scale;

function setting(name: string, seasons: number, spreads: (k: number) => Spreads): void {
  const [club, garden] = [tally(), tally()];
  for (let k = 0; k < WORLDS; k++) {
    const { varieties, values, ...truth } = world(`${name}/${k}`, spreads(k), seasons);
    const own: GardenClass = { classId: 'all', varieties, values };
    const expected = expectedOverGardens([own], A, 0.95);
    const { cells } = expected;
    count(club, earned(own, cells, `1/${k}`, null), truth.club, nth(expected.classes, 0).varieties);
    count(
      garden,
      earned(own, cells, `1/${k}`, 'g0'),
      truth.garden,
      expectedInGarden(own, cells, 'g0', 0.95)!.varieties,
    );
  }
  told(`${name}, a garden of the club`, club);
  told(`${name}, one garden`, garden);
}

process.stdout.write(
  `${WORLDS} worlds a row, ${GARDENS} gardens\n| spreads | more, % (best) | decided | cover, width |\n| --- | --- | --- | --- |\n`,
);
const BASE = { v: 0.3, w: 0.2, u: 0.2, r: 0.235 };
setting('page 2.4, one season', 1, () => BASE);
setting('page 2.4, three seasons', 3, () => BASE);
setting('from the priors, one season', 1, (k) => {
  const { normal } = randomStream(`priors/${k}`);
  return { v: half(normal, A), w: half(normal, A / 2), u: half(normal, A / 2), r: half(normal, A / 2) };
});
