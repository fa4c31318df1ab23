import type { Bed } from '../../terms/plan.ts';
import { nth } from '../../numerics/element.ts';

/** A place for one plant. */
export interface Spot {
  readonly bed: Bed;
  /** From 1. */
  readonly row: number;
  readonly column: number;
}

/** A plant that stands where its grower put it. */
export interface FixedPlant {
  readonly variety: string;
  readonly classId: string;
  readonly spot: Spot;
}

/** Where the plants of a class stand, in order along the beds. */
export interface Stretch {
  readonly classId: string;
  readonly spots: readonly Spot[];
}

export const spotKey = ({ bed, row, column }: Spot): string => `${bed.id}/${row}/${column}`;

/** Places of a bed in order: along it column by column, across it row by row; places that stay empty left out. */
export function spotsOfBed(bed: Bed): readonly Spot[] {
  const empty = new Set(bed.leaveOut.map(([row, column]) => `${row}/${column}`));
  const spots: Spot[] = [];
  for (let column = 1; column <= bed.columns; column++)
    for (let row = 1; row <= bed.rows; row++) if (!empty.has(`${row}/${column}`)) spots.push({ bed, row, column });
  return spots;
}

/** So many places of a bed from one on, in their order; fewer where the bed ends before, none where it is no place. */
export function spotsFrom(bed: Bed, row: number, column: number, count: number): readonly Spot[] {
  const spots = spotsOfBed(bed);
  const at = spots.findIndex((own) => own.row === row && own.column === column);
  return at < 0 ? [] : spots.slice(at, at + count);
}

/** True for two places side by side, along or across a bed. */
export const areBeside = (a: Spot, b: Spot): boolean =>
  a.bed.id === b.bed.id && Math.abs(a.row - b.row) + Math.abs(a.column - b.column) === 1;

/** All orders of a list of up to so many classes are tried; of more, the one of trial.yaml alone. */
const ALL_ORDERS_TO = 7;

function* ordersOf<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length < 2) {
    yield items;
    return;
  }
  for (const [i, own] of items.entries())
    for (const rest of ordersOf(items.filter((_, j) => j !== i))) yield [own, ...rest];
}

interface Asked {
  readonly beds: readonly Bed[];
  /** Plants of each class, in the order of trial.yaml. */
  readonly plants: readonly { readonly classId: string; readonly plants: number }[];
  readonly fixed: readonly FixedPlant[];
  readonly keepApart: readonly (readonly [string, string])[];
}

/** Lays the classes along the beds in an order, each in the first places that it may have; null where they do not fit. */
function laid(order: Asked['plants'], { beds, fixed }: Asked): readonly Stretch[] | null {
  const held = new Map(fixed.map((own) => [spotKey(own.spot), own.classId]));
  const taken = new Set<string>();
  const stretches: Stretch[] = [];
  for (const { classId, plants } of order) {
    const own = beds.filter(({ classes }) => classes?.includes(classId));
    const open = beds.filter(({ classes }) => classes === null);
    const able = [...own, ...open].flatMap(spotsOfBed).filter((spot) => {
      const key = spotKey(spot);
      return !taken.has(key) && (held.get(key) ?? classId) === classId;
    });
    const mine = fixed.filter((one) => one.classId === classId).length;
    let free = plants - mine;
    const spots = able.filter((spot) => held.has(spotKey(spot)) || free-- > 0);
    if (spots.length < plants) return null;
    for (const spot of spots) taken.add(spotKey(spot));
    stretches.push({ classId, spots });
  }
  return stretches;
}

/** Pairs of places side by side whose classes are to be kept apart. */
export function touching(stretches: readonly Stretch[], keepApart: Asked['keepApart']): number {
  const classAt = new Map(stretches.flatMap(({ classId, spots }) => spots.map((spot) => [spotKey(spot), classId])));
  const isApart = (a: string, b: string | undefined): boolean =>
    keepApart.some(([x, y]) => (a === x && b === y) || (a === y && b === x));
  return stretches.reduce(
    (sum, { classId, spots }) =>
      sum +
      spots.filter((spot) => isApart(classId, classAt.get(spotKey({ ...spot, row: spot.row + 1 })))).length +
      spots.filter((spot) => isApart(classId, classAt.get(spotKey({ ...spot, column: spot.column + 1 })))).length,
    0,
  );
}

/** Places of a class that are cut off from its others: how often its stretch begins anew. */
function pieces({ spots }: Stretch): number {
  const orders = new Map<string, number>();
  for (const bed of new Set(spots.map((spot) => spot.bed)))
    spotsOfBed(bed).forEach((spot, i) => orders.set(spotKey(spot), i));
  return spots.filter((spot, i) => {
    const before = spots[i - 1];
    return !before || before.bed !== spot.bed || orders.get(spotKey(spot)) !== (orders.get(spotKey(before)) ?? 0) + 1;
  }).length;
}

/**
 * One stretch of places for each class: in the order of the classes in which the fewest plants of classes that are to be
 * kept apart stand side by side; of equal ones the one that leaves the fewest pieces, then the order of trial.yaml.
 *
 * @returns  in the order of the classes asked; null where no order fits
 */
export function stretchesOf(asked: Asked): readonly Stretch[] | null {
  const wanted = asked.plants.filter(({ plants }) => plants > 0);
  const orders = wanted.length <= ALL_ORDERS_TO ? [...ordersOf(wanted)] : [wanted];
  let best: { readonly stretches: readonly Stretch[]; readonly cost: number } | null = null;
  for (const order of orders) {
    const stretches = laid(order, asked);
    if (!stretches) continue;
    const cost = 1000 * touching(stretches, asked.keepApart) + stretches.reduce((sum, own) => sum + pieces(own), 0);
    if (!best || cost < best.cost) best = { stretches, cost };
  }
  const found = best?.stretches;
  return found
    ? wanted.map(({ classId }) =>
        nth(
          found.filter((own) => own.classId === classId),
          0,
        ),
      )
    : null;
}
