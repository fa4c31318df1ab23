import { goodStates } from '../../terms/lines.ts';
import type { StateTrait } from '../../terms/lines.ts';
import type { Trial } from '../../terms/trial.ts';
import { nth } from '../../numerics/element.ts';
import type { Cross, CrossFamily, CrossPlant } from './crosses.ts';
import { geneModels, mixed } from './geneKinds.ts';
import { genePosterior, goodShares, PARENTS, plantGenotypes } from './geneModels.ts';
import type { GeneFamily, GenePedigree, GenePosterior } from './geneModels.ts';
import { ratiosNotRuledOut } from './ratios.ts';
import type { Ratio } from './ratios.ts';

/** What the plants of a cross tell of one trait of states. */
export interface CrossTrait {
  readonly trait: StateTrait;
  /** States seen in the cross or its parents, in the order of the settings. */
  readonly seen: readonly string[];
  /** Plants by state in the F2, in the order of `seen`; null where no F2 was looked at. */
  readonly f2Counts: readonly number[] | null;
  /** Ratios that the F2 does not rule out; null where none can be asked about. */
  readonly ratios: readonly Ratio[] | null;
  /** Null where nothing but counts can be told. */
  readonly genes: TraitGenes | null;
}

export interface TraitGenes {
  readonly pedigree: GenePedigree;
  readonly posterior: GenePosterior;
  /** Where a plant stands in the pedigree; absent for those of bulks. */
  readonly paths: ReadonlyMap<CrossPlant, readonly number[]>;
  /** States that are wanted, counted as in `seen`; null where none is, or none of them was seen. */
  readonly good: readonly number[] | null;
}

/** Insects cross these as a rule: seed of open flowers tells nothing of one plant's genes. Facts page 2.5. */
const OFTEN_CROSSED = /^(?:cucurbita|cucumis|citrullus)/i;

/** The one state that all plants of a variety show; null where they differ or none was looked at. */
function stateOf(variety: string | null, trait: string, trial: Trial): string | null {
  const states = new Set(
    trial.seasons.flatMap((season) =>
      season.states.filter((own) => own.variety === variety && own.trait === trait).map(({ state }) => state),
    ),
  );
  return states.size === 1 ? ([...states][0] ?? null) : null;
}

interface Building {
  readonly cross: Cross;
  readonly trait: string;
  readonly seen: readonly string[];
  readonly paths: Map<CrossPlant, readonly number[]>;
}

/** A family as the gene models take it, with the families of its plants. */
function geneFamily(families: readonly CrossFamily[], path: readonly number[] | null, building: Building): GeneFamily {
  const { cross, trait, seen, paths } = building;
  const counts = seen.map((state) => families.reduce((sum, own) => sum + (own.others.get(trait)?.get(state) ?? 0), 0));
  const plants = families
    .flatMap((own) => own.plants)
    .map((plant, i) => {
      const own = path === null ? null : [...path, i];
      if (own) paths.set(plant, own);
      const offspring = cross.families.filter(({ mothers }) => mothers.length === 1 && mothers[0] === plant);
      const at = seen.indexOf(plant.states.get(trait) ?? '');
      const family = offspring.length === 0 ? null : geneFamily(offspring, own, building);
      return { state: at < 0 ? null : at, family };
    });
  return { counts, plants };
}

/** True for a ratio that some gene model gives in an F2 with what is known of F1 and parents. */
function isPossible(parts: readonly number[], { states, f1, parents }: GenePedigree): boolean {
  if (f1 === null && parents === null) return true;
  const whole = parts.reduce((sum, own) => sum + own, 0);
  return geneModels(states).some((model) => {
    const root = mixed(model.genes);
    const shares = parts.map((_, state) => nth(goodShares(model, [state]), root));
    if (shares.some((own, i) => Math.abs(own - nth(parts, i) / whole) > 1e-9)) return false;
    if (f1 !== null && nth(model.map, root) !== f1) return false;
    const isCross = ([a, b]: readonly [number, number]): boolean =>
      nth(model.map, a) === parents?.[0] && nth(model.map, b) === parents[1];
    return parents === null || PARENTS[model.genes].some(isCross);
  });
}

function traitOf(cross: Cross, trait: StateTrait, trial: Trial): CrossTrait | null {
  const { key } = trait;
  const all = new Set(cross.families.flatMap(({ counts }) => [...(counts.get(key)?.keys() ?? [])]));
  if (all.size === 0) return null;
  const [mother, father] = [stateOf(cross.mother, key, trial), stateOf(cross.father, key, trial)];
  for (const own of [mother, father]) if (own !== null) all.add(own);
  const seen = trait.states.filter((state) => all.has(state));
  const f2 = cross.families.filter(({ generation }) => generation === 2);
  const f1 = cross.families.find(({ generation }) => generation === 1);
  const counted = seen.map((state) => f2.reduce((sum, own) => sum + (own.counts.get(key)?.get(state) ?? 0), 0));
  const f2Counts = counted.some((n) => n > 0) ? counted : null;
  const none: CrossTrait = { trait, seen, f2Counts, ratios: null, genes: null };
  const isCountsOnly =
    seen.length < 2 ||
    seen.length > 4 ||
    f2.length === 0 ||
    cross.families.some(({ variety, isCrossed }) => variety.isBackcross || isCrossed) ||
    OFTEN_CROSSED.test(cross.species ?? '');
  if (isCountsOnly) return none;
  const paths = new Map<CrossPlant, readonly number[]>();
  const building: Building = { cross, trait: key, seen, paths };
  const at = (state: string | null): number | null => (state === null ? null : seen.indexOf(state));
  const f1State = f1 ? stateOf(f1.variety.id, key, trial) : null;
  const pedigree: GenePedigree = {
    states: seen.length,
    f2: geneFamily(f2, [], building),
    bulks: cross.families
      .filter(
        ({ generation, mothers, variety }) =>
          generation !== null && generation > 2 && mothers.length > 1 && !variety.isBackcross,
      )
      .map((own) => ({ generation: own.generation ?? 3, ...geneFamily([own], null, building) })),
    f1: at(f1State),
    parents: mother === null || father === null ? null : [seen.indexOf(mother), seen.indexOf(father)],
    calledWrong: trait.calledWrong,
  };
  const good = (goodStates(trait, cross.classId) ?? []).map((state) => seen.indexOf(state)).filter((own) => own >= 0);
  return {
    ...none,
    ratios: f2Counts === null ? null : ratiosNotRuledOut(f2Counts, (parts) => isPossible(parts, pedigree)),
    genes: { pedigree, posterior: genePosterior(pedigree), paths, good: good.length === 0 ? null : good },
  };
}

/** What a cross tells of its traits of states, in the order of the settings; those nobody looked at are left out. */
export const crossTraits = (cross: Cross, trial: Trial): readonly CrossTrait[] =>
  [...trial.settings.states.values()].flatMap((trait) => traitOf(cross, trait, trial) ?? []);

/** Below this a state is hardly to be had from a mother. */
const HARDLY = 0.05;

/** True for a plant in a state that no gene model still worth naming gives from its mother's seed. */
export function isUnexpected({ pedigree, posterior, paths }: TraitGenes, plant: CrossPlant, state: number): boolean {
  const path = paths.get(plant);
  if (!path || path.length < 2) return false;
  const mother = path.slice(0, -1);
  const without = withoutFamily(pedigree, mother);
  return posterior.models
    .filter(({ share }) => share >= HARDLY)
    .every((model) => {
      const shares = goodShares(model, [state]);
      const genotypes = plantGenotypes(without, model, mother);
      return genotypes.reduce((sum, own, g) => sum + own * nth(shares, g), 0) < HARDLY;
    });
}

/** The pedigree without what grew from one plant. */
function withoutFamily(pedigree: GenePedigree, path: readonly number[]): GenePedigree {
  const cut = (family: GeneFamily, depth: number): GeneFamily => ({
    ...family,
    plants: family.plants.map((plant, i) => {
      if (i !== path[depth]) return plant;
      return depth === path.length - 1
        ? { ...plant, family: null }
        : { ...plant, family: plant.family && cut(plant.family, depth + 1) };
    }),
  });
  return { ...pedigree, f2: cut(pedigree.f2, 0) };
}
