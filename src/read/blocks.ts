import { nth } from '../numerics/element.ts';

/** A run of whole records of a table, small enough to be parsed at once. */
export interface Block {
  readonly text: string;
  /** Physical line on which the block starts, from 1. */
  readonly line: number;
  /** Where each record starts in a block with quotes, and its physical line; null where a line is a record. */
  readonly records: readonly { readonly start: number; readonly line: number }[] | null;
}

export type BlockFault =
  | { readonly kind: 'quote-open'; readonly line: number }
  | { readonly kind: 'cell-too-large'; readonly line: number };

const BLOCK_LENGTH = 1 << 16;
/** No record of a grower is longer; a longer one is a quote left open or not a table. */
const LONGEST_RECORD = 1 << 20;

/** End of the record that starts at `from`: past its line end, quoted line ends passed over. */
function recordEnd(text: string, from: number, delimiter: string): { readonly end: number; readonly open: boolean } {
  let quoted = false;
  let cellStart = true;
  const stop = Math.min(text.length, from + LONGEST_RECORD + 1);
  for (let i = from; i < stop; i++) {
    const char = nth(text, i);
    if (quoted) {
      if (char === '"') {
        if (text[i + 1] === '"') i++;
        else quoted = false;
      }
    } else if (char === '"' && cellStart) {
      quoted = true;
      cellStart = false;
    } else if (char === '\n') {
      return { end: i + 1, open: false };
    } else if (char === '\r') {
      return { end: text[i + 1] === '\n' ? i + 2 : i + 1, open: false };
    } else {
      cellStart = char === delimiter;
    }
  }
  return { end: stop, open: quoted };
}

function countLines(text: string): number {
  let lines = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) lines++;
  }
  return lines;
}

/** End of a stretch without quotes: past the last line end in reach, or -1 if there is none. */
function lastLineEnd(text: string, from: number, to: number): number {
  const feed = text.lastIndexOf('\n', to - 1);
  if (feed >= from) return feed + 1;
  const ret = text.lastIndexOf('\r', to - 2);
  return ret >= from ? ret + 1 : -1;
}

/**
 * Cuts a table into blocks of whole records.
 *
 * @param text       the table
 * @param delimiter  the mark between cells
 * @returns          blocks in order; ends with a fault where a record cannot be bounded
 */
export function* cutBlocks(text: string, delimiter: string): Generator<Block | BlockFault> {
  let start = 0;
  let line = 1;
  let quote = text.indexOf('"');
  while (start < text.length) {
    let end = Math.min(text.length, start + BLOCK_LENGTH);
    if (quote >= 0 && quote < start) quote = text.indexOf('"', start);
    const hasQuotes = quote >= 0 && quote < end;
    const records: { start: number; line: number }[] = [];
    if (hasQuotes) {
      end = start;
      let at = line;
      while (end < text.length && end - start < BLOCK_LENGTH) {
        const record = recordEnd(text, end, delimiter);
        if (record.open) {
          if (end > start) yield { text: text.slice(start, end), line, records };
          yield { kind: record.end < text.length ? 'cell-too-large' : 'quote-open', line: at };
          return;
        }
        records.push({ start: end - start, line: at });
        at += countLines(text.slice(end, record.end));
        end = record.end;
      }
    } else if (end < text.length) {
      end = lastLineEnd(text, start, end);
    }
    if (end < 0 || end - start > LONGEST_RECORD + BLOCK_LENGTH) {
      yield { kind: 'cell-too-large', line };
      return;
    }
    const part = text.slice(start, end);
    yield { text: part, line, records: hasQuotes ? records : null };
    line += countLines(part);
    start = end;
  }
}
