import { nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { below, varietiesToBlocks } from './varietyBlocks.ts';

/** What a taster is served, in order. */
export type Serving = readonly (readonly string[])[];

/**
 * A square in which each of n comes once in every place of the order and each follows each other equally often; an odd
 * number needs the mirrored rows too.
 *
 * @returns  rows of numbers from 0
 * @source Williams (1949) Aust. J. Sci. Res. A 2:149; reference case o06
 */
export function williamsSquare(n: number): readonly (readonly number[])[] {
  const first = [0];
  for (let j = 1, low = 1, high = n - 1; j < n; j++) first.push(j % 2 === 1 ? low++ : high--);
  const rows = Array.from({ length: n }, (_, k) => first.map((own) => (own + k) % n));
  return n % 2 === 1 ? [...rows, ...rows.map((row) => row.toReversed())] : rows;
}

function shuffled<T>(items: readonly T[], stream: RandomStream): T[] {
  const own = [...items];
  for (let i = own.length - 1; i > 0; i--) {
    const j = below(stream, i + 1);
    [own[i], own[j]] = [nth(own, j), nth(own, i)];
  }
  return own;
}

/** Everybody tastes everything: rows of a square, names and tasters at random. */
function complete(varieties: readonly string[], tasters: number, stream: RandomStream): Serving {
  if (varieties.length < 2) return Array.from({ length: tasters }, () => varieties);
  const names = shuffled(varieties, stream);
  const square = williamsSquare(varieties.length);
  const rows: (readonly number[])[] = [];
  while (rows.length < tasters) rows.push(...shuffled(square, stream).slice(0, tasters - rows.length));
  return shuffled(rows, stream).map((row) => row.map((own) => nth(names, own)));
}

const ROUNDS = 60;

/** How unevenly places in the order and followers are shared. */
function unevenness(orders: readonly (readonly string[])[]): number {
  const seen = new Map<string, number>();
  const count = (key: string): void => void seen.set(key, (seen.get(key) ?? 0) + 1);
  for (const order of orders)
    order.forEach((own, i) => {
      count(`${i} ${own}`);
      if (i > 0) count(`${own} after ${order[i - 1]}`);
    });
  let cost = 0;
  for (const [key, times] of seen) cost += key.includes('after') ? times * times : 3 * times * times;
  return cost;
}

/** Each taster has some: varieties shared like varieties to blocks, then orders that share places and followers. */
function incomplete(varieties: readonly string[], tasters: number, samples: number, stream: RandomStream): Serving {
  const total = tasters * samples;
  const often = Math.floor(total / varieties.length);
  const more = new Set(shuffled([...varieties.keys()], stream).slice(0, total - often * varieties.length));
  const plants = varieties.map((_, v) => often + (more.has(v) ? 1 : 0));
  const sizes = Array.from({ length: tasters }, () => samples);
  const fixed = varieties.map(() => new Float64Array(tasters));
  const counts = varietiesToBlocks({ plants, sizes, fixed, tall: null }, stream);
  const orders = sizes.map((_, t) =>
    shuffled(
      varieties.filter((_own, v) => (nth(counts, v)[t] ?? 0) > 0),
      stream,
    ),
  );
  let cost = unevenness(orders);
  for (let step = 0; step < ROUNDS * total; step++) {
    const order = nth(orders, below(stream, tasters));
    const [i, j] = [below(stream, order.length), below(stream, order.length)];
    if (i === j) continue;
    const swap = (): void => {
      [order[i], order[j]] = [nth(order, j), nth(order, i)];
    };
    swap();
    const now = unevenness(orders);
    if (now <= cost) cost = now;
    else swap();
  }
  return orders;
}

/**
 * What every taster is served of a class, and in which order.
 *
 * @param samples  at most so many a taster
 * @returns        a list a taster
 * @source Williams (1949); Kunert & Sailer, Dortmund TR 47/2004; MacFie et al. (1989) J. Sens. Stud. 4:129; case o06
 */
export function servingOf(
  varieties: readonly string[],
  tasters: number,
  samples: number,
  stream: RandomStream,
): Serving {
  if (samples >= varieties.length) return complete(varieties, tasters, stream);
  return samples < 1 ? Array.from({ length: tasters }, () => []) : incomplete(varieties, tasters, samples, stream);
}

/** Three different digits, the first no 0, so that any two codes differ in two digits or more. */
export function codesFor(count: number, stream: RandomStream): readonly string[] {
  const all = shuffled(
    Array.from({ length: 900 }, (_, i) => String(100 + i)).filter((code) => new Set(code).size === 3),
    stream,
  );
  const codes: string[] = [];
  const differ = (a: string, b: string): number => [...a].filter((digit, i) => digit !== b[i]).length;
  for (const code of all) {
    if (codes.length === count) break;
    if (codes.every((own) => differ(own, code) >= 2)) codes.push(code);
  }
  return codes;
}
