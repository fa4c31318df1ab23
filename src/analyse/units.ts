import type { BlockFactor } from '../check/rules/blocks.ts';
import type { Planting, Season } from '../terms/trial.ts';

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
  const places = new Map<string, Planting[]>();
  for (const { planting } of units) {
    if (planting.row === null || planting.column === null) return false;
    places.set(planting.variety, [...(places.get(planting.variety) ?? []), planting]);
  }
  let compared = false;
  for (const plantings of places.values()) {
    for (let i = 0; i < plantings.length; i++) {
      for (let j = 0; j < i; j++) {
        const [a, b] = [plantings[i]!, plantings[j]!];
        compared = true;
        const steps = Math.abs(a.row! - b.row!) + Math.abs(a.column! - b.column!);
        if (a.bed === b.bed && steps <= 1) return false;
      }
    }
  }
  return compared;
}

/**
 * How the plantings of a variety stand: as the season's settings say; else spread if a block is in the model or
 * rows and columns show them apart, else together.
 */
export function layoutOf(season: Season, units: readonly Unit[], factor: BlockFactor): 'together' | 'spread' {
  if (season.layout !== null) return season.layout;
  return factor.kind === 'block' || standsApart(units) ? 'spread' : 'together';
}
