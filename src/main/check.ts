import { checkTrial } from '../check/trial.ts';
import { readFolder } from './readFolder.ts';
import { tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

/** `keeprow check`: reads everything, prints every problem, writes nothing. Returns the exit code. */
export function runCheck(folder: string, telling: Telling): number {
  return tellProblems(checkTrial(readFolder(folder)).problems, telling);
}
