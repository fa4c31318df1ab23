import { isoDate } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { csvText } from '../terms/csv.ts';
import { answersTo, ripenings } from '../analyse/traitsSeen.ts';
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
    const scores = (key: string): string => {
      const scored = season.scores.filter(
        ({ variety, trait, taster }) => variety === id && trait === key && (isOnly || taster === garden),
      );
      const all = scored.length > 0 ? scored.map(({ score }) => score) : sheetScores(own, key);
      return all.length === 0 ? '' : rounded(all.reduce((total, score) => total + score, 0) / all.length);
    };
    const again = isOnly ? answersTo(seen, 'again')?.get(id) : undefined;
    const told = sheetScores(own, 'again')[0];
    const share = again ? again.k / again.n : told;
    return [
      [
        id,
        String(own.reduce((total, { plants }) => total + plants, 0)),
        sum('grams'),
        sum('fruits'),
        days.length === 0 ? '' : isoDate(Math.round(Math.min(...days)) as Day),
        ...traits.map(({ key }) => scores(key)),
        share === undefined ? '' : share >= 0.5 ? 'yes' : 'no',
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
