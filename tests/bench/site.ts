/**
 * Weight and Lighthouse figures of every page type of the demo: npm run bench:site.
 * Needs a Chromium (CHROME_PATH or the usual names) and npx, which fetches Lighthouse; nothing is asserted.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { builtDemo } from '../sites/demoFolder.ts';
import { spawn } from 'node:child_process';

const LIGHTHOUSE = 'lighthouse@12.8.2';
/** One page alone, where it is named. */
const ONLY = process.argv[2];
const PAGES = [
  '',
  '2026/',
  'next-season/',
  'your-weights/',
  'varieties/kiln-spark/',
  '2026/handout/',
  'seasons/',
  'glossary/',
  'data/',
  'data-notes/',
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

console.log('page                      kB gzip  performance, accessibility, best practices, SEO');
const gz = (path: string): number => gzipSync(readFileSync(join(site, path))).length / 1000;
for (const address of PAGES.filter((one) => ONLY === undefined || one === ONLY)) {
  const scripts = gz('assets/site.js') + (address === 'your-weights/' ? gz('assets/your-weights.js') : 0);
  const size = gz(`${address}index.html`) + gz('assets/keeprow.css') + scripts;
  console.log(`/${address.padEnd(24)} ${size.toFixed(0).padStart(6)}   ${(await scores(address)).join(', ')}`);
}
server.close();
