#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { COMMAND_HELP, COMMANDS, HELP } from '../present/help.ts';
import { nearestName } from '../terms/names.ts';
import { nth } from '../numerics/element.ts';
import type { Telling } from './tellProblems.ts';

const OPTIONS = {
  help: { type: 'boolean' },
  version: { type: 'boolean' },
  json: { type: 'boolean' },
  strict: { type: 'boolean' },
  quiet: { type: 'boolean' },
  out: { type: 'string' },
  pdf: { type: 'boolean' },
  'drop-addresses': { type: 'boolean' },
  'keep-addresses': { type: 'boolean' },
  port: { type: 'string' },
  into: { type: 'string' },
  season: { type: 'string' },
  table: { type: 'string' },
  dates: { type: 'string' },
  sheet: { type: 'string' },
  column: { type: 'string', multiple: true },
  picked: { type: 'string' },
  from: { type: 'string', multiple: true },
  plantings: { type: 'string' },
  take: { type: 'boolean' },
  garden: { type: 'string' },
} as const;

/** Options that belong to one command alone. */
const OWN_OPTIONS = [
  ['build', ['pdf', 'drop-addresses', 'keep-addresses']],
  ['view', ['port']],
  ['adopt', ['table', 'dates', 'sheet', 'column', 'picked']],
  ['plan', ['take']],
  ['totals', ['plantings']],
] as const;

/** Options of two commands. */
const SHARED_OPTIONS: readonly (readonly [name: string, commands: readonly string[]])[] = [
  ['out', ['build', 'plan', 'share']],
  ['into', ['adopt', 'gather', 'totals']],
  ['from', ['new', 'totals']],
  ['season', ['adopt', 'plan', 'share', 'gather']],
  ['garden', ['build', 'share']],
];

function usage(message: string): number {
  process.stderr.write(`keeprow: ${message}\nSee keeprow --help\n`);
  return 2;
}

function version(): string {
  for (const up of ['../../package.json', '../../../package.json']) {
    try {
      const found = JSON.parse(readFileSync(new URL(up, import.meta.url), 'utf8')) as { name: string; version: string };
      if (found.name === 'keeprow') return found.version;
    } catch {
      // not at this height: the sources lie one folder higher than the compiled command
    }
  }
  return 'unknown';
}

type Values = Readonly<
  Partial<Record<'into' | 'season' | 'table' | 'dates' | 'sheet' | 'picked' | 'garden' | 'out' | 'plantings', string>>
> & {
  readonly column?: readonly string[];
  readonly from?: readonly string[];
};

async function adopt(
  positionals: readonly string[],
  values: Values,
  { quiet, json }: { quiet: boolean; json: boolean },
): Promise<number> {
  const { into = null, season, table = null, dates, sheet = null, picked = null, column = [] } = values;
  if (positionals.length < 2) return usage('adopt needs a file: keeprow adopt FILE');
  if (season !== undefined && !/^\d{4}$/.test(season)) return usage('--season is a year, such as 2026');
  if (dates !== undefined && dates !== 'day-first' && dates !== 'month-first')
    return usage('--dates is day-first or month-first');
  if (picked !== null && !/^(?:g|kg|oz|lb|fruits)$/.test(picked)) return usage('--picked is g, kg, oz, lb or fruits');
  const { runAdopt, TABLES } = await import('./adopt.ts');
  if (table !== null && !TABLES.includes(table)) return usage(`--table is one of ${TABLES.join(', ')}`);
  return runAdopt(nth(positionals, 1), {
    into,
    season: season === undefined ? null : Number(season),
    table,
    order: dates ?? null,
    sheet,
    columns: column,
    picked,
    isQuiet: quiet,
    isJson: json,
  });
}

/** What a member sends, and what the secretary does with it. */
async function ofClub(
  command: 'share' | 'gather' | 'totals',
  positionals: readonly string[],
  values: Values,
  season: number | null,
  telling: Telling,
): Promise<number> {
  if (command === 'share') {
    const sharing = { garden: values.garden ?? null, season, out: values.out ?? null };
    return (await import('./share.ts')).runShare(positionals[1] ?? '.', sharing, telling);
  }
  if (command === 'totals') {
    // A shell may have made many files of one: --from a.csv b.csv.
    const from = [...(values.from ?? []), ...positionals.slice(1)];
    if (from.length === 0) return usage('totals needs --from FILE, or a database: --from postgres://…');
    if (values.plantings === undefined) return usage('totals needs --plantings FILE: garden,planting,variety,plants');
    const choices = { from, plantings: values.plantings, into: values.into ?? '.' };
    return (await import('./totals.ts')).runTotals(choices, telling);
  }
  if (positionals.length < 2) return usage('gather needs sheets: keeprow gather FILE …');
  const gathering = { into: values.into ?? '.', season };
  return (await import('./gather.ts')).runGather(positionals.slice(1), gathering, telling);
}

/** Says to which commands an option belongs that was given to another; null where all are this command's. */
function foreignOption(values: Readonly<Record<string, unknown>>, command: string): string | null {
  for (const [owner, names] of OWN_OPTIONS)
    for (const name of names)
      if (values[name] !== undefined && command !== owner) return `--${name} belongs to ${owner}`;
  for (const [name, owners] of SHARED_OPTIONS)
    if (values[name] !== undefined && !owners.includes(command)) return `--${name} belongs to ${owners.join(' and ')}`;
  return null;
}

/** What is wrong with an option, and the nearest that there is. */
function optionFault(fault: unknown): string {
  const message = fault instanceof Error ? nth(fault.message.split('.'), 0) : 'wrong usage';
  const said = /^Unknown option '(--?[^']+)'/.exec(message)?.[1];
  const near = said === undefined ? null : nearestName(said.replace(/^-+/, ''), Object.keys(OPTIONS));
  return near === null ? message : `${message}; did you mean --${near}?`;
}

/** That there is no such command, and the nearest that there is. */
function noCommand(command: string): string {
  const near = nearestName(command, COMMANDS);
  return `there is no command ${command}${near === null ? '' : `; did you mean ${near}?`}`;
}

/** Help of a command, or of all. */
function help(command: string | undefined, isAsked: boolean): number {
  const own = command === undefined ? undefined : COMMAND_HELP[command];
  if (command !== undefined && own === undefined) return usage(noCommand(command));
  process.stdout.write(own ?? HELP);
  return isAsked ? 0 : 2;
}

async function main(args: readonly string[]): Promise<number> {
  let parsed;
  try {
    parsed = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  } catch (fault) {
    return usage(optionFault(fault));
  }
  const { values, positionals } = parsed;
  if (values.version) {
    process.stdout.write(`${version()}\n`);
    return 0;
  }
  const [command, folder = '.', ...more] = positionals;
  if (values.help || command === undefined || command === 'help')
    return help(command === 'help' ? positionals[1] : command, values.help ?? command === 'help');
  if (!COMMANDS.includes(command)) return usage(noCommand(command));
  if (more.length > 0 && command !== 'gather' && command !== 'totals')
    return usage(`one folder is enough, not also ${more.join(' ')}`);
  const telling = { json: values.json ?? false, strict: values.strict ?? false, quiet: values.quiet ?? false };
  const foreign = foreignOption(values, command);
  if (foreign !== null) return usage(foreign);
  if (values.port !== undefined && !(/^\d{1,5}$/.test(values.port) && Number(values.port) <= 65_535))
    return usage('--port is a number from 0 to 65535');
  if (command === 'adopt') return adopt(positionals, values, telling);
  if (command === 'new') {
    if (positionals.length < 2) return usage('new needs a folder: keeprow new DIR');
    return (await import('./new.ts')).runNew(folder, values.from?.[0] ?? null, telling.quiet);
  }
  if (command === 'view') return (await import('./view.ts')).runView(folder, Number(values.port ?? 4690), telling);
  if (values.season !== undefined && !/^\d{4}$/.test(values.season)) return usage('--season is a year, such as 2027');
  const season = values.season === undefined ? null : Number(values.season);
  if (command === 'share' || command === 'gather' || command === 'totals')
    return ofClub(command, positionals, values, season, telling);
  if (command === 'plan') {
    const planning = { out: values.out ?? null, season, take: values.take ?? false };
    return (await import('./plan.ts')).runPlan(folder, planning, telling);
  }
  if (command === 'check') return (await import('./check.ts')).runCheck(folder, telling);
  const choices = {
    withPdf: values.pdf ?? false,
    mayDrop: values['drop-addresses'] ?? false,
    keepsAddresses: values['keep-addresses'] ?? false,
  };
  if (command === 'build' && values.garden !== undefined)
    return (await import('./gardenPage.ts')).runGardenPage(folder, values.garden, values.out, telling);
  if (command === 'build') return (await import('./build.ts')).runBuild(folder, values.out, telling, choices);
  return (await import('./columns.ts')).runColumns(positionals[1] ?? null, telling.json);
}

let isUnsaid = false;
// Whoever reads our output may stop reading (keeprow build | head -1): the work goes on, and its exit code stands.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code === 'EPIPE' || isUnsaid) return;
  isUnsaid = true;
  process.exitCode ||= 3;
  process.stderr.write(`keeprow: the messages could not be written: ${fault.code ?? fault.message}\n`);
});
process.stderr.on('error', () => {});

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code === 0 && isUnsaid ? 3 : code;
  },
  (fault: unknown) => {
    process.stderr.write(
      `keeprow: a fault of the program: ${fault instanceof Error ? fault.message : String(fault)}\n`,
    );
    process.exitCode = 3;
  },
);
