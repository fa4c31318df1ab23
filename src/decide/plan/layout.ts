import { blockVariance } from '../../numerics/blockVariance.ts';
import type { BlockVariance } from '../../numerics/blockVariance.ts';
import { cell, nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { randomStream } from '../../numerics/random.ts';
import { blocksOf, halfUp } from './plants.ts';
import { spreadOut } from './spread.ts';
import { areBeside, spotKey } from './stretches.ts';
import type { FixedPlant, Spot, Stretch } from './stretches.ts';
import { below, varietiesToBlocks } from './varietyBlocks.ts';

/** Plants of a variety that are planned for one place: one, or a clump side by side. */
export interface PlannedPlant {
  readonly variety: string;
  readonly plants: number;
  /** The first place of a clump. */
  readonly spot: Spot;
  /** Number of the block in its class, from 0. */
  readonly block: number;
}

export interface ClassLayout {
  readonly classId: string;
  /** In order along the beds. */
  readonly plants: readonly PlannedPlant[];
  /** Places of each block. */
  readonly sizes: readonly number[];
  /** How well it compares its varieties; null for clumps, or where the blocks do not join them. */
  readonly variance: BlockVariance | null;
  /** Pairs of plants of one variety side by side that could not be avoided; clumps aside. */
  readonly besides: number;
  /** Tall plants without a place on the north side. */
  readonly tallOver: number;
}

export interface LayoutAsked {
  readonly stretch: Stretch;
  /** Plants of each variety that is grown, in the order of their ids. */
  readonly varieties: readonly {
    readonly variety: string;
    readonly plants: number;
    readonly isTall: boolean;
    readonly savesSeed: boolean;
  }[];
  readonly fixed: readonly FixedPlant[];
  readonly layout: 'spread' | 'together';
  /** Name of its random numbers: seed, plan, season and class. */
  readonly stream: string;
}

/** Parts of a stretch that lie in one bed each, by the numbers of their places. */
function partsByBed(spots: readonly Spot[]): readonly (readonly number[])[] {
  const parts = new Map<string, number[]>();
  spots.forEach(({ bed }, i) => parts.set(bed.id, [...(parts.get(bed.id) ?? []), i]));
  return [...parts.values()];
}

/** Block of each place: a stretch in equal parts, each bed by itself. */
export function blockOfSpots(spots: readonly Spot[], varieties: number): readonly number[] {
  const total = blocksOf(spots.length, varieties);
  const blocks = Array.from({ length: spots.length }, () => 0);
  const parts = partsByBed(spots);
  let first = 0;
  for (const part of parts) {
    const own = parts.length === 1 ? total : Math.max(1, halfUp((total * part.length) / spots.length));
    part.forEach((i, x) => (blocks[i] = first + Math.floor((x * own) / part.length)));
    first += own;
  }
  return blocks;
}

/** True for a place at the north side of its bed, where that is an end of its columns. */
const isNorthern = ({ bed, row }: Spot): boolean =>
  (bed.north === 'top' && row === 1) || (bed.north === 'bottom' && row === bed.rows);

const sizesOf = (blocks: readonly number[]): readonly number[] =>
  Array.from({ length: Math.max(...blocks) + 1 }, (_, b) => blocks.filter((own) => own === b).length);

function shuffled<T>(items: readonly T[], stream: RandomStream): readonly T[] {
  const own = [...items];
  for (let i = own.length - 1; i > 0; i--) {
    const j = below(stream, i + 1);
    [own[i], own[j]] = [nth(own, j), nth(own, i)];
  }
  return own;
}

/** Places of a class with what is known of them before anything is planned. */
interface Ground {
  readonly spots: readonly Spot[];
  readonly blocks: readonly number[];
  /** Variety that stands there already, by number; else null. */
  readonly held: readonly (number | null)[];
  readonly isNorth: readonly boolean[];
  /** Which varieties are tall, where the north side holds them all; else null. */
  readonly tall: readonly boolean[] | null;
  readonly tallOver: number;
}

function groundOf({ stretch: { spots }, varieties, fixed }: LayoutAsked): Ground {
  const numberOf = new Map(varieties.map(({ variety }, v) => [variety, v]));
  const fixedAt = new Map(fixed.map((own) => [spotKey(own.spot), own.variety]));
  const held = spots.map((spot) => numberOf.get(fixedAt.get(spotKey(spot)) ?? '') ?? null);
  const isNorth = spots.map(isNorthern);
  const northern = isNorth.filter((own, i) => own && held[i] === null).length;
  const tallPlants = varieties.reduce((sum, own) => sum + (own.isTall ? own.plants : 0), 0);
  const over = tallPlants - held.filter((v) => v !== null && nth(varieties, v).isTall).length - northern;
  const hasTall = tallPlants > 0 && over <= 0;
  return {
    spots,
    blocks: blockOfSpots(spots, varieties.length),
    held,
    isNorth,
    tall: hasTall ? varieties.map(({ isTall }) => isTall) : null,
    tallOver: tallPlants > 0 ? Math.max(0, over) : 0,
  };
}

/** Plants set on the free places of their blocks in any order, tall ones on the north side first. */
function setOut(counts: readonly Float64Array[], ground: Ground, stream: RandomStream): number[] {
  const { blocks, held, isNorth, tall } = ground;
  const isFirst = (v: number): number => Number(tall?.[v] ?? false);
  const own = held.map((v) => v ?? -1);
  for (const b of new Set(blocks)) {
    const free = shuffled(
      blocks.flatMap((block, i) => (block === b && held[i] === null ? [i] : [])),
      stream,
    ).toSorted((i, j) => Number(isNorth[j]) - Number(isNorth[i]));
    const inBlock = counts.flatMap((row, v) => {
      const set = blocks.filter((block, i) => block === b && held[i] === v).length;
      return Array.from({ length: cell(row, b) - set }, () => v);
    });
    const order = shuffled(inBlock, stream).toSorted((v, w) => isFirst(w) - isFirst(v));
    free.forEach((i, k) => (own[i] = nth(order, k)));
  }
  return own;
}

/** Plants standing apart, in blocks. */
function spreadLayout(asked: LayoutAsked): ClassLayout {
  const { varieties } = asked;
  const stream = randomStream(asked.stream);
  const ground = groundOf(asked);
  const { spots, blocks, held, isNorth, tall } = ground;
  const sizes = sizesOf(blocks);
  const inBlock = (b: number, is: (i: number) => boolean): number =>
    blocks.filter((own, i) => own === b && is(i)).length;
  const counts = varietiesToBlocks(
    {
      plants: varieties.map(({ plants }) => plants),
      sizes,
      fixed: varieties.map((_, v) => Float64Array.from(sizes, (_size, b) => inBlock(b, (i) => held[i] === v))),
      tall: tall && { varieties: tall, places: sizes.map((_, b) => inBlock(b, (i) => isNorth[i] === true)) },
    },
    stream,
  );
  const own = spreadOut(
    {
      spots,
      blocks,
      varieties: setOut(counts, ground, stream),
      isFixed: held.map((v) => v !== null),
      tall: tall && { varieties: tall, isNorth },
      saved: varieties.map(({ savesSeed }) => savesSeed),
    },
    stream,
  );
  const plants = spots.map((spot, i) => ({
    variety: nth(varieties, nth(own, i)).variety,
    plants: 1,
    spot,
    block: nth(blocks, i),
  }));
  return {
    classId: asked.stretch.classId,
    plants,
    sizes,
    variance: blockVariance(counts),
    besides: besidesOf(plants),
    tallOver: ground.tallOver,
  };
}

/** Pairs of plants of one variety side by side. */
function besidesOf(plants: readonly PlannedPlant[]): number {
  const at = new Map(plants.map((own) => [spotKey(own.spot), own.variety]));
  const isSame = ({ variety, spot }: PlannedPlant, next: Spot): boolean =>
    areBeside(spot, next) && at.get(spotKey(next)) === variety;
  return plants.reduce((sum, own) => {
    const { row, column } = own.spot;
    return (
      sum +
      [
        { ...own.spot, row: row + 1 },
        { ...own.spot, column: column + 1 },
      ].filter((next) => isSame(own, next)).length
    );
  }, 0);
}

/** Two halves, in each a clump of every variety with two plants or more; none on both sides of the border. */
function clumpLayout({ stretch: { classId, spots }, varieties, stream: name }: LayoutAsked): ClassLayout {
  const stream = randomStream(name);
  const halves: { readonly variety: string; readonly plants: number }[][] = [[], []];
  const sizeOf = (half: number): number => nth(halves, half).reduce((sum, { plants }) => sum + plants, 0);
  for (const { variety, plants } of varieties) {
    const larger = sizeOf(0) <= sizeOf(1) ? 0 : 1;
    const parts = [Math.ceil(plants / 2), Math.floor(plants / 2)];
    nth(halves, larger).push({ variety, plants: nth(parts, 0) });
    if (nth(parts, 1) > 0) nth(halves, 1 - larger).push({ variety, plants: nth(parts, 1) });
  }
  const [one, other] = halves.map((half) => shuffled(half, stream));
  const last = one?.at(-1)?.variety;
  const second = other && other.length > 1 && other[0]?.variety === last ? [...other.slice(1), nth(other, 0)] : other;
  let at = 0;
  const plants = [one ?? [], second ?? []].flatMap((half, block) =>
    half.map((own) => {
      const spot = nth(spots, at);
      at += own.plants;
      return { ...own, spot, block };
    }),
  );
  return { classId, plants, sizes: [sizeOf(0), sizeOf(1)], variance: null, besides: 0, tallOver: 0 };
}

/**
 * Where the plants of a class stand.
 *
 * @param asked  its varieties hold as many plants as its stretch has places
 * @source methods page, plan; Cochran & Cox (1957); reference gardens g1 to g6
 */
export function layoutOf(asked: LayoutAsked): ClassLayout {
  const isTogether = asked.layout === 'together' && asked.fixed.length === 0 && asked.varieties.length > 1;
  return isTogether ? clumpLayout(asked) : spreadLayout(asked);
}
