import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import MarkdownIt from 'markdown-it';
import { seasonSeen } from '../analyse/seen.ts';
import { checkTrial } from '../check/trial.ts';
import { drawChart } from '../present/draw.ts';
import { methodsText } from '../present/methods.ts';
import { writingOf } from '../present/numbers.ts';
import { resultsDocument } from '../present/results.ts';
import { classFigures } from '../present/seasonCharts.ts';
import { sitePages } from '../../site/pages.tsx';
import type { DrawnFigure } from '../../site/parts.tsx';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';
import { configureEleventy } from './eleventySite.ts';
import type { EleventyConfig } from './eleventySite.ts';
import { readFolder } from './readFolder.ts';
import { tellProblems } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

const WIDE = 560;
const NARROW = 170;

/** Folder of the package's own assets, from the sources or from the compiled command. */
function packageRoot(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'site', 'assets'))) at = dirname(at);
  return at;
}

function readWords(folder: string): ReadonlyMap<string, string> {
  const markdown = new MarkdownIt({ html: false }).disable('image');
  const words = new Map<string, string>();
  for (const part of ['', 'seasons', 'varieties']) {
    const at = join(folder, 'content', part);
    if (!existsSync(at)) continue;
    for (const name of readdirSync(at).toSorted()) {
      if (!name.endsWith('.md')) continue;
      words.set([part, name.slice(0, -3)].filter((piece) => piece !== '').join('/'), markdown.render(readFileSync(join(at, name), 'utf8')));
    }
  }
  return words;
}

async function drawFigures(trial: Trial, seasons: readonly SeasonSeen[]): Promise<ReadonlyMap<string, readonly DrawnFigure[]>> {
  const writing = writingOf(trial.settings);
  const drawn = new Map<string, readonly DrawnFigure[]>();
  for (const seen of seasons) {
    for (const classId of trial.settings.classes.keys()) {
      const own: DrawnFigure[] = [];
      for (const figure of classFigures(seen, classId, writing, trial.settings.interval)) {
        const wide = await drawChart(figure.chart, WIDE, `${figure.id}-w`);
        own.push({ figure, wide, narrow: await drawChart(figure.chart, NARROW, `${figure.id}-n`) });
      }
      drawn.set(`${seen.season.year}/${classId}`, own);
    }
  }
  return drawn;
}

async function writePages(fresh: string, pages: ReturnType<typeof sitePages>): Promise<void> {
  const { default: Eleventy } = (await import('@11ty/eleventy' as string)) as { default: new (...args: unknown[]) => EleventyRun };
  const input = mkdtempSync(join(dirname(fresh), '.keeprow-input-'));
  try {
    const eleventy = new Eleventy(relative(process.cwd(), input), relative(process.cwd(), fresh), {
      quietMode: true,
      configPath: '',
      loader: 'esm',
      config: (config: EleventyConfig) => configureEleventy(config, pages, join(packageRoot(), 'site', 'assets')),
    });
    await eleventy.initializeConfig({ markdownTemplateEngine: false, htmlTemplateEngine: false });
    eleventy.disableLogger();
    await eleventy.init();
    await eleventy.write();
  } finally {
    rmSync(input, { recursive: true, force: true });
  }
}

interface EleventyRun {
  readonly initializeConfig: (overrides: Record<string, unknown>) => Promise<void>;
  readonly disableLogger: () => void;
  readonly init: () => Promise<void>;
  readonly write: () => Promise<void>;
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
  const { trial, problems } = checkTrial(readFolder(folder));
  const code = tellProblems(problems, telling);
  if (!trial || code !== 0) return code === 0 ? 1 : code;
  const out = resolve(outFolder ?? join(folder, '_site'));
  mkdirSync(dirname(out), { recursive: true });
  const fresh = mkdtempSync(join(dirname(out), `.${basename(out)}-`));
  try {
    const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
    const figures = await drawFigures(trial, seasons);
    const content = { trial, seasons, problems, writing: writingOf(trial.settings), figures, words: readWords(folder) };
    await writePages(fresh, sitePages(content, new MarkdownIt().render(methodsText(trial.settings))));
    writeFileSync(join(fresh, 'results.json'), `${JSON.stringify(resultsDocument(trial, seasons), null, 1)}\n`);
    swap(fresh, out);
  } catch (fault) {
    rmSync(fresh, { recursive: true, force: true });
    throw fault;
  }
  if (!telling.quiet && !telling.json) process.stdout.write(`The site is in ${out}\n`);
  return 0;
}
