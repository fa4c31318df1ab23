import { addresses } from '../terms/addresses.ts';
import type { SeasonKey } from '../terms/ids.ts';
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

/** A Chromium of this machine: CHROME_PATH, or one of the usual names on the path; null if there is none. */
export function findChromium(): string | null {
  const own = process.env['CHROME_PATH'];
  if (own !== undefined && existsSync(own)) return own;
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    for (const name of NAMES) {
      for (const file of [join(folder, name), join(folder, `${name}.exe`)]) if (existsSync(file)) return file;
    }
  }
  return null;
}

/**
 * Prints a handout's page to PDF beside it.
 *
 * @returns the PDF's path, or why there is none
 */
export function printHandout(site: string, season: SeasonKey): { readonly pdf: string } | { readonly why: string } {
  const browser = findChromium();
  if (browser === null) return { why: 'no Chromium was found; set CHROME_PATH, or print the handout from a browser' };
  const pdf = join(site, addresses.handout(season), 'handout.pdf');
  const page = pathToFileURL(join(site, addresses.handout(season), 'index.html')).href;
  const rights = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const args = ['--headless', '--disable-gpu', ...rights, '--no-pdf-header-footer', `--print-to-pdf=${pdf}`, page];
  const run = spawnSync(browser, args, { encoding: 'utf8', timeout: 60_000 });
  if (existsSync(pdf)) return { pdf };
  return {
    why: `the browser could not print it: ${(run.stderr ?? '').trim().split('\n').at(-1) ?? String(run.error)}`,
  };
}
