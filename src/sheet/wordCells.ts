import { nearestName } from '../terms/names.ts';
import { placeIn, textIn } from './row.ts';
import type { Row } from './row.ts';

/** One of some words. */
export function wordIn<W extends string>(row: Row, column: string, words: readonly W[]): W | null {
  const text = textIn(row, column);
  if (text === null) return null;
  if ((words as readonly string[]).includes(text)) return text as W;
  const folded = text.toLowerCase().replace(/[\s_-]+/g, '-');
  const word = words.find((w) => w === folded);
  if (word !== undefined) return word;
  const near = nearestName(text, words);
  const facts = { column, words: words.join(', '), ...(near === null ? {} : { near }) };
  row.from.log.add('word-unknown', placeIn(row, column), text, facts);
  return null;
}

const YES = new Set(['yes', 'y', 'true', '1', 'ja', 'j']);
const NO = new Set(['no', 'n', 'false', '0', 'nein']);

/** True for what people write who do not want to answer. */
export const isNoAnswer = (text: string): boolean =>
  /^(?:(?:yes|no|ja|nein)?\s*\?+|maybe|perhaps|unsure|not sure|don['’]t know|dunno|vielleicht|mal sehen|weiß nicht)\s*[.!]*$/i.test(
    text,
  );

/** Yes or no as people write it; null for anything else. */
export function parseYesNo(text: string): boolean | null {
  const word = text.toLowerCase().replace(/\s*!+$/, '');
  if (YES.has(word)) return true;
  return NO.has(word) ? false : null;
}

export function yesNoIn(row: Row, column: string): boolean | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const answer = parseYesNo(text);
  if (answer === null) row.from.log.add('word-unknown', placeIn(row, column), text, { column, words: 'yes, no' });
  return answer;
}
