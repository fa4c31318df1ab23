import { inflateRawSync } from 'node:zlib';
import type { SourceFile } from '../read/decode.ts';

/** A workbook of a grower's seasons unpacks to a few megabytes; more is a mistake or an attack. */
const MOST_UNPACKED = 150 * 2 ** 20;
const MOST_ENTRIES = 2000;

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const STORED = 0;
const DEFLATED = 8;

/**
 * Unpacks every part of a ZIP file into nothing, to know how much there is before anything else reads it.
 *
 * @returns why the file is not to be opened; null if it is sound
 * @source PKWARE (2022) .ZIP File Format Specification 6.3.10, §4.3.12 and §4.3.16
 */
function whyUnsafe(bytes: Buffer): string | null {
  let end = bytes.length - 22;
  while (end >= 0 && end > bytes.length - 70_000 && bytes.readUInt32LE(end) !== END) end--;
  if (end < 0 || bytes.readUInt32LE(end) !== END) return 'it is not a workbook';
  const entries = bytes.readUInt16LE(end + 10);
  if (entries > MOST_ENTRIES) return 'it holds too many parts';
  let at = bytes.readUInt32LE(end + 16);
  let left = MOST_UNPACKED;
  for (let i = 0; i < entries; i++) {
    if (at + 46 > bytes.length || bytes.readUInt32LE(at) !== ENTRY) return 'its list of parts is broken';
    const method = bytes.readUInt16LE(at + 10);
    const size = bytes.readUInt32LE(at + 20);
    const local = bytes.readUInt32LE(at + 42);
    at += 46 + bytes.readUInt16LE(at + 28) + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
    if (local + 30 > bytes.length) return 'its list of parts is broken';
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    if (method === STORED) left -= size;
    else if (method !== DEFLATED) return 'it is packed in a way that spreadsheets do not use';
    else left -= unpackedSize(bytes.subarray(start, start + size), left);
    if (left < 0) return `it unpacks to more than ${MOST_UNPACKED / 2 ** 20} MB`;
  }
  return null;
}

/** Size of a part; one more than the limit where it is larger, 0 where it cannot be unpacked. */
function unpackedSize(packed: Buffer, limit: number): number {
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, limit) }).length;
  } catch (fault) {
    return fault instanceof RangeError ? limit + 1 : 0;
  }
}

export interface UnreadWorkbook {
  readonly path: string;
  readonly detail: string;
}

/** Does something without the remarks that a library makes on the console. */
function quietly<T>(what: () => T): T {
  const { error } = console;
  console.error = () => {};
  try {
    return what();
  } finally {
    console.error = error;
  }
}

/** Sheets of the workbooks among some files, and the workbooks that cannot be read. */
export async function openWorkbooks(
  books: readonly SourceFile[],
): Promise<{ readonly sheets: readonly SourceFile[]; readonly unread: readonly UnreadWorkbook[] }> {
  const sheets: SourceFile[] = [];
  const unread: UnreadWorkbook[] = [];
  if (books.length === 0) return { sheets, unread };
  const { readWorkbook } = await import('../read/workbook.ts');
  for (const source of books) {
    const why = whyUnsafe(Buffer.from(source.bytes));
    const book =
      why === null ? quietly(() => readWorkbook(source)) : { kind: 'workbook-unreadable' as const, detail: why };
    if (book.kind === 'sheets') sheets.push(...book.sheets);
    else unread.push({ path: source.path, detail: book.detail });
  }
  return { sheets, unread };
}
