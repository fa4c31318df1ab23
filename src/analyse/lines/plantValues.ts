import { mean } from 'simple-statistics';
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

/** Mean score of each plant that was scored by itself, tasters' means taken out (methods page A4). */
function ratedPlants({ season }: SeasonSeen, trait: string): readonly (readonly [id: string, value: number])[] {
  const scores = season.scores.filter((own) => own.trait === trait);
  const meanOf = (own: readonly { readonly score: number }[]): number => mean(own.map(({ score }) => score));
  const all = scores.length === 0 ? 0 : meanOf(scores);
  const tasters = new Map<string, number>();
  for (const { taster } of scores)
    if (!tasters.has(taster)) tasters.set(taster, meanOf(scores.filter((own) => own.taster === taster)) - all);
  const plants = new Map<string, { score: number }[]>();
  for (const { planting, taster, score } of scores)
    if (planting !== null)
      plants.set(planting, [...(plants.get(planting) ?? []), { score: score - (tasters.get(taster) ?? 0) }]);
  return [...plants].map(([id, own]) => [id, meanOf(own)]);
}

/**
 * What every single plant of a season showed of a trait; accidents and plants that gave nothing are left out.
 *
 * @param trait  yield, fruits, first_ripe, or the key of a declared measure or rating
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
    if (trial.settings.traits.get(trait)?.kind === 'rating') return ratedPlants(seen, trait);
    return measureUnits(season, trait, classLookup(trial.varieties)).map(({ planting, y }) => [planting.id, y]);
  };
  const isLog = traitFacts(trait, trial.settings.traits).scale === 'log';
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
 * @param blocks  what `withoutBlocks` gave for the class
 * @returns       null where there are too few
 * @source methods page L5
 */
export function fixedSquares(
  values: readonly PlantValue[],
  classId: string,
  isLog: boolean,
  trial: Trial,
  blocks: ReturnType<typeof withoutBlocks>,
): Squares | null {
  const { adjusted, df } = blocks;
  const classOf = classLookup(trial.varieties);
  const fixed = new Set<string>(trial.varieties.filter((own) => !isLine(own)).map(({ id }) => id));
  const squares = (isIn: (variety: string) => boolean): Squares => {
    const groups = new Map<string, number[]>();
    for (const { planting, variety, value } of values)
      if (fixed.has(variety) && isIn(variety))
        groups.set(variety, [
          ...(groups.get(variety) ?? []),
          adjusted.get(planting) ?? (isLog ? Math.log(value) : value),
        ]);
    return added([...groups.values()].filter((own) => own.length >= 2).map(squaresOf));
  };
  const all = squares((variety) => classOf(variety) === classId);
  const own = { ss: all.ss, df: all.df - df };
  if (own.df >= FEWEST && own.ss > 0) return own;
  const every = isLog ? squares(() => true) : own;
  const whole = isLog ? { ss: every.ss, df: every.df - df } : own;
  return whole.df >= FEWEST && whole.ss > 0 ? whole : null;
}

/** Rounds of taking out means of varieties and blocks in turn: enough for the sums to stand still. */
const ROUNDS = 200;

/**
 * Values with the effects of a class's blocks taken out, working scale: least squares of variety + block.
 *
 * @param values    of one class in one season
 * @param blockOf   block of a planting; null where it has none
 * @returns         values by planting, and the degrees of freedom that the blocks took (0 without blocks)
 * @source methods page A1
 */
export function withoutBlocks(
  values: readonly PlantValue[],
  blockOf: (planting: string) => string | null,
  isLog: boolean,
): { readonly adjusted: ReadonlyMap<string, number>; readonly df: number } {
  const own = values.map((one) => ({
    ...one,
    block: blockOf(one.planting) ?? '',
    y: isLog ? Math.log(one.value) : one.value,
  }));
  const blocks = new Set(own.map(({ block }) => block));
  const plain = { adjusted: new Map(own.map(({ planting, y }) => [planting, y])), df: 0 };
  if (blocks.size < 2 || blocks.has('')) return plain;
  const effect = new Map([...blocks].map((block) => [block, 0]));
  const means = (key: (one: (typeof own)[number]) => string, y: (one: (typeof own)[number]) => number) => {
    const sums = new Map<string, { sum: number; n: number }>();
    for (const one of own) {
      const at = sums.get(key(one)) ?? { sum: 0, n: 0 };
      sums.set(key(one), { sum: at.sum + y(one), n: at.n + 1 });
    }
    return new Map([...sums].map(([name, { sum, n }]) => [name, sum / n]));
  };
  for (let round = 0; round < ROUNDS; round++) {
    const variety = means(
      ({ variety: id }) => id,
      ({ y, block }) => y - (effect.get(block) ?? 0),
    );
    const block = means(
      ({ block: name }) => name,
      ({ y, variety: id }) => y - (variety.get(id) ?? 0),
    );
    const middle = [...block.values()].reduce((sum, b) => sum + b, 0) / block.size;
    for (const [name, b] of block) effect.set(name, b - middle);
  }
  return {
    adjusted: new Map(own.map(({ planting, y, block }) => [planting, y - (effect.get(block) ?? 0)])),
    df: blocks.size - 1,
  };
}
