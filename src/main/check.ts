import { blockProblems } from '../analyse/blocks.ts';
import { crossReports, lineProblems } from '../decide/lines/crossReport.ts';
import { checkTrial } from '../records/trial.ts';
import { readFolder } from './readFolder.ts';
import { tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

/** `keeprow check`: reads everything, prints every problem, writes nothing. Returns the exit code. */
export async function runCheck(folder: string, telling: Telling): Promise<number> {
  const { trial, problems } = checkTrial(await readFolder(folder));
  return tellProblems(
    [...problems, ...(trial ? [...blockProblems(trial), ...lineProblems(trial, crossReports(trial, [], null))] : [])],
    telling,
  );
}
