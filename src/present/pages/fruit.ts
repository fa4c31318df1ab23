import { plantModel } from '../../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { Shape, Trial, Variety } from '../../terms/trial.ts';

/** Outline of a fruit as it is drawn; `plain` where nothing is known of it. */
export type FruitForm = Shape | 'plain';

/** A fruit as it is drawn. */
export interface Fruit {
  readonly form: FruitForm;
  /** Mean length and width, cm; of a usual fruit of its form where nobody measured. */
  readonly length: number;
  readonly width: number;
  /** The season in which it was measured; null where nobody did. */
  readonly measured: number | null;
  /** Ripe colour in CSS; null where it is not known. */
  readonly colour: string | null;
}

/** Longer than so many times its width a pepper tapers. From memory. */
const HORN_FROM = 1.9;
/** A tomato narrower than this grows in clusters, cm; one longer than so many times its width is a plum. From memory. */
const CLUSTER_TO = 3.5;
const PLUM_FROM = 1.25;
/** A usual fruit of a form, cm. From memory. */
const USUAL: Readonly<Record<FruitForm, readonly [length: number, width: number]>> = {
  block: [9, 7.5],
  horn: [12, 3],
  round: [6, 7],
  plum: [8, 4.5],
  cluster: [2.6, 2.6],
  long: [20, 4],
  pear: [12, 7],
  plain: [6, 5],
};

/** A measure of lengths of the newest season that has it, cm. */
function lengthIn(
  seasons: readonly SeasonSeen[],
  trial: Trial,
  key: string,
  variety: string,
): { readonly value: number; readonly year: number } | null {
  const trait = trial.settings.traits.get(key);
  if (trait?.kind !== 'measure' || (trait.unit !== 'cm' && trait.unit !== 'mm')) return null;
  for (const seen of seasons.toReversed()) {
    const value = plantModel(seen, key)?.estimates.get(variety)?.estimate ?? null;
    if (value !== null && value > 0) return { value: trait.unit === 'mm' ? value / 10 : value, year: seen.season.year };
  }
  return null;
}

/** Outline of a fruit of a variety with this length and width, cm. */
export function formOf({ shape, species }: Variety, length: number | null, width: number | null): FruitForm {
  if (shape !== null) return shape;
  if (length === null || width === null) return 'plain';
  const ratio = length / width;
  if (species?.startsWith('Solanum lycopersicum'))
    return ratio >= PLUM_FROM ? 'plum' : width < CLUSTER_TO ? 'cluster' : 'round';
  if (species?.startsWith('Cucumis')) return 'long';
  if (species?.startsWith('Capsicum')) return ratio < HORN_FROM ? 'block' : 'horn';
  return ratio >= 3 ? 'long' : ratio >= PLUM_FROM ? 'plum' : 'round';
}

/** How a variety's fruit is drawn: from its own measures, its `shape`, its colour. */
export function fruitOf(variety: Variety, seasons: readonly SeasonSeen[], trial: Trial): Fruit {
  const length = lengthIn(seasons, trial, 'fruit_length', variety.id);
  const width = lengthIn(seasons, trial, 'fruit_width', variety.id);
  const form = formOf(variety, length?.value ?? null, width?.value ?? null);
  const usual = USUAL[form];
  return {
    form,
    length: length?.value ?? usual[0],
    width: width?.value ?? usual[1],
    measured: length && width ? Math.min(length.year, width.year) : null,
    colour: variety.colourRipe,
  };
}
