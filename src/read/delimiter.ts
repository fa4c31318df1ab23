import { nth } from '../numerics/element.ts';

/** The marks between cells that are found out. */
export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Cells of the first filled line if it were split at this mark, quoted parts kept whole. */
function cellsOf(line: string, mark: string): number {
  let cells = 1;
  let quoted = false;
  for (const char of line) {
    if (char === '"') quoted = !quoted;
    else if (char === mark && !quoted) cells++;
  }
  return cells;
}

/**
 * The mark between the cells of a table: the one that splits the header into most cells.
 *
 * @param text  the table, header first
 */
export function findDelimiter(text: string): Delimiter {
  const header = /[^\s,;|]/.exec(text) ? (/^.*[^\s,;|].*$/m.exec(text)?.[0] ?? '') : '';
  let best: Delimiter = ',';
  for (const mark of DELIMITERS) if (cellsOf(header, mark) > cellsOf(header, best)) best = mark;
  return best;
}

/** The mark that a first line `sep=;` names, as spreadsheets write it, and that line's number; null without one. */
export function namedDelimiter(text: string): { readonly delimiter: string; readonly line: number } | null {
  const named = /^"?sep=([,;|\t])"?[ \t]*(?:\r\n|\n|\r)/i.exec(text);
  return named ? { delimiter: nth(named, 1), line: 1 } : null;
}
