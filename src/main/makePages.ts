import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import MarkdownIt from 'markdown-it';
import { seasonSeen } from '../analyse/seen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { checkTrial } from '../check/trial.ts';
import { downloadsOf, downloadText } from '../present/downloads.ts';
import { drawChart } from '../present/draw.ts';
import { methodsText } from '../present/methods.ts';
import { writingOf } from '../present/numbers.ts';
import { resultsDocument } from '../present/results.ts';
import { classFigures } from '../present/seasonCharts.ts';
import { sitePages } from '../../site/pages.tsx';
import type { Page } from '../../site/pages.tsx';
import type { DrawnFigure } from '../../site/parts.tsx';
import type { Problem } from '../terms/problem.ts';
import type { Trial } from '../terms/trial.ts';
import { readFolder } from './readFolder.ts';

const WIDE = 560;
const NARROW = 170;

export interface MadePages {
  /** Empty where the records have errors. */
  readonly pages: readonly Page[];
  /** Files beside the pages, by their address: results.json and the tables. */
  readonly files: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
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

/**
 * Reads, checks, computes and words a trial.
 *
 * @param folder  the trial folder
 * @param isFit   says from the problems whether to go on to the pages
 */
export async function makePages(folder: string, isFit: (problems: readonly Problem[]) => boolean = () => true): Promise<MadePages> {
  const { trial, problems } = checkTrial(readFolder(folder));
  if (!isFit(problems) || !trial) return { pages: [], files: new Map(), problems };
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const figures = await drawFigures(trial, seasons);
  const downloads = downloadsOf(trial, seasons);
  const content = { trial, seasons, problems, writing: writingOf(trial.settings), figures, downloads, words: readWords(folder) };
  const pages = sitePages(content, new MarkdownIt().render(methodsText(trial.settings)));
  const files = new Map(downloads.map((download) => [download.path, downloadText(download)]));
  files.set('results.json', `${JSON.stringify(resultsDocument(trial, seasons), null, 1)}\n`);
  return { pages, files, problems };
}
