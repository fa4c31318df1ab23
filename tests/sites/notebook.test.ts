import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { utils, write } from '@e965/xlsx';
import { expect, it } from 'vitest';
import { command } from './demoFolder.ts';

/** Twenty invented varieties, two seasons of a notebook, and a sheet with a column for every picking day. */
const NAMES =
  'Aldersop,Bramscar,Candle Nab,Dunnock,Eelmoor,Fettle Long,Gatehurst,Hobthrush,Inglefell,Jackdaw,Kettlesing,Lambfoot,Mossthwaite,Nunwick,Otterhole,Penny Ghyll,Quernstone,Rookhope,Skelder,Thornmire'.split(
    ',',
  );
const DAYS = '25.7.,1.8.,8.8.,15.8.,22.8.,29.8.,5.9.,12.9.,19.9.,26.9.,3.10.,10.10.,26.10.'.split(',');
const TASTES = ['7', '7-9', '8+', '6', '5'];
const ANSWERS = ['yes', 'no', 'maybe', 'yes!', '?'];

const notebook = [
  'Year,Variety,# plants,Date planted,First ripe,Lbs,Taste,Grow again?,Notes',
  ...[2024, 2025].flatMap((year) =>
    NAMES.slice(0, year - 2010).map(
      (name, i) =>
        `${year},${name},${2 + (i % 3)},${15 + (i % 10)} May ${year},${1 + ((i * 7) % 28)} Aug ${year},${(1 + i / 4).toFixed(2)},${TASTES[i % 5]},${ANSWERS[(i + year) % 5]},`,
    ),
  ),
].join('\n');

const picked = (i: number, d: number): number => ((i * 5 + d * 3) % 4 === 0 ? 0 : 60 + ((i * 37 + d * 53) % 300));
const sheet: readonly (readonly string[])[] = [
  ['Variety', '# plants', 'Where', 'Date planted', ...DAYS, 'Taste', 'Grow again?', 'Notes'],
  ...NAMES.map((name, i) => [
    name,
    String(2 + (i % 2)),
    ['bed A', 'bed B', 'pots'][i % 3]!,
    '20.5.2026',
    ...DAYS.map((_, d) => (picked(i, d) === 0 ? '' : String(picked(i, d)))),
    TASTES[i % 5]!,
    ANSWERS[i % 3]!,
    '',
  ]),
];
const all = NAMES.reduce((sum, _, i) => sum + DAYS.reduce((own, __, d) => own + picked(i, d), 0), 0);
const pounds = [2024, 2025].map((year) =>
  NAMES.slice(0, year - 2010).reduce((sum, _, i) => sum + Number((1 + i / 4).toFixed(2)), 0),
);

interface Season {
  readonly season: number;
  readonly plantings: readonly { readonly plants: number; readonly traits: { readonly yield: number | null } }[];
}

it.each(['2026.csv', '2026.xlsx'])('a notebook of two seasons and %s become a site', (file) => {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-notebook-'));
  const run = (...args: readonly string[]) =>
    spawnSync(process.execPath, [command, ...args], { cwd: folder, encoding: 'utf8' });
  writeFileSync(join(folder, 'notebook.csv'), notebook);
  if (file.endsWith('.csv')) writeFileSync(join(folder, file), sheet.map((row) => row.join(';')).join('\n'));
  else {
    const book = utils.book_new();
    utils.book_append_sheet(book, utils.aoa_to_sheet(sheet.map((row) => [...row])), 'Pickings');
    writeFileSync(join(folder, file), write(book, { type: 'buffer', bookType: 'xlsx' }) as Uint8Array);
  }
  expect(run('new', 'club', '--from', 'notebook.csv').status).toBe(0);
  const first = run('adopt', 'notebook.csv', '--into', 'club');
  expect(first.status, first.stdout).toBe(0);
  const second = run('adopt', file, '--into', 'club');
  expect(second.status).toBe(1);
  const questions = second.stdout.split('To be said first\n')[1]!.trim().split('\n');
  expect(questions).toHaveLength(1);
  expect(questions[0]).toContain('--picked g');
  const answered = run('adopt', file, '--into', 'club', '--picked', 'g');
  expect(answered.status, answered.stdout + answered.stderr).toBe(0);
  const built = run('build', 'club', '--json');
  expect(built.status).toBe(0);
  const { problems } = JSON.parse(built.stdout) as { problems: readonly { readonly code: string }[] };
  expect(questions.length + problems.length, JSON.stringify(problems, null, 1)).toBeLessThanOrEqual(3);
  const { seasons } = JSON.parse(readFileSync(join(folder, 'club/_site/results.json'), 'utf8')) as {
    seasons: readonly Season[];
  };
  const grams = seasons.map(({ plantings }) =>
    plantings.reduce((sum, { plants, traits }) => sum + plants * (traits.yield ?? 0), 0),
  );
  expect(seasons.map(({ season }) => season)).toEqual([2024, 2025, 2026]);
  // 1 lb = 453.59237 g (international avoirdupois pound, 1959).
  expect(grams[0]).toBeCloseTo(pounds[0]! * 453.59237, 6);
  expect(grams[1]).toBeCloseTo(pounds[1]! * 453.59237, 6);
  expect(grams[2]).toBeCloseTo(all, 6);
});
