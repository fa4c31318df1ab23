import {
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { isLeftover, ownName } from './ownNames.ts';
import { writeWhole } from './writeWhole.ts';

/** In every site that a build wrote: the list of its files, so that the next one removes these and nothing else. */
const MARKER = '.keeprow-site.json';
const FORMAT = 'keeprow-site/1';

const MOST_LINKS = 40;

/** What a link names; null for anything else. */
function linkTarget(path: string): string | null {
  try {
    return readlinkSync(path);
  } catch {
    return null;
  }
}

/** A path with the links in it followed, as far as it is there; a link to nothing leads to what it names. */
export function followed(path: string, links = 0): string {
  const whole = resolve(path);
  try {
    return realpathSync.native(whole);
  } catch {
    const above = dirname(whole);
    if (above === whole) return whole;
    const target = links < MOST_LINKS ? linkTarget(whole) : null;
    if (target !== null) return followed(resolve(above, target), links + 1);
    return join(followed(above, links), basename(whole));
  }
}

/** True for a path that is another or lies below it. */
export const isIn = (inner: string, outer: string): boolean => `${inner}${sep}`.startsWith(`${outer}${sep}`);

/** Files below a folder, with `/`; links are files, whatever they lead to. */
function filesBelow(folder: string, inside = ''): readonly string[] {
  return readdirSync(join(folder, inside), { withFileTypes: true })
    .flatMap((entry) => {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`;
      return entry.isDirectory() ? filesBelow(folder, path) : [path];
    })
    .toSorted();
}

/** Files that a build wrote here, by its marker; null without a marker that can be read. */
export function writtenFiles(site: string): ReadonlySet<string> | null {
  try {
    const marker: unknown = JSON.parse(readFileSync(join(site, MARKER), 'utf8'));
    if (typeof marker !== 'object' || marker === null || !('format' in marker) || marker.format !== FORMAT) return null;
    const files: readonly unknown[] = 'files' in marker && Array.isArray(marker.files) ? marker.files : [];
    return new Set([...files.filter((file) => typeof file === 'string'), MARKER]);
  } catch {
    return null;
  }
}

/** Folders above some files, with `/`. */
function foldersOf(files: Iterable<string>): ReadonlySet<string> {
  const folders = new Set<string>();
  for (const file of files)
    for (let at = file.lastIndexOf('/'); at > 0; at = file.lastIndexOf('/', at - 1)) folders.add(file.slice(0, at));
  return folders;
}

const isFolder = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

/**
 * What no build wrote: files, and whole folders in which nothing is ours.
 *
 * @param other  the site that it is to go to: its folders are ours too
 */
function strangersIn(site: string, other: string): readonly string[] {
  const own = writtenFiles(site) ?? new Set();
  const folders = foldersOf(own);
  const visit = (inside: string): readonly string[] =>
    readdirSync(join(site, inside), { withFileTypes: true }).flatMap((entry) => {
      const path = inside === '' ? entry.name : `${inside}/${entry.name}`;
      if (!entry.isDirectory()) return own.has(path) ? [] : [path];
      return folders.has(path) || isFolder(join(other, path)) ? visit(path) : [path];
    });
  return visit('');
}

/** What places for publishing hold before anything is published: hidden files, and the name of the place. */
const isPublishers = (name: string): boolean => name.startsWith('.') || name === 'CNAME';

function named(paths: readonly string[]): string {
  const more = paths.length - 3;
  return paths.slice(0, 3).join(', ') + (more > 0 ? ` and ${more} more` : '');
}

/**
 * Whether a site may be written to a folder: never in, on or around the trial's records and words, and only where
 * nothing is, or a site that a build wrote.
 *
 * @param folder  the trial folder
 * @param out     the folder asked for, its links followed
 * @returns       why not, or null where it may
 */
export function whyUnfit(folder: string, out: string): string | null {
  for (const part of ['data', 'content']) {
    for (const kept of [followed(join(folder, part)), join(followed(folder), part)]) {
      if (out === kept) return `it is the trial's ${part}`;
      if (isIn(out, kept)) return `it lies in the trial's ${part}`;
      if (isIn(kept, out)) return `the trial's ${part} lies in it`;
    }
  }
  if (!existsSync(out)) return null;
  if (!isFolder(out)) return 'it is a file';
  if (writtenFiles(out) !== null) return null;
  const strangers = readdirSync(out).filter((name) => !isPublishers(name));
  if (strangers.length === 0) return null;
  return `it holds what no build of Keeprow wrote there: ${named(strangers.toSorted())}`;
}

/** Makes a folder and those above it, one by one: the recursive call never ends on some system folders. */
export function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  mkdirSync(path);
}

/** Writes the marker of a site that is complete but for it. */
export function markSite(fresh: string): void {
  const document = { format: FORMAT, files: filesBelow(fresh) };
  writeWhole(join(fresh, MARKER), `${JSON.stringify(document, null, 1)}\n`);
}

/** Moves what no build wrote from a site put aside into the one in its place. */
function carryOver(old: string, site: string): void {
  for (const path of strangersIn(old, site)) {
    if (existsSync(join(site, path))) continue;
    makeFolder(dirname(join(site, path)));
    renameSync(join(old, path), join(site, path));
  }
}

/** Removes what a build wrote of a site put aside, and the folders that this leaves empty. */
function removeWritten(old: string): void {
  // Only what is really there, links not followed: a marker may be anybody's.
  const own = writtenFiles(old) ?? new Set();
  for (const path of filesBelow(old)) if (own.has(path)) rmSync(join(old, path), { force: true });
  const removeEmpty = (folder: string): void => {
    for (const entry of readdirSync(folder, { withFileTypes: true }))
      if (entry.isDirectory()) removeEmpty(join(folder, entry.name));
    if (readdirSync(folder).length === 0) rmSync(folder, { recursive: true });
  };
  removeEmpty(old);
}

/** Sites put aside by builds that were killed in the middle of the swap. */
export function putAside(out: string): readonly string[] {
  const above = dirname(out);
  return existsSync(above) ? readdirSync(above).filter((name) => isLeftover(name, 'old', out)) : [];
}

/** Ends what a killed build began: a site put aside goes back where none is, else its strangers follow it. */
export function mend(out: string): void {
  for (const name of putAside(out)) {
    const old = join(dirname(out), name);
    if (!existsSync(out)) renameSync(old, out);
    else {
      carryOver(old, out);
      removeWritten(old);
    }
  }
}

/** Removes folders that builds killed before the swap left behind; those of builds at work stay. */
export function clearLeftovers(out: string): void {
  const above = dirname(out);
  for (const name of readdirSync(above))
    if (isLeftover(name, 'new', out) || isLeftover(name, 'input', out))
      rmSync(join(above, name), { recursive: true, force: true });
}

/** A folder of our own beside the site, with the rights that the site is to have. */
export function freshFolder(out: string, kind: 'new' | 'input'): string {
  const path = join(dirname(out), ownName(kind, out));
  mkdirSync(path);
  return path;
}

/** What of an old site's own strangers would stand in the way of the new one's files, by name. */
function inTheWay(fresh: string, out: string): readonly string[] {
  return strangersIn(out, fresh).filter((path) => {
    const steps = path.split('/').map((_, i, all) => join(fresh, ...all.slice(0, i + 1)));
    return existsSync(steps.pop()!) || steps.some((step) => existsSync(step) && !isFolder(step));
  });
}

export type Swapped =
  | { readonly kind: 'done'; readonly lost: readonly string[] }
  /** Nothing was changed. */
  | { readonly kind: 'in-the-way'; readonly names: string }
  /** The new site is in its place; some of the old one is where it was put aside. */
  | { readonly kind: 'left'; readonly old: string; readonly fault: unknown };

/**
 * Puts the fresh site in the place of the old one, which stays whole until then; what no build wrote stays in place.
 *
 * @returns files of the old site that the new one has not, or what kept it from being done
 */
export function swapSite(fresh: string, out: string): Swapped {
  if (!existsSync(out)) {
    renameSync(fresh, out);
    return { kind: 'done', lost: [] };
  }
  const strangers = inTheWay(fresh, out);
  if (strangers.length > 0) return { kind: 'in-the-way', names: named(strangers) };
  const now = new Set(filesBelow(fresh));
  const lost = [...(writtenFiles(out) ?? [])].filter((path) => !now.has(path));
  const old = join(dirname(out), ownName('old', out));
  renameSync(out, old);
  try {
    renameSync(fresh, out);
  } catch (fault) {
    renameSync(old, out);
    throw fault;
  }
  try {
    carryOver(old, out);
    removeWritten(old);
  } catch (fault) {
    return { kind: 'left', old, fault };
  }
  return { kind: 'done', lost };
}
