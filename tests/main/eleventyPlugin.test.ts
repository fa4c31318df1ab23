import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'keeprow-eleventy-'));
const eleventy = (): { readonly status: number | null; readonly said: string } => {
  const run = spawnSync(process.execPath, [join(root, 'node_modules/@11ty/eleventy/cmd.cjs')], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { status: run.status, said: run.stdout + run.stderr };
};
const page = (path: string): string => readFileSync(join(folder, '_site', path), 'utf8');

/** A club's own site: a page in a layout, a collection, and the report below /trial/. */
beforeAll(() => {
  mkdirSync(join(folder, 'node_modules'), { recursive: true });
  symlinkSync(root, join(folder, 'node_modules/keeprow'), 'dir');
  mkdirSync(join(folder, '_includes'));
  const files = {
    'package.json': '{"type": "module"}',
    'eleventy.config.js':
      "import keeprow from 'keeprow/eleventy';\n\nexport default async function (config) {\n  await config.addPlugin(keeprow, { folder: 'trial', address: 'trial/' });\n}\n",
    '.eleventyignore': 'trial/\n',
    '_includes/club.njk': '<!doctype html><title>Club</title><main>{{ content | safe }}</main>',
    'index.md':
      '---\nlayout: club.njk\n---\n# Our club\n\n{% for own in collections.all %}[{{ own.url }}]{% endfor %}\n',
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  cpSync(join(root, 'data'), join(folder, 'trial/data'), { recursive: true });
  cpSync(join(root, 'content'), join(folder, 'trial/content'), { recursive: true });
  writeFileSync(join(folder, 'trial/content/index.md'), 'Braces stay as they are: {{ collections.all }}\n');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a club’s own Eleventy site that takes the report in', () => {
  it('has both, and neither changes the other', () => {
    const { status, said } = eleventy();
    expect(said).not.toContain('Error');
    expect(status).toBe(0);
    expect(page('index.html')).toContain('<h1>Our club</h1>');
    // The site's own collection holds its own page alone.
    expect(page('index.html')).toContain('[/]</p>');
    expect(page('trial/index.html')).toContain('{{ collections.all }}');
    expect(page('trial/2026/index.html')).toContain('../assets/keeprow.css');
    for (const path of ['results.json', 'figures.csv', '2026/plantings.csv', 'feed.xml', 'assets/keeprow.css'])
      expect([path, existsSync(join(folder, '_site/trial', path))]).toEqual([path, true]);
    expect(JSON.parse(page('trial/results.json'))).toMatchObject({ format: 'keeprow-results/1' });
  });
  it('stops with the problems where the records have errors', () => {
    writeFileSync(join(folder, 'trial/data/2026/weather.csv'), 'date,tmin_c\nnonsense,1\n');
    const { status, said } = eleventy();
    expect(status).not.toBe(0);
    expect(said).toContain('data/2026/weather.csv:1:1 error column-missing');
  });
});
