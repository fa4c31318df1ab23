import { existsSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import keeprow from './eleventyPlugin.ts';
import { printHandout } from './handoutPdf.ts';
import { makePages } from './makePages.ts';
import { recallLast, rememberLast } from './memoryFile.ts';
import type { MadePages } from './makePages.ts';
import {
  clearLeftovers,
  followed,
  freshFolder,
  isIn,
  makeFolder,
  markSite,
  mend,
  putAside,
  swapSite,
  whyUnfit,
} from './siteFolder.ts';
import type { Swapped } from './siteFolder.ts';
import { whileAlone } from './siteLock.ts';
import { say, tellProblems, tellProgress } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { recallSite, rememberSite, sourcesOf } from './unchanged.ts';
import { writeWhole } from './writeWhole.ts';

async function writePages(fresh: string, out: string, made: MadePages): Promise<void> {
  const { default: Eleventy } = await import('@11ty/eleventy');
  const input = freshFolder(out, 'input');
  try {
    const eleventy = new Eleventy(relative(process.cwd(), input), relative(process.cwd(), fresh), {
      quietMode: true,
      configPath: '',
      loader: 'esm',
      config: async (config) => {
        // Nothing of the trial folder is run as a template.
        config.setUseGitIgnore(false);
        config.setTemplateFormats(['11ty.js']);
        config.setDataFileSuffixes([]);
        config.setDataDirectory('__none__');
        await config.addPlugin(keeprow, { made });
      },
    });
    await eleventy.initializeConfig({ markdownTemplateEngine: false, htmlTemplateEngine: false });
    eleventy.disableLogger();
    await eleventy.init();
    await eleventy.write();
  } finally {
    rmSync(input, { recursive: true, force: true });
  }
}

interface Written {
  readonly printed: ReturnType<typeof printHandout> | null;
  readonly swapped: Swapped;
}

async function writeSite(out: string, made: MadePages, withPdf: boolean): Promise<Written> {
  makeFolder(dirname(out));
  clearLeftovers(out);
  const fresh = freshFolder(out, 'new');
  try {
    await writePages(fresh, out, made);
    const printed = withPdf && made.lastSeason !== null ? printHandout(fresh, made.lastSeason) : null;
    markSite(fresh);
    return { printed, swapped: await whileAlone(out, () => swapSite(fresh, out)) };
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

/** The system's word for what failed (ENOSPC, EACCES …), wherever in the chain of errors it stands; else null. */
function systemCode(fault: unknown): string | null {
  for (let at = fault, depth = 0; at instanceof Error && depth < 10; depth++) {
    if ('code' in at && typeof at.code === 'string' && /^E[A-Z]+$/.test(at.code)) return at.code;
    at = 'originalError' in at ? at.originalError : at.cause;
  }
  return null;
}

export interface BuildChoices {
  /** Print the last handout to PDF. */
  readonly withPdf?: boolean;
  /** Addresses published before may go. */
  readonly mayDrop?: boolean;
  /** Note the addresses of a site outside the trial folder, as if it stood inside. */
  readonly keepsAddresses?: boolean;
}

/** Writes the ledger of addresses beside the records, only where it changed. */
function writeLedger(folder: string, text: string): boolean {
  const path = followed(join(folder, 'data', 'addresses.csv'));
  try {
    if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeWhole(path, text);
    return true;
  } catch (fault) {
    say(`the site is written, but not its addresses to ${path}: ${systemCode(fault) ?? 'unknown'}`);
    return false;
  }
}

/** Says what became of a site's files; returns the exit code. */
function tellWritten({ printed, swapped }: Written, out: string): number {
  if (printed && 'why' in printed) say(`no PDF of the handout: ${printed.why}`);
  if (swapped.kind === 'in-the-way') {
    say(`${out} holds files of yours where pages go: ${swapped.names}; move them or choose another folder`);
    return 2;
  }
  if (swapped.kind === 'left') {
    const failed = systemCode(swapped.fault) ?? 'unknown';
    say(
      `the new site is in its place, but not all of your own files beside it: they are in ${swapped.old} (${failed})`,
    );
    return 3;
  }
  for (const path of swapped.lost.filter((name) => name.endsWith('.pdf')))
    say(`${path} of an earlier build is gone: make it anew with --pdf`);
  return 0;
}

/** Restores what a killed build left in the middle of its swap. */
async function mendSite(out: string): Promise<void> {
  if (putAside(out).length > 0) await whileAlone(out, () => mend(out));
}

/** What the last build worked out is read once a process: `view` remembers by itself. */
let hasRecalled = false;

/** Reads, checks and computes a trial for its site; the exit code where no site can be made of it. */
async function makeSite(
  folder: string,
  out: string,
  telling: Telling,
  { mayDrop = false }: BuildChoices,
): Promise<MadePages | number> {
  await mendSite(out);
  const why = whyUnfit(folder, out);
  if (why !== null) {
    say(`the site cannot go to ${out}: ${why}; choose another folder with --out`);
    return 2;
  }
  let code = 0;
  tellProgress('reading, computing, drawing …', telling);
  if (!hasRecalled) recallLast(folder);
  hasRecalled = true;
  const made = await makePages(
    folder,
    (problems) => {
      tellProgress('', telling);
      code = tellProblems(problems, telling);
      return code === 0;
    },
    mayDrop,
  );
  return code === 0 ? made : code;
}

function tellPlace(out: string, { quiet, json }: Telling): void {
  if (!quiet && !json) process.stdout.write(`The site is in ${out}\n`);
}

/** Writes a site that is made; returns the exit code. */
async function publishSite(
  folder: string,
  out: string,
  made: MadePages,
  telling: Telling,
  { withPdf = false, keepsAddresses = false }: BuildChoices,
): Promise<number> {
  tellProgress('writing …', telling);
  const written = await writeSite(out, made, withPdf);
  rememberLast(folder);
  tellProgress('', telling);
  const code = tellWritten(written, out);
  if (written.swapped.kind === 'in-the-way') return code;
  tellPlace(out, telling);
  const isOwn = isIn(out, followed(folder));
  if ((isOwn || keepsAddresses) && !writeLedger(folder, made.ledger)) return 3;
  return code;
}

/** Gives what a step that writes comes to, or 3 with the system's word for what kept it from writing. */
async function orTold<Result>(out: string, step: () => Promise<Result>): Promise<Result | number> {
  try {
    return await step();
  } catch (fault) {
    const failed = systemCode(fault);
    if (failed === null) throw fault;
    say(`cannot write ${out}: ${failed}; an older site is as it was`);
    return 3;
  }
}

/** `keeprow build`: checks, computes, writes the site. Returns the exit code. */
export async function runBuild(
  folder: string,
  outFolder: string | undefined,
  telling: Telling,
  choices: BuildChoices = {},
): Promise<number> {
  const out = followed(outFolder ?? join(folder, '_site'));
  return orTold(out, async () => {
    await mendSite(out);
    const sources = whyUnfit(folder, out) === null ? sourcesOf(folder, out, choices) : null;
    const problems = sources && recallSite(folder, out, sources);
    if (problems) {
      clearLeftovers(out);
      const code = tellProblems(problems, telling);
      if (code === 0) tellPlace(out, telling);
      return code;
    }
    const made = await makeSite(folder, out, telling, choices);
    if (typeof made === 'number') return made;
    const code = await publishSite(folder, out, made, telling, choices);
    if (code === 0 && sources) rememberSite(folder, out, sources, made);
    return code;
  });
}

/** The site of a trial folder as `view` keeps it: made anew at once, written when there is time. */
export interface LiveSite {
  /** Makes the site from the records; true where there is a new one. */
  readonly make: () => Promise<boolean>;
  /** Writes what was made last and is not written yet. */
  readonly write: () => Promise<void>;
  /** What was made last; null before the first. */
  readonly made: () => MadePages | null;
}

/** Opens the site in a trial folder's `_site`. */
export function openLiveSite(folder: string, telling: Telling): LiveSite {
  const out = followed(join(folder, '_site'));
  let last: MadePages | null = null;
  let unwritten: MadePages | null = null;
  return {
    async make() {
      const made = await orTold(out, () => makeSite(folder, out, telling, {}));
      if (typeof made === 'number') return false;
      last = made;
      unwritten = made;
      return true;
    },
    async write() {
      const made = unwritten;
      unwritten = null;
      if (made) await orTold(out, () => publishSite(folder, out, made, { ...telling, quiet: true }, {}));
    },
    made: () => last,
  };
}
