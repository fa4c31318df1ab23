import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { makePages } from '../../src/main/makePages.ts';
import { checkOnce, workOut } from '../../src/main/worked.ts';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { SMALL, writeTrial } from '../sites/hostile.ts';

const files = (seeds: string) =>
  sortFiles(
    Object.entries({
      'data/trial.yaml': 'title: Slope\nseasons: {2026: {finished: yes}}\n',
      'data/varieties.csv': 'variety,name\na,Aldersop\n',
      'data/2026/totals.csv': 'variety,plants,weight_g\na,2,900\n',
      'data/seeds.csv': `lot,variety,saved,seeds\ns1,a,2025,${seeds}\n`,
    }).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) })),
    [],
    true,
  );
const worked = (seeds: string) => {
  const found = files(seeds);
  return workOut(checkTrial(found, checkOnce(found)).trial!);
};

it('the same records are worked out once, another lot of seed anew', () => {
  const first = worked('40');
  expect(worked('40')).toBe(first);
  const later = worked('15');
  expect(later).not.toBe(first);
  expect(later.lines.seed!.lots[0]!.left).toBe(15);
});

it('a change gives the pages that a build from nothing gives, and the change taken back the first ones', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-worked-'));
  try {
    writeTrial(folder, {
      ...SMALL,
      '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-02,p1,3,300\n2026-08-09,p2,4,250\n',
    });
    const pages = async (): Promise<string> =>
      (await makePages(folder)).pages.map(({ address, html }) => `${address}\n${html}`).join('\n');
    const first = await pages();
    const path = join(folder, 'data/2026/harvests.csv');
    const records = readFileSync(path, 'utf8');
    writeFileSync(path, records.replace(/(\d)(\r?\n?)$/, '$19$2'));
    const changed = await pages();
    expect(changed).not.toBe(first);
    vi.resetModules();
    const afresh = (await import('../../src/main/makePages.ts')).makePages;
    expect((await afresh(folder)).pages.map(({ address, html }) => `${address}\n${html}`).join('\n')).toBe(changed);
    writeFileSync(path, records);
    expect(await pages()).toBe(first);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
