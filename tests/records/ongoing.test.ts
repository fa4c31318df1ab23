import { describe, expect, it } from 'vitest';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { ongoingOf } from '../../src/present/pages/ongoing.ts';
import { resultsDocument } from '../../src/present/results.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const PLANTINGS = 'planting,variety,plants,transplanted\na1,a,1,2026-05-20\nb1,b,1,2026-05-20\n';
const folder = (more: Folder, settings = ''): Folder => ({
  'trial.yaml': `title: Slope\nclasses: {all: {spots: 1}}\n${settings}`,
  'varieties.csv': 'variety,name\na,Aldersop\nb,Bramscar\n',
  '2026/plantings.csv': PLANTINGS,
  ...more,
});
const isOngoing = (more: Folder, settings = ''): boolean => {
  const { trial, problems } = check(folder(more, settings), true);
  if (!trial) throw new Error(problems.map(({ code }) => code).join());
  expect(problems.some(({ code }) => code === 'season-ongoing')).toBe(trial.ongoing !== null);
  return trial.ongoing !== null;
};
const picked = (day: string): Folder => ({ '2026/harvests.csv': `date,planting,fruits,weight_g\n${day},a1,2,120\n` });

describe('the last season', () => {
  it('goes on where only plantings are known, or the last record is earlier than a look before its end', () => {
    expect(isOngoing({})).toBe(true);
    expect(isOngoing(picked('2026-07-20'))).toBe(true);
    expect(isOngoing(picked('2026-10-23'))).toBe(true);
    expect(isOngoing(picked('2026-10-24'))).toBe(false);
  });

  it.each([
    ['its last day is earlier', picked('2026-09-12'), 'seasons: {2026: {end: 2026-09-15}}\n'],
    ['trial.yaml says so', picked('2026-07-20'), 'seasons: {2026: {finished: yes}}\n'],
    ['its harvests are complete', picked('2026-07-20'), 'seasons: {2026: {harvests: complete}}\n'],
    [
      'every planting is gone',
      {
        '2026/plantings.csv': 'planting,variety,removed,cause\na1,a,2026-08-20,disease\nb1,b,2026-08-21,season-end\n',
      },
      '',
    ],
    ['nothing in it has a date', { '2026/harvests.csv': 'planting,weight_g\na1,120\n' }, ''],
    [
      'a later season follows',
      { ...picked('2026-07-20'), '2027/plantings.csv': 'planting,variety,transplanted\nc1,a,2027-05-20\n' },
      '',
    ],
  ] as const)('is over where %s', (_, more, settings) => {
    const { trial } = check(folder(more, settings), true);
    expect(trial!.seasons.map(({ year }) => year)).toContain(2026);
  });

  it('goes on against every sign where trial.yaml says so', () => {
    expect(isOngoing(picked('2026-10-31'), 'seasons: {2026: {finished: no}}\n')).toBe(true);
  });
});

describe('a season that goes on', () => {
  const last = {
    '2026/harvests.csv':
      'date,planting,fruits,weight_g\n2026-08-01,a1,20,2000\n2026-08-01,b1,9,900\n2026-10-31,a1,1,60\n',
  };
  const next = {
    '2027/plantings.csv': 'planting,variety,plants,transplanted\na2,a,2,2027-05-20\nb2,b,1,2027-05-21\n',
    '2027/harvests.csv': 'date,planting,fruits,weight_g\n2027-07-20,b2,1,60\n',
  };
  const advised = (own: Folder) => {
    const trial = check(own, true).trial!;
    const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
    return { trial, next: adviseNextSeason(trial, seasons) };
  };

  it('leaves the advice of the winter before it as it was', () => {
    const [before, now] = [advised(folder(last)), advised(folder({ ...last, ...next }))];
    expect(now.next.season).toBe(2027);
    expect(JSON.stringify([...now.next.classes])).toBe(JSON.stringify([...before.next.classes]));
  });

  it('is told as it stands, and of nobody that it gave nothing', () => {
    const { trial } = advised(folder({ ...last, ...next }));
    const own = ongoingOf(trial)!;
    expect([own.year, own.plants, own.grams, own.firstRipe?.varieties.map(({ id }) => id)]).toEqual([
      2027,
      3,
      60,
      ['b'],
    ]);
    const [a] = own.classes[0]!.varieties;
    expect([a!.firstRipe, a!.fruits]).toEqual([null, 0]);
    const document = resultsDocument(trial, [], null, { crosses: [], seed: null });
    expect(document.ongoing?.varieties[1]).toEqual({
      variety: 'b',
      plants: 1,
      first_ripe: '2027-07-20',
      fruits: 1,
      weight: 60,
    });
  });
});
