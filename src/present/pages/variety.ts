import type { ClassOutcome } from '../../decide/nextSeason.ts';
import type { VarietyAdvice } from '../../decide/adviseVariety.ts';
import { traitFacts } from '../../terms/traits.ts';
import { barValue, expectedIn, nameOf } from '../nextSeason/source.ts';
import type { AdviceSource } from '../nextSeason/source.ts';
import { goalWords } from './goalWords.ts';
import { first, given, keyed } from '../../numerics/element.ts';

/** What speaks for a variety and against it in one goal, on the goal's scale. */
export interface WhyRow {
  readonly trait: string;
  readonly heading: string;
  readonly weight: string;
  readonly from: number;
  readonly to: number;
  readonly fromText: string;
  readonly toText: string;
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly bar: number | null;
  readonly others: readonly number[];
  /** `7.5 (6.4 to 8.6)` in two parts. */
  readonly figure: string;
  readonly range: string;
  readonly beside: string;
  readonly effect: number;
  readonly effectText: string;
}

/** The outcome of a variety's class and its own advice; null where it has none. */
export function adviceOf(
  source: AdviceSource | null,
  variety: string,
): { readonly outcome: ClassOutcome; readonly own: VarietyAdvice } | null {
  for (const outcome of source?.next.classes ?? []) {
    const own = outcome.advice?.varieties.find((one) => one.variety === variety);
    if (own) return { outcome, own };
  }
  return null;
}

/** A row for each goal of the class, in order of what it does to the score. */
export function whyRows(source: AdviceSource, outcome: ClassOutcome, own: VarietyAdvice): readonly WhyRow[] {
  const { writing, trial, next } = source;
  const { bench } = writing.words;
  const gaveNothing = keyed(outcome.basis, own.variety).gaveNothing !== null;
  return own.reasons.flatMap(({ trait, effect }): readonly WhyRow[] => {
    const expected = expectedIn(next, trait, outcome.classId, own.variety);
    if (!expected) return [];
    const { unit, ends } = traitFacts(trait, trial.settings.traits);
    const bar = barValue(source, outcome, trait);
    const goal = first(given(outcome.advice).goals, (one) => one.trait === trait);
    const others = outcome
      .advice!.varieties.filter(({ variety }) => variety !== own.variety)
      .flatMap(({ variety }) => expectedIn(next, trait, outcome.classId, variety)?.estimate ?? []);
    const all = [expected.estimate, expected.low, expected.high, bar, ...others].filter((value) => value !== null);
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const around =
      trait === 'first_ripe' ? ([least - 2, most + 2] as const) : ([Math.min(0, least), most > 0 ? most : 1] as const);
    const [from, to] = ends ?? around;
    const [figure, range] = writing.parted(expected, unit);
    const end = (value: number): string => writing.quantity(value, unit, unit === 'points' ? 0 : undefined);
    const sign = effect < 0 ? '−' : '+';
    return [
      {
        trait,
        heading: goalWords(source, trait, effect, { estimate: expected.estimate, bar, gaveNothing }),
        weight: bench.variety.counts(writing.number(goal.weight, goal.weight % 1 === 0 ? 0 : 1)),
        from,
        to,
        fromText: end(from),
        toText: end(to),
        estimate: expected.estimate,
        low: expected.low,
        high: expected.high,
        bar,
        others,
        figure,
        range: range === '' ? '' : `(${range})`,
        beside: bar === null ? '' : bench.variety.beside(writing.alike(bar, expected, unit)),
        effect,
        effectText: bench.variety.points(
          Math.abs(effect) < 0.05 ? writing.number(0, 1) : `${sign}${writing.number(Math.abs(effect), 1)}`,
        ),
      },
    ];
  });
}

/** What the bar is called: the check variety, or an average newcomer. */
export function barName(source: AdviceSource, outcome: ClassOutcome): string | null {
  const { bar, checkVariety } = outcome.case;
  return bar === 'check' && checkVariety !== null ? nameOf(source, checkVariety) : null;
}
