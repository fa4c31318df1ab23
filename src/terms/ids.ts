declare const brand: unique symbol;

type Branded<Name extends string> = string & { readonly [brand]: Name };

/** Id of a variety, as varieties.csv has it, checked. */
export type VarietyId = Branded<'variety'>;
/** Id of a planting, unique within its season. */
export type PlantingId = Branded<'planting'>;
/** Key of a class. */
export type ClassId = Branded<'class'>;

/** A text that was found to be the id of a variety. */
export const varietyId = (text: string): VarietyId => text as VarietyId;
/** A text that was found to be, or becomes, the id of a planting. */
export const plantingId = (text: string): PlantingId => text as PlantingId;
/** A text that was found to be, or becomes, the key of a class. */
export const classKey = (text: string): ClassId => text as ClassId;

/** Key of a season: its year, and the garden where a trial has several. */
export type SeasonKey = Branded<'season'>;

/** Key of the season of a year, in a garden or in the only one. */
export const seasonKey = (year: number, garden: string | null = null): SeasonKey =>
  (garden === null ? String(year) : `${year}/${garden}`) as SeasonKey;
