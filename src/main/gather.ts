import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { inOrder, problemText } from '../present/problems.ts';
import { checkRecords } from '../records/trial.ts';
import { foldName } from '../terms/names.ts';
import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { everySeason } from '../terms/trial.ts';
import { readFolder } from './readFolder.ts';
import { say, tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { writeWhole } from './writeWhole.ts';
import { openWorkbooks } from './workbooks.ts';
import { sortFiles } from '../records/folder.ts';
import type { TrialFiles } from '../records/folder.ts';
import type { SourceFile } from '../read/decode.ts';
import { readMemberSheet } from '../records/adopt/memberSheet.ts';
import type { ReadSheet } from '../records/adopt/memberSheet.ts';
import type { Settings } from '../terms/settings.ts';

export interface GatheringChoices {
  readonly into: string;
  readonly season: number | null;
}

const SHEETS = new Set(['.csv', '.txt', '.tsv', '.xlsx', '.ods']);

/** What became of a sheet. */
interface Gathered {
  readonly file: string;
  readonly code: string;
  readonly outcome: 'filed' | 'the same stands there' | 'refused';
  readonly problems: readonly Problem[];
  readonly why: string | null;
  /** Titles of the member's own, with the columns that they were read as. */
  readonly titles: ReadSheet['titles'];
}

const isError = (problem: Problem): boolean => severityOf(problem) === 'error';

/** The trial's own tables of a season, and nothing of its members: what a sheet is laid against. */
const withoutMembers = (found: TrialFiles, year: number): TrialFiles => ({
  ...found,
  gardens: new Map(),
  seasons: new Map([[year, found.seasons.get(year) ?? new Map()]]),
});

const sheetsOf = async (source: SourceFile): Promise<readonly SourceFile[]> =>
  /\.(?:xlsx|ods)$/i.test(source.path) ? (await openWorkbooks([source])).sheets : [source];

/** Those tables with a file's sheets, as if it lay there. */
const withSheets = (bare: TrialFiles, sheets: readonly SourceFile[]): TrialFiles => ({
  ...bare,
  gardens: sortFiles(sheets, [], true).gardens,
});

/** A member's own titles, such as `Sorte`, read as the contract's columns; null where the sheet has those. */
function inOwnWords([sheet, ...more]: readonly SourceFile[], settings: Settings): ReadSheet | null {
  return sheet && more.length === 0 ? readMemberSheet(sheet, settings) : null;
}

const signOf = ({ code, places, found }: Problem): string => JSON.stringify([code, places, found]);

/** What a season is gathered into. */
interface Gathering {
  readonly folder: string;
  readonly year: number;
  readonly settings: Settings;
  readonly bare: TrialFiles;
  /** Problems that stand there before any sheet comes. */
  readonly before: ReadonlySet<string>;
  /** Codes of gardens that have sent something, folded. */
  readonly came: Set<string>;
}

async function gatherOne(file: string, { folder, year, settings, bare, before, came }: Gathering): Promise<Gathered> {
  const kind = extname(file).toLowerCase();
  // A second download of a file is called `g07 (2).csv`.
  const code = basename(file, extname(file)).replace(/ ?\(\d+\)$/, '');
  const refused = (why: string, problems: readonly Problem[] = []): Gathered => ({
    file,
    code,
    outcome: 'refused',
    problems,
    why,
    titles: [],
  });
  if (!SHEETS.has(kind)) return refused('a sheet is a CSV file or a workbook');
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch {
    return refused('the file could not be read');
  }
  const filed = `data/${year}/gardens/${code}`;
  const asSent = `${filed}${kind === '.txt' || kind === '.tsv' ? '.csv' : kind}`;
  const sheets = await sheetsOf({ path: asSent, bytes });
  const read = inOwnWords(sheets, settings);
  if (read) bytes = Buffer.from(read.csv);
  const inside = read ? `${filed}.csv` : asSent;
  const path = join(folder, inside);
  if (existsSync(path) && readFileSync(path).equals(bytes))
    return { file, code, outcome: 'the same stands there', problems: [], why: null, titles: [] };
  if (existsSync(path) || came.has(foldName(code)))
    return refused(
      `another sheet of ${code} stands in data/${year}/gardens: compare the two, and move that one away to take this`,
    );
  const { trial, problems } = checkRecords(withSheets(bare, read ? [{ path: inside, bytes }] : sheets));
  const own = problems
    // Laid against the trial by itself, every sheet is alone.
    .filter((problem) => problem.code !== 'garden-alone' && !before.has(signOf(problem)))
    .filter((problem) => isError(problem) || problem.places.some((place) => place.file.split('#')[0] === inside))
    .map((problem) => ({
      ...problem,
      places: problem.places.map((place) => ({ ...place, file: place.file.replace(inside, file) })),
    }));
  if (own.some(isError)) return refused('it has errors', own);
  const isEmpty =
    trial !== null &&
    !everySeason(trial).some(({ gardens }) => gardens.includes(code)) &&
    trial.planned?.gardens.includes(code) !== true;
  if (isEmpty) return refused('it has no row', own);
  came.add(foldName(code));
  mkdirSync(dirname(path), { recursive: true });
  writeWhole(path, bytes);
  return { file, code, outcome: 'filed', problems: own, why: null, titles: read?.titles ?? [] };
}

/** Gardens that were sent anything, or are listed, of which no record of a season came; null where the trial cannot be read. */
function missing(found: TrialFiles, year: number): readonly string[] | null {
  const { trial, settings } = checkRecords(found);
  if (!trial || !settings) return null;
  const season = [...everySeason(trial), ...(trial.planned ? [trial.planned] : [])].find((own) => own.year === year);
  if (!season) return [];
  const asked = season.sent.length > 0 ? season.sent.map(({ garden }) => garden) : [...trial.gardens.keys()];
  const came = new Set(season.gardens.map(foldName));
  return [...new Set(asked)].filter((code) => !came.has(foldName(code))).toSorted();
}

/** `keeprow gather`: checks members' sheets, puts them into the season, says who is missing. Returns the exit code. */
export async function runGather(
  files: readonly string[],
  { into, season }: GatheringChoices,
  telling: Telling,
): Promise<number> {
  const start = await readFolder(into);
  const year = season ?? Math.max(...start.seasons.keys(), Number.NEGATIVE_INFINITY);
  if (!Number.isFinite(year)) {
    say('no season is recorded yet: say which with --season YEAR');
    return 2;
  }
  const done: Gathered[] = [];
  const bare = withoutMembers(start, year);
  const own = checkRecords(bare);
  if (!own.settings) return tellProblems(own.problems, telling);
  const before = new Set(own.problems.map(signOf));
  const came = new Set([...(start.gardens.get(year)?.keys() ?? [])].map(foldName));
  for (const file of files)
    done.push(await gatherOne(file, { folder: into, year, settings: own.settings, bare, before, came }));
  const silent = missing(await readFolder(into), year) ?? [];
  if (telling.json) {
    const document = {
      format: 'keeprow-gathered/1',
      season: year,
      sheets: done.map(({ file, code, outcome, why }) => ({ file, garden: code, outcome, why })),
      missing: silent,
    };
    process.stdout.write(`${JSON.stringify(document, null, 1)}\n`);
  } else if (!telling.quiet) {
    for (const { file, outcome, problems, why, titles } of done) {
      const words = titles.map(([title, column]) => `${title} = ${column}`).join(', ');
      const read = words === '' ? '' : `, its titles read as ${words}`;
      process.stdout.write(`${file}: ${outcome}${why === null ? '' : `, ${why}`}${read}\n`);
      for (const problem of inOrder(problems)) process.stdout.write(`${problemText(problem)}\n\n`);
    }
    const refused = done.filter(({ outcome }) => outcome === 'refused').map(({ code }) => code);
    const mending = silent.filter((code) => refused.includes(code));
    const never = silent.filter((code) => !refused.includes(code));
    if (mending.length > 0) process.stdout.write(`To be mended for ${year}: ${mending.join(', ')}\n`);
    process.stdout.write(
      never.length === 0 ? `All others have sent ${year}.\n` : `Missing in ${year}: ${never.join(', ')}\n`,
    );
  }
  return done.some(({ outcome }) => outcome === 'refused') ? 1 : 0;
}
