import { parseQuantity } from '../../sheet/cells/quantity.ts';
import { isScoreText } from '../../sheet/traitValues.ts';
import { isNoAnswer, parseYesNo } from '../../sheet/wordCells.ts';
import { holdsOf } from '../tables/pickedByDay.ts';
import { asksOf, isCount, isNothing } from './columnCells.ts';
import type { CellText, ColumnProposal, Question } from './columnCells.ts';
import type { AdoptOptions } from './options.ts';

/** What a column of a day holds: fruits, or a weight in a unit (empty where its cells have their own). */
export function contentOf({ header }: ColumnProposal, picked: string | null): string {
  const rest = /^\d{4}-\d{2}-\d{2}[\s_]*[([]?([^)\]]*)/.exec(header ?? '')?.[1]?.trim() ?? '';
  const word = rest === '' ? (picked ?? '') : rest;
  if (holdsOf(word)?.holds === 'fruits') return 'fruits';
  return word === '' ? 'weight' : `weight_${word.toLowerCase()}`;
}

/** Whether a column holds scores or answers, or a measure, of a trait that the grower or the trial declares. */
export function traitKind(column: ColumnProposal, traits: AdoptOptions['traits']): 'rating' | 'measure' | null {
  const { header, trait, why } = column;
  if (header === 'again') return 'rating';
  if (trait) return trait.kind;
  if (why !== 'trait' || header === null) return null;
  const key = [...traits.keys()].find((own) => header === own || header.startsWith(`${own}_`));
  return key === undefined ? 'rating' : (traits.get(key) ?? 'rating');
}

/** Questions about cells of a column of a day, and of scores and answers, that no table could take. */
export function wideQuestions(
  column: ColumnProposal,
  cells: readonly CellText[],
  { picked, traits }: Pick<AdoptOptions, 'picked' | 'traits'>,
): readonly Question[] {
  const { title, header } = column;
  const filled = cells.filter(({ text }) => text !== '' && !isNothing(text));
  if (column.why === 'day') {
    const holds = holdsOf(contentOf(column, picked).replace(/^weight_?/, ''));
    const isFit = ({ text }: CellText): boolean => {
      const amount = text.replace(/^[<>≤≥]=? ?/, '');
      if (holds?.holds === 'fruits') return isCount(text);
      const { kind } = parseQuantity(amount, 'mass', holds?.unit ?? null, !/\d\.\d/.test(amount));
      return kind !== 'unreadable' || /^trace$/i.test(text);
    };
    return asksOf(
      'number',
      title,
      filled.filter((own) => !isFit(own)),
    );
  }
  if (traitKind(column, traits) !== 'rating') return [];
  const isAnswer = header === 'again';
  const wrong = filled.filter(({ text }) =>
    isAnswer ? parseYesNo(text) === null && !isNoAnswer(text) : !isScoreText(text) && parseYesNo(text) === null,
  );
  return asksOf(isAnswer ? 'answer' : 'number', title, wrong);
}
