import { read } from '@e965/xlsx';
import type { CellObject, WorkBook } from '@e965/xlsx';
import type { SheetRow, SourceFile } from './decode.ts';

export type Workbook =
  | { readonly kind: 'sheets'; readonly sheets: readonly SourceFile[] }
  | { readonly kind: 'workbook-unreadable'; readonly detail: string };

const MS_A_DAY = 86_400_000;

function dateText(date: Date): string {
  const iso = date.toISOString();
  return date.getTime() % MS_A_DAY === 0 ? iso.slice(0, 10) : iso.slice(0, 19).replace('T', ' ');
}

/** A cell as the text that a table would hold: dates year first, numbers with a point, yes or no, errors by name. */
function cellText(cell: CellObject | undefined): string {
  if (!cell) return '';
  const { t, v, w, f } = cell;
  if (t === 'e') return w ?? '#VALUE!';
  if (v === undefined || v === null) return f === undefined ? '' : `=${f}`;
  if (v instanceof Date) return dateText(v);
  if (typeof v === 'boolean') return v ? 'yes' : 'no';
  // Spreadsheets keep 15 digits of meaning; the rest is rounding.
  return typeof v === 'number' ? String(Number(v.toPrecision(15))) : v;
}

function rowsOf(cells: readonly (readonly (CellObject | undefined)[] | undefined)[]): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  cells.forEach((row, i) => {
    if (!row) return;
    const texts = Array.from(row, cellText);
    while (texts.length > 0 && texts.at(-1) === '') texts.pop();
    if (texts.length > 0) rows.push({ line: i + 1, cells: texts });
  });
  const width = rows.reduce((widest, { cells: own }) => Math.max(widest, own.length), 0);
  return rows.map(({ line, cells: own }) => ({
    line,
    cells: [...own, ...Array.from({ length: width - own.length }, () => '')],
  }));
}

/**
 * Reads the sheets of a workbook as tables.
 *
 * @param source  an .xlsx or .ods file
 * @returns       a table for each filled sheet, `path#sheet` as its path, or why there is none
 */
export function readWorkbook({ path, bytes }: SourceFile): Workbook {
  let book: WorkBook;
  try {
    book = read(bytes, { type: 'array', dense: true, cellDates: true, UTC: true, cellHTML: false, cellText: true });
  } catch (fault) {
    return { kind: 'workbook-unreadable', detail: fault instanceof Error ? fault.message : String(fault) };
  }
  const sheets = book.SheetNames.flatMap((name) => {
    const data = (book.Sheets[name] as { '!data'?: readonly (readonly CellObject[])[] } | undefined)?.['!data'];
    const rows = data ? rowsOf(data) : [];
    return rows.length === 0 ? [] : [{ path: `${path}#${name}`, bytes: new Uint8Array(), rows }];
  });
  return { kind: 'sheets', sheets };
}
