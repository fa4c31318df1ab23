/**
 * Where something stands in the records: a file of the trial folder, and a line and character in it (both from 1). In
 * a workbook the file has its sheet after `#`, and row and column are those of the cell.
 */
export interface Place {
  readonly file: string;
  readonly line: number | null;
  readonly column: number | null;
}

/** The place of a whole file or folder. */
export function fileOnly(file: string): Place {
  return { file, line: null, column: null };
}

/** A place in a workbook: its file, sheet and cell; null for any other place. */
export function sheetPlace({ file, line, column }: Place): {
  readonly file: string;
  readonly sheet: string;
  readonly cell: string | null;
} | null {
  const parts = /^(.*\.(?:xlsx|ods))#(.*)$/is.exec(file);
  if (!parts) return null;
  const cell = line === null ? null : `${columnLetters(column ?? 1)}${line}`;
  return { file: parts[1]!, sheet: parts[2]!, cell };
}

/** A column's letters as spreadsheets show them: 1 is A, 27 is AA. */
function columnLetters(column: number): string {
  let letters = '';
  for (let left = column; left > 0; left = Math.floor((left - 1) / 26))
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  return letters;
}

/** A place in words for people: `data/2026/harvests.csv:14:18`, or `data/2026.xlsx, sheet harvests, C14`. */
export function placeText(place: Place): string {
  const sheet = sheetPlace(place);
  if (sheet) return [sheet.file, `sheet ${sheet.sheet}`, ...(sheet.cell === null ? [] : [sheet.cell])].join(', ');
  const { file, line, column } = place;
  return line === null ? file : `${file}:${line}${column === null ? '' : `:${column}`}`;
}
