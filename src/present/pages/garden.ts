import { gardenRows } from '../../analyse/expected/gardenCells.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { scoresByTrait } from '../../analyse/scores.ts';
import { plantModel, ratingModels, ripeningModel, ripenings } from '../../analyse/traitsSeen.ts';
import type { GardenAdvice, GardenClassAdvice } from '../../decide/adviseGarden.ts';
import { nth } from '../../numerics/element.ts';
import { grouped } from '../../terms/groups.ts';
import type { Settings } from '../../terms/settings.ts';
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

/** A trait beside the yield: what the garden saw of a variety, and what the club did; null where one of them did not. */
interface OtherTrait {
  readonly trait: string;
  readonly decimals: number;
  readonly here: (variety: string) => number | null;
  readonly club: (variety: string) => number | null;
}

/** First ripe fruit and ratings, as far as the garden recorded them. */
function otherTraits(seen: SeasonSeen, garden: string, settings: Settings): readonly OtherTrait[] {
  const ripening = ripeningModel(seen);
  const days = new Map(
    ripenings(seen).flatMap(({ unit, ripe }) =>
      unit.garden === garden && ripe !== null ? [[unit.variety as string, ripe] as const] : [],
    ),
  );
  const scores = scoresByTrait(seen.season, settings);
  return [
    {
      trait: 'first_ripe',
      decimals: 0,
      here: (id) => days.get(id) ?? null,
      club: (id) => ripening?.estimates.get(id)?.estimate ?? null,
    },
    ...ratingModels(seen).map(([key, model]): OtherTrait => {
      const own = grouped(
        (scores.get(model.trait) ?? []).filter(({ taster }) => taster === garden),
        ({ variety }) => variety,
      );
      return {
        trait: key,
        decimals: 1,
        here(id) {
          const given = own.get(id) ?? [];
          return given.length === 0 ? null : given.reduce((sum, { score }) => sum + score, 0) / given.length;
        },
        club: (id) => model.estimates.get(id)?.estimate ?? null,
      };
    }),
  ];
}

/** What the garden saw beside the yield; null where it recorded nothing else of the class. */
function otherTable(
  own: GardenClassAdvice,
  garden: string,
  { trial, writing, seen }: Pick<AdviceSource, 'trial' | 'writing'> & { readonly seen: SeasonSeen },
): TableWords | null {
  const { garden: say } = writing.words.club;
  const name = nameLookup(trial.varieties);
  const ids = own.varieties.map(({ variety }) => variety);
  const traits = otherTraits(seen, garden, trial.settings).filter(({ here }) => ids.some((id) => here(id) !== null));
  if (traits.length === 0) return null;
  const cell = (value: number | null, decimals: number): string =>
    value === null ? say.none : writing.number(value, decimals);
  return {
    caption: say.others,
    head: [
      writing.words.tables.variety,
      ...traits.flatMap(({ trait }) => say.hereAndClub(writing.words.capital(writing.trait(trait)))),
    ],
    rows: ids
      .filter((id) => traits.some(({ here }) => here(id) !== null))
      .map((id) => [
        name(id),
        ...traits.flatMap(({ here, club, decimals }) => [
          cell(here(id), decimals),
          cell(club(id), Math.max(1, decimals)),
        ]),
      ]),
  };
}

/** A garden's page: its classes, each with its table. */
export interface GardenWords {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly classes: readonly {
    readonly name: string;
    readonly note: string | null;
    readonly table: TableWords;
    /** What else the garden recorded; null without any. */
    readonly others: TableWords | null;
  }[];
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
      others: otherTable(own, garden, { trial, writing, seen }),
    })),
  };
}
