import { grouped } from '../terms/groups.ts';
import { blockFactor } from './blocks.ts';
import type { Planting, Season } from '../terms/trial.ts';
import { given, nth } from '../numerics/element.ts';

/** A planting (or plantings recorded together) with its response. */
export interface Unit {
  readonly planting: Planting;
  readonly classId: string;
  readonly y: number;
  /** Plants set out; 1 where the response is a mean over whatever was measured. */
  readonly plants: number;
}

/** True if no two plantings of a variety stand beside each other; needs row and column of every planting. */
function standsApart(units: readonly Unit[]): boolean {
  const all = units.map(({ planting }) => planting);
  if (all.some(({ row, column }) => row === null || column === null)) return false;
  const places = grouped(all, ({ variety }) => variety);
  let compared = false;
  for (const plantings of places.values()) {
    for (let i = 0; i < plantings.length; i++) {
      for (let j = 0; j < i; j++) {
        const [a, b] = [nth(plantings, i), nth(plantings, j)];
        compared = true;
        const steps = Math.abs(given(a.row) - given(b.row)) + Math.abs(given(a.column) - given(b.column));
        if (a.bed === b.bed && steps <= 1) return false;
      }
    }
  }
  return compared;
}

export type Layout = 'together' | 'spread';

/**
 * How the plantings of a variety stand in one class: as the season's settings say; else spread if blocks divide the
 * class, in the model or not, or if rows and columns show them apart, else together.
 *
 * @param units  the class's plantings
 */
function layoutOf(season: Season, units: readonly Unit[]): Layout {
  if (season.layout !== null) return season.layout;
  const plantings = units.map(({ planting }) => planting);
  const isDivided = blockFactor(plantings, () => '').kind === 'block';
  return isDivided || standsApart(units) ? 'spread' : 'together';
}

/**
 * How the plantings of a variety stand, by class: spread, or together.
 *
 * @param units  the season's units of yield or of ripening
 * @returns      layouts by class id
 * @source methods page A1
 */
export function layoutsOf(season: Season, units: readonly Unit[]): ReadonlyMap<string, Layout> {
  const classes = [...new Set(units.map(({ classId }) => classId))];
  const of = (id: string): readonly Unit[] => units.filter(({ classId }) => classId === id);
  return new Map(classes.map((id) => [id, layoutOf(season, of(id))] as const));
}

/**
 * V(y) of a planting of so many plants, relative to a single plant's, where plantings stand apart.
 *
 * @param spotCorrelation  of plants in one place, 0 to 1
 * @source methods page A1
 */
export function relativeVariance(plants: number, spotCorrelation: number): number {
  return spotCorrelation + (1 - spotCorrelation) / plants;
}

/**
 * V(y) of a planting relative to a single plant's, as its class stands: together, plants count as if they were
 * independent, and the factor below makes up for it.
 *
 * @param plants           of the planting, at least 1
 * @param spotCorrelation  of plants in one place, 0 to 1
 * @source methods page A1
 */
export function placeVariance(layout: Layout | undefined, plants: number, spotCorrelation: number): number {
  return layout === 'together' ? 1 / plants : relativeVariance(plants, spotCorrelation);
}

/**
 * What the squared standard error of a variety is multiplied by where its plants stand together: they are not as many
 * places.
 *
 * @param plants  of the variety, all its plantings together
 */
export function togetherFactor(layout: Layout | undefined, plants: number, spotCorrelation: number): number {
  return layout === 'together' ? 1 + (plants * spotCorrelation) / (1 - spotCorrelation) : 1;
}

/**
 * As many plants, each a planting of its own in a place of its own, as would tell a mean as well as these plantings.
 *
 * @returns  a number of plants, not whole
 * @source methods page A1
 */
export function plantsAlone(
  plantings: readonly { readonly plants: number }[],
  layout: Layout | undefined,
  spotCorrelation: number,
): number {
  const all = plantings.reduce((sum, { plants }) => sum + plants, 0);
  const variance = plantings.reduce(
    (sum, { plants }) => sum + plants ** 2 * placeVariance(layout, plants, spotCorrelation),
    0,
  );
  return variance === 0 ? 0 : all ** 2 / variance / togetherFactor(layout, all, spotCorrelation);
}
