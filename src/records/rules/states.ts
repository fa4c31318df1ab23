import { grouped } from '../../terms/groups.ts';
import { plantsIn } from '../../terms/lines.ts';
import type { StateCount } from '../../terms/lines.ts';
import type { Planting, Season } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';

/** Which plants a count is about: of one trait, a planting or a family in the tray. */
const about = ({ trait, planting, variety }: StateCount): string => `${trait}|${planting ?? `*${variety}`}`;

/** For a single plant the latest row counts; an earlier one that says otherwise is told. */
function latestOnly(counts: readonly StateCount[], plants: ReadonlyMap<string, Planting>, { log }: CheckContext) {
  const last = new Map<string, StateCount>();
  const kept: StateCount[] = [];
  for (const own of counts.toSorted((a, b) => (a.day ?? 0) - (b.day ?? 0))) {
    if (own.planting === null || (plants.get(own.planting)?.plants ?? 1) > 1) {
      kept.push(own);
      continue;
    }
    const before = last.get(about(own));
    if (before && before.state !== own.state)
      log.add('state-changed', own.place, own.state, { before: before.state, trait: own.trait });
    last.set(about(own), own);
  }
  return [...kept, ...last.values()];
}

/**
 * The states of a season's plants, one of each single plant; what cannot be is reported.
 *
 * @param counts  as the table has them
 */
export function checkStates(
  counts: readonly StateCount[],
  plantings: Season['plantings'],
  context: CheckContext,
): readonly StateCount[] {
  const { log } = context;
  const plants = new Map<string, Planting>(plantings.map((own) => [own.id, own]));
  const kept = latestOnly(counts, plants, context);
  for (const own of grouped(kept, about).values()) {
    const [first] = own;
    if (!first) continue;
    const total = plantsIn(own);
    const planting = first.planting === null ? undefined : plants.get(first.planting);
    if (planting && total > planting.plants)
      log.add('plants-over-planting', own.at(-1)?.place ?? first.place, String(total), {
        plants: String(planting.plants),
        trait: first.trait,
      });
    if (planting && planting.plants > 1) log.add('plants-not-single', first.place, planting.id);
  }
  for (const tray of kept.filter(({ planting }) => planting === null)) {
    const alike = kept.filter(
      ({ variety, trait, state }) => variety === tray.variety && trait === tray.trait && state === tray.state,
    );
    const total = plantsIn(alike.filter(({ planting }) => planting === null));
    const least = plantsIn(alike.filter(({ planting }) => planting !== null));
    if (total < least)
      log.add('seedlings-fewer', tray.place, String(total), { plants: String(least), state: tray.state });
  }
  return kept;
}
