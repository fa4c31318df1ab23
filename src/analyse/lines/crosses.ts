import type { VarietyId } from '../../terms/ids.ts';
import { isCrossedByHand, isKeptPure, isLotOf, isSamePlant, plantsIn } from '../../terms/lines.ts';
import type { SeedLot, SeedPlant, StateCount } from '../../terms/lines.ts';
import { foldId } from '../../terms/names.ts';
import { isLine } from '../../terms/trial.ts';
import type { Line, Planting, Trial, Variety } from '../../terms/trial.ts';

/** A plant of a cross that stood by itself. */
export interface CrossPlant {
  readonly year: number;
  readonly planting: Planting;
  /** Its state by trait; absent where it was not looked at. */
  readonly states: ReadonlyMap<string, string>;
  /** Seed saved from it alone. */
  readonly lots: readonly SeedLot[];
}

/** The plants of one row of varieties.csv: from one mother, or of a bulk. */
export interface CrossFamily {
  readonly variety: Line;
  readonly generation: number | null;
  /** The plants its seed came from; several of a bulk. */
  readonly mothers: readonly CrossPlant[];
  /** True where foreign pollen could come to its mothers' flowers, as far as is known. */
  readonly mayBeCrossed: boolean;
  /** True where its seed came of another plant's pollen, brought by hand: it is no selfed generation. */
  readonly isCrossed: boolean;
  readonly years: readonly number[];
  readonly plants: readonly CrossPlant[];
  /** Plants counted by trait and state: the whole tray where one was counted, the plants that stood among them. */
  readonly counts: ReadonlyMap<string, ReadonlyMap<string, number>>;
  /** The same without the plants that stood by themselves. */
  readonly others: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

/** Everything that descends from one cross. */
export interface Cross {
  /** Address part: the root's id without its generation. */
  readonly id: string;
  readonly name: string;
  readonly classId: string;
  readonly species: string | null;
  readonly mother: VarietyId | null;
  readonly father: VarietyId | null;
  /** By generation, then as in varieties.csv. */
  readonly families: readonly CrossFamily[];
}

const sameParents = (a: Variety, b: Variety): boolean =>
  a.mother !== null && a.father !== null && a.mother === b.mother && a.father === b.father;

/** The oldest line from which one descends: its F1, else what it begins with. */
function rootsOf(lines: readonly Line[]): ReadonlyMap<string, Line> {
  const byId = new Map<string, Line>(lines.map((own) => [own.id, own]));
  const find = (line: Line, steps: number): Line => {
    const before = byId.get(line.from[0]?.variety ?? '');
    if (before && steps < lines.length) return find(before, steps + 1);
    const f1 = lines.find((own) => own.generation === 1 && own.id !== line.id && sameParents(own, line));
    return line.generation === 1 ? line : (f1 ?? line);
  };
  return new Map(lines.map((own) => [own.id, find(own, 0)]));
}

function tally(counts: readonly StateCount[]): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const byTrait = new Map<string, Map<string, number>>();
  for (const { trait, state, plants } of counts) {
    const own = byTrait.get(trait) ?? new Map<string, number>();
    own.set(state, (own.get(state) ?? 0) + plants);
    byTrait.set(trait, own);
  }
  return byTrait;
}

/** Plants by trait and state: a tray replaces the plants that came from it. */
function countsOf(family: string, trial: Trial, singles: ReadonlySet<string>) {
  const whole: StateCount[] = [];
  const rest: StateCount[] = [];
  for (const { states } of trial.seasons) {
    const own = states.filter(({ variety }) => variety === family);
    const trays = own.filter(({ planting }) => planting === null);
    const inTrays = new Set(trays.map(({ trait }) => trait));
    const setOut = own.filter(({ planting }) => planting !== null);
    for (const count of setOut) if (!inTrays.has(count.trait)) whole.push(count);
    for (const count of setOut) if (!inTrays.has(count.trait) && !singles.has(count.planting ?? '')) rest.push(count);
    // Several rows of a tray are one: the plants set out singly are taken from all of them together.
    for (const [i, tray] of trays.entries()) {
      whole.push(tray);
      const isAlike = ({ trait, state }: StateCount): boolean => trait === tray.trait && state === tray.state;
      if (trays.findIndex(isAlike) < i) continue;
      const single = setOut.filter((one) => isAlike(one) && singles.has(one.planting ?? ''));
      rest.push({ ...tray, plants: Math.max(0, plantsIn(trays.filter(isAlike)) - plantsIn(single)) });
    }
  }
  return { counts: tally(whole), others: tally(rest) };
}

function familyOf(
  line: Line,
  trial: Trial,
  plantOf: (year: number, id: string) => CrossPlant | undefined,
): CrossFamily {
  const plants = trial.seasons.flatMap(({ year, plantings }) =>
    plantings.filter((own) => own.variety === line.id && own.plants === 1).flatMap(({ id }) => plantOf(year, id) ?? []),
  );
  const mothers = line.from.flatMap((own) => plantOf(own.season, own.planting) ?? []);
  const lots = trial.lots.filter((lot) => isLotOf(lot, line));
  const isCrossed = lots.some((lot) => lot.from.length > 0 && isCrossedByHand(lot));
  return {
    variety: line,
    generation: isCrossed ? null : line.generation,
    mothers,
    isCrossed,
    mayBeCrossed: (line.generation ?? 2) > 1 && !lots.some(({ pollination }) => isKeptPure(pollination)),
    years: trial.seasons
      .filter(({ plantings }) => plantings.some((own) => own.variety === line.id))
      .map(({ year }) => year),
    plants,
    ...countsOf(line.id, trial, new Set(plants.map(({ planting }) => planting.id))),
  };
}

/** Finds plants by year and id, each with its states and the seed saved from it alone: the same plant each time. */
function plantFinder(trial: Trial): (year: number, id: string) => CrossPlant | undefined {
  const seasons = new Map(trial.seasons.map((season) => [season.year, season]));
  const found = new Map<string, CrossPlant | undefined>();
  const make = (year: number, id: string): CrossPlant | undefined => {
    const season = seasons.get(year);
    const planting = season?.plantings.find((own) => foldId(own.id) === foldId(id));
    if (!season || !planting) return undefined;
    const own = planting.plants === 1 ? season.states.filter((count) => count.planting === planting.id) : [];
    const plant: SeedPlant = { season: year, planting: planting.id, variety: planting.variety };
    const lots = trial.lots.filter(({ from }) => from.length === 1 && from.some((one) => isSamePlant(one, plant)));
    return { year, planting, states: new Map(own.map(({ trait, state }) => [trait, state])), lots };
  };
  return (year, id) => {
    const key = `${year}/${foldId(id)}`;
    if (!found.has(key)) found.set(key, make(year, id));
    return found.get(key);
  };
}

/**
 * The crosses of a trial, each with its families from generation to generation.
 *
 * @returns  in the order of varieties.csv
 */
export function crossesOf(trial: Trial): readonly Cross[] {
  const lines = trial.varieties.filter(isLine);
  const roots = rootsOf(lines);
  const plantOf = plantFinder(trial);
  const taken = new Set<string>();
  return [...new Set(roots.values())].map((root): Cross => {
    const members = lines.filter(({ id }) => roots.get(id) === root);
    const plain = root.id.replace(/-f\d+$/, '');
    const id = taken.has(plain) ? root.id : plain;
    taken.add(id);
    const families = members.map((own) => familyOf(own, trial, plantOf));
    const named = members.find(({ mother, father }) => mother !== null || father !== null) ?? root;
    return {
      id,
      name: root.name.replace(/ F\d+$/, ''),
      classId: root.classId,
      species: root.species,
      mother: named.mother ?? root.from[0]?.variety ?? null,
      father: named.father,
      families: families.toSorted((a, b) => (a.generation ?? 99) - (b.generation ?? 99)),
    };
  });
}
