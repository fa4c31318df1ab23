import { traitFacts } from '../../terms/traits.ts';
import { classLookup, isLine } from '../../terms/trial.ts';
import type { Trial } from '../../terms/trial.ts';
import { measureUnits } from '../measures.ts';
import type { SeasonSeen } from '../seen.ts';
import { ripenings } from '../traitsSeen.ts';
import { added, squaresOf } from './spread.ts';
import type { Squares } from './spread.ts';

/** What one plant showed of a trait, stored unit. */
export interface PlantValue {
  readonly planting: string;
  readonly variety: string;
  readonly value: number;
}

/**
 * What every single plant of a season showed of a trait; accidents and plants that gave nothing are left out.
 *
 * @param trait  yield, fruits, first_ripe, or the key of a declared measure
 */
export function plantValues(seen: SeasonSeen, trait: string, trial: Trial): readonly PlantValue[] {
  const { season } = seen;
  const single = new Map(
    season.plantings
      .filter(({ plants, cause }) => plants === 1 && cause !== 'accident')
      .map((own) => [own.id as string, own] as const),
  );
  const valued = (): readonly (readonly [id: string, value: number | null | undefined])[] => {
    if (trait === 'yield') return [...single.keys()].map((id) => [id, seen.yields.get(id)?.grams]);
    if (trait === 'fruits') return [...single.keys()].map((id) => [id, seen.yields.get(id)?.fruits]);
    if (trait === 'first_ripe') return ripenings(seen).map(({ unit, ripe }) => [unit.id, ripe]);
    return measureUnits(season, trait, classLookup(trial.varieties)).map(({ planting, y }) => [planting.id, y]);
  };
  const { isLog } = traitFacts(trait, trial.settings.traits);
  return valued().flatMap(([id, value]) => {
    const own = single.get(id);
    if (!own || value === null || value === undefined || (isLog && value <= 0)) return [];
    return [{ planting: id, variety: own.variety, value }];
  });
}

/** Fewest degrees of freedom of a class's own fixed varieties. */
const FEWEST = 6;

/**
 * Squares of the single plants of fixed varieties about their own means, working scale: those of a class, else of all
 * classes on a logarithmic scale.
 *
 * @returns  null where there are too few
 * @source methods page L5
 */
export function fixedSquares(
  values: readonly PlantValue[],
  classId: string,
  isLog: boolean,
  trial: Trial,
): Squares | null {
  const classOf = classLookup(trial.varieties);
  const fixed = new Set<string>(trial.varieties.filter((own) => !isLine(own)).map(({ id }) => id));
  const squares = (isIn: (variety: string) => boolean): Squares => {
    const groups = new Map<string, number[]>();
    for (const { variety, value } of values)
      if (fixed.has(variety) && isIn(variety))
        groups.set(variety, [...(groups.get(variety) ?? []), isLog ? Math.log(value) : value]);
    return added([...groups.values()].filter((own) => own.length >= 2).map(squaresOf));
  };
  const own = squares((variety) => classOf(variety) === classId);
  if (own.df >= FEWEST && own.ss > 0) return own;
  const all = isLog ? squares(() => true) : own;
  return all.df >= FEWEST && all.ss > 0 ? all : null;
}
