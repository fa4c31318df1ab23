import { readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { isLeftover, ownName } from './ownNames.ts';

/** Writes a file beside its place and moves it there: whoever looks sees the old one or the new one, never a part. */
export function writeWhole(path: string, text: string | Uint8Array): void {
  const folder = dirname(path);
  for (const name of readdirSync(folder)) if (isLeftover(name, 'file', path)) rmSync(join(folder, name));
  const beside = join(folder, ownName('file', path));
  try {
    writeFileSync(beside, text, { flush: true });
    renameSync(beside, path);
  } catch (fault) {
    rmSync(beside, { force: true });
    throw fault;
  }
}
