import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

/** The compiled command. */
export const command = join(root, 'dist/src/main/keeprow.js');

/** A copy of the demo trial in a folder of its own. */
export function copyOfDemo(): string {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-demo-'));
  for (const part of ['data', 'content']) cpSync(join(root, part), join(folder, part), { recursive: true });
  return folder;
}

/** The demo's site, built from a copy; returns its folder. */
export function builtDemo(): string {
  const folder = copyOfDemo();
  const built = spawnSync(process.execPath, [command, 'build', folder, '--quiet'], { encoding: 'utf8' });
  if (built.status !== 0) throw new Error(built.stderr);
  return join(folder, '_site');
}
