import MarkdownIt from 'markdown-it';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import { seasonSeen } from '../analyse/seen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Content } from '../check/content.ts';
import { lastWinter } from '../decide/lastWinter.ts';
import { adviseNextSeason } from '../decide/nextSeason.ts';
import { rangeProblems } from '../decide/rangeProblems.ts';
import { checkTrial } from '../check/trial.ts';
import { classReport } from '../present/classReport.ts';
import { downloadsOf, downloadText } from '../present/downloads.ts';
import { drawChart } from '../present/draw.ts';
import { writingOf } from '../present/numbers.ts';
import { resultsDocument } from '../present/results.ts';
import { classAdviceWords } from '../present/nextSeason/classAdvice.ts';
import { adviceFigures } from '../present/nextSeason/figures.ts';
import type { AdviceSource } from '../present/nextSeason/source.ts';
import { spreadWords } from '../present/nextSeason/spread.ts';
import { weightsContent } from '../present/nextSeason/weights.ts';
import type { Figure } from '../present/seasonFigures/figure.ts';
import { classFigures } from '../present/seasonFigures/class.ts';
import { sitePages } from '../../site/pages.tsx';
import type { NextContent, Page } from '../../site/content.ts';
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

async function drawAll(figures: readonly Figure[]): Promise<readonly DrawnFigure[]> {
  const drawn: DrawnFigure[] = [];
  for (const figure of figures) {
    const wide = await drawChart(figure.chart, WIDE, `${figure.id}-w`);
    drawn.push({ figure, wide, narrow: await drawChart(figure.chart, NARROW, `${figure.id}-n`) });
  }
  return drawn;
}

async function drawFigures(
  trial: Trial,
  seasons: readonly { readonly seen: SeasonSeen; readonly compared: SeasonComparisons }[],
): Promise<ReadonlyMap<string, readonly DrawnFigure[]>> {
  const writing = writingOf(trial.settings);
  const drawn = new Map<string, readonly DrawnFigure[]>();
  for (const { seen, compared } of seasons) {
    for (const classId of trial.settings.classes.keys()) {
      const figures = classFigures({ seen, compared, trial, classId, writing });
      drawn.set(`${seen.season.year}/${classId}`, await drawAll(figures));
    }
  }
  return drawn;
}

/** What is advised for next season, drawn and worded; null without a season. */
async function nextContent(source: AdviceSource | null): Promise<NextContent | null> {
  if (!source) return null;
  const { next } = source;
  const figures = new Map<string, readonly DrawnFigure[]>();
  for (const outcome of next.classes) figures.set(outcome.classId, await drawAll(adviceFigures(source, outcome)));
  return {
    season: next.season,
    classes: next.classes.map((outcome) => classAdviceWords(source, outcome)),
    figures,
    spread: spreadWords(source),
    weights: weightsContent(source),
  };
}

function adviceSource(trial: Trial, seasons: readonly SeasonSeen[]): AdviceSource | null {
  if (seasons.length === 0) return null;
  const writing = writingOf(trial.settings);
  return { trial, seasons, next: adviseNextSeason(trial, seasons), winters: lastWinter(trial, seasons), writing };
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
  const { trial, problems: found, content } = checkTrial(readFolder(folder));
  const seasons = trial?.seasons.map((season) => seasonSeen(trial, season)) ?? [];
  const advice = trial && adviceSource(trial, seasons);
  const problems = [...found, ...(advice ? rangeProblems(advice.next) : [])];
  if (!isFit(problems) || !trial) return { pages: [], files: new Map(), problems };
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
    next: await nextContent(advice),
  };
  const pages = sitePages(site);
  const files = new Map(downloads.map((download) => [download.path, downloadText(download)]));
  files.set('results.json', `${JSON.stringify(resultsDocument(trial, compared, advice), null, 1)}\n`);
  return { pages, files, problems };
}
