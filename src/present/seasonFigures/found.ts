import type { ClassComparisons } from '../../analyse/comparisons.ts';
import type { Words } from '../words/en/index.ts';
import { nth } from '../../numerics/element.ts';

/** A variety in a chart. */
export interface Ranked {
  readonly id: string;
  readonly name: string;
  readonly estimate: number;
}

interface Measured {
  readonly what: string;
  readonly isLowest: boolean;
}

/** What is said where several share the first place; null where one has it alone. */
function level(ranked: readonly Ranked[], { what, isLowest }: Measured, say: Words['charts']['found']): string | null {
  const best = nth(ranked, 0).estimate;
  const first = ranked.filter(({ estimate }) => Math.abs(estimate - best) <= 1e-6 * Math.abs(best));
  if (first.length < 2) return null;
  return say.level(what, first.length === ranked.length ? null : first.map(({ name }) => name), isLowest);
}

/**
 * A chart's finding: which variety is first, and which are not separated from it.
 *
 * @param ranked    the varieties drawn, the first one first
 * @param compared  the class's comparisons; undefined where there are none
 */
export function found(
  ranked: readonly Ranked[],
  measured: Measured,
  compared: ClassComparisons | undefined,
  say: Words['charts']['found'],
): string {
  const { what, isLowest } = measured;
  // Of a club the part with the most varieties: nothing compares the others with them.
  const [first, ...others] = ranked.filter(({ id }) => !/^\d/.test(compared?.letters.get(id) ?? ''));
  if (!first) return say.none(what);
  if (others.length === 0) return say.only(first.name, what);
  const alike = level([first, ...others], measured, say);
  if (alike !== null) return alike;
  const lettersOf = (id: string): string => compared?.letters.get(id) ?? '';
  const best = lettersOf(first.id);
  const compares = others.filter(({ id }) => lettersOf(id) !== '');
  if (best === '' || compares.length === 0) return say.first(first.name, isLowest, what);
  const near = compares.filter(({ id }) => [...lettersOf(id)].some((letter) => best.includes(letter)));
  if (near.length === 0) return say.apart(first.name, isLowest, what, compares.length === others.length);
  if (near.length === others.length) return say.noneApart(first.name, isLowest, what);
  const names = near.map(({ name }) => name);
  return say.alike(first.name, isLowest, what, names);
}
