import { wordsOf } from '../terms/addresses.ts';
import { liveReferences, LIVE_CHARTS, photoName } from '../terms/live.ts';
import type { LiveReference } from '../terms/live.ts';
import { nearestName } from '../terms/names.ts';
import { fileOnly } from '../terms/place.ts';
import type { Place } from '../terms/place.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { Settings } from '../terms/settings.ts';
import { builtInTraits } from '../terms/traits.ts';
import type { Season } from '../terms/trial.ts';
import { decodeText } from '../read/decode.ts';
import type { SourceFile } from '../read/decode.ts';
import { isFitId } from '../sheet/cells/ids.ts';
import { reportWindows } from '../sheet/columns.ts';
import type { VarietyRegistry } from './registry.ts';
import { nth } from '../numerics/element.ts';

/** The grower's words by the page they belong to: `index`, `seasons/2026`, `varieties/<id>`, `pages/<name>`. */
export type Content = ReadonlyMap<string, string>;

/** What the grower's words can name. */
export interface ContentNames {
  readonly registry: VarietyRegistry;
  readonly seasons: readonly Season[];
  readonly settings: Settings;
  /** Files of `content/photos/`. */
  readonly photos: readonly string[];
}

/** Pages of the records that may have words of the grower's own. */
function recordPages({ registry, seasons }: ContentNames): readonly string[] {
  return [
    wordsOf.front,
    ...seasons.map(({ key }) => wordsOf.season(key)),
    ...registry.varieties.map(({ id }) => wordsOf.variety(id)),
  ];
}

const isOwnPage = (page: string): boolean => page.startsWith('pages/') && isFitId(page.slice('pages/'.length));

function placeOf(file: string, text: string, index: number): Place {
  const before = text.slice(0, index).split('\n');
  return { file, line: before.length, column: nth(before, -1).length + 1 };
}

/** What of a live reference is not known, with the names there are; null where all of it is. */
function unknownIn(
  live: LiveReference,
  { registry, seasons, settings }: ContentNames,
): { readonly said: string; readonly names: readonly string[]; readonly near: string | null } | null {
  const traits = [...builtInTraits, ...settings.traits.keys()];
  const miss = (said: string, names: readonly string[]) => ({ said, names, near: nearestName(said, names) });
  if (live.kind === 'chart') {
    const charts = [
      ...LIVE_CHARTS,
      ...traits.map((trait) => `rating_${trait}`),
      ...traits.map((trait) => `expected_${trait}`),
    ];
    if (!charts.includes(live.what)) return miss(live.what, charts);
    const classes = new Set([...settings.classes.keys(), ...registry.varieties.map(({ classId }) => classId)]);
    if (!classes.has(live.of)) return miss(live.of, [...classes]);
  } else {
    if ((live.kind === 'figure' || live.kind === 'expected') && !traits.includes(live.what))
      return miss(live.what, [...traits, 'verdict', 'share', 'expected yield', 'chart yield']);
    if (!registry.find(live.of)) return { said: live.of, names: [], near: registry.nearest(live.of) };
  }
  const years = seasons.map(({ year }) => String(year));
  return live.year !== null && !years.includes(String(live.year)) ? miss(String(live.year), years) : null;
}

const IMAGE = /!\[([^\]]*)\]\(\s*(?:<([^>]*)>|([^)\s]*))[^)]*\)/g;

/** The first photo in the words about a variety, which stands for it, with the grower's caption. */
export function leadPhoto(
  text: string,
): { readonly name: string; readonly caption: string; readonly written: string } | null {
  const [found] = text.matchAll(IMAGE);
  if (!found) return null;
  const [written, caption = '', bracketed, bare = ''] = found;
  return { name: photoName(bracketed ?? bare), caption: caption.trim(), written };
}

/** Names of the photos that some words show. */
function photosIn(text: string): readonly string[] {
  return [...text.matchAll(IMAGE)].map(([, , bracketed, bare = '']) => photoName(bracketed ?? bare));
}

/** Photos that a page shows: only these are published. */
export function shownPhotos(content: Content, photos: readonly string[]): readonly string[] {
  const shown = new Set([...content.values()].flatMap(photosIn));
  return photos.filter((name) => shown.has(name.normalize('NFC')));
}

function checkPhotos(file: string, text: string, photos: readonly string[], log: ProblemLog): void {
  for (const match of text.matchAll(IMAGE)) {
    const [, words = '', bracketed, bare = ''] = match;
    const target = bracketed ?? bare;
    const place = placeOf(file, text, match.index);
    const name = photoName(target);
    if (words.trim() === '') log.add('photo-without-text', place, target);
    if (photos.includes(name)) continue;
    const near = nearestName(name, photos);
    log.add('photo-missing', place, target, near === null ? {} : { near: `photos/${near}` });
  }
}

/** A block of settings at the top of a page, as other programs read (and some run) it. */
const FRONT_MATTER = /^---(?:[a-z]+[ \t]*\r?\n|[ \t]*\r?\n[ \t]*[\w"'-]+[ \t]*:(?:\s|$))/i;

function checkWords(file: string, text: string, names: ContentNames, log: ProblemLog): void {
  if (FRONT_MATTER.test(text)) log.add('front-matter', { file, line: 1, column: 1 }, text.split(/\r?\n/, 1)[0]);
  for (const live of liveReferences(text)) {
    const unknown = unknownIn(live, names);
    if (!unknown) continue;
    log.add('live-unknown', placeOf(file, text, live.index), live.text, {
      said: unknown.said,
      names: unknown.names.length > 0 ? unknown.names.slice(0, 20).join(', ') : 'an id or name of varieties.csv',
      ...(unknown.near === null ? {} : { near: unknown.near }),
    });
  }
  checkPhotos(
    file,
    text,
    names.photos.map((name) => name.normalize('NFC')),
    log,
  );
}

/**
 * Reads the Markdown files of `content/`; a file that belongs to no page, a live figure of something unknown, and a
 * photo without words or file are reported.
 *
 * @param sources  the files, paths from the trial folder
 */
export function checkContent(sources: readonly SourceFile[], names: ContentNames, log: ProblemLog): Content {
  const content = new Map<string, string>();
  const pages = recordPages(names);
  for (const { path, bytes } of sources) {
    const page = path.replace(/^content\//, '').replace(/\.md$/, '');
    if (!pages.includes(page) && !isOwnPage(page)) {
      const near = nearestName(page, pages);
      log.add('content-unused', fileOnly(path), page, near === null ? {} : { near: `content/${near}.md` });
      continue;
    }
    const decoded = decodeText(bytes);
    if (decoded.kind !== 'text') {
      const place = decoded.kind === 'not-utf8' ? { file: path, line: decoded.line, column: 1 } : fileOnly(path);
      log.add('content-unreadable', place);
      continue;
    }
    reportWindows(path, decoded.windowsLine, log);
    checkWords(path, decoded.text, names, log);
    content.set(page, decoded.text);
  }
  return content;
}
