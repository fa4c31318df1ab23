import type { ExpectedTrait, ExpectedVariety } from '../analyse/expected/expectedTrait.ts';
import type { ClassCase, Goal, TraitCase, VerdictSettings } from './cases.ts';
import { openDraws } from './draws.ts';
import { pointRange } from './points.ts';
import type { PointRange } from './points.ts';
import { chanceToSettle } from './settling.ts';
import { simulateClass } from './simulate.ts';
import type { DrawnTrait, Simulated } from './simulate.ts';
import { isOnTheEdge, verdictOf } from './verdict.ts';
import type { Verdict } from './verdict.ts';

/** A trait with its posterior; the varieties are needed only for what would settle a verdict. */
export interface TraitForecast {
  readonly own: TraitCase;
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
  readonly reasons: readonly Reason[];
  readonly fragile: readonly Fragile[];
  /** For "try again": which limit is nearer, and the chance that one more season with so many plants settles it. */
  readonly leans: 'up' | 'down' | null;
  readonly settles: readonly { readonly plants: number; readonly chance: number }[];
}

/** One goal with the range its points run over. */
export interface GoalRange extends Goal {
  readonly range: PointRange;
  readonly isGiven: boolean;
  /** Its part of the score's variance; under 0 where it speaks against the rest. The parts add up to 1. */
  readonly partOfVariance: number;
  /** Share of the draws that fall outside the range. */
  readonly cutOff: number;
}

export interface ClassAdvice {
  readonly classId: string;
  readonly spots: number;
  readonly bar: 'newcomer' | 'check';
  readonly goals: readonly GoalRange[];
  /** In order of share. */
  readonly varieties: readonly VarietyAdvice[];
  /** Fills the spots in order of share; a variety that is to be dropped leaves its spot to a newcomer. */
  readonly list: readonly string[];
  readonly expectedRight: number;
  /** Points of the score that the list is expected to give above as many newcomers, a variety. */
  readonly gain: number;
}

const PLANTS = [1, 3, 6] as const;

function drawnTraits(own: ClassCase, traits: ReadonlyMap<string, TraitForecast>, seed: number) {
  const limited = own.must.map(({ trait }) => trait).filter((trait) => !own.goals.some((goal) => goal.trait === trait));
  const drawn: DrawnTrait[] = [];
  for (const trait of [...own.goals.map((goal) => goal.trait), ...new Set(limited)]) {
    const forecast = traits.get(trait);
    const values = forecast?.own.classes.find(({ classId }) => classId === own.classId);
    if (!forecast || !values) continue;
    const goal = own.goals.find((one) => one.trait === trait);
    const { classMean } = forecast.expected.classes.find(({ classId }) => classId === own.classId)!;
    const basis = { ...forecast.own, classMean, between: forecast.expected.between };
    const draws = openDraws(values, forecast.expected.cells, `${seed}/${own.classId}/${trait}`);
    drawn.push({ trait: forecast.own, draws, range: goal ? pointRange(goal, basis) : null });
  }
  return drawn;
}

/** The class's own weights, then each weight halved and doubled. */
function weightingsOf(goals: readonly Goal[]) {
  const base = goals.map(({ weight }) => weight);
  const changed = goals.flatMap(({ trait }, g) =>
    ([0.5, 2] as const).map((factor) => ({ trait, factor, weights: base.map((w, i) => (i === g ? w * factor : w)) })),
  );
  return { changed, weights: [base, ...changed.map(({ weights }) => weights)] };
}

function expectedOf({ expected }: TraitForecast, classId: string, variety: string) {
  return expected.classes.find((own) => own.classId === classId)?.varieties.find((own) => own.variety === variety);
}

/** A class's simulated seasons with what they were drawn from. */
interface Run {
  readonly own: ClassCase;
  readonly traits: ReadonlyMap<string, TraitForecast>;
  readonly settings: VerdictSettings;
  readonly simulated: Simulated;
  readonly changed: ReturnType<typeof weightingsOf>['changed'];
  readonly withDetail: boolean;
}

/** The chance to settle with 1, 3 and 6 plants. */
function settlesOf({ own, traits, settings, simulated }: Run, i: number, share: number): VarietyAdvice['settles'] {
  const total = own.goals.reduce((sum, { weight }) => sum + weight, 0);
  return PLANTS.map((plants) => {
    const learning = own.goals.map(({ trait, weight }, g) => {
      const forecast = traits.get(trait)!;
      const { variance, perPlant } = forecast.own.nextSeason;
      return {
        slope: (weight / total) * simulated.sums.slope[g]![i]!,
        variance: expectedOf(forecast, own.classId, own.competitors[i]!.id)!.variance,
        noise: forecast.expected.withSeason ** 2 + variance[own.classId]! * (perPlant ? 1 / plants + own.together : 1),
      };
    });
    return { plants, chance: chanceToSettle(share, simulated.sums.marginVariance[i]!, learning, settings) };
  });
}

/** What a trait does for a variety against the bar, in points of the score, largest first. */
function reasonsOf({ own, simulated: { sums } }: Run, i: number): readonly Reason[] {
  const total = own.goals.reduce((sum, { weight }) => sum + weight, 0);
  return own.goals
    .map(({ trait, weight }, g) => ({
      trait,
      effect: (weight / total) * (sums.points[g]![i]! - sums.barPoints[g]!),
    }))
    .toSorted((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
}

function varietyAdvice(run: Run, i: number): VarietyAdvice {
  const { own, settings, simulated, changed } = run;
  const competitor = own.competitors[i]!;
  const shares = simulated.counts.map(
    ({ earned, above }) => [earned[i]! / settings.simulations, above[i]! / settings.simulations] as const,
  );
  const [share, above] = shares[0]!;
  const verdict = verdictOf(share, above, settings, competitor);
  const fragile = changed.flatMap(({ trait, factor }, k): readonly Fragile[] => {
    const turned = verdictOf(...shares[k + 1]!, settings, competitor);
    return turned === verdict ? [] : [{ trait, factor, verdict: turned }];
  });
  const isOpen = verdict === 'try-again';
  const isAlone = own.competitors.filter(({ competes }) => competes).length === 1;
  return {
    variety: competitor.id,
    verdict,
    share,
    above,
    isOnTheEdge: isOnTheEdge(share, above, settings),
    untested: competitor.untested,
    reasons: reasonsOf(run, i),
    fragile,
    leans: isOpen && !isAlone ? (share >= (settings.keepFrom + settings.dropBelow) / 2 ? 'up' : 'down') : null,
    settles: isOpen && run.withDetail ? settlesOf(run, i, share) : [],
  };
}

function goalRanges(own: ClassCase, drawn: readonly DrawnTrait[], { sums }: Simulated): readonly GoalRange[] {
  // The parts' covariances with the score add up to its variance.
  const total = own.goals.reduce((sum, { weight }, g) => sum + weight * sums.scoreCovariance[g]!, 0);
  return own.goals.map((goal, g) => ({
    ...goal,
    range: drawn[g]!.range!,
    isGiven: goal.good !== null || goal.bad !== null,
    partOfVariance: total > 0 ? (goal.weight * sums.scoreCovariance[g]!) / total : 0,
    cutOff: sums.cutOff[g]!,
  }));
}

/**
 * Advice for a class: verdicts in order of share, and the list that fills its spots.
 *
 * @param own     the class; every goal's trait is among `traits` with values in the class
 * @param traits      forecasts by trait
 * @param withDetail  false leaves out what turns a verdict and what would settle it
 * @source methods page C
 */
export function adviseClass(
  own: ClassCase,
  traits: ReadonlyMap<string, TraitForecast>,
  settings: VerdictSettings,
  withDetail = true,
): ClassAdvice {
  const drawn = drawnTraits(own, traits, settings.seed);
  const { changed, weights } = weightingsOf(own.goals);
  const simulated = simulateClass(own, drawn, withDetail ? weights : weights.slice(0, 1), settings);
  const run: Run = { own, traits, settings, simulated, changed: withDetail ? changed : [], withDetail };
  const ordered = own.competitors
    .flatMap(({ competes }, i) => (competes ? [varietyAdvice(run, i)] : []))
    .toSorted((a, b) => b.share - a.share || (a.variety < b.variety ? -1 : 1));
  const listed = ordered.filter(({ verdict }) => verdict !== 'drop').slice(0, own.spots);
  const at = new Map(own.competitors.map(({ id }, i) => [id, i]));
  const gains = listed.map(({ variety }) => simulated.sums.gain[at.get(variety)!]!);
  return {
    classId: own.classId,
    spots: own.spots,
    bar: own.bar,
    goals: goalRanges(own, drawn, simulated),
    varieties: ordered,
    list: listed.map(({ variety }) => variety),
    expectedRight: listed.reduce((sum, { share }) => sum + share, 0),
    gain: gains.length > 0 ? gains.reduce((sum, gain) => sum + gain, 0) / gains.length : 0,
  };
}
