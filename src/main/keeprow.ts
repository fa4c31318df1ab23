#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { HELP } from '../present/help.ts';

const OPTIONS = {
  help: { type: 'boolean' },
  version: { type: 'boolean' },
  json: { type: 'boolean' },
  strict: { type: 'boolean' },
  quiet: { type: 'boolean' },
  out: { type: 'string' },
  pdf: { type: 'boolean' },
  'drop-addresses': { type: 'boolean' },
  port: { type: 'string' },
} as const;

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

async function main(args: readonly string[]): Promise<number> {
  let parsed;
  try {
    parsed = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });
  } catch (fault) {
    return usage(fault instanceof Error ? fault.message.split('.')[0]! : 'wrong usage');
  }
  const { values, positionals } = parsed;
  if (values.version) {
    process.stdout.write(`${version()}\n`);
    return 0;
  }
  if (values.help || positionals.length === 0) {
    process.stdout.write(HELP);
    return values.help ? 0 : 2;
  }
  const [command, folder = '.', ...more] = positionals;
  if (more.length > 0) return usage(`one folder is enough, not also ${more.join(' ')}`);
  const telling = { json: values.json ?? false, strict: values.strict ?? false, quiet: values.quiet ?? false };
  for (const name of ['out', 'pdf', 'drop-addresses'] as const)
    if (values[name] !== undefined && command !== 'build') return usage(`--${name} belongs to build`);
  if (values.port !== undefined && (command !== 'view' || !/^\d{1,5}$/.test(values.port)))
    return usage('--port belongs to view and is a number');
  if (command === 'new') {
    if (positionals.length < 2) return usage('new needs a folder: keeprow new DIR');
    return (await import('./new.ts')).runNew(folder, telling.quiet);
  }
  if (command === 'view') return (await import('./view.ts')).runView(folder, Number(values.port ?? 4690), telling);
  if (command === 'check') return (await import('./check.ts')).runCheck(folder, telling);
  const choices = { withPdf: values.pdf ?? false, mayDrop: values['drop-addresses'] ?? false };
  if (command === 'build') return (await import('./build.ts')).runBuild(folder, values.out, telling, choices);
  return usage(`there is no command ${command}`);
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (fault: unknown) => {
    process.stderr.write(
      `keeprow: a fault of the program: ${fault instanceof Error ? fault.message : String(fault)}\n`,
    );
    process.exitCode = 3;
  },
);
