import { solveUpper } from '../numerics/cholesky.ts';
import { pulledBy } from '../analyse/expected/linearFigures.ts';
import type { CellErrors, LinearFigure } from '../analyse/expected/linearFigures.ts';
import { cell, nth } from '../numerics/element.ts';
import { openStrata } from '../numerics/strata.ts';
import type { Strata } from '../numerics/strata.ts';
import { packedGardens } from '../analyse/expected/gardenCells.ts';
import type { GardenClass } from '../analyse/expected/gardenCells.ts';
import { inClub, levelsOf, meanOfGardens, ownInGarden } from '../analyse/expected/gardenFigures.ts';
import { gardensGiven } from '../analyse/expected/gardenGiven.ts';
import type { GardenLevels } from '../analyse/expected/gardenFigures.ts';
import type { GardensGiven } from '../analyse/expected/gardenGiven.ts';
import { thinnedCells } from '../analyse/expected/gardenPosterior.ts';
import type { GardenSpreadCell } from '../analyse/expected/gardenLikeliest.ts';
import { pickCell } from './draws.ts';
import type { TraitDraws } from './draws.ts';

/** Numbers kept of all cells together: 8 bytes each. */
const MOST_NUMBERS = 6e6;

/** A figure with the parts it takes of a garden's own means; none in the club. Its noise has next season in it. */
type DrawnFigure = LinearFigure & { readonly parts: Float64Array };

/** Figures of all varieties side by side. */
interface DrawnFigures {
  readonly constant: Float64Array;
  /** Standard deviations, next season in them. */
  readonly noise: Float64Array;
  /** Where the cells of each figure begin, and where the last one's end. */
  readonly from: Int32Array;
  readonly at: Int32Array;
  readonly by: Float64Array;
  /** Figures × parts. */
  readonly parts: Float64Array;
}

function sideBySide(figures: readonly DrawnFigure[]): DrawnFigures {
  let end = 0;
  return {
    constant: Float64Array.from(figures, ({ constant }) => constant),
    noise: Float64Array.from(figures, ({ noise }) => Math.sqrt(noise)),
    from: Int32Array.from([0, ...figures.map(({ pull }) => (end += pull.at.length))]),
    at: Int32Array.from(figures.flatMap(({ pull }) => [...pull.at])),
    by: Float64Array.from(figures.flatMap(({ pull }) => [...pull.by])),
    parts: Float64Array.from(figures.flatMap(({ parts }) => [...parts])),
  };
}

/** A cell of the grid, ready to be drawn from. */
interface CellDraws {
  readonly errors: CellErrors;
  readonly means: Float64Array;
  /** Draws the mean level, and a garden's own means beside it, from the cells; `normals` are one for each of them. */
  readonly level: (b: Float64Array, normals: Float64Array, into: Float64Array) => number;
  readonly figures: DrawnFigures;
  /** Means of the varieties' next season and, last, of the newcomer's. */
  readonly middle: Float64Array;
}

type Opened = Pick<CellDraws, 'level' | 'figures'>;

/** In the club; or, from its ratios alone, in a garden without records of the class. */
function openClub(given: GardensGiven, isGarden: boolean): Opened {
  const level = meanOfGardens(given, null);
  const sd = Math.sqrt(level.noise);
  const { withSeason, withGarden, rest } = given.spreads;
  const added = withSeason ** 2 + (isGarden ? withGarden ** 2 + rest ** 2 : 0);
  return {
    level: (b, normals) => pulledBy(level.pull, b, level.constant) + sd * cell(normals, 0),
    figures: sideBySide(
      given.own.varieties.map((_, i) => {
        const figure = inClub(given, i, null);
        return { ...figure, noise: figure.noise + added, parts: new Float64Array(0) };
      }),
    ),
  };
}

function openGarden(given: GardensGiven, levels: GardenLevels): Opened {
  const { rows, constants, weights, factor } = levels;
  const { middle } = packedGardens(given.own);
  const { seasons, cell: at } = rows;
  const n = at.length;
  const { withSeason, rest } = given.spreads;
  return {
    level(b, normals, into) {
      for (let s = 0; s < seasons; s++) into[s] = cell(normals, s);
      solveUpper(factor, seasons, into.subarray(0, seasons));
      let sum = 0;
      for (let s = 0; s < seasons; s++) {
        into[s]! += cell(constants, s);
        for (let i = 0; i < n; i++) into[s]! -= cell(weights, s * n + i) * cell(b, at[i]!);
        sum += cell(into, s);
      }
      return middle + sum / seasons;
    },
    figures: sideBySide(
      given.own.varieties.map((_, i) => {
        const figure = ownInGarden(given, levels, i);
        return { ...figure, noise: figure.noise + withSeason ** 2 + rest ** 2 };
      }),
    ),
  };
}

/** So many sets of normals, a number a pair of draws. */
const each = (length: number, from: (i: number) => Strata, pairs: number): readonly Float64Array[] =>
  Array.from({ length }, (_, i) => {
    const set = new Float64Array(pairs);
    from(i).normals(set);
    return set;
  });

/** Cells of the grid as they are asked for, and how varieties are filled from one. */
function openCells(own: GardenClass, used: readonly GardenSpreadCell[], garden: string | null) {
  const n = own.varieties.length;
  const ownMeans = new Float64Array(Math.max(1, ...packedGardens(own).gardens.map(({ seasons }) => seasons)));
  /** Varieties and, last, the newcomer, given the cells of variety × season and normals for the levels and varieties. */
  const fill = ({ level, figures }: Opened, b: Float64Array, normals: Float64Array, into: Float64Array): void => {
    const newcomer = level(b, normals, ownMeans);
    into[n] = newcomer;
    const { constant, noise, from, at: cells, by, parts } = figures;
    const count = parts.length / n;
    for (let i = 0; i < n; i++) {
      let pulled = cell(constant, i);
      for (let k = from[i]!; k < from[i + 1]!; k++) pulled += cell(by, k) * cell(b, cells[k]!);
      let value = newcomer + pulled + cell(noise, i) * cell(normals, ownMeans.length + i);
      for (let s = 0; s < count; s++) value += cell(parts, i * count + s) * cell(ownMeans, s);
      into[i] = value;
    }
  };
  const known = new Map<number, CellDraws>();
  const at = (i: number): CellDraws => {
    const found = known.get(i);
    if (found) return found;
    const given = gardensGiven(own, nth(used, i));
    const levels = garden === null ? null : levelsOf(given, garden);
    const { errors, means } = given;
    const opened = levels ? openGarden(given, levels) : openClub(given, garden !== null);
    const middle = new Float64Array(n + 1);
    fill(opened, means, new Float64Array(ownMeans.length + n), middle);
    const made = { errors, means, middle, ...opened };
    known.set(i, made);
    return made;
  };
  return { seasons: ownMeans.length, fill, at };
}

/**
 * Opens the draws of a trait over gardens: spreads, cells of variety × season and levels jointly, a new season (and in
 * a garden a new spot) for each variety. Draws go in pairs opposite each other; every variety has a stream of its own.
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
  const shared = openStrata(name);
  const streams = own.varieties.map((id) => openStrata(`${name}/${id}`));
  let sum = 0;
  const cumulated = Float64Array.from(used, ({ weight }) => (sum += weight));
  const n = own.varieties.length;
  const { seasons, fill, at } = openCells(own, used, garden);
  const normals = new Float64Array(seasons + n);
  const b = new Float64Array(size);
  const drawn = new Float64Array(n + 1);
  const isDrawn = at(0).errors.kind === 'draws';
  let drawnPairs = 0;
  return {
    next(values, newcomer) {
      const pairs = newcomer.length / 2;
      const numbers = new Float64Array(pairs);
      shared.uniforms(numbers);
      const picked = Array.from(numbers, (u) => at(pickCell(cumulated, u * sum)));
      // Where cells are too many for a matrix, their errors were drawn before.
      const ofCells = isDrawn ? [] : each(size, (i) => nth(streams, varietyOf[i]!), pairs);
      const ofRest = [...each(seasons, () => shared, pairs), ...each(n, (i) => nth(streams, i), pairs)];
      picked.forEach((own, k) => {
        if (own.errors.kind === 'draws') b.set(nth(own.errors.draws, drawnPairs++ % own.errors.draws.length));
        else {
          for (let i = 0; i < size; i++) b[i] = ofCells[i]![k]!;
          solveUpper(own.errors.factor, size, b);
        }
        for (let i = 0; i < size; i++) b[i]! += cell(own.means, i);
        for (let i = 0; i < normals.length; i++) normals[i] = ofRest[i]![k]!;
        fill(own, b, normals, drawn);
        newcomer[2 * k] = cell(drawn, n);
        newcomer[2 * k + 1] = 2 * cell(own.middle, n) - cell(drawn, n);
        for (let i = 0, into = 2 * k * n; i < n; i++, into++) {
          values[into] = cell(drawn, i);
          values[into + n] = 2 * cell(own.middle, i) - cell(drawn, i);
        }
      });
    },
  };
}
