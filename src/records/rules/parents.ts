import { plantingId } from '../../terms/ids.ts';
import type { VarietyId } from '../../terms/ids.ts';
import { nearestName } from '../../terms/names.ts';
import { isLine } from '../../terms/trial.ts';
import type { Season, Variety } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { VarietyRegistry } from '../registry.ts';
import { plantOf } from './lots.ts';
import { nth } from '../../numerics/element.ts';

function reportFrom(
  variety: Variety,
  generations: ReadonlyMap<string, number | null>,
  seasons: readonly Season[],
  { log }: CheckContext,
): void {
  for (const own of variety.from) {
    const found = `${own.season}/${own.planting}`;
    if (own.variety === null) {
      const season = seasons.find(({ year }) => year === own.season);
      const near = nearestName(own.planting, season?.plantings.map(({ id }) => id) ?? []);
      log.add('from-unknown', variety.place, found, near === null ? {} : { near: `${own.season}/${near}` });
      continue;
    }
    const before = generations.get(own.variety) ?? null;
    if (variety.generation !== null && before !== null && variety.generation !== before + 1)
      log.add('generation-order', variety.place, `F${variety.generation}`, {
        parent: own.variety,
        expected: `F${before + 1}`,
      });
  }
}

/**
 * Generations of lines: as written; else one more than that of the plant in `from`, 2 where that plant was an odd one in
 * a variety; 1 where only the parents are named.
 */
function generationsOf(varieties: readonly Variety[]): ReadonlyMap<string, number | null> {
  const byId = new Map<string, Variety>(varieties.map((own) => [own.id, own]));
  const known = new Map<string, number | null>();
  const find = (variety: Variety, trail: ReadonlySet<string>): number | null => {
    if (variety.generation !== null || !isLine(variety) || variety.isBackcross || trail.has(variety.id))
      return variety.generation;
    const [seed] = variety.from;
    if (!seed) return variety.mother !== null && variety.father !== null ? 1 : null;
    const parent = byId.get(seed.variety ?? '');
    if (!parent) return null;
    if (!isLine(parent)) return 2;
    const before = find(parent, new Set([...trail, variety.id]));
    return before === null ? null : before + 1;
  };
  for (const variety of varieties) known.set(variety.id, find(variety, new Set()));
  return known;
}

/** Reports mothers, fathers and seed plants that are unknown, generations that do not follow, and loops of descent. */
export function checkParents(
  registry: VarietyRegistry,
  seasons: readonly Season[],
  context: CheckContext,
): readonly Variety[] {
  const { log } = context;
  const parents = new Map<string, readonly string[]>();
  const named = registry.varieties.map((variety) => {
    const resolve = (name: string | null): VarietyId | null => {
      if (name === null) return null;
      const plant = /^(\d{4})\/(.+)$/.exec(name);
      const grew = plant
        ? plantOf({ season: Number(plant[1]), planting: plantingId(nth(plant, 2)), variety: null }, seasons)?.variety
        : undefined;
      const parent = grew ?? registry.find(name)?.id;
      if (parent) return parent;
      const near = registry.nearest(name);
      if (plant) log.add('from-unknown', variety.place, name);
      else log.add('unknown-variety', variety.place, name, near === null ? {} : { near });
      return null;
    };
    const [mother, father] = [resolve(variety.mother), resolve(variety.father)];
    const from = variety.from.map((own) => ({ ...own, variety: plantOf(own, seasons)?.variety ?? null }));
    parents.set(
      variety.id,
      [mother, father, ...from.map((own) => own.variety)].filter((id) => id !== null),
    );
    return { ...variety, mother, father, from };
  });
  const generations = generationsOf(named);
  for (const variety of named) {
    reportFrom(variety, generations, seasons, context);
    if (isLine(variety) && !variety.isBackcross && (generations.get(variety.id) ?? null) === null)
      log.add('line-without-generation', variety.place, variety.id);
  }
  for (const variety of named) {
    const loop = loopFrom(variety.id, parents);
    if (loop) log.add('parent-loop', variety.place, variety.id, { loop: loop.join(' → ') });
  }
  return named.map((variety) => ({ ...variety, generation: generations.get(variety.id) ?? null }));
}

/** The way from a variety through its parents back to itself, or null. */
function loopFrom(start: string, parents: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const seen = new Set<string>();
  const trail: { readonly id: string; readonly path: readonly string[] }[] = [{ id: start, path: [start] }];
  for (let step = trail.pop(); step; step = trail.pop()) {
    for (const parent of parents.get(step.id) ?? []) {
      if (parent === start) return [...step.path, start];
      if (seen.has(parent)) continue;
      seen.add(parent);
      trail.push({ id: parent, path: [...step.path, parent] });
    }
  }
  return null;
}
