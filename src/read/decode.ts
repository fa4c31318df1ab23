/** A file of the trial folder as it was found on disk. */
export interface SourceFile {
  /** Path from the trial folder, with `/`. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

export type Decoded =
  | { readonly kind: 'text'; readonly text: string }
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

/**
 * Text of a file: UTF-8 with or without byte order mark, UTF-16 with one.
 *
 * @param bytes  the whole file
 * @returns      the text without its byte order mark, or why there is none
 */
export function decodeText(bytes: Uint8Array): Decoded {
  if (hasBytes(bytes, 0xff, 0xfe)) return { kind: 'text', text: new TextDecoder('utf-16le').decode(bytes) };
  if (hasBytes(bytes, 0xfe, 0xff)) return { kind: 'text', text: new TextDecoder('utf-16be').decode(bytes) };
  if (bytes.subarray(0, 8192).includes(0)) return { kind: 'not-text' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0') ? { kind: 'not-text' } : { kind: 'text', text };
  } catch {
    return { kind: 'not-utf8', line: firstBadLine(bytes) };
  }
}
