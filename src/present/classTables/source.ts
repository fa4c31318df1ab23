import { addresses } from '../../terms/addresses.ts';
import type { SeasonComparisons } from '../../analyse/compareSeason.ts';
import type { ClassF } from '../../analyse/plantTypes.ts';
import type { SeasonSeen, VarietySeen } from '../../analyse/seen.ts';
import { foldName } from '../../terms/names.ts';
import type { Score, Trial } from '../../terms/trial.ts';
import type { Writing } from '../numbers.ts';
import type { Cell } from '../tables.ts';

/** What the tables of a class are made from. */
export interface Source {
  readonly trial: Trial;
  readonly seen: SeasonSeen;
  readonly compared: SeasonComparisons;
  readonly classId: string;
  readonly writing: Writing;
  readonly own: readonly VarietySeen[];
  readonly percent: string;
}

export function variety(own: VarietySeen): Cell {
  return { text: own.variety.name, page: addresses.variety(own.variety.id) };
}

/** A variety's letters; none where no other variety of the class has any. */
export function lettersOf({ compared, classId }: Source, trait: string, id: string): string {
  const letters = compared.get(trait)?.get(classId)?.letters;
  return letters && letters.size > 1 ? (letters.get(id) ?? '') : '';
}

/** A trait's scores in a class. */
export function classScores({ seen, own }: Pick<Source, 'seen' | 'own'>, trait: string): readonly Score[] {
  const ids = new Set(own.map(({ variety: { id } }) => id));
  return seen.season.scores.filter((score) => score.trait === trait && ids.has(score.variety));
}

export function tastersAmong(scores: readonly Score[]): number {
  return new Set(scores.map(({ taster }) => foldName(taster))).size;
}

/** A p value: `0.034`, or that it is below the smallest one written. */
export function pText(p: number, { number, words }: Writing): string {
  return p < 0.001 ? words.figure.pBelow(number(0.001, 3)) : number(p, 3);
}

export function fText(f: ClassF | null | undefined, writing: Writing): string {
  const { figure } = writing.words;
  if (!f) return figure.noF;
  const p = figure.p(pText(f.p, writing));
  return figure.f(writing.number(f.value, 2), String(f.df1), String(f.df2), p);
}

export function lettersNote({ compared, classId, percent, writing }: Source, trait: string): readonly string[] {
  return (compared.get(trait)?.get(classId)?.letters.size ?? 0) > 1 ? [writing.words.figure.letters(percent)] : [];
}

/** `1,240 g (1,010 to 1,520); n 6`. */
export function withN(text: string, n: number, { words }: Writing): string {
  return `${text}; ${words.figure.n(String(n))}`;
}
