import { foldName } from '../terms/names.ts';
import type { Problem } from '../terms/problem.ts';
import type { ProblemCode } from '../terms/problemCodes.ts';
import { everySeason } from '../terms/trial.ts';
import type { Trial } from '../terms/trial.ts';
import { problemsWithoutGardens, withheldGardens } from './withheld.ts';
import { nth } from '../numerics/element.ts';

function initialsOf(name: string): string {
  return name
    .split(/[\s.\p{Pd}]+/u)
    .filter((word) => word !== '')
    .map((word) => `${nth([...word], 0).toUpperCase()}.`)
    .join(' ');
}

/**
 * Tasters as the trial publishes them: codes in order of their first season and name, so that a new taster changes no
 * code of last year; initials, numbered where two share them; or names.
 *
 * @returns the published name by the name in the records
 */
export function publishedTasters({ seasons, ongoing, settings }: Trial): ReadonlyMap<string, string> {
  const { people } = settings.publish;
  // A garden's code is no name to be published, whatever is chosen for tasters.
  const published = new Map<string, string>();
  const byFold = new Map<string, string>();
  const taken = new Set<string>();
  const publicName = (name: string, isGarden: boolean): string => {
    if (people === 'names' && !isGarden) return name;
    if (people === 'codes' || isGarden) return `T${byFold.size + 1}`;
    const initials = initialsOf(name);
    let own = initials;
    for (let i = 2; taken.has(own); i++) own = `${initials} ${i}`;
    taken.add(own);
    return own;
  };
  for (const { scores, gardens } of everySeason({ seasons, ongoing })) {
    const names = [...new Set(scores.map(({ taster }) => taster))];
    for (const name of names.toSorted((a, b) => (foldName(a) < foldName(b) ? -1 : 1))) {
      const fold = foldName(name);
      const own = byFold.get(fold) ?? publicName(name, gardens.includes(name));
      byFold.set(fold, own);
      published.set(name, own);
    }
  }
  return published;
}

/** Problems of files that the figures do not rest on: for the grower, not for readers. */
const GROWERS_OWN: readonly ProblemCode[] = [
  'file-name-near',
  'sheet-unknown',
  'column-unknown',
  'column-near',
  'content-unused',
  'last-line-open',
  'photo-unreadable',
];

/** Problems as readers of the site see them: without names of tasters that are not published, or of files not read. */
export function problemsForReaders(problems: readonly Problem[], trial: Trial): readonly Problem[] {
  const names = publishedTasters(trial);
  const named = (text: string): string => names.get(text) ?? text;
  return problemsWithoutGardens(problems, withheldGardens(trial))
    .filter(({ code }) => !GROWERS_OWN.includes(code))
    .map((problem) => ({
      ...problem,
      facts: Object.fromEntries(Object.entries(problem.facts).map(([key, text]) => [key, named(text)])),
    }));
}
