import { inOrder, problemsDocument, problemText } from '../present/problems.ts';
import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';

export interface Telling {
  readonly json: boolean;
  readonly strict: boolean;
  readonly quiet: boolean;
  /** Told every problem, whatever is printed. */
  readonly onProblems?: (problems: readonly Problem[]) => void;
}

/** A word of the command itself, beside what it was asked for. */
export const say = (text: string): void => void process.stderr.write(`keeprow: ${text}\n`);

/** Prints problems as asked; returns 1 if they keep a trial from being built, else 0. */
export function tellProblems(problems: readonly Problem[], { json, strict, quiet, onProblems }: Telling): number {
  onProblems?.(problems);
  const counts = { error: 0, warning: 0, note: 0 };
  for (const problem of problems) counts[severityOf(problem)]++;
  if (json) process.stdout.write(problemsDocument(problems));
  else if (!quiet) {
    const inColour = process.stdout.isTTY && !process.env['NO_COLOR'];
    for (const problem of inOrder(problems)) process.stdout.write(`${problemText(problem, inColour)}\n\n`);
    const word = (n: number, name: string): string => `${n} ${name}${n === 1 ? '' : 's'}`;
    process.stdout.write(
      `${word(counts.error, 'error')}, ${word(counts.warning, 'warning')}, ${word(counts.note, 'note')}\n`,
    );
  }
  return counts.error > 0 || (strict && counts.warning > 0) ? 1 : 0;
}

/** Says on a terminal what is being done; wiped away by the next word. Silent elsewhere. */
export function tellProgress(what: string, { quiet, json }: Telling): void {
  if (process.stderr.isTTY && !quiet && !json) process.stderr.write(`\r\u001b[K${what}`);
}
