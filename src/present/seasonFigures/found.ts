import type { ClassComparisons } from '../../analyse/comparisons.ts';
import type { Words } from '../words/english.ts';

/**
 * A chart's finding: which variety is first, and which are not separated from it.
 *
 * @param ranked    the varieties drawn, the first one first
 * @param compared  the class's comparisons; undefined where there are none
 */
export function found(
  ranked: readonly { readonly id: string; readonly name: string }[],
  { what, isLowest }: { readonly what: string; readonly isLowest: boolean },
  compared: ClassComparisons | undefined,
  say: Words['charts']['found'],
): string {
  const [first, ...others] = ranked;
  if (!first) return say.none(what);
  if (others.length === 0) return say.only(first.name, what);
  const lettersOf = (id: string): string => compared?.letters.get(id) ?? '';
  const best = lettersOf(first.id);
  if (best === '') return say.first(first.name, isLowest, what);
  const alike = others.filter(({ id }) => [...lettersOf(id)].some((letter) => best.includes(letter)));
  if (alike.length === 0) return say.apart(first.name, isLowest, what);
  if (alike.length === others.length) return say.noneApart(first.name, isLowest, what);
  return say.alike(
    first.name,
    isLowest,
    what,
    alike.map(({ name }) => name),
  );
}
