import { bare, isNothing } from './columnCells.ts';
import type { ColumnProposal, Question } from './columnCells.ts';
import { nth } from '../../numerics/element.ts';

/** Tables that have columns of declared traits. */
const TRAIT_TABLES = new Set(['ratings', 'measurements', 'season', 'totals']);

/** Questions about a sheet as a whole. */
export function sheetQuestions(
  kind: string | null,
  columns: readonly ColumnProposal[],
  cells: (i: number) => readonly string[],
): readonly Question[] {
  const questions: Question[] = kind === null ? [{ kind: 'which-table' }] : [];
  const has = (header: string): boolean => columns.some((column) => column.header === header);
  const misplaced = columns.find(({ trait }) => trait !== null);
  if (misplaced && kind !== null && !TRAIT_TABLES.has(kind))
    questions.push({ kind: 'trait-elsewhere', title: misplaced.title, found: `${kind}.csv` });
  const twice = columns.find(
    ({ header }, i) => header !== null && columns.findIndex((one) => one.header === header) < i,
  );
  if (twice) questions.push({ kind: 'twice', title: twice.title, found: twice.header!, line: null });
  const score = columns.find(({ header }) => header === 'score');
  if (score && !has('trait')) questions.push({ kind: 'trait-needed', title: score.title });
  const weights = columns.flatMap(({ header }, i) => (header !== null && bare(header) === 'weight' ? [i] : []));
  if (
    weights.length > 1 &&
    cells(nth(weights, 0)).some((text, r) => !isNothing(text) && !isNothing(nth(cells(nth(weights, 1)), r)))
  )
    questions.push({ kind: 'two-weights', title: nth(columns, nth(weights, 1)).title });
  const isWhole = (texts: readonly string[]): boolean =>
    texts.some((text) => text !== '') && texts.every((text) => /^\d{0,3}$/.test(text));
  if ((kind === 'plantings' || kind === 'season') && !has('plants')) {
    const number = columns.findIndex(({ header, why }, i) => header === null && why === 'unknown' && isWhole(cells(i)));
    if (number >= 0) questions.push({ kind: 'plants', title: nth(columns, number).title });
  }
  return questions;
}
