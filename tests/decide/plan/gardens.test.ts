import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { seasonSeen } from '../../../src/analyse/seen.ts';
import { adviseNextSeason } from '../../../src/decide/nextSeason.ts';
import { makePlan } from '../../../src/decide/plan/plan.ts';
import type { MadePlan, Plan } from '../../../src/decide/plan/planned.ts';
import { seasonTables } from '../../../src/present/plan/tables.ts';
import { sortFiles } from '../../../src/records/folder.ts';
import { checkRecords, checkTrial } from '../../../src/records/trial.ts';
import type { Problem } from '../../../src/terms/problem.ts';
import type { Results } from '../../reference/read.ts';
import type { Trial } from '../../../src/terms/trial.ts';

/* Gardens with the best layout that is known of each: tests/reference/plan/g1 to g7 (g3, g6 and g7 were set by reasoning). */
const at = fileURLToPath(new URL('../../reference/plan/', import.meta.url));
const GARDENS = readdirSync(at).filter((name) => /^g\d_/.test(name));
/** True where R is here with what its checks need. */
const hasR = spawnSync('Rscript', ['-e', 'library(jsonlite); library(MASS)']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'keeprow-plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

type Files = Readonly<Record<string, string>>;

function filesOf(garden: string): Files {
  const root = join(at, garden);
  return Object.fromEntries(
    readdirSync(join(root, 'data'), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.includes('.'))
      .map((path) => [`data/${path}`, readFileSync(join(root, 'data', path), 'utf8')]),
  );
}

function planned(files: Files): MadePlan & { readonly trial: Trial; readonly told: readonly Problem[] } {
  const bytes = Object.entries(files).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) }));
  const found = sortFiles(bytes, [], true);
  const records = checkRecords(found);
  const trial = records.trial!;
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const next = adviseNextSeason(trial, seasons);
  const made = makePlan({ trial, seasons, next, year: 2027, hasBegun: false });
  return { ...made, trial, told: [...checkTrial(found, records).problems, ...made.problems] };
}

const expectedOf = (garden: string): Results => JSON.parse(readFileSync(join(at, garden, 'expected.json'), 'utf8'));
const places = ({ rows }: Plan): readonly string[] =>
  rows.map(({ variety, spot }) => `${variety} ${spot?.bed.id} ${spot?.row}:${spot?.column}`);

describe.each(GARDENS.filter((name) => !name.startsWith('g7')))('%s', (garden) => {
  const { plan, trial } = planned(filesOf(garden));
  const expected = expectedOf(garden);
  const tables = seasonTables(plan!, trial);

  it('has the plants, blocks and places that are asked', () => {
    const ids = plan!.rows.map(({ id }) => id.toLowerCase());
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(places(plan!).map((own) => own.replace(/^\S+ /, ''))).size).toBe(ids.length);
    for (const own of expected.fixed ?? [])
      expect(places(plan!)).toContain(`${own.variety} ${own.bed} ${own.row}:${own.column}`);
    for (const [classId, own] of Object.entries<Results>(expected.classes)) {
      const { layout, varieties } = plan!.classes.find((one) => one.classId === classId)!;
      expect(Object.fromEntries(varieties.map(({ variety, plants }) => [variety, plants]))).toEqual(own.plants);
      expect(layout.sizes.toSorted()).toEqual(own.block_sizes.toSorted());
      if (own.best_average_variance !== undefined)
        expect(layout.variance!.average).toBeLessThanOrEqual(own.best_average_variance * own.at_most_ratio);
      if (own.adjacent !== undefined)
        expect([...layout.besides.values()].reduce((sum, n) => sum + n, 0)).toBe(own.adjacent);
    }
  });
  it('is the same bytes again', () => {
    const again = planned(filesOf(garden));
    expect(seasonTables(again.plan!, again.trial)).toEqual(tables);
  });
  it.skipIf(!hasR)('passes the checks in R', () => {
    const out = join(folder, garden);
    mkdirSync(out, { recursive: true });
    for (const [name, text] of tables) writeFileSync(join(out, name), text);
    const layout = spawnSync('Rscript', [join(at, 'check_layout.R'), join(at, garden), join(out, 'plantings.csv')], {
      encoding: 'utf8',
    });
    expect(layout.stdout).toContain('pass ids are unique');
    expect(layout.stdout.match(/^FAIL.*$/gm)).toBeNull();
    // Classes served in turn have no column of their own in ratings.csv, which the check would need.
    if (plan!.classes.length > 1 || !plan!.tasting) return;
    const tasting = spawnSync('Rscript', [join(at, 'check_tasting.R'), join(out, 'ratings.csv'), '5'], {
      encoding: 'utf8',
    });
    expect(tasting.stdout.match(/^FAIL.*$/gm)).toBeNull();
  });
});

describe('what cannot be', () => {
  it('is told all at once, each in its place, with what would do (g7)', () => {
    const { plan, told } = planned(filesOf('g7_impossible'));
    const expected = expectedOf('g7_impossible');
    expect(plan).toBeNull();
    for (const [code, place] of Object.entries<string>(expected.codes)) {
      const own = told.find((problem) => problem.code === code)!;
      expect(`${own.places[0]!.file}:${own.places[0]!.line}`).toBe(place);
    }
    expect(told.find(({ code }) => code === 'plan-too-many')!.facts['short']).toBe(String(expected.places_short));
  });
  const garden = filesOf('g1_one_bed');
  const wishes = (text: string): Files => ({ ...garden, 'data/2027/wishes.csv': text });
  const rows = (text: string): Files => ({
    ...garden,
    'data/2027/wishes.csv': 'variety\n',
    'data/2027/plantings.csv': `planting,variety,bed,row,column\n${text}`,
  });
  const settings = (text: string): Files => ({
    ...garden,
    'data/2027/wishes.csv': 'variety\n',
    'data/trial.yaml': `${garden['data/trial.yaml']}${text}`,
  });
  it.each<readonly [code: string, files: Files]>([
    ['plan-wish-contradicts', wishes('variety,at_least,at_most\nv01,5,3\n')],
    ['wish-twice', wishes('variety,plants\nv01,5\nv01,3\n')],
    ['plan-bed-unknown', wishes('variety,plants,bed\nv01,2,lost bed\n')],
    ['plan-bed-unknown', rows(',v01,lost bed,1,1\n')],
    ['plan-kept', rows(',v01,long bed,1,1\n')],
    [
      'plan-class-no-place',
      {
        ...wishes('variety,plants\nv01,60\n'),
        'data/trial.yaml': garden['data/trial.yaml']!.replace('spots: 10', 'spots: 10, places: 60'),
      },
    ],
    ['plan-list-cut', { ...wishes('variety\n'), 'data/places.csv': 'bed,rows,columns\nlong bed,1,9\n' }],
    [
      'plan-newcomers-wait',
      {
        ...wishes('variety\n'),
        'data/varieties.csv': `${garden['data/varieties.csv']}n1,N1,sweet,\nn2,N2,sweet,\nn3,N3,sweet,\nn4,N4,sweet,\nn5,N5,sweet,\nn6,N6,sweet,\n`,
        'data/places.csv': 'bed,rows,columns\nlong bed,2,11\n',
      },
    ],
    [
      'plan-side-by-side',
      {
        ...wishes('variety,plants\nv01,8\nv02,4\n'),
        'data/places.csv': 'bed,rows,columns\nlong bed,2,6\n',
        'data/trial.yaml': garden['data/trial.yaml']!.replace('spots: 10', 'spots: 2, newcomers: 0'),
      },
    ],
    ['plan-tall-too-many', wishes('variety,plants,tall\nv01,9,yes\nv02,4,yes\n')],
    ['plan-seed-short', wishes('variety,plants,seeds\nv01,4,5\n')],
    ['plan-tasters-few', settings('plan: {tasting: {samples: 1}}\n')],
    ['bed-twice', { ...garden, 'data/places.csv': 'bed,rows,columns\na,2,2\na,2,3\n' }],
    ['bed-size-unfit', { ...garden, 'data/places.csv': 'bed,rows,columns\na,0,2\n' }],
    ['place-unreadable', { ...garden, 'data/places.csv': 'bed,rows,columns,leave_out\na,4,10,9:9\n' }],
    ['plan-frost', settings('plan: {plant_out: 05-01, last_frost: {day: 05-12}}\n')],
    [
      'plan-check-missing',
      { ...wishes('variety,grow\nv01,no\nv02,no\nv03,no\nv04,no\nv05,no\nv06,no\nv07,no\nv08,no\nv09,no\n') },
    ],
  ])('%s', (code, files) => {
    expect(planned(files).told.map((own) => own.code)).toContain(code);
  });
  it('plan-all-fixed, where every place is taken', () => {
    const { plan } = planned(garden);
    const taken = seasonTables(plan!, planned(garden).trial).get('plantings.csv')!;
    expect(planned({ ...garden, 'data/2027/plantings.csv': taken }).told.map(({ code }) => code)).toContain(
      'plan-all-fixed',
    );
  });
  it('plan-apart-broken, where classes that are kept apart have one bed and nothing between', () => {
    const three = filesOf('g3_three_classes');
    const apart = three['data/trial.yaml']!.replace('[[hot, sweet]]', '[[hot, sweet], [hot, frying]]');
    expect(planned({ ...three, 'data/trial.yaml': apart }).told.map(({ code }) => code)).toContain('plan-apart-broken');
  });
});

describe('what the demo’s records tell', () => {
  const root = fileURLToPath(new URL('../../../data/', import.meta.url));
  const demo = Object.fromEntries(
    readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(?:csv|yaml)$/.test(path) && !/^2027.(?!wishes)/.test(path))
      .map((path) => [`data/${path}`, readFileSync(join(root, path), 'utf8')]),
  );
  const settings = (from: string, to: string): Files => ({
    ...demo,
    'data/trial.yaml': demo['data/trial.yaml']!.replace(from, to),
  });
  it('a variety that ripens after the season’s end, a frost stated in another month', () => {
    const late = planned(settings('  2026: {sown', '  2027: {end: 2027-08-01}\n  2026: {sown'));
    expect(late.told.map(({ code }) => code)).toContain('plan-late');
    const other = planned(settings('last_frost: {day: 05-12', 'last_frost: {day: 07-20'));
    expect(other.told.map(({ code }) => code)).toContain('plan-frost-disagree');
  });
  it('hot and sweet stand apart, every lot is used, the hot ones are tasted last', () => {
    const { plan, told } = planned(demo);
    expect(told.map(({ code }) => code)).not.toContain('plan-apart-broken');
    const hot = new Set(
      plan!.classes.find(({ classId }) => classId === 'hot')!.varieties.map(({ variety }) => variety),
    );
    for (const { samples } of plan!.tasting!.tasters) {
      const order = samples.map(({ variety }) => hot.has(variety));
      expect(order).toEqual(order.toSorted());
    }
    const wren = plan!.classes[0]!.varieties.find(({ variety }) => variety === 'wren-hill')!;
    expect(wren.seeds.atHand).toBe(40);
    expect(wren.plants).toBeGreaterThan(6);
  });
});

describe('laws of a plan', () => {
  const garden = filesOf('g2_unequal');
  const lines = (text: string, change: (rows: readonly string[]) => readonly string[]): string => {
    const [head, ...rows] = text.trim().split('\n');
    return [head, ...change(rows)].join('\n');
  };
  it('rows in another order change nothing', () => {
    const turned = Object.fromEntries(
      Object.entries(garden).map(([path, text]) => [
        path,
        path.endsWith('.csv') ? lines(text, (rows) => rows.toReversed()) : text,
      ]),
    );
    expect(places(planned(turned).plan!)).toEqual(places(planned(garden).plan!));
  });
  it('another seed moves places, never numbers; units change no byte of the tables', () => {
    const before = planned(garden);
    const seeded = planned({ ...garden, 'data/trial.yaml': `${garden['data/trial.yaml']}plan: {seed: 7}\n` });
    expect(places(seeded.plan!)).not.toEqual(places(before.plan!));
    const counts = ({ classes }: Plan) =>
      classes.map(({ varieties }) => varieties.map(({ variety, plants }) => [variety, plants]));
    expect(counts(seeded.plan!)).toEqual(counts(before.plan!));
    const us = planned({ ...garden, 'data/trial.yaml': `${garden['data/trial.yaml']}units: us\n` });
    expect(seasonTables(us.plan!, us.trial)).toEqual(seasonTables(before.plan!, before.trial));
  });
  it('a fixed plant stays where it is, whatever else changes', () => {
    const fixed = { ...garden, 'data/2027/plantings.csv': 'planting,variety,bed,row,column\nmine,v05,long bed,2,3\n' };
    const { plan } = planned(fixed);
    expect(plan!.rows[0]).toMatchObject({ id: 'mine', variety: 'v05', spot: { row: 2, column: 3 } });
  });
});
