import { isFarLimit } from '../../analyse/guard.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import type { ExpectedVariety } from '../../analyse/expected/expectedTrait.ts';
import { hundredths } from '../../decide/verdict.ts';
import type { LastWinter } from '../../decide/lastWinter.ts';
import { rangeSet } from '../../decide/goals.ts';
import type { Goal } from '../../decide/cases.ts';
import type { Forecast } from '../../decide/forecasts.ts';
import type { ClassOutcome, NextSeason } from '../../decide/nextSeason.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import { shownValue } from '../../terms/scales.ts';
import { traitFacts } from '../../terms/traits.ts';

/** What the pages about next season are made from. */
export interface AdviceSource {
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly next: NextSeason;
  readonly winters: readonly LastWinter[];
  readonly writing: Writing;
}

/** An expected value in the shown unit's terms: back-transformed, cut to the scale. */
export interface ShownExpected {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
}

type Expected = ShownExpected & { readonly own: ExpectedVariety };

/** What a forecast says of the varieties of its classes: every page asks for all of them. */
const shown = new WeakMap<Forecast, Map<string, ReadonlyMap<string, Expected>>>();

function expectedOfClass(forecast: Forecast, classId: string): ReadonlyMap<string, Expected> {
  const classes = shown.get(forecast) ?? new Map<string, ReadonlyMap<string, Expected>>();
  shown.set(forecast, classes);
  const known = classes.get(classId);
  if (known) return known;
  const back = backOf(forecast.own);
  const seen = forecast.values.values.filter((value) => value.classId === classId).map(({ theta }) => back(theta));
  const varieties = forecast.expected.classes.find((one) => one.classId === classId)?.varieties ?? [];
  const found = new Map(
    varieties.map((own): [string, Expected] => {
      const [estimate, low, high] = [own.mean, own.low, own.high].map(back) as [number, number, number];
      const isFar = forecast.own.scale === 'log' && [low, high].some((limit) => isFarLimit(limit, seen, true));
      return [own.variety, isFar ? { estimate, low: null, high: null, own } : { estimate, low, high, own }];
    }),
  );
  classes.set(classId, found);
  return found;
}

/**
 * Expected value and prediction interval of a variety in the stored unit; null where the trait has no forecast. On
 * logarithms the interval is left out where its limits are far from all that the class gave.
 */
export function expectedIn(next: NextSeason, trait: string, classId: string, variety: string): Expected | null {
  const forecast = next.forecasts.get(trait);
  return (forecast && expectedOfClass(forecast, classId).get(variety)) ?? null;
}

/** From the working scale to the stored unit, cut to the scale's ends. */
export const backOf =
  (own: Parameters<typeof shownValue>[0]) =>
  (x: number): number =>
    shownValue(own, x);

/** Where an end of a goal's points comes from: trial.yaml, the class's values, or the ends of the trait's own scale. */
export type Whence = 'set' | 'class' | 'scale';

/** Where an end of a goal's points comes from. */
export function whenceOf(
  { settings }: Trial,
  classId: string,
  goal: Pick<Goal, 'trait' | 'good' | 'bad'>,
  end: 'good' | 'bad',
): Whence {
  if (goal[end] === null) return 'class';
  return (rangeSet(settings, classId, goal.trait)?.[end] ?? null) === null ? 'scale' : 'set';
}

/** What the bar is expected to bring of a trait, stored unit. */
export function barValue({ next }: AdviceSource, outcome: ClassOutcome, trait: string): number | null {
  const { bar, checkVariety } = outcome.case;
  if (bar === 'check' && checkVariety !== null)
    return expectedIn(next, trait, outcome.classId, checkVariety)?.estimate ?? null;
  const forecast = next.forecasts.get(trait);
  const mean = forecast?.expected.classes.find(({ classId }) => classId === outcome.classId)?.classMean;
  return forecast && mean !== undefined ? backOf(forecast.own)(mean) : null;
}

export function nameOf({ trial }: Pick<AdviceSource, 'trial'>, id: string): string {
  return trial.varieties.find((variety) => variety.id === id)?.name ?? id;
}

export function quantityOf({ trial, writing }: AdviceSource, trait: string, value: number): string {
  return writing.quantity(value, traitFacts(trait, trial.settings.traits).unit);
}

/** `93 of 100`; never 0 or 100, which would sound certain. */
export function of100(share: number, { trial, writing }: Pick<AdviceSource, 'trial' | 'writing'>): string {
  const { nextSeason } = writing.words;
  if (share > 0.995) return nextSeason.moreThan99;
  return share < 0.005
    ? nextSeason.fewerThan1
    : nextSeason.of100(writing.number(hundredths(share, trial.settings.verdicts)));
}
