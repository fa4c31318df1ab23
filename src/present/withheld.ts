import { isOfClub } from '../terms/gardens.ts';
import { foldName } from '../terms/names.ts';
import type { Problem } from '../terms/problem.ts';
import type { Place } from '../terms/place.ts';
import { everySeason } from '../terms/trial.ts';
import type { Planting, Season, Trial } from '../terms/trial.ts';

// What of a club's records is not published: a garden agrees to it, or nothing of it alone is shown.

/** Codes of the gardens of which nothing but sums over gardens is published; the trial's own is, unless it says no. */
export function withheldGardens(
  trial: Pick<Trial, 'seasons' | 'ongoing' | 'settings' | 'gardens'>,
): ReadonlySet<string> {
  const { own } = trial.settings.gardens;
  const named = [
    ...trial.gardens.keys(),
    ...everySeason(trial).flatMap(({ gardens, sent, answers }) => [
      ...gardens,
      ...[...sent, ...answers].map(({ garden }) => garden),
    ]),
  ];
  return new Set(
    named.filter((code) => {
      const isPublished = trial.gardens.get(code)?.isPublished ?? null;
      return code === own ? isPublished === false : isPublished !== true;
    }),
  );
}

const published = new WeakMap<Season, { readonly key: string; readonly made: Season }>();

/** A season with the rows of those gardens that are published; sums over gardens are made before. */
export function publishedSeason(season: Season, withheld: ReadonlySet<string>): Season {
  if (withheld.size === 0) return season;
  const key = [...withheld].join(',');
  const known = published.get(season);
  if (known?.key === key) return known.made;
  const made = withoutGardens(season, withheld);
  published.set(season, { key, made });
  return made;
}

function withoutGardens(season: Season, withheld: ReadonlySet<string>): Season {
  const isShown = ({ garden }: Pick<Planting, 'garden'>): boolean => !withheld.has(garden);
  const shown = new Set<string>(
    [...season.plantings, ...season.yieldUnits, ...season.ripeningUnits].filter(isShown).map(({ id }) => id),
  );
  const isOfShown = ({ planting }: { readonly planting: string | null }): boolean =>
    planting === null || shown.has(planting);
  return {
    ...season,
    plantings: season.plantings.filter(isShown),
    yieldUnits: season.yieldUnits.filter(isShown),
    ripeningUnits: season.ripeningUnits.filter(isShown),
    scores: season.scores.filter((score) => isOfShown(score) && !withheld.has(score.taster)),
    measurements: season.measurements.filter(isOfShown),
    remarks: season.remarks.filter(isShown),
  };
}

const ownParts = new WeakMap<Season, { readonly trial: Trial; readonly made: Season }>();

/** The trial's own garden alone, where several have records. */
export function ownGarden(season: Season, { settings }: Pick<Trial, 'settings'>): Season {
  if (!isOfClub(season)) return season;
  const { own } = settings.gardens;
  const others = new Set(season.gardens.filter((code) => code !== own));
  return { ...withoutGardens(season, others), gardens: season.gardens.filter((code) => code === own) };
}

/** The same as it is published: nothing of it where it is withheld. */
export function ownPart(season: Season, trial: Trial): Season {
  if (!isOfClub(season)) return season;
  const known = ownParts.get(season);
  if (known?.trial === trial) return known.made;
  const made = withoutGardens(ownGarden(season, trial), withheldGardens(trial));
  ownParts.set(season, { trial, made });
  return made;
}

/** Problems that are the secretary's alone: which garden did what. */
const OF_GARDENS = /^(?:garden|gardens|sheet|sheets|answer|grown)-/;

/** A code as it may be written in a file's name. */
const isWithheld = (text: string, withheld: ReadonlySet<string>): boolean =>
  withheld.has(text) || [...withheld].some((code) => foldName(code) === foldName(text));

/** A text without the codes of withheld gardens, as they stand before a planting. */
const withoutCodes = (text: string, withheld: ReadonlySet<string>): string =>
  text.replace(/(^|[\s,;(])([^\s,;(/]+)\/(?=\S)/g, (whole, before: string, code: string) =>
    isWithheld(code, withheld) ? before : whole,
  );

/** A place without the name of a withheld garden's file. */
function placeOf(place: Place, withheld: ReadonlySet<string>): Place {
  const [, folder, code] = /^(data\/\d{4}\/gardens\/)([^/.]+)/.exec(place.file) ?? [];
  if (folder === undefined || code === undefined || !isWithheld(code, withheld)) return place;
  return { file: folder, line: null, column: null };
}

/** Problems as everyone may read them: of a withheld garden neither code nor file. */
export function problemsWithoutGardens(
  problems: readonly Problem[],
  withheld: ReadonlySet<string>,
): readonly Problem[] {
  if (withheld.size === 0) return problems;
  return problems
    .filter(({ code }) => !OF_GARDENS.test(code))
    .map((problem) => ({
      ...problem,
      places: problem.places.map((place) => placeOf(place, withheld)),
      found: withoutCodes(problem.found, withheld),
      facts: Object.fromEntries(
        Object.entries(problem.facts).map(([key, text]) => [key, withoutCodes(text, withheld)]),
      ),
    }));
}
