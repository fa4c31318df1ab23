import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command } from '../sites/demoFolder.ts';

const above = mkdtempSync(join(tmpdir(), 'keeprow-planned-'));
afterAll(() => rmSync(above, { recursive: true, force: true }));
const run = (...args: readonly string[]) => spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });
const garden = (name: string): string => {
  const folder = join(above, name);
  cpSync(fileURLToPath(new URL('../reference/plan/g2_unequal/data', import.meta.url)), join(folder, 'data'), {
    recursive: true,
  });
  return folder;
};
const read = (...path: readonly string[]): string => readFileSync(join(...path), 'utf8');

describe('a plan', () => {
  const folder = garden('own');
  beforeAll(() => {
    expect(run('plan', folder).status).toBe(0);
  });
  it('is written to _plan and nowhere else', () => {
    expect(readdirSync(folder).toSorted()).toEqual(['_plan', 'data']);
    expect(readdirSync(join(folder, '_plan')).toSorted()).toEqual([
      '2027',
      'index.html',
      'keeprow.css',
      'plan.css',
      'plan.json',
      'sheets.html',
      'shopping.csv',
      'tasting-key.csv',
    ]);
    expect(readdirSync(join(folder, 'data/2027'))).toEqual(['wishes.csv']);
  });
  it('says who, how many and why, and prints a label for the pot and one for the place', () => {
    const page = read(folder, '_plan/index.html');
    expect(page).toContain('The plan for 2027');
    expect(page).toContain('40 plants of 12 varieties');
    const sheets = read(folder, '_plan/sheets.html');
    expect(sheets.match(/· 2027 · pot/g)).toHaveLength(40);
    expect(sheets.match(/· 2027 · place/g)).toHaveLength(40);
    expect(JSON.parse(read(folder, '_plan/plan.json'))).toMatchObject({ format: 'keeprow-plan/1', season: 2027 });
  });
  it('is refused a folder with something of the grower’s', () => {
    writeFileSync(join(folder, '_plan/my-notes.txt'), 'mine');
    const refused = run('plan', folder);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('my-notes.txt');
    expect(read(folder, '_plan/my-notes.txt')).toBe('mine');
  });
  it('is not written where something is impossible', () => {
    const impossible = join(above, 'impossible');
    cpSync(fileURLToPath(new URL('../reference/plan/g7_impossible/data', import.meta.url)), join(impossible, 'data'), {
      recursive: true,
    });
    const told = run('plan', impossible);
    expect(told.status).toBe(1);
    expect(told.stdout).toContain('plan-too-many');
    expect(existsSync(join(impossible, '_plan'))).toBe(false);
  });
});

describe('a plan that is taken', () => {
  it('changes no byte of the grower’s rows, and nothing when it is taken again', () => {
    const folder = garden('taken');
    const own = 'planting,variety,bed,row,column,notes\r\nmine,v05,long bed,2,3,"dug, limed"\r\n';
    mkdirSync(join(folder, 'data/2027'), { recursive: true });
    writeFileSync(join(folder, 'data/2027/plantings.csv'), own);
    expect(run('plan', folder, '--take', '--quiet').status).toBe(0);
    const taken = read(folder, 'data/2027/plantings.csv');
    expect(taken.startsWith(own)).toBe(true);
    expect(taken.trim().split('\r\n')).toHaveLength(41);
    expect(run('plan', folder, '--take', '--quiet').status).toBe(0);
    expect(read(folder, 'data/2027/plantings.csv')).toBe(taken);
  });
  it('is a planned season, and filled with records and built it gives no message', () => {
    const folder = garden('filled');
    expect(run('plan', folder, '--take', '--quiet').status).toBe(0);
    const data = join(folder, 'data/2027');
    const before = run('check', folder);
    expect(before.stdout).toContain('note season-planned');
    expect(before.stdout).toContain('0 errors, 0 warnings, 1 note');
    const settings = join(folder, 'data/trial.yaml');
    writeFileSync(
      settings,
      read(settings).replace(
        'transplanted: 2026-05-20}',
        'transplanted: 2026-05-20}\n  2027: {sown: 2027-03-19, transplanted: 2027-05-20, harvests: complete, layout: spread}',
      ),
    );
    const ids = read(data, 'plantings.csv')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(',')[0]!);
    const picked = ids.flatMap((id, i) =>
      ['2027-08-03', '2027-08-24', '2027-10-19'].map(
        (day, d) => `${day},${id},${4 + ((i + d) % 5)},${430 + ((37 * i + 61 * d) % 290)},,`,
      ),
    );
    writeFileSync(join(data, 'harvests.csv'), `${read(data, 'harvests.csv')}${picked.join('\n')}\n`);
    const ratings = read(data, 'ratings.csv').trim().split('\n');
    const scored = ratings.map((line, i) => (i === 0 ? line : `${line}${4 + ((i * 7) % 5)}`));
    writeFileSync(
      join(data, 'ratings.csv'),
      `date,${scored[0]}\n${scored
        .slice(1)
        .map((line) => `2027-09-11,${line}`)
        .join('\n')}\n`,
    );
    for (const name of ['observations.csv', 'germination.csv']) rmSync(join(data, name));
    const after = run('check', folder);
    expect(after.stdout).toBe('0 errors, 0 warnings, 0 notes\n');
    expect(run('build', folder, '--quiet').status).toBe(0);
    // The blocks of the plan are those of the analysis.
    const results = JSON.parse(read(folder, '_site/results.json'));
    expect(JSON.stringify(results.seasons.at(-1).comparisons.yield)).toContain('block');
    const begun = run('plan', folder, '--season', '2027');
    expect(begun.status).toBe(0);
    expect(readdirSync(join(folder, '_plan'))).not.toContain('2027');
  });
});

describe('a plan that is changed by hand', () => {
  const two = (name: string, settings = ''): string => {
    const folder = garden(name);
    writeFileSync(join(folder, 'data/places.csv'), 'bed,rows,columns\nlong bed,2,13\nshort bed,2,7\n');
    const path = join(folder, 'data/trial.yaml');
    writeFileSync(path, `${read(path)}${settings}`);
    return folder;
  };
  const lines = (folder: string): readonly string[] => read(folder, 'data/2027/plantings.csv').trim().split('\n');

  it('clumps taken again are the same clumps, and none lies across two beds', () => {
    const folder = two('clumps', 'plan: {layout: together}\n');
    expect(run('plan', folder, '--take', '--quiet').status).toBe(0);
    const taken = lines(folder);
    const plants = taken.slice(1).reduce((sum, line) => sum + Number(line.split(',')[2]), 0);
    expect(plants).toBe(40);
    expect(taken.some((line) => Number(line.split(',')[2]) > 1)).toBe(true);
    for (const line of taken.slice(1))
      expect(line).toMatch(/,(long bed),long bed [A-Z],|,(short bed),short bed [A-Z],/);
    const again = run('plan', folder, '--take');
    expect(again.stdout).toContain('plan-all-fixed');
    expect(again.stdout).toContain('Nothing new to take');
    expect(lines(folder)).toEqual(taken);
  });
  it('a row that is deleted frees its place, and ballots keep their codes', () => {
    const folder = two('deleted');
    expect(run('plan', folder, '--take', '--quiet').status).toBe(0);
    const key = read(folder, '_plan/tasting-key.csv');
    const path = join(folder, 'data/2027/plantings.csv');
    const without = lines(folder).filter((line) => !line.startsWith('v12,'));
    expect(without).toHaveLength(40);
    writeFileSync(path, `${without.join('\n')}\n`);
    expect(run('check', folder).stdout).toContain('0 errors');
    const again = run('plan', folder, '--take');
    expect(again.status, again.stdout).toBe(0);
    expect(lines(folder)).toHaveLength(41);
    expect(read(folder, '_plan/tasting-key.csv')).toBe(key);
    writeFileSync(path, `${lines(folder)[0]}\n`);
    expect(run('plan', folder, '--quiet').status).toBe(0);
  });
  it('wishes for fewer plants than stand in rows are told, and a table in UTF-16 is left alone', () => {
    const folder = two('against');
    writeFileSync(join(folder, 'data/2027/wishes.csv'), 'variety,plants\nv01,1\n');
    const rows = 'planting,variety,bed,row,column\nx1,v01,long bed,1,1\nx2,v01,long bed,2,5\n';
    writeFileSync(join(folder, 'data/2027/plantings.csv'), rows);
    const told = run('plan', folder);
    expect(told.status).toBe(1);
    expect(told.stdout).toContain('plan-wish-contradicts');
    writeFileSync(join(folder, 'data/2027/wishes.csv'), 'variety,plants\nv01,4\n');
    const wide = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(rows, 'utf16le')]);
    writeFileSync(join(folder, 'data/2027/plantings.csv'), wide);
    const refused = run('plan', folder, '--take');
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('UTF-16');
    expect(readFileSync(join(folder, 'data/2027/plantings.csv'))).toEqual(wide);
  });
});
