import type { Day } from './day.ts';
import type { PlantingId, VarietyId } from './ids.ts';
import { foldId } from './names.ts';
import type { Place } from './place.ts';

/** The plant that seed was saved from. */
export interface SeedPlant {
  readonly season: number;
  readonly planting: PlantingId;
  /** What grew there; null where no such planting is recorded, or until `check` has read the season. */
  readonly variety: VarietyId | null;
}

/** True for the same plant, whatever the case of its id. */
export const isSamePlant = (a: SeedPlant, b: SeedPlant): boolean =>
  a.season === b.season && foldId(a.planting) === foldId(b.planting);

/** A trait of which every plant shows one of a few states: leaf green or dark. */
export interface StateTrait {
  readonly key: string;
  /** 2 to 8, as they are written in the records. */
  readonly states: readonly string[];
  /** Chance that a plant is called wrongly, 0 to 1. */
  readonly calledWrong: number;
  /** States that are wanted, by class; the key '*' holds for all classes. */
  readonly good: ReadonlyMap<string, readonly string[]>;
}

/** States that are wanted in a class; null where none is. */
export const goodStates = (trait: StateTrait, classId: string): readonly string[] | null =>
  trait.good.get(classId) ?? trait.good.get('*') ?? null;

/** Plants that were found alike in a state. */
export interface StateCount {
  readonly day: Day | null;
  readonly variety: VarietyId;
  /** Null for plants of a family counted together, those set out among them. */
  readonly planting: PlantingId | null;
  readonly trait: string;
  readonly state: string;
  readonly plants: number;
  readonly place: Place;
}

/** Plants of all counts or plantings together. */
export const plantsIn = (counts: readonly { readonly plants: number }[]): number =>
  counts.reduce((sum, own) => sum + own.plants, 0);

export const POLLINATIONS = ['open', 'bagged', 'caged', 'hand', 'unknown'] as const;
export type Pollination = (typeof POLLINATIONS)[number];

/** True where no foreign pollen could come to the flowers. */
export const isKeptPure = (pollination: Pollination): boolean =>
  pollination === 'bagged' || pollination === 'caged' || pollination === 'hand';

/** Seed put by: bought, or saved from plants. */
export interface SeedLot {
  readonly id: string;
  /** What will grow; null where no variety row says it yet. */
  readonly variety: VarietyId | null;
  /** The plants it was saved from; empty for bought seed. */
  readonly from: readonly SeedPlant[];
  /** Day of harvest; the first of October of a year alone, or of a packet's year. Null where it is not known. */
  readonly saved: Day | null;
  readonly seeds: number | null;
  readonly grams: number | null;
  readonly pollination: Pollination;
  readonly stored: 'room' | 'cold';
  readonly isTreated: boolean;
  /** Pollen parent of flowers crossed by hand, as written: a plant, or a variety; null where none is named. */
  readonly father: string | null;
  /** True where nothing of it is left. */
  readonly isGone: boolean;
  /** Year in which it was used up; null where none is written. */
  readonly goneIn: number | null;
  readonly source: string | null;
  readonly notes: string | null;
  readonly place: Place;
}

/** True for a lot whose flowers were pollinated by another plant: what grows is a new cross, no next generation. */
export function isCrossedByHand({ father, from }: Pick<SeedLot, 'father' | 'from'>): boolean {
  return father !== null && !from.some(({ season, planting }) => foldId(father) === foldId(`${season}/${planting}`));
}

/** True for a lot from which a variety grows: it says so, or it was saved from a plant in the variety's `from`. */
export function isLotOf(
  lot: SeedLot,
  variety: { readonly id: VarietyId; readonly from: readonly SeedPlant[] },
): boolean {
  if (lot.variety !== null) return lot.variety === variety.id;
  return lot.from.some((own) => variety.from.some((one) => isSamePlant(own, one)));
}
