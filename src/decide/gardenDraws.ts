import { solveUpper } from '../numerics/cholesky.ts';
import { cell, nth } from '../numerics/element.ts';
import { randomStream } from '../numerics/random.ts';
import { packedGardens } from '../analyse/expected/gardenCells.ts';
import type { GardenClass } from '../analyse/expected/gardenCells.ts';
import { inClub, levelsOf, meanOfGardens, ownInGarden } from '../analyse/expected/gardenFigures.ts';
import { gardensGiven } from '../analyse/expected/gardenGiven.ts';
import type { GardenLevels, LinearFigure } from '../analyse/expected/gardenFigures.ts';
import type { GardensGiven } from '../analyse/expected/gardenGiven.ts';
import { thinnedCells } from '../analyse/expected/gardenPosterior.ts';
import type { GardenSpreadCell } from '../analyse/expected/gardenPosterior.ts';
import { pickCell } from './draws.ts';
import type { TraitDraws } from './draws.ts';

/** Numbers kept of all cells together: 8 bytes each. */
const MOST_NUMBERS = 6e6;

/** A figure with the parts it takes of a garden's own means; none in the club. */
type DrawnFigure = LinearFigure & { readonly parts: Float64Array };

/** A cell of the grid, ready to be drawn from. */
interface CellDraws {
  readonly factor: Float64Array;
  readonly means: Float64Array;
  /** Draws the mean level, and a garden's own means beside it, from the cells. */
  readonly level: (b: Float64Array, normal: () => number, into: Float64Array) => number;
  /** `noise` is a standard deviation, next season in it. */
  readonly figures: readonly DrawnFigure[];
}

function dot({ pull, constant }: LinearFigure, b: Float64Array): number {
  let total = constant;
  for (let i = 0; i < b.length; i++) total += cell(pull, i) * cell(b, i);
  return total;
}

/** In the club; or, from its ratios alone, in a garden without records of the class. */
function openClub(given: GardensGiven, isGarden: boolean): Pick<CellDraws, 'level' | 'figures'> {
  const level = meanOfGardens(given, null);
  const sd = Math.sqrt(level.noise);
  const { withSeason, withGarden, rest } = given.spreads;
  const added = withSeason ** 2 + (isGarden ? withGarden ** 2 + rest ** 2 : 0);
  return {
    level: (b, normal) => dot(level, b) + sd * normal(),
    figures: given.own.varieties.map((_, i) => {
      const figure = inClub(given, i, null);
      return { ...figure, noise: Math.sqrt(figure.noise + added), parts: new Float64Array(0) };
    }),
  };
}

function openGarden(given: GardensGiven, levels: GardenLevels): Pick<CellDraws, 'level' | 'figures'> {
  const { rows, constants, weights, factor } = levels;
  const { middle } = packedGardens(given.own);
  const { seasons, cell: at } = rows;
  const n = at.length;
  const { withSeason, rest } = given.spreads;
  return {
    level(b, normal, into) {
      for (let s = 0; s < seasons; s++) into[s] = normal();
      solveUpper(factor, seasons, into.subarray(0, seasons));
      let sum = 0;
      for (let s = 0; s < seasons; s++) {
        into[s]! += cell(constants, s);
        for (let i = 0; i < n; i++) into[s]! -= cell(weights, s * n + i) * cell(b, at[i]!);
        sum += cell(into, s);
      }
      return middle + sum / seasons;
    },
    figures: given.own.varieties.map((_, i) => {
      const figure = ownInGarden(given, levels, i);
      return { ...figure, noise: Math.sqrt(figure.noise + withSeason ** 2 + rest ** 2) };
    }),
  };
}

/**
 * Opens the draws of a trait over gardens: spreads, cells of variety × season and levels jointly, a new season (and in
 * a garden a new spot) for each variety. Every variety has a stream of its own.
 *
 * @param own     the class's values; every competitor is among its varieties
 * @param cells   the posterior of the four spreads
 * @param name    name of the stream: seed, class and trait
 * @param garden  null for the club
 * @source gardens page 2.3; reference case o8
 */
export function openGardenDraws(
  own: GardenClass,
  cells: readonly GardenSpreadCell[],
  name: string,
  garden: string | null = null,
): TraitDraws {
  const { varietyOf } = packedGardens(own);
  const size = varietyOf.length;
  const used = thinnedCells(
    cells,
    Math.max(50, Math.min(500, Math.floor(MOST_NUMBERS / (size * (size + own.varieties.length))))),
  );
  const shared = randomStream(name);
  const streams = own.varieties.map((id) => randomStream(`${name}/${id}`));
  let sum = 0;
  const cumulated = Float64Array.from(used, ({ weight }) => (sum += weight));
  const known = new Map<number, CellDraws>();
  const at = (i: number): CellDraws => {
    const found = known.get(i);
    if (found) return found;
    const given = gardensGiven(own, nth(used, i));
    const levels = garden === null ? null : levelsOf(given, garden);
    const { factor, means } = given;
    const opened = { factor, means, ...(levels ? openGarden(given, levels) : openClub(given, garden !== null)) };
    known.set(i, opened);
    return opened;
  };
  const b = new Float64Array(size);
  const ownMeans = new Float64Array(Math.max(0, ...packedGardens(own).gardens.map(({ seasons }) => seasons)));
  return {
    next(values, newcomer) {
      const n = own.varieties.length;
      for (let j = 0; j < newcomer.length; j++) {
        const { factor, means, level, figures } = at(pickCell(cumulated, shared.uniform() * sum));
        for (let i = 0; i < size; i++) b[i] = nth(streams, varietyOf[i]!).normal();
        solveUpper(factor, size, b);
        for (let i = 0; i < size; i++) b[i]! += cell(means, i);
        const middle = level(b, shared.normal, ownMeans);
        newcomer[j] = middle;
        for (let i = 0; i < n; i++) {
          const figure = nth(figures, i);
          let drawn = middle + dot(figure, b) + figure.noise * nth(streams, i).normal();
          for (let s = 0; s < figure.parts.length; s++) drawn += cell(figure.parts, s) * cell(ownMeans, s);
          values[j * n + i] = drawn;
        }
      }
    },
  };
}
