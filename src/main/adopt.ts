import { recordedTraits } from '../terms/traits.ts';
import { LANGUAGES } from '../terms/languages.ts';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { proposeTable } from '../records/adopt/propose.ts';
import type { AdoptedTrait } from '../records/adopt/columnCells.ts';
import type { Proposal } from '../records/adopt/propose.ts';
import { SEASON_TABLES } from '../records/seasonDrafts.ts';
import { checkTrial } from '../records/trial.ts';
import { adoptionText, asked } from '../present/adoption.ts';
import type { SourceFile } from '../read/decode.ts';
import { foldName } from '../terms/names.ts';
import type { DateOrder } from '../terms/settings.ts';
import { writeAdopted } from './adoptWrite.ts';
import { readFolder } from './readFolder.ts';
import { say } from './tellProblems.ts';
import { openWorkbooks } from './workbooks.ts';
import { nth } from '../numerics/element.ts';

export interface AdoptChoices {
  readonly into: string | null;
  readonly season: number | null;
  readonly table: string | null;
  readonly order: DateOrder | null;
  readonly sheet: string | null;
  readonly columns: readonly string[];
  /** What bare numbers under days are: a unit of weight, or fruits. */
  readonly picked: string | null;
  readonly isQuiet: boolean;
  readonly isJson: boolean;
}

/** Tables that a sheet can become. */
export const TABLES: readonly string[] = ['varieties', ...SEASON_TABLES.map((name) => name.replace('.csv', ''))];

/** True for a file; what is none is told. */
function isThere(file: string): boolean {
  if (existsSync(file) && statSync(file).isFile()) return true;
  say(`there is no file ${file}`);
  return false;
}

/** `Title=weight_g`, `Title=-`, `Title=rating flavour 1 9`, `Title=measure fruit_length cm`; null if it is none. */
function saidFrom(text: string): readonly [string, string | AdoptedTrait | null] | null {
  const parts = /^(.+)=\s*(\S.*)$/s.exec(text);
  if (!parts) return null;
  const [title, meaning] = [nth(parts, 1).trim(), nth(parts, 2).trim()];
  if (meaning === '-') return [title, null];
  const rating = /^rating\s+([a-z]\w*)\s+(\d+)\s*(?:-|to|\s)\s*(\d+)(?:\s+(higher|lower|none))?$/i.exec(meaning);
  if (rating) {
    const better = rating[4]?.toLowerCase() as AdoptedTrait['better'];
    const scale = { from: Number(rating[2]), to: Number(rating[3]), ...(better ? { better } : {}) };
    return [title, { kind: 'rating', key: nth(rating, 1), ...scale }];
  }
  const measure = /^measure\s+([a-z]\w*)\s+(\S+)$/i.exec(meaning);
  if (measure) return [title, { kind: 'measure', key: nth(measure, 1), unit: nth(measure, 2) }];
  return /^[a-z]\w*$/i.test(meaning) ? [title, meaning] : null;
}

/** The sheet of a file that is to be adopted; null where that was told. */
async function sheetOf(file: string, wanted: string | null): Promise<SourceFile | null> {
  const source: SourceFile = { path: file, bytes: readFileSync(file) };
  if (!/\.(xlsx|ods)$/i.test(file)) return source;
  const { sheets, unread } = await openWorkbooks([source]);
  if (unread[0]) {
    say(`${file} cannot be read: ${unread[0].detail}`);
    return null;
  }
  const names = sheets.map(({ path }) => path.slice(file.length + 1));
  const at =
    wanted === null && sheets.length === 1 ? 0 : names.findIndex((name) => foldName(name) === foldName(wanted ?? ''));
  if (at < 0) say(`${file} has the sheets ${names.join(', ')}: name one with --sheet`);
  return sheets[at] ?? null;
}

/** `keeprow adopt FILE`: says what a sheet's columns are, and with --into writes the tables. Returns the exit code. */
export async function runAdopt(file: string, choices: AdoptChoices): Promise<number> {
  if (!isThere(file)) return 2;
  const said = choices.columns.map((text) => [text, saidFrom(text)] as const);
  const unclear = said.find(([, meaning]) => meaning === null);
  if (unclear) {
    say(
      `--column "${unclear[0]}" says nothing: write "Title=weight_g", "Title=rating flavour 1 9", "Title=measure length cm" or "Title=-"`,
    );
    return 2;
  }
  const source = await sheetOf(file, choices.sheet);
  if (!source) return 1;
  const trial = choices.into === null || !existsSync(choices.into) ? null : checkTrial(await readFolder(choices.into));
  const settings = trial?.settings ?? null;
  const traits = (settings ? recordedTraits(settings.traits) : []).map(
    ({ key, kind }) => [key, kind === 'measure' ? ('measure' as const) : ('rating' as const)] as const,
  );
  const proposal = proposeTable(source, {
    said: new Map(said.map(([, meaning]) => meaning!)),
    table: choices.table,
    season: choices.season,
    order: choices.order,
    picked: choices.picked,
    languages: settings ? [settings.language] : LANGUAGES,
    traits: new Map(traits),
  });
  if (choices.isJson) {
    const { table, columns, questions, rows } = proposal;
    process.stdout.write(`${JSON.stringify({ table, rows, columns, questions: questions.map(asked) }, null, 1)}\n`);
  } else if (!choices.isQuiet) process.stdout.write(adoptionText(basename(file), proposal));
  if (proposal.questions.length > 0) return 1;
  if (choices.into !== null)
    return writeAdopted(proposal, choices.into, trial?.varieties ?? [], choices.isQuiet || choices.isJson);
  if (!choices.isQuiet && !choices.isJson) process.stdout.write('\nNothing was written. Write it with: --into DIR\n');
  return 0;
}

/** A sheet as it is proposed without a word of the grower's, for the names in it; null where that was told. */
export async function proposedIn(file: string): Promise<Proposal | null> {
  if (!isThere(file)) return null;
  const source = await sheetOf(file, null);
  const open = { said: new Map(), table: null, season: null, order: null, picked: null, traits: new Map() };
  return source && proposeTable(source, { ...open, languages: LANGUAGES });
}
