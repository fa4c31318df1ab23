/**
 * What a reader gets of every page type of the demo: npm run bench:site [-- address | --sizes]. Height, printed sheets,
 * words, drawings, elements, tab stops, faults that axe finds; then weight and Lighthouse figures, unless `--sizes`.
 * Needs a Chromium (CHROME_PATH or the usual names) and npx, which fetches Lighthouse; nothing is asserted.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { AxeBuilder } from '@axe-core/playwright';
import { freshContext, liveBrowser } from '../browser/browser.ts';
import { builtDemo } from '../sites/demoFolder.ts';
import { spawn } from 'node:child_process';

const LIGHTHOUSE = 'lighthouse@12.8.2';
const SIZES_ONLY = process.argv.includes('--sizes');
/** One page alone, where it is named. */
const ONLY = process.argv.slice(2).find((one) => one !== '--sizes');
const PAGES = [
  '',
  '2026/',
  '2026/sweet/',
  '2026/sweet/figures/',
  'varieties/',
  'next-season/',
  'your-weights/',
  'varieties/kiln-spark/',
  '2026/handout/',
  'seasons/',
  'glossary/',
  'data/',
  'data-notes/',
  'lines/smithy-cross/',
  'seed/',
  'methods/',
];
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.png': 'image/png',
  '.xml': 'application/xml',
};

const site = builtDemo();

const server = createServer((request, response) => {
  const path = join(site, decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname));
  const file = existsSync(path) && statSync(path).isDirectory() ? join(path, 'index.html') : path;
  if (!file.startsWith(site) || !existsSync(file)) return void response.writeHead(404).end();
  response.writeHead(200, {
    'content-type': TYPES[extname(file)] ?? 'text/plain',
    'content-encoding': 'gzip',
    'cache-control': 'max-age=31536000',
  });
  response.end(gzipSync(readFileSync(file)));
});
await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
const { port } = server.address() as AddressInfo;

/** Lighthouse's scores of a page, 0 to 100. */
async function scores(address: string): Promise<readonly string[]> {
  const args = [
    '-y',
    LIGHTHOUSE,
    `http://127.0.0.1:${port}/${address}`,
    '--output=json',
    '--quiet',
    '--chrome-flags=--headless --no-sandbox --disable-gpu',
  ];
  const run = spawn('npx', args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  run.stdout.on('data', (part) => (text += String(part)));
  await new Promise((ended) => run.once('close', ended));
  const { categories, audits } = JSON.parse(text) as {
    categories: Record<string, { score: number; auditRefs: { id: string; weight: number }[] }>;
    audits: Record<string, { score: number | null }>;
  };
  return Object.values(categories).map(({ score, auditRefs }) => {
    const failed = auditRefs
      .filter(({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9)
      .map(({ id }) => id);
    return `${Math.round(score * 100)}${failed.length > 0 ? ` (${failed.join(', ')})` : ''}`;
  });
}

/** Height in px at a width, and what axe finds there. */
async function atWidth(
  address: string,
  width: number,
  colorScheme: 'light' | 'dark',
): Promise<{ readonly height: number; readonly faults: number }> {
  const context = await freshContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  await page.goto(`http://127.0.0.1:${port}/${address}`);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  const { violations } = await new AxeBuilder({ page }).analyze();
  await context.close();
  return { height, faults: violations.length };
}

/** What a page is, counted in a browser. */
async function measured(address: string): Promise<readonly number[]> {
  const [wide, narrow] = [await atWidth(address, 1280, 'light'), await atWidth(address, 390, 'light')];
  const rest = [
    await atWidth(address, 320, 'light'),
    await atWidth(address, 320, 'dark'),
    await atWidth(address, 768, 'light'),
    await atWidth(address, 768, 'dark'),
    await atWidth(address, 1280, 'dark'),
  ];
  const page = await (await freshContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await page.goto(`http://127.0.0.1:${port}/${address}`);
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
  const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  const counts = await page.evaluate(() => [
    document.querySelector('main')!.innerText.split(/\s+/).length,
    document.querySelectorAll('main svg.strip, main svg.bars, main figure svg').length,
    document.querySelectorAll('*').length,
    document.querySelectorAll('a[href], button:not([hidden]), input, summary, [tabindex="0"]').length,
  ]);
  await page.context().close();
  const faults = [wide, narrow, ...rest].reduce((sum, own) => sum + own.faults, 0);
  return [wide.height, narrow.height, sheets, ...counts, faults];
}

const chosen = PAGES.filter((one) => ONLY === undefined || one === ONLY);
console.log('page                      px 1280  px 390  sheets  words  drawings  elements  tab stops  axe');
for (const address of chosen) {
  const [wide, narrow, sheets, words, drawings, elements, stops, faults] = (await measured(address)).map(String);
  console.log(
    `/${address.padEnd(24)} ${wide!.padStart(7)} ${narrow!.padStart(7)} ${sheets!.padStart(7)} ${words!.padStart(6)} ${drawings!.padStart(9)} ${elements!.padStart(9)} ${stops!.padStart(10)} ${faults!.padStart(4)}`,
  );
}
await (await liveBrowser()).close();
if (SIZES_ONLY) process.exit(0);

console.log('page                      kB gzip  performance, accessibility, best practices, SEO');
const gz = (path: string): number => gzipSync(readFileSync(join(site, path))).length / 1000;
for (const address of chosen) {
  const scripts = gz('assets/site.js') + (address === 'your-weights/' ? gz('assets/your-weights.js') : 0);
  const size = gz(`${address}index.html`) + gz('assets/keeprow.css') + scripts;
  console.log(`/${address.padEnd(24)} ${size.toFixed(0).padStart(6)}   ${(await scores(address)).join(', ')}`);
}
server.close();
