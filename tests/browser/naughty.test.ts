import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { stringify as yaml } from 'yaml';
import { afterAll, expect, it } from 'vitest';
import { csvCell } from '../../src/terms/csv.ts';
import { INVISIBLES } from '../../src/terms/names.ts';
import { command } from '../sites/demoFolder.ts';
import { freshContext, liveBrowser } from './browser.ts';

// big-list-of-naughty-strings 1.0.0 (MIT): the Big List of Naughty Strings, every string in every field of text that a grower can fill in.
const STRINGS = (createRequire(import.meta.url)('big-list-of-naughty-strings') as readonly string[]).filter(
  (text) => text.trim() !== '',
);
const EACH = 12;
const batches = Array.from({ length: Math.ceil(STRINGS.length / EACH) }, (_, i) =>
  STRINGS.slice(i * EACH, (i + 1) * EACH),
);
/** Strings of a batch in one cell; the number keeps names apart, and a cell from being a formula as a whole. */
const cell = (batch: readonly string[], i: number): string => `${i} ${batch.join(' ¦ ')}`;

function naughtyTrial(): string {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-naughty-'));
  const put = (path: string, text: string): void => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  const table = (path: string, rows: readonly (readonly string[])[]): void =>
    put(path, rows.map((row) => `${row.map(csvCell).join(',')}\n`).join(''));
  const texts = batches.map(cell);
  put(
    'data/trial.yaml',
    yaml({
      title: cell(STRINGS, 0),
      place: cell(STRINGS, 1),
      seasons: { 2026: { transplanted: '2026-05-20', harvests: 'complete' } },
      classes: Object.fromEntries(texts.map((name, i) => [`c${i}`, { name }])),
      traits: { flavour: { kind: 'rating', from: 1, to: 9, better: 'higher' } },
      publish: { show: ['source', 'notes', 'remark'], people: 'names' },
    }),
  );
  table('data/varieties.csv', [
    ['variety', 'name', 'class', 'source', 'notes', 'remark'],
    ...texts.map((text, i) => [`v${i}`, text, `c${i}`, text, text, text]),
  ]);
  table('data/2026/plantings.csv', [
    ['planting', 'variety', 'bed', 'block', 'notes', 'remark', 'row', 'column'],
    ...texts.map((text, i) => [text.slice(0, 60), `v${i}`, text, '', text, text, String(i + 1), '1']),
  ]);
  table('data/2026/harvests.csv', [
    ['date', 'variety', 'fruits', 'weight_g', 'notes'],
    ...texts.map((text, i) => ['2026-08-03', `v${i}`, '3', '120', text]),
  ]);
  table('data/2026/observations.csv', [
    ['date', 'variety', 'event', 'notes'],
    ...texts.map((text, i) => ['2026-08-03', `v${i}`, text, text]),
  ]);
  table('data/2026/ratings.csv', [
    ['date', 'taster', 'variety', 'flavour', 'notes'],
    ...texts.map((text, i) => ['2026-09-03', text, `v${i}`, '5', text]),
  ]);
  put('content/pages/strings.md', `# Strings\n\n${STRINGS.map((text) => text.replaceAll('{', '(')).join('\n\n')}\n`);
  batches.forEach((batch, i) =>
    put(`content/varieties/v${i}.md`, batch.map((text) => text.replaceAll('{', '(')).join('\n\n')),
  );
  return folder;
}

/** Text without what cannot be seen, blanks counted once: what a page and a cell have in common. */
const visible = (text: string): string =>
  text
    .normalize('NFC')
    .replaceAll(INVISIBLES, '')
    .replaceAll(/[\s\p{Cc}\u180e]+/gu, ' ')
    .trim();

afterAll(async () => (await liveBrowser()).close());

it('shows every naughty string as it is, runs none, and breaks no rule of the page', { retry: 2 }, async () => {
  const folder = naughtyTrial();
  const built = spawnSync(process.execPath, [command, 'build', folder, '--quiet'], { encoding: 'utf8' });
  expect(built.stderr).not.toMatch(/ {4}at /);
  expect(built.status, built.stderr.slice(0, 2000)).toBe(0);
  const context = await freshContext();
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('dialog', (dialog) => {
    faults.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  page.on('pageerror', (fault) => faults.push(String(fault)));
  page.on('request', (request) => request.url().startsWith('file:') || faults.push(request.url()));
  const open = async (address: string): Promise<string> => {
    await page.goto(pathToFileURL(join(folder, '_site', address, 'index.html')).href);
    return visible(await page.evaluate(() => document.documentElement.textContent));
  };
  for (const [i, batch] of batches.entries()) {
    const text = await open(`varieties/v${i}`);
    const missing = [cell(batch, i)].filter((own) => text.split(visible(own)).length < 4);
    expect(missing, `v${i}: ${text.slice(0, 400)}`).toEqual([]);
  }
  const addresses = readdirSync(join(folder, '_site'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('index.html') && !path.startsWith('varieties'))
    .map(dirname);
  expect(addresses.length).toBeGreaterThan(10);
  for (const address of addresses) await open(address);
  expect(await open('')).toContain(visible(cell(STRINGS, 0)));
  expect(faults).toEqual([]);
  await context.close();
});
