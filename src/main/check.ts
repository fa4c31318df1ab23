import { checkTrial } from '../check/trial.ts';
import { readFolder } from './readFolder.ts';
import { tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

/** `keeprow check`: reads everything, prints every problem, writes nothing. Returns the exit code. */
export async function runCheck(folder: string, telling: Telling): Promise<number> {
  return tellProblems(checkTrial(await readFolder(folder)).problems, telling);
}
