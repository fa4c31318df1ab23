import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { addDrawings, drawnLast } from './draw.ts';
import { packageRoot } from './packageRoot.ts';
import type { Remembered } from './recall.ts';
import { memory } from './worked.ts';
import { writeWhole } from './writeWhole.ts';

/** So many files are kept, two a trial; of the trial longest not built they are forgotten. */
const MOST_FILES = 40;
/** A file over this is not kept: a trial so large is seldom built twice. */
const LARGEST = 200_000_000;
interface Kept {
  readonly results: Remembered;
  readonly drawings: ReadonlyMap<string, string>;
}

/** Where results are kept between builds; null where that is switched off (KEEPROW_CACHE=off) or there is no home. */
function cacheFolder(): string | null {
  const said = process.env['KEEPROW_CACHE'];
  if (said === 'off') return null;
  if (said !== undefined && said !== '') return resolve(said);
  const base = process.env['XDG_CACHE_HOME'] ?? process.env['LOCALAPPDATA'];
  if (base !== undefined && base !== '') return join(base, 'keeprow');
  return homedir() === '' ? null : join(homedir(), '.cache', 'keeprow');
}

/** Every file of the program, in one digest: another program has other results. */
function programDigest(): string {
  const hash = createHash('sha256').update(process.version).update(process.arch);
  const root = packageRoot();
  hash.update(readFileSync(join(root, 'package.json')));
  const program = join(root, 'dist/src/main');
  for (const name of readdirSync(program).toSorted()) hash.update(name).update(readFileSync(join(program, name)));
  return hash.digest('hex').slice(0, 32);
}

let digest: string | null = null;

/**
 * File of a trial: its name is of the trial's place and of the program.
 *
 * @param kind  what is kept
 * @returns     null where nothing is
 */
export function cacheFile(folder: string, kind: 'results' | 'site'): string | null {
  const cache = cacheFolder();
  // The sources, run without being compiled, change under a digest of what was compiled.
  if (cache === null || import.meta.url.endsWith('.ts')) return null;
  const place = createHash('sha256').update(realpathSync(folder)).digest('hex').slice(0, 16);
  digest ??= programDigest();
  return join(cache, `${place}-${digest}-${kind}`);
}

/** What was taken over from the last build. */
let last: Kept | null = null;

const isIn = (own: ReadonlyMap<string, unknown>, other: ReadonlyMap<string, unknown>): boolean =>
  own.size === other.size && [...own.keys()].every((key) => other.has(key));

/** Takes over what the last build of a trial has worked out; a file that cannot be read is as good as none. */
export function recallLast(folder: string): void {
  try {
    const path = cacheFile(folder, 'results');
    if (path === null) return;
    const kept = deserialize(readFileSync(path)) as Kept;
    memory.add(kept.results);
    addDrawings(kept.drawings);
    last = kept;
  } catch {
    // Not there, or not whole: everything is worked out anew.
  }
}

/** Keeps what this build has used, and forgets trials longest not built. A cache that cannot be written is none. */
export function rememberLast(folder: string): void {
  try {
    const path = cacheFile(folder, 'results');
    if (path === null) return;
    const kept: Kept = { results: memory.entries(), drawings: drawnLast() };
    if (last && isIn(kept.results, last.results) && isIn(kept.drawings, last.drawings)) return;
    const bytes = serialize(kept);
    const cache = join(path, '..');
    mkdirSync(cache, { recursive: true });
    if (bytes.length <= LARGEST) writeWhole(path, bytes);
    const place = path.slice(cache.length + 1).split('-')[0];
    const files = readdirSync(cache).map((name) => ({ name, at: statSync(join(cache, name)).mtimeMs }));
    const stale = files.filter(({ name }) => name.startsWith(`${place}-`) && !name.startsWith(`${place}-${digest}-`));
    const oldest = files.toSorted((a, b) => b.at - a.at).slice(MOST_FILES);
    for (const { name } of [...stale, ...oldest]) rmSync(join(cache, name), { force: true });
  } catch {
    // Without room or leave to write, the next build works everything out anew.
  }
}
