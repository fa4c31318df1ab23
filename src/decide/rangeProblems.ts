import { fileOnly } from '../terms/place.ts';
import type { Problem } from '../terms/problem.ts';
import type { NextSeason } from './nextSeason.ts';

const MOST_CUT_OFF = 0.2;

/**
 * Ranges given in trial.yaml that cut off so many draws of a class that its best (or worst) varieties look alike, as warnings.
 */
export function rangeProblems({ classes }: NextSeason): readonly Problem[] {
  return classes.flatMap(({ classId, advice }) =>
    (advice?.goals ?? []).flatMap(({ trait, isGiven, cutOff }): readonly Problem[] => {
      if (!isGiven || cutOff <= MOST_CUT_OFF) return [];
      const facts = { trait, class: classId, percent: String(Math.round(cutOff * 100)) };
      return [{ code: 'range-cuts-off', places: [fileOnly('data/trial.yaml')], found: '', facts }];
    }),
  );
}
