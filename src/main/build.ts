import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '../../site/content.ts';
import { configureEleventy } from './eleventySite.ts';
import { printHandout } from './handoutPdf.ts';
import { makePages } from './makePages.ts';
import type { MadePages } from './makePages.ts';
import { tellProblems, tellProgress } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';

/** Folder of the package's own assets, from the sources or from the compiled command. */
function packageRoot(): string {
  let at = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(at, 'site', 'assets'))) at = dirname(at);
  return at;
}

async function writePages(fresh: string, pages: readonly Page[]): Promise<void> {
  const { default: Eleventy } = await import('@11ty/eleventy');
  const input = mkdtempSync(join(dirname(fresh), '.keeprow-input-'));
  try {
    const eleventy = new Eleventy(relative(process.cwd(), input), relative(process.cwd(), fresh), {
      quietMode: true,
      configPath: '',
      loader: 'esm',
      config: (config) => configureEleventy(config, pages),
    });
    await eleventy.initializeConfig({ markdownTemplateEngine: false, htmlTemplateEngine: false });
    eleventy.disableLogger();
    await eleventy.init();
    await eleventy.write();
  } finally {
    rmSync(input, { recursive: true, force: true });
  }
}

/** Puts the fresh site in the place of the old one; the old one stays whole until then. */
function swap(fresh: string, out: string): void {
  const old = `${fresh}-old`;
  if (existsSync(out)) renameSync(out, old);
  renameSync(fresh, out);
  rmSync(old, { recursive: true, force: true });
}

/** What a killed build may have left beside the site; a site that was just moved aside is put back. */
function clearLeftovers(out: string): void {
  const mine = /^\.keeprow-(?:site|input)-/;
  const aside = readdirSync(dirname(out)).find((name) => mine.test(name) && name.endsWith('-old'));
  if (aside !== undefined && !existsSync(out)) renameSync(join(dirname(out), aside), out);
  for (const name of readdirSync(dirname(out))) {
    if (mine.test(name)) rmSync(join(dirname(out), name), { recursive: true, force: true });
  }
}

/** A folder that no build of ours made: it is not to be replaced. */
function isForeign(out: string): boolean {
  return existsSync(out) && readdirSync(out).length > 0 && !existsSync(join(out, 'results.json'));
}

async function writeSite(
  out: string,
  made: MadePages,
  withPdf: boolean,
): Promise<ReturnType<typeof printHandout> | null> {
  let printed: ReturnType<typeof printHandout> | null = null;
  makeFolder(dirname(out));
  clearLeftovers(out);
  const fresh = mkdtempSync(join(dirname(out), '.keeprow-site-'));
  try {
    await writePages(fresh, made.pages);
    for (const assets of ['site/assets', 'dist/assets'])
      cpSync(join(packageRoot(), assets), join(fresh, 'assets'), { recursive: true });
    for (const [path, bytes] of made.files) {
      makeFolder(dirname(join(fresh, path)));
      writeFileSync(join(fresh, path), bytes);
    }
    if (withPdf && made.lastYear !== null) printed = printHandout(fresh, made.lastYear);
    swap(fresh, out);
  } catch (fault) {
    rmSync(fresh, { recursive: true, force: true });
    throw fault;
  }
  return printed;
}

/** The system's word for what failed (ENOSPC, EACCES …), wherever in the chain of errors it stands; else null. */
function systemCode(fault: unknown): string | null {
  for (let at = fault, depth = 0; at instanceof Error && depth < 10; depth++) {
    if ('code' in at && typeof at.code === 'string' && /^E[A-Z]+$/.test(at.code)) return at.code;
    at = 'originalError' in at ? at.originalError : at.cause;
  }
  return null;
}

/** Makes a folder and those above it, one by one: the recursive call never ends on some system folders. */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  mkdirSync(path);
}

export interface BuildChoices {
  /** Print the last handout to PDF. */
  readonly withPdf?: boolean;
  /** Addresses published before may go. */
  readonly mayDrop?: boolean;
}

/** Writes the ledger of addresses beside the records, only where it changed. */
function writeLedger(folder: string, text: string): boolean {
  const path = join(folder, 'data', 'addresses.csv');
  try {
    if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeFileSync(path, text);
    return true;
  } catch (fault) {
    const failed = systemCode(fault) ?? 'unknown';
    process.stderr.write(`keeprow: the site is written, but not its addresses to ${path}: ${failed}\n`);
    return false;
  }
}

/** `keeprow build`: checks, computes, writes the site. Returns the exit code. */
export async function runBuild(
  folder: string,
  outFolder: string | undefined,
  telling: Telling,
  { withPdf = false, mayDrop = false }: BuildChoices = {},
): Promise<number> {
  const out = resolve(outFolder ?? join(folder, '_site'));
  let code = 0;
  try {
    if (isForeign(out)) {
      process.stderr.write(`keeprow: ${out} holds something else than a site made by Keeprow; choose another folder\n`);
      return 2;
    }
    tellProgress('reading, computing, drawing …', telling);
    const made = await makePages(
      folder,
      (problems) => {
        tellProgress('', telling);
        code = tellProblems(problems, telling);
        return code === 0;
      },
      mayDrop,
    );
    if (code !== 0) return code;
    tellProgress('writing …', telling);
    const printed = await writeSite(out, made, withPdf);
    if (!writeLedger(folder, made.ledger)) code = 3;
    if (printed && 'why' in printed) process.stderr.write(`keeprow: no PDF of the handout: ${printed.why}\n`);
    tellProgress('', telling);
  } catch (fault) {
    const failed = systemCode(fault);
    if (failed === null) throw fault;
    process.stderr.write(`keeprow: cannot write ${out}: ${failed}; an older site is as it was\n`);
    return 3;
  }
  if (!telling.quiet && !telling.json) process.stdout.write(`The site is in ${out}\n`);
  return code;
}
