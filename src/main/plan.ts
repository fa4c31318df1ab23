import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { seasonSeen } from '../analyse/seen.ts';
import { adviseClass } from '../decide/adviseClass.ts';
import { adviseNextSeason } from '../decide/nextSeason.ts';
import type { NextSeason } from '../decide/nextSeason.ts';
import type { PlanSource } from '../decide/plan/asked.ts';
import { makePlan } from '../decide/plan/plan.ts';
import { ownGarden } from '../present/withheld.ts';
import { isOfClub } from '../terms/gardens.ts';
import { writingOf } from '../present/numbers.ts';
import { planDocument } from '../present/plan/document.ts';
import type { PlanWords } from '../present/plan/sentences.ts';
import { seasonTables, shoppingTable, tastingKey } from '../present/plan/tables.ts';
import { checkRecords, checkTrial } from '../records/trial.ts';
import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import type { Trial } from '../terms/trial.ts';
import { planPage } from '../../site/plan/index.tsx';
import { sheetsPage } from '../../site/plan/sheets.tsx';
import { packageRoot } from './packageRoot.ts';
import { readFolder } from './readFolder.ts';
import { takePlan } from './takePlan.ts';
import { say, tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

export interface PlanChoices {
  readonly out: string | null;
  readonly season: number | null;
  /** Puts the tables into the trial's own folder. */
  readonly take: boolean;
}

/** Files of a plan beside the season's tables. */
const OWN = ['index.html', 'sheets.html', 'plan.json', 'shopping.csv', 'tasting-key.csv', 'keeprow.css', 'plan.css'];
const TABLES = /^(?:plantings|ratings|germination|harvests|observations|measurements)\.csv$/;

/** What of a folder no plan wrote. */
function strangers(out: string): readonly string[] {
  if (!existsSync(out)) return [];
  return readdirSync(out, { recursive: true, encoding: 'utf8' }).filter((path) => {
    const [first = '', second, ...deeper] = path.split(/[/\\]/);
    if (second === undefined) return !OWN.includes(first) && !/^\d{4}$/.test(first);
    return deeper.length > 0 || !/^\d{4}$/.test(first) || !TABLES.test(second);
  });
}

/** The season that is planned: as asked, as set, else the year after the last one recorded. */
function yearOf({ settings, seasons, ongoing, planned }: Trial, asked: number | null): number | null {
  const last = ongoing?.year ?? seasons.at(-1)?.year ?? null;
  return asked ?? settings.plan.season ?? (last === null ? (planned?.year ?? null) : last + 1);
}

/** Advice for the trial's own garden in place of the club's. */
function inOwnGarden({ settings }: Trial, next: NextSeason): NextSeason {
  const { verdicts, gardens } = settings;
  const classes = next.classes.map((outcome) => ({
    ...outcome,
    advice: outcome.advice && adviseClass(outcome.case, next.forecasts, verdicts, true, gardens.own),
  }));
  return { ...next, classes };
}

/** What a plan of a season is made from; a season that has begun is shown as it stands. */
function sourceOf(trial: Trial, year: number): PlanSource {
  const begun = [...trial.seasons, ...(trial.ongoing ? [trial.ongoing] : [])].find((own) => own.year === year) ?? null;
  const before = trial.seasons.filter((own) => own.year < year);
  const planned = begun ?? trial.planned;
  const whole: Trial = { ...trial, seasons: before, planned };
  const all = before.map((season) => seasonSeen(trial, season));
  const next = all.length === 0 ? null : adviseNextSeason(whole, all);
  if (!before.some(isOfClub)) return { trial: whole, seasons: all, next, year, hasBegun: begun !== null };
  // What is planned is the trial's own garden: its beds and plants, its verdicts from what the club knows.
  const here = before.map((season) => ownGarden(season, trial)).filter(({ plantings }) => plantings.length > 0);
  const own: Trial = { ...whole, seasons: here };
  return {
    trial: own,
    seasons: here.map((season) => seasonSeen(own, season)),
    next: next && inOwnGarden(trial, next),
    year,
    hasBegun: begun !== null,
  };
}

/** Errors that only keep a plan from being made, and those of the records. */
function isOfPlan(problem: Problem, year: number): boolean {
  const file = problem.places[0]?.file ?? '';
  return file.startsWith(`data/${year}/`) || file.startsWith('data/places.csv');
}

/** Writes a plan's files, and takes away those of one before. */
function writePlan(out: string, words: PlanWords, withTables: boolean): void {
  const { plan, trial } = words;
  const files = new Map<string, string | Uint8Array>([
    ['index.html', planPage(words)],
    ['sheets.html', sheetsPage(words)],
    ['plan.json', planDocument(words)],
    ['keeprow.css', readFileSync(join(packageRoot(), 'site/assets/keeprow.css'))],
    ['plan.css', readFileSync(join(packageRoot(), 'site/plan/plan.css'))],
  ]);
  if (withTables) {
    files.set('shopping.csv', shoppingTable(plan, trial));
    if (plan.tasting) files.set('tasting-key.csv', tastingKey(plan));
    for (const [name, text] of seasonTables(plan, trial)) files.set(`${plan.year}/${name}`, text);
  }
  if (existsSync(out)) for (const name of readdirSync(out)) rmSync(join(out, name), { recursive: true });
  for (const [path, bytes] of files) {
    mkdirSync(dirname(join(out, path)), { recursive: true });
    writeFileSync(join(out, path), bytes);
  }
}

/** `keeprow plan`: next season's trial with its sheets and tables. Returns the exit code. */
export async function runPlan(folder: string, choices: PlanChoices, telling: Telling): Promise<number> {
  const out = choices.out ?? join(folder, '_plan');
  const strange = strangers(out);
  if (strange.length > 0) {
    say(
      `${out} holds files that no plan wrote (${strange.slice(0, 3).join(', ')}); move them or choose another folder with --out`,
    );
    return 2;
  }
  const found = await readFolder(folder);
  const records = checkRecords(found);
  // Without a season there is still something to plan.
  const checked = checkTrial(found, records).problems.filter(({ code }) => code !== 'no-seasons');
  const year = records.trial ? yearOf(records.trial, choices.season) : null;
  if (!records.trial || year === null) {
    const code = tellProblems(checked, telling);
    if (code === 0) say('no season is recorded or set: say which with --season YEAR');
    return code === 0 ? 2 : code;
  }
  const isError = (own: Problem): boolean => severityOf(own) === 'error';
  if (checked.some((own) => isError(own) && !isOfPlan(own, year))) return tellProblems(checked, telling);
  // A bed that cannot be read leaves too few places: what follows from that is not told.
  const isBed = (own: Problem): boolean => (own.places[0]?.file ?? '').startsWith('data/places.csv');
  if (checked.some((own) => isError(own) && isBed(own))) return tellProblems(checked, telling);
  const source = sourceOf(records.trial, year);
  const { plan, problems } = makePlan(source);
  const code = tellProblems([...checked, ...problems], telling);
  if (code !== 0 || !plan) return code === 0 ? 1 : code;
  const writing = writingOf(records.trial.settings);
  writePlan(out, { plan, trial: source.trial, seasons: source.seasons, writing }, !source.hasBegun);
  if (!telling.quiet && !telling.json) process.stdout.write(`The plan for ${year} is in ${out}\n`);
  if (!choices.take) return 0;
  if (source.hasBegun) {
    say(`${year} has begun: its sheets are printed, its tables are left`);
    return 0;
  }
  return takePlan(folder, plan, source.trial, telling);
}
