import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtDemo } from '../sites/demoFolder.ts';
import { freshContext, liveBrowser, ownBrowser } from './browser.ts';

const PAGES = [
  '',
  '2026/',
  '2023/',
  '2026/sweet/',
  '2026/sweet/figures/',
  'varieties/',
  'varieties/tollgate-amber/',
  'varieties/kiln-spark/',
  'next-season/',
  'your-weights/',
  '2026/handout/',
  'glossary/',
  'seasons/',
  'data/',
  'data-notes/',
  'lines/smithy-cross/',
  'lines/smithy-cross/sheet/',
  'seed/',
  'methods/',
];
let site: string;

beforeAll(() => {
  site = builtDemo();
});
afterAll(async () => (await liveBrowser()).close());

describe.each(PAGES)('the page /%s', { retry: 2 }, (address) => {
  it.each([
    [1280, 'light'],
    [320, 'dark'],
  ] as const)('is sound at %i px, %s', async (width, colorScheme) => {
    const context = await freshContext({ viewport: { width, height: 800 }, colorScheme });
    const page = await context.newPage();
    // The Chromium inside the npm package dies of a field for text, which the script adds to this page.
    if (address === 'varieties/' && ownBrowser === null)
      await page.route('**/assets/site.js', (route) => route.fulfill({ body: '', contentType: 'text/javascript' }));
    const faults: string[] = [];
    await page.addInitScript(() => {
      addEventListener('securitypolicyviolation', (event) => console.error(`CSP ${event.violatedDirective}`));
    });
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    page.on('pageerror', (fault) => faults.push(String(fault)));
    page.on('request', (request) => request.url().startsWith('file:') || faults.push(request.url()));
    await page.goto(pathToFileURL(join(site, address, 'index.html')).href);
    expect(faults).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
    await context.close();
  });
});

describe('the list of all varieties', { retry: 2 }, () => {
  it.runIf(ownBrowser !== null)('leaves those whose name holds what is typed, and says how many', async () => {
    const page = await (await freshContext()).newPage();
    await page.goto(pathToFileURL(join(site, 'varieties/index.html')).href);
    const shown = page.locator('main [data-name]:visible');
    expect(await shown.count()).toBeGreaterThan(20);
    await page.getByLabel('Show only names with').fill('crossing');
    expect(await shown.allTextContents()).toHaveLength(3);
    expect(await page.locator('main section:visible').count()).toBe(1);
    await page.getByLabel('Show only names with').fill('zzz');
    expect(await page.locator('#filter').textContent()).toContain('No variety has this in its name.');
    await page.context().close();
  });
});

describe('the pages as HTML', () => {
  it.each(PAGES)('/%s has nothing html-validate objects to', async (address) => {
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: {
        'no-inline-style': 'off',
        'long-title': 'off',
        'void-style': 'off',
        'no-trailing-whitespace': 'off',
        'doctype-style': 'off',
        'attribute-boolean-style': 'off',
        'no-raw-characters': 'off',
        'svg-focusable': 'off',
        'no-redundant-role': 'off',
        'prefer-native-element': 'off',
        'tel-non-breaking': 'off',
      },
    });
    const report = await validator.validateFile(join(site, address, 'index.html'));
    expect(
      report.results.flatMap(({ messages }) =>
        messages.map(({ ruleId, message, line }) => `${ruleId} ${line}: ${message}`),
      ),
    ).toEqual([]);
  });
});

describe('without JavaScript', { retry: 2 }, () => {
  it('shows the season with its tables and charts', async () => {
    const context = await freshContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(site, '2026/index.html')).href);
    expect(await page.locator('h1').textContent()).toBe('The 2026 season');
    expect(await page.locator('.mx svg').count()).toBeGreaterThan(60);
    await context.close();
  });
});

describe('charts', { retry: 2 }, () => {
  it('have a mark for every row of their table, and say it in words', async () => {
    const page = await (await freshContext()).newPage();
    for (const [id, classId] of [
      ['yield-sweet', 'sweet'],
      ['rating-flavour-hot', 'hot'],
    ] as const) {
      await page.goto(pathToFileURL(join(site, `2026/${classId}/figures/index.html`)).href);
      const figure = page.locator(`#${id}`);
      const rows = await figure.locator('tbody tr').count();
      const labels = await figure
        .locator('.wide svg path[aria-label]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label') ?? ''));
      expect(rows).toBeGreaterThan(3);
      expect(labels.filter((label) => /(new|returning): /.test(label))).toHaveLength(rows);
    }
    await page.close();
  });
});

describe('your own weights', { retry: 2 }, () => {
  const open = async (hash = '') => {
    const page = await (await freshContext()).newPage();
    await page.goto(`${pathToFileURL(join(site, 'your-weights/index.html')).href}${hash}`);
    return page;
  };
  const rows = (page: Awaited<ReturnType<typeof open>>, classId: string) =>
    page.locator(`section[data-class="${classId}"] tbody tr`).evaluateAll((all) =>
      all.map((row) => {
        const { variety, earned, above } = (row as HTMLElement).dataset;
        return { variety, earned, above };
      }),
    );

  it('counts with the club’s weights exactly what the build counted', async () => {
    const context = await freshContext({ javaScriptEnabled: false });
    const built = await context.newPage();
    await built.goto(pathToFileURL(join(site, 'your-weights/index.html')).href);
    const page = await open();
    // The page shows what was built until a weight is moved: this makes it count every class itself.
    await page
      .locator('table')
      .first()
      .evaluate(() => (location.hash = '#none'));
    await page.waitForFunction(() =>
      document.querySelector('section[data-class="cherry"] tbody tr')?.hasAttribute('data-counted'),
    );
    for (const classId of ['sweet', 'frying', 'hot', 'salad', 'cherry']) {
      const [counted, expected] = [await rows(page, classId), await rows(built, classId)];
      expect(counted.length).toBeGreaterThan(2);
      expect(counted).toEqual(expected);
    }
    await context.close();
    await page.close();
  });
  it('is moved by keyboard, says so, and writes a link that another reader opens with the same verdicts', async () => {
    const page = await open();
    const before = await rows(page, 'hot');
    await page.getByLabel('Weight of days to first ripe fruit').nth(2).focus();
    for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowLeft');
    await page.waitForFunction(
      (old) => document.querySelector<HTMLElement>('section[data-class="hot"] tbody tr')!.dataset['earned'] !== old,
      before[0]!['earned'],
    );
    const after = await rows(page, 'hot');
    expect(after).not.toEqual(before);
    const link = await page.locator('#weights-link').getAttribute('href');
    expect(link).toBe('#hot.first_ripe=0');
    const other = await open(link!);
    expect(await rows(other, 'hot')).toEqual(after);
    await other.getByRole('button', { name: 'Back to the club’s weights' }).click();
    expect(await rows(other, 'hot')).toEqual(before);
    await other.close();
    await page.close();
  });
  it('says that nothing counts where every weight is 0', async () => {
    const page = await open('#cherry.yield=0&cherry.flavour=0&cherry.first_ripe=0');
    expect(await page.locator('section[data-class="cherry"] [role="status"]').textContent()).toContain(
      'nothing counts',
    );
    expect(await rows(page, 'cherry')).toEqual([]);
    await page.close();
  });
  it('carries at most 60 kB of data and 30 kB of script', () => {
    const html = readFileSync(join(site, 'your-weights/index.html'), 'utf8');
    const json = /<script type="application\/json"[^>]*>([^<]*)<\/script>/.exec(html)![1]!;
    expect(Buffer.byteLength(json)).toBeLessThan(60_000);
    expect(Buffer.byteLength(readFileSync(join(site, 'assets/your-weights.js')))).toBeLessThan(30_000);
  });
});
