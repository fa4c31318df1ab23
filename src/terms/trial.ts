import type { Day } from './day.ts';
import { classKey } from './ids.ts';
import type { ClassId, PlantingId, SeasonKey, VarietyId } from './ids.ts';
import type { Bed, StandsIn, Wish } from './plan.ts';
import type { SeedLot, SeedPlant, StateCount } from './lines.ts';
import type { Place } from './place.ts';
import type { PlantingRecord } from './picked.ts';
import type { Answer, Sent } from './rankings.ts';
import type { Garden } from './gardens.ts';
import type { Settings } from './settings.ts';

/** Outlines of fruit that are drawn. */
export const SHAPES = ['block', 'horn', 'round', 'plum', 'cluster', 'long', 'pear'] as const;

export type Shape = (typeof SHAPES)[number];

/** What is registered of a variety of either kind. */
interface Registered {
  readonly id: VarietyId;
  readonly name: string;
  readonly classId: ClassId;
  readonly species: string | null;
  /** Filial generation: 1 of an F1. */
  readonly generation: number | null;
  /** Null where unknown. */
  readonly mother: VarietyId | null;
  readonly father: VarietyId | null;
  /** An F1 crossed with one of its parents. */
  readonly isBackcross: boolean;
  /** Plants its seed was saved from: one, or several mixed (a bulk); empty where none is named. */
  readonly from: readonly SeedPlant[];
  readonly source: string | null;
  readonly firstGrown: number | null;
  /** Year from which it is no longer a candidate; true for "yes". */
  readonly retired: boolean | number;
  readonly claimDays: readonly [number, number] | null;
  readonly claimHeat: readonly [number | null, number | null] | null;
  /** The packet's claims for declared measures, in the stored unit of the measure. */
  readonly claimMeasures: ReadonlyMap<string, number>;
  readonly colourUnripe: string | null;
  readonly colourRipe: string | null;
  /** Outline of the fruit; null where it is left to the measures. */
  readonly shape: Shape | null;
  readonly formerIds: readonly string[];
  readonly alsoKnownAs: readonly string[];
  readonly notes: string | null;
  readonly unknownColumns: ReadonlyMap<string, string>;
  readonly place: Place;
}

/** A variety as it is bought or kept: its plants are alike. */
export interface Cultivar extends Registered {
  readonly kind: 'open-pollinated' | 'hybrid' | 'unknown';
}

/** Descendants of a cross, which may still vary from plant to plant. */
export interface Line extends Registered {
  readonly kind: 'line';
}

export type Variety = Cultivar | Line;

export const isLine = (variety: Variety): variety is Line => variety.kind === 'line';

export type Cause = 'season-end' | 'frost' | 'disease' | 'pest' | 'weak' | 'accident' | 'other';

/** A figure written as a limit (<5, >20 g) or as a trace, kept as it was written. */
export interface LimitedValue {
  readonly kind: 'below' | 'above' | 'trace';
  readonly column: string;
  readonly written: string;
  readonly place: Place;
}

export interface PlantingEvent {
  readonly day: Day;
  readonly event: string;
  readonly count: number | null;
  readonly of: number | null;
  readonly place: Place;
}

/** The experimental unit: a plant, or plants of one variety recorded together. */
export interface Planting {
  readonly id: PlantingId;
  /** Code of its garden; the trial's own where the records name none. */
  readonly garden: string;
  readonly variety: VarietyId;
  readonly plants: number;
  readonly bed: string | null;
  readonly block: string | null;
  readonly row: number | null;
  readonly column: number | null;
  readonly sown: Day | null;
  readonly transplanted: Day | null;
  readonly removed: Day | null;
  readonly cause: Cause | null;
  readonly areaM2: number | null;
  readonly containerL: number | null;
  readonly standsIn: StandsIn | null;
  readonly topped: boolean | null;
  /** Seed lot it was sown from. */
  readonly lot: string | null;
  readonly notes: string | null;
  readonly unknownColumns: ReadonlyMap<string, string>;
  readonly record: PlantingRecord;
  readonly events: readonly PlantingEvent[];
  /** Ids of the plantings that were recorded together under the variety's name; empty for a planting by itself. */
  readonly joins: readonly PlantingId[];
  readonly place: Place;
}

/** A score of a declared rating, or an answer (0 or 1) of a yes-no trait. */
export interface Score {
  readonly day: Day | null;
  readonly taster: string;
  readonly variety: VarietyId;
  readonly planting: PlantingId | null;
  readonly trait: string;
  readonly score: number;
  readonly isBlind: boolean | null;
}

/** A sample on a taster's ballot. */
export interface Serving {
  readonly taster: string;
  readonly order: number;
  readonly code: string;
  readonly variety: VarietyId;
}

export interface Measurement {
  readonly day: Day | null;
  readonly variety: VarietyId;
  readonly planting: PlantingId | null;
  readonly trait: string;
  readonly value: number;
}

/** What the grower wrote beside a record, and lets be published. */
export interface Remark {
  readonly day: Day | null;
  readonly garden: string;
  readonly variety: VarietyId;
  /** Null where the row is about a variety with several plantings. */
  readonly planting: PlantingId | null;
  readonly text: string;
}

export interface SeedBatch {
  /** Null for a lot of which no variety row says what grows. */
  readonly variety: VarietyId | null;
  readonly lot: string | null;
  readonly method: 'paper' | 'soil' | null;
  readonly sown: Day;
  readonly seeds: number;
  readonly germinated: number;
  readonly checked: Day | null;
  readonly temperatureC: number | null;
}

export interface WeatherDay {
  readonly day: Day;
  readonly tminC: number;
  readonly tmaxC: number;
  readonly rainMm: number | null;
  readonly soilC: number | null;
}

export interface Season {
  readonly key: SeasonKey;
  readonly year: number;
  /** First day anything may be recorded: the earliest sowing or planting out. */
  readonly firstDay: Day | null;
  readonly lastDay: Day;
  readonly lookEvery: number;
  readonly layout: 'together' | 'spread' | null;
  readonly harvestsComplete: boolean;
  readonly earlyUntil: Day | null;
  readonly hasHarvests: boolean;
  /** Codes of the gardens with plantings, in their order. */
  readonly gardens: readonly string[];
  /** Every planting set out, accidents too. */
  readonly plantings: readonly Planting[];
  /** The units of the yield: the plantings, those picked together joined into one. */
  readonly yieldUnits: readonly Planting[];
  /** The units of ripening: the plantings, those whose ripening was noted together joined into one. */
  readonly ripeningUnits: readonly Planting[];
  readonly scores: readonly Score[];
  /** Samples that were served, or are to be: who, in which order, under which code. */
  readonly servings: readonly Serving[];
  readonly measurements: readonly Measurement[];
  readonly states: readonly StateCount[];
  /** What members of a club were sent, and what of it they preferred. */
  readonly sent: readonly Sent[];
  readonly answers: readonly Answer[];
  readonly seedBatches: readonly SeedBatch[];
  /** Figures of which only a limit is known. */
  readonly limited: readonly LimitedValue[];
  /** Notes and columns of the grower's own that `publish.show` names, beside pickings, looks, scores and measures. */
  readonly remarks: readonly Remark[];
  readonly weather: readonly WeatherDay[];
}

/** Records that passed every check. Made only by `check`. */
export interface Trial {
  readonly settings: Settings;
  readonly varieties: readonly Variety[];
  /** Seasons that are over, oldest first. */
  readonly seasons: readonly Season[];
  /** The last season where it is not over: shown as it stands, in no figure and no verdict. */
  readonly ongoing: Season | null;
  /** A season of which nothing is dated or recorded yet: plants that are to be grown. */
  readonly planned: Season | null;
  /** Beds and their places, as places.csv has them; empty without it. */
  readonly beds: readonly Bed[];
  /** Wishes for a season, by its year. */
  readonly wishes: ReadonlyMap<number, readonly Wish[]>;
  readonly lots: readonly SeedLot[];
  /** Gardens by their codes, as gardens.csv has them; empty without it. */
  readonly gardens: ReadonlyMap<string, Garden>;
}

/** Class of a variety by its id; `all` for an id that is none. */
export function classLookup(varieties: readonly Variety[]): (id: string) => ClassId {
  const classes = new Map<string, ClassId>(varieties.map(({ id, classId }) => [id, classId]));
  return (id) => classes.get(id) ?? classKey('all');
}

/** Name of a variety by its id; the id itself for one that is none. */
export function nameLookup(varieties: readonly Variety[]): (id: string) => string {
  const names = new Map<string, string>(varieties.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
}

/** The seasons that are over, and the one that is not. */
export const everySeason = ({ seasons, ongoing }: Pick<Trial, 'seasons' | 'ongoing'>): readonly Season[] =>
  ongoing ? [...seasons, ongoing] : seasons;
