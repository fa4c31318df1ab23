import type { Place } from './place.ts';

/** A garden of a club, by its code. */
export interface Garden {
  readonly code: string;
  readonly region: string | null;
  readonly setting: 'open' | 'cover' | null;
  /** Whether its own page and rows may be shown to everyone; null where nothing is said of it. */
  readonly isPublished: boolean | null;
  readonly place: Place;
}

/** How records of several gardens are taken. */
export interface GardenSettings {
  /** Code of the trial's own garden: of every row that names none. */
  readonly own: string;
  /** Part of a unit's variance that more plants of a variety in one garden do not reduce, 0 to 1. */
  readonly correlation: number;
  /** So many gardens stand behind the figure of a group at the least. */
  readonly least: number;
  /** Regions that must answer where totals are asked of an engine. */
  readonly regions: readonly string[];
}

/** Gardens with plantings, in order of their codes; a season of one garden is analysed plant by plant. */
export const isOfClub = ({ gardens }: { readonly gardens: readonly string[] }): boolean => gardens.length > 1;
