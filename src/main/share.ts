import { seasonSeen } from '../analyse/seen.ts';
import { memberSheet } from '../present/memberSheet.ts';
import { checkTrial } from '../records/trial.ts';
import { foldName } from '../terms/names.ts';
import { everySeason } from '../terms/trial.ts';
import { readFolder } from './readFolder.ts';
import { say, tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { writeWhole } from './writeWhole.ts';

export interface SharingChoices {
  readonly garden: string | null;
  readonly season: number | null;
  readonly out: string | null;
}

/** `keeprow share`: shows the sheet that would be sent; writes it where `--out` says. Returns the exit code. */
export async function runShare(
  folder: string,
  { garden, season, out }: SharingChoices,
  telling: Telling,
): Promise<number> {
  const { trial, problems } = checkTrial(await readFolder(folder));
  if (!trial) return tellProblems(problems, telling);
  const all = everySeason(trial);
  const codes = [...new Set(all.flatMap(({ gardens }) => gardens))];
  const asked = garden ?? trial.settings.gardens.own;
  const own = codes.find((code) => foldName(code) === foldName(asked)) ?? asked;
  const found =
    season === null ? all.findLast(({ gardens }) => gardens.includes(own)) : all.find(({ year }) => year === season);
  const sheet = found && memberSheet(trial, seasonSeen(trial, found), own);
  if (!found || sheet === null || sheet === undefined) {
    const known = codes.toSorted().join(', ');
    say(
      `no records of garden ${own}${season === null ? '' : ` in ${season}`}: there are ${known === '' ? 'none' : `${known}; say which with --garden CODE`}`,
    );
    return 2;
  }
  if (!telling.quiet) process.stdout.write(sheet);
  if (out === null) {
    say(`this is all that would be sent of ${found.year}; --out FILE writes it`);
    return 0;
  }
  writeWhole(out, Buffer.from(sheet));
  say(`written to ${out}; its name is to be the garden’s code in the club`);
  return 0;
}
