/**
 * The yardstick of the build: as many pages as the demo's site and the same charts, made by Eleventy and Vega alone, as fast as
 * we know how: charts compiled once per kind and size, pages as virtual templates, nothing computed or checked.
 */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import * as vega from 'vega';
import { compile } from 'vega-lite';

const PAGES = Number(process.argv[3]);

/** The demo's charts as `bench.ts` wrote them: specification and data of each, ready to be drawn. */
const drawings = JSON.parse(readFileSync(process.argv[2], 'utf8'));

const runtimes = new Map();
const charts = [];
for (const { spec, data } of drawings) {
  const key = JSON.stringify(spec);
  const runtime = runtimes.get(key) ?? vega.parse(compile(spec).spec);
  runtimes.set(key, runtime);
  const view = new vega.View(runtime, { renderer: 'none' });
  for (const [name, rows] of Object.entries(data)) view.data(name, rows);
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
