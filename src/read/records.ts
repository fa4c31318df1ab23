import { CsvError, parse } from 'csv-parse/sync';
import type { Place } from '../terms/place.ts';
import { cutBlocks } from './blocks.ts';
import type { Block, BlockFault } from './blocks.ts';
import { nth } from '../numerics/element.ts';

/** One record of a table: its cells as they stand in the file and the means to find each again. */
export interface RawRow {
  readonly cells: readonly string[];
  /** Physical line on which the record starts. */
  readonly line: number;
  readonly block: Block;
}

export type RecordFault = BlockFault | { readonly kind: 'quote-stray'; readonly line: number };

/** Blanks between a closing quote and the next mark are none of the cell's. */
const FORM = { relax_column_count: true, record_delimiter: ['\r\n', '\n', '\r'], rtrim: true };

function parseStrictly(text: string, delimiter: string): string[][] | null {
  try {
    return parse(text, { ...FORM, delimiter });
  } catch (fault) {
    if (fault instanceof CsvError) return null;
    throw fault;
  }
}

/** One record by itself; a quote inside an unquoted cell is a character like any other. */
function parseAlone(text: string, delimiter: string): readonly string[] | null {
  const strict = parseStrictly(text, delimiter);
  if (strict?.length === 1) return nth(strict, 0);
  const opens = text.startsWith('"') || text.includes(`${delimiter}"`);
  return opens ? null : text.replace(/[\r\n]+$/, '').split(delimiter);
}

function* quotedRows(block: Block, delimiter: string): Generator<RawRow | RecordFault> {
  const records = block.records ?? [];
  const rows = parseStrictly(block.text, delimiter);
  const agrees = rows?.length === records.length;
  for (let i = 0; i < records.length; i++) {
    const { start, line } = nth(records, i);
    const cells = agrees ? nth(rows, i) : parseAlone(block.text.slice(start, records[i + 1]?.start), delimiter);
    yield cells ? { cells, line, block } : { kind: 'quote-stray', line };
  }
}

/** Takes lines that are as plain as can be before any cell is made of them; what it does not take goes the usual way. */
export interface PlainLines {
  /** True where it understands the line of a text that ends before `to`. */
  readonly look: (text: string, from: number, to: number) => boolean;
  /** Takes the line that it understood, once the rows before it have been handed out. */
  readonly take: (line: number, raw: () => RawRow) => void;
}

/** How unquoted text is parsed: a line is a record. */
interface UnquotedForm {
  readonly delimiter: string;
  readonly record_delimiter: string[];
}

function* unquotedRows(text: string, line: number, block: Block, form: UnquotedForm): Generator<RawRow> {
  const rows = parse(text, { ...form, relax_column_count: true, quote: null });
  for (let i = 0; i < rows.length; i++) yield { cells: nth(rows, i), line: line + i, block };
}

/** Rows of an unquoted block that are not taken before. */
function* rowsBesides(block: Block, form: UnquotedForm, plain: PlainLines, after: number): Generator<RawRow> {
  const { text } = block;
  let [from, line, left, leftLine] = [0, block.line, 0, block.line];
  while (from < text.length) {
    const feed = text.indexOf('\n', from);
    const next = feed < 0 ? text.length : feed + 1;
    const end = feed < 0 ? next : feed > from && text[feed - 1] === '\r' ? feed - 1 : feed;
    if (line > after && plain.look(text, from, end)) {
      if (left < from) yield* unquotedRows(text.slice(left, from), leftLine, block, form);
      const [start, own] = [from, line];
      plain.take(line, () => ({ cells: text.slice(start, end).split(form.delimiter), line: own, block }));
      [left, leftLine] = [next, line + 1];
    }
    [from, line] = [next, line + 1];
  }
  if (left < text.length) yield* unquotedRows(text.slice(left), leftLine, block, form);
}

/**
 * Records of a table, with the line each starts on.
 *
 * @param text       the table
 * @param delimiter  the mark between cells
 * @param plain      takes plain lines behind line `after`: they are not handed out
 */
export function* readRecords(
  text: string,
  delimiter: string,
  plain: PlainLines | null = null,
  after = 0,
): Generator<RawRow | RecordFault> {
  // Where lines end with a return alone they are not told apart by their line feeds.
  const taker = plain && !(text.includes('\r') && /\r(?!\n)/.test(text)) ? plain : null;
  const recordDelimiter = text.includes('\r') ? ['\r\n', '\n', '\r'] : ['\n'];
  for (const block of cutBlocks(text, delimiter)) {
    if ('kind' in block) {
      yield block;
      return;
    }
    if (block.records) {
      yield* quotedRows(block, delimiter);
      continue;
    }
    const form = { delimiter, record_delimiter: recordDelimiter };
    if (taker) yield* rowsBesides(block, form, taker, after);
    else yield* unquotedRows(block.text, block.line, block, form);
  }
}

/** Start of every physical line of a block, found once and only when a problem needs it. */
const lineStarts = new WeakMap<Block, number[]>();

function startOfLine(block: Block, line: number): number {
  let starts = lineStarts.get(block);
  if (!starts) {
    starts = [0];
    for (const end of block.text.matchAll(/\r\n|\n|\r/g)) starts.push(end.index + end[0].length);
    lineStarts.set(block, starts);
  }
  return starts[line - block.line] ?? 0;
}

/** Characters before a cell in its record. */
function offsetOfCell(text: string, start: number, index: number, delimiter: string): number {
  let cell = 0;
  let i = start;
  while (cell < index && i < text.length) {
    if (text[i] === '"') {
      i++;
      while (i < text.length && !(text[i] === '"' && text[i + 1] !== '"')) i += text[i] === '"' ? 2 : 1;
      i++;
    }
    while (i < text.length && text[i] !== delimiter) i++;
    i++;
    cell++;
  }
  return text.slice(start, i).length;
}

/**
 * Place of a cell: the line on which its record starts, and the character at which the cell starts,
 * counted from the start of the record.
 */
export function placeOfCell(file: string, row: RawRow, index: number, delimiter: string): Place {
  const start = startOfLine(row.block, row.line);
  return { file, line: row.line, column: offsetOfCell(row.block.text, start, index, delimiter) + 1 };
}
