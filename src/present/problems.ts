import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { placeText, sheetPlace } from '../terms/place.ts';
import type { Place } from '../terms/place.ts';
import { problemWords } from './words/problems.ts';

const SHOWN_PLACES = 5;
const LONGEST_FOUND = 120;

/** Text made harmless for a terminal. */
export function harmless(text: string): string {
  return text.replaceAll(/\p{Cc}/gu, ' ');
}

/** Text from a file made harmless for a terminal and short enough to read. */
function shown(found: string): string {
  const safe = harmless(found);
  return safe.length > LONGEST_FOUND ? `${safe.slice(0, LONGEST_FOUND)}…` : safe;
}

/** Marks of a terminal around a severity, by its weight; none where colour is not wanted. */
const COLOURS = { error: '\u001b[31m', warning: '\u001b[33m', note: '\u001b[36m' } as const;

/** A problem as lines for a terminal; five places are shown, then a count. */
export function problemText(problem: Problem, inColour = false): string {
  const severity = severityOf(problem);
  const shownSeverity = inColour ? `${COLOURS[severity]}${severity}\u001b[0m` : severity;
  const words = problemWords(problem.code, problem.facts);
  const [first, ...more] = problem.places;
  const lines = [
    `${first ? shown(placeText(first)) : '-'} ${shownSeverity} ${problem.code}`,
    `  ${shown(words.problem)}`,
  ];
  if (problem.found !== '') lines.push(`  found     "${shown(problem.found)}"`);
  lines.push(`  expected  ${harmless(words.expected)}`, `  mend      ${harmless(words.mend)}`);
  if (more.length > 0) {
    const places = more.slice(0, SHOWN_PLACES - 1).map((place) => {
      const cell = sheetPlace(place)?.cell;
      if (cell !== undefined && cell !== null) return cell;
      if (place.line === null) return place.file;
      return place.file === first?.file ? `line ${place.line}` : `${place.file}:${place.line}`;
    });
    const rest = more.length - places.length;
    lines.push(
      `  also at   ${places.join(', ')}${rest > 0 ? ` and ${rest} more` : ''} (${problem.places.length} places)`,
    );
  }
  return lines.join('\n');
}

/** Errors first, then warnings and notes, each in the order of files and lines. */
export function inOrder(problems: readonly Problem[]): readonly Problem[] {
  const rank = { error: 0, warning: 1, note: 2 };
  const place = (problem: Problem): Place => problem.places[0] ?? { file: '', line: 0, column: 0 };
  return problems.toSorted((a, b) => {
    const [p, q] = [place(a), place(b)];
    const byFile = p.file < q.file ? -1 : p.file > q.file ? 1 : 0;
    return (
      rank[severityOf(a)] - rank[severityOf(b)] ||
      byFile ||
      (p.line ?? 0) - (q.line ?? 0) ||
      (p.column ?? 0) - (q.column ?? 0)
    );
  });
}

/** The document of `--json`. */
export function problemsDocument(problems: readonly Problem[]): string {
  const listed = inOrder(problems).map((problem) => {
    const words = problemWords(problem.code, problem.facts);
    return {
      code: problem.code,
      severity: severityOf(problem),
      problem: words.problem,
      found: problem.found,
      expected: words.expected,
      mend: words.mend,
      places: problem.places.map((place) => ({ ...place, ...sheetPlace(place) })),
    };
  });
  return `${JSON.stringify({ format: 'keeprow-problems/1', problems: listed }, null, 2)}\n`;
}
