import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { findChromium } from '../../src/main/handoutPdf.ts';
import { chromium as playwright } from 'playwright-core';
import type { Browser } from 'playwright-core';

/** Nothing may fail because the machine is slow. */
const LIMIT = 300_000;

/** A Chromium of this machine; null where there is none. */
export const ownBrowser = findChromium();

/** A browser for tests: one of this machine, or the one inside an npm package (Linux x64). */
async function openBrowser(): Promise<Browser> {
  const args = [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-dev-shm-usage',
    '--disable-background-networking',
    '--no-first-run',
  ];
  if (ownBrowser !== null) return playwright.launch({ executablePath: ownBrowser, args, timeout: LIMIT });
  // Each worker unpacks a browser of its own: one that is unpacked again while it runs crashes.
  const cache = resolve('.cache/chromium', process.env['VITEST_POOL_ID'] ?? '0');
  mkdirSync(cache, { recursive: true });
  process.env['TMPDIR'] = cache;
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs20.x';
  const { default: chromium } = await import('@sparticuz/chromium');
  chromium.setGraphicsMode = false;
  return playwright.launch({ executablePath: await chromium.executablePath(), args, timeout: LIMIT });
}

let running: Browser | null = null;

/** The tests' browser, opened again where it has died: on a page with form fields this Chromium now and then does. */
export async function liveBrowser(): Promise<Browser> {
  if (!running?.isConnected()) running = await openBrowser();
  return running;
}

/** A context of the tests' browser in which nothing fails for slowness. */
export async function freshContext(
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<Awaited<ReturnType<Browser['newContext']>>> {
  const context = await (await liveBrowser()).newContext(options);
  context.setDefaultTimeout(LIMIT);
  return context;
}
