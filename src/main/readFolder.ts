import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { SourceFile } from '../read/decode.ts';
import { sortFiles } from '../check/folder.ts';
import type { TrialFiles } from '../check/folder.ts';

const READ = { data: /\.(csv|ya?ml|txt|tsv)$/i, content: /\.(md|jpe?g|png|webp|avif|tiff?|gif)$/i };
/** Photos are named here and read when they are made smaller. */
const PHOTO = /\.(jpe?g|png|webp|avif|tiff?|gif)$/i;
const LARGEST = 1 << 29;

function reasonOf(fault: unknown): string {
  return fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
}

/** Reads a trial folder: the tables and settings of `data/`, the Markdown of `content/`, in the order of their names. */
export function readFolder(folder: string): TrialFiles {
  const found: SourceFile[] = [];
  const unreadable: { path: string; reason: string }[] = [];
  const visit = (path: string, wanted: RegExp, depth = 0): boolean => {
    let names: string[];
    try {
      names = readdirSync(join(folder, path)).toSorted();
    } catch (fault) {
      if (depth > 0 || reasonOf(fault) !== 'ENOENT') unreadable.push({ path, reason: reasonOf(fault) });
      return reasonOf(fault) !== 'ENOENT';
    }
    for (const name of names) {
      const inside = `${path}/${name}`;
      try {
        const stat = statSync(join(folder, inside));
        if (stat.isDirectory()) {
          if (depth < 1) visit(inside, wanted, depth + 1);
        } else if (stat.isFile() && wanted.test(name)) {
          if (stat.size > LARGEST) unreadable.push({ path: inside, reason: 'larger than 512 MB' });
          else
            found.push({
              path: inside,
              bytes: PHOTO.test(name) ? new Uint8Array() : readFileSync(join(folder, inside)),
            });
        }
      } catch (fault) {
        unreadable.push({ path: inside, reason: reasonOf(fault) });
      }
    }
    return true;
  };
  const hasData = visit('data', READ.data);
  visit('content', READ.content);
  return sortFiles(found, unreadable, hasData);
}
