import { gardenRows } from '../../analyse/expected/gardenCells.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { plantModel } from '../../analyse/traitsSeen.ts';
import type { GardenAdvice, GardenClassAdvice } from '../../decide/adviseGarden.ts';
import { nth } from '../../numerics/element.ts';
import { nameLookup } from '../../terms/trial.ts';
import type { AdviceSource } from '../nextSeason/source.ts';
import type { TableWords } from '../tables.ts';

function gardenTable(
  own: GardenClassAdvice,
  garden: string,
  season: number,
  { trial, writing, seen }: Pick<AdviceSource, 'trial' | 'writing'> & { readonly seen: SeasonSeen },
): TableWords {
  const { garden: say } = writing.words.club;
  const { verdict } = writing.words.nextSeason;
  const name = nameLookup(trial.varieties);
  const middling = plantModel(seen, 'yield')?.estimates;
  return {
    caption: say.caption(String(season), writing.percent(trial.settings.interval)),
    head: say.head(String(season)),
    rows: own.varieties.map(({ variety, here, club, expected }) => {
      const unit = seen.season.yieldUnits.find((one) => one.garden === garden && one.variety === variety);
      const grams = unit ? (seen.yields.get(unit.id)?.grams ?? null) : null;
      const value = grams === null || !unit ? null : grams / unit.plants;
      const other = middling?.get(variety)?.estimate ?? null;
      const limits = expected && {
        estimate: Math.exp(expected.mean),
        low: Math.exp(expected.low),
        high: Math.exp(expected.high),
      };
      return [
        name(variety),
        value === null ? say.none : writing.quantity(value, 'g'),
        other === null ? say.none : writing.quantity(other, 'g'),
        value === null || other === null || other === 0 ? say.none : writing.number(value / other, 2),
        limits ? writing.interval(limits, 'g') : say.none,
        verdict[here.verdict],
        verdict[club.verdict],
      ];
    }),
  };
}

/** A garden's page: its classes, each with its table. */
export interface GardenWords {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly classes: readonly { readonly name: string; readonly note: string | null; readonly table: TableWords }[];
}

/**
 * What a garden's own page says, beside the others.
 *
 * @param isPrivate  true for a page that is not on the site
 */
export function gardenWords(source: AdviceSource, advice: GardenAdvice, isPrivate: boolean): GardenWords {
  const { trial, writing, seasons, next } = source;
  const { garden: say } = writing.words.club;
  const { garden } = advice;
  const seen = seasons.findLast(({ season }) => season.gardens.includes(garden)) ?? nth(seasons, -1);
  const yields = next.forecasts.get('yield')?.gardens ?? null;
  const hasYields = (id: string): boolean =>
    yields?.classes.some((one) => one.classId === id && gardenRows(one, garden) !== null) === true;
  return {
    title: say.title(garden),
    sentences: [
      ...(isPrivate ? [say.private] : []),
      say.intro(garden, String(seen.season.year)),
      advice.classes.length > 0 ? say.caution : say.noClasses,
    ],
    classes: advice.classes.map((own) => ({
      name: trial.settings.classes.get(own.classId)?.name ?? own.classId,
      note: hasYields(own.classId) ? null : say.ratios,
      table: gardenTable(own, garden, advice.season, { trial, writing, seen }),
    })),
  };
}
