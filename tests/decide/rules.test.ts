import { describe, expect, it } from 'vitest';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { lastWinter } from '../../src/decide/lastWinter.ts';
import { adviceWords } from '../../src/present/nextSeason/varietyAdvice.ts';
import { classAdviceWords } from '../../src/present/nextSeason/classAdvice.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { advisedIn, check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// Rules of advice beside the shares: what decides alone, what comes first, what stands on the list.

const YEARS = [2023, 2024, 2025, 2026];
const trial = (settings: string, files: Folder, varieties = ['one', 'two', 'three']): Folder => ({
  'trial.yaml': `title: Rules\ntraits:\n  flavour: {kind: rating, from: 1, to: 10, better: higher}\n  heat: {kind: rating, from: 0, to: 10, better: none}\n${settings}`,
  'varieties.csv': `variety,class\n${varieties.map((id) => `${id},a`).join('\n')}\n`,
  ...files,
});
const totals = (rows: readonly string[], head = 'variety,plants,flavour,again', years = YEARS): Folder =>
  Object.fromEntries(years.map((year) => [`${year}/totals.csv`, `${head}\n${rows.join('\n')}\n`]));
const outcomeOf = (folder: Folder) => advisedIn(folder).classes[0]!;
const adviceOn = (folder: Folder, id: string) =>
  outcomeOf(folder).advice!.varieties.find(({ variety }) => variety === id)!;

/** What is said of a variety, and of its class. */
function words(folder: Folder, id: string) {
  const checked = check(folder).trial!;
  const seasons = checked.seasons.map((season) => seasonSeen(checked, season));
  const next = advisedIn(folder);
  const source = {
    trial: checked,
    seasons,
    next,
    winters: lastWinter(checked, seasons),
    writing: writingOf(checked.settings),
  };
  const outcome = next.classes[0]!;
  return {
    class: classAdviceWords(source, outcome),
    variety: adviceWords(
      source,
      outcome,
      outcome.advice!.varieties.find(({ variety }) => variety === id)!,
    ),
  };
}

describe('fruit that was counted for heat', () => {
  const hot = (k: number, n: number, ratings = ''): Folder =>
    trial(
      'classes: {a: {spots: 2}}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\ngoals: {a: {yield: 1}}\nmust: {a: {heat: {at_most: 1}}}\n',
      {
        '2026/plantings.csv': `planting,variety\n${['one', 'two', 'three'].flatMap((id) => [1, 2, 3].map((i) => `${id}-${i},${id}`)).join('\n')}\n`,
        '2026/harvests.csv': `date,planting,weight_g\n${['one', 'two', 'three'].flatMap((id, v) => [1, 2, 3].map((i) => `2026-08-0${i},${id}-${i},${[3000, 900, 700][v]! + 40 * i}`)).join('\n')}\n`,
        '2026/observations.csv': `date,planting,event,count,of\n2026-08-20,one-1,hot,${k},${n}\n`,
        ...(ratings === '' ? {} : { '2026/ratings.csv': `date,taster,variety,heat\n${ratings}` }),
      },
    );
  it('decides alone: none of 40 is no doubt, whatever the scores of others make likely', () => {
    const none = adviceOn(hot(0, 40), 'one');
    expect(none.untested).toBe(false);
    expect(none.missed).toEqual([0]);
    expect(none.share).toBeGreaterThan(0.8);
    expect(none.verdict).toBe('keep');
    const scored = adviceOn(hot(0, 40, '2026-09-01,Ada,one,0\n2026-09-01,Ben,one,0\n'), 'one');
    // A little more even: the others may miss the limit in a simulated season, this one cannot.
    expect(scored.share).toBeGreaterThanOrEqual(none.share);
  });
  it('names the limit that it decides by first, with its count', () => {
    const folder = hot(9, 12);
    expect(adviceOn(folder, 'one')).toMatchObject({ verdict: 'drop', decidedByLimit: true });
    const said = words(folder, 'one').variety;
    expect(said.reasons[0]!.text).toBe('9 of 12 were hot: more than the limit of 20 % leaves room for.');
    expect(said.chief[0]).toBe(said.reasons[0]!.text);
    expect(adviceOn(folder, 'two')).toMatchObject({ untested: true });
  });
});

describe('the list', () => {
  const folder = trial(
    'classes: {a: {spots: 3}}\ngoals: {a: {flavour: 1}}\n',
    totals(['one,3,9,', 'two,3,6,', 'three,3,2,']),
  );
  it('holds what is expected to reach the bar; the spots that are left are for newcomers, by number', () => {
    const { advice } = outcomeOf(folder);
    for (const { variety, above, leans } of advice!.varieties) {
      if (advice!.list.includes(variety)) expect(leans).not.toBe('down');
      expect(advice!.list.includes(variety)).toBe(above >= 0.5);
    }
    expect(advice!.newcomerSpots).toBe(3 - advice!.list.length);
    expect(advice!.list).not.toContain('three');
    expect(words(folder, 'one').class.list.join(' ')).toMatch(
      /(?:One spot is left for a newcomer|\d spots are left for newcomers)\./,
    );
  });
  it('says what it gives more than newcomers only where it does', () => {
    const alike = trial(
      'classes: {a: {spots: 3}}\ngoals: {a: {flavour: 1}}\n',
      totals(['one,3,6,', 'two,3,6,', 'three,3,6,']),
    );
    const { gain } = outcomeOf(alike).advice!;
    expect(gain === null || gain > 0).toBe(true);
    expect(words(alike, 'one').class.list.join(' ')).not.toMatch(/score (?:-|−|0\.0)/);
  });
});

describe('answers to “again”', () => {
  it('keep what everyone wanted for three seasons, where there are spots for all that are wanted', () => {
    const nines = totals(['one,3,9,yes', 'two,3,9,yes', 'three,3,9,yes']);
    const folder = trial('classes: {a: {spots: 3}}\n', nines);
    for (const id of ['one', 'two', 'three'])
      expect(adviceOn(folder, id)).toMatchObject({ verdict: 'keep', isWanted: true });
    expect(outcomeOf(folder).advice!.list).toHaveLength(3);
    expect(words(folder, 'one').variety.sentence).toMatch(
      /^Keep: .*everyone who answered wanted to grow it again, 4 seasons/,
    );
    // Fewer spots than are wanted: the figures decide.
    const crowded = trial('classes: {a: {spots: 2}}\n', nines);
    expect(adviceOn(crowded, 'one').isWanted).toBe(false);
    // Two seasons are not yet a wish.
    const young = trial(
      'classes: {a: {spots: 3}}\n',
      totals(['one,3,9,yes', 'two,3,9,yes', 'three,3,9,yes'], undefined, [2025, 2026]),
    );
    expect(adviceOn(young, 'one').isWanted).toBe(false);
  });
  it('are named first where everyone said no, and what they are of is not listed', () => {
    const folder = trial(
      'classes: {a: {spots: 3}}\ngoals: {a: {flavour: 1}}\n',
      totals(['one,3,9,no', 'two,3,6,yes', 'three,3,2,yes']),
    );
    expect(outcomeOf(folder).advice!.list).not.toContain('one');
    expect(adviceOn(folder, 'one')).toMatchObject({ verdict: 'try-again' });
    expect(words(folder, 'one').variety.sentence).toMatch(
      /^The one person who answered in 2026 would not grow it again\./,
    );
  });
});

describe('a variety of which nothing that counts was recorded', () => {
  it('is an untried one: no share, no verdict', () => {
    const folder = trial(
      'classes: {a: {spots: 3}}\ngoals: {a: {flavour: 1}}\n',
      totals(['one,3,9,', 'two,3,6,', 'three,3,,']),
    );
    const { advice, excluded } = outcomeOf(folder);
    expect(advice!.varieties.map(({ variety }) => variety).toSorted()).toEqual(['one', 'two']);
    expect(excluded).toEqual([{ variety: 'three', why: 'untried' }]);
  });
  it('makes no advice where it is so of all', () => {
    const folder = trial(
      'classes: {a: {spots: 3}}\ngoals: {a: {flavour: 1}}\n',
      totals(['one,3,,no', 'two,3,,', 'three,3,,']),
    );
    expect(outcomeOf(folder).advice).toBeNull();
  });
});

describe('who counts fruits and hardly weighs', () => {
  const counted = totals(['one,3,30', 'two,3,90', 'three,3,60'], 'variety,plants,fruits');
  it('has their number among the usual goals, and reads that it stands in', () => {
    const folder = trial('classes: {a: {spots: 2}}\n', counted);
    expect(outcomeOf(folder).advice!.goals.map(({ trait }) => trait)).toEqual(['fruits']);
    expect(words(folder, 'one').class.rule.join(' ')).toContain('The number of fruits stands in for their weight');
  });
  it('not where goals are set, nor where weights are known', () => {
    expect(
      outcomeOf(trial('classes: {a: {spots: 2}}\ngoals: {a: {yield: 1, flavour: 1}}\n', counted)).advice,
    ).toBeNull();
    const weighed = totals(['one,3,30,300', 'two,3,90,800', 'three,3,60,500'], 'variety,plants,fruits,weight_g');
    expect(outcomeOf(trial('classes: {a: {spots: 2}}\n', weighed)).advice!.goals.map(({ trait }) => trait)).toEqual([
      'yield',
    ]);
  });
});

describe('what gave nothing', () => {
  it('says so first', () => {
    const folder = trial(
      'classes: {a: {spots: 3}}\ngoals: {a: {yield: 1}}\n',
      totals(['one,3,0', 'two,3,900', 'three,3,700'], 'variety,plants,weight_g', [2026]),
    );
    expect(words(folder, 'one').variety.sentence).toMatch(/^In 2026 it gave nothing\./);
  });
});
