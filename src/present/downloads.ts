import { pickingsOf } from '../terms/record.ts';
import { addresses } from '../terms/addresses.ts';
import { ripenings } from '../analyse/traitsSeen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { isoDate } from '../terms/day.ts';
import type { Season, Trial } from '../terms/trial.ts';
import type { PublishedLines } from './linesDocument.ts';
import { named } from './downloadTable.ts';
import type { Cell, DataWords, Download } from './downloadTable.ts';
import { linesDownloads } from './linesDownloads.ts';
import { remarksOf } from './pages/remarks.ts';
import { publishedTasters } from './people.ts';
import { seasonTraits } from './results.ts';
import { traitFacts } from '../terms/traits.ts';
import type { Figure } from './publication/schema.ts';
import { wordsFor } from './words/catalogue.ts';
import { publishedSeason, withheldGardens } from './withheld.ts';

/** Figures as rows of a table: the days to first ripe fruit are two, the median seen and the model's. */
function tabled(traits: ReturnType<typeof seasonTraits>): readonly (readonly [string, Figure])[] {
  return Object.entries(traits).flatMap(([trait, figure]) => {
    const { model, unit } = figure;
    return model ? [[trait, figure] as const, [trait, { unit, ...model }] as const] : [[trait, figure] as const];
  });
}

function figuresDownload(trial: Trial, seasons: readonly SeasonSeen[], say: DataWords): Download {
  const rows = seasons.flatMap((seen) =>
    seen.varieties.flatMap((own) =>
      tabled(seasonTraits(seen, own, trial)).map(([trait, figure]): readonly Cell[] => [
        seen.season.year,
        own.variety.id,
        own.variety.name,
        own.variety.classId,
        own.status,
        trait,
        figure.unit,
        figure.tasters ?? figure.n,
        figure.estimate ?? figure.median ?? null,
        figure.low,
        figure.high,
        figure.method,
      ]),
    ),
  );
  return {
    path: 'figures.csv',
    title: say.figures,
    columns: named(
      ['season', 'variety', 'name', 'class', 'status', 'trait', 'unit', 'n', 'estimate', 'low', 'high', 'method'],
      say,
    ),
    rows,
  };
}

function plantingsDownload(seen: SeasonSeen, say: DataWords): Download {
  const ripe = new Map(ripenings(seen).map((own) => [own.unit.id, own.ripe]));
  return {
    path: addresses.table(seen.season.key, 'plantings'),
    title: say.plantings(String(seen.season.year)),
    columns: named(
      [
        'planting',
        'variety',
        'plants',
        'bed',
        'block',
        'transplanted',
        'removed',
        'cause',
        'yield_g',
        'fruits_per_plant',
        'first_ripe',
      ],
      say,
    ),
    rows: seen.season.yieldUnits.map((unit) => {
      const own = seen.yields.get(unit.id);
      const each = (value: number | null | undefined): number | null =>
        value === null || value === undefined ? null : value / unit.plants;
      const date = (day: typeof unit.removed): string | null => (day === null ? null : isoDate(day));
      return [
        unit.id,
        unit.variety,
        unit.plants,
        unit.bed,
        unit.block,
        date(unit.transplanted),
        date(unit.removed),
        unit.cause,
        each(own?.grams),
        each(own?.fruits),
        ripe.get(unit.id) ?? null,
      ];
    }),
  };
}

function harvestsDownload({ key, year, yieldUnits }: Season, say: DataWords): Download | null {
  const rows = yieldUnits.flatMap((unit) =>
    pickingsOf(unit).flatMap(({ day, ripe, green, cullFruits, hasCulls }) =>
      (
        [
          ['ripe', ripe],
          ['green', green],
        ] as const
      )
        .filter(([stage, picked]) => picked.fruits > 0 || picked.grams > 0 || (stage === 'ripe' && hasCulls))
        .map(([stage, picked]): readonly Cell[] => [
          day === null ? null : isoDate(day),
          unit.id,
          // What was not counted, or not weighed, is no 0.
          picked.fruits === 0 && picked.gramsUncounted > 0 ? null : picked.fruits,
          picked.grams === 0 && picked.fruitsUnweighed > 0 ? null : picked.grams,
          stage,
          stage === 'ripe' && hasCulls ? cullFruits : null,
        ]),
    ),
  );
  if (rows.length === 0) return null;
  return {
    path: addresses.table(key, 'harvests'),
    title: say.harvests(String(year)),
    columns: named(['date', 'planting', 'fruits', 'weight_g', 'stage', 'unusable_fruits'], say),
    rows,
  };
}

function ratingsDownload(
  { key, year, scores }: Season,
  tasters: ReadonlyMap<string, string>,
  say: DataWords,
): Download | null {
  if (scores.length === 0) return null;
  const yesNo = (value: boolean | null): string | null => (value === null ? null : value ? 'yes' : 'no');
  return {
    path: addresses.table(key, 'ratings'),
    title: say.ratings(String(year)),
    columns: named(['date', 'taster', 'variety', 'planting', 'trait', 'score', 'blind'], say),
    rows: scores.map(({ day, taster, variety, planting, trait, score, isBlind }): readonly Cell[] => [
      day === null ? null : isoDate(day),
      tasters.get(taster) ?? null,
      variety,
      planting,
      trait,
      score,
      yesNo(isBlind),
    ]),
  };
}

function measurementsDownload({ key, year, measurements }: Season, trial: Trial, say: DataWords) {
  if (measurements.length === 0) return null;
  return {
    path: addresses.table(key, 'measurements'),
    title: say.measurements(String(year)),
    columns: named(['date', 'variety', 'planting', 'trait', 'value', 'unit'], say),
    rows: measurements.map(({ day, variety, planting, trait, value }): readonly Cell[] => [
      day === null ? null : isoDate(day),
      variety,
      planting,
      trait,
      value,
      traitFacts(trait, trial.settings.traits).unit,
    ]),
  };
}

function remarksDownload(season: Season, trial: Trial, say: DataWords): Download | null {
  const remarks = remarksOf(season, trial);
  if (remarks.length === 0) return null;
  return {
    path: addresses.table(season.key, 'notes'),
    title: say.remarks(String(season.year)),
    columns: named(['date', 'variety', 'planting', 'note'], say),
    rows: remarks.map(({ day, variety, planting, text }): readonly Cell[] => [
      day === null ? null : isoDate(day),
      variety,
      planting,
      text,
    ]),
  };
}

/** What was recorded of a season, row by row. */
function recordDownloads(trial: Trial, season: Season, say: DataWords): readonly Download[] {
  return [
    harvestsDownload(season, say),
    ratingsDownload(season, publishedTasters(trial), say),
    measurementsDownload(season, trial, say),
    remarksDownload(season, trial, say),
  ].filter((download) => download !== null);
}

/** Tables of the data page; of a season that is not over, what was recorded. */
export function downloadsOf(trial: Trial, seasons: readonly SeasonSeen[], lines: PublishedLines): readonly Download[] {
  const { data: say } = wordsFor(trial.settings.language);
  const withheld = withheldGardens(trial);
  return [
    figuresDownload(trial, seasons, say),
    ...seasons.flatMap((own) => {
      const seen = { ...own, season: publishedSeason(own.season, withheld) };
      return [plantingsDownload(seen, say), ...recordDownloads(trial, seen.season, say)];
    }),
    ...(trial.ongoing ? recordDownloads(trial, publishedSeason(trial.ongoing, withheld), say) : []),
    ...linesDownloads(lines, say),
  ];
}
