import { blockProblems } from '../analyse/blocks.ts';
import { shownPhotos } from '../records/content.ts';
import { keepAddresses } from '../records/addresses.ts';
import type { Content } from '../records/content.ts';
import { checkTrial } from '../records/trial.ts';
import { lineProblems } from '../decide/lines/crossReport.ts';
import { rangeProblems } from '../decide/rangeProblems.ts';
import { classReport } from '../present/classReport.ts';
import { downloadsOf } from '../present/downloads.ts';
import { frontPage } from '../present/frontPage.ts';
import { growersWords, ownTitle } from '../present/growersWords.ts';
import { writingOf } from '../present/numbers.ts';
import type { PublishedLines } from '../present/linesDocument.ts';
import { classAdviceWords } from '../present/nextSeason/classAdvice.ts';
import { adviceFigures } from '../present/nextSeason/figures.ts';
import type { AdviceSource } from '../present/nextSeason/source.ts';
import { ongoingOf } from '../present/pages/ongoing.ts';
import { standPhotos, standsOf } from '../present/pages/stands.ts';
import { adviseGarden } from '../decide/adviseGarden.ts';
import type { GardenAdvice } from '../decide/adviseGarden.ts';
import { withheldGardens } from '../present/withheld.ts';
import { isOfClub } from '../terms/gardens.ts';
import { seasonWriting } from '../present/seasonWriting.ts';
import { problemsForReaders } from '../present/people.ts';
import { spreadWords } from '../present/nextSeason/spread.ts';
import { weightsContent } from '../present/nextSeason/weights.ts';
import type { PictureWords } from '../present/tables.ts';
import { sitePages } from '../../site/pages.tsx';
import type { NextContent, Page, SiteContent } from '../../site/content.ts';
import type { SeasonKey } from '../terms/ids.ts';
import type { Problem } from '../terms/problem.ts';
import type { Trial } from '../terms/trial.ts';
import { beginDrawings } from './draw.ts';
import { drawAll, drawFigures, drawings, inOtherUnits } from './drawings.ts';
import type { Compared } from './drawings.ts';
import { whatWillNotFit } from './memory.ts';
import { makePhotos } from './photos.ts';
import type { MadePhotos } from './photos.ts';
import { checkOnce, memory, workOut } from './worked.ts';
import { publicationFiles, qrCode } from './publication.ts';
import { readFolder } from './readFolder.ts';
import { nth } from '../numerics/element.ts';

export interface MadePages {
  /** Empty where the records have errors. */
  readonly pages: readonly Page[];
  /** Files beside the pages, by their address: results.json, tables, descriptions, photos. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
  readonly problems: readonly Problem[];
  /** The ledger of published addresses, as it is to be written. */
  readonly ledger: string;
  /** The last season recorded; null without one. */
  readonly lastSeason: SeasonKey | null;
}

/** What is advised for next season, drawn and worded; null without a season. */
async function nextContent(source: AdviceSource | null): Promise<NextContent | null> {
  if (!source) return null;
  const { next } = source;
  const other = { ...source, ...inOtherUnits(source.trial) };
  const figures = new Map<string, readonly PictureWords[]>();
  for (const outcome of next.classes)
    figures.set(
      outcome.classId,
      await drawAll(adviceFigures(source, outcome), adviceFigures(other, outcome), source.trial.settings.language),
    );
  return {
    season: next.season,
    classes: next.classes.map((outcome) => classAdviceWords(source, outcome)),
    figures,
    spread: spreadWords(source),
    weights: weightsContent(source),
  };
}

/** Every figure that the grower's words can name, by season and id. */
function nameable(
  figures: SiteContent['figures'],
  next: NextContent | null,
  pictures: SiteContent['pictures'],
): ReadonlyMap<string, PictureWords> {
  const all = new Map<string, PictureWords>();
  for (const [season, classes] of figures)
    for (const list of classes.values()) for (const own of list) all.set(`${season}/${own.id}`, own);
  for (const list of next?.figures.values() ?? []) for (const own of list) all.set(own.id, own);
  for (const [season, { map, fruits }] of pictures)
    for (const own of [...(map ? [map] : []), ...fruits.values()]) all.set(`${season}/${own.id}`, own);
  return all;
}

interface Computed {
  readonly lines: PublishedLines;
  readonly trial: Trial;
  readonly compared: readonly Compared[];
  readonly advice: AdviceSource | null;
  readonly problems: readonly Problem[];
  readonly content: Content;
  readonly photos: MadePhotos['photos'];
}

/** Advice for the gardens of a club that show their page. */
function publishedGardens(trial: Trial, advice: AdviceSource | null): ReadonlyMap<string, GardenAdvice> {
  if (!advice || !trial.seasons.some(isOfClub)) return new Map();
  const withheld = withheldGardens(trial);
  const shown = new Set(trial.seasons.flatMap(({ gardens }) => gardens.filter((code) => !withheld.has(code))));
  return new Map([...shown].toSorted().map((code) => [code, adviseGarden(trial, advice.next, code, memory.recall)]));
}

/** Everything the pages are made from, drawn and worded. */
async function siteContent({
  trial,
  lines,
  compared,
  advice,
  problems,
  content,
  photos,
}: Computed): Promise<SiteContent> {
  const seasons = compared.map(({ seen }) => seen);
  const writing = writingOf(trial.settings);
  const reports = new Map(
    compared.map((own) => {
      const classes = [...trial.settings.classes.keys()].map(
        (id) => [id, classReport(trial, own.seen, own.compared, id, seasonWriting(writing, own.seen.season))] as const,
      );
      return [own.seen.season.key, new Map(classes)] as const;
    }),
  );
  const figures = await drawFigures(trial, compared);
  const next = await nextContent(advice);
  const pictures = drawings(trial, seasons);
  const downloads = downloadsOf(trial, seasons, lines);
  const words = growersWords(content, { advice, pictures: nameable(figures, next, pictures), photos });
  return {
    trial,
    seasons,
    problems: problemsForReaders(problems, trial),
    writing,
    figures,
    reports,
    downloads,
    advice,
    compared: new Map(compared.map((own) => [own.seen.season.key, own.compared])),
    stands: standsOf(trial, seasons, advice, standPhotos(content, photos)),
    words,
    next,
    front: advice && frontPage(advice, nth(compared, -1).compared),
    qr: qrCode(trial),
    pictures,
    ongoing: ongoingOf(trial),
    gardens: publishedGardens(trial, advice),
    lines,
    ownPages: [...content].flatMap(([key, text]) =>
      key.startsWith('pages/') ? [{ key, title: ownTitle(key, text) }] : [],
    ),
  };
}

/**
 * Reads, checks, computes and words a trial.
 *
 * @param folder   the trial folder
 * @param isFit    says from the problems whether to go on to the pages
 * @param mayDrop  true where addresses published before may go
 */
export async function makePages(
  folder: string,
  isFit: (problems: readonly Problem[]) => boolean = () => true,
  mayDrop = false,
): Promise<MadePages> {
  beginDrawings();
  const found = await readFolder(folder);
  const { trial: checkedTrial, problems: checked, content } = checkTrial(found, checkOnce(found));
  const none = { pages: [], files: new Map(), ledger: '', lastSeason: null };
  if (!checkedTrial) {
    isFit(checked);
    return { ...none, problems: checked };
  }
  const tooMuch = whatWillNotFit(checkedTrial);
  if (tooMuch !== null) process.stderr.write(`keeprow: ${tooMuch}\n`);
  const { trial, seasons, advice, lines, compared: working } = workOut(checkedTrial);
  const photos = await makePhotos(folder, shownPhotos(content, found.photos));
  const doubts = [
    ...blockProblems(trial),
    ...lineProblems(trial, lines.crosses),
    ...(advice ? rangeProblems(advice.next) : []),
  ];
  const problems = [...checked, ...photos.problems, ...doubts];
  const compared = await working;
  const site = await siteContent({ trial, lines, compared, advice, problems, content, photos: photos.photos });
  const { downloads, writing } = site;
  const pages = sitePages(site);
  const ledger = keepAddresses(found.addresses, trial.settings, pages, mayDrop);
  const all = [...problems, ...ledger.problems];
  if (!isFit(all)) return { ...none, problems: all };
  const files = new Map<string, string | Uint8Array>([
    ...(await publicationFiles({ trial, compared, advice, lines, gardens: site.gardens, downloads, pages, writing })),
    ...photos.files,
  ]);
  return { pages, files, problems: all, ledger: ledger.text, lastSeason: seasons.at(-1)?.season.key ?? null };
}
