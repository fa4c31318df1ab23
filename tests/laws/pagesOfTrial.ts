import type { SeasonComparisons } from '../../src/analyse/compareSeason.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { publishedLines } from '../../src/present/publishedLines.ts';
import { classReport } from '../../src/present/classReport.ts';
import { downloadsOf } from '../../src/present/downloads.ts';
import { frontPage } from '../../src/present/frontPage.ts';
import { classAdviceWords } from '../../src/present/nextSeason/classAdvice.ts';
import { spreadWords } from '../../src/present/nextSeason/spread.ts';
import type { AdviceSource } from '../../src/present/nextSeason/source.ts';
import { weightsContent } from '../../src/present/nextSeason/weights.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { ongoingOf } from '../../src/present/pages/ongoing.ts';
import { seasonWriting } from '../../src/present/seasonWriting.ts';
import { standsOf } from '../../src/present/pages/stands.ts';
import type { Trial } from '../../src/terms/trial.ts';
import { sitePages } from '../../site/pages.tsx';
import type { Page, SiteContent } from '../../site/content.ts';

interface Compared {
  readonly seen: SeasonSeen;
  readonly compared: SeasonComparisons;
}

/** Every page of a trial, without the charts that Vega draws. */
export function pagesOfTrial(
  trial: Trial,
  compared: readonly Compared[],
  advice: AdviceSource | null,
): readonly Page[] {
  const seasons = compared.map(({ seen }) => seen);
  const lines = publishedLines(trial, seasons, advice?.next ?? null);
  const writing = writingOf(trial.settings);
  const content: SiteContent = {
    trial,
    seasons,
    problems: [],
    writing,
    figures: new Map(),
    reports: new Map(
      compared.map((own) => [
        own.seen.season.key,
        new Map(
          [...trial.settings.classes.keys()].map((id) => [
            id,
            classReport(trial, own.seen, own.compared, id, seasonWriting(writing, own.seen.season)),
          ]),
        ),
      ]),
    ),
    downloads: downloadsOf(trial, seasons, lines),
    advice,
    compared: new Map(compared.map((own) => [own.seen.season.key, own.compared])),
    stands: standsOf(trial, seasons, advice, new Map()),
    words: new Map(),
    next: advice && {
      season: advice.next.season,
      classes: advice.next.classes.map((outcome) => classAdviceWords(advice, outcome)),
      figures: new Map(),
      spread: spreadWords(advice),
      weights: weightsContent(advice),
    },
    front: advice && frontPage(advice, compared.at(-1)!.compared),
    qr: null,
    pictures: new Map(),
    ongoing: ongoingOf(trial),
    lines,
    ownPages: [],
    gardens: new Map(),
  };
  return sitePages(content);
}

/** What no sentence may hold, and why. */
const FAULTS: readonly (readonly [RegExp, string])[] = [
  [/(?<!\.)\.\.(?!\.)/u, 'a double stop'],
  [/\(\s*\)/u, 'an empty bracket'],
  [/\b0 (?:tasters|Verkoster)\b/u, 'nobody who tasted'],
  [/(?<![\d.,])[-−]0(?![\d.,])/u, 'a minus before nothing'],
  [/(?<![\d.,])1 (?:varieties|plants|plantings|spots|days|seasons|tasters)\b/u, 'a plural of one'],
  [/\b(?:one|eine) (?:varieties|spots|Sorten|Plätze)\b/u, 'a plural of one'],
  [/\b(?:NaN|undefined|Infinity)\b|\[object/u, 'a word of a program'],
  [/ [,.;:](?:\s|$)/u, 'a blank before a stop'],
  [/(?:^|[.!?] )(?:, |and |und )/u, 'a sentence that begins in its middle'],
];

/** Visible text of a page, block by block. */
function blocksOf(html: string): readonly string[] {
  return html
    .replace(/<(script|style|title|svg|code)\b[\s\S]*?<\/\1>/gu, ' ')
    .replace(/<\/(?:p|li|h\d|td|th|dd|dt|caption|figcaption|summary|tr|div|section)>/gu, '\n')
    .replace(/<[^>]*>/gu, '')
    .replaceAll('&nbsp;', ' ')
    .replaceAll('&amp;', '&')
    .split('\n')
    .map((text) => text.replace(/\s+/gu, ' ').trim())
    .filter((text) => text !== '');
}

/** What is wrong with the sentences of pages. */
export function faultsOfPages(pages: readonly Page[]): readonly string[] {
  return pages.flatMap(({ address, html }) =>
    blocksOf(html).flatMap((text) =>
      FAULTS.filter(([pattern]) => pattern.test(text)).map(([, why]) => `/${address}: ${why}: “${text.slice(0, 160)}”`),
    ),
  );
}
