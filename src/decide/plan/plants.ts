import type { Verdict } from '../verdict.ts';
import { given, nth } from '../../numerics/element.ts';

/** A variety that may be grown, with what speaks for it and what its grower asks. */
export interface Wanted {
  readonly variety: string;
  readonly kind: 'tried' | 'newcomer' | 'line';
  /** Share of simulated seasons in which it earns a spot; null for what was never tried. */
  readonly share: number | null;
  readonly verdict: Verdict | null;
  readonly isCheck: boolean;
  /** Exactly so many plants. */
  readonly plants: number | null;
  readonly atLeast: number | null;
  readonly atMost: number | null;
}

export interface PlantsAsked {
  readonly places: number;
  readonly spots: number;
  /** How many newcomers; null where that follows from the places. */
  readonly newcomers: number | null;
  /** Plants that a newcomer begins with. */
  readonly newcomerPlants: number;
  readonly isEqual: boolean;
  readonly bar: 'newcomer' | 'check';
  /** Newcomers in the order of preference. */
  readonly varieties: readonly Wanted[];
}

export interface PlantsGiven {
  /** In the order of the varieties asked about. */
  readonly plants: readonly number[];
  readonly free: number;
  /** Of the list, but without a place. */
  readonly cut: readonly string[];
  /** Newcomers that wait. */
  readonly waiting: readonly string[];
  /** Places that are missing for what was wished; 0 where all fit, and then alone the plants hold. */
  readonly short: number;
}

/** Round half up. */
export const halfUp = (value: number): number => Math.floor(value + 0.5);

/** Least share that plants are given by. */
const LEAST_SHARE = 0.05;
/** Nobody gets more than so great a part of the class's places before everyone has. */
const PART = 3;
/** Places for one newcomer. */
const NEWCOMER_PLACES = 10;

interface Sharing {
  readonly asked: PlantsAsked;
  readonly plants: number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  /** Listed and further varieties that are grown, the best first. */
  readonly grown: readonly number[];
}

/** Numbers of newcomers that are grown. */
function newcomersOf({ newcomers, isEqual }: PlantsAsked, left: number, short: number, grown: number): number {
  if (newcomers !== null) return newcomers;
  if (isEqual) return Math.max(0, Math.floor(left / 2) - grown);
  const own = Math.max(1, halfUp(left / NEWCOMER_PLACES)) + 2 * short;
  return Math.min(Math.floor(left / 2), own);
}

/** Takes plants away from the weakest end until they fit; null where wishes alone are too many. */
function makeRoom({ asked, plants, least, grown }: Sharing, places: number): readonly string[] | null {
  const isNew = (i: number): boolean => nth(asked.varieties, i).kind === 'newcomer';
  const isWished = (i: number): boolean => nth(least, i) > 0 || nth(asked.varieties, i).isCheck;
  const all = plants.map((_, i) => i);
  const cut: string[] = [];
  const total = (): number => plants.reduce((sum, own) => sum + own, 0);
  while (total() > places) {
    const second = all.findLast((i) => isNew(i) && nth(plants, i) > Math.max(nth(least, i), 1));
    const newcomer = all.findLast((i) => isNew(i) && nth(plants, i) > 0 && !isWished(i));
    const listed = grown.findLast((i) => nth(plants, i) > 0 && !isWished(i));
    const above = grown.findLast((i) => nth(plants, i) > Math.max(nth(least, i), 1));
    if (second !== undefined) plants[second]!--;
    else if (newcomer !== undefined) plants[newcomer] = 0;
    else if (listed !== undefined) {
      plants[listed] = 0;
      cut.push(nth(asked.varieties, listed).variety);
    } else if (above !== undefined) plants[above]!--;
    else return null;
  }
  return cut;
}

/** Gives out places one by one to the largest weight/√(n(n + 1)); ties to the larger weight, then to rank. */
function giveOut(
  plants: number[],
  left: number,
  who: readonly number[],
  limit: readonly number[],
  weight: (i: number) => number,
): number {
  let rest = left;
  for (; rest > 0; rest--) {
    const able = who.filter((i) => nth(plants, i) < nth(limit, i));
    if (able.length === 0) break;
    const quotient = (i: number): number => weight(i) / Math.sqrt(nth(plants, i) * (nth(plants, i) + 1));
    const top = Math.max(...able.map(quotient));
    const best = able.filter((i) => quotient(i) >= top * (1 - 1e-12));
    const [chosen] = best.toSorted((a, b) => weight(b) - weight(a) || who.indexOf(a) - who.indexOf(b));
    plants[given(chosen)]!++;
  }
  return rest;
}

/** Varieties on the list or grown beside it, and newcomers, with the plants they begin with. */
function beginning(asked: PlantsAsked, exact: number, least: readonly number[], most: readonly number[]) {
  const { varieties, spots, isEqual } = asked;
  const at = varieties.map((_, i) => i);
  const left = asked.places - exact;
  const byShare = (list: readonly number[]): readonly number[] =>
    list.toSorted((a, b) => {
      const [x, y] = [nth(varieties, a), nth(varieties, b)];
      return (y.share ?? 0) - (x.share ?? 0) || (x.variety < y.variety ? -1 : 1);
    });
  const isFree = (i: number, kind: Wanted['kind']): boolean =>
    nth(varieties, i).kind === kind && nth(varieties, i).plants === null;
  const isGood = (i: number): boolean => nth(varieties, i).verdict !== 'drop';
  const taken = varieties.filter(
    ({ kind, plants, verdict }) => kind === 'tried' && (plants ?? 0) > 0 && verdict !== 'drop',
  ).length;
  const free = Math.max(0, spots - taken);
  const list = byShare(at.filter((i) => isFree(i, 'tried') && isGood(i))).slice(0, free);
  const beside = at.filter(
    (i) => isFree(i, 'tried') && (nth(least, i) > 0 || nth(varieties, i).isCheck) && !list.includes(i),
  );
  const grown = [...list, ...byShare(beside)];
  const fresh = at.filter((i) => isFree(i, 'newcomer'));
  const count = newcomersOf(asked, left, free - list.length, grown.length);
  const chosen = fresh.slice(0, Math.max(0, count));
  const plants = varieties.map((_, i) => {
    const first = isEqual ? Math.max(2, asked.newcomerPlants) : asked.newcomerPlants;
    if (grown.includes(i)) return Math.min(Math.max(2, nth(least, i)), nth(most, i));
    const own = chosen.includes(i) ? Math.min(first, nth(most, i)) : 0;
    return fresh.includes(i) && nth(least, i) > 0 ? Math.min(Math.max(own, nth(least, i)), nth(most, i)) : own;
  });
  return { grown, fresh, plants, left };
}

/**
 * Plants of each variety of a class: the list by share, newcomers one plant each, what is left by share.
 *
 * @returns  plants in the order of the varieties; exact
 * @source methods page, plan; Hill's quotient; reference case o02
 */
export function plantsOfEach(asked: PlantsAsked): PlantsGiven {
  const { varieties, isEqual, bar, places } = asked;
  const exact = varieties.reduce((sum, { plants }) => sum + (plants ?? 0), 0);
  const least = varieties.map(({ atLeast }) => atLeast ?? 0);
  const most = varieties.map(({ atMost }) => atMost ?? Infinity);
  const { grown, fresh, plants, left } = beginning(asked, exact, least, most);
  const waiting = (): readonly string[] =>
    fresh.filter((i) => nth(plants, i) === 0).map((i) => nth(varieties, i).variety);
  const cut = makeRoom({ asked, plants, least, most, grown }, left);
  const total = (): number => plants.reduce((sum, own) => sum + own, 0);
  if (cut === null) return { plants, free: 0, cut: [], waiting: waiting(), short: total() - left };
  let rest = left - total();
  const listed = grown.filter((i) => nth(plants, i) > 0);
  const begun = fresh.filter((i) => nth(plants, i) > 0);
  const cap = most.map((own) => Math.min(own, Math.max(2, Math.floor(places / PART))));
  const check = listed.find((i) => nth(varieties, i).isCheck);
  if (bar === 'check' && check !== undefined) {
    const fair = Math.ceil((left - begun.reduce((sum, i) => sum + nth(plants, i), 0)) / listed.length);
    for (; rest > 0 && nth(plants, check) < Math.min(fair, nth(cap, check)); rest--) plants[check]!++;
  }
  const share = (i: number): number => Math.max(LEAST_SHARE, nth(varieties, i).share ?? 0);
  if (isEqual) rest = giveOut(plants, rest, [...listed, ...begun], most, () => 1);
  else {
    rest = giveOut(plants, rest, listed, cap, share);
    rest = giveOut(plants, rest, begun, cap, () => 1);
    rest = giveOut(plants, rest, listed, most, share);
  }
  return {
    plants: varieties.map((own, i) => own.plants ?? nth(plants, i)),
    free: rest,
    cut,
    waiting: waiting(),
    short: 0,
  };
}

/** Blocks of a class with so many plants of so many varieties. */
export const blocksOf = (plants: number, varieties: number): number =>
  varieties < 2 ? 1 : Math.max(1, halfUp(plants / Math.min(varieties, 20)));
