import { readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { SourceFile } from '../read/decode.ts';
import { sortFiles } from '../records/folder.ts';
import type { TrialFiles } from '../records/folder.ts';
import { openWorkbooks } from './workbooks.ts';

const READ = { data: /\.(csv|ya?ml|txt|tsv|xlsx|ods)$/i, content: /\.(md|jpe?g|png|webp|avif|tiff?|gif)$/i };
/** Photos are named here and read when they are made smaller. */
const PHOTO = /\.(jpe?g|png|webp|avif|tiff?|gif)$/i;
const WORKBOOK = /\.(xlsx|ods)$/i;
/** Files that a spreadsheet keeps beside an open one, and hidden ones: none is the grower's record. */
const LOCK = /^(?:~\$|\.)/;
/** Members' sheets lie a folder deeper, and their full records two. */
const GARDENS = /^data\/\d{4}\/gardens(?:\/[^/]+)?$/;
const LARGEST = 1 << 29;

function reasonOf(fault: unknown): string {
  return fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
}

type Found = { readonly files: SourceFile[]; readonly unreadable: TrialFiles['unreadable'][number][] };

/** Bytes of a file that did not change while it was read. */
function readWhole(path: string): Uint8Array | 'changed' {
  const before = statSync(path);
  const bytes = readFileSync(path);
  const after = statSync(path);
  const isSame = before.mtimeMs === after.mtimeMs && before.size === after.size && bytes.length === after.size;
  return isSame ? bytes : 'changed';
}

function readFile(root: string, inside: string, { files, unreadable }: Found): void {
  const path = join(root, inside);
  const add = (reason: string): void => void unreadable.push({ path: inside, reason });
  if (!`${realpathSync(path)}${sep}`.startsWith(`${root}${sep}`)) return add('outside');
  if (statSync(path).size > LARGEST) return add('larger than 512 MB');
  const bytes = PHOTO.test(inside) ? new Uint8Array() : readWhole(path);
  if (bytes === 'changed') add('changed');
  else files.push(lastRead(path, { path: inside, bytes }));
}

/** Short files as they were last read: one that is as it was is the same source, of which its rows are known. */
const read = new Map<string, SourceFile>();
const SHORT = 1 << 20;

function lastRead(path: string, own: SourceFile & { readonly bytes: Uint8Array }): SourceFile {
  const before = read.get(path);
  if (before?.bytes && Buffer.compare(before.bytes, own.bytes) === 0) return before;
  if (own.bytes.length <= SHORT) read.set(path, own);
  return own;
}

/** Reads what is wanted below a folder, one level deep, in the order of names; false where there is no such folder. */
function visit(root: string, path: string, wanted: RegExp, found: Found, depth = 0): boolean {
  let names: string[];
  try {
    names = readdirSync(join(root, path)).toSorted();
  } catch (fault) {
    const isMissing = reasonOf(fault) === 'ENOENT';
    if (depth > 0 || !isMissing) found.unreadable.push({ path, reason: reasonOf(fault) });
    return !isMissing;
  }
  for (const name of names) {
    if (LOCK.test(name)) continue;
    const inside = `${path}/${name}`;
    try {
      const stat = statSync(join(root, inside));
      if (stat.isDirectory()) {
        const isInside = `${realpathSync(join(root, inside))}${sep}`.startsWith(`${root}${sep}`);
        if (!isInside) found.unreadable.push({ path: inside, reason: 'outside' });
        else if (depth < 1 || GARDENS.test(inside)) visit(root, inside, wanted, found, depth + 1);
      } else if (wanted.test(name)) {
        if (stat.isFile()) readFile(root, inside, found);
        else found.unreadable.push({ path: inside, reason: 'not a file' });
      }
    } catch (fault) {
      found.unreadable.push({ path: inside, reason: reasonOf(fault) });
    }
  }
  return true;
}

/**
 * Reads a trial folder: the tables, workbooks and settings of `data/`, the Markdown of `content/`, in the order of
 * their names. Links are followed only inside the folder.
 */
export async function readFolder(folder: string): Promise<TrialFiles> {
  const found: Found = { files: [], unreadable: [] };
  let root = folder;
  try {
    root = realpathSync(folder);
  } catch {
    return sortFiles([], [], false);
  }
  const hasData = visit(root, 'data', READ.data, found);
  visit(root, 'content', READ.content, found);
  const { sheets, unread } = await openWorkbooks(found.files.filter(({ path }) => WORKBOOK.test(path)));
  const files = [...found.files.filter(({ path }) => !WORKBOOK.test(path)), ...sheets];
  return { ...sortFiles(files, found.unreadable, hasData), workbooks: unread };
}
