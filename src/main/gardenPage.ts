import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { adviseGarden } from '../decide/adviseGarden.ts';
import { withheldGardens } from '../present/withheld.ts';
import { checkTrial } from '../records/trial.ts';
import { gardenPage } from '../../site/pages/club.tsx';
import { packageRoot } from './packageRoot.ts';
import { readFolder } from './readFolder.ts';
import { say, tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { memory, workOut } from './worked.ts';
import { writeWhole } from './writeWhole.ts';

/** A page as one file that needs nothing beside it, to be sent to a member. */
function asOneFile(html: string): string {
  const style = readFileSync(join(packageRoot(), 'site/assets/keeprow.css'), 'utf8');
  return html
    .replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')
    .replace(/<link rel="(?:icon|canonical|alternate)"[^>]*>/g, '')
    .replace(/<meta property="og:[^>]*>/g, '')
    .replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${style}</style>`)
    .replace(/<script [^>]*><\/script>/g, '')
    .replace(/<a class="club" href="[^"]*">([^<]*)<\/a>/, '<b class="club">$1</b>')
    .replace(/<button[^>]*id="unit-switch"[^>]*><\/button>/, '');
}

/** `keeprow build --garden G`: one member's page, a file by itself. Returns the exit code. */
export async function runGardenPage(
  folder: string,
  garden: string,
  out: string | undefined,
  telling: Telling,
): Promise<number> {
  const { trial, problems } = checkTrial(await readFolder(folder));
  const code = tellProblems(problems, telling);
  if (!trial || code !== 0) return code;
  const { seasons, advice, lines } = workOut(trial);
  const known = [...new Set(trial.seasons.flatMap(({ gardens }) => gardens))].toSorted();
  if (!advice || known.length < 2 || !known.includes(garden)) {
    say(
      known.length < 2
        ? 'one garden alone has records: its page is the site'
        : `no garden ${garden}: there are ${known.join(', ')}`,
    );
    return 2;
  }
  const own = adviseGarden(trial, advice.next, garden, memory.recall);
  const content = {
    trial,
    seasons,
    writing: advice.writing,
    next: null,
    ongoing: null,
    ownPages: [],
    gardens: new Map(),
    lines,
  };
  const isPrivate = withheldGardens(trial).has(garden);
  const { html } = gardenPage(content, advice, own, isPrivate);
  const into = out ?? join(folder, '_gardens');
  mkdirSync(into, { recursive: true });
  const path = join(into, `${garden}.html`);
  writeWhole(path, Buffer.from(asOneFile(html)));
  if (!telling.quiet && !telling.json) process.stdout.write(`The page of ${garden} is in ${path}\n`);
  return 0;
}
