import { inflateRawSync } from 'node:zlib';
import type { SourceFile } from '../read/decode.ts';
import { whyTooLarge } from '../read/workbookLimits.ts';

/** A workbook of a grower's seasons unpacks to a few megabytes; more is a mistake or an attack. */
const MOST_UNPACKED = 60 * 2 ** 20;
const MOST_ENTRIES = 2000;

const END_SIGN = Buffer.from([0x50, 0x4b, 5, 6]);
const BROKEN = 'its list of parts is broken';
const ENTRY = 0x02014b50;
const STORED = 0;
const DEFLATED = 8;

/** A part of a ZIP file as its list and its own head name it. */
interface Part {
  readonly name: string;
  readonly method: number;
  readonly packed: Buffer;
  readonly declared: number;
  readonly isSame: boolean;
}

function partAt(bytes: Buffer, at: number): Part | null {
  if (at + 46 > bytes.length || bytes.readUInt32LE(at) !== ENTRY) return null;
  const local = bytes.readUInt32LE(at + 42);
  if (local + 30 > bytes.length) return null;
  const method = bytes.readUInt16LE(at + 10);
  const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
  return {
    name: bytes.toString('utf8', at + 46, at + 46 + bytes.readUInt16LE(at + 28)),
    method,
    packed: bytes.subarray(start, start + bytes.readUInt32LE(at + 20)),
    declared: bytes.readUInt32LE(at + 24),
    isSame: bytes.readUInt16LE(local + 8) === method,
  };
}

/**
 * Unpacks every part of a ZIP file to know how much there is before anything else reads it. A file that says one thing
 * in two ways is refused, since another reader may believe the other.
 *
 * @returns why the file is not to be opened; null if it is sound
 * @source PKWARE (2022) .ZIP File Format Specification 6.3.10, §4.3.7, §4.3.12 and §4.3.16
 */
function whyUnsafe(bytes: Buffer): string | null {
  const end = bytes.lastIndexOf(END_SIGN);
  if (end < 0 || end + 22 > bytes.length) return 'it is not a workbook';
  const entries = bytes.readUInt16LE(end + 10);
  const isWhole = end + 22 + bytes.readUInt16LE(end + 20) === bytes.length && bytes.readUInt16LE(end + 8) === entries;
  if (!isWhole) return BROKEN;
  if (entries > MOST_ENTRIES) return 'it holds too many parts';
  let at = bytes.readUInt32LE(end + 16);
  let left = MOST_UNPACKED;
  const texts = new Map<string, string>();
  for (let i = 0; i < entries; i++) {
    const part = partAt(bytes, at);
    if (!part?.isSame) return BROKEN;
    at += 46 + bytes.readUInt16LE(at + 28) + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
    if (part.method !== STORED && part.method !== DEFLATED) return 'it is packed in a way that spreadsheets do not use';
    const whole = part.method === STORED ? part.packed : unpacked(part.packed, left);
    if (whole === 'too-large' || whole.length > left || part.declared > left)
      return `it unpacks to more than ${MOST_UNPACKED / 2 ** 20} MB`;
    if (whole.length !== part.declared) return BROKEN;
    left -= whole.length;
    if (texts.has(part.name)) return BROKEN;
    texts.set(part.name, /\.(?:xml|rels)$/i.test(part.name) ? whole.toString('utf8') : '');
  }
  return whyTooLarge(texts);
}

/** A part as it was before it was packed; empty where it cannot be unpacked, which its declared size contradicts. */
function unpacked(packed: Buffer, limit: number): Buffer | 'too-large' {
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, limit) });
  } catch (fault) {
    return fault instanceof RangeError ? 'too-large' : Buffer.alloc(0);
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
