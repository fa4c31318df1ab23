import { nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { shuffled } from './shuffled.ts';
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

/** Everybody tastes everything: rows of a square, names and tasters at random. */
function complete(varieties: readonly string[], tasters: number, stream: RandomStream): Serving {
  if (varieties.length < 2) return Array.from({ length: tasters }, () => varieties);
  const names = shuffled(varieties, stream);
  const square = williamsSquare(varieties.length);
  const rows: (readonly number[])[] = [];
  while (rows.length < tasters) rows.push(...shuffled(square, stream).slice(0, tasters - rows.length));
  return shuffled(rows, stream).map((row) => row.map((own) => nth(names, own)));
}

const ROUNDS = 200;
/** How much worse unlike places in the order are than unlike followers. */
const PLACE = 3;

/** Counts places in the order and followers as orders come and go, with how unevenly they are shared. */
class Balance {
  private readonly counts = new Map<number, number>();
  private readonly at: ReadonlyMap<string, number>;
  private readonly n: number;

  constructor(varieties: readonly string[]) {
    this.n = varieties.length;
    this.at = new Map(varieties.map((own, i) => [own, i]));
  }

  /** Takes an order in or out; returns by how much the unevenness changes. */
  take(order: readonly string[], by: 1 | -1): number {
    let change = 0;
    let before = -1;
    order.forEach((own, i) => {
      const v = this.at.get(own) ?? 0;
      change += this.count((i + this.n) * this.n + v, by, PLACE, 2);
      if (before >= 0) change += this.count(before * this.n + v, by, 1, 3);
      before = v;
    });
    return change;
  }

  private count(key: number, by: 1 | -1, weight: number, power: number): number {
    const times = this.counts.get(key) ?? 0;
    this.counts.set(key, times + by);
    return weight * ((times + by) ** power - times ** power);
  }
}

/** Each taster has some: varieties shared like varieties to blocks, then orders that share places and followers. */
function incomplete(varieties: readonly string[], samples: readonly number[], stream: RandomStream): Serving {
  const total = samples.reduce((sum, own) => sum + own, 0);
  const often = Math.floor(total / varieties.length);
  const more = new Set(shuffled([...varieties.keys()], stream).slice(0, total - often * varieties.length));
  const times = varieties.map((_, v) => often + (more.has(v) ? 1 : 0));
  // Where there are fewer samples than varieties, some wait.
  const served = varieties.filter((_, v) => nth(times, v) > 0);
  const plants = times.filter((n) => n > 0);
  const tasting = samples.flatMap((own, t) => (own > 0 ? [t] : []));
  const sizes = tasting.map((t) => nth(samples, t));
  const fixed = served.map(() => new Float64Array(sizes.length));
  const counts = varietiesToBlocks({ plants, sizes, fixed, tall: null }, stream);
  const orders = sizes.map((_, t) =>
    shuffled(
      served.filter((_own, v) => (nth(counts, v)[t] ?? 0) > 0),
      stream,
    ),
  );
  const balance = new Balance(served);
  for (const order of orders) balance.take(order, 1);
  for (let step = 0; step < ROUNDS * total; step++) {
    const order = nth(orders, below(stream, orders.length));
    const [i, j] = [below(stream, order.length), below(stream, order.length)];
    if (i === j) continue;
    const swap = (): number => {
      const change = balance.take(order, -1);
      [order[i], order[j]] = [nth(order, j), nth(order, i)];
      return change + balance.take(order, 1);
    };
    if (swap() > 0) swap();
  }
  return samples.map((_, t) => (tasting.includes(t) ? nth(orders, tasting.indexOf(t)) : []));
}

/**
 * What every taster is served of a class, and in which order.
 *
 * @param samples  how many each taster has, none more than there are varieties
 * @returns        a list a taster
 * @source Williams (1949); Kunert & Sailer, Dortmund TR 47/2004; MacFie et al. (1989) J. Sens. Stud. 4:129; case o06
 */
export function servingOf(varieties: readonly string[], samples: readonly number[], stream: RandomStream): Serving {
  if (samples.every((own) => own === varieties.length)) return complete(varieties, samples.length, stream);
  return samples.every((own) => own === 0) ? samples.map(() => []) : incomplete(varieties, samples, stream);
}

/** So many codes of three digits can be told apart in two digits; more need four. */
const THREE_DIGITS_TO = 60;

/**
 * Three different digits, the first no 0, so that any two codes differ in two digits or more; four for more than 60.
 */
export function codesFor(count: number, stream: RandomStream): readonly string[] {
  const digits = count > THREE_DIGITS_TO ? 4 : 3;
  const first = 10 ** (digits - 1);
  const all = shuffled(
    Array.from({ length: 9 * first }, (_, i) => String(first + i)).filter((code) => new Set(code).size === digits),
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
