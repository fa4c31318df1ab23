import { grouped } from '../../terms/groups.ts';
import { fUpperTail } from '../../numerics/distributions.ts';
import { keyed, nth } from '../../numerics/element.ts';
import { ifConverged } from '../../numerics/notConverged.ts';
import { fitBlocks } from '../../numerics/incompleteBlocks.ts';
import type { Estimate } from '../../terms/estimate.ts';
import type { Garden } from '../../terms/gardens.ts';
import { fitGardenModel, joinedUnits } from '../gardenModel.ts';
import { indexed } from '../plantClasses.ts';
import type { ClassF, ModelOptions } from '../plantTypes.ts';
import { relativeVariance } from '../units.ts';
import type { Unit } from '../units.ts';

/** What gardens are grouped by. */
export type GroupKind = 'region' | 'setting';

/** A class in the gardens of a region, or under cover and in the open. */
export interface GardenGroup {
  readonly name: string;
  readonly gardens: number;
  /** Varieties with gardens enough; those of the others are not told. */
  readonly estimates: ReadonlyMap<string, Estimate>;
}

export interface GroupsSeen {
  readonly kind: GroupKind;
  readonly groups: readonly GardenGroup[];
  /** Whether varieties do differently in different groups; null where that cannot be told. */
  readonly interaction: ClassF | null;
}

const gardensOf = (units: readonly Unit[]): ReadonlySet<string> =>
  new Set(units.map(({ planting }) => planting.garden));

/** True where a group is small enough to be known by its figure: few gardens, or one with over half of the plants. */
function tellsOne(units: readonly Unit[], least: number): boolean {
  const plants = new Map<string, number>();
  for (const { planting, plants: own } of units) plants.set(planting.garden, (plants.get(planting.garden) ?? 0) + own);
  const all = [...plants.values()].reduce((sum, own) => sum + own, 0);
  return plants.size < least || [...plants.values()].some((own) => own > all / 2);
}

/** Groups of a variety that may be told: of one that is hidden the others would give it away, so the next smallest is too. */
function shownGroups(byGroup: ReadonlyMap<string, readonly Unit[]>, least: number): ReadonlySet<string> {
  const sizes = [...byGroup].filter(([, units]) => units.length > 0);
  const hidden = sizes.filter(([, units]) => tellsOne(units, least)).map(([name]) => name);
  const shown = sizes
    .filter(([name]) => !hidden.includes(name))
    .toSorted(([, a], [, b]) => gardensOf(a).size - gardensOf(b).size)
    .map(([name]) => name);
  return new Set(hidden.length === 1 ? shown.slice(1) : shown);
}

interface Fitted {
  readonly distance: number;
  readonly pearson: number;
  readonly df: number;
}

/** Half the quasi-deviance of units that tell a difference, up to a constant, with what is left. */
function fitOf(units: readonly Unit[], options: ModelOptions): Fitted | null {
  const { used } = joinedUnits(units, options);
  if (used.length === 0) return null;
  const variance = used.map(({ plants }) => relativeVariance(plants, options.gardenCorrelation));
  const fit = fitBlocks({
    family: 'gamma',
    y: used.map(({ y }) => y),
    group: indexed(used.map(({ planting }) => planting.variety)).at,
    block: indexed(used.map(({ planting }) => planting.garden)).at,
    relativeVariance: variance,
  });
  const distance = used.reduce((sum, { y }, i) => {
    const mean = nth(fit.fitted, i);
    return sum + (y / mean + Math.log(mean)) / nth(variance, i);
  }, 0);
  return { distance, pearson: (fit.dispersion ?? 0) * Math.max(0, fit.residualDf), df: fit.residualDf };
}

/** One F of variety × group: the fits of the groups against the one of all gardens. */
function interactionOf(groups: readonly (readonly Unit[])[], options: ModelOptions): ClassF | null {
  const each = groups.map((units) => fitOf(units, options)).filter((one) => one !== null);
  // Of the same units: what is alone in its group tells nothing in either.
  const all = fitOf(
    groups.flatMap((units) => joinedUnits(units, options).used),
    options,
  );
  const df2 = each.reduce((sum, { df }) => sum + df, 0);
  if (!all || each.length < 2 || df2 <= 0 || all.df <= df2) return null;
  const spread = each.reduce((sum, { pearson }) => sum + pearson, 0) / df2;
  const gained = 2 * (all.distance - each.reduce((sum, { distance }) => sum + distance, 0));
  const df1 = all.df - df2;
  const value = Math.max(0, gained) / df1 / spread;
  return spread > 0 && Number.isFinite(value) ? { value, df1, df2, p: fUpperTail(value, df1, df2) } : null;
}

/**
 * A class's yields in the groups of gardens: the club's fit inside each, told for varieties with gardens enough, and
 * whether varieties do differently in different groups.
 *
 * @param units   a variety of the class in a garden each
 * @param least   gardens that stand behind a figure at the least
 * @returns       null where fewer than two groups have gardens
 * @source gardens page 2.1 and 4
 */
export function groupsSeen(
  kind: GroupKind,
  units: readonly Unit[],
  gardens: ReadonlyMap<string, Garden>,
  least: number,
  options: ModelOptions,
): GroupsSeen | null {
  const groupOf = ({ planting }: Unit): string | null => gardens.get(planting.garden)?.[kind] ?? null;
  const byGroup = grouped(
    units.filter((unit) => groupOf(unit) !== null),
    (unit) => groupOf(unit) ?? '',
  );
  if (byGroup.size < 2) return null;
  const inFit = new Map([...byGroup].map(([name, own]) => [name, joinedUnits(own, options).used]));
  const varieties = [...new Set(units.map(({ planting }) => planting.variety))];
  const shown = new Map(
    varieties.map((id) => [
      id,
      shownGroups(
        new Map([...inFit].map(([name, own]) => [name, own.filter(({ planting }) => planting.variety === id)])),
        least,
      ),
    ]),
  );
  const names = [...byGroup.keys()].toSorted();
  const groups = names.map((name): GardenGroup => {
    const own = keyed(byGroup, name);
    const estimates = [...fitGardenModel(own, options).estimates].filter(
      ([id, { estimate }]) => estimate !== null && shown.get(id as (typeof varieties)[number])?.has(name) === true,
    );
    return { name, gardens: gardensOf(own).size, estimates: new Map(estimates) };
  });
  if (groups.every(({ estimates }) => estimates.size === 0)) return null;
  // Zeros can leave a group without a fit: then nothing is said of differences.
  return { kind, groups, interaction: ifConverged(() => interactionOf([...byGroup.values()], options)) };
}
