import { nth } from '../numerics/element.ts';

/** A filled row of a workbook's sheet. */
export interface SheetRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file of the trial folder as it was found on disk, or a sheet of a workbook. */
export interface SourceFile {
  /** Path from the trial folder, with `/`; a sheet's name after `#`. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Rows of a sheet; a sheet has no bytes of its own. */
  readonly rows?: readonly SheetRow[];
}

export type Decoded =
  | {
      readonly kind: 'text';
      readonly text: string;
      /** Line of the first letter that was read as Windows-1252; null where the text is Unicode. */
      readonly windowsLine: number | null;
    }
  | { readonly kind: 'not-text' }
  | { readonly kind: 'not-utf8'; readonly line: number };

const LINE_FEED = 10;

function hasBytes(bytes: Uint8Array, ...start: readonly number[]): boolean {
  return start.every((byte, i) => bytes[i] === byte);
}

/** Line of the first byte sequence that is not UTF-8, from 1. */
function firstBadLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  let start = 0;
  while (start < bytes.length) {
    const feed = bytes.indexOf(LINE_FEED, start);
    const end = feed < 0 ? bytes.length : feed + 1;
    try {
      decoder.decode(bytes.subarray(start, end));
    } catch {
      return line;
    }
    line++;
    start = end;
  }
  return line;
}

const unicode = (text: string): Decoded => ({ kind: 'text', text, windowsLine: null });

/** What the bytes 0x80 to 0x9f stand for in Windows-1252. @source Unicode Consortium, CP1252.TXT */
const WINDOWS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Some versions of Node read Windows-1252 as Latin-1, so that letters between 0x80 and 0x9f are put right here. */
function decodeWindows(bytes: Uint8Array): string {
  // oxlint-disable-next-line no-control-regex -- these control characters are what the letters came out as
  return new TextDecoder('latin1')
    .decode(bytes)
    .replace(/[\u0080-\u009f]/g, (wrong) => nth(WINDOWS, wrong.charCodeAt(0) - 0x80));
}

/** Bytes that stand for nothing in Windows-1252. */
const UNUSED = new Set([0x81, 0x8d, 0x8f, 0x90, 0x9d]);

/** True if the bytes can be Windows-1252 and hold nothing that is UTF-8 beyond ASCII. */
function isWindows(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; i++) {
    const byte = nth(bytes, i);
    if (UNUSED.has(byte) || (byte < 32 && byte !== 9 && byte !== 10 && byte !== 13)) return false;
    const next = bytes[i + 1] ?? 0;
    if (byte >= 0xc2 && byte <= 0xf4 && next >= 0x80 && next <= 0xbf) return false;
  }
  return true;
}

/**
 * Text of a file: UTF-8 with or without byte order mark, UTF-16 with one, Windows-1252 where no letter outside ASCII is
 * UTF-8 (a UTF-8 file with a few broken bytes is not taken for it).
 *
 * @param bytes  the whole file
 * @returns      the text without its byte order mark, or why there is none
 */
export function decodeText(bytes: Uint8Array): Decoded {
  if (hasBytes(bytes, 0xff, 0xfe)) return unicode(new TextDecoder('utf-16le').decode(bytes));
  if (hasBytes(bytes, 0xfe, 0xff)) return unicode(new TextDecoder('utf-16be').decode(bytes));
  if (bytes.subarray(0, 8192).includes(0)) return { kind: 'not-text' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0') ? { kind: 'not-text' } : unicode(text);
  } catch {
    const line = firstBadLine(bytes);
    if (!isWindows(bytes)) return { kind: 'not-utf8', line };
    return { kind: 'text', text: decodeWindows(bytes), windowsLine: line };
  }
}
