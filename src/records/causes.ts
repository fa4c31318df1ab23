import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import type { ProblemCode } from '../terms/problemCodes.ts';

/** What keeps a whole table from being used. */
const TABLE_LOST: ReadonlySet<ProblemCode> = new Set([
  'column-missing',
  'header-twice',
  'unit-unknown',
  'empty-table',
  'not-text',
  'not-utf8',
]);
/** What every record says that names something of a table that was lost. */
const OF_VARIETIES: ReadonlySet<ProblemCode> = new Set([
  'unknown-variety',
  'unknown-planting',
  'planting-of-other-season',
  'check-variety-elsewhere',
]);
/** What is said of a season without plantings: none where it is planned. */
const NO_PLANTINGS: ReadonlySet<ProblemCode> = new Set(['empty-table', 'missing-plantings']);
const OF_PLANTINGS: ReadonlySet<ProblemCode> = new Set(['unknown-planting', 'planting-of-other-season']);

const fileOf = ({ places }: Problem): string => places[0]?.file ?? '';
const seasonOf = (file: string): string => /(?:^|\/)data\/(\d{4})/.exec(file)?.[1] ?? '';

/** True for the table of that name, in a file of its own or as a sheet. */
const isTable = (file: string, name: string): boolean => new RegExp(`(?:^|[/#])${name}(?:\\.csv)?$`, 'i').test(file);

/**
 * Problems without those that only follow from a table that could not be used: where varieties.csv or a season's
 * plantings.csv is lost, every record that names one of its rows would be told too. They come back, if they are real,
 * once the cause is mended.
 */
export function causesOnly(problems: readonly Problem[]): readonly Problem[] {
  const lost = problems.filter((own) => severityOf(own) === 'error' && TABLE_LOST.has(own.code)).map(fileOf);
  const areVarietiesLost = lost.some((file) => isTable(file, 'varieties'));
  const isUnknown = (own: Problem): boolean =>
    own.code === 'unknown-variety' && isTable(fileOf(own), '(?:plantings|totals|season)');
  const seasons = new Set(
    [...lost, ...problems.filter(isUnknown).map(fileOf)]
      .filter((file) => isTable(file, '(?:plantings|totals|season)'))
      .map(seasonOf),
  );
  const isWrong = (season: string): boolean =>
    problems.some(
      (own) => severityOf(own) === 'error' && !NO_PLANTINGS.has(own.code) && seasonOf(fileOf(own)) === season,
    );
  const planned = new Set(
    problems
      .filter(({ code }) => code === 'season-planned')
      .map((own) => seasonOf(fileOf(own)))
      .filter((season) => !isWrong(season)),
  );
  return problems.filter(
    (own) =>
      // Tables of a planned season are headers until it begins.
      !((own.code === 'table-without-rows' || NO_PLANTINGS.has(own.code)) && planned.has(seasonOf(fileOf(own)))) &&
      // A season whose records were refused only looks as if nothing were recorded.
      !(own.code === 'season-planned' && !planned.has(seasonOf(fileOf(own)))) &&
      !(areVarietiesLost && OF_VARIETIES.has(own.code)) &&
      !(OF_PLANTINGS.has(own.code) && seasons.has(seasonOf(fileOf(own)))),
  );
}
