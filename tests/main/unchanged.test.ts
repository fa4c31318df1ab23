import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { command } from '../sites/demoFolder.ts';
import { SMALL, writeTrial } from '../sites/hostile.ts';

const WARNED = {
  ...SMALL,
  '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-02,p1,3,300\n2026-08-02,p1,3,300\n',
};

function opened(files: Readonly<Record<string, string>> = SMALL) {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-unchanged-'));
  writeTrial(folder, files);
  const cache = mkdtempSync(join(tmpdir(), 'keeprow-kept-'));
  const front = join(folder, '_site/index.html');
  const build = (...more: readonly string[]) => {
    const before = existsSync(front) ? statSync(front).ino : 0;
    const done = spawnSync(process.execPath, [command, 'build', folder, ...more], {
      encoding: 'utf8',
      env: { ...process.env, KEEPROW_CACHE: more.includes('--json') ? 'off' : cache },
    });
    return { ...done, isNew: existsSync(front) && statSync(front).ino !== before };
  };
  return { folder, front, build };
}

describe('a site of which nothing has changed', () => {
  it('stays as it is, and what was told is told again', () => {
    const { build } = opened(WARNED);
    const first = build();
    expect(first.status).toBe(0);
    expect(first.isNew).toBe(true);
    const again = build();
    expect(again).toMatchObject({ status: 0, isNew: false, stdout: first.stdout });
    expect(first.stdout).toMatch(/[1-9]\d* warning/);
    expect(build('--strict')).toMatchObject({ status: 1, isNew: false });
    expect(build('--quiet')).toMatchObject({ status: 0, isNew: false, stdout: '' });
  });
  it.each<[what: string, change: (folder: string, front: string) => void]>([
    ['the settings', (folder) => appendFileSync(join(folder, 'data/trial.yaml'), '# looked through\n')],
    ['a word', (folder) => writeTrial(folder, { '../content/index.md': 'A word.\n' })],
    ['the ledger', (folder) => rmSync(join(folder, 'data/addresses.csv'))],
    ['a page', (_, front) => writeFileSync(front, `${readFileSync(front, 'utf8')} `)],
    ['a page that is gone', (_, front) => renameSync(front, `${front}.old`)],
  ])('is made anew after a change of %s', (_, change) => {
    const { folder, front, build } = opened();
    expect(build('--quiet').isNew).toBe(true);
    const before = readFileSync(front, 'utf8');
    change(folder, front);
    const after = build('--quiet');
    expect(after).toMatchObject({ status: 0, isNew: true });
    expect(readFileSync(front, 'utf8').startsWith('<!doctype html>')).toBe(true);
    expect(readFileSync(front, 'utf8').endsWith(' ')).toBe(false);
    expect(before.startsWith('<!doctype html>')).toBe(true);
  });
  it('is made anew where nothing is kept, and for other choices', () => {
    const { build } = opened();
    expect(build('--quiet').isNew).toBe(true);
    expect(build('--quiet').isNew).toBe(false);
    expect(build('--quiet', '--drop-addresses').isNew).toBe(true);
    expect(build('--json').isNew).toBe(true);
  });
});
