import { grouped } from '../../terms/groups.ts';
import { given } from '../../numerics/element.ts';
import type { Bed } from '../../terms/plan.ts';
import { fileOnly } from '../../terms/place.ts';
import type { Season } from '../../terms/trial.ts';
import type { PlanSource } from './asked.ts';

/** Beds as plantings stood in them: as large as their rows and columns. */
function bedsOfSeason({ year, plantings }: Season): readonly Bed[] {
  const beds = grouped(
    plantings.filter(({ row, column }) => row !== null && column !== null),
    ({ bed }) => bed ?? 'bed',
  );
  return [...beds].map(([id, own]) => ({
    id,
    rows: Math.max(...own.map(({ row }) => given(row))),
    columns: Math.max(...own.map(({ column }) => given(column))),
    standsIn: own[0]?.standsIn ?? null,
    containerL: own[0]?.containerL ?? null,
    classes: null,
    leaveOut: [],
    north: 'top',
    place: fileOnly(`data/${year}/plantings.csv`),
  }));
}

/** Beds of a plan: those of places.csv, else those of the last season that had places, else none. */
export function bedsOf({ trial, year, hasBegun }: PlanSource): readonly Bed[] {
  if (trial.beds.length > 0) return trial.beds;
  const isPlaced = ({ plantings }: Season): boolean =>
    plantings.some(({ row, column }) => row !== null && column !== null);
  const own = hasBegun && trial.planned && isPlaced(trial.planned) ? trial.planned : null;
  const last = own ?? trial.seasons.findLast((season) => season.year < year && isPlaced(season));
  return last ? bedsOfSeason(last) : [];
}

/** One row as long as it must be, where no bed is known. */
export const oneRow = (columns: number): Bed => ({
  id: 'bed',
  rows: 1,
  columns,
  standsIn: null,
  containerL: null,
  classes: null,
  leaveOut: [],
  north: 'top',
  place: fileOnly('data/places.csv'),
});
