import { nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { below } from './varietyBlocks.ts';
import type { Spot } from './stretches.ts';

/** Plants of a class on the places of their blocks, before they are moved. */
export interface SpreadAsked {
  /** In order along the beds. */
  readonly spots: readonly Spot[];
  /** Block of each place. */
  readonly blocks: readonly number[];
  /** Variety on each place at the start, by number. */
  readonly varieties: readonly number[];
  readonly isFixed: readonly boolean[];
  /** Varieties that stand on the north side, and the places there; null where height does not matter. */
  readonly tall: { readonly varieties: readonly boolean[]; readonly isNorth: readonly boolean[] } | null;
  /** Varieties whose seed is saved: they stand in the middle of their class. */
  readonly saved: readonly boolean[];
}

/** What two plants of a variety cost by how near they stand; rows shared unevenly; neighbours met again; seed at the edge. */
const COST = { beside: 1000, corner: 8, near: 2, row: 5, again: 0.6, edge: 20 } as const;
const NEAR = 3;
const [HOT, COLD] = [6, 0.012] as const;
const STEPS_A_PLACE = 300;
const STEPS_OF_LARGE = 60;
const LARGE_FROM = 200;

interface Near {
  readonly at: Int32Array;
  readonly cost: Float64Array;
  readonly beside: Int32Array;
}

/** What stands near each place, with what a second plant of the same variety costs there. */
function nearOf(spots: readonly Spot[]): readonly Near[] {
  const at = new Map(spots.map(({ bed, row, column }, i) => [`${bed.id}/${row}/${column}`, i]));
  return spots.map(({ bed, row, column }) => {
    const near: (readonly [i: number, cost: number, isBeside: boolean])[] = [];
    for (let dr = -NEAR; dr <= NEAR; dr++)
      for (let dc = -NEAR; dc <= NEAR; dc++) {
        const squared = dr * dr + dc * dc;
        const i = at.get(`${bed.id}/${row + dr}/${column + dc}`);
        if (i === undefined || squared === 0 || squared > NEAR * NEAR) continue;
        const cost = squared === 1 ? COST.beside : squared === 2 ? COST.corner : COST.near / squared;
        near.push([i, cost, squared === 1]);
      }
    return {
      at: Int32Array.from(near, ([i]) => i),
      cost: Float64Array.from(near, ([, cost]) => cost),
      beside: Int32Array.from(
        near.filter(([, , isBeside]) => isBeside),
        ([i]) => i,
      ),
    };
  });
}

/** Moves plants within their blocks until those of a variety stand apart, rows are shared, and neighbours change. */
class Spread {
  readonly own: Int32Array;
  private readonly asked: SpreadAsked;
  private readonly near: readonly Near[];
  private readonly rowOf: Int32Array;
  private readonly inRow: Float64Array;
  private readonly evenInRow: Float64Array;
  private readonly met: Int16Array;
  private readonly edge: Float64Array;
  private readonly n: number;
  private readonly rows: number;

  constructor(asked: SpreadAsked) {
    this.asked = asked;
    const { spots, varieties } = asked;
    this.own = Int32Array.from(varieties);
    this.n = asked.saved.length;
    this.near = nearOf(spots);
    const names = [...new Set(spots.map(({ bed, row }) => `${bed.id}/${row}`))];
    this.rows = names.length;
    this.rowOf = Int32Array.from(spots, ({ bed, row }) => names.indexOf(`${bed.id}/${row}`));
    this.inRow = new Float64Array(this.n * this.rows);
    this.evenInRow = new Float64Array(this.n * this.rows);
    this.met = new Int16Array(this.n * this.n);
    const size = new Float64Array(this.rows);
    for (const row of this.rowOf) size[row]!++;
    const plants = new Float64Array(this.n);
    for (const v of this.own) plants[v]!++;
    for (let v = 0; v < this.n; v++)
      for (let r = 0; r < this.rows; r++) this.evenInRow[v * this.rows + r] = (plants[v]! * size[r]!) / spots.length;
    this.own.forEach((v, i) => this.inRow[v * this.rows + nth(this.rowOf, i)]!++);
    this.own.forEach((_, i) => this.meet(i, 1, 0.5));
    const middle = (spots.length - 1) / 2;
    this.edge = Float64Array.from(spots, (_, i) => (COST.edge * Math.abs(i - middle)) / Math.max(1, middle));
  }

  /** Counts or uncounts the neighbours of a place; half of them where both ends are counted. Returns what it costs. */
  private meet(i: number, by: 1 | -1, part: 1 | 0.5 = 1): number {
    const v = this.own[i]!;
    let cost = 0;
    for (const j of this.near[i]!.beside) {
      const w = this.own[j]!;
      if (v === w || (part === 0.5 && j < i)) continue;
      const at = v < w ? v * this.n + w : w * this.n + v;
      const before = this.met[at]!;
      const after = before + by;
      this.met[at] = after;
      cost += COST.again * (Math.max(0, after - 1) ** 2 - Math.max(0, before - 1) ** 2);
    }
    return cost;
  }

  private isAllowed(i: number, j: number): boolean {
    const { blocks, isFixed, tall } = this.asked;
    const [v, w] = [this.own[i]!, this.own[j]!];
    if (v === w || blocks[i] !== blocks[j] || isFixed[i] || isFixed[j]) return false;
    if (!tall) return true;
    return (!tall.varieties[v] || tall.isNorth[j] === true) && (!tall.varieties[w] || tall.isNorth[i] === true);
  }

  /** What same-variety neighbours of a place would cost with one variety less those with another. */
  private nearChange(i: number, j: number, from: number, to: number): number {
    const { at, cost } = this.near[i]!;
    let change = 0;
    for (let k = 0; k < at.length; k++) {
      const other = at[k]!;
      if (other === j) continue;
      const v = this.own[other]!;
      if (v === to) change += cost[k]!;
      else if (v === from) change -= cost[k]!;
    }
    return change;
  }

  private rowChange(v: number, from: number, to: number): number {
    if (from === to) return 0;
    const [a, b] = [v * this.rows + from, v * this.rows + to];
    const off = (at: number, by: number): number => (this.inRow[at]! + by - this.evenInRow[at]!) ** 2;
    return COST.row * (off(a, -1) - off(a, 0) + off(b, 1) - off(b, 0));
  }

  /** Swaps two plants where that is allowed and not too dear at this temperature. */
  swap(i: number, j: number, temperature: number, u: () => number): void {
    if (!this.isAllowed(i, j)) return;
    const [v, w] = [this.own[i]!, this.own[j]!];
    const [r, s] = [this.rowOf[i]!, this.rowOf[j]!];
    let change = this.nearChange(i, j, v, w) + this.nearChange(j, i, w, v);
    change += this.rowChange(v, r, s) + this.rowChange(w, s, r);
    const { saved } = this.asked;
    if (saved[v] !== saved[w]) change += (saved[v] ? 1 : -1) * (this.edge[j]! - this.edge[i]!);
    const isBeside = this.near[i]!.beside.includes(j);
    const unmeet = (): number => this.meet(i, -1) + (isBeside ? this.meetWithout(j, i, -1) : this.meet(j, -1));
    const meet = (): number => this.meet(i, 1) + (isBeside ? this.meetWithout(j, i, 1) : this.meet(j, 1));
    change += unmeet();
    this.own[i] = w;
    this.own[j] = v;
    change += meet();
    if (change <= 0 || u() < Math.exp(-change / temperature)) {
      this.inRow[v * this.rows + r]!--;
      this.inRow[v * this.rows + s]!++;
      this.inRow[w * this.rows + s]!--;
      this.inRow[w * this.rows + r]!++;
      return;
    }
    unmeet();
    this.own[i] = v;
    this.own[j] = w;
    meet();
  }

  /** As `meet`, the pair with a neighbour that is counted already left out. */
  private meetWithout(i: number, without: number, by: 1 | -1): number {
    const v = this.own[i]!;
    let cost = 0;
    for (const j of this.near[i]!.beside) {
      const w = this.own[j]!;
      if (j === without || v === w) continue;
      const at = v < w ? v * this.n + w : w * this.n + v;
      const before = this.met[at]!;
      this.met[at] = before + by;
      cost += COST.again * (Math.max(0, before + by - 1) ** 2 - Math.max(0, before - 1) ** 2);
    }
    return cost;
  }
}

/**
 * Varieties on places: plants of one variety apart, rows shared evenly, neighbours changing; by swaps within blocks that
 * cool down.
 *
 * @returns  variety of each place, by number
 */
export function spreadOut(asked: SpreadAsked, stream: RandomStream): readonly number[] {
  const spread = new Spread(asked);
  const count = asked.spots.length;
  const inBlock = new Map<number, number[]>();
  asked.blocks.forEach((b, i) => inBlock.set(b, [...(inBlock.get(b) ?? []), i]));
  const steps = count * (count > LARGE_FROM ? STEPS_OF_LARGE : STEPS_A_PLACE);
  for (let step = 0; step < steps; step++) {
    const i = below(stream, count);
    const own = inBlock.get(nth(asked.blocks, i)) ?? [];
    const j = nth(own, below(stream, own.length));
    const temperature = HOT * (COLD / HOT) ** (step / steps);
    if (i !== j) spread.swap(i, j, temperature, stream.uniform);
  }
  return [...spread.own];
}
