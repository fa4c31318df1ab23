import type { SeasonSeen } from '../../analyse/seen.ts';
import { isoDate } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import type { Trial } from '../../terms/trial.ts';
import { fruitRow } from '../fruitDrawing.ts';
import { svgText } from '../svgText.ts';
import { plainUnits } from '../units.ts';

/** A page to be told of. */
interface Entry {
  readonly address: string;
  readonly title: string;
  readonly day: Day;
  readonly summary: string;
}

/**
 * Atom feed: a season's report and advice each, dated by the season's last day, so that nothing depends on the clock.
 *
 * @param base  address of the site, ending in `/`; ids are made from it and stay
 * @source Nottingham & Sayre (2005) RFC 4287
 */
export function atomFeed(trial: Trial, base: string, entries: readonly Entry[]): string {
  const stamp = (day: Day): string => `${isoDate(day)}T00:00:00Z`;
  const newest = entries.reduce((last, { day }) => Math.max(last, day), 0) as Day;
  const items = entries.map(
    ({ address, title, day, summary }) =>
      ` <entry>\n  <id>${svgText(`${base}${address}`)}</id>\n  <title>${svgText(plainUnits(title))}</title>\n  <link href="${svgText(`${base}${address}`)}"/>\n  <updated>${stamp(day)}</updated>\n  <summary>${svgText(plainUnits(summary))}</summary>\n </entry>\n`,
  );
  return `<?xml version="1.0" encoding="utf-8"?>\n<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="${svgText(trial.settings.language)}">\n <id>${svgText(base)}</id>\n <title>${svgText(trial.settings.title)}</title>\n <link href="${svgText(base)}"/>\n <link rel="self" href="${svgText(`${base}feed.xml`)}"/>\n <author><name>${svgText(trial.settings.title)}</name></author>\n <updated>${stamp(newest)}</updated>\n${items.join('')}</feed>\n`;
}

/** Sitemap of the pages. @source sitemaps.org protocol 0.9 */
export function sitemap(base: string, addresses: readonly string[]): string {
  const urls = addresses.map((address) => ` <url><loc>${svgText(`${base}${address}`)}</loc></url>\n`);
  return `<?xml version="1.0" encoding="utf-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${urls.join('')}</urlset>\n`;
}

const WIDTH = 1200;
const HEIGHT = 630;

/** Picture that stands for the site elsewhere, as SVG without text: fruit of the last season on a ruler. */
export function cardSvg(trial: Trial, seen: SeasonSeen | undefined): string {
  const base = 470;
  const ticks = Array.from(
    { length: 53 },
    (_, i) => `<path d="M${80 + i * 20} ${base + 20}v${i % 5 === 0 ? 18 : 10}" stroke="#8b9186"/>`,
  );
  const fruit = seen ? `<g transform="translate(80 0)">${fruitRow(seen, trial, 1040, base)}</g>` : '';
  const coloured = fruit.replaceAll('var(--ink)', '#20261f').replaceAll('var(--muted)', '#5a6157');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}"><rect width="${WIDTH}" height="${HEIGHT}" fill="#fcfbf7"/><path d="M80 60h1040" stroke="#20261f" stroke-width="6"/><path d="M80 72h1040" stroke="#20261f"/>${coloured}<path d="M80 ${base + 20}h1040" stroke="#8b9186"/>${ticks.join('')}</svg>`;
}
