import { mean } from 'simple-statistics';
import { inGardens } from '../analyse/scores.ts';
import { isoDate } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { csvText } from '../terms/csv.ts';
import { ripenings } from '../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';

/** Digits of a mean score on a sheet. */
const DECIMALS = 2;

const rounded = (value: number): string => String(Number(value.toFixed(DECIMALS)));

/**
 * A garden's season as a member's sheet: a row a variety with plants, sums, the first day, mean scores, `again`. No
 * picking, taster, note, photo or place is in it.
 *
 * @param garden  whose records they are, as the trial names it
 * @returns       the table as CSV; null where nothing was recorded there
 * @source gardens page 4
 */
export function memberSheet({ settings, varieties }: Trial, seen: SeasonSeen, garden: string): string | null {
  const { season, yields } = seen;
  const units = season.yieldUnits.filter((unit) => unit.garden === garden && unit.cause !== 'accident');
  if (units.length === 0) return null;
  const traits = [...settings.traits.values()].filter(({ kind }) => kind === 'rating');
  const isOnly = season.gardens.length === 1;
  const from = settings.firstRipeFrom;
  const allScores = inGardens(season, settings);
  const rows = varieties.flatMap(({ id }): readonly (readonly string[])[] => {
    const own = units.filter((unit) => unit.variety === id);
    if (own.length === 0) return [];
    const sum = (of: 'grams' | 'fruits'): string => {
      const all = own.map((unit) => yields.get(unit.id)?.[of] ?? null);
      const known = all.filter((value) => value !== null);
      return known.length < all.length ? '' : String(Math.round(known.reduce((total, value) => total + value, 0)));
    };
    const days = ripenings(seen).flatMap(({ unit, ripe }) => {
      const start = unit[from];
      return unit.variety === id && unit.garden === garden && ripe !== null && start !== null ? [start + ripe] : [];
    });
    const scored = (key: string): readonly number[] => {
      const said = allScores.filter(({ variety, trait }) => variety === id && trait === key);
      const here = said.filter(({ taster }) => isOnly || taster === garden).map(({ score }) => score);
      return here.length > 0 ? here : sheetScores(own, key);
    };
    const scores = (key: string): string => {
      const all = scored(key);
      return all.length === 0 ? '' : rounded(mean(all));
    };
    const again = scored('again');
    return [
      [
        id,
        String(own.reduce((total, { plants }) => total + plants, 0)),
        sum('grams'),
        sum('fruits'),
        days.length === 0 ? '' : isoDate(Math.round(Math.min(...days)) as Day),
        ...traits.map(({ key }) => scores(key)),
        again.length === 0 ? '' : mean(again) >= 0.5 ? 'yes' : 'no',
      ],
    ];
  });
  return csvText([
    ['variety', 'plants', 'weight_g', 'fruits', 'first_ripe', ...traits.map(({ key }) => key), 'again'],
    ...rows,
  ]);
}

/** Scores that a sheet itself holds. */
function sheetScores(units: SeasonSeen['season']['yieldUnits'], key: string): readonly number[] {
  return units.flatMap(({ record }) => {
    const score = record.kind === 'totals' ? record.traits.get(key) : undefined;
    return score === undefined ? [] : [score];
  });
}
