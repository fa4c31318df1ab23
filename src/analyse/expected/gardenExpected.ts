import { mixtureQuantile } from '../../numerics/mixture.ts';
import type { NormalPart } from '../../numerics/mixture.ts';
import { keyed, nth } from '../../numerics/element.ts';
import { grouped } from '../../terms/groups.ts';
import { onceEach, oncePer } from '../../terms/once.ts';
import type { ExpectedClass, ExpectedVariety } from './expectedTrait.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass, GardenSpreads } from './gardenCells.ts';
import { gardenLevels, inClub, inGarden, levelsOf, meanOfGardens } from './gardenFigures.ts';
import { momentsOf, pulledBy } from './linearFigures.ts';
import { gardensGiven } from './gardenGiven.ts';
import type { LinearFigure } from './linearFigures.ts';
import type { GardensGiven } from './gardenGiven.ts';
import { gardenPosterior, thinnedCells } from './gardenPosterior.ts';
import type { GardenSpreadCell } from './gardenLikeliest.ts';

/** A trait's posterior over gardens, its mean spreads on the working scale, with what it says of the club. */
export interface GardensExpected extends GardenSpreads {
  readonly cells: readonly GardenSpreadCell[];
  /** In a garden of the club: a + v + a new season. */
  readonly classes: readonly ExpectedClass[];
}

/** So many cells of equal weight give means and limits as the whole grid does, to what is written of them. */
const FOR_FIGURES = 500;

const averageOf = (cells: readonly GardenSpreadCell[], of: (cell: GardenSpreadCell, i: number) => number): number =>
  cells.reduce((sum, cell, i) => sum + cell.weight * of(cell, i), 0);

/** Posterior means of the four spreads. */
const middleOf = (cells: readonly GardenSpreadCell[]): GardenSpreads => ({
  between: averageOf(cells, ({ between }) => between),
  withSeason: averageOf(cells, ({ withSeason }) => withSeason),
  withGarden: averageOf(cells, ({ withGarden }) => withGarden),
  rest: averageOf(cells, ({ rest }) => rest),
});

/** Where the figures of a variety come from: its level, and what next season adds to its variance. */
interface Aim {
  readonly level: (given: GardensGiven) => LinearFigure;
  readonly figure: (given: GardensGiven, variety: number, level: LinearFigure) => LinearFigure;
  readonly added: (cell: GardenSpreadCell) => number;
}

const CLUB: Aim = {
  level: (given) => meanOfGardens(given, null),
  figure: inClub,
  added: ({ withSeason }) => withSeason ** 2,
};

/** A garden's own figures; its level, its own u where the variety was seen there. */
const aimAt = (garden: string): Aim => ({
  level: (given) => meanOfGardens(given, garden),
  figure: (given, variety) => inGarden(given, levelsOf(given, garden)!, variety, 1),
  added: ({ withSeason, rest }) => withSeason ** 2 + rest ** 2,
});

function expectedClass(
  own: GardenClass,
  cells: readonly GardenSpreadCell[],
  level: number,
  { level: levelOf, figure, added }: Aim,
): ExpectedClass {
  const parts = own.varieties.map((): (NormalPart & { readonly left: number; readonly own: number })[] => []);
  let classMean = 0;
  for (const cell of cells) {
    const given = gardensGiven(own, cell);
    const middle = levelOf(given);
    classMean += cell.weight * momentsOf(given, middle).mean;
    own.varieties.forEach((_, i) => {
      const { mean, variance } = momentsOf(given, figure(given, i, middle));
      const left = momentsOf(given, inClub(given, i, null)).variance;
      nth(parts, i).push({
        weight: cell.weight,
        mean,
        sd: Math.sqrt(variance + added(cell)),
        left,
        own: 1 - left / cell.between ** 2,
      });
    });
  }
  const varieties = own.varieties.map((variety, i): ExpectedVariety => {
    const all = nth(parts, i);
    const average = (of: (part: (typeof all)[number]) => number): number =>
      all.reduce((sum, part) => sum + part.weight * of(part), 0);
    return {
      variety,
      mean: average(({ mean }) => mean),
      low: mixtureQuantile(all, (1 - level) / 2),
      high: mixtureQuantile(all, (1 + level) / 2),
      ownShare: average(({ own: share }) => Math.max(0, share)),
      variance: average(({ left }) => left),
    };
  });
  return { classId: own.classId, classMean, varieties };
}

/**
 * Stage two over gardens for one trait: all gardens, seasons and classes together.
 *
 * @param classes     the trait's values by class
 * @param priorScale  A of the priors, working scale
 * @param level       level of the prediction interval
 * @source gardens page 2.3; reference cases o2 and o8
 */
export function expectedOverGardens(
  classes: readonly GardenClass[],
  priorScale: number,
  level: number,
): GardensExpected {
  const cells = gardenPosterior(classes, priorScale);
  return {
    cells,
    ...middleOf(cells),
    classes: classes.map((own) => expectedClass(own, thinnedCells(cells, FOR_FIGURES), level, CLUB)),
  };
}

/** Posterior mean of a garden's mean level in a class, working scale; null where it has no values in it. */
export function gardenLevel(own: GardenClass, cells: readonly GardenSpreadCell[], garden: string): number | null {
  if (!packedGardens(own).gardens.some((rows) => rows.garden === garden)) return null;
  const used = thinnedCells(cells, FOR_FIGURES);
  return averageOf(used, (cell) => {
    const given = gardensGiven(own, cell);
    return momentsOf(given, meanOfGardens(given, garden)).mean;
  });
}

/** What next season is expected to bring of a class in one garden; null where it has no values in the class. */
export function expectedInGarden(
  own: GardenClass,
  cells: readonly GardenSpreadCell[],
  garden: string,
  level: number,
): ExpectedClass | null {
  const isKnown = packedGardens(own).gardens.some((rows) => rows.garden === garden);
  return isKnown ? expectedClass(own, thinnedCells(cells, FOR_FIGURES), level, aimAt(garden)) : null;
}

/** A variety in one garden beside the club's middle, working scale: v + u with its interval. */
export interface InOneGarden {
  readonly garden: string;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** So many cells serve for a picture. */
const FOR_PICTURE = 30;

/** v + u of varieties in gardens: what is made of each figure, by garden and by variety among those wanted of it. */
function inGardens<T>(
  own: GardenClass,
  wanted: ReadonlyMap<string, readonly number[]>,
  spreads: GardenSpreads,
  make: (given: GardensGiven, figure: LinearFigure) => T,
): ReadonlyMap<string, readonly T[]> {
  const given = gardensGiven(own, spreads);
  const found = new Map<string, readonly T[]>();
  for (const rows of packedGardens(own).gardens) {
    const varieties = wanted.get(rows.garden);
    if (!varieties) continue;
    const levels = gardenLevels(rows, spreads);
    found.set(
      rows.garden,
      varieties.map((i) => make(given, inGarden(given, levels, i, 0))),
    );
  }
  return found;
}

/** Gardens of each variety that are told, and how many have grown it. */
interface Told {
  readonly gardens: number;
  readonly told: readonly { readonly garden: string; readonly parts: readonly NormalPart[] }[];
}

/** The same for all varieties of a class at once: what a garden tells rests on all of its varieties. */
const toldOf = oncePer((cells: readonly GardenSpreadCell[]) =>
  oncePer((own: GardenClass) => onceEach((most: number) => allTold(own, cells, most))),
);

function allTold(own: GardenClass, cells: readonly GardenSpreadCell[], most: number): readonly Told[] {
  const valuesOf = grouped(own.values, ({ variety }) => variety);
  const grown = own.varieties.map((id) =>
    [...new Set((valuesOf.get(id) ?? []).map(({ garden }) => garden))].toSorted(),
  );
  const byGarden = (lists: readonly (readonly string[])[]): ReadonlyMap<string, readonly number[]> => {
    const pairs = lists.flatMap((gardens, i) => gardens.map((garden) => ({ garden, i })));
    return new Map([...grouped(pairs, ({ garden }) => garden)].map(([garden, all]) => [garden, all.map(({ i }) => i)]));
  };
  /** What is made of each garden that is wanted of a variety. */
  const ofVarieties = <T>(wanted: ReadonlyMap<string, readonly number[]>, made: ReadonlyMap<string, readonly T[]>) => {
    const lists = own.varieties.map(() => new Map<string, T>());
    for (const [garden, varieties] of wanted)
      varieties.forEach((i, k) => nth(lists, i).set(garden, nth(keyed(made, garden), k)));
    return lists;
  };
  const all = byGarden(grown);
  const means = ofVarieties(
    all,
    inGardens(own, all, middleOf(cells), (given, { pull, constant }) => pulledBy(pull, given.means, constant)),
  );
  const told = grown.map((gardens, i) => {
    const ordered = gardens.toSorted((a, b) => keyed(nth(means, i), a) - keyed(nth(means, i), b));
    const step = Math.max(1, ordered.length / most);
    return Array.from({ length: Math.min(most, ordered.length) }, (_, k) => nth(ordered, Math.floor(k * step)));
  });
  const chosen = byGarden(told);
  const used = thinnedCells(cells, FOR_PICTURE);
  const whole = used.reduce((sum, { weight }) => sum + weight, 0);
  const parts = used.map((cell) =>
    ofVarieties(
      chosen,
      inGardens(own, chosen, cell, (given, figure): NormalPart => {
        const { mean, variance } = momentsOf(given, figure);
        return { weight: cell.weight / whole, mean, sd: Math.sqrt(variance) };
      }),
    ),
  );
  return told.map((gardens, i) => ({
    gardens: nth(grown, i).length,
    told: gardens.map((garden) => ({ garden, parts: parts.map((lists) => keyed(nth(lists, i), garden)) })),
  }));
}

/**
 * A variety over the gardens that have grown it, or over so many of them evenly spaced from the least to the most.
 *
 * @param most  gardens that are told at the most
 * @returns     those gardens in order of their means, and how many there are
 * @source gardens page 2.3 and 5
 */
export function varietyOverGardens(
  own: GardenClass,
  cells: readonly GardenSpreadCell[],
  variety: string,
  level: number,
  most: number,
): { readonly gardens: number; readonly lines: readonly InOneGarden[] } {
  const { gardens, told } = nth(toldOf(cells)(own)(most), own.varieties.indexOf(variety));
  const lines = told.map(({ garden, parts }) => ({
    garden,
    mean: parts.reduce((total, { weight, mean }) => total + weight * mean, 0),
    low: mixtureQuantile(parts, (1 - level) / 2),
    high: mixtureQuantile(parts, (1 + level) / 2),
  }));
  return { gardens, lines: lines.toSorted((a, b) => a.mean - b.mean || (a.garden < b.garden ? -1 : 1)) };
}
