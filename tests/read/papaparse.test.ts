import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createContext, runInContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/read/decode.ts';
import { findDelimiter } from '../../src/read/delimiter.ts';
import { readRecords } from '../../src/read/records.ts';

// papaparse 5.7.1 (MIT), tests/test-cases.js: the cases of its reader that are about how a table is written.
interface Case {
  readonly description: string;
  readonly input: string;
  readonly config?: Readonly<Record<string, unknown>>;
  readonly expected: { readonly data: readonly (readonly string[])[]; readonly errors?: readonly unknown[] };
}

function suite(): Readonly<Record<'CORE_PARSER_TESTS' | 'PARSE_TESTS', readonly Case[]>> {
  const require = createRequire(import.meta.url);
  const none = Object.assign((): void => {}, { skip: (): void => {} });
  const context = createContext({ chai: { assert: {} }, Papa: require('papaparse'), describe: none, it: none });
  runInContext(readFileSync(require.resolve('papaparse/tests/test-cases.js'), 'utf8'), context);
  return context as ReturnType<typeof suite>;
}

/** Settings of that reader which change what it gives, not how a table is written. */
const OTHER_SETTINGS = [
  'header',
  'transform',
  'transformHeader',
  'dynamicTyping',
  'preview',
  'comments',
  'step',
  'chunk',
  'worker',
  'skipEmptyLines',
  'fastMode',
  'delimitersToGuess',
  'escapeChar',
  'quoteChar',
  'newline',
  'beforeFirstChunk',
  'skipFirstNLines',
  'download',
  'complete',
  'error',
];

/** Where a grower's table is read otherwise, and why. */
const OTHERWISE: Readonly<Record<string, string>> = {
  'Quoted field has no closing quote': 'an error placed at the quote; the rest of the file is not swallowed',
  'Quoted field has invalid trailing quote after delimiter with a valid closer': 'an error: a stray quote',
  'Quoted field has invalid trailing quote after delimiter': 'an error: a stray quote',
  'Quoted field has invalid trailing quote before delimiter': 'an error: a stray quote',
  'Quoted field has invalid trailing quote after new line': 'an error: a stray quote',
  'Mixed slash n and slash r should choose first as precident': 'line ends of several kinds end lines alike',
  'Bad delimiter (\\n)': 'a line end is never a mark between cells',
};

const cases = Object.entries({ core: suite().CORE_PARSER_TESTS, parse: suite().PARSE_TESTS }).flatMap(([group, list]) =>
  list
    .filter(({ config = {} }) => !OTHER_SETTINGS.some((key) => config[key] !== undefined))
    .filter(
      ({ config = {} }) =>
        config['delimiter'] === undefined ||
        (typeof config['delimiter'] === 'string' && config['delimiter'].length === 1),
    )
    .map((own) => ({ ...own, group })),
);

function read({ input: written, config = {} }: Case): readonly (readonly string[])[] | string {
  const decoded = decodeText(new TextEncoder().encode(written));
  const input = decoded.kind === 'text' ? decoded.text : written;
  const delimiter = (config['delimiter'] as string | undefined) ?? findDelimiter(input);
  const rows: (readonly string[])[] = [];
  for (const row of readRecords(input, delimiter)) {
    if ('kind' in row) return row.kind;
    rows.push(row.cells);
  }
  return rows;
}
const filled = (rows: readonly (readonly string[])[]) => rows.filter((row) => row.some((cell) => cell.trim() !== ''));

describe('dialects of another reader', () => {
  it('has its cases, and a reason for every one that is read otherwise', () => {
    expect(cases.length).toBe(82);
    for (const description of Object.keys(OTHERWISE))
      expect(cases.map((own) => own.description)).toContain(description);
  });
  it.each(cases.map((own) => [`${own.group}: ${own.description}`, own] as const))('%s', (_, own) => {
    const found = read(own);
    const reason = OTHERWISE[own.description];
    if (reason !== undefined) {
      expect(found).not.toEqual(own.expected.data);
      return;
    }
    expect(typeof found === 'string' ? found : filled(found)).toEqual(filled(own.expected.data));
  });
});
