import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadePhoto } from '../present/growersWords.ts';
import type { Problem } from '../terms/problem.ts';

const WIDTHS = [480, 960, 1600];
const FALLBACK = 960;

export interface MadePhotos {
  readonly photos: ReadonlyMap<string, MadePhoto>;
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly problems: readonly Problem[];
}

/** A name that can stand in an address, whatever the file was called. */
function slugOf(name: string, taken: Set<string>): string {
  const plain = name
    .replace(/\.[^.]*$/, '')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  const base = plain === '' ? 'photo' : plain;
  let slug = base;
  for (let i = 2; taken.has(slug); i++) slug = `${base}-${i}`;
  taken.add(slug);
  return slug;
}

/**
 * Photos made for the site: turned upright, resized, without any of their metadata (no place, no camera, no time).
 *
 * @param folder  the trial folder
 * @param names   files of content/photos
 */
export async function makePhotos(folder: string, names: readonly string[]): Promise<MadePhotos> {
  const photos = new Map<string, MadePhoto>();
  const files = new Map<string, Uint8Array>();
  const problems: Problem[] = [];
  if (names.length === 0) return { photos, files, problems };
  const { default: sharp } = await import('sharp');
  const taken = new Set<string>();
  for (const name of names) {
    const path = `content/photos/${name}`;
    try {
      const source = sharp(readFileSync(join(folder, path)), { limitInputPixels: 100_000_000 }).rotate();
      const upright = await source.toBuffer({ resolveWithObject: true });
      const { width, height } = upright.info;
      const slug = slugOf(name, taken);
      const widths = [...WIDTHS.filter((one) => one < width), ...(width <= WIDTHS.at(-1)! ? [width] : [])];
      const sources: { path: string; width: number }[] = [];
      for (const one of widths) {
        const made = await sharp(upright.data).resize({ width: one }).webp({ quality: 80 }).toBuffer();
        sources.push({ path: `photos/${slug}-${one}.webp`, width: one });
        files.set(`photos/${slug}-${one}.webp`, made);
      }
      const small = Math.min(FALLBACK, width);
      const fallback = await sharp(upright.data)
        .resize({ width: small })
        .flatten({ background: '#ffffff' })
        .jpeg({ quality: 82 })
        .toBuffer();
      files.set(`photos/${slug}.jpg`, fallback);
      photos.set(name, {
        sources,
        fallback: `photos/${slug}.jpg`,
        width: small,
        height: Math.round((height * small) / width),
      });
    } catch (fault) {
      const facts = { reason: fault instanceof Error ? fault.message.split('\n')[0]! : 'unknown' };
      problems.push({
        code: 'photo-unreadable',
        places: [{ file: path, line: null, column: null }],
        found: name,
        facts,
      });
    }
  }
  return { photos, files, problems };
}
