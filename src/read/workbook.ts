import { read } from '@e965/xlsx';
import type { CellObject, Range, WorkBook } from '@e965/xlsx';
import type { SheetRow, SourceFile } from './decode.ts';

export type Workbook =
  | { readonly kind: 'sheets'; readonly sheets: readonly SourceFile[] }
  | { readonly kind: 'workbook-unreadable'; readonly detail: string };

const MS_A_DAY = 86_400_000;
const LAST_TIME = Date.UTC(9999, 11, 31);
/** No table of ours is wider; what stands beyond is told by the count of columns alone. */
const WIDEST = 1001;

function dateText(date: Date): string {
  const time = date.getTime();
  // No calendar has it: what a spreadsheet shows as #####.
  if (Number.isNaN(time) || Math.abs(time) > LAST_TIME) return '#VALUE!';
  const iso = date.toISOString();
  return time % MS_A_DAY === 0 ? iso.slice(0, 10) : iso.slice(0, 19).replace('T', ' ');
}

/** A cell as the text that a table would hold: dates year first, numbers with a point, yes or no, errors by name. */
function cellText(cell: CellObject | undefined): string {
  if (!cell) return '';
  const { t, v, w, f } = cell;
  if (t === 'e') return w ?? '#VALUE!';
  if (v === undefined || v === null) return f === undefined ? '' : `=${f}`;
  if (v instanceof Date) return dateText(v);
  if (typeof v === 'boolean') return v ? 'yes' : 'no';
  return typeof v === 'number' ? numberText(v, String(cell.z ?? '')) : v;
}

/** Words that a number format puts before and after the number, as 0.0" kg" does. */
function formatWords(format: string): { readonly before: string; readonly after: string } {
  const [positive = ''] = format.split(';');
  const plain = positive.replaceAll(/\[[^\]]*\]|_.|\*./g, '').replaceAll(/\\(.)/g, '"$1"');
  const parts = /^((?:"[^"]*"|\s)*)[#0?,. ]*((?:"[^"]*"|\s)*)$/.exec(plain);
  const words = (text: string | undefined): string => (text ?? '').replaceAll('"', '').trim();
  return { before: words(parts?.[1]), after: words(parts?.[2]) };
}

/** A number as the sheet shows it, with the unit or the per cent sign that its format adds, and all its digits. */
function numberText(value: number, format: string): string {
  // Spreadsheets keep 15 digits of meaning; the rest is rounding.
  const digits = (number: number): string => String(Number(number.toPrecision(15)));
  // A format that changes with the value, or shows thousands of it, says nothing that can be relied on.
  if (/\[[<>=]|[#0?],+(?:[^#0?]*$|;)/.test(format)) return digits(value);
  if (/^[#0?,.\s]*%$/.test(format)) return `${digits(100 * value)} %`;
  const { before, after } = formatWords(format);
  return [before, digits(value), after].filter((text) => text !== '').join(' ');
}

function rowsOf(cells: readonly (readonly (CellObject | undefined)[] | undefined)[]): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  cells.forEach((row, i) => {
    if (!row) return;
    const texts = Array.from(row, cellText);
    while (texts.length > 0 && texts.at(-1) === '') texts.pop();
    if (texts.length > 0) rows.push({ line: i + 1, cells: texts });
  });
  const width = Math.min(
    WIDEST,
    rows.reduce((widest, { cells: own }) => Math.max(widest, own.length), 0),
  );
  return rows.map(({ line, cells: own }) => ({
    line,
    cells: [...own.slice(0, width), ...Array.from({ length: Math.max(0, width - own.length) }, () => '')],
  }));
}

/** Rows that merged cells of a sheet span, added up. */
const MOST_SPANNED = 2_000_000;

const MERGED: CellObject = { t: 's', v: 'merged cells' };

/**
 * Cells merged down a column hold what the first of them does: a date over the rows of its day. A number over several
 * rows is one of them all together, and cannot be told apart: it is left unreadable.
 */
function filled(
  data: readonly (readonly (CellObject | undefined)[] | undefined)[],
  merges: readonly Range[],
): readonly (readonly (CellObject | undefined)[] | undefined)[] {
  if (merges.length === 0) return data;
  const rows = Array.from(data, (row) => (row ? [...row] : undefined));
  let spanned = 0;
  for (const { s: start, e: end } of merges) {
    if (start.c !== end.c) continue;
    spanned += Math.min(end.r, rows.length - 1) - start.r;
    if (spanned > MOST_SPANNED) throw new RangeError('its merged cells span more than 2,000,000 rows in all');
    const first = rows[start.r]?.[start.c];
    const shared: CellObject | undefined = first?.t === 'n' && !(first.v instanceof Date) ? MERGED : first;
    for (let r = start.r + 1; r <= Math.min(end.r, rows.length - 1); r++) {
      const row = rows[r];
      // Only rows that hold something are rows.
      if (row?.some((cell) => cell !== undefined && cell.t !== 'z')) row[start.c] = shared;
    }
    if (shared === MERGED) rows[start.r]![start.c] = MERGED;
  }
  return rows;
}

/**
 * Reads the sheets of a workbook as tables.
 *
 * @param source  an .xlsx or .ods file
 * @returns       a table for each filled sheet, `path#sheet` as its path, or why there is none
 */
export function readWorkbook({ path, bytes }: SourceFile): Workbook {
  try {
    const book = read(bytes, {
      type: 'array',
      dense: true,
      cellDates: true,
      UTC: true,
      cellHTML: false,
      cellText: true,
      cellNF: true,
    });
    return { kind: 'sheets', sheets: sheetsOf(book, path) };
  } catch (fault) {
    return { kind: 'workbook-unreadable', detail: fault instanceof Error ? fault.message : String(fault) };
  }
}

function sheetsOf(book: WorkBook, path: string): readonly SourceFile[] {
  return book.SheetNames.flatMap((name) => {
    const data = (book.Sheets[name] as { '!data'?: readonly (readonly CellObject[])[] } | undefined)?.['!data'];
    const rows = data ? rowsOf(filled(data, book.Sheets[name]?.['!merges'] ?? [])) : [];
    return rows.length === 0 ? [] : [{ path: `${path}#${name}`, bytes: new Uint8Array(), rows }];
  });
}
