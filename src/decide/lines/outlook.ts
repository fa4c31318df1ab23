import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import { first } from '../../numerics/element.ts';
import { wantedTraits } from './offspring.ts';
import type { CrossAdvice } from './carry.ts';

/** What is to become of a cross. */
export type Outlook = 'stop' | 'drop' | 'settled' | 'go-on';

/** Below this chance of a wanted plant a cross is not worth its room. */
const STOP_BELOW = 0.05;
const SETTLED_FROM = 5;

/**
 * Whether a cross is settled in what was looked at, or not worth going on with.
 *
 * @param offTypesAtMost  upper limit of the share of off-types of its newest family, 0 to 1
 * @param isDropped       true where the class's verdict on the newest family is drop; it counts from the F5 on
 * @source methods page L14
 */
export function outlookOf(
  advice: CrossAdvice,
  traits: readonly CrossTrait[],
  offTypesAtMost: number | null,
  isDropped: boolean,
): Outlook {
  const { family, plants, carry, chance } = advice;
  if (chance !== null && chance < STOP_BELOW) return 'stop';
  if (isDropped && (family.generation ?? 0) >= SETTLED_FROM) return 'drop';
  const wanted = wantedTraits(traits);
  const chosen = carry[0];
  if (!chosen || wanted.length === 0) return 'go-on';
  const own = first(plants, ({ plant }) => plant === chosen);
  const isTrue = wanted.every(({ trait }) => (own.trueFor.get(trait.key) ?? 0) >= 0.95);
  const isUniform = offTypesAtMost !== null && offTypesAtMost <= STOP_BELOW;
  const isOld = (family.generation ?? 0) >= SETTLED_FROM && family.years.length >= 2;
  return isTrue && isUniform && isOld ? 'settled' : 'go-on';
}
