import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { command } from '../sites/demoFolder.ts';
import { SMALL, writeTrial } from '../sites/hostile.ts';

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** A trial in a folder of its own, beside which a site may go. */
function trial(): string {
  const above = mkdtempSync(join(tmpdir(), 'keeprow-out-'));
  made.push(above);
  const folder = join(above, 'trial');
  writeTrial(folder, SMALL);
  return folder;
}

const run = (...args: readonly string[]) => spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });

function put(path: string, text = 'mine'): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}

/** Every file below a folder with what is in it; links are not followed. */
function contents(folder: string): Readonly<Record<string, string>> {
  const all: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (entry.isFile()) {
      const path = join(entry.parentPath, entry.name);
      all[path.slice(folder.length + 1)] = readFileSync(path, 'utf8');
    }
  }
  return all;
}

const isWhole = (site: string): boolean =>
  ['index.html', 'results.json', '2026/index.html', 'assets/keeprow.css', '.keeprow-site.json'].every((path) =>
    existsSync(join(site, path)),
  );
const leftovers = (folder: string): readonly string[] =>
  readdirSync(folder).filter((name) => name.startsWith('.keeprow-'));

describe('a folder that a site must not go to', () => {
  const cases: readonly (readonly [string, (folder: string) => string, string])[] = [
    ['the trial folder with a results.json in it', (folder) => folder, "the trial's data lies in it"],
    ['the folder above the trial', (folder) => dirname(folder), "the trial's data lies in it"],
    ['the records', (folder) => join(folder, 'data'), "it is the trial's data"],
    ['a folder in the records', (folder) => join(folder, 'data/site'), "it lies in the trial's data"],
    ['the words', (folder) => join(folder, 'content'), "it is the trial's content"],
    ['a folder in the words, not there yet', (folder) => join(folder, 'content/a/b'), "it lies in the trial's content"],
    ['a link to the records', (folder) => join(folder, 'link'), "it is the trial's data"],
    ['a folder of something else with a results.json', (folder) => join(folder, '../else'), 'it holds what no build'],
    ['a file', (folder) => join(folder, 'notes.txt'), 'it is a file'],
  ];
  it.each(cases)('%s', (_, place, why) => {
    const folder = trial();
    for (const path of ['results.json', 'notes.txt', '../else/results.json', '../else/tax.ods', 'content/index.md'])
      put(join(folder, path));
    symlinkSync(join(folder, 'data'), join(folder, 'link'));
    const before = contents(dirname(folder));
    const built = run('build', folder, '--out', place(folder));
    expect(built.stderr).toContain(why);
    expect(built.stdout).toBe('');
    expect(built.status).toBe(2);
    expect(contents(dirname(folder))).toEqual(before);
  });
  it('names what stands in it', () => {
    const folder = trial();
    for (const name of ['a.txt', 'b.txt', 'c.txt', 'd.txt', 'results.json']) put(join(dirname(folder), 'else', name));
    const built = run('build', folder, '--out', join(dirname(folder), 'else'));
    expect(built.stderr).toContain('a.txt, b.txt, c.txt and 2 more');
  });
});

describe('what no build wrote in a site', () => {
  it('stays, and what a build wrote and no longer writes goes', () => {
    const folder = trial();
    const site = join(folder, '_site');
    for (const name of ['CNAME', '.nojekyll', '.git/HEAD']) put(join(site, name));
    expect(run('build', folder, '--quiet').status).toBe(0);
    for (const name of ['2026/map.html', 'varieties/one/own/photo.txt', 'varieties/gone.txt']) put(join(site, name));
    const varieties = join(folder, 'data/varieties.csv');
    writeFileSync(varieties, readFileSync(varieties, 'utf8').replaceAll('two', 'three'));
    const plantings = join(folder, 'data/2026/plantings.csv');
    writeFileSync(plantings, readFileSync(plantings, 'utf8').replaceAll('two', 'three'));
    expect(existsSync(join(site, 'varieties/two/index.html'))).toBe(true);
    const built = run('build', folder, '--drop-addresses');
    expect(built.status, built.stdout + built.stderr).toBe(0);
    expect(existsSync(join(site, 'varieties/two'))).toBe(false);
    expect(isWhole(site)).toBe(true);
    for (const name of [
      'CNAME',
      '.nojekyll',
      '.git/HEAD',
      '2026/map.html',
      'varieties/one/own/photo.txt',
      'varieties/gone.txt',
    ])
      expect(readFileSync(join(site, name), 'utf8'), name).toBe('mine');
    expect(leftovers(folder)).toEqual([]);
  });
  it('is not overwritten: a page that would go there is refused by name', () => {
    const folder = trial();
    const site = join(folder, '_site');
    expect(run('build', folder, '--quiet').status).toBe(0);
    const plantings = join(folder, 'data/2026/plantings.csv');
    put(join(folder, 'data/2025/plantings.csv'), readFileSync(plantings, 'utf8').replaceAll('2026', '2025'));
    put(join(site, '2025/index.html'));
    const before = contents(site);
    const built = run('build', folder);
    expect(built.stderr).toContain('holds files of yours where pages go: 2025/index.html');
    expect(built.status).toBe(2);
    expect(contents(site)).toEqual(before);
    expect(leftovers(folder)).toEqual([]);
  });
  it('outside the site is not touched, whatever its list says and wherever its links lead', () => {
    const folder = trial();
    const site = join(folder, '_site');
    expect(run('build', folder, '--quiet').status).toBe(0);
    put(join(folder, 'kept.txt'));
    put(join(folder, 'elsewhere/index.html'));
    rmSync(join(site, 'methods'), { recursive: true });
    symlinkSync(join(folder, 'elsewhere'), join(site, 'linked'));
    const list = join(site, '.keeprow-site.json');
    const marker = JSON.parse(readFileSync(list, 'utf8'));
    marker.files.push('../kept.txt', join(folder, 'kept.txt'), 'linked/index.html', '', '..');
    writeFileSync(list, JSON.stringify(marker));
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(readFileSync(join(folder, 'kept.txt'), 'utf8')).toBe('mine');
    expect(readFileSync(join(folder, 'elsewhere/index.html'), 'utf8')).toBe('mine');
    expect(lstatSync(join(site, 'linked')).isSymbolicLink()).toBe(true);
    expect(isWhole(site)).toBe(true);
  });
});

describe('the site’s folder', () => {
  it.each([
    ['022', 0o755],
    ['027', 0o750],
  ])('has the rights that umask %s leaves', (umask, rights) => {
    const folder = trial();
    spawnSync('sh', ['-c', `umask ${umask}; exec "$0" "$@"`, process.execPath, command, 'build', folder, '--quiet']);
    expect(statSync(join(folder, '_site')).mode & 0o777).toBe(rights);
    expect(statSync(join(folder, '_site/2026')).mode & 0o777).toBe(rights);
  });
  it('is found through a link, which stays one', () => {
    const folder = trial();
    symlinkSync('../web', join(folder, '_site'));
    for (let i = 0; i < 2; i++) {
      expect(run('build', folder, '--quiet').status).toBe(0);
      expect(lstatSync(join(folder, '_site')).isSymbolicLink()).toBe(true);
      expect(isWhole(join(folder, '../web'))).toBe(true);
    }
  });
});

describe('output that nobody reads', () => {
  it('does not keep a build from its end', () => {
    const folder = trial();
    const built = spawnSync(
      'bash',
      ['-c', `"$0" "$@" --json | true; echo "\${PIPESTATUS[0]}"`, process.execPath, command, 'build', folder],
      { encoding: 'utf8' },
    );
    expect(built.stdout.trim()).toBe('0');
    expect(built.stderr).toBe('');
    expect(isWhole(join(folder, '_site'))).toBe(true);
  });
  it.skipIf(!existsSync('/dev/full'))('on a full disk is told without a trace', () => {
    const folder = trial();
    const built = spawnSync('sh', ['-c', '"$0" "$@" > /dev/full', process.execPath, command, 'build', folder], {
      encoding: 'utf8',
    });
    expect(built.stderr).toBe('keeprow: the messages could not be written: ENOSPC\n');
    expect(built.status).toBe(3);
    expect(isWhole(join(folder, '_site'))).toBe(true);
  });
});

describe('the list of addresses', () => {
  const ledger = (folder: string): string => join(folder, 'data/addresses.csv');
  it('is read as a spreadsheet saves it, and an address lost from it keeps the build from its end', () => {
    const folder = trial();
    expect(run('build', folder, '--quiet').status).toBe(0);
    const text = readFileSync(ledger(folder), 'utf8');
    for (const saved of [
      text.replaceAll(',', ';').replaceAll('\n', '\r\n'),
      text.replaceAll(/^[^,]+/gm, (cell) => `"${cell}"`),
      `\ufeff${text}`,
    ]) {
      writeFileSync(ledger(folder), `${saved}${saved.includes(';') ? '/lost/;Gone' : '"/lost/",Gone'}\n`);
      const built = run('build', folder);
      expect(built.stdout).toContain('error address-lost');
      expect(built.status).toBe(1);
      expect(readFileSync(ledger(folder), 'utf8')).toContain('lost');
    }
  });
  it.each([
    ['not text', '\0\0\0', 'not-text'],
    ['a table of something else', 'date,planting\n2026-08-01,p1\n', 'column-missing'],
    ['an address without its slash', 'address,title\n2026/,Season\n', 'address-unfit'],
    ['nothing', '', 'empty-table'],
  ])('that cannot be read is an error: %s', (_, text, code) => {
    const folder = trial();
    writeFileSync(ledger(folder), text);
    const built = run('build', folder);
    expect(built.stdout).toContain(`error ${code}`);
    expect(built.status).toBe(1);
    expect(readFileSync(ledger(folder), 'utf8')).toBe(text);
  });
  it('is written for the trial’s own site, for another only when asked', () => {
    const folder = trial();
    const draft = join(folder, '../draft');
    expect(run('build', folder, '--out', draft, '--quiet').status).toBe(0);
    expect(existsSync(ledger(folder))).toBe(false);
    expect(run('build', folder, '--out', draft, '--keep-addresses', '--quiet').status).toBe(0);
    expect(readFileSync(ledger(folder), 'utf8')).toContain('/2026/');
    rmSync(ledger(folder));
    expect(run('build', folder, '--out', join(folder, 'public'), '--quiet').status).toBe(0);
    expect(existsSync(ledger(folder))).toBe(true);
  });
  it('has no title that a spreadsheet would run', () => {
    const folder = trial();
    const varieties = join(folder, 'data/varieties.csv');
    writeFileSync(varieties, 'variety,name,class\none,-1+1+cmd|x,a\ntwo,Two,a\n');
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(readFileSync(ledger(folder), 'utf8')).toMatch(/\/varieties\/one\/,'-1\+1\+cmd\|x/);
  });
});

const killer = resolve(import.meta.dirname, 'killAtRename.mjs');

describe('a build that is killed at a step of the swap', () => {
  // Renamings of a build over an older site with two strangers: marker, old aside, new in, stranger, stranger, ledger.
  const built = trial();
  run('build', built, '--quiet');
  put(join(built, '_site/CNAME'));
  put(join(built, '_site/2026/own.html'));
  put(join(built, 'content/pages/new.md'), '# New\n\nWords.\n');
  it.each([1, 2, 3, 4, 5, 6])('before renaming %i leaves a whole site, at the latest with the next start', (nth) => {
    const folder = join(trial(), '../copy');
    cpSync(built, folder, { recursive: true });
    const site = join(folder, '_site');
    const killed = spawnSync(process.execPath, ['--import', killer, command, 'build', folder, '--quiet'], {
      encoding: 'utf8',
      env: { ...process.env, KILL_AT_RENAME: String(nth) },
    });
    expect(killed.signal, killed.stderr).toBe('SIGKILL');
    // Records with an error: the next start restores before it checks.
    const settings = join(folder, 'data/trial.yaml');
    const text = readFileSync(settings, 'utf8');
    writeFileSync(settings, `${text}\nunknown: 1\n`);
    expect(run('build', folder, '--quiet').status).toBe(1);
    expect(isWhole(site)).toBe(true);
    expect(readFileSync(join(site, 'CNAME'), 'utf8')).toBe('mine');
    expect(readFileSync(join(site, '2026/own.html'), 'utf8')).toBe('mine');
    writeFileSync(settings, text);
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(existsSync(join(site, 'pages/new/index.html'))).toBe(true);
    expect(leftovers(folder)).toEqual([]);
    expect(readdirSync(join(folder, 'data')).filter((name) => name.startsWith('.'))).toEqual([]);
  });
});

describe('two builds at once', () => {
  const build = (folder: string, out: string): Promise<number | null> =>
    new Promise((ended) => {
      spawn(process.execPath, [command, 'build', folder, '--out', out, '--quiet'], { stdio: 'ignore' }).once(
        'close',
        ended,
      );
    });
  it.each(['site-a site-b', 'site site'])('leave whole sites: %s', async (names) => {
    const first = trial();
    const above = dirname(first);
    const second = join(above, 'second');
    writeTrial(second, SMALL);
    const [a, b] = names.split(' ').map((name) => join(above, name)) as [string, string];
    expect(await Promise.all([build(first, a), build(second, b)])).toEqual([0, 0]);
    for (const site of [a, b]) expect(isWhole(site)).toBe(true);
    expect(leftovers(above)).toEqual([]);
  });
  it('a folder of a build at work is left alone, that of a dead one cleared', async () => {
    const folder = trial();
    expect(run('build', folder, '--quiet').status).toBe(0);
    const site = join(folder, '_site');
    const { ownName } = await import('../../src/main/ownNames.ts');
    const mine = ownName('new', site);
    mkdirSync(join(folder, mine));
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    mkdirSync(join(folder, mine.replace(`-${process.pid}-`, `-${dead}-`)));
    expect(run('build', folder, '--quiet').status).toBe(0);
    expect(leftovers(folder)).toEqual([mine]);
  });
});
