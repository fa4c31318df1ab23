import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '../../site/content.ts';
import { configureEleventy } from './eleventySite.ts';
import { makePages } from './makePages.ts';
import { tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

/** Folder of the package's own assets, from the sources or from the compiled command. */
function packageRoot(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'site', 'assets'))) at = dirname(at);
  return at;
}

async function writePages(fresh: string, pages: readonly Page[]): Promise<void> {
  const { default: Eleventy } = await import('@11ty/eleventy');
  const input = mkdtempSync(join(dirname(fresh), '.keeprow-input-'));
  try {
    const eleventy = new Eleventy(relative(process.cwd(), input), relative(process.cwd(), fresh), {
      quietMode: true,
      configPath: '',
      loader: 'esm',
      config: (config) => configureEleventy(config, pages, join(packageRoot(), 'site', 'assets')),
    });
    await eleventy.initializeConfig({ markdownTemplateEngine: false, htmlTemplateEngine: false });
    eleventy.disableLogger();
    await eleventy.init();
    await eleventy.write();
  } finally {
    rmSync(input, { recursive: true, force: true });
  }
}

/** Puts the fresh site in the place of the old one; the old one stays whole until then. */
function swap(fresh: string, out: string): void {
  const old = `${fresh}-old`;
  if (existsSync(out)) renameSync(out, old);
  renameSync(fresh, out);
  rmSync(old, { recursive: true, force: true });
}

/** `keeprow build`: checks, computes, writes the site. Returns the exit code. */
export async function runBuild(folder: string, outFolder: string | undefined, telling: Telling): Promise<number> {
  let code = 0;
  // Loaded while the figures are worked out on another core.
  const loading = import('@11ty/eleventy');
  const made = await makePages(folder, (problems) => (code = tellProblems(problems, telling)) === 0);
  if (code !== 0) return code;
  const out = resolve(outFolder ?? join(folder, '_site'));
  mkdirSync(dirname(out), { recursive: true });
  const fresh = mkdtempSync(join(dirname(out), `.${basename(out)}-`));
  try {
    await loading;
    await writePages(fresh, made.pages);
    for (const [path, text] of made.files) writeFileSync(join(fresh, path), text);
    swap(fresh, out);
  } catch (fault) {
    rmSync(fresh, { recursive: true, force: true });
    throw fault;
  }
  if (!telling.quiet && !telling.json) process.stdout.write(`The site is in ${out}\n`);
  return 0;
}
