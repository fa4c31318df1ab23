import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { Problem } from '../terms/problem.ts';
import { cacheFile } from './memoryFile.ts';
import { packageRoot } from './packageRoot.ts';
import { writtenFiles } from './siteFolder.ts';
import { writeWhole } from './writeWhole.ts';

/** What a site is made from: a digest of everything but the program, which a file's name holds, and the ledger. */
export interface Sources {
  readonly from: string;
  /** Text of data/addresses.csv, which a build itself writes; null without one. */
  readonly ledger: string | null;
}

/** A site as a build left it. */
interface Finished extends Sources {
  /** Digest of size and time of every file of the site. */
  readonly site: string;
  readonly problems: readonly Problem[];
}

/** Photos are large: their size and time stand for them. */
const PHOTO = /\.(jpe?g|png|webp|avif|tiff?|gif)$/i;

const stampOf = (path: string): string => {
  const { size, mtimeMs } = statSync(path);
  return `${size} ${mtimeMs}`;
};

const LEDGER = join('data', 'addresses.csv');

/** Adds every file of a folder but one, in the order of names. @throws Error where there is a link: it may lead anywhere */
function addFolder(hash: ReturnType<typeof createHash>, folder: string, without: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true }).toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = join(folder, entry.name);
    if (path === without) continue;
    hash.update(`\0${entry.name}\0`);
    if (entry.isDirectory()) addFolder(hash, path, without);
    else if (!entry.isFile()) throw new Error(path);
    else if (PHOTO.test(entry.name)) hash.update(stampOf(path));
    else hash.update(readFileSync(path));
  }
}

/** What a build is going to be made from; null where it cannot be told, or nothing is kept. */
export function sourcesOf(
  folder: string,
  out: string,
  {
    withPdf = false,
    mayDrop = false,
    keepsAddresses = false,
  }: { readonly withPdf?: boolean; readonly mayDrop?: boolean; readonly keepsAddresses?: boolean },
): Sources | null {
  // What a browser prints is not looked at.
  if (withPdf || cacheFile(folder, 'site') === null) return null;
  try {
    const hash = createHash('sha256').update(JSON.stringify([out, mayDrop, keepsAddresses]));
    const parts = readdirSync(folder).filter((name) => name === 'data' || name === 'content');
    for (const part of parts.toSorted())
      addFolder(hash.update(`\0\0${part}`), join(folder, part), join(folder, LEDGER));
    // Styles and scripts are copied as they are: no part of the program that the file's name holds.
    for (const part of ['site/assets', 'dist/assets'])
      addFolder(hash.update(`\0\0${part}`), join(packageRoot(), part), '');
    return { from: hash.digest('hex'), ledger: ledgerOf(folder) };
  } catch {
    return null;
  }
}

function ledgerOf(folder: string): string | null {
  return existsSync(join(folder, LEDGER)) ? readFileSync(join(folder, LEDGER), 'utf8') : null;
}

/** Stamps of all files that the site's marker names; null where one is missing, or the site is no build's. */
function siteOf(out: string): string | null {
  const files = writtenFiles(out);
  if (!files) return null;
  const hash = createHash('sha256');
  for (const name of [...files].toSorted()) hash.update(`${name}\0${stampOf(join(out, name))}\0`);
  return hash.digest('hex');
}

/**
 * Problems of the last build where neither the records, the words, the photos and the program nor any file of the site
 * have changed since; null where anything has, or it cannot be told.
 */
export function recallSite(folder: string, out: string, sources: Sources): readonly Problem[] | null {
  try {
    const path = cacheFile(folder, 'site');
    if (path === null) return null;
    const { from, ledger, site, problems } = deserialize(readFileSync(path)) as Finished;
    return from === sources.from && ledger === sources.ledger && site === siteOf(out) ? problems : null;
  } catch {
    // Not there, or not as it was left: the site is made anew.
    return null;
  }
}

/**
 * Notes a site that is finished. A note that cannot be written is none.
 *
 * @param sources  as they were before the records were read: what has changed since is not in the site
 * @param made     the ledger that the build made
 */
export function rememberSite(
  folder: string,
  out: string,
  sources: Sources,
  made: { readonly ledger: string; readonly problems: readonly Problem[] },
): void {
  try {
    const path = cacheFile(folder, 'site');
    const [site, ledger] = [siteOf(out), ledgerOf(folder)];
    if (path === null || site === null || (ledger !== made.ledger && ledger !== sources.ledger)) return;
    mkdirSync(join(path, '..'), { recursive: true });
    const finished: Finished = { from: sources.from, ledger, site, problems: made.problems };
    writeWhole(path, serialize(finished));
  } catch {
    // Without room or leave to write, the next build makes the site anew.
  }
}
