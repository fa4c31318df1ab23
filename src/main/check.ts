import { checkTrial } from '../check/trial.ts';
import { inOrder, problemsDocument, problemText } from '../present/problems.ts';
import { severityOf } from '../terms/problem.ts';
import { readFolder } from './readFolder.ts';

export interface CheckOptions {
  readonly folder: string;
  readonly json: boolean;
  readonly strict: boolean;
  readonly quiet: boolean;
}

/** `keeprow check`: reads everything, prints every problem, writes nothing. Returns the exit code. */
export function runCheck({ folder, json, strict, quiet }: CheckOptions): number {
  const { problems } = checkTrial(readFolder(folder));
  const counts = { error: 0, warning: 0, note: 0 };
  for (const problem of problems) counts[severityOf(problem)]++;
  if (json) process.stdout.write(problemsDocument(problems));
  else if (!quiet) {
    for (const problem of inOrder(problems)) process.stdout.write(`${problemText(problem)}\n\n`);
    process.stdout.write(`${counts.error} errors, ${counts.warning} warnings, ${counts.note} notes\n`);
  }
  return counts.error > 0 || (strict && counts.warning > 0) ? 1 : 0;
}
