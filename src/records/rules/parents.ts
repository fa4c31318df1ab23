import type { VarietyId } from '../../terms/ids.ts';
import { foldId, nearestName } from '../../terms/names.ts';
import { isLine } from '../../terms/trial.ts';
import type { Season, Variety } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { VarietyRegistry } from '../registry.ts';

/** Variety of the planting that a line's seed was saved from; null where it is unknown. */
function seedParent(variety: Variety, seasons: readonly Season[]): VarietyId | null {
  const { from } = variety;
  if (!from) return null;
  const season = seasons.find(({ year }) => year === from.season);
  const planting = season?.plantings.find(({ id }) => foldId(id) === foldId(from.planting));
  return planting?.variety ?? null;
}

function reportFrom(
  variety: Variety,
  grewThere: VarietyId | null,
  seasons: readonly Season[],
  registry: VarietyRegistry,
  { log }: CheckContext,
): void {
  if (!variety.from) return;
  const parent = registry.find(grewThere ?? '');
  const found = `${variety.from.season}/${variety.from.planting}`;
  if (!parent) {
    const season = seasons.find(({ year }) => year === variety.from!.season);
    const near = nearestName(variety.from.planting, season?.plantings.map(({ id }) => id) ?? []);
    log.add('from-unknown', variety.place, found, near === null ? {} : { near: `${variety.from.season}/${near}` });
    return;
  }
  if (variety.generation !== null && parent.generation !== null && variety.generation !== parent.generation + 1) {
    log.add('generation-order', variety.place, `F${variety.generation}`, {
      parent: parent.id,
      expected: `F${parent.generation + 1}`,
    });
  }
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
      const parent = registry.find(name);
      if (parent) return parent.id;
      const near = registry.nearest(name);
      log.add('unknown-variety', variety.place, name, near === null ? {} : { near });
      return null;
    };
    const [mother, father] = [resolve(variety.mother), resolve(variety.father)];
    const grewThere = seedParent(variety, seasons);
    reportFrom(variety, grewThere, seasons, registry, context);
    if (isLine(variety) && variety.generation === null) log.add('line-without-generation', variety.place, variety.id);
    parents.set(
      variety.id,
      [mother, father, grewThere].filter((id) => id !== null),
    );
    return { ...variety, mother, father, from: variety.from && { ...variety.from, variety: grewThere } };
  });
  for (const variety of named) {
    const loop = loopFrom(variety.id, parents);
    if (loop) log.add('parent-loop', variety.place, variety.id, { loop: loop.join(' → ') });
  }
  return named;
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
