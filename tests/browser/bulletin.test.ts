import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtDemo } from '../sites/demoFolder.ts';
import { freshContext, liveBrowser } from './browser.ts';

let site: string;
const at = (address: string): string => pathToFileURL(join(site, address, 'index.html')).href;

beforeAll(() => {
  site = builtDemo();
});
afterAll(async () => (await liveBrowser()).close());

/** A page opened with everything that went wrong on it. */
async function open(
  address: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ page: Page; faults: string[] }> {
  const context = await freshContext(options);
  const page = await context.newPage();
  const faults: string[] = [];
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => console.error(`CSP ${event.violatedDirective}`));
  });
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  page.on('pageerror', (fault) => faults.push(String(fault)));
  await page.goto(at(address));
  return { page, faults };
}

describe('the other units', { retry: 2 }, () => {
  it('are shown without a reload, and remembered on the next page', async () => {
    const { page } = await open('2026/hot/figures/');
    const cell = page.locator('table td .unit').first();
    const before = (await cell.textContent())!;
    expect(before).toMatch(/^[\d,]+ g \(/);
    await page.getByRole('button', { name: 'Show ounces and inches' }).click();
    const after = (await cell.textContent())!;
    expect(after).toMatch(/^[\d.,]+ oz \(/);
    // 1 oz = 28.349523125 g
    const [grams, ounces] = [before, after].map((text) => Number(/^[\d.,]+/.exec(text)![0].replaceAll(',', '')));
    expect(Math.abs(grams! / ounces! / 28.349523125 - 1)).toBeLessThan(0.03);
    const figure = page.locator('#yield-hot');
    expect(await figure.locator('figcaption').textContent()).toContain('usable yield, oz per plant');
    expect(await figure.locator('.wide-other svg').textContent()).toContain('usable yield, oz per plant');
    expect(await figure.locator('.wide').isVisible()).toBe(false);
    expect(await figure.locator('.wide-other').isVisible()).toBe(true);
    await page.goto(at('varieties/kiln-spark/'));
    expect(await page.locator('.unit').first().textContent()).toContain(' oz');
    await page.getByRole('button', { name: 'Show grams and centimetres' }).click();
    expect(await page.locator('.unit').first().textContent()).toContain(' g');
    await page.context().close();
  });
});

describe('charts', { retry: 2 }, () => {
  it('show in their tables what they draw', async () => {
    const { page } = await open('next-season/', { viewport: { width: 1280, height: 800 } });
    const figures = page.locator('figure[id^="shares-"]');
    expect(await figures.count()).toBe(5);
    for (let f = 0; f < 5; f++) {
      const figure = figures.nth(f);
      const bars = await figure.locator('.wide svg path[aria-label]').evaluateAll((all) =>
        all
          .filter((one) => (one.getAttribute('aria-label') ?? '').includes(' of 100'))
          .map((one) => ({
            said: one.getAttribute('aria-label')!,
            width: (one as SVGGraphicsElement).getBBox().width,
          })),
      );
      const rows = await figure
        .locator('tbody tr')
        .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
      expect(bars).toHaveLength(rows.length);
      const perPoint = bars[0]!.width / Number(/(\d+) of 100/.exec(bars[0]!.said)![1]);
      rows.forEach(([name, verdict, share], i) => {
        expect(bars[i]!.said).toBe(`${name}: ${verdict}, ${share}`);
        const drawn = bars[i]!.width / perPoint;
        const told = /fewer/.test(share!) ? 0 : Number(/(\d+) of 100/.exec(share!)![1]);
        expect(Math.abs(drawn - told)).toBeLessThan(1.2);
      });
    }
    await page.context().close();
  });
  it('tell their marks one by one by keyboard', async () => {
    const { page } = await open('next-season/', { viewport: { width: 1280, height: 800 } });
    await page
      .locator('#class-hot ~ .folds details')
      .nth(1)
      .evaluate((fold) => fold.setAttribute('open', ''));
    await page.locator('#expected-yield-hot .wide svg').focus();
    expect(await page.locator('#mark').textContent()).toContain('Arrow keys');
    await page.keyboard.press('ArrowDown');
    const told = (await page.locator('#mark').textContent())!;
    expect(told).toMatch(/, (new|returning): [\d,]+ g \(/);
    expect(await page.locator('#tip').textContent()).toBe(told);
    await page.context().close();
  });
});

describe('colours', () => {
  /** Contrast of two colours. @source WCAG 2.1, relative luminance */
  const contrast = (a: string, b: string): number => {
    const light = (hex: string): number => {
      const [r, g, bl] = [1, 3, 5].map((i) => {
        const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
        return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * bl!;
    };
    const [high, low] = [light(a), light(b)].toSorted((x, y) => y - x);
    return (high! + 0.05) / (low! + 0.05);
  };
  const full = (hex: string): string => (hex.length === 4 ? hex.replace(/[0-9a-f]/g, (digit) => digit + digit) : hex);
  it.each([
    ['light', 0],
    ['dark', 1],
    ['print', 2],
  ] as const)('have contrast enough, %s', (_, which) => {
    const css = readFileSync(join(site, 'assets/keeprow.css'), 'utf8');
    const blocks = [...css.matchAll(/:root \{([^}]*)\}/g)].map(([, text]) =>
      Object.fromEntries(
        [...text!.matchAll(/--([a-z]+): (#[0-9a-f]{3,6})/g)].map(([__, name, hex]) => [name!, full(hex!)]),
      ),
    );
    const palette = blocks[which]!;
    for (const name of ['ink', 'muted', 'returning', 'new', 'check', 'keep', 'try', 'room', 'drop'])
      expect([name, contrast(palette[name]!, palette['paper']!) >= 4.5]).toEqual([name, true]);
    expect(contrast(palette['rule']!, palette['paper']!)).toBeGreaterThanOrEqual(3);
  });
});

describe('the handout', { retry: 2 }, () => {
  it.each(['A4', 'Letter'])('prints on two sides of %s', async (format) => {
    const { page } = await open('2026/handout/');
    const pdf = await page.pdf({ format, margin: { top: '14mm', bottom: '14mm', left: '14mm', right: '14mm' } });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
    await page.context().close();
  });
});

describe('without JavaScript', { retry: 2 }, () => {
  it.each(['', '2026/', '2026/sweet/', 'varieties/wren-hill/', 'next-season/', 'your-weights/', '2026/handout/'])(
    '/%s can be read',
    async (address) => {
      const { page, faults } = await open(address, { javaScriptEnabled: false });
      expect(faults).toEqual([]);
      expect((await page.locator('main').textContent())!.length).toBeGreaterThan(300);
      expect(await page.locator('fieldset:visible').count()).toBe(0);
      await page.context().close();
    },
  );
});

describe('the weight', () => {
  it('of a page is at most 150 kB compressed, 30 kB of it scripts', () => {
    const packed = (path: string): number => gzipSync(readFileSync(join(site, path))).length;
    const scripts = packed('assets/site.js') + packed('assets/your-weights.js');
    expect(scripts).toBeLessThan(30_000);
    const pages = readdirSync(site, { recursive: true })
      .map(String)
      .filter((name) => name.endsWith('.html'));
    expect(pages.length).toBeGreaterThan(40);
    for (const page of pages) expect(packed(page) + packed('assets/keeprow.css') + scripts).toBeLessThan(150_000);
  });
});
