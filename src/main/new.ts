import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { BARE_SETTINGS, STARTER } from '../present/starter.ts';
import { csvText } from '../terms/csv.ts';

/** varieties.csv from the names of a sheet; null where that was told. */
async function namesFrom(file: string): Promise<string | null> {
  const { proposedIn } = await import('./adopt.ts');
  const { varietiesOf } = await import('./adoptWrite.ts');
  const proposal = await proposedIn(file);
  if (!proposal) return null;
  const rows = varietiesOf(proposal);
  if (rows) return csvText(rows);
  process.stderr.write(`keeprow: no column of ${file} is called variety, name or the like; nothing was written\n`);
  return null;
}

/**
 * `keeprow new`: makes a trial folder, with a working example season or with the varieties of a sheet. Nothing that is
 * there is touched.
 */
export async function runNew(folder: string, from: string | null, quiet: boolean): Promise<number> {
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    process.stderr.write(`keeprow: ${folder} is not empty; choose a new folder\n`);
    return 2;
  }
  const varieties = from === null ? null : await namesFrom(from);
  if (from !== null && varieties === null) return 2;
  const files = varieties === null ? STARTER : { 'data/trial.yaml': BARE_SETTINGS, 'data/varieties.csv': varieties };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text, { flag: 'wx' });
  }
  if (!quiet)
    process.stdout.write(
      varieties === null
        ? `A trial with an example season is in ${folder}\nLook at it with: keeprow build ${folder}\n`
        : `A trial with your varieties is in ${folder}\nAdd a season with: keeprow adopt FILE --into ${folder}\n`,
    );
  return 0;
}
