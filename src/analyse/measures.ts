import { totalsOf } from '../terms/record.ts';
import { plantingId } from '../terms/ids.ts';
import type { Planting, Season } from '../terms/trial.ts';
import type { Unit } from './units.ts';

/** Mean of a measure for every planting (or for a variety measured under its name), one value each. */
export function measureUnits(season: Season, trait: string, classOf: (variety: string) => string): readonly Unit[] {
  const byUnit = new Map<string, { sum: number; n: number }>();
  const add = (id: string, value: number): void => {
    const own = byUnit.get(id) ?? { sum: 0, n: 0 };
    own.sum += value;
    own.n++;
    byUnit.set(id, own);
  };
  const plantings = new Map<string, Planting>(season.plantings.map((planting) => [planting.id, planting]));
  const joint = new Map<string, string>();
  for (const { variety, planting, value, trait: key } of season.measurements) {
    if (key !== trait) continue;
    if (planting === null) joint.set(`${variety}*`, variety);
    add(planting ?? `${variety}*`, value);
  }
  for (const planting of season.plantings) {
    const value = totalsOf(planting)?.traits.get(trait);
    if (value !== undefined) add(planting.id, value);
  }
  return [...byUnit].flatMap(([id, { sum, n }]) => {
    const variety = joint.get(id);
    const own = plantings.get(id) ?? season.plantings.find((planting) => planting.variety === variety);
    if (!own) return [];
    const planting =
      variety === undefined
        ? own
        : { ...own, id: plantingId(id), block: null, standsIn: null, row: null, column: null };
    return [{ planting, classId: classOf(planting.variety), y: sum / n, plants: 1 }];
  });
}
