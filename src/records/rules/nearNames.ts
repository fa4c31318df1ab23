import { foldName, nearestName } from '../../terms/names.ts';
import type { Place } from '../../terms/place.ts';
import { first, nth } from '../../numerics/element.ts';

/** Letters of other scripts that look like Latin ones. @source Unicode Consortium, confusables.txt, the commonest */
const LOOKALIKES: Readonly<Record<string, string>> = {
  а: 'a',
  в: 'b',
  с: 'c',
  е: 'e',
  һ: 'h',
  і: 'i',
  ј: 'j',
  к: 'k',
  м: 'm',
  н: 'h',
  о: 'o',
  р: 'p',
  ѕ: 's',
  т: 't',
  у: 'y',
  х: 'x',
  ԁ: 'd',
  α: 'a',
  β: 'b',
  ε: 'e',
  ι: 'i',
  κ: 'k',
  μ: 'u',
  ν: 'v',
  ο: 'o',
  ρ: 'p',
  τ: 't',
  υ: 'u',
  χ: 'x',
};

/** The words of a name, bare of marks, lookalikes made Latin. */
function wordsOf(name: string): readonly string[] {
  return name
    .split(/[\s.,;:/\\_\p{Pd}]+/u)
    .map((word) => [...foldName(word)].map((letter) => LOOKALIKES[letter] ?? letter).join(''))
    .map((word) => word.replaceAll(/[^\p{L}\p{N}]/gu, ''))
    .filter((word) => word !== '');
}

const hasDigits = (word: string): boolean => /\p{N}/u.test(word);
/** Shorter names differ by a letter and are two: Tim and Tom. */
const SHORTEST_NEAR = 5;

/** Two neighbouring letters exchanged: hardly ever another name, however short. */
function isExchanged(a: string, b: string): boolean {
  const at = [...a].findIndex((letter, i) => letter !== b[i]);
  if (a.length !== b.length || a.length < 3 || at < 0) return false;
  return a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
}

function isNearWord(a: string, b: string, shortest = SHORTEST_NEAR): boolean {
  if (a === b) return true;
  if (!hasDigits(a) && isExchanged(a, b)) return true;
  if (hasDigits(a) || hasDigits(b) || Math.min(a.length, b.length) < shortest) return false;
  return a[0] === b[0] && nearestName(a, [b]) !== null;
}

/** Two names of several words that share all but one, which is near. */
function isSlip(first: readonly string[], second: readonly string[]): boolean {
  const others = first.flatMap((word, i) => (word === second[i] ? [] : [[word, nth(second, i)] as const]));
  return others.length === 1 && first.length > 1 && isNearWord(...nth(others, 0), SHORTEST_NEAR - 1);
}

/** Where one name is a short form of the other: a first name, or initials in place of words. */
function isShortForm(short: readonly string[], long: readonly string[]): boolean {
  if (short.length > long.length || long.some(hasDigits)) return false;
  // One word is a first name; the initial alone is none.
  if (short.length === 1) return nth(short, 0).length > 2 && short[0] === long[0];
  return short.every((word, i) => {
    const other = nth(long, short.length === long.length || i < short.length - 1 ? i : long.length - 1);
    return (
      isNearWord(word, other) ||
      (word.length === 1 && other.startsWith(word)) ||
      (other.length === 1 && word.startsWith(other))
    );
  });
}

/**
 * True for two spellings that may well be one name: marks and blanks apart, lookalike letters, a slip in a long word;
 * for people also a first name by itself and initials.
 */
export function seemsSame(a: string, b: string, isPerson: boolean): boolean {
  const [first, second] = [wordsOf(a), wordsOf(b)];
  if (first.length === 0 || second.length === 0) return false;
  if (first.join('') === second.join('')) return true;
  if (first.length === second.length && first.every((word, i) => isNearWord(word, nth(second, i)))) return true;
  if (isPerson && first.length === second.length && isSlip(first, second)) return true;
  return isPerson && (isShortForm(first, second) || isShortForm(second, first));
}

/** A spelling of a name, and where it stands first. */
export interface Spelling {
  readonly name: string;
  readonly place: Place;
}

/**
 * Pairs of spellings that seem to be one name.
 *
 * @param areTwo  true where the records show that two spellings are two
 */
export function nearPairs(
  spellings: readonly Spelling[],
  isPerson: boolean,
  areTwo: (a: string, b: string) => boolean = () => false,
): readonly (readonly [Spelling, Spelling])[] {
  return spellings.flatMap((a, i) =>
    spellings
      .slice(i + 1)
      .filter((b) => seemsSame(a.name, b.name, isPerson) && !areTwo(a.name, b.name))
      .map((b) => [a, b] as const),
  );
}

/**
 * Names of which the spellings differ only as the contract says that names may (case, accents, blanks, quotes), made
 * one: the commonest spelling without quotation marks, of several the first.
 *
 * @param names  every name as often as it stands in the records
 */
export function oneSpelling(names: Iterable<string>): (name: string) => string {
  const counts = new Map<string, Map<string, number>>();
  for (const name of names) {
    const fold = foldName(name);
    const own = counts.get(fold) ?? new Map<string, number>();
    counts.set(fold, own.set(name, (own.get(name) ?? 0) + 1));
  }
  const chosen = new Map<string, string>();
  for (const [fold, own] of counts) {
    const bare = [...own].filter(([name]) => !/[\p{Pi}\p{Pf}'"`´]/u.test(name));
    const list = bare.length > 0 ? bare : [...own];
    const most = Math.max(...list.map(([, count]) => count));
    chosen.set(fold, first(list, ([, count]) => count === most)[0]);
  }
  return (name) => chosen.get(foldName(name)) ?? name;
}
