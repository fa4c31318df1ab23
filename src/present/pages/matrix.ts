import type { SeasonComparisons } from '../../analyse/compareSeason.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { drawnYields } from '../../analyse/summaries.ts';
import { plantModel, ratingModels, ripeningModel } from '../../analyse/traitsSeen.ts';
import { traitFacts } from '../../terms/traits.ts';
import type { Estimate } from '../../terms/estimate.ts';
import type { Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import { dayWriting, startOf } from './days.ts';
import { given } from '../../numerics/element.ts';

/** One figure of a matrix: where it lies on its scale, and in words. */
export interface MatrixCell {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  /** The figure itself, and what stands in brackets and letters beside it. */
  readonly figure: string;
  readonly rest: string;
  readonly letters: string;
  readonly plants: readonly number[];
}

export interface MatrixColumn {
  readonly trait: string;
  readonly title: string;
  /** Which end is better, in words; empty where neither is. */
  readonly better: string;
  readonly isLowerBetter: boolean;
  readonly from: number;
  readonly to: number;
  readonly fromText: string;
  readonly toText: string;
  readonly cells: ReadonlyMap<string, MatrixCell>;
}

export interface MatrixSource {
  readonly trial: Trial;
  readonly seen: SeasonSeen;
  readonly compared: SeasonComparisons;
  readonly writing: Writing;
  readonly classId: string;
}

interface Draft {
  readonly trait: string;
  readonly title: string;
  readonly estimates: ReadonlyMap<string, Estimate>;
  readonly scale: readonly [from: number, to: number] | null;
  readonly write: (own: Estimate) => readonly [figure: string, rest: string];
  readonly end: (value: number) => string;
  readonly plants?: (variety: string) => readonly number[];
}

/** A figure and its interval apart: `1,280 g` and `(820 to 2,010)`. */
function parted({ writing }: MatrixSource, own: Estimate, unit: string): readonly [string, string] {
  const [figure, range] = writing.parted(own, unit);
  return [figure, range === '' ? '' : `(${range})`];
}

function weights(source: MatrixSource): Draft | null {
  const { seen, writing } = source;
  const grams = plantModel(seen, 'yield');
  if (grams) {
    const { unit } = writing.shown(1, 'g');
    return {
      trait: 'yield',
      title: writing.words.bench.matrix.yield(unit),
      estimates: grams.estimates,
      scale: null,
      write: (own) => parted(source, own, 'g'),
      end: (value) => writing.quantity(value, 'g', 0),
      plants: (variety) => drawnYields(seen, variety),
    };
  }
  const fruits = plantModel(seen, 'fruits');
  if (!fruits) return null;
  return {
    trait: 'fruits',
    title: writing.words.bench.matrix.fruits,
    estimates: fruits.estimates,
    scale: null,
    write: (own) => parted(source, own, 'fruits'),
    end: (value) => writing.number(value, 0),
  };
}

function ratings(source: MatrixSource): readonly Draft[] {
  const { seen, writing } = source;
  return ratingModels(seen).map(([key, { trait, estimates }]) => ({
    trait: key,
    title: writing.words.bench.matrix.rating(writing.trait(key), String(trait.from), String(trait.to)),
    estimates,
    scale: [trait.from, trait.to],
    write: (own) => parted(source, own, 'points'),
    end: (value) => writing.number(value, 0),
  }));
}

function ripening(source: MatrixSource): Draft | null {
  const { seen, writing, trial, classId } = source;
  const model = ripeningModel(seen);
  if (!model) return null;
  const { short } = dayWriting(trial.settings);
  const ids = new Set<string>(
    seen.varieties.filter(({ variety }) => variety.classId === classId).map((v) => v.variety.id),
  );
  const start = startOf(seen, ids, trial.settings);
  const { matrix } = writing.words.bench;
  const day = (value: number): string => writing.number(value, 0);
  return {
    trait: 'first_ripe',
    title: matrix.firstRipe,
    estimates: model.estimates,
    scale: null,
    write(own) {
      if (start === null) return parted(source, own, 'd');
      const [, range] = writing.parted(own, 'd');
      return [short(start + given(own.estimate)), matrix.day(day(given(own.estimate)), range)];
    },
    end: (value) => (start === null ? day(value) : short(start + value)),
  };
}

/** Ends of a column's scale: from nothing for amounts, around what was seen for days, the whole scale for ratings. */
function scaleOf({ trait, scale }: Draft, values: readonly Estimate[]): readonly [number, number] {
  if (scale) return scale;
  const ends = values.flatMap(({ estimate, low, high }) => [estimate, low, high]).filter((end) => end !== null);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  if (trait !== 'first_ripe') return [0, most > 0 ? most : 1];
  return [least - 2, most + 2];
}

/** The word for the better end of a column's scale; empty where neither is. */
function betterWord({ trait }: Draft, { writing, trial }: MatrixSource): string {
  const say = writing.words.bench.matrix;
  const { better } = traitFacts(trait, trial.settings.traits);
  if (better === 'higher') return say.more;
  if (better === 'lower') return trait === 'first_ripe' ? say.sooner : say.less;
  return '';
}

function cellOf(draft: Draft, id: string, estimate: Estimate, letters: string): MatrixCell {
  const [figure, rest] = draft.write(estimate);
  const { low, high } = estimate;
  return { estimate: given(estimate.estimate), low, high, figure, rest, letters, plants: draft.plants?.(id) ?? [] };
}

function columnOf(draft: Draft, source: MatrixSource, ids: readonly string[]): MatrixColumn | null {
  const { compared, trial, classId } = source;
  const own = ids.flatMap((id) => {
    const estimate = draft.estimates.get(id);
    return estimate && estimate.estimate !== null ? [[id, estimate] as const] : [];
  });
  if (own.length === 0) return null;
  const [from, to] = scaleOf(
    draft,
    own.map(([, estimate]) => estimate),
  );
  const letters = compared.get(draft.trait)?.get(classId)?.letters;
  return {
    trait: draft.trait,
    title: draft.title,
    better: betterWord(draft, source),
    isLowerBetter: traitFacts(draft.trait, trial.settings.traits).better === 'lower',
    from,
    to,
    fromText: draft.end(from),
    toText: draft.end(to),
    cells: new Map(own.map(([id, estimate]) => [id, cellOf(draft, id, estimate, letters?.get(id) ?? '')])),
  };
}

/** Matrices by how they are written: the page of every variety of a class asks for its class's. */
const matrices = new WeakMap<MatrixSource['writing'], Map<string, readonly [MatrixSource, readonly MatrixColumn[]]>>();

/** The traits of a class in a season, each on its full scale: amounts, ratings, first ripe fruit. */
export function matrixOf(source: MatrixSource, isWhole: boolean): readonly MatrixColumn[] {
  const own = matrices.get(source.writing) ?? new Map<string, readonly [MatrixSource, readonly MatrixColumn[]]>();
  matrices.set(source.writing, own);
  const key = `${source.seen.season.key}/${source.classId}/${isWhole}`;
  const [before, columns] = own.get(key) ?? [];
  const isSame = before?.seen === source.seen && before.compared === source.compared && before.trial === source.trial;
  if (columns && isSame) return columns;
  const made = madeMatrix(source, isWhole);
  own.set(key, [source, made]);
  return made;
}

function madeMatrix(source: MatrixSource, isWhole: boolean): readonly MatrixColumn[] {
  const { seen, trial, classId } = source;
  const ids = seen.varieties.filter(({ variety }) => variety.classId === classId).map(({ variety }) => variety.id);
  const scores = ratings(source);
  const leading = scores.find(({ trait }) => traitFacts(trait, trial.settings.traits).better !== 'none') ?? scores[0];
  const drafts = [weights(source), ...(isWhole ? scores : leading ? [leading] : []), ripening(source)];
  return drafts.flatMap((draft) => {
    const column = draft && columnOf(draft, source, ids);
    return column ? [column] : [];
  });
}

/** Number before letters: of the part of a club's varieties that gardens join; empty for the first, and for one garden. */
const partOf = (letters: string): string => /^\d*/.exec(letters)?.[0] ?? '';

/** True where nothing compares two varieties: no chain of gardens joins them. */
export const areUnjoined = (a: string, b: string): boolean => a !== '' && b !== '' && partOf(a) !== partOf(b);

/** True where two varieties share no letter: they differ beyond chance. */
export function areApart(a: string, b: string): boolean {
  return a !== '' && b !== '' && !areUnjoined(a, b) && ![...a].some((letter) => b.includes(letter));
}

/** A column with the varieties alone that can be compared: of a club the part with the most. */
export function ofFirstPart(column: MatrixColumn): MatrixColumn {
  const isFirst = (letters: string): boolean => partOf(letters) === '';
  return { ...column, cells: new Map([...column.cells].filter(([, { letters }]) => isFirst(letters))) };
}
