import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareSeason } from '../../src/analyse/compareSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { lastWinter } from '../../src/decide/lastWinter.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { adviseGarden } from '../../src/decide/adviseGarden.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { gardenPage } from '../../site/pages/club.tsx';
import { faultsOfPages, pagesOfTrial } from '../laws/pagesOfTrial.ts';
import { check } from './folder.ts';
import type { Folder } from './folder.ts';

const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');
const club = join(import.meta.dirname, 'club');

function run(args: readonly string[]) {
  return spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });
}

const temporary = (name: string): string => mkdtempSync(join(tmpdir(), `keeprow-${name}-`));

function copied(): string {
  const folder = temporary('club');
  cpSync(club, folder, { recursive: true });
  return folder;
}

/** Codes of gardens that did not agree to be shown: all but m05 and the trial's own. */
const CODES = Array.from({ length: 14 }, (_, i) => `m${String(i + 1).padStart(2, '0')}`);
const WITHHELD = CODES.filter((code) => code !== 'm05');

/** Every file of a site that holds one of some strings, or is called so. */
function holders(site: string, strings: readonly string[]): readonly string[] {
  return readdirSync(site, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .flatMap((entry) => {
      const path = join(entry.parentPath, entry.name);
      const text = `${path.slice(site.length)}\n${readFileSync(path, 'latin1')}`;
      return strings.filter((own) => new RegExp(`\\b${own}\\b`).test(text)).map((own) => `${path}: ${own}`);
    });
}

describe('the site of a club', () => {
  const folder = copied();
  // What must not be seen by anyone: a remark on a sheet, a note, a place in a message.
  const sheet = join(folder, 'data/2026/gardens/m01.csv');
  const [head = '', first = '', ...rest] = readFileSync(sheet, 'utf8').trim().split('\n');
  writeFileSync(
    sheet,
    [`${head},notes`, `${first},Larkspurgate`, ...rest.map((row) => `${row},`)].join('\n').replace(/,3690,/, ',<5,'),
  );
  const settings = join(folder, 'data/trial.yaml');
  writeFileSync(settings, `${readFileSync(settings, 'utf8')}publish: {show: [notes], people: names}\n`);
  const built = run(['build', folder, '--quiet']);
  const site = join(folder, '_site');
  it('tells nothing of a garden that did not agree', () => {
    expect(built.status).toBe(0);
    expect(holders(site, [...WITHHELD, 'Larkspurgate'])).toEqual([]);
    expect(existsSync(join(site, 'gardens/m05/index.html'))).toBe(true);
    expect(readdirSync(join(site, 'gardens')).toSorted()).toEqual(['home', 'm05']);
    expect(readFileSync(join(site, '2026/plantings.csv'), 'utf8')).toContain('m05/wall-end');
  });
  it('names no garden on the handout', () => {
    expect(holders(join(site, '2026/handout'), CODES)).toEqual([]);
  });
  it('publishes gardens in results.json', () => {
    const results = JSON.parse(readFileSync(join(site, 'results.json'), 'utf8'));
    const season = results.seasons.at(-1);
    expect(season.gardens).toEqual({ sent: 15, received: 10, counted: 10 });
    expect(season.comparisons.yield.factor).toBe('garden');
    expect(season.comparisons.yield.parts.tomato.at(-1)).toEqual(['mill-race', 'sheepfold']);
    expect(results.next_season.spread.yield.variety_by_garden).toBeGreaterThan(0);
    expect(results.next_season.gardens.map(({ garden }: { garden: string }) => garden)).toEqual(['home', 'm05']);
    expect(results.next_season.gardens_needed.sweet.for_fifth).toBeGreaterThan(
      results.next_season.gardens_needed.sweet.for_two_fifths,
    );
    expect(results.seasons[0].comparisons.yield.blocks).toBe('none');
  });
});

describe('what a member sends, and the secretary does', () => {
  it('share shows the sheet, and writes it only where it is told to', () => {
    const shown = run(['share', club, '--garden', 'm05']);
    expect(shown.status).toBe(0);
    expect(shown.stdout.split('\n')[0]).toBe('variety,plants,weight_g,fruits,first_ripe,taste,again');
    const out = join(temporary('share'), 'm05.csv');
    expect(run(['share', club, '--garden', 'm05', '--out', out, '--quiet']).status).toBe(0);
    const figures = (text: string): readonly string[] =>
      text
        .trim()
        .split('\n')
        .map((row) => row.split(',').slice(0, 3).join(','))
        .toSorted();
    expect(figures(readFileSync(out, 'utf8'))).toEqual(
      figures(readFileSync(join(club, 'data/2026/gardens/m05.csv'), 'utf8')),
    );
    expect(run(['share', club, '--garden', 'm07']).status).toBe(2);
  });
  it('gather files sheets, refuses what is wrong, writes over nothing, and says who is missing', () => {
    const folder = copied();
    const gardens = join(folder, 'data/2026/gardens');
    const mail = temporary('mail');
    cpSync(join(gardens, 'm01.csv'), join(mail, 'm01.csv'));
    rmSync(join(gardens, 'm01.csv'));
    writeFileSync(join(mail, 'm02.csv'), 'variety,plants,weight_g\nstile-bell,2,100\n');
    writeFileSync(join(mail, 'm04.csv'), 'variety,plants,weight_g\nno such variety,2,100\n');
    writeFileSync(join(mail, 'm07.csv'), 'variety,plants,weight_g,e-mail\nstile-bell,2,100,ann@post.example\n');
    writeFileSync(join(mail, 'm99.csv'), 'variety,plants,weight_g\nstile-bell,2,100\n');
    const before = readFileSync(join(gardens, 'm02.csv'), 'utf8');
    const files = ['m01', 'm02', 'm04', 'm07', 'm99'].map((code) => join(mail, `${code}.csv`));
    const { status, stdout } = run(['gather', ...files, '--into', folder]);
    expect(status).toBe(1);
    expect(stdout).toContain('m01.csv: filed');
    expect(stdout).toContain('m02.csv: refused, another sheet of m02 stands in data/2026/gardens');
    expect(stdout).toMatch(/m04\.csv: refused[\s\S]*unknown-variety/);
    expect(stdout).toMatch(/m07\.csv: refused[\s\S]*garden-person/);
    expect(stdout).not.toContain('ann@post.example');
    expect(stdout).toMatch(/m99\.csv: refused[\s\S]*garden-unknown/);
    expect(stdout).toContain(`${join(mail, 'm04.csv')}:2:1 error unknown-variety`);
    expect(stdout).toContain('To be mended for 2026: m04, m07\n');
    expect(stdout.trim().split('\n').at(-1)).toBe('Missing in 2026: m08, m11, m12');
    expect(readFileSync(join(gardens, 'm02.csv'), 'utf8')).toBe(before);
    expect(readdirSync(gardens)).not.toContain('m04.csv');
    expect(run(['gather', join(mail, 'm01.csv'), '--into', folder]).stdout).toContain('the same stands there');
  });
  it('what a build of a club has worked out is kept for the next one', () => {
    const [cache, out] = [temporary('cache'), temporary('site')];
    const env = { ...process.env, KEEPROW_CACHE: cache };
    const args = [command, 'build', club, '--out', out, '--quiet'];
    expect(spawnSync(process.execPath, args, { env }).status).toBe(0);
    expect(readdirSync(cache).map((name) => name.split('-').at(-1))).toEqual(['results', 'site']);
  });
  it('gather reads a sheet with a member’s own titles, and files it with the columns of the contract', () => {
    const folder = copied();
    const mail = temporary('mail');
    const rows = 'Mill Race;2;3,4;2026-08-01;7;ja\nFellside;2;2,1;2026-08-11;6;nein\n';
    mkdirSync(mail, { recursive: true });
    writeFileSync(join(mail, 'm04.csv'), `Sorte;Pflanzen;Gewicht (kg);Erste Reife;Geschmack;nochmal\n${rows}`);
    writeFileSync(join(mail, 'm08.csv'), `Sorte;Pflanzen;Gewicht (kg);Ertrag (kg)\nFellside;2;2,1;2,2\n`);
    const { stdout } = run(['gather', join(mail, 'm04.csv'), join(mail, 'm08.csv'), '--into', folder]);
    expect(stdout).toContain('m04.csv: filed, its titles read as Sorte = variety, Pflanzen = plants');
    expect(readFileSync(join(folder, 'data/2026/gardens/m04.csv'), 'utf8')).toBe(
      'variety,plants,weight_kg,first_ripe,taste,again\nMill Race,2,"3,4",2026-08-01,7,ja\nFellside,2,"2,1",2026-08-11,6,nein\n',
    );
    // Two titles of one meaning are not guessed between.
    expect(stdout).toMatch(/m08\.csv: refused/);
  });
  it('build --garden writes one page that stands by itself and names no other garden', () => {
    const out = temporary('garden');
    mkdirSync(out, { recursive: true });
    expect(run(['build', club, '--garden', 'm01', '--out', out, '--quiet']).status).toBe(0);
    const html = readFileSync(join(out, 'm01.html'), 'utf8');
    expect(html).toContain('This page is for this garden alone');
    expect(html).not.toMatch(/(?:src|href)="(?!#)/);
    for (const code of CODES.filter((own) => own !== 'm01')) expect(html).not.toMatch(new RegExp(`\\b${code}\\b`));
    expect(run(['build', club, '--garden', 'm08', '--quiet']).status).toBe(2);
  });
});

describe('the plan of a club’s own garden', () => {
  it('has the places that it had, and names no member', () => {
    const out = join(temporary('plan'), 'plan');
    expect(run(['plan', club, '--out', out, '--quiet']).status).toBe(0);
    // Five varieties of three plants each stood in the trial's own garden in 2026.
    const rows = readFileSync(join(out, '2027/plantings.csv'), 'utf8').trim().split('\n').slice(1);
    expect(rows).toHaveLength(15);
    expect(holders(out, CODES)).toEqual([]);
  });
});

/** The club's tables in memory. */
function tables(): Folder {
  const data = join(club, 'data');
  return Object.fromEntries(
    readdirSync(data, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        return [path.slice(data.length + 1), readFileSync(path, 'utf8')];
      }),
  );
}

describe.each(['en-GB', 'de'])('the sentences of a club in %s', (language) => {
  it('have no fault, and every figure is one', () => {
    const folder = tables();
    const { trial } = check({ ...folder, 'trial.yaml': `${folder['trial.yaml']}language: ${language}\n` });
    const seasons = trial!.seasons.map((season) => seasonSeen(trial!, season));
    const next = adviseNextSeason(trial!, seasons);
    const writing = writingOf(trial!.settings);
    const advice = { trial: trial!, seasons, next, winters: lastWinter(trial!, seasons), writing };
    const compared = seasons.map((seen) => ({ seen, compared: compareSeason(trial!, seen) }));
    const content = { trial: trial!, seasons, writing, next: null, ongoing: null, ownPages: [], gardens: new Map() };
    const own = ['m01', 'm13'].map((code) => gardenPage(content, advice, adviseGarden(trial!, next, code), true));
    expect(faultsOfPages([...pagesOfTrial(trial!, compared, advice), ...own])).toEqual([]);
  });
});
