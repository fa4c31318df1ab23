import { grouped } from '../terms/groups.ts';
import { connectedParts } from '../numerics/connected.ts';
import { fileOnly } from '../terms/place.ts';
import type { Problem } from '../terms/problem.ts';
import { classLookup } from '../terms/trial.ts';
import type { Planting, Trial } from '../terms/trial.ts';
import { given } from '../numerics/element.ts';

/** What stands for likeness of place in the model of a season. */
export interface BlockFactor {
  readonly kind: 'block' | 'stands-in' | 'none';
  /** Level of each unit, or null without a factor. */
  readonly levels: readonly string[] | null;
  /** Why recorded blocks were left out. */
  readonly leftOut: { readonly why: 'missing' | 'not-connected'; readonly what: string } | null;
}

const NONE: BlockFactor = { kind: 'none', levels: null, leftOut: null };

/** True if within the class every variety can be compared with every other through shared levels. */
function connects(units: readonly Planting[], levelOf: (unit: Planting) => string): boolean {
  const number = (values: readonly string[]): readonly number[] => {
    const levels = [...new Set(values)];
    return values.map((value) => levels.indexOf(value));
  };
  return connectedParts(number(units.map(({ variety }) => variety)), number(units.map(levelOf))).count <= 1;
}

/**
 * The block factor of a season's units: `block` where every unit has one and each class hangs together through
 * them; else `stands_in` in the classes that it connects; else none.
 *
 * @param units    units of the analysis
 * @param classOf  class of a unit
 * @param without  classes of which the blocks are left out
 */
export function blockFactor(
  units: readonly Planting[],
  classOf: (unit: Planting) => string,
  without: ReadonlySet<string> = new Set(),
): BlockFactor {
  const byClass = grouped(
    units.filter((unit) => !without.has(classOf(unit))),
    classOf,
  );
  const asOne = (unit: Planting): string => `class ${classOf(unit)}`;
  const blocked = units.filter((unit) => unit.block !== null && !without.has(classOf(unit)));
  let leftOut: BlockFactor['leftOut'] = null;
  if (blocked.length > 0) {
    const lacking = units.find((unit) => unit.block === null && !without.has(classOf(unit)));
    if (lacking) leftOut = { why: 'missing', what: lacking.id };
    for (const [id, members] of byClass) {
      if (leftOut || connects(members, ({ block }) => given(block))) continue;
      leftOut = { why: 'not-connected', what: id };
    }
    if (!leftOut) {
      const isOne = new Set(blocked.map(({ block }) => block)).size === 1;
      const levels = units.map((unit) => (without.has(classOf(unit)) ? asOne(unit) : given(unit.block)));
      return isOne ? NONE : { kind: 'block', levels, leftOut: null };
    }
  }
  const usable = new Set<string>();
  for (const [id, members] of byClass) {
    if (members.every(({ standsIn }) => standsIn !== null) && connects(members, ({ standsIn }) => given(standsIn)))
      usable.add(id);
  }
  const levels = units.map((unit) => (usable.has(classOf(unit)) ? given(unit.standsIn) : asOne(unit)));
  const varies = [...byClass].some(
    ([id, members]) => usable.has(id) && new Set(members.map((m) => m.standsIn)).size > 1,
  );
  return varies ? { kind: 'stands-in', levels, leftOut } : { ...NONE, leftOut };
}

/** Seasons whose recorded blocks cannot enter the model, as warnings with the season's file for a place. */
export function blockProblems({ seasons, varieties }: Trial): readonly Problem[] {
  const classOf = classLookup(varieties);
  return seasons.flatMap((season): readonly Problem[] => {
    const units = season.yieldUnits.filter(({ cause }) => cause !== 'accident');
    const { leftOut } = blockFactor(units, ({ variety }) => classOf(variety));
    if (!leftOut) return [];
    const places = [fileOnly(`data/${season.year}/plantings.csv`)];
    return [{ code: 'block-left-out', places, found: leftOut.what, facts: { why: leftOut.why } }];
  });
}
