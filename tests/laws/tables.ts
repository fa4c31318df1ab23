import * as fc from 'fast-check';
import { csvCell } from '../../src/terms/csv.ts';
import { openTable } from '../../src/read/table.ts';

/** A table as it may be written: its cells, the mark between them, the line ends, the encoding. */
export interface WrittenTable {
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
  readonly lineEnd: string;
  readonly encoding: 'utf-8' | 'utf-8-bom' | 'utf-16le' | 'utf-16be';
  readonly hasLastEnd: boolean;
}

const plain = fc.string({ unit: 'grapheme', maxLength: 12 });
const marked = fc
  .array(fc.constantFrom('"', ',', ';', '\t', '|', '\n', '\r\n', '\r', ' ', 'a', '1,5', '“', 'é', '""', "'"), {
    maxLength: 6,
  })
  .map((parts) => parts.join(''));
/** Cells hold no null, and no half of a letter that UTF-16 keeps in two halves. */
const cells = fc
  .oneof(plain, marked, fc.constantFrom('', '0', '-', '2026-08-03', '<script>'))
  .map((text) => new TextDecoder().decode(new TextEncoder().encode(text.replaceAll('\0', ''))));

/** Random tables with a header of which every name is filled and has no mark, as a real header is. */
export const writtenTables: fc.Arbitrary<WrittenTable> = fc
  .record({
    width: fc.integer({ min: 2, max: 6 }),
    height: fc.integer({ min: 0, max: 8 }),
    cells: fc.array(cells, { minLength: 48, maxLength: 48 }),
    delimiter: fc.constantFrom(',', ';', '\t', '|'),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    encoding: fc.constantFrom('utf-8' as const, 'utf-8-bom' as const, 'utf-16le' as const, 'utf-16be' as const),
    hasLastEnd: fc.boolean(),
  })
  .map(({ width, height, cells: own, ...rest }) => ({
    ...rest,
    rows: [
      Array.from({ length: width }, (_, i) => `column ${i}`),
      ...Array.from({ length: height }, (_, r) =>
        Array.from({ length: width }, (_, i) => own[(r * width + i) % own.length]!),
      ),
    ],
  }));

function bytesOf(text: string, encoding: WrittenTable['encoding']): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  if (encoding === 'utf-8-bom') return new TextEncoder().encode(`\ufeff${text}`);
  const bytes = Buffer.from(`\ufeff${text}`, 'utf16le');
  return encoding === 'utf-16le' ? bytes : bytes.swap16();
}

/** The table as a file's bytes; cells quoted where they have to be. */
export function written({ rows, delimiter, lineEnd, encoding, hasLastEnd }: WrittenTable): Uint8Array {
  const quoted = (cell: string): string => {
    const needs = cell.includes(delimiter) || cell.startsWith('"') || /^\s|\s$/.test(cell);
    return needs && !/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : csvCell(cell);
  };
  const text = rows.map((row) => row.map(quoted).join(delimiter)).join(lineEnd);
  return bytesOf(hasLastEnd ? text + lineEnd : text, encoding);
}

/** The filled rows of a table as they are read back, or what keeps it from being read. */
export function readBack(bytes: Uint8Array): readonly (readonly string[])[] | string {
  const table = openTable({ path: 'data/x.csv', bytes });
  if ('kind' in table) return table.kind;
  const rows: (readonly string[])[] = [table.header.cells];
  for (const row of table.rows()) {
    if ('kind' in row) return row.kind;
    rows.push(row.cells);
  }
  return rows;
}

export const filledRows = (rows: readonly (readonly string[])[]): readonly (readonly string[])[] =>
  rows.filter((row) => row.some((cell) => cell.trim() !== ''));
