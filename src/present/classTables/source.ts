import type { ClaimVerdict } from '../../analyse/claims.ts';
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

export const CLAIM: Readonly<Record<ClaimVerdict, string>> = {
  inside: 'as claimed',
  'seen-lower': 'below the claim',
  'seen-higher': 'above the claim',
  'cannot-tell': 'not enough to tell',
};

export function variety(own: VarietySeen): Cell {
  return { text: own.variety.name, page: `varieties/${own.variety.id}/` };
}

export function lettersOf(source: Source, trait: string, id: string): string {
  return source.compared.get(trait)?.get(source.classId)?.letters.get(id) ?? '';
}

export function pText(p: number, { number }: Writing): string {
  return p < 0.001 ? 'p below 0.001' : `p ${number(p, 3)}`;
}

export function fText(f: ClassF | null | undefined, writing: Writing): string {
  if (!f) return 'F not to be had';
  return `F ${writing.number(f.value, 2)} on ${f.df1} and ${f.df2} df, ${pText(f.p, writing)}`;
}

export function lettersNote(source: Source, trait: string): readonly string[] {
  const own = source.compared.get(trait)?.get(source.classId);
  return own
    ? [`Varieties that share a letter are not separated in this trial (Tukey-Kramer, ${source.percent}).`]
    : [];
}
