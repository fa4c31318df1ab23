import type { EleventyConfig } from '@11ty/eleventy';
import { cpSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { severityOf } from '../terms/problem.ts';
import { problemText } from '../present/problems.ts';
import { makePages } from './makePages.ts';
import type { MadePages } from './makePages.ts';
import { packageRoot } from './packageRoot.ts';
import { makeFolder } from './siteFolder.ts';

export interface ReportOptions {
  /** The trial folder; default: the folder that Eleventy runs in. */
  readonly folder?: string;
  /** Where the report goes in the site, ending in `/`; default: the site's root. */
  readonly address?: string;
  /** A report that is made already. */
  readonly made?: Pick<MadePages, 'pages' | 'files'>;
}

/** Writes what is no page: figures, tables, photos, styles and scripts. */
function writeFiles(folder: string, files: MadePages['files']): void {
  for (const assets of ['site/assets', 'dist/assets'])
    cpSync(join(packageRoot(), assets), join(folder, 'assets'), { recursive: true });
  for (const [path, bytes] of files) {
    makeFolder(dirname(join(folder, path)));
    writeFileSync(join(folder, path), bytes);
  }
}

async function madeFrom(folder: string): Promise<MadePages> {
  const made = await makePages(folder);
  const errors = made.problems.filter((problem) => severityOf(problem) === 'error');
  if (errors.length > 0) throw new Error(errors.map((problem) => problemText(problem)).join('\n'));
  return made;
}

/**
 * Adds a trial's report to an Eleventy site: its pages, `results.json`, tables, feed and assets. `keeprow build` uses it
 * too. In a configuration: `config.addPlugin(keeprow, { folder: 'trial', address: 'trial/' })`. While Eleventy serves,
 * the report is made anew when a record or a text of the trial changes.
 *
 * @throws an error that lists the problems where the records have errors
 */
export default async function keeprow(config: EleventyConfig, options: ReportOptions = {}): Promise<void> {
  const { folder = '.', address: base = '' } = options;
  const { pages, files } = options.made ?? (await madeFrom(folder));
  for (const page of pages) {
    const { address } = page;
    const name = address === '' ? 'index' : address.replace(/\/$/, '').replaceAll('/', '__');
    const path = `keeprow-pages/${base}${name}`;
    const data = { permalink: `${base}${address}index.html`, layout: false, eleventyExcludeFromCollections: true };
    // By itself a page is made when it is written, so that not all of them are held at once. In a site of the user's
    // own it is finished HTML: no template language, no layout of the site around it.
    if (options.made) config.addTemplate(`${path}.11ty.js`, { render: () => page.html }, data);
    else config.addTemplate(`${path}.html`, page.html, { ...data, templateEngineOverride: 'html' });
  }
  if (!options.made)
    for (const part of ['data', 'content']) config.addWatchTarget(join(folder, part), { resetConfig: true });
  config.on('eleventy.after', ({ directories }) => writeFiles(join(directories.output, base), files));
}
