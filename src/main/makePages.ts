import MarkdownIt from 'markdown-it';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import { seasonSeen } from '../analyse/seen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Content } from '../check/content.ts';
import { checkTrial } from '../check/trial.ts';
import { classReport } from '../present/classReport.ts';
import { downloadsOf, downloadText } from '../present/downloads.ts';
import { drawChart } from '../present/draw.ts';
import { writingOf } from '../present/numbers.ts';
import { resultsDocument } from '../present/results.ts';
import { classFigures } from '../present/seasonFigures/class.ts';
import { sitePages } from '../../site/pages.tsx';
import type { Page } from '../../site/content.ts';
import type { DrawnFigure } from '../../site/parts.tsx';
import type { Problem } from '../terms/problem.ts';
import type { Trial } from '../terms/trial.ts';
import { compareSeasons } from './compareSeasons.ts';
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

/** The grower's words as HTML: Markdown without raw HTML; a picture is told by its text. */
function wordsOf(content: Content): ReadonlyMap<string, string> {
  const markdown = new MarkdownIt({ html: false });
  markdown.renderer.rules['image'] = (tokens, i) => markdown.utils.escapeHtml(tokens[i]!.content);
  return new Map([...content].map(([page, text]) => [page, markdown.render(text)]));
}

async function drawFigures(
  trial: Trial,
  seasons: readonly { readonly seen: SeasonSeen; readonly compared: SeasonComparisons }[],
): Promise<ReadonlyMap<string, readonly DrawnFigure[]>> {
  const writing = writingOf(trial.settings);
  const drawn = new Map<string, readonly DrawnFigure[]>();
  for (const { seen, compared } of seasons) {
    for (const classId of trial.settings.classes.keys()) {
      const own: DrawnFigure[] = [];
      for (const figure of classFigures({ seen, compared, trial, classId, writing })) {
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
export async function makePages(
  folder: string,
  isFit: (problems: readonly Problem[]) => boolean = () => true,
): Promise<MadePages> {
  const { trial, problems, content } = checkTrial(readFolder(folder));
  if (!isFit(problems) || !trial) return { pages: [], files: new Map(), problems };
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const working = compareSeasons(trial, seasons);
  // Meanwhile: most charts do not need the comparisons, and are found drawn below.
  await drawFigures(
    trial,
    seasons.map((seen) => ({ seen, compared: new Map() })),
  );
  const comparisons = await working;
  const compared = seasons.map((seen, i) => ({ seen, compared: comparisons[i]! }));
  const writing = writingOf(trial.settings);
  const reports = new Map(
    compared.flatMap((own) =>
      [...trial.settings.classes.keys()].map(
        (id) => [`${own.seen.season.year}/${id}`, classReport(trial, own.seen, own.compared, id, writing)] as const,
      ),
    ),
  );
  const figures = await drawFigures(trial, compared);
  const downloads = downloadsOf(trial, seasons);
  const site = {
    trial,
    seasons,
    problems,
    writing: writingOf(trial.settings),
    figures,
    reports,
    downloads,
    words: wordsOf(content),
  };
  const pages = sitePages(site);
  const files = new Map(downloads.map((download) => [download.path, downloadText(download)]));
  files.set('results.json', `${JSON.stringify(resultsDocument(trial, compared), null, 1)}\n`);
  return { pages, files, problems };
}
