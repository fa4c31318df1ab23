import { grouped } from '../../terms/groups.ts';
/** What a variety gave in a garden and season, working scale. */
export interface GardenValue {
  readonly variety: string;
  readonly garden: string;
  readonly season: number;
  readonly theta: number;
  /** Known squared error. */
  readonly variance: number;
}

/** A class's values of one trait over gardens and seasons. */
export interface GardenClass {
  readonly classId: string;
  /** Every variety that is spoken of, with or without values. */
  readonly varieties: readonly string[];
  readonly values: readonly GardenValue[];
}

/** Standard deviations of stage two over gardens, working scale, each > 0. */
export interface GardenSpreads {
  /** σ_v, between varieties. */
  readonly between: number;
  /** σ_w, of a variety from season to season. */
  readonly withSeason: number;
  /** σ_u, of a variety from garden to garden. */
  readonly withGarden: number;
  /** σ_r, the rest: the spot, and what garden and season make together. */
  readonly rest: number;
}

/** One garden's values side by side, in order of varieties and seasons. */
export interface GardenRows {
  readonly garden: string;
  /** Position of the variety in the class, of the season in the garden, and of variety × season in the class. */
  readonly variety: Int32Array;
  readonly season: Int32Array;
  readonly cell: Int32Array;
  readonly theta: Float64Array;
  readonly variance: Float64Array;
  readonly seasons: number;
  /** Where the rows of each variety begin, and where the last one's end. */
  readonly from: Int32Array;
  /** One season, a row a variety. */
  readonly isPlain: boolean;
}

/** A class's values sorted for stage two; θ about their middle, so that large values lose no digits. */
export interface PackedGardens {
  readonly gardens: readonly GardenRows[];
  /** Variety × season cells: the variety of each, and the cells of each variety. */
  readonly varietyOf: Int32Array;
  readonly cellsOf: readonly (readonly number[])[];
  /** No variety in two seasons: then its two spreads are told only together. */
  readonly isOneSeason: boolean;
  /** Every garden plain: then the spreads of garden and rest are told only together. */
  readonly isPlain: boolean;
  readonly middle: number;
}

const packings = new WeakMap<GardenClass, PackedGardens>();

const order = (a: string | number, b: string | number): number => (a < b ? -1 : a > b ? 1 : 0);

function rowsOf(garden: string, own: readonly GardenValue[], known: Known): GardenRows {
  const seasons = [...new Set(own.map(({ season }) => season))].toSorted(order);
  const starts = own.flatMap(({ variety }, i) => (i === 0 || own[i - 1]!.variety !== variety ? [i] : []));
  return {
    garden,
    from: Int32Array.from([...starts, own.length]),
    isPlain: seasons.length === 1 && starts.length === own.length,
    variety: Int32Array.from(own, ({ variety }) => known.varietyAt.get(variety)!),
    season: Int32Array.from(own, ({ season }) => seasons.indexOf(season)),
    cell: Int32Array.from(own, ({ variety, season }) => known.cellAt.get(`${variety}/${season}`)!),
    theta: Float64Array.from(own, ({ theta }) => theta - known.middle),
    variance: Float64Array.from(own, ({ variance }) => variance),
    seasons: seasons.length,
  };
}

interface Known {
  readonly varietyAt: ReadonlyMap<string, number>;
  readonly cellAt: ReadonlyMap<string, number>;
  readonly middle: number;
}

/** Values sorted by garden, variety and season, whatever order they come in. */
export function packedGardens(own: GardenClass): PackedGardens {
  const found = packings.get(own);
  if (found) return found;
  const varietyAt = new Map(own.varieties.map((id, i) => [id, i]));
  const values = own.values
    .filter(({ variety }) => varietyAt.has(variety))
    .toSorted((a, b) => order(a.garden, b.garden) || order(a.variety, b.variety) || a.season - b.season);
  const middle = values.reduce((sum, { theta }) => sum + theta, 0) / Math.max(1, values.length);
  const inOrder = values.toSorted((a, b) => order(a.variety, b.variety) || a.season - b.season);
  const cells = [...new Set(inOrder.map(({ variety, season }) => `${variety}/${season}`))];
  const cellAt = new Map(cells.map((key, i) => [key, i]));
  const varietyOf = new Int32Array(cells.length);
  for (const { variety, season } of values) varietyOf[cellAt.get(`${variety}/${season}`)!] = varietyAt.get(variety)!;
  const cellsOf = own.varieties.map((): number[] => []);
  varietyOf.forEach((k, i) => cellsOf[k]!.push(i));
  const gardens = [...grouped(values, ({ garden }) => garden)].map(([garden, list]) =>
    rowsOf(garden, list, { varietyAt, cellAt, middle }),
  );
  const isOneSeason = cellsOf.every(({ length }) => length < 2);
  const isPlain = gardens.every((rows) => rows.isPlain);
  const packed = { gardens, varietyOf, cellsOf, isOneSeason, isPlain, middle };
  packings.set(own, packed);
  return packed;
}

/** Cells of variety × season that a class has values in. */
export const cellCount = (own: GardenClass): number => packedGardens(own).varietyOf.length;

/** Rows of a garden; null where it has no values in the class. */
export const gardenRows = (own: GardenClass, garden: string): GardenRows | null =>
  packedGardens(own).gardens.find((rows) => rows.garden === garden) ?? null;
