import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { MadePhoto } from '../present/growersWords.ts';
import type { Problem } from '../terms/problem.ts';
import type { Sharp } from 'sharp';
import { nth } from '../numerics/element.ts';

const WIDTHS = [480, 960, 1600];
const FALLBACK = 960;
const SMALL = 240;
const MOST_PIXELS = 100_000_000;
const LONGEST_SECONDS = 60;

export interface MadePhotos {
  readonly photos: ReadonlyMap<string, MadePhoto>;
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly problems: readonly Problem[];
}

const SIGNS: readonly (readonly [start: number, sign: string])[] = [
  [0, '\u0089PNG'],
  [0, '\u00ff\u00d8\u00ff'],
  [0, 'GIF8'],
  [0, 'II*\0'],
  [0, 'MM\0*'],
  [8, 'WEBP'],
  [4, 'ftypavi'],
  [4, 'ftypmif1'],
];

/** True for a file that begins as a photo does, whatever its name says: a drawing may take minutes to be made one. */
function isPhoto(bytes: Buffer): boolean {
  return SIGNS.some(([start, sign]) => bytes.toString('latin1', start, start + sign.length) === sign);
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

interface Sized {
  readonly photo: MadePhoto;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** Photos made for this site and for the one before, by name and content: `view` makes none twice. */
let sized = new Map<string, Sized>();
let sizedBefore = new Map<string, Sized>();

/** One photo in every size that a page shows. */
async function sizedPhoto(bytes: Buffer, slug: string): Promise<Sized> {
  const key = `${slug} ${createHash('sha256').update(bytes).digest('hex')}`;
  const own = sizedBefore.get(key) ?? (await makePhoto(bytes, slug));
  sized.set(key, own);
  return own;
}

async function makePhoto(bytes: Buffer, slug: string): Promise<Sized> {
  const files = new Map<string, Uint8Array>();
  const { default: sharp } = await import('sharp');
  const source = sharp(bytes, { limitInputPixels: MOST_PIXELS }).rotate().timeout({ seconds: LONGEST_SECONDS });
  const upright = await source.toBuffer({ resolveWithObject: true });
  const { width, height } = upright.info;
  const made = (): Sharp => sharp(upright.data);
  const widths = [...WIDTHS.filter((one) => one < width), ...(width <= nth(WIDTHS, -1) ? [width] : [])];
  const sources = widths.map((one) => ({ path: `photos/${slug}-${one}.webp`, width: one }));
  for (const { path, width: one } of sources)
    files.set(path, await made().resize({ width: one }).webp({ quality: 80 }).toBuffer());
  const usual = Math.min(FALLBACK, width);
  const fallback = `photos/${slug}.jpg`;
  const flat = made().resize({ width: usual }).flatten({ background: '#ffffff' });
  files.set(fallback, await flat.jpeg({ quality: 82 }).toBuffer());
  const small = `photos/${slug}-small.webp`;
  files.set(small, await made().resize({ width: SMALL, height: SMALL }).webp({ quality: 80 }).toBuffer());
  const photo = { sources, fallback, small, width: usual, height: Math.round((height * usual) / width) };
  return { photo, files };
}

/**
 * Photos made for the site: turned upright, resized, without any of their metadata (no place, no camera, no time).
 *
 * @param folder  the trial folder
 * @param names   files of content/photos that a page shows
 */
export async function makePhotos(folder: string, names: readonly string[]): Promise<MadePhotos> {
  const photos = new Map<string, MadePhoto>();
  const files = new Map<string, Uint8Array>();
  const problems: Problem[] = [];
  if (names.length === 0) return { photos, files, problems };
  const taken = new Set<string>();
  sizedBefore = sized;
  sized = new Map();
  for (const name of names) {
    const path = `content/photos/${name}`;
    try {
      const bytes = readFileSync(join(folder, path));
      if (!isPhoto(bytes)) throw new Error('its content is no JPEG, PNG, WebP, AVIF, TIFF or GIF');
      const own = await sizedPhoto(bytes, slugOf(name, taken));
      photos.set(name.normalize('NFC'), own.photo);
      for (const [to, made] of own.files) files.set(to, made);
    } catch (fault) {
      const facts = { reason: fault instanceof Error ? nth(fault.message.split('\n'), 0) : 'unknown' };
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
