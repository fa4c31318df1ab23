import { blockVariance } from '../../numerics/blockVariance.ts';
import { cell, nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';
import { randomStream } from '../../numerics/random.ts';
import { blocksOf, halfUp } from './plants.ts';
import { clumpLayout } from './clumpLayout.ts';
import type { ClassLayout, LayoutAsked, PlannedPlant } from './layoutTypes.ts';
import { shuffled } from './shuffled.ts';
import { spreadOut } from './spread.ts';
import { areBeside, spotKey } from './stretches.ts';
import type { Spot } from './stretches.ts';
import { varietiesToBlocks } from './varietyBlocks.ts';

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
    isTogether: false,
    tallOver: ground.tallOver,
  };
}

/** Pairs of plants of one variety side by side, by variety. */
function besidesOf(plants: readonly PlannedPlant[]): ReadonlyMap<string, number> {
  const at = new Map(plants.map((own) => [spotKey(own.spot), own.variety]));
  const pairs = new Map<string, number>();
  for (const { variety, spot } of plants)
    for (const next of [
      { ...spot, row: spot.row + 1 },
      { ...spot, column: spot.column + 1 },
    ])
      if (areBeside(spot, next) && at.get(spotKey(next)) === variety) pairs.set(variety, (pairs.get(variety) ?? 0) + 1);
  return pairs;
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
