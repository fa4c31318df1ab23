import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, copyOfDemo } from '../sites/demoFolder.ts';
import { freshContext, liveBrowser } from './browser.ts';

const PAGES = [
  '',
  '2026/',
  '2026/sweet/',
  '2026/sweet/figures/',
  'next-season/',
  'varieties/kiln-spark/',
  'varieties/',
  'lines/smithy-cross/',
  'seed/',
  'your-weights/',
];

/** The demo's site in a language. */
function siteIn(language: string): string {
  const folder = copyOfDemo();
  const settings = join(folder, 'data/trial.yaml');
  writeFileSync(settings, `${readFileSync(settings, 'utf8').replace(/^language:.*\n/m, '')}\nlanguage: ${language}\n`);
  const built = spawnSync(process.execPath, [command, 'build', folder, '--quiet'], { encoding: 'utf8' });
  if (built.status !== 0) throw new Error(built.stderr);
  return join(folder, '_site');
}

let sites: ReadonlyMap<string, string>;
beforeAll(() => {
  sites = new Map(['en', 'de'].map((language) => [language, siteIn(language)]));
});
afterAll(async () => (await liveBrowser()).close());

/** Texts that lie over each other, and texts of drawings that are smaller than can be read, on a page as it stands. */
function faultsOfPage(): { readonly over: readonly string[]; readonly small: readonly string[] } {
  for (const fold of document.querySelectorAll('details')) fold.open = true;
  const seen = (element: Element): boolean =>
    element.checkVisibility({ opacityProperty: true }) && element.textContent.trim() !== '';
  const boxes = [...document.querySelectorAll('main svg text, main th, main td span, main li a, main figcaption')]
    .filter(seen)
    .flatMap((element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      return [...range.getClientRects()].filter((box) => box.width > 1).map((box) => ({ element, box }));
    });
  const over = boxes.flatMap(({ element, box }, i) =>
    boxes.slice(i + 1).flatMap((other) => {
      if (element.contains(other.element) || other.element.contains(element)) return [];
      const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      return wide > 4 && high > 6 ? [`${element.textContent} over ${other.element.textContent}`] : [];
    }),
  );
  const small = [...document.querySelectorAll<SVGTextElement>('main svg text')].filter(seen).flatMap((text) => {
    const size =
      Number.parseFloat(getComputedStyle(text).fontSize) *
      Math.hypot(text.getScreenCTM()?.a ?? 1, text.getScreenCTM()?.b ?? 0);
    // A hundredth of a pixel is lost where a picture is made to fit.
    return size < 11.9 ? [`${text.textContent}: ${size.toFixed(1)} px`] : [];
  });
  return { over, small };
}

describe('on a phone', { retry: 2 }, () => {
  it.each(['en', 'de'].flatMap((language) => [320, 390].map((width) => [language, width] as const)))(
    'no text lies over another and none of a drawing is under 12 px: %s, %i px',
    async (language, width) => {
      const context = await freshContext({ viewport: { width, height: 900 } });
      const page = await context.newPage();
      const faults: string[] = [];
      for (const address of PAGES) {
        await page.goto(pathToFileURL(join(sites.get(language)!, address, 'index.html')).href);
        const { over, small } = await page.evaluate(faultsOfPage);
        faults.push(...[...over, ...small].map((fault) => `/${address}: ${fault}`));
      }
      expect(faults).toEqual([]);
      await context.close();
    },
  );
});
