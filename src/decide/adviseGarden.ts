import { gardenRows } from '../analyse/expected/gardenCells.ts';
import { expectedInGarden } from '../analyse/expected/gardenExpected.ts';
import type { ExpectedVariety } from '../analyse/expected/expectedTrait.ts';
import { afresh } from '../terms/recall.ts';
import type { Trial } from '../terms/trial.ts';
import { adviseClass } from './adviseClass.ts';
import type { VarietyAdvice } from './adviseVariety.ts';
import type { NextSeason } from './nextSeason.ts';

/** A variety for one garden: what is expected there, and its verdict there beside the club's. */
export interface GardenVariety {
  readonly variety: string;
  readonly here: Pick<VarietyAdvice, 'verdict' | 'share' | 'above'>;
  readonly club: Pick<VarietyAdvice, 'verdict' | 'share' | 'above'>;
  /** Of the yield, working scale; null where the garden has no yields of the class. */
  readonly expected: ExpectedVariety | null;
}

export interface GardenClassAdvice {
  readonly classId: string;
  readonly spots: number;
  /** In order of their share in the garden. */
  readonly varieties: readonly GardenVariety[];
}

/** Advice for one garden of a club. */
export interface GardenAdvice {
  readonly garden: string;
  readonly season: number;
  readonly classes: readonly GardenClassAdvice[];
}

/**
 * Verdicts for one garden from the club's records and its own, class by class where it has any of its own.
 *
 * @param recall  gives what was worked out before
 * @source gardens page 2.3
 */
export function adviseGarden(trial: Trial, next: NextSeason, garden: string, recall = afresh): GardenAdvice {
  const { verdicts, interval } = trial.settings;
  const classes = next.classes.flatMap(({ classId, case: own, advice }): readonly GardenClassAdvice[] => {
    if (!advice) return [];
    const known = [...next.forecasts.values()].flatMap(
      ({ gardens }) => gardens?.classes.filter((one) => one.classId === classId) ?? [],
    );
    if (!known.some((one) => gardenRows(one, garden) !== null)) return [];
    const yields = next.forecasts.get('yield')?.gardens ?? null;
    const ownYields = yields?.classes.find((one) => one.classId === classId);
    const input = { own, verdicts, garden, interval, known, cells: yields?.expected.cells ?? null };
    return [
      recall('garden', input, () => {
        const here = adviseClass(own, next.forecasts, verdicts, false, garden);
        const expected =
          yields && ownYields ? expectedInGarden(ownYields, yields.expected.cells, garden, interval) : null;
        return {
          classId,
          spots: own.spots,
          varieties: here.varieties.map(({ variety, verdict, share, above }) => {
            const club = advice.varieties.find((one) => one.variety === variety)!;
            return {
              variety,
              here: { verdict, share, above },
              club: { verdict: club.verdict, share: club.share, above: club.above },
              expected: expected?.varieties.find((one) => one.variety === variety) ?? null,
            };
          }),
        };
      }),
    ];
  });
  return { garden, season: next.season, classes };
}
