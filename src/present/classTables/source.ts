import type { SeasonComparisons } from '../../analyse/compareSeason.ts';
import type { ClassF } from '../../analyse/plantModel.ts';
import type { SeasonSeen, VarietySeen } from '../../analyse/seen.ts';
import type { Trial } from '../../terms/trial.ts';
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
  return { text: own.variety.name, page: `varieties/${own.variety.id}/` };
}

export function lettersOf(source: Source, trait: string, id: string): string {
  return source.compared.get(trait)?.get(source.classId)?.letters.get(id) ?? '';
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
  return compared.get(trait)?.get(classId) ? [writing.words.figure.letters(percent)] : [];
}

/** `1,240 g (1,010 to 1,520); n 6`. */
export function withN(text: string, n: number, { words }: Writing): string {
  return `${text}; ${words.figure.n(String(n))}`;
}
