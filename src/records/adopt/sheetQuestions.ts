import { bare, isNothing } from './columnCells.ts';
import type { ColumnProposal, Question } from './columnCells.ts';
import { nth } from '../../numerics/element.ts';

/** Tables that have columns of declared traits. */
const TRAIT_TABLES = new Set(['ratings', 'measurements', 'season', 'totals', 'plantings']);

/** Traits of which everyone knows the better end. */
const KNOWN_DIRECTION = new Set(['flavour', 'heat', 'sweetness', 'crunch', 'vigour', 'health']);

/** Questions about what only the grower can tell: scales, directions, units of pickings, figures that no table takes. */
function tellingQuestions(
  kind: string | null,
  columns: readonly ColumnProposal[],
  cells: (i: number) => readonly string[],
  picked: string | null,
): readonly Question[] {
  const example = (i: number): string => cells(i).find((text) => !isNothing(text)) ?? '';
  const questions = columns.flatMap(({ title, why, trait }, i): readonly Question[] => {
    if (example(i) === '') return [];
    if (why === 'scale') return [{ kind: 'scale', title, found: example(i) }];
    if (trait?.kind === 'rating' && trait.better === undefined && !KNOWN_DIRECTION.has(trait.key))
      return [{ kind: 'direction', title }];
    return [];
  });
  const bareDay = columns.findIndex(
    ({ header, why }, i) =>
      why === 'day' &&
      /^\d{4}-\d{2}-\d{2}$/.test(header ?? '') &&
      cells(i).some((text) => /^\d*[1-9][\d.,]*$/.test(text)),
  );
  if (bareDay >= 0 && picked === null)
    questions.push({ kind: 'days-unit', title: nth(columns, bareDay).title, found: example(bareDay) });
  const isPlants = (kind === 'plantings' || kind === 'season') && !columns.some(({ header }) => header === 'plants');
  const unused = columns.findIndex(({ title, why }, i) => {
    const filled = cells(i).filter((text) => !isNothing(text));
    const isFigures = filled.length > 1 && filled.every((text) => /^[<>~]?\d+(?:[.,]\d+)?\s*\p{L}{0,3}$/u.test(text));
    return why === 'unknown' && isFigures && title !== '' && !isPlants && !/^(?:no|nr|id|#)\.?$/i.test(title.trim());
  });
  // Sums beside pickings by day would be known twice.
  const sum = columns.findIndex(({ header }) => header === 'fruits' || bare(header ?? '') === 'weight');
  if (kind === 'plantings' && !isPlants && sum >= 0)
    questions.push({ kind: 'unused', title: nth(columns, sum).title, found: example(sum) });
  if (unused >= 0) questions.push({ kind: 'unused', title: nth(columns, unused).title, found: example(unused) });
  return questions;
}

/** Questions about a sheet as a whole. */
export function sheetQuestions(
  kind: string | null,
  columns: readonly ColumnProposal[],
  cells: (i: number) => readonly string[],
  picked: string | null,
): readonly Question[] {
  const questions: Question[] = kind === null ? [{ kind: 'which-table' }] : [];
  questions.push(...tellingQuestions(kind, columns, cells, picked));
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
    const number = columns.findIndex(
      ({ header, why }, i) => ((header === null && why === 'unknown') || header === 'fruits') && isWhole(cells(i)),
    );
    if (number >= 0) questions.push({ kind: 'plants', title: nth(columns, number).title });
  }
  return questions;
}
