import type { ExpectedTrait, ExpectedVariety } from '../analyse/expected/expectedTrait.ts';
import type { ClassCase, Goal, TraitCase, VerdictSettings } from './cases.ts';
import type { TraitDraws } from './draws.ts';
import { chanceToSettle } from './settling.ts';
import type { Simulated } from './simulate.ts';
import { isOnTheEdge, verdictOf } from './verdict.ts';
import type { Verdict } from './verdict.ts';
import { keyed, nth } from '../numerics/element.ts';

/** A trait with its posterior; the varieties are needed only for what would settle a verdict. */
export interface TraitForecast {
  readonly own: TraitCase;
  /** Draws and levels over gardens; null, or absent, where one garden alone has records. */
  readonly gardens?: {
    readonly draws: (classId: string, name: string, garden: string | null) => TraitDraws | null;
    readonly level: (classId: string, garden: string) => number | null;
  } | null;
  readonly expected: Pick<ExpectedTrait, 'cells' | 'between' | 'withSeason'> & {
    readonly classes: readonly {
      readonly classId: string;
      readonly classMean: number;
      readonly varieties: readonly Pick<ExpectedVariety, 'variety' | 'variance'>[];
    }[];
  };
}

/** What a trait does for or against a variety. */
export interface Reason {
  readonly trait: string;
  /** Points of the score that the variety is ahead of the bar by this trait. */
  readonly effect: number;
}

/** A verdict that another weight would turn. */
export interface Fragile {
  readonly trait: string;
  readonly factor: 0.5 | 2;
  readonly verdict: Verdict;
}

export interface VarietyAdvice {
  readonly variety: string;
  readonly verdict: Verdict;
  readonly share: number;
  readonly above: number;
  readonly isOnTheEdge: boolean;
  readonly untested: boolean;
  /** True where the verdict would be another without the limits that must not be missed. */
  readonly decidedByLimit: boolean;
  /** Share of the draws in which each limit is missed, in the order of the class's limits. */
  readonly missed: readonly number[];
  /** True for a keep that its shares alone would not make: its growers want it, and there is a spot. */
  readonly isWanted: boolean;
  readonly reasons: readonly Reason[];
  readonly fragile: readonly Fragile[];
  /** For "try again": which limit is nearer, and the chance that one more season with so many plants settles it. */
  readonly leans: 'up' | 'down' | null;
  readonly settles: readonly { readonly plants: number; readonly chance: number }[];
  /** What a season more would teach, from which `settles` is worked out; null without it. */
  readonly learning: {
    /** Variance of the score above what earns a spot. */
    readonly variance: number;
    /** A trait each; `steady` is noise that more plants do not reduce, `aPlant` that of one. */
    readonly traits: readonly {
      readonly slope: number;
      readonly variance: number;
      readonly steady: number;
      readonly aPlant: number;
    }[];
  } | null;
}

/** Chance that a season with so many plants of a variety settles its verdict; 0 where nothing is known of it. */
export function settlesWith(
  { share, learning }: Pick<VarietyAdvice, 'share' | 'learning'>,
  plants: number,
  settings: Pick<VerdictSettings, 'keepFrom' | 'dropBelow'>,
): number {
  if (!learning) return 0;
  const traits = learning.traits.map(({ slope, variance, steady, aPlant }) => ({
    slope,
    variance,
    noise: steady + aPlant / plants,
  }));
  return chanceToSettle(share, learning.variance, traits, settings);
}

const PLANTS = [1, 3, 6] as const;

/** Each weight halved and doubled. */
export function changedWeights(goals: readonly Goal[]) {
  return goals.flatMap(({ trait }, goal) => ([0.5, 2] as const).map((factor) => ({ goal, trait, factor })));
}

function expectedOf({ expected }: TraitForecast, classId: string, variety: string) {
  return expected.classes.find((own) => own.classId === classId)?.varieties.find((own) => own.variety === variety);
}

/** A class's simulated seasons with what they were drawn from. */
export interface Run {
  readonly own: ClassCase;
  readonly traits: ReadonlyMap<string, TraitForecast>;
  readonly settings: VerdictSettings;
  readonly simulated: Simulated;
  readonly changed: ReturnType<typeof changedWeights>;
  readonly withDetail: boolean;
  /** Varieties that their growers want, as many as there are spots for; empty where there are more. */
  readonly wanted: ReadonlySet<string>;
}

/** What another season would teach of a variety, trait by trait. */
function learningOf({ own, traits, simulated }: Run, i: number): NonNullable<VarietyAdvice['learning']> {
  const total = own.goals.reduce((sum, { weight }) => sum + weight, 0);
  return {
    variance: nth(simulated.sums.marginVariance, i),
    traits: own.goals.map(({ trait, weight }, g) => {
      const forecast = keyed(traits, trait);
      const { variance, perPlant } = forecast.own.nextSeason;
      const noise = variance[own.classId]!;
      return {
        slope: (weight / total) * nth(nth(simulated.sums.slope, g), i),
        variance: expectedOf(forecast, own.classId, nth(own.competitors, i).id)!.variance,
        steady: forecast.expected.withSeason ** 2 + noise * (perPlant ? own.together : 1),
        aPlant: perPlant ? noise : 0,
      };
    }),
  };
}

/** What a trait does for a variety against the bar, in points of the score, largest first. */
function reasonsOf({ own, simulated: { sums } }: Run, i: number): readonly Reason[] {
  const total = own.goals.reduce((sum, { weight }) => sum + weight, 0);
  return own.goals
    .map(({ trait, weight }, g) => ({
      trait,
      effect: (weight / total) * (nth(nth(sums.points, g), i) - nth(sums.barPoints, g)),
    }))
    .toSorted((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
}

/** The verdict as it would be without the limits that must not be missed. */
function withoutLimits({ own, simulated, settings, wanted }: Run, i: number): Verdict {
  const { id } = nth(own.competitors, i);
  const { earned, above } = simulated.unlimited ?? nth(simulated.counts, 0);
  const isRefused = nth(own.competitors, i).wanted === 'no';
  const free = { untested: isRefused || (simulated.unlimited ? false : nth(own.competitors, i).untested) };
  const verdict = verdictOf(
    nth(earned, i) / settings.simulations,
    nth(above, i) / settings.simulations,
    settings,
    free,
  );
  return wanted.has(id) && verdict !== 'drop' ? 'keep' : verdict;
}

/** Which limit is nearer; what is expected at or above the bar leans to no drop. */
function leaning(share: number, above: number, { keepFrom, dropBelow }: VerdictSettings): VarietyAdvice['leans'] {
  if (share >= (keepFrom + dropBelow) / 2) return 'up';
  return above < EXPECTED ? 'down' : null;
}

/** From this share of seasons above the bar on a variety is expected to reach it. */
export const EXPECTED = 0.5;

/**
 * Everything that the simulated seasons say of one variety.
 *
 * @param i  the variety's position among the class's competitors
 * @source methods page C
 */
export function varietyAdvice(run: Run, i: number): VarietyAdvice {
  const { own, settings, simulated, changed } = run;
  const competitor = nth(own.competitors, i);
  const shares = simulated.counts.map(
    ({ earned, above }) => [nth(earned, i) / settings.simulations, nth(above, i) / settings.simulations] as const,
  );
  const [share, above] = nth(shares, 0);
  // What everyone who answered would not grow again is no keep, whatever the figures say.
  const hardly = { untested: competitor.untested || competitor.wanted === 'no' };
  const byShares = verdictOf(share, above, settings, hardly);
  const isWanted = run.wanted.has(competitor.id) && byShares !== 'keep' && byShares !== 'drop' && !competitor.untested;
  const verdict = isWanted ? 'keep' : byShares;
  const fragile = changed.flatMap(({ trait, factor }, k): readonly Fragile[] => {
    const turned = verdictOf(...nth(shares, k + 1), settings, hardly);
    return turned === byShares || isWanted ? [] : [{ trait, factor, verdict: turned }];
  });
  const isOpen = verdict === 'try-again';
  // Over gardens what settles a verdict is more gardens and another season, not more plants.
  const isOverGardens = own.goals.some(({ trait }) => (run.traits.get(trait)?.gardens ?? null) !== null);
  const learning = isOpen && run.withDetail && !isOverGardens ? learningOf(run, i) : null;
  const isAlone = own.competitors.filter(({ competes }) => competes).length === 1;
  return {
    variety: competitor.id,
    verdict,
    share,
    above,
    isOnTheEdge: isOnTheEdge(share, above, settings),
    untested: competitor.untested,
    decidedByLimit: verdict !== withoutLimits(run, i),
    missed: simulated.missed.map((own) => nth(own, i) / settings.simulations),
    isWanted,
    reasons: reasonsOf(run, i),
    fragile,
    leans: isOpen && !isAlone ? leaning(share, above, settings) : null,
    learning,
    settles: learning
      ? PLANTS.map((plants) => ({ plants, chance: settlesWith({ share, learning }, plants, settings) }))
      : [],
  };
}
