import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { watch } from 'chokidar';
import { render } from 'preact-render-to-string';
import { h } from 'preact';
import { inOrder, problemText } from '../present/problems.ts';
import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { openLiveSite } from './build.ts';
import type { LiveSite } from './build.ts';
import type { MadePages } from './makePages.ts';
import { filesIn, pathOf, serveSite } from './serve.ts';
import type { Finder } from './serve.ts';
import type { Telling } from './tellProblems.ts';

/** So long after a change the next one is waited for. */
const SETTLE_MS = 80;
/** So long after the last change the site is written to its folder: a page that is waited for comes first. */
const WRITE_MS = 1500;

/** Finds what was made last, then what lies in the site's folder: assets and files of the grower's. */
function finderOf(made: () => MadePages | null, site: string): Finder {
  const onDisk = filesIn(site);
  return (url) => {
    const address = pathOf(url)?.slice(1);
    const own = made();
    if (own === null || address === undefined) return onDisk(url);
    const page = own.pages.find((one) => one.address === address.replace(/(^|\/)index\.html$/, '$1'));
    if (page) return { name: 'index.html', bytes: page.html };
    const bytes = own.files.get(address);
    return bytes === undefined ? onDisk(url) : { name: address, bytes };
  };
}

function bannerOf(problems: readonly Problem[]): string {
  const errors = inOrder(problems).filter((problem) => severityOf(problem) === 'error');
  if (errors.length === 0) return '';
  const text = `The records have ${errors.length} error${errors.length === 1 ? '' : 's'}; the site below is the last good one.\n\n${errors.map((problem) => problemText(problem)).join('\n\n')}`;
  return render(h('pre', { role: 'alert' }, text));
}

interface Following {
  readonly changed: () => void;
  /** Ends what is begun and writes what is not written. */
  readonly finish: () => Promise<void>;
}

/** Makes the site anew after a change, and writes it when no other has come for a while. */
function follow(live: LiveSite, reload: () => void, announce: () => void): Following {
  let working = Promise.resolve();
  const next = (step: () => Promise<void>): void => {
    working = working.then(step).catch((fault: unknown) => {
      process.stderr.write(`keeprow: ${fault instanceof Error ? fault.message : String(fault)}\n`);
    });
  };
  let toMake: NodeJS.Timeout | null = null;
  let toWrite: NodeJS.Timeout | null = null;
  const make = async (): Promise<void> => {
    toMake = null;
    await live.make();
    reload();
    if (toMake === null) toWrite = setTimeout(() => next(live.write), WRITE_MS);
  };
  return {
    changed() {
      announce();
      if (toMake) clearTimeout(toMake);
      if (toWrite) clearTimeout(toWrite);
      toMake = setTimeout(() => next(make), SETTLE_MS);
    },
    async finish() {
      if (toMake) clearTimeout(toMake);
      if (toWrite) clearTimeout(toWrite);
      next(live.write);
      await working;
    },
  };
}

/** `keeprow view`: builds, serves on localhost, rebuilds and reloads on a change. Resolves when it is stopped. */
export async function runView(folder: string, port: number, telling: Telling): Promise<number> {
  if (!existsSync(folder)) {
    process.stderr.write(`keeprow: there is no folder ${folder}\n`);
    return 2;
  }
  const site = resolve(folder, '_site');
  let problems: readonly Problem[] = [];
  const live = openLiveSite(folder, { ...telling, onProblems: (found) => (problems = found) });
  await live.make();
  await live.write();
  const { server, reload, announce } = serveSite(finderOf(live.made, site), () => bannerOf(problems));
  const failed = await new Promise<NodeJS.ErrnoException | null>((settled) => {
    server.once('error', settled);
    server.listen(port, '127.0.0.1', () => settled(null));
  });
  if (failed) {
    const why = failed.code === 'EADDRINUSE' ? 'is in use' : `cannot be opened (${failed.code ?? failed.message})`;
    process.stderr.write(`keeprow: port ${port} ${why}; choose another with --port\n`);
    return 2;
  }
  const address = server.address();
  const shown = typeof address === 'object' && address ? address.port : port;
  process.stdout.write(`http://localhost:${shown}/ (stop with Ctrl+C)\n`);
  const { changed, finish } = follow(live, reload, announce);
  const watcher = watch([join(folder, 'data'), join(folder, 'content')], { ignoreInitial: true }).on('all', changed);
  await new Promise<void>((stop) => {
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
  });
  await watcher.close();
  await finish();
  server.closeAllConnections();
  server.close();
  return 0;
}
