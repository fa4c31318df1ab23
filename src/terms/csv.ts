/** A cell of a CSV table, in quotation marks only where it has to be. @source Shafranovich (2005) RFC 4180 */
export function csvCell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const COMPLETE_NUMBER = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?$/i;

/** Text that a spreadsheet program could take for a formula gets an apostrophe in front; a complete number is none. */
export function unformula(text: string): string {
  return /^[=+\-@\t\r\n＝＋－＠]/.test(text) && !COMPLETE_NUMBER.test(text) ? `'${text}` : text;
}

/**
 * A CSV table as text (RFC 4180), UTF-8 without a mark.
 *
 * @param rows     rows of cells, the header first; a cell is quoted where it must be
 * @param lineEnd  ends every line, the last one too
 */
export function csvText(rows: readonly (readonly string[])[], lineEnd = '\n'): string {
  return rows.map((row) => row.map(csvCell).join(',') + lineEnd).join('');
}
