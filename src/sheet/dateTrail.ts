import type { ProblemLog } from '../terms/problem.ts';

/** How far from both neighbours a date is doubtful, and how close those must be [d]: common practice, no source. */
const FAR = 30;
const CLOSE = 21;
const FEWEST_VISITS = 5;

/** The dates of a table as its rows go by; rows of one day in a row are one visit. */
export interface DateTrail {
  visits: number;
  /** How often a visit is before the one above it. */
  falls: number;
  /** The last two visits, and the first line of the last. */
  before: number;
  last: number;
  lastLine: number;
  /** Visits far from those beside them, which are close to each other. */
  readonly lone: { readonly line: number; readonly days: number }[];
}

export function newTrail(): DateTrail {
  return { visits: 0, falls: 0, before: NaN, last: NaN, lastLine: 0, lone: [] };
}

/** Takes the date of the next row. */
export function follow(trail: DateTrail, day: number, line: number): void {
  const { before, last } = trail;
  if (day === last) return;
  trail.visits++;
  if (day < last) trail.falls++;
  if (day >= before && day - before <= CLOSE) {
    const off = last < before ? before - last : last - day;
    if (off > FAR) trail.lone.push({ line: trail.lastLine, days: off });
  }
  trail.before = last;
  trail.last = day;
  trail.lastLine = line;
}

/** Warns of a date far from those of the rows beside it, in a table that goes by date. */
export function reportLoneDates({ visits, falls, lone }: DateTrail, file: string, log: ProblemLog): void {
  // Each lone date makes one fall; a table by planting or by variety falls far more often.
  if (visits < FEWEST_VISITS || falls > Math.max(1, visits / 20)) return;
  for (const { line, days } of lone)
    log.add('date-unlike-neighbours', { file, line, column: 1 }, '', { days: String(days) });
}
