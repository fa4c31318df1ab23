import type { Writing } from '../numbers.ts';
import { traitFacts } from '../../terms/traits.ts';
import { dayWriting, startOf } from './days.ts';
import { areApart, ofFirstPart } from './matrix.ts';
import type { MatrixColumn, MatrixSource } from './matrix.ts';
import { first, keyed, nth } from '../../numerics/element.ts';

/** So many names are still read; beyond that they are counted. */
const NAMED = 3;

/** The varieties with the best figure of a column, as it is written. */
function bestOf({ cells, isLowerBetter }: MatrixColumn): readonly string[] {
  const sign = isLowerBetter ? -1 : 1;
  const best = Math.max(...[...cells.values()].map(({ estimate }) => sign * estimate));
  const figure = first([...cells.values()], ({ estimate }) => sign * estimate === best).figure;
  return [...cells].filter(([, cell]) => cell.figure === figure).map(([id]) => id);
}

function bestSentence(source: MatrixSource, column: MatrixColumn, nameOf: (id: string) => string): string {
  const { say } = source.writing.words.bench;
  const best = bestOf(column);
  const names = best.map(nameOf);
  const { figure, estimate } = keyed(column.cells, nth(best, 0));
  if (column.trait === 'yield') return say.most(names, figure);
  if (column.trait === 'fruits') return say.mostFruits(names, figure);
  if (column.trait === 'first_ripe') {
    const start = startOf(source.seen, column.cells.keys(), source.trial.settings);
    return say.ripe(names, start === null ? figure : dayWriting(source.trial.settings).long(start + estimate));
  }
  if (column.trait === 'flavour') return say.tasted(names, figure, column.toText);
  return say.rated(names, source.writing.trait(column.trait), figure, column.toText);
}

/** Which varieties lie behind the best beyond chance. */
function behindSentence({ writing }: MatrixSource, column: MatrixColumn, nameOf: (id: string) => string): string {
  const { say } = writing.words.bench;
  const trait = writing.trait(column.trait);
  const top = nth(bestOf(column), 0);
  const letters = keyed(column.cells, top).letters;
  const behind = [...column.cells].filter(([, cell]) => areApart(cell.letters, letters)).map(([id]) => nameOf(id));
  if (behind.length === 0) return say.noneApart(trait);
  return say.behind(trait, behind.length > NAMED ? [say.many(behind.length)] : behind, nameOf(top), behind.length);
}

export interface ClassSentences {
  /** What stood out: one short sentence a trait. */
  readonly lead: string;
  /** What of it is beyond chance. */
  readonly beyond: string;
}

/** What a gardener would say aloud of a class in a season. */
export function classSentences(
  source: MatrixSource,
  columns: readonly MatrixColumn[],
  nameOf: (id: string) => string,
): ClassSentences {
  const { say } = source.writing.words.bench;
  const members = source.seen.varieties.filter(({ variety }) => variety.classId === source.classId);
  if (members.length === 1) return { lead: say.only(nth(members, 0).variety.name), beyond: '' };
  const told = columns
    .map(ofFirstPart)
    .filter(({ trait, cells }) => cells.size > 1 && traitFacts(trait, source.trial.settings.traits).better !== 'none');
  if (told.length === 0) return { lead: say.nothing, beyond: '' };
  return {
    lead: told.map((column) => bestSentence(source, column, nameOf)).join(' '),
    beyond: told
      .filter(({ trait, cells }) => trait !== 'first_ripe' && [...cells.values()].some(({ letters }) => letters !== ''))
      .map((column) => behindSentence(source, column, nameOf))
      .join(' '),
  };
}

/** New beside returning varieties in one trait: both groups on one scale, the difference in a sentence. */
export interface FreshRow {
  readonly trait: string;
  readonly title: string;
  readonly from: number;
  readonly to: number;
  readonly fresh: readonly string[];
  readonly returning: readonly string[];
  readonly column: MatrixColumn;
  readonly sentence: string;
}

function freshSentence(source: MatrixSource, trait: string): string | null {
  const { writing, compared, classId, trial } = source;
  const contrast = compared.get(trait)?.get(classId)?.newAgainstReturning;
  if (!contrast || contrast.low === null || contrast.high === null) return null;
  const say = writing.words.bench.fresh;
  const chance = contrast.p < 1 - trial.settings.interval ? say.clear : say.luck;
  const isRatio =
    trait === 'first_ripe' || (trial.settings.scale === 'ratio' && (trait === 'yield' || trait === 'fruits'));
  if (!isRatio) return pointsSentence(writing, trait, { ...contrast, low: contrast.low, high: contrast.high }, chance);
  const percent = (ratio: number): string => writing.number(Math.abs(100 * (ratio - 1)), 0);
  const side = (ratio: number): string => (ratio < 1 ? say.less(percent(ratio)) : say.more(percent(ratio)));
  // The end nearer to no difference comes first.
  const ends = [contrast.low, contrast.high];
  const [near, far] = contrast.estimate < 1 ? ends.toReversed() : ends;
  const isMore = contrast.estimate > 1;
  const lead =
    percent(contrast.estimate) === '0'
      ? say.alike(writing.trait(trait))
      : trait === 'first_ripe'
        ? say.ripened(percent(contrast.estimate), isMore)
        : say.gave(percent(contrast.estimate), isMore);
  return `${lead} ${say.range(side(near!), side(far!))}; ${chance}.`;
}

function pointsSentence(
  { number, words, trait: name }: Writing,
  trait: string,
  { estimate, low, high }: { readonly estimate: number; readonly low: number; readonly high: number },
  chance: string,
): string {
  const say = words.bench.fresh;
  const points = number(Math.abs(estimate), 1);
  const signed = (value: number): string => `${value < 0 ? '−' : '+'}${number(Math.abs(value), 1)}`;
  const lead = points === number(0, 1) ? say.alike(name(trait)) : say.points(name(trait), points, estimate > 0);
  return `${lead} ${say.range(signed(low), signed(high))}; ${chance}.`;
}

/** New beside returning for every trait of a class that has both. */
export function freshRows(source: MatrixSource, columns: readonly MatrixColumn[]): readonly FreshRow[] {
  const fresh = new Set<string>(
    source.seen.varieties.filter(({ status }) => status === 'new').map(({ variety }) => variety.id),
  );
  return columns.flatMap((column): readonly FreshRow[] => {
    const ids = [...column.cells.keys()];
    const sentence = freshSentence(source, column.trait);
    const [news, olds] = [ids.filter((id) => fresh.has(id)), ids.filter((id) => !fresh.has(id))];
    if (sentence === null || news.length === 0 || olds.length === 0) return [];
    const { trait, title, from, to } = column;
    return [{ trait, title, from, to, fresh: news, returning: olds, column, sentence }];
  });
}
