import { changedWeights, EXPECTED, varietyAdvice } from './adviseVariety.ts';
import type { Run, TraitForecast, VarietyAdvice } from './adviseVariety.ts';
import type { ClassCase, Goal, VerdictSettings } from './cases.ts';
import { openDraws } from './draws.ts';
import { pointRange } from './points.ts';
import type { PointRange } from './points.ts';
import { simulateClass } from './simulate.ts';
import type { DrawnTrait, Simulated } from './simulate.ts';
import { first, given, keyed, nth } from '../numerics/element.ts';

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
  /** Fills the spots in order of share with what is expected at or above the bar; other spots are for newcomers. */
  readonly list: readonly string[];
  readonly expectedRight: number;
  /** Spots that the list leaves to newcomers. */
  readonly newcomerSpots: number;
  /** Points of the score that the list is expected to give above as many newcomers, a variety; null where none. */
  readonly gain: number | null;
}

/** Where points begin and end: about the class's mean, or about a garden's own. */
function levelOf({ gardens, expected }: TraitForecast, id: string, garden: string | null): number {
  const { classMean } = first(expected.classes, ({ classId }) => classId === id);
  return (garden === null ? null : gardens?.level(id, garden)) ?? classMean;
}

function drawnTraits(own: ClassCase, traits: ReadonlyMap<string, TraitForecast>, seed: number, garden: string | null) {
  const limited = own.must.map(({ trait }) => trait).filter((trait) => !own.goals.some((goal) => goal.trait === trait));
  const drawn: DrawnTrait[] = [];
  for (const trait of [...own.goals.map((goal) => goal.trait), ...new Set(limited)]) {
    const forecast = traits.get(trait);
    const values = forecast?.own.classes.find(({ classId }) => classId === own.classId);
    if (!forecast || !values) continue;
    const goal = own.goals.find((one) => one.trait === trait);
    const classMean = levelOf(forecast, own.classId, garden);
    const basis = { ...forecast.own, classMean, between: forecast.expected.between };
    const name = `${seed}/${own.classId}/${trait}`;
    const draws =
      forecast.gardens?.draws(own.classId, name, garden) ?? openDraws(values, forecast.expected.cells, name);
    drawn.push({ trait: forecast.own, draws, range: goal ? pointRange(goal, basis) : null });
  }
  return drawn;
}

function goalRanges(own: ClassCase, drawn: readonly DrawnTrait[], { sums }: Simulated): readonly GoalRange[] {
  // The parts' covariances with the score add up to its variance.
  const total = own.goals.reduce((sum, { weight }, g) => sum + weight * nth(sums.scoreCovariance, g), 0);
  return own.goals.map((goal, g) => ({
    ...goal,
    range: given(nth(drawn, g).range),
    isGiven: goal.good !== null || goal.bad !== null,
    partOfVariance: total > 0 ? (goal.weight * nth(sums.scoreCovariance, g)) / total : 0,
    cutOff: nth(sums.cutOff, g),
  }));
}

/**
 * Advice for a class: verdicts in order of share, and the list that fills its spots.
 *
 * @param own     the class; every goal's trait is among `traits` with values in the class
 * @param traits      forecasts by trait
 * @param withDetail  false leaves out what turns a verdict and what would settle it
 * @param garden      the garden that is advised; null for the club, or where there is only one
 * @source methods page C; gardens page 2.3
 */
export function adviseClass(
  own: ClassCase,
  traits: ReadonlyMap<string, TraitForecast>,
  settings: VerdictSettings,
  withDetail = true,
  garden: string | null = null,
): ClassAdvice {
  const drawn = drawnTraits(own, traits, settings.seed, garden);
  const changed = withDetail ? changedWeights(own.goals) : [];
  const simulated = simulateClass(own, drawn, changed, settings);
  const asked = own.competitors.filter(({ competes, wanted }) => competes && wanted === 'yes').map(({ id }) => id);
  const wanted = new Set(asked.length <= own.spots ? asked : []);
  const run: Run = { own, traits, settings, simulated, changed, withDetail, wanted };
  const ordered = own.competitors
    .flatMap(({ competes }, i) => (competes ? [varietyAdvice(run, i)] : []))
    .toSorted((a, b) => b.share - a.share || (a.variety < b.variety ? -1 : 1));
  const at = new Map(own.competitors.map(({ id }, i) => [id, i]));
  const isListed = ({ variety, verdict, above }: VarietyAdvice): boolean =>
    verdict === 'keep' ||
    (verdict !== 'drop' && above >= EXPECTED && nth(own.competitors, keyed(at, variety)).wanted !== 'no');
  // What is kept has its spot, in order of share; then what is expected to reach the bar.
  const fit = ordered.filter(isListed);
  const listed = [
    ...fit.filter(({ verdict }) => verdict === 'keep'),
    ...fit.filter(({ verdict }) => verdict !== 'keep'),
  ].slice(0, own.spots);
  const gains = listed.map(({ variety }) => nth(simulated.sums.gain, keyed(at, variety)));
  const gain = gains.reduce((sum, one) => sum + one, 0) / Math.max(1, gains.length);
  return {
    classId: own.classId,
    spots: own.spots,
    bar: own.bar,
    goals: goalRanges(own, drawn, simulated),
    varieties: ordered,
    list: listed.map(({ variety }) => variety),
    expectedRight: listed.reduce((sum, { share }) => sum + share, 0),
    newcomerSpots: own.spots - listed.length,
    gain: gain > 0 ? gain : null,
  };
}
