/**
 * The yardstick of the build: as many pages and charts as the demo's site, made by Eleventy and Vega alone, as fast as
 * we know how: charts compiled once per kind and size, pages as virtual templates, nothing computed or checked.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import * as vega from 'vega';
import { compile } from 'vega-lite';
import type { TopLevelSpec } from 'vega-lite';

const PAGES = 36;
const CHARTS = 198;
const POINTS = 8;

const spec = {
  width: 560,
  height: { step: 26 },
  layer: [
    {
      data: { name: 'rows' },
      mark: 'tick',
      encoding: { y: { field: 'name', type: 'nominal' }, x: { field: 'low', type: 'quantitative' } },
    },
    {
      data: { name: 'rows' },
      mark: 'rule',
      encoding: {
        y: { field: 'name', type: 'nominal' },
        x: { field: 'low', type: 'quantitative' },
        x2: { field: 'high' },
      },
    },
    {
      data: { name: 'rows' },
      mark: 'point',
      encoding: { y: { field: 'name', type: 'nominal' }, x: { field: 'value', type: 'quantitative' } },
    },
  ],
  datasets: {},
} as unknown as TopLevelSpec;

const runtime = vega.parse(compile(spec).spec);
const charts: string[] = [];
for (let i = 0; i < CHARTS; i++) {
  const rows = Array.from({ length: POINTS }, (_, k) => ({
    name: `Variety ${k}`,
    low: k + 1,
    value: k + 2 + (i % 5),
    high: k + 9,
  }));
  const view = new vega.View(runtime, { renderer: 'none' });
  view.data('rows', rows);
  charts.push(await view.toSVG());
  view.finalize();
}

const { default: Eleventy } = await import('@11ty/eleventy');
const folder = mkdtempSync(join(tmpdir(), 'keeprow-bare-'));
const input = mkdtempSync(join(tmpdir(), 'keeprow-bare-in-'));
const eleventy = new Eleventy(relative(process.cwd(), input), relative(process.cwd(), folder), {
  quietMode: true,
  configPath: '',
  loader: 'esm',
  config: (config) => {
    config.setTemplateFormats(['html']);
    for (let i = 0; i < PAGES; i++) {
      const own = charts.filter((_, k) => k % PAGES === i).join('\n');
      config.addTemplate(`page${i}.html`, `<!doctype html><title>${i}</title>${own}`, {
        permalink: `p${i}/index.html`,
      });
    }
  },
});
await eleventy.initializeConfig({ markdownTemplateEngine: false, htmlTemplateEngine: false });
eleventy.disableLogger();
await eleventy.init();
await eleventy.write();
