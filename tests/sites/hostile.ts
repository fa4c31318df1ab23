import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { stringify } from 'yaml';
import { csvCell } from '../../src/terms/csv.ts';
import { randomStream } from '../../src/numerics/random.ts';
import type { Folder } from './folder.ts';

/** A sound small trial. */
export const SMALL: Folder = {
  'trial.yaml': 'title: Small\nclasses: {a: {}}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n',
  'varieties.csv': 'variety,class\none,a\ntwo,a\n',
  '2026/plantings.csv': 'planting,variety\np1,one\np2,two\n',
};

/** Writes a folder held in memory to disk. */
export function writeTrial(folder: string, files: Folder): void {
  for (const [path, text] of Object.entries(files)) {
    const full = join(folder, path.startsWith('../') ? path.slice(3) : `data/${path}`);
    mkdirSync(dirname(full), { recursive: true });
    writeFileSync(full, text);
  }
}

const PARTS = [
  '..',
  '../..',
  '/',
  '\\',
  '//',
  '/etc/passwd',
  '~',
  '.',
  '%2e%2e%2f',
  '..%2f',
  '\u2025',
  '\uff0e\uff0e\uff0f',
  'con',
  'NUL',
  'aux',
  'com1',
  'lpt1.txt',
  'C:',
  '\\\\host\\share',
  'file:///x',
  '$(touch x)',
  '`touch x`',
  '; rm x',
  '| touch x',
  '__proto__',
  'constructor',
  '<x>',
  '"',
  "'",
  '&',
  '?',
  '*',
  ':',
  '#',
  '\u202e',
  '\u200b',
  '\u0001',
  ' ',
  '-rf',
  '--out=x',
  'index',
  'assets',
  'results',
  'é',
  'ﬁ',
  'İ',
  'ß',
  'x'.repeat(300),
  '😀',
  '{{7*7}}',
  '${7*7}',
  '\t',
  'a',
];

/** A picture of one dot. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==',
  'base64',
);

const table = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\n`).join('');

/** Hostile names wherever a name can stand, ids and keys of the settings too: most of it is refused. */
function everywhere(names: readonly string[], uniform: () => number): Folder {
  const at = (i: number): string => names[i % names.length]!;
  const few = names.slice(0, 12);
  return {
    'trial.yaml': stringify({
      title: at(0),
      place: at(1),
      classes: Object.fromEntries(few.map((own, i) => [own, { name: at(i + 3) }])),
      traits: Object.fromEntries(
        few.slice(0, 4).map((own) => [own, { kind: 'rating', from: 1, to: 9, better: 'higher' }]),
      ),
    }),
    'varieties.csv': table([
      ['variety', 'name', 'class', 'former_ids'],
      ...names.map((own, i) => [
        uniform() < 0.2 ? own : `v${i}`,
        own,
        few[i % few.length]!,
        uniform() < 0.1 ? at(i + 7) : '',
      ]),
    ]),
    '2026/plantings.csv': table([['planting', 'variety'], ...names.map((own, i) => [own, `v${i}`])]),
    '../content/index.md': names.map((own) => `![${own}](${own}) {yield of ${own} in 2026}`).join('\n\n'),
  };
}

/** Hostile names only where any name may stand: the trial is sound and is built. */
function whereAllowed(names: readonly string[]): Folder {
  const own = names.map((name, i) => `${name} ${i}`);
  return {
    'trial.yaml': stringify({
      title: own[0],
      place: own[1],
      classes: { a: { name: own[2] } },
      seasons: { 2026: { transplanted: '2026-05-20', harvests: 'complete' } },
      publish: { show: ['source', 'notes', 'odd column'], people: 'names' },
    }),
    'varieties.csv': table([
      ['variety', 'name', 'class', 'source', 'notes', 'odd column'],
      ...own.map((name, i) => [`v${i}`, name, 'a', name, name, name]),
    ]),
    '2026/plantings.csv': table([
      ['planting', 'variety', 'bed', 'notes'],
      ...own.map((name, i) => [name, `v${i}`, name, name]),
    ]),
    '2026/harvests.csv': table([
      ['date', 'planting', 'fruits', 'weight_g'],
      ...own.map((name) => ['2026-08-01', name, '3', '100']),
    ]),
    '../content/index.md': own.map((name) => `[${name}](<${name.replaceAll(/[<>\n]/g, '')}>)`).join('\n\n'),
  };
}

/**
 * A trial folder of hostile names, inside empty folders of its own.
 *
 * @returns the folder, the one above it, and what stands there that no build should have written
 */
export function hostileTrial(count: number, seed: number, isSound: boolean) {
  const { uniform } = randomStream(`hostile ${seed}`);
  const pick = (): string => PARTS[Math.floor(uniform() * PARTS.length)]!;
  const name = (): string =>
    Array.from({ length: 1 + Math.floor(uniform() * 3) }, pick).join(uniform() < 0.5 ? '' : '/');
  const names = Array.from({ length: count }, name);
  const above = mkdtempSync(join(tmpdir(), 'keeprow-hostile-'));
  const folder = join(above, 'a', 'b', 'trial');
  writeTrial(folder, isSound ? whereAllowed(names) : everywhere(names, uniform));
  const isFile = (own: string): boolean => !/[/\0]/.test(own) && Buffer.byteLength(own) < 200 && own.trim() !== '';
  for (const own of new Set(names.filter(isFile))) {
    for (const [path, bytes] of [
      [`content/photos/${own}.png`, PIXEL],
      [`content/pages/${own}.md`, `# ${own}\n\n![A dot](<photos/${own.replaceAll(/[<>\\]/g, '')}.png>)\n`],
    ] as const) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      // A page that names a photo which is not there is an error: only photos are written where the trial is sound.
      if (!isSound || path.endsWith('.png')) writeFileSync(join(folder, path), bytes);
    }
  }
  const strays = (): readonly string[] => [
    ...readdirSync(above, { recursive: true, encoding: 'utf8' }).filter(
      (path) => !/^a(?:\/b(?:\/trial(?:\/.*)?)?)?$/s.test(path),
    ),
    ...readdirSync(folder).filter((path) => !['data', 'content', '_site'].includes(path)),
    ...readdirSync(join(folder, 'data'), { recursive: true, encoding: 'utf8' }).filter(
      (path) => !/^(?:trial\.yaml|varieties\.csv|addresses\.csv|2026(?:\/(?:plantings|harvests)\.csv)?)$/.test(path),
    ),
  ];
  return { folder, strays };
}
