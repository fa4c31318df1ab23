import { plantModel, ratingModel, ripeningModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { classReport } from '../../src/present/classReport.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { check, comparedIn, seenIn } from './folder.ts';
import type { Folder } from './folder.ts';

/** A season from rows "variety planting grams": one picking each, everything recorded. */
function season(rows: readonly string[], more: Folder = {}, settings = ''): Folder {
  const plots = rows.map((row) => row.split(' ') as [string, string, string, string?]);
  const ids = [...new Set(plots.map(([variety]) => variety))];
  return {
    'trial.yaml': `title: Breaking\nclasses:\n  a: {check_variety: ${ids[0]}}\n  b: {}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n${settings}`,
    'varieties.csv': `variety,class\n${ids.map((id) => `${id},${id.startsWith('big') ? 'b' : 'a'}`).join('\n')}\n`,
    '2026/plantings.csv': `planting,variety,block\n${plots.map(([variety, planting, , block]) => `${planting},${variety},${block ?? ''}`).join('\n')}\n`,
    '2026/harvests.csv': `date,planting,fruits,weight_g\n${plots
      .filter(([, , grams]) => grams !== '0')
      .map(([, planting, grams], i) => `2026-08-${String(1 + (i % 28)).padStart(2, '0')},${planting},3,${grams}`)
      .join('\n')}\n`,
    ...more,
  };
}

const yields = (folder: Folder) => plantModel(seenIn(folder), 'yield')!;

/** Every table, finding and caution of every class can be worded. */
function wording(folder: Folder): string {
  const { trial } = check(folder);
  const writing = writingOf(trial!.settings);
  const words = [...trial!.settings.classes.keys()].map((id) =>
    classReport(trial!, seenIn(folder), comparedIn(folder), id, writing),
  );
  const text = JSON.stringify(words);
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
  return text;
}

describe('cases that break naive programs', () => {
  it('one planting of each variety: estimates without intervals, and the page says what would give them', () => {
    const folder = season(['one p1 500', 'two p2 300', 'three p3 700']);
    expect(yields(folder).estimates.get('one')).toEqual({
      n: 1,
      estimate: 500,
      low: null,
      high: null,
      reason: 'no-residual-df',
    });
    expect(comparedIn(folder).get('yield')!.size).toBe(0);
    expect(wording(folder)).toContain('Two plantings of a few varieties would give them');
  });
  it('every variety single except the check: the spread is borrowed from the check, and that is said', () => {
    const folder = season(['one p1 500', 'one p2 640', 'one p3 450', 'two p4 300', 'three p5 700']);
    const own = yields(folder);
    expect(own.residualDf).toBe(2);
    // Two plantings' worth of the check's coefficient of variation: quasi-gamma, so the ratio high / estimate is that of the check times √3 in log.
    const [check1, single] = [own.estimates.get('one')!, own.estimates.get('two')!];
    const half = (e: typeof check1): number => Math.log(e.high! / e.estimate!);
    // layout "together" (no blocks): n ρ / (1 - ρ) inflates the mean of three by 1.75 and of one by 1.25
    expect(half(single) / half(check1)).toBeCloseTo(Math.sqrt((3 * 1.25) / 1.75), 9);
    expect(wording(folder)).toContain('borrowed from the other varieties');
  });
  it('nothing picked of a variety: 0 without an interval, no letter, no part in the spread', () => {
    const folder = season(['one p1 500', 'one p2 640', 'two p3 300', 'two p4 340', 'none p5 0', 'none p6 0']);
    expect(yields(folder).estimates.get('none')).toEqual({
      n: 2,
      estimate: 0,
      low: null,
      high: null,
      reason: 'nothing-picked',
    });
    expect(yields(folder).residualDf).toBe(2);
    expect(comparedIn(folder).get('yield')!.get('a')!.letters.has('none')).toBe(false);
    wording(folder);
  });
  it('nothing picked at all: every estimate 0, no interval anywhere', () => {
    const folder = season(['one p1 0', 'one p2 0', 'two p3 0']);
    for (const estimate of yields(folder).estimates.values())
      expect(estimate).toMatchObject({ estimate: 0, low: null, high: null });
    expect(seenIn(folder).varieties[0]!.ripening).toMatchObject({ ripe: 0, unripe: 2 });
    wording(folder);
  });
  it('all plants of a variety lost to disease count as 0, lost by accident not at all', () => {
    const lost = (cause: string): Folder => ({
      '2026/plantings.csv': `planting,variety,removed,cause\np1,one,,\np2,one,,\np3,two,2026-07-01,${cause}\np4,two,2026-07-01,${cause}\n`,
    });
    const rows = ['one p1 500', 'one p2 640', 'two p3 0', 'two p4 0'];
    expect(yields(season(rows, lost('disease'))).estimates.get('two')).toMatchObject({ n: 2, estimate: 0 });
    expect(yields(season(rows, lost('accident'))).estimates.has('two')).toBe(false);
    expect(seenIn(season(rows, lost('accident'))).varieties[1]).toMatchObject({
      plantings: 2,
      plantingsExcluded: 2,
      plantsSetOut: 2,
    });
  });
  it('residual df 1 has intervals, wide ones', () => {
    const own = yields(season(['one p1 500', 'one p2 520', 'two p3 300'])).estimates.get('one')!;
    expect(own.reason).toBeNull();
    expect(own.high! / own.low!).toBeGreaterThan(1.5);
  });
  it('zero variance has no interval, in yield as in ratings', () => {
    const folder = season(['one p1 500', 'one p2 500', 'two p3 300', 'two p4 300'], {
      '2026/ratings.csv':
        'date,taster,variety,flavour\n2026-09-01,A,one,5\n2026-09-01,B,one,5\n2026-09-01,A,two,5\n2026-09-01,B,two,5\n',
    });
    expect(yields(folder).estimates.get('one')).toMatchObject({ estimate: 500, low: null, reason: 'no-spread' });
    expect(ratingModel(seenIn(folder), 'flavour')!.estimates.get('two')).toMatchObject({
      estimate: 5,
      low: null,
      reason: 'no-spread',
    });
    wording(folder);
  });
  it('disconnected blocks are left out with a warning that says why', () => {
    const folder = season(['one p1 500 north', 'one p2 640 north', 'two p3 300 south', 'two p4 340 south']);
    expect(check(folder).problems.map(({ code, facts }) => [code, facts['why']])).toEqual([
      ['block-left-out', 'not-connected'],
    ]);
    expect(yields(folder).factor).toBe('none');
  });
  it('a variety in one block only is adjusted for its block', () => {
    const rows = ['one p1 500 north', 'one p2 250 south', 'two p3 400 north', 'two p4 200 south', 'three p5 300 north'];
    const own = yields(season(rows));
    expect(own.factor).toBe('block');
    // South gives exactly half of north, so three's mean over both blocks is 300 × √(1/2) on the logarithmic scale.
    expect(own.estimates.get('three')!.estimate).toBeCloseTo(300 * Math.SQRT1_2, 6);
  });
  it('tasters that never shared a variety give no estimate, with the reason', () => {
    const folder = season(['one p1 500', 'one p2 640', 'two p3 300'], {
      '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,A,one,5\n2026-09-01,B,two,7\n2026-09-02,A,one,6\n',
    });
    expect(ratingModel(seenIn(folder), 'flavour')!.estimates.get('one')).toMatchObject({
      estimate: null,
      reason: 'not-connected',
    });
    wording(folder);
  });
  it('one taster over two dates: dates take the place of tasters where they hang together', () => {
    const folder = season(['one p1 500', 'two p3 300'], {
      '2026/ratings.csv':
        'date,taster,variety,flavour\n2026-09-01,A,one,5\n2026-09-01,A,two,7\n2026-09-08,A,one,6\n2026-09-08,A,two,7\n',
    });
    const model = ratingModel(seenIn(folder), 'flavour')!;
    expect(model.tasters).toBe(1);
    expect(model.estimates.get('one')).toMatchObject({ estimate: 5.5, reason: null });
    expect(wording(folder)).toContain('one person’s taste');
  });
  it('plantings of several plants beside single plants: the estimate is total over plants', () => {
    const folder = season(['one p1 500', 'one p2 2400', 'two p3 300', 'two p4 350'], {
      '2026/plantings.csv': 'planting,variety,plants\np1,one,1\np2,one,4\np3,two,1\np4,two,1\n',
    });
    expect(yields(folder).estimates.get('one')!.estimate).toBeCloseTo(2900 / 5, 9);
    expect(wording(folder)).toContain('Plantings differ in their number of plants');
  });
  it('no check variety: no comparison with one; one variety in a class: no letters to compare', () => {
    const folder = season(['one p1 500', 'one p2 640', 'big p3 300', 'big p4 350']);
    const own = comparedIn(folder).get('yield')!;
    expect(own.get('b')!.againstCheck).toBeNull();
    expect([...own.get('b')!.letters]).toEqual([['big', 'a']]);
    expect(own.get('a')!.newAgainstReturning).toBeNull();
    wording(folder);
  });
  it('all censored: median not reached, no model', () => {
    const folder = season(['one p1 500', 'one p2 640'], {
      '2026/harvests.csv': 'date,planting,weight_g,stage\n2026-10-20,p1,100,green\n2026-10-20,p2,120,green\n',
    });
    const own = seenIn(folder);
    expect(own.varieties[0]!.ripening!.median).toMatchObject({ n: 2, estimate: null, reason: 'none-ripened' });
    expect(ripeningModel(own)).toBeNull();
    wording(folder);
  });
  it('a tie of everything: all share one letter', () => {
    const folder = season(['one p1 500', 'one p2 640', 'two p3 500', 'two p4 640', 'three p5 640', 'three p6 500']);
    expect([...comparedIn(folder).get('yield')!.get('a')!.letters.values()]).toEqual(['a', 'a', 'a']);
  });
  it('classes a thousandfold apart do not disturb each other on the ratio scale', () => {
    const small = ['one p1 5', 'one p2 6', 'two p3 3', 'two p4 4'];
    const both = [...small, 'big p5 5000', 'big p6 6000', 'bigger p7 3000', 'bigger p8 4000'];
    const own = yields(season(both)).estimates;
    expect(own.get('one')!.estimate).toBeCloseTo(5.5, 9);
    expect(own.get('big')!.estimate! / own.get('one')!.estimate!).toBeCloseTo(1000, 6);
    expect(own.get('big')!.high! / own.get('one')!.high!).toBeCloseTo(1000, 6);
  });
  it('classes far apart under one mean square are said to be', () => {
    const rows = ['one p1 5', 'one p2 6', 'two p3 3', 'two p4 4', 'big p5 5000', 'big p6 6000'];
    const folder = season(rows);
    const difference = {
      ...folder,
      'trial.yaml': folder['trial.yaml']!.replace('a: {', 'a: {scale: difference, ').replace(
        'b: {}',
        'b: {scale: difference}',
      ),
    };
    expect(wording(difference)).toContain('pooled over classes of very different yield');
  });
  it('pounds and ounces come out as ounces where the trial shows US units', () => {
    const folder = season(['one p1 500', 'one p2 640', 'two p3 300', 'two p4 350'], {}, 'units: us\n');
    expect(wording(folder)).toMatch(/20\.1 oz|20 oz/);
  });
});
