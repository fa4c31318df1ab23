import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { STARTER } from '../present/starter.ts';

/** `keeprow new`: makes a trial folder with a working example season. Nothing that is there is touched. */
export function runNew(folder: string, quiet: boolean): number {
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    process.stderr.write(`keeprow: ${folder} is not empty; choose a new folder\n`);
    return 2;
  }
  for (const [path, text] of Object.entries(STARTER)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text, { flag: 'wx' });
  }
  if (!quiet)
    process.stdout.write(`A trial with an example season is in ${folder}\nLook at it with: keeprow build ${folder}\n`);
  return 0;
}
