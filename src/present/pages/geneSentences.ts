import { grouped } from '../../terms/groups.ts';
import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import { breedsTrue } from '../../analyse/lines/geneModels.ts';
import { nth } from '../../numerics/element.ts';
import { isKeptPure } from '../../terms/lines.ts';
import type { Writing } from '../numbers.ts';
import { countsText, generationName, of100, plantName } from './crossWords.ts';
import type { CrossSource } from './crossWords.ts';

/** What is left to each ratio by all that was seen, in words. */
export function odds(trait: CrossTrait, writing: Writing): string {
  const { lines: say } = writing.words;
  if (!trait.genes) return '';
  const byRatio = new Map<string, number>();
  for (const { ratio, share } of trait.genes.posterior.models) byRatio.set(ratio, (byRatio.get(ratio) ?? 0) + share);
  byRatio.set(say.noneOfThese, trait.genes.posterior.other.share);
  const list = [...byRatio]
    .filter(([, share]) => share >= 0.015)
    .toSorted(([, a], [, b]) => b - a)
    .map(([name, share]) => `${name} ${of100(share)}`);
  return `${writing.words.capital(writing.trait(trait.trait.key))}. ${say.margin(list.join(', '))}`;
}

/** True for the same parts in any order: 3:1 and 1:3. */
const isSameRatio = (a: string, b: string): boolean =>
  a.split(':').toSorted().join(':') === b.split(':').toSorted().join(':');

/** What the plants of a cross tell of the genes of one trait. */
export function geneSentences({ report, writing }: CrossSource, own: CrossTrait): readonly string[] {
  const { lines: say, listed } = writing.words;
  const name = writing.trait(own.trait.key);
  const counted = new Map(own.seen.map((state, i) => [state, own.f2Counts?.[i] ?? 0]));
  if (!own.genes) {
    const all = new Map<string, number>();
    for (const { counts } of report.cross.families)
      for (const [state, n] of counts.get(own.trait.key) ?? []) all.set(state, (all.get(state) ?? 0) + n);
    return [say.countsOnly(writing.words.capital(name), countsText(all, own.trait.states))];
  }
  const sentences: string[] = [];
  if (own.ratios && own.f2Counts) {
    const weight = (name: string): number =>
      (own.genes?.posterior.models ?? []).reduce((sum, one) => sum + (isSameRatio(one.ratio, name) ? one.share : 0), 0);
    const [best, ...others] = own.ratios.toSorted((a, b) => weight(b.name) - weight(a.name));
    // The commoner state comes first, in the counts as in the ratio.
    const order = own.seen.map((_, i) => i).toSorted((a, b) => nth(own.f2Counts ?? [], b) - nth(own.f2Counts ?? [], a));
    const states = order.map((i) => nth(own.seen, i));
    const counts = `${writing.words.capital(name)}: ${countsText(counted, states)}`;
    const named = best && order.map((i) => nth(best.parts, i)).join(':');
    const rest = others.length === 0 ? '' : say.moreRatios(String(others.length));
    sentences.push(named ? say.ratio(counts, named, rest) : say.noRatio(counts));
    if (others.length > 0 && own.f2Counts.reduce((sum, n) => sum + n, 0) < 30) sentences.push(say.moreSeedlings);
  }
  const { pedigree, posterior, paths } = own.genes;
  const told = report.cross.families
    .flatMap(({ plants }) => plants)
    .filter((plant) => plant.lots.length > 0 || plant.year === report.newest?.years.at(-1))
    .flatMap((plant) => {
      const state = plant.states.get(own.trait.key);
      const path = paths.get(plant);
      if (state === undefined || !path) return [];
      return [{ plant, state, chance: breedsTrue(pedigree, posterior, path, [own.seen.indexOf(state)]) }];
    });
  // Plants that are alike in what is said of them share a sentence.
  const groups = grouped(told, ({ plant, state, chance }) => `${plant.planting.variety}|${state}|${of100(chance)}`);
  for (const [key, alike] of groups) {
    const plants = alike.map(({ plant }) => plant);
    const [, state = '', chance = ''] = key.split('|');
    const family = report.cross.families.find(({ plants: all }) => plants[0] !== undefined && all.includes(plants[0]));
    const g = family ? generationName(family, writing) : '';
    sentences.push(say.breeds(listed(plants.map(plantName)), g, state, chance, plants.length === 1));
    const open = plants.filter(({ lots }) => lots.some(({ pollination }) => !isKeptPure(pollination)));
    if (open.length > 0) sentences.push(say.unlessCrossed(listed(open.map(plantName))));
  }
  return sentences;
}
