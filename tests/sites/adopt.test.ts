import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { command } from './demoFolder.ts';

const adopt = (folder: string, ...args: readonly string[]) =>
  spawnSync(process.execPath, [command, 'adopt', ...args], { cwd: folder, encoding: 'utf8' });
const newFolder = (): string => mkdtempSync(join(tmpdir(), 'keeprow-adopt-'));

it('a club’s two sheets become a trial that is built', () => {
  const folder = newFolder();
  writeFileSync(
    join(folder, 'picked.csv'),
    'Club pickings\nDate;Plant no.;Qty;Weight\n3/8/2026;1;3;120\n14/8/2026;2;4;160\n',
  );
  writeFileSync(
    join(folder, 'beds.csv'),
    'Plant no.,Variety,Planted out,Bed\n1,Moss Apron,2026-05-20,south\n2,Ridge Apron,2026-05-20,south\n',
  );
  const first = adopt(folder, 'picked.csv', '--into', 'trial');
  expect(first.status).toBe(1);
  expect(first.stdout).toContain('"Weight" holds bare numbers such as 120: in which unit?');
  expect(existsSync(join(folder, 'trial'))).toBe(false);
  expect(adopt(folder, 'beds.csv', '--into', 'trial').status).toBe(0);
  const second = adopt(folder, 'picked.csv', '--into', 'trial', '--column', 'Weight=weight_g');
  expect(second.stdout).toContain('Written: data/2026/harvests.csv');
  expect(readFileSync(join(folder, 'trial/data/2026/harvests.csv'), 'utf8')).toBe(
    'date,planting,fruits,weight_g\n2026-08-03,1,3,120\n2026-08-14,2,4,160\n',
  );
  expect(readFileSync(join(folder, 'trial/data/varieties.csv'), 'utf8')).toBe(
    'variety,name\nmoss-apron,Moss Apron\nridge-apron,Ridge Apron\n',
  );
  const built = spawnSync(process.execPath, [command, 'build', 'trial', '--quiet'], { cwd: folder, encoding: 'utf8' });
  expect(built.status, built.stdout).toBe(0);
  const again = adopt(folder, 'picked.csv', '--into', 'trial', '--column', 'Weight=weight_g');
  expect(again.status).toBe(0);
  expect(again.stdout).toContain('data/2026/harvests.csv: nothing new, 2 there already and left as they are');
  writeFileSync(join(folder, 'more.csv'), 'Date;Plant no.;Qty;Weight\n3/8/2026;1;3;999\n24/8/2026;2;5;200\n');
  const more = adopt(folder, 'more.csv', '--into', 'trial', '--column', 'Weight=weight_g');
  expect(more.stdout).toContain('data/2026/harvests.csv: 1 row added, 1 there already and left as they are');
  expect(readFileSync(join(folder, 'trial/data/2026/harvests.csv'), 'utf8')).toBe(
    'date,planting,fruits,weight_g\n2026-08-03,1,3,120\n2026-08-14,2,4,160\n2026-08-24,2,5,200\n',
  );
});

it('a sheet of a workbook, and a trait that is declared on the way', () => {
  const folder = newFolder();
  copyFileSync(new URL('../read/spreadsheets/libreoffice.ods', import.meta.url), join(folder, 'book.ods'));
  expect(adopt(folder, 'book.ods').stderr).toContain(
    'the sheets varieties, plantings, harvests: name one with --sheet',
  );
  expect(adopt(folder, 'book.ods', '--sheet', 'Harvests').stdout).toContain('3 rows for harvests.csv of 2026');
  writeFileSync(join(folder, 'taste.csv'), 'Day,Judge,Sort,Taste\n2026-09-01,Ada,Moss Apron,7\n');
  const told = adopt(folder, 'taste.csv', '--column', 'Taste=rating flavour 1 9', '--into', 'trial');
  expect(told.stdout).toContain('rating flavour');
  expect(readFileSync(join(folder, 'trial/data/trial.yaml'), 'utf8')).toContain(
    'flavour: {kind: rating, from: 1, to: 9, better: higher}',
  );
  expect(told.stdout).toContain('Still to be written by hand: plantings.csv');
});

it.each([
  [[], 2, 'adopt needs a file'],
  [['nowhere.csv'], 2, 'there is no file nowhere.csv'],
  [['nowhere.csv', '--season', 'last'], 2, '--season is a year'],
  [['nowhere.csv', '--dates', 'iso'], 2, '--dates is day-first or month-first'],
  [['nowhere.csv', '--table', 'sums'], 2, '--table is one of'],
])('wrong use is told: %j', (args, status, words) => {
  const run = adopt(newFolder(), ...args);
  expect([run.status, run.stderr.includes(words)]).toEqual([status, true]);
});

it('a list of varieties gets ids, a declared trait is told where the settings are there, a folder is no file', () => {
  const folder = newFolder();
  writeFileSync(
    join(folder, 'list.csv'),
    'Name,Species,Supplier\nBig Torch,Capsicum annuum,a\n火,Capsicum annuum,b\n水,Capsicum annuum,b\n',
  );
  expect(adopt(folder, 'list.csv', '--into', 'trial').status).toBe(0);
  expect(readFileSync(join(folder, 'trial/data/varieties.csv'), 'utf8')).toBe(
    'variety,species,source,name\nbig-torch,Capsicum annuum,a,Big Torch\nvariety,Capsicum annuum,b,火\nvariety-2,Capsicum annuum,b,水\n',
  );
  writeFileSync(join(folder, 'totals.csv'), 'Variety,Plants,Weight (g),Taste\nBig Torch,3,500,7\n');
  const told = adopt(
    folder,
    'totals.csv',
    '--into',
    'trial',
    '--season',
    '2026',
    '--column',
    'Taste=rating flavour 1 9',
  );
  expect(told.stdout).toContain(
    'Still to be written by hand, into data/trial.yaml:\ntraits:\n  flavour: {kind: rating',
  );
  expect(adopt(folder, 'trial').stderr).toBe('keeprow: there is no file trial\n');
});
