import { dayOf, partsOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { isSamePlant } from '../../terms/lines.ts';
import type { SeedLot } from '../../terms/lines.ts';
import { afresh } from '../../terms/recall.ts';
import { sownOf } from '../../terms/record.ts';
import { everySeason, isLine } from '../../terms/trial.ts';
import { plantingsOf } from '../../terms/ofVariety.ts';
import type { SeedBatch, Trial, Variety } from '../../terms/trial.ts';
import { wilsonInterval } from '../../numerics/wilson.ts';
import { germinationAt, seedsFor, viabilityOf } from './viability.ts';
import type { SeedTest } from './viability.ts';

/** What is known of a lot for next spring. */
export interface LotOutlook {
  readonly lot: SeedLot;
  /** What grows from it; null where no row of varieties.csv says it. */
  readonly variety: Variety | null;
  /** Years from `saved` to next spring's sowing; null without `saved`. */
  readonly age: number | null;
  /** Seeds left; null where it was not counted. */
  readonly left: number | null;
  /** Seeds tested or sown and counted, all together; null where none were. */
  readonly tested: { readonly k: number; readonly n: number; readonly low: number; readonly high: number } | null;
  /** Expected at next spring's sowing, shares. */
  readonly expected: { readonly mean: number; readonly low: number; readonly high: number };
  /** Plants that are wanted, and seeds for them; null where 200 are not enough. */
  readonly plants: number;
  readonly seeds: number | null;
  readonly act: 'sow' | 'test' | 'save' | 'gone';
}

const DAYS_A_YEAR = 365.25;
/** Years for which a test tells enough: that of last spring. */
const FRESH_FOR = 1.25;
/** Seeds of a test on paper. Common practice, no source. */
const TEST_SEEDS = 10;
/** Plants of a variety of which nothing says how many are wanted. Common practice, no source. */
const USUAL_PLANTS = 6;

/** Day of next spring's sowing: a year after the last one, or 1 March. */
export function nextSowing(trial: Trial): Day {
  const last = trial.seasons.at(-1);
  const year = (last?.year ?? 2000) + 1;
  const sown = last?.plantings.map((own) => own.sown).filter((day) => day !== null) ?? [];
  const { month, date } = sown.length > 0 ? partsOf(Math.min(...sown) as Day) : { month: 3, date: 1 };
  return dayOf(year, month, date) ?? ((dayOf(year, 3, 1) ?? 0) as Day);
}

const years = (from: Day, to: Day): number => (to - from) / DAYS_A_YEAR;

/** Plants wanted of a variety: what a line gets, else as many as it had when it was last grown. */
function wantedPlants(variety: Variety | null, lot: SeedLot, trial: Trial): number {
  const grown = variety ?? trial.varieties.find(({ id }) => lot.from.some((own) => own.variety === id)) ?? null;
  if (grown && isLine(grown)) return trial.settings.classes.get(grown.classId)?.linePlants ?? USUAL_PLANTS;
  const plantings = variety
    ? trial.seasons.map((season) => plantingsOf(season, variety.id)).findLast((own) => own.length > 0)
    : undefined;
  const plants = (plantings ?? []).reduce((sum, own) => sum + own.plants, 0);
  return plants === 0 ? USUAL_PLANTS : plants;
}

/** Sowings of a lot that were counted, over all seasons. */
function batchesOf(lot: SeedLot, trial: Trial): readonly SeedBatch[] {
  return everySeason(trial).flatMap(({ seedBatches }) => seedBatches.filter((own) => own.lot === lot.id));
}

function growsFrom(lot: SeedLot, trial: Trial): Variety | null {
  if (lot.variety !== null) return trial.varieties.find(({ id }) => id === lot.variety) ?? null;
  const isSame = (variety: Variety): boolean =>
    variety.from.length === lot.from.length &&
    variety.from.every((own) => lot.from.some((one) => isSamePlant(one, own)));
  return (lot.from.length > 0 && trial.varieties.find(isSame)) || null;
}

interface SowingBasis {
  readonly tests: readonly SeedTest[];
  readonly stored: SeedLot['stored'];
  /** Null where the year of the seed is not known. */
  readonly age: number | null;
  readonly plants: number;
  readonly certainty: number;
  readonly level: number;
}

/** Germination expected of a lot, and the seeds to sow for the plants wanted. */
function sowingOf({ tests, stored, age, plants, certainty, level }: SowingBasis) {
  const viability = viabilityOf(tests, stored, age === null);
  return {
    seeds: seedsFor(viability, age ?? 0, plants, certainty),
    expected: germinationAt(viability, age ?? 0, level),
  };
}

/**
 * What a seed lot is worth next spring.
 *
 * @param level   of the intervals, 0 to 1
 * @param recall  gives what was worked out before
 * @source methods page L12
 */
export function lotOutlook(lot: SeedLot, trial: Trial, level: number, recall = afresh): LotOutlook {
  const sowing = nextSowing(trial);
  const variety = growsFrom(lot, trial);
  const batches = batchesOf(lot, trial);
  const { saved } = lot;
  const tests = batches.map(({ sown, seeds, germinated }) => ({
    age: saved === null ? 0 : Math.max(0, years(saved, sown)),
    seeds,
    germinated,
  }));
  const age = saved === null ? null : Math.max(0, years(saved, sowing));
  const [k, n] = [tests.reduce((sum, own) => sum + own.germinated, 0), tests.reduce((sum, own) => sum + own.seeds, 0)];
  const [low, high] = n > 0 ? wilsonInterval(k, n, level) : [0, 1];
  const left = lot.seeds === null ? null : Math.max(0, lot.seeds - sownOf(lot.id, everySeason(trial)));
  const plants = wantedPlants(variety, lot, trial);
  const { seeds, expected } = recall(
    'seed',
    { tests, stored: lot.stored, age, plants, certainty: trial.settings.certainty, level },
    sowingOf,
  );
  const lastTest = Math.max(...batches.map(({ sown }) => sown));
  const isOldTest = batches.length === 0 || years(lastTest as Day, sowing) > FRESH_FOR;
  const isShort = left !== null && (seeds === null || seeds > left);
  const isUnsure = isOldTest && (seeds === null || seeds > 3 * plants || saved === null);
  const canTest = left === null || left >= TEST_SEEDS;
  const act =
    lot.isGone || left === 0 ? 'gone' : isUnsure && canTest ? 'test' : isShort || seeds === null ? 'save' : 'sow';
  const tested = n > 0 ? { k, n, low, high } : null;
  return { lot, variety, age, left, tested, expected, plants, seeds, act };
}
