import { compareSeason } from '../../src/analyse/compareSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { lastWinter } from '../../src/decide/lastWinter.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { classReport } from '../../src/present/classReport.ts';
import { publishedLines } from '../../src/present/publishedLines.ts';
import { downloadsOf } from '../../src/present/downloads.ts';
import { frontPage } from '../../src/present/frontPage.ts';
import { classAdviceWords } from '../../src/present/nextSeason/classAdvice.ts';
import { adviceFigures } from '../../src/present/nextSeason/figures.ts';
import type { AdviceSource } from '../../src/present/nextSeason/source.ts';
import { spreadWords } from '../../src/present/nextSeason/spread.ts';
import { weightsContent } from '../../src/present/nextSeason/weights.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { problemText } from '../../src/present/problems.ts';
import { resultsDocument } from '../../src/present/results.ts';
import { classFigures } from '../../src/present/seasonFigures/class.ts';
import { problemsForReaders } from '../../src/present/people.ts';
import { plainUnits } from '../../src/present/units.ts';
import { faultsOfPages, pagesOfTrial } from './pagesOfTrial.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

export interface Said {
  readonly outcome: 'problems' | 'site';
  /** What must not be: figures that are not finite, words of a program, sentences that contradict their figures. */
  readonly faults: readonly string[];
}

/** A figure of this size was never picked, measured or waited for; a dispersion can be the square of one. */
const TOO_MUCH = 1e9;

/** Numbers of a document that are not finite or beyond anything, by their path. */
function oddNumbers(value: unknown, path: string, found: string[]): void {
  if (typeof value === 'number') {
    const most = path.endsWith('/dispersion') ? TOO_MUCH ** 2 : TOO_MUCH;
    if (!Number.isFinite(value) || Math.abs(value) > most) found.push(`${path} ${value}`);
  } else if (value instanceof Map) {
    for (const [key, own] of value) oddNumbers(own, `${path}/${String(key)}`, found);
  } else if (value !== null && typeof value === 'object') {
    for (const [key, own] of Object.entries(value)) oddNumbers(own, `${path}/${key}`, found);
  }
}

/** Words that only a program says, wherever they stand. */
function oddWords(value: unknown, path: string, found: string[]): void {
  if (typeof value === 'string') {
    const odd = /\b(?:NaN|undefined|null|Infinity)\b|∞|\[object/u.exec(value);
    if (odd) found.push(`${path}: “${value.slice(0, 160)}”`);
  } else if (value instanceof Map) {
    for (const [key, own] of value) oddWords(own, `${path}/${String(key)}`, found);
  } else if (value !== null && typeof value === 'object' && !(value instanceof Uint8Array)) {
    for (const [key, own] of Object.entries(value)) oddWords(own, `${path}/${key}`, found);
  }
}

/** `1,230 g expected, 1,230 g for the bar; 4.1 points for it` says nothing. */
function equalReasons(texts: readonly string[], found: string[]): void {
  for (const text of texts) {
    const said =
      /: (?<own>.+?), (?:an average one|the check variety|eine durchschnittliche|die Vergleichssorte) (?<bar>.+?) \(/u.exec(
        plainUnits(text),
      );
    if (said && said.groups!['own'] === said.groups!['bar']) found.push(`reason: “${text}”`);
  }
}

/**
 * Reads, computes and words a trial and names what must not be.
 *
 * @param withheld  what no page, table or document may hold; null where all may be told
 */
export function saidOfTrial(folder: Folder, withheld: RegExp | null = null): Said {
  const { trial, problems } = check(folder);
  const faults: string[] = [];
  for (const problem of problems) {
    oddWords(problemText(problem), `problem ${problem.code}`, faults);
    if (problem.places.length === 0) faults.push(`${problem.code} has no place`);
  }
  if (!trial) return { outcome: 'problems', faults };
  const writing = writingOf(trial.settings);
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const compared = seasons.map((seen) => ({ seen, compared: compareSeason(trial, seen) }));
  const advice: AdviceSource | null =
    seasons.length === 0
      ? null
      : { trial, seasons, next: adviseNextSeason(trial, seasons), winters: lastWinter(trial, seasons), writing };
  const lines = publishedLines(trial, seasons, advice?.next ?? null);
  const document = resultsDocument(trial, compared, advice, lines);
  oddNumbers(document, 'results', faults);
  const pages = pagesOfTrial(trial, compared, advice);
  const told: readonly (readonly [string, string])[] = [
    ['results.json', JSON.stringify(document)],
    ['downloads', JSON.stringify(downloadsOf(trial, seasons, lines))],
    ['notes', JSON.stringify(problemsForReaders(problems, trial))],
    ...pages.map(({ address, html }) => [address, html] as const),
  ];
  for (const [where, text] of told) {
    const found = withheld?.exec(text);
    if (found) faults.push(`${where} tells ${text.slice(Math.max(0, found.index - 60), found.index + 40)}`);
  }
  for (const own of compared)
    for (const classId of trial.settings.classes.keys()) {
      const where = `${own.seen.season.year} ${classId}`;
      oddWords(classReport(trial, own.seen, own.compared, classId, writing), where, faults);
      const figures = classFigures({ ...own, trial, classId, writing });
      oddWords(figures, where, faults);
      oddNumbers(figures, where, faults);
    }
  oddWords(downloadsOf(trial, seasons, lines), 'downloads', faults);
  faults.push(...faultsOfPages(pages));
  if (!advice) return { outcome: 'site', faults };
  for (const outcome of advice.next.classes) {
    const words = classAdviceWords(advice, outcome);
    oddWords(words, `advice ${outcome.classId}`, faults);
    equalReasons(
      words.varieties.flatMap(({ reasons }) => reasons.map(({ text }) => text)),
      faults,
    );
    const figures = adviceFigures(advice, outcome);
    oddWords(figures, `advice ${outcome.classId}`, faults);
    oddNumbers(figures, `advice ${outcome.classId}`, faults);
  }
  oddWords([frontPage(advice, compared.at(-1)!.compared), spreadWords(advice)], 'front', faults);
  oddNumbers(weightsContent(advice), 'weights', faults);
  return { outcome: 'site', faults };
}
