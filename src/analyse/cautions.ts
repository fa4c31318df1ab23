import { grouped } from '../terms/groups.ts';
import { isOfClub } from '../terms/gardens.ts';
import { plantModel } from './traitsSeen.ts';
import type { Settings } from '../terms/settings.ts';
import { placeVariance } from './units.ts';
import type { Layout } from './units.ts';
import { classLookup } from '../terms/trial.ts';
import type { Planting, Trial } from '../terms/trial.ts';
import type { SeasonSeen } from './seen.ts';

/** Something about a class's records that limits what its figures can say. */
export type Caution =
  | { readonly kind: 'one-bed'; readonly varieties: readonly string[] }
  | { readonly kind: 'mixed-topped' }
  | { readonly kind: 'mixed-stands'; readonly adjusted: boolean }
  | { readonly kind: 'only-pots' }
  | { readonly kind: 'only-topped' }
  | { readonly kind: 'without-blocks' }
  | { readonly kind: 'unequal-plantings' }
  | { readonly kind: 'not-blind'; readonly known: number; readonly scores: number }
  | { readonly kind: 'high-cv'; readonly cv: number }
  | { readonly kind: 'class-sizes-differ' }
  | { readonly kind: 'single-plantings'; readonly varieties: readonly string[] }
  | { readonly kind: 'no-residual-df' };

const byVariety = (plantings: readonly Planting[]): ReadonlyMap<string, readonly Planting[]> =>
  grouped(plantings, ({ variety }) => variety);

/** Varieties all of whose plantings stand in one bed, where the class has several. */
function inOneBed(groups: ReadonlyMap<string, readonly Planting[]>): readonly string[] {
  const beds = new Set([...groups.values()].flat().map(({ bed }) => bed));
  if (beds.size < 2 || beds.has(null)) return [];
  return [...groups]
    .filter(([, own]) => own.length > 1 && new Set(own.map(({ bed }) => bed)).size === 1)
    .map(([id]) => id);
}

function growing(plantings: readonly Planting[], seen: SeasonSeen): readonly Caution[] {
  const cautions: Caution[] = [];
  const topped = new Set(plantings.map((planting) => planting.topped).filter((value) => value !== null));
  if (topped.size > 1) cautions.push({ kind: 'mixed-topped' });
  else if (topped.has(true) && plantings.every((planting) => planting.topped === true))
    cautions.push({ kind: 'only-topped' });
  const stands = new Set(plantings.map(({ standsIn }) => standsIn).filter((value) => value !== null));
  if (stands.size > 1)
    cautions.push({ kind: 'mixed-stands', adjusted: plantModel(seen, 'yield')?.factor === 'stands-in' });
  else if (plantings.every(({ standsIn }) => standsIn === 'pot' || standsIn === 'bag'))
    cautions.push({ kind: 'only-pots' });
  const ripened = new Set(seen.varieties.filter(({ ripening }) => ripening !== null).map(({ variety: { id } }) => id));
  const sizes = plantings.filter(({ variety }) => ripened.has(variety)).map(({ plants }) => plants);
  if (new Set(sizes).size > 1) cautions.push({ kind: 'unequal-plantings' });
  return cautions;
}

/** Over this a plant (or a planting of four and more) differences are hard to see (methods A1; facts of the trade 15). */
export function isHighCv(
  cv: number,
  plantings: readonly Planting[],
  layout: Layout | undefined,
  spotCorrelation: number,
): boolean {
  const isGroups = plantings.every(({ plants }) => plants >= 4);
  return isGroups ? cv * Math.sqrt(placeVariance(layout, 4, spotCorrelation)) > 30 : cv > 50;
}

function classMeansDiffer(seen: SeasonSeen, settings: Settings, classOf: (id: string) => string): boolean {
  if (settings.scale !== 'difference') return false;
  const sums = new Map<string, { sum: number; n: number }>();
  for (const [id, { estimate }] of plantModel(seen, 'yield')?.estimates ?? []) {
    const own = sums.get(classOf(id)) ?? { sum: 0, n: 0 };
    sums.set(classOf(id), { sum: own.sum + (estimate ?? 0), n: own.n + 1 });
  }
  const means = [...sums.values()].map(({ sum, n }) => sum / n).filter((mean) => mean > 0);
  return means.length > 1 && Math.max(...means) > 3 * Math.min(...means);
}

/** What limits the figures of a class in a season, in the order a reader should know it. */
export function classCautions(trial: Trial, seen: SeasonSeen, classId: string): readonly Caution[] {
  const classOf = classLookup(trial.varieties);
  const plantings = seen.season.plantings.filter(
    ({ variety, cause }) => classOf(variety) === classId && cause !== 'accident',
  );
  if (plantings.length === 0) return [];
  const groups = byVariety(plantings);
  const cautions: Caution[] = [];
  // Of a class that gave nothing the season's spread says nothing.
  const gave = [...groups.keys()].some((id) => (plantModel(seen, 'yield')?.estimates.get(id)?.estimate ?? 0) > 0);
  const model = gave ? plantModel(seen, 'yield') : undefined;
  if (model && model.residualDf <= 0) cautions.push({ kind: 'no-residual-df' });
  const single = [...groups].filter(([, own]) => own.length === 1).map(([id]) => id);
  // In a club the gardens are the looks; how many there are stands beside every figure.
  const isClub = isOfClub(seen.season);
  if (model && !isClub && model.residualDf > 0 && single.length > 0)
    cautions.push({ kind: 'single-plantings', varieties: single });
  const bedded = isClub ? [] : inOneBed(groups);
  if (bedded.length > 0) cautions.push({ kind: 'one-bed', varieties: bedded });
  if (model?.withoutBlocks.has(classId)) cautions.push({ kind: 'without-blocks' });
  if (!isClub) cautions.push(...growing(plantings, seen));
  if (
    model?.cvPercent != null &&
    isHighCv(model.cvPercent, plantings, model.layouts.get(classId), trial.settings.spotCorrelation)
  )
    cautions.push({ kind: 'high-cv', cv: model.cvPercent });
  if (classMeansDiffer(seen, trial.settings, classOf)) cautions.push({ kind: 'class-sizes-differ' });
  const scores = seen.season.scores.filter(({ variety }) => classOf(variety) === classId);
  const blind = scores.filter(({ isBlind }) => isBlind === true).length;
  if (scores.length > 0 && blind < scores.length)
    cautions.push({ kind: 'not-blind', known: scores.length - blind, scores: scores.length });
  return cautions;
}
