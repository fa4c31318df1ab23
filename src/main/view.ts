import { existsSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { watch } from 'chokidar';
import { render } from 'preact-render-to-string';
import { h } from 'preact';
import { inOrder, problemText } from '../present/problems.ts';
import { severityOf } from '../terms/problem.ts';
import type { Problem } from '../terms/problem.ts';
import { runBuild } from './build.ts';
import { serveSite } from './serve.ts';
import type { Telling } from './tellProblems.ts';

const SETTLE_MS = 120;

function bannerOf(problems: readonly Problem[]): string {
  const errors = inOrder(problems).filter((problem) => severityOf(problem) === 'error');
  if (errors.length === 0) return '';
  const text = `The records have ${errors.length} error${errors.length === 1 ? '' : 's'}; the site below is the last good one.\n\n${errors.map((problem) => problemText(problem)).join('\n\n')}`;
  return render(h('pre', { role: 'alert' }, text));
}

/** `keeprow view`: builds, serves on localhost, rebuilds and reloads on a change. Resolves when it is stopped. */
export async function runView(folder: string, port: number, telling: Telling): Promise<number> {
  if (!existsSync(folder)) {
    process.stderr.write(`keeprow: there is no folder ${folder}\n`);
    return 2;
  }
  const site = resolve(folder, '_site');
  let problems: readonly Problem[] = [];
  const build = async (): Promise<void> => {
    await runBuild(folder, undefined, { ...telling, onProblems: (found) => (problems = found) });
  };
  await build();
  mkdirSync(site, { recursive: true });
  const { server, reload, announce } = serveSite(site, () => bannerOf(problems));
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
  let waiting: NodeJS.Timeout | null = null;
  let building = Promise.resolve();
  const changed = (): void => {
    announce();
    if (waiting) clearTimeout(waiting);
    waiting = setTimeout(() => {
      building = building.then(build).then(reload, (fault: unknown) => {
        process.stderr.write(`keeprow: ${fault instanceof Error ? fault.message : String(fault)}\n`);
      });
    }, SETTLE_MS);
  };
  const watcher = watch([join(folder, 'data'), join(folder, 'content')], { ignoreInitial: true }).on('all', changed);
  await new Promise<void>((stop) => {
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
  });
  await watcher.close();
  server.closeAllConnections();
  server.close();
  return 0;
}
