import { addresses } from '../terms/addresses.ts';
import type { GardenAdvice } from '../decide/adviseGarden.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { downloadText } from '../present/downloadTable.ts';
import type { Download } from '../present/downloadTable.ts';
import type { AdviceSource } from '../present/nextSeason/source.ts';
import type { Writing } from '../present/numbers.ts';
import { citation, csvMetadata, dataPackage } from '../present/publication/descriptions.ts';
import { resultsSchema } from '../present/publication/schema.ts';
import { atomFeed, cardSvg, sitemap } from '../present/publication/syndication.ts';
import { siteBase } from '../present/siteBase.ts';
import type { PublishedLines } from '../present/linesDocument.ts';
import { resultsDocument } from '../present/results.ts';
import type { Trial } from '../terms/trial.ts';
import type { Page } from '../../site/content.ts';
import { encodeQR } from 'qr';

interface Published {
  readonly trial: Trial;
  readonly compared: readonly { readonly seen: SeasonSeen; readonly compared: SeasonComparisons }[];
  readonly advice: AdviceSource | null;
  readonly lines: PublishedLines;
  readonly gardens: ReadonlyMap<string, GardenAdvice>;
  readonly downloads: readonly Download[];
  readonly pages: readonly Page[];
  readonly writing: Writing;
}

/** The site's address as a QR code in SVG; null without an address. */
export function qrCode(trial: Trial): string | null {
  const base = siteBase(trial.settings);
  if (base === null) return null;
  const cells = encodeQR(base, 'raw', { ecc: 'medium', border: 4 });
  const path = cells.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : []))).join('');
  const size = cells.length;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" width="160" height="160" role="img" aria-label="${base.replaceAll('&', '&amp;').replaceAll('"', '&quot;')}"><rect width="${size}" height="${size}" fill="#fff"/><path d="${path}" fill="#000"/></svg>`;
}

/** Files beside the pages: figures, tables with their descriptions, feed, sitemap, the picture for links. */
export async function publicationFiles(own: Published): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const { trial, compared, advice, downloads, pages, writing } = own;
  const { settings } = trial;
  const years = compared.map(({ seen }) => seen.season.year);
  const json = (document: unknown): string => `${JSON.stringify(document, null, 1)}\n`;
  const files = new Map<string, string | Uint8Array>(downloads.map((one) => [one.path, downloadText(one)]));
  files.set('results.json', json(resultsDocument(trial, compared, advice, own.lines, own.gardens)));
  files.set('results.schema.json', json(resultsSchema));
  files.set('datapackage.json', dataPackage(settings, downloads));
  files.set('csv-metadata.json', csvMetadata(settings, downloads));
  files.set('CITATION.cff', citation(settings, years));
  const { default: sharp } = await import('sharp');
  files.set(
    'og.png',
    await sharp(Buffer.from(cardSvg(trial, compared.at(-1)?.seen)))
      .png()
      .toBuffer(),
  );
  const base = siteBase(trial.settings);
  if (base === null) return files;
  const entries = compared.toReversed().map(({ seen }) => ({
    address: addresses.season(seen.season.key),
    title: writing.words.season.title(String(seen.season.year)),
    day: seen.season.lastDay,
    summary: writing.words.seasons.varieties(writing.number(seen.varieties.length)),
  }));
  files.set('robots.txt', `User-agent: *\nAllow: /\nSitemap: ${base}sitemap.xml\n`);
  files.set('feed.xml', atomFeed(trial, base, entries));
  files.set(
    'sitemap.xml',
    sitemap(
      base,
      pages.map(({ address }) => address),
    ),
  );
  return files;
}
