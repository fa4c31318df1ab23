import { answersTo, plantModel, rankedIn, ratingModel, ripeningModel } from '../analyse/traitsSeen.ts';
import MarkdownIt from 'markdown-it';
import { leadPhoto } from '../records/content.ts';
import type { Content } from '../records/content.ts';
import { varietyRegistry } from '../records/registry.ts';
import type { VarietyRegistry } from '../records/registry.ts';
import { liveReferences, photoName } from '../terms/live.ts';
import type { LiveReference } from '../terms/live.ts';
import { expectedIn, of100 } from './nextSeason/source.ts';
import type { AdviceSource } from './nextSeason/source.ts';
import type { PictureWords } from './tables.ts';
import { svgText } from './svgText.ts';
import { traitFacts } from '../terms/traits.ts';
import { nth } from '../numerics/element.ts';

/** Stands for the way from a page to the site's root, which differs from page to page. */
export const ROOT = '%KEEPROW-ROOT%';

/** A photo as it was made for the site: addresses from the root by width, the widest with its size. */
export interface MadePhoto {
  readonly sources: readonly { readonly path: string; readonly width: number }[];
  readonly fallback: string;
  /** A square of its middle, for lists. */
  readonly small: string;
  readonly width: number;
  readonly height: number;
}

interface Sources {
  readonly advice: AdviceSource | null;
  readonly pictures: ReadonlyMap<string, PictureWords>;
  readonly photos: ReadonlyMap<string, MadePhoto>;
}

/** The newest season in which a variety was grown, or the one named. */
function seasonOf(advice: AdviceSource, live: LiveReference, variety: string) {
  const grown = advice.seasons.filter(({ varieties }) => varieties.some((own) => own.variety.id === variety));
  return live.year === null ? grown.at(-1) : grown.find(({ season }) => season.year === live.year);
}

function figureText(advice: AdviceSource, live: LiveReference, variety: string): string {
  const { writing, trial } = advice;
  const seen = seasonOf(advice, live, variety);
  const unit = traitFacts(live.what, trial.settings.traits).unit;
  const estimate =
    live.what === 'first_ripe'
      ? (seen && ripeningModel(seen))?.estimates.get(variety)
      : ((seen && plantModel(seen, live.what))?.estimates.get(variety) ??
        (seen && ratingModel(seen, live.what))?.estimates.get(variety));
  const share = (seen && answersTo(seen, live.what))?.get(variety);
  if (share) return writing.words.figure.kOfN(String(share.k), String(share.n));
  const ranked = (seen ? rankedIn(seen, live.what) : [])
    .flatMap(({ varieties }) => varieties)
    .find((own) => own.variety === variety);
  if (ranked) {
    const { beforeMiddle: estimate, low, high } = ranked;
    return writing.interval({ estimate, low, high }, unit);
  }
  return estimate ? writing.interval(estimate, unit) : writing.words.figure.notRecorded;
}

/** A live figure as text. */
function liveText(advice: AdviceSource, registry: VarietyRegistry, live: LiveReference): string {
  const { writing, next, trial } = advice;
  const { figure, nextSeason } = writing.words;
  const found = registry.find(live.of);
  if (!found) return figure.notRecorded;
  const variety = found.id;
  if (live.kind === 'figure') return figureText(advice, live, variety);
  const { classId } = found;
  if (live.kind === 'expected') {
    const expected = expectedIn(next, live.what, classId, variety);
    return expected
      ? writing.interval(expected, traitFacts(live.what, trial.settings.traits).unit)
      : figure.notRecorded;
  }
  const outcome = next.classes.find((own) => own.classId === classId);
  const own = outcome?.advice?.varieties.find((one) => one.variety === variety);
  if (!own) return figure.notRecorded;
  return live.kind === 'verdict' ? nextSeason.verdict[own.verdict] : of100(own.share, advice);
}

/** Id of the figure that a live chart names, with its season where it has one. */
function chartKey({ what, of, year }: LiveReference, newest: number | undefined): string {
  const id = `${what.replace(/^(rating|expected)_/, '$1-')}-${of}`;
  return what === 'shares' || what.startsWith('expected_') ? id : `${year ?? newest}/${id}`;
}

function pictureHtml({ id, title, measure, drawn, other: inOtherUnits }: PictureWords): string {
  const own = drawn();
  const { wide, narrow } = own;
  const other = inOtherUnits?.(own);
  const part = (name: string, svg: string, isHidden = false): string =>
    `<div class="${name}"${isHidden ? ' hidden' : ''}>${svg.replace(/\b(id="|url\(#|href="#)/g, '$1live-')}</div>`;
  return `<figure id="live-${id}"><figcaption><strong>${svgText(title)}</strong><span>${svgText(measure)}</span></figcaption>${part('wide', wide)}${part('narrow', narrow)}${other ? part('wide-other', other.wide, true) + part('narrow-other', other.narrow, true) : ''}</figure>`;
}

function photoHtml(photo: MadePhoto, words: string): string {
  const set = photo.sources.map(({ path, width }) => `${ROOT}${path} ${width}w`).join(', ');
  return `<picture><source type="image/webp" srcset="${set}" sizes="(max-width: 44rem) 100vw, 44rem"><img src="${ROOT}${photo.fallback}" width="${photo.width}" height="${photo.height}" alt="${svgText(words)}" loading="lazy"></picture>`;
}

/** Words of a page of the grower's own without their first heading, which is the page's title. */
function withoutTitle(page: string, text: string): string {
  return page.startsWith('pages/') ? text.replace(/^#\s+.+$/m, '') : text;
}

/** Words about a variety without their first photo, which stands at the top of its page. */
function withoutLead(page: string, text: string, photos: Sources['photos']): string {
  const lead = page.startsWith('varieties/') ? leadPhoto(text) : null;
  return lead && photos.has(lead.name) ? text.replace(lead.written, '') : text;
}

/**
 * The grower's words as HTML: Markdown without raw HTML, live figures and charts put in, photos as they were made.
 *
 * @returns HTML by page; {@link ROOT} stands where the way to the site's root belongs
 */
export function growersWords(content: Content, { advice, pictures, photos }: Sources): ReadonlyMap<string, string> {
  const markdown = new MarkdownIt({ html: false });
  markdown.renderer.rules['image'] = (tokens, i) => {
    const token = nth(tokens, i);
    const photo = photos.get(photoName(String(token.attrGet('src'))));
    return photo ? photoHtml(photo, token.content) : markdown.utils.escapeHtml(token.content);
  };
  const registry = varietyRegistry(advice?.trial.varieties ?? []);
  const newest = advice?.seasons.at(-1)?.season.year;
  const render = (text: string): string => {
    const charts: string[] = [];
    let source = text;
    for (const live of advice ? liveReferences(text) : []) {
      if (live.kind !== 'chart') {
        source = source.replace(live.text, () => liveText(advice!, registry, live));
        continue;
      }
      const picture = pictures.get(chartKey(live, newest));
      charts.push(picture ? pictureHtml(picture) : '');
      source = source.replace(live.text, () => `\n\nKEEPROWCHART${charts.length - 1}X\n\n`);
    }
    return markdown.render(source).replace(/<p>KEEPROWCHART(\d+)X<\/p>/g, (_, i: string) => charts[Number(i)] ?? '');
  };
  return new Map(
    [...content].map(([page, text]) => [page, render(withoutTitle(page, withoutLead(page, text, photos)))]),
  );
}

/** Title of a page of the grower's own: its first heading, else its name. */
export function ownTitle(page: string, text: string): string {
  return /^#\s+(.+)$/m.exec(text)?.[1]?.trim() ?? page.replace('pages/', '').replaceAll('-', ' ');
}
