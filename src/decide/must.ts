import type { TraitValues } from '../analyse/expected/values.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { wilsonInterval } from '../numerics/wilson.ts';
import { countedShares } from '../terms/traits.ts';
import type { Settings } from '../terms/settings.ts';
import type { Competitor, MustLimit } from './cases.ts';

type Counted = (typeof countedShares)[number];

/** Fruit or plants counted over all seasons: k of n; null where none were. */
function counted(seasons: readonly SeasonSeen[], variety: string, key: Counted): readonly [number, number] | null {
  let [k, n] = [0, 0];
  for (const { varieties } of seasons) {
    const share = varieties.find((own) => own.variety.id === variety)?.shares[key];
    if (share) [k, n] = [k + share.k, n + share.n];
  }
  return n > 0 ? [k, n] : null;
}

const isCounted = (trait: string): trait is Counted => (countedShares as readonly string[]).includes(trait);

/** A limit that counted fruit or plants decide. */
export interface CountedLimit {
  readonly trait: string;
  readonly k: number;
  readonly n: number;
  /** Largest share that keeps the limit. */
  readonly limit: number;
  readonly outcome: 'kept' | 'missed' | 'open';
}

export interface Limits extends Pick<Competitor, 'untested' | 'missed' | 'counted'> {
  readonly counts: readonly CountedLimit[];
}

/**
 * What a variety's records say of the limits that must not be missed: a limit on something never recorded is not
 * tested; where fruit was counted, k of n decides alone: its upper limit has to keep the limit.
 *
 * @source methods page C
 */
export function limitsOf(
  seasons: readonly SeasonSeen[],
  variety: string,
  must: readonly MustLimit[],
  traits: ReadonlyMap<string, TraitValues>,
  { interval, verdicts }: Pick<Settings, 'interval' | 'verdicts'>,
): Limits {
  let untested = false;
  const counts: CountedLimit[] = [];
  for (const { trait, atMost } of must) {
    const found = counted(seasons, variety, isCounted(trait) ? trait : 'hot');
    const isTold = found !== null && atMost !== null && (isCounted(trait) || trait === 'heat');
    if (!isTold) {
      if (!traits.get(trait)?.values.some((value) => value.variety === variety)) untested = true;
      continue;
    }
    // A limit on heat itself says nothing of how many fruit may be hot: as many as a keep may fail in.
    const limit = isCounted(trait) ? atMost : 1 - verdicts.keepFrom;
    const [low, high] = wilsonInterval(...found, interval);
    const outcome = low > limit ? 'missed' : high > limit ? 'open' : 'kept';
    if (outcome === 'open') untested = true;
    counts.push({ trait, k: found[0], n: found[1], limit, outcome });
  }
  const missed = counts.some(({ outcome }) => outcome === 'missed');
  return { untested, missed, counted: counts.map(({ trait }) => trait), counts };
}
