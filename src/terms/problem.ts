import type { Place } from './place.ts';
import { severities } from './problemCodes.ts';
import type { ProblemCode } from './problemCodes.ts';
import type { FactNames, FactsOf } from './problemFacts.ts';

export type Severity = 'error' | 'warning' | 'note';

/** Something doubtful or wrong in the records. The words are made in `present`. */
export interface Problem {
  readonly code: ProblemCode;
  readonly places: readonly Place[];
  /** What was found, as it stands in the file. */
  readonly found: string;
  /** Names and values that the words need, such as the nearest name. */
  readonly facts: Readonly<Record<string, string>>;
}

/** Severity of a problem, fixed by its code. */
export function severityOf(problem: Problem): Severity {
  return severities[problem.code];
}

/** Collects problems while the records are read. */
export interface ProblemLog {
  readonly add: <C extends ProblemCode>(
    code: C,
    place: Place | readonly Place[],
    ...said: C extends keyof FactNames
      ? [found: string, facts: FactsOf<C>]
      : [found?: string, facts?: Readonly<Record<string, string>>]
  ) => void;
}

/** Codes that are one problem in the whole trial, whatever was found: the cells are listed. */
const JOINED: ReadonlySet<ProblemCode> = new Set([
  'answer-left-out',
  'score-taken-as',
  'yield-not-recorded',
  'fruits-not-recorded',
  'ripening-not-dated',
  'no-start-date',
]);

/**
 * A log that joins the same mistake in many places into one problem.
 *
 * @returns  `add` to report, `problems` for what was reported, in order of first sight
 */
export function openLog(): ProblemLog & { readonly problems: () => readonly Problem[] } {
  const byKey = new Map<string, { code: ProblemCode; places: Place[]; found: string; facts: Record<string, string> }>();
  return {
    add(code, place, ...[found = '', facts = {}]) {
      const places = Array.isArray(place) ? (place as readonly Place[]) : [place as Place];
      const isJoined = JOINED.has(code);
      const key = JSON.stringify(isJoined ? [code] : [code, found, facts, places[0]?.file ?? '']);
      const known = byKey.get(key);
      if (known) {
        known.places.push(...places);
        if (isJoined && !known.found.split(', ').includes(found)) known.found += `, ${found}`;
      } else byKey.set(key, { code, places: [...places], found, facts: { ...facts } });
    },
    problems: () => [...byKey.values()],
  };
}
