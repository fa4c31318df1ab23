import { gaveSomething, pickingsOf } from '../../terms/record.ts';
import type { Day } from '../../terms/day.ts';
import { isDay } from '../../terms/day.ts';
import type { SeasonKey, VarietyId } from '../../terms/ids.ts';
import type { Planting, Season, Trial, Variety } from '../../terms/trial.ts';

/** A variety of a season that is not over: sums of what was recorded, nothing estimated. */
export interface SoFar {
  readonly variety: Variety;
  readonly plants: number;
  /** The first day on which one of its plants was planted out; null where none has a date. */
  readonly plantedOut: Day | null;
  readonly firstRipe: Day | null;
  /** Usable fruit to date. */
  readonly fruits: number;
  /** Usable weight to date, g. */
  readonly grams: number;
}

/** A season that is not over, as it stands. */
export interface Ongoing {
  readonly key: SeasonKey;
  readonly year: number;
  readonly plants: number;
  readonly fruits: number;
  readonly grams: number;
  readonly firstRipe: { readonly varieties: readonly Variety[]; readonly day: Day } | null;
  /** The last day of a picking or an event; null before the first. */
  readonly lastRecord: Day | null;
  readonly classes: readonly { readonly classId: string; readonly varieties: readonly SoFar[] }[];
}

const earliest = (days: readonly (Day | null)[]): Day | null => {
  const known = days.filter(isDay);
  return known.length === 0 ? null : (Math.min(...known) as Day);
};

/** Days on which ripe fruit was picked of a unit, or noted. */
function ripeDays(unit: Planting): readonly (Day | null)[] {
  return [
    ...pickingsOf(unit).flatMap(({ day, ripe }) => (gaveSomething(ripe) ? [day] : [])),
    ...unit.events.flatMap(({ event, day }) => (event === 'first-ripe' ? [day] : [])),
  ];
}

function soFar(season: Season, variety: Variety): SoFar {
  const own = (unit: Planting): boolean => unit.variety === variety.id;
  const plantings = season.plantings.filter(own);
  const pickings = season.yieldUnits.filter(own).flatMap(pickingsOf);
  return {
    variety,
    plants: plantings.reduce((sum, { plants }) => sum + plants, 0),
    plantedOut: earliest(plantings.map(({ transplanted }) => transplanted)),
    firstRipe: earliest([...season.yieldUnits, ...season.ripeningUnits].filter(own).flatMap(ripeDays)),
    fruits: pickings.reduce((sum, { ripe, green }) => sum + ripe.fruits + green.fruits, 0),
    grams: pickings.reduce((sum, { ripe, green }) => sum + ripe.grams + green.grams, 0),
  };
}

/** The season that is not over, as it stands; null where all are. */
export function ongoingOf({ ongoing: season, varieties, settings }: Trial): Ongoing | null {
  if (!season) return null;
  const grown = new Set<VarietyId>(season.plantings.map((own) => own.variety));
  const all = varieties.filter(({ id }) => grown.has(id)).map((variety) => soFar(season, variety));
  const day = earliest(all.map(({ firstRipe }) => firstRipe));
  const first = all.filter(({ firstRipe }) => firstRipe !== null && firstRipe === day).map(({ variety }) => variety);
  const units = [...season.yieldUnits, ...season.ripeningUnits];
  const days = units.flatMap((unit) => [
    ...pickingsOf(unit).map(({ day }) => day),
    ...unit.events.map(({ day }) => day),
  ]);
  const known = days.filter(isDay);
  return {
    key: season.key,
    year: season.year,
    plants: all.reduce((sum, { plants }) => sum + plants, 0),
    fruits: all.reduce((sum, { fruits }) => sum + fruits, 0),
    grams: all.reduce((sum, { grams }) => sum + grams, 0),
    firstRipe: day === null ? null : { varieties: first, day },
    lastRecord: known.length === 0 ? null : (Math.max(...known) as Day),
    classes: [...settings.classes.values()].flatMap(({ id }) => {
      const own = all.filter(({ variety }) => variety.classId === id);
      return own.length === 0 ? [] : [{ classId: id, varieties: own }];
    }),
  };
}
