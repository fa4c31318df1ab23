import { mean } from 'simple-statistics';
import { countDispersion } from '../analyse/expected/borrowing.ts';
import { expectedSpreads, expectedTrait } from '../analyse/expected/expectedTrait.ts';
import type { ExpectedTrait } from '../analyse/expected/expectedTrait.ts';
import { classValues, traitValues } from '../analyse/expected/values.ts';
import type { TraitValues } from '../analyse/expected/values.ts';
import { expectedOverGardens, gardenLevel } from '../analyse/expected/gardenExpected.ts';
import type { GardensExpected } from '../analyse/expected/gardenExpected.ts';
import { gardenValues } from '../analyse/expected/gardenValues.ts';
import type { GardenValues } from '../analyse/expected/gardenValues.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { afresh } from '../terms/recall.ts';
import { COUNT_FOR_YIELD, traitFacts } from '../terms/traits.ts';
import { classLookup } from '../terms/trial.ts';
import type { Trial } from '../terms/trial.ts';
import type { TraitForecast } from './adviseVariety.ts';
import { openGardenDraws } from './gardenDraws.ts';
import type { TraitCase } from './cases.ts';
import { mustOf, weightsOf } from './goals.ts';

/** A trait's values over all seasons, what is expected from them, and the plain data that verdicts are drawn from. */
export interface Forecast {
  readonly values: TraitValues;
  readonly own: TraitCase;
  readonly expected: ExpectedTrait;
  /** The trait garden by garden, with its posterior; null where one garden alone has records. */
  readonly gardens:
    | (GardenValues & NonNullable<TraitForecast['gardens']> & { readonly expected: GardensExpected })
    | null;
}

/** Squared standard error of one more season's result. */
function nextSeasonOf(
  { unitVariance, usualUnits, values, counts }: TraitValues,
  perPlant: boolean,
): TraitCase['nextSeason'] {
  const ofClass = (classId: string): number => {
    if (!perPlant) return unitVariance / usualUnits;
    if (counts === null) return unitVariance;
    const own = values.filter((value) => value.classId === classId).map(({ theta }) => theta);
    const fruits = Math.exp(mean(own));
    return countDispersion(counts, fruits) / fruits;
  };
  const classes = new Set(values.map(({ classId }) => classId));
  return { variance: Object.fromEntries([...classes].map((id) => [id, ofClass(id)])), perPlant };
}

/** Every trait that is a goal or has a limit in some class, in a fixed order. */
function traitsThatCount({ settings }: Trial): readonly string[] {
  const traits = new Set<string>();
  for (const id of settings.classes.keys()) {
    const { weights, areDefault } = weightsOf(id, settings);
    for (const trait of weights.keys()) traits.add(trait);
    if (areDefault) traits.add(COUNT_FOR_YIELD);
    for (const { trait } of mustOf(id, settings)) traits.add(trait);
  }
  traits.add('again');
  return [...traits];
}

/** A trait over gardens with what is drawn from it. */
function overGardensOf(gardens: GardenValues, expected: GardensExpected): NonNullable<Forecast['gardens']> {
  const of = (id: string) => gardens.classes.find(({ classId }) => classId === id);
  return {
    ...gardens,
    expected,
    draws(id, name, garden) {
      const own = of(id);
      return own ? openGardenDraws(own, expected.cells, name, garden) : null;
    },
    level(id, garden) {
      const own = of(id);
      return own ? gardenLevel(own, expected.cells, garden) : null;
    },
  };
}

/**
 * What the seasons say of next season, for every trait that counts somewhere.
 *
 * @param grown       ids of the varieties that were grown, by class
 * @param withDetail  false leaves out what is expected of each variety
 * @param recall      gives what was worked out before
 */
export function forecastsOf(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  grown: ReadonlyMap<string, readonly string[]>,
  withDetail = true,
  recall = afresh,
): ReadonlyMap<string, Forecast> {
  const classOf = classLookup(trial.varieties);
  const level = trial.settings.interval;
  const forecasts = new Map<string, Forecast>();
  for (const trait of traitsThatCount(trial)) {
    const facts = traitFacts(trait, trial.settings.traits);
    const values = traitValues(seasons, facts, classOf);
    if (!values) continue;
    const classes = [...grown].flatMap(([id, varieties]) => classValues(values, id, varieties) ?? []);
    if (classes.length === 0) continue;
    const { scale, better, ends, isPerPlant } = facts;
    const { priorScale } = values;
    const own = {
      trait,
      scale,
      better,
      ends,
      priorScale,
      classes,
      nextSeason: nextSeasonOf(values, isPerPlant),
    };
    const { own: home } = trial.settings.gardens;
    const gardens = gardenValues(seasons, facts, grown, classOf, home);
    const isWhole = classes.every(({ classId }) => gardens?.classes.some((one) => one.classId === classId));
    if (gardens && isWhole) {
      const overGardens = recall('gardens', { classes: gardens.classes, priorScale, level }, (input) =>
        expectedOverGardens(input.classes, input.priorScale, input.level),
      );
      const { between, withSeason, classes: expectedClasses } = overGardens;
      const expected = { cells: [], between, withSeason, classes: expectedClasses };
      forecasts.set(trait, { values, own, expected, gardens: overGardensOf(gardens, overGardens) });
      continue;
    }
    const expected = withDetail
      ? recall('expected', { classes, priorScale, level }, (input) =>
          expectedTrait(input.classes, input.priorScale, input.level),
        )
      : recall('spreads', { classes, priorScale }, (input) => expectedSpreads(input.classes, input.priorScale));
    forecasts.set(trait, { values, own, expected, gardens: null });
  }
  return forecasts;
}
