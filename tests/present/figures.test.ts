import { ripeningModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { medianText, ripeByEnd } from '../../src/present/classTables/ripening.ts';
import { downloadsOf } from '../../src/present/downloads.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { found } from '../../src/present/seasonFigures/found.ts';
import { plainUnits } from '../../src/present/units.ts';
import { english } from '../../src/present/words/en/index.ts';
import { check, comparedIn, seenIn } from '../sites/folder.ts';

const writing = writingOf({ language: 'en', units: 'metric' });
const shown = (estimate: number, low: number | null, high: number | null, unit = 'g'): string =>
  plainUnits(writing.interval({ estimate, low, high }, unit));

describe('a figure with its interval', () => {
  it('is rounded at the second digit of its half-width', () => {
    expect(shown(1234.4, 1012.2, 1516.9)).toBe('1,230 g (1,010 to 1,520)');
    expect(shown(2231, 1410, 3530)).toBe('2,200 g (1,400 to 3,500)');
    expect(shown(8.35, 8.11, 8.6, 'cm')).toBe('8.4 cm (8.1 to 8.6)');
  });
  it('keeps the first digit of a small lower limit, so that it is not rounded to nothing', () => {
    expect(shown(345, 50, 2402)).toBe('350 g (50 to 2,400)');
    expect(shown(30, 7.2, 134)).toBe('30 g (7 to 134)');
    expect(shown(30, 0, 134)).toBe('30 g (0 to 130)');
    expect(shown(345, 0.4, 2402)).toBe('300 g (0 to 2,400)');
    expect(shown(-0.3, -30, 30)).toBe('0 g (-30 to 30)');
  });
  it('keeps its own first digit however wide its interval is, and a limit below nothing as it is', () => {
    expect(shown(60, -1048, 1168)).toBe('60 g (-1,050 to 1,170)');
  });
  it('has more digits where two are to be told apart', () => {
    expect(plainUnits(writing.alike(1026, { estimate: 1578, low: 1070, high: 2220 }, 'g', 1))).toBe('1,026 g');
    expect(plainUnits(writing.alike(7.46, { estimate: 7.46, low: 6.4, high: 8.6 }, 'points', 1))).toBe('7.46');
  });
  it('gives its rounding to a value beside it', () => {
    const limits = { estimate: 1578, low: 1070, high: 2220 };
    expect(plainUnits(writing.alike(1578, limits, 'g'))).toBe('1,580 g');
    expect(plainUnits(writing.alike(1026, limits, 'g'))).toBe('1,030 g');
    expect(plainUnits(writing.alike(7.46, { estimate: 7.46, low: 6.4, high: 8.6 }, 'points'))).toBe('7.5');
  });
});

describe('a median of days', () => {
  const curve = (
    estimate: number | null,
    low: number | null,
    high: number | null,
    [ripe, unripe, accidents] = [2, 1, 0] as readonly [number, number, number],
  ) => ({ ripe, unripe, accidents, steps: [], median: { n: 3, estimate, low, high, reason: null } });
  it('has none, nor a count of ripe plantings, where accidents took them all', () => {
    expect(medianText(curve(null, null, null, [0, 3, 3]), writing)).toBe('');
    expect(ripeByEnd(curve(null, null, null, [0, 3, 3]), writing)).toBe('all 3 lost by accident');
    expect(ripeByEnd(curve(null, null, null, [0, 3, 1]), writing)).toBe('0 of 2');
  });
  it('has its limits only where it has both', () => {
    expect(plainUnits(medianText(curve(88, 79, null), writing))).toBe('88 days');
    expect(plainUnits(medianText(curve(88, 79, 95), writing))).toBe('88 days (79 to 95)');
    expect(medianText(curve(null, 79, null), writing)).toBe('not reached');
  });
});

/** Days from planting out on 20 May. */
const day = (days: number): string => new Date(Date.UTC(2026, 4, 20 + days)).toISOString().slice(0, 10);
const FIRST = [
  ['one', 60, 900],
  ['two', 62, 1000],
  ['three', 120, 400],
] as const;
const GARDEN = {
  'trial.yaml':
    'title: Figures\nclasses:\n  a: {check_variety: one}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n',
  'varieties.csv': 'variety,class\none,a\ntwo,a\nthree,a\n',
  '2026/plantings.csv': `planting,variety,removed,cause\n${['one', 'two', 'three']
    .flatMap((id) =>
      [1, 2, 3].map((i) => `${id}-${i},${id},${id === 'three' && i === 3 ? '2026-06-10,accident' : ','}`),
    )
    .join('\n')}\n`,
  '2026/harvests.csv': `date,planting,fruits,weight_g\n${FIRST.flatMap(([id, days, grams]) =>
    [1, 2, 3].filter((i) => id !== 'three' || i < 3).map((i) => `${day(days + 6 * i)},${id}-${i},9,${grams + 40 * i}`),
  ).join('\n')}\n`,
};

describe("a season's charts and tables", () => {
  it('say which varieties are not separated from the first', () => {
    const compared = comparedIn(GARDEN).get('first_ripe')!.get('a')!;
    const say = english.charts.found;
    const ranked = ['one', 'two', 'three'].map((id, i) => ({ id, name: id.toUpperCase(), estimate: 60 + i }));
    const title = (list: typeof ranked, own: typeof compared | undefined) =>
      found(list, { what: 'days', isLowest: true }, own, say);
    expect(title(ranked, compared)).toBe('ONE has the lowest estimate of days; TWO is not separated from it');
    expect(title([ranked[0]!, ranked[2]!], compared)).toBe(
      'ONE has the lowest estimate of days, separated from all others in this trial',
    );
    expect(title(ranked.slice(0, 2), compared)).toBe(
      'ONE has the lowest estimate of days; no variety is separated from it in this trial',
    );
    const never = { id: 'never', name: 'NEVER', estimate: 99 };
    expect(title([ranked[0]!, ranked[2]!, never], compared)).toBe(
      'ONE has the lowest estimate of days, separated from all others that can be compared in this trial',
    );
    expect(title([ranked[0]!, never], compared)).toBe('ONE has the lowest estimate of days in this trial');
    const same = ranked.map((own, i) => ({ ...own, estimate: i < 2 ? 60 : 70 }));
    expect(title(same, compared)).toBe('ONE and TWO share the lowest estimate of days');
    expect(title(same.slice(0, 2), compared)).toBe('Days: all alike in this trial');
    expect(title(ranked, undefined)).toBe('ONE has the lowest estimate of days in this trial');
    expect(title(ranked.slice(0, 1), compared)).toBe(say.only('ONE', 'days'));
    expect(title([], compared)).toBe(say.none('days'));
  });
  it('leave a plant lost by accident out of those ripe by the end', () => {
    const three = seenIn(GARDEN).varieties.find(({ variety }) => variety.id === 'three')!;
    expect(three.ripening).toMatchObject({ ripe: 2, unripe: 1, accidents: 1 });
    expect(three.shares.ripe_by_end).toMatchObject({ k: 2, n: 2 });
  });
  it('give the days to first ripe fruit twice in the open table: as seen and by the model', () => {
    const trial = check(GARDEN).trial!;
    const seen = trial.seasons.map((season) => seasonSeen(trial, season));
    const table = downloadsOf(trial, seen, { crosses: [], seed: null })[0]!;
    const names = table.columns.map(([name]) => name);
    const rows = table.rows.map((row) => Object.fromEntries(row.map((cell, i) => [names[i]!, cell])));
    const days = rows.filter((row) => row['trait'] === 'first_ripe' && row['variety'] === 'one');
    const model = ripeningModel(seen[0]!)!.estimates.get('one')!;
    expect(days.map(({ method, estimate }) => [method, estimate])).toEqual([
      ['kaplan-meier', 72],
      ['aft-lognormal', model.estimate],
    ]);
    expect([days[1]!['unit'], days[1]!['low'], days[1]!['high']]).toEqual(['d', model.low, model.high]);
  });
});
