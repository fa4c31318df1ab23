import { plantModel, plantModels, ratingModel, ripeningModel, ripenings } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { degreeDayClock, degreeDaysOf } from '../../src/analyse/degreeDays.ts';
import { measureUnits } from '../../src/analyse/measures.ts';
import { relativeVariance } from '../../src/analyse/units.ts';
import type { Day } from '../../src/terms/day.ts';
import { check, comparedIn, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// What the records of a planting amount to, counted by hand; rules of methods page A1, A3, A5 and A6.

const SETTINGS =
  'title: Records\nclasses:\n  a: {check_variety: one}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  bitter: {kind: rating, from: 1, to: 9, better: lower}\n  length: {kind: measure, unit: cm, better: higher}\n  rot: {kind: measure, unit: mm, better: lower}\n';
const SEASON = 'seasons: {2026: {transplanted: 2026-05-20, harvests: complete, early_until: 2026-08-10}}\n';

interface Sheets {
  readonly settings?: string;
  readonly varieties?: string;
  readonly plantings: string;
  readonly harvests?: string;
  readonly more?: Folder;
}
function folder({
  settings = SEASON,
  varieties = 'variety,class\none,a\ntwo,a\n',
  plantings,
  harvests,
  more = {},
}: Sheets): Folder {
  return {
    'trial.yaml': SETTINGS + settings,
    'varieties.csv': varieties,
    '2026/plantings.csv': plantings,
    ...(harvests === undefined ? {} : { '2026/harvests.csv': harvests }),
    ...more,
  };
}
const PLANTINGS = 'planting,variety\np1,one\np2,one\np3,two\n';

describe('the yield of a planting', () => {
  const HEADER = 'date,planting,fruits,weight_g,stage,unusable_fruits,unusable_weight_g\n';
  const of = (harvests: string, plantings = PLANTINGS, settings = SEASON) =>
    seenIn(folder({ settings, plantings, harvests: HEADER + harvests })).yields;

  it('weighs a quarter of unweighed fruits by the mean of the planting, and no more than a quarter', () => {
    const quarter = of('2026-08-01,p1,6,300,,,\n2026-08-05,p1,2,,,,\n2026-08-01,p3,4,40,,,\n').get('p1')!;
    expect(quarter).toEqual({
      grams: 400,
      fruits: 8,
      earlyGrams: 400,
      ripeGrams: 400,
      greenGrams: 0,
      cullFruits: 0,
      cullGrams: 0,
      fruitsWeightAssumed: 2,
    });
    const third = of('2026-08-01,p1,6,300,,,\n2026-08-05,p1,3,,,,\n2026-08-01,p3,4,40,,,\n').get('p1')!;
    expect(third).toMatchObject({
      grams: null,
      earlyGrams: null,
      ripeGrams: null,
      greenGrams: null,
      fruits: 9,
      fruitsWeightAssumed: 0,
    });
  });
  it('leaves the number unknown where a weight lacks it, and keeps the weight', () => {
    const own = of('2026-08-01,p1,6,300,,,\n2026-08-05,p1,,90,,,\n2026-08-01,p3,4,40,,,\n').get('p1')!;
    expect(own).toMatchObject({ grams: 390, fruits: null, ripeGrams: 390 });
  });
  it('takes the mean fruit only from pickings both counted and weighed', () => {
    // 6 fruits weigh 300; 90 g uncounted; one fruit unweighed: 50 g, not 65.
    const own = of('2026-08-01,p1,6,300,,,\n2026-08-05,p1,,90,,,\n2026-08-06,p1,1,,,,\n').get('p1')!;
    expect(own.grams).toBe(440);
    expect(own.fruitsWeightAssumed).toBe(1);
  });
  it('keeps ripe, green, early and culls apart', () => {
    const own = of(
      '2026-08-01,p1,6,300,,1,20\n2026-08-10,p1,2,80,green,,\n2026-08-11,p1,1,50,ripe,3,\n2026-08-01,p3,4,40,,,\n',
    );
    expect(own.get('p1')).toEqual({
      grams: 430,
      fruits: 9,
      earlyGrams: 380,
      ripeGrams: 350,
      greenGrams: 80,
      cullFruits: 4,
      cullGrams: 20,
      fruitsWeightAssumed: 0,
    });
    expect(own.get('p2')).toMatchObject({ grams: 0, fruits: 0, earlyGrams: 0 });
  });
  it('has no early yield where a picking lacks its date, or no day is set', () => {
    expect(of('2026-08-01,p1,6,300,,,\n,p1,2,80,,,\n').get('p1')).toMatchObject({ grams: 380, earlyGrams: null });
    const noDay = of(
      '2026-08-01,p1,6,300,,,\n',
      PLANTINGS,
      'seasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n',
    );
    expect(noDay.get('p1')).toMatchObject({ grams: 300, earlyGrams: null });
    expect(
      plantModel(
        seenIn(
          folder({
            plantings: PLANTINGS,
            harvests: `${HEADER}2026-08-01,p1,6,300,,,\n`,
            settings: 'seasons: {2026: {harvests: complete}}\n',
          }),
        ),
        'early_yield',
      ) !== undefined,
    ).toBe(false);
  });
  it('knows nothing of a planting that nothing was noted of, unless the season was recorded in full', () => {
    const open = 'seasons: {2026: {transplanted: 2026-05-20}}\n';
    const own = of('2026-08-01,p1,6,300,,,\n', PLANTINGS, open);
    expect([...own.keys()]).toEqual(['p1']);
    expect([...of('2026-08-01,p1,6,300,,,\n').keys()]).toEqual(['p1', 'p2', 'p3']);
  });
  it('takes a plant removed early as nothing, one removed with the season as unknown', () => {
    const open = 'seasons: {2026: {transplanted: 2026-05-20}}\n';
    const removed = (day: string, cause: string): readonly string[] => [
      ...of(
        '2026-08-01,p1,6,300,,,\n',
        `planting,variety,removed,cause\np1,one,,\np2,one,${day},${cause}\n`,
        open,
      ).keys(),
    ];
    expect(removed('2026-07-01', 'pest')).toEqual(['p1', 'p2']);
    expect(removed('2026-07-01', 'season-end')).toEqual(['p1']);
    expect(removed('2026-10-31', 'pest')).toEqual(['p1']);
  });
  it('has no yields without harvests, but those of totals.csv', () => {
    const events = { '2026/observations.csv': 'date,planting,event\n2026-07-01,p1,lost\n' };
    expect(seenIn(folder({ plantings: PLANTINGS, more: events })).yields.size).toBe(0);
    const totals: Folder = {
      'trial.yaml': SETTINGS,
      'varieties.csv': 'variety,class\none,a\ntwo,a\n',
      '2026/totals.csv': 'variety,plants,weight_g,fruits\none,4,1200,30\ntwo,3,,\n',
    };
    const own = seenIn(totals);
    expect([...own.yields.keys()]).toEqual(['one']);
    expect(plantModel(own, 'yield')!.estimates.get('one')).toMatchObject({ n: 1, estimate: 300 });
  });
  it('weighs plants side by side as partly alike', () => {
    expect(relativeVariance(1, 0.2)).toBe(1);
    expect(relativeVariance(4, 0.2)).toBeCloseTo(0.4, 15);
    expect(relativeVariance(4, 0)).toBe(0.25);
  });
});

describe('the first ripe fruit of a planting', () => {
  const HARVESTS = 'date,planting,fruits,weight_g,stage,unusable_fruits\n';
  const of = (events: string, harvests = '', plantings = PLANTINGS, settings = SEASON) =>
    ripenings(
      seenIn(
        folder({
          settings,
          plantings,
          harvests: HARVESTS + harvests,
          more: { '2026/observations.csv': `date,planting,event\n${events}` },
        }),
      ),
    );
  const brief = (list: ReturnType<typeof of>) =>
    list.map(({ unit, ripe, lastUnripe, watchedInCurve, watchedInModel }) => [
      unit.id,
      ripe,
      lastUnripe,
      watchedInCurve,
      watchedInModel,
    ]);

  it('is the earlier of the first ripe picking and the note; green fruit and culls do not count', () => {
    const list = of(
      '2026-07-29,p2,first-ripe\n2026-07-25,p3,first-flower\n',
      '2026-08-01,p1,3,,green,\n2026-08-02,p1,,,,2\n2026-08-04,p1,2,,,\n2026-08-09,p1,2,,,\n2026-08-05,p2,1,,,\n2026-08-06,p3,,40,,\n',
    );
    expect(brief(list)).toEqual([
      ['p1', 76, null, 164, 164],
      ['p2', 70, null, 164, 164],
      ['p3', 78, null, 164, 164],
    ]);
  });
  it('keeps the last look before it, not the first, and no look after it', () => {
    const list = of(
      '2026-07-20,p1,unripe\n2026-07-27,p1,unripe\n2026-07-24,p1,unripe\n2026-08-04,p2,unripe\n2026-08-06,p3,unripe\n2026-08-12,p3,unripe\n',
      '2026-08-03,p1,2,,,\n2026-08-04,p2,2,,,\n',
    );
    expect(list.map(({ ripe, lastUnripe }) => [ripe, lastUnripe])).toEqual([
      [75, 68],
      [76, null],
      [null, 84],
    ]);
  });
  it('watches to the end: a plant that died stays unripe in the curve, one lost by accident leaves', () => {
    const plantings =
      'planting,variety,removed,cause\np1,one,2026-07-01,disease\np2,one,2026-07-10,accident\np3,two,2026-12-24,frost\n';
    expect(brief(of('', '2026-08-03,p3,2,,,\n', plantings))).toEqual([
      ['p1', null, null, 164, 42],
      ['p2', null, null, 51, 51],
      ['p3', 75, null, 164, 164],
    ]);
    expect(brief(of('2026-07-01,p1,lost\n', '2026-08-03,p3,2,,,\n'))[0]).toEqual(['p1', null, null, 164, 42]);
    expect(
      brief(
        of(
          '2026-07-01,p1,lost\n',
          '2026-08-03,p3,2,,,\n',
          'planting,variety,removed,cause\np1,one,2026-06-30,pest\np3,two,,\n',
        ),
      )[0],
    ).toEqual(['p1', null, null, 164, 41]);
  });
  it('counts from the sowing where the settings say so, and leaves out what has no start', () => {
    const plantings = 'planting,variety,sown,transplanted\np1,one,2026-03-01,2026-05-20\np2,one,,2026-05-20\n';
    const list = of('', '2026-08-03,p1,2,,,\n2026-08-03,p2,2,,,\n', plantings, `first_ripe_from: sown\n${SEASON}`);
    expect(brief(list)).toEqual([['p1', 155, null, 244, 244]]);
  });
  it('frost and any other removal end the watch on their day, disease, pests and weakness do not', () => {
    for (const [cause, curve] of [
      ['frost', 135],
      ['other', 135],
      ['season-end', 135],
      ['accident', 135],
      ['disease', 164],
      ['pest', 164],
      ['weak', 164],
    ] as const)
      expect(
        brief(
          of('', '2026-08-03,p3,2,,,\n', `planting,variety,removed,cause\np1,one,2026-10-02,${cause}\np3,two,,\n`),
        )[0],
        cause,
      ).toEqual(['p1', null, null, curve, 135]);
  });
  it('is watched for without a table of harvests too, of every planting with any record', () => {
    const plantings = Array.from({ length: 16 }, (_, i) =>
      i < 9 ? `p${i},one,,` : i < 15 ? `p${i},one,2026-10-10,frost` : `p${i},one,,`,
    );
    const ripe = Array.from({ length: 9 }, (_, i) => `2026-08-${String(i + 10)},p${i},first-ripe`);
    const trial = folder({
      plantings: `planting,variety,removed,cause\n${plantings.join('\n')}\n`,
      more: { '2026/observations.csv': `date,planting,event\n${ripe.join('\n')}\n` },
    });
    const seen = seenIn(trial);
    const [varieties, ripening] = [seen.varieties, ripenings(seen)];
    // The last planting has no record at all: it is named, and its ripening is not known.
    expect(varieties[0]!.ripening).toMatchObject({ ripe: 9, unripe: 6, median: { n: 15 } });
    expect(ripening.filter((own) => own.ripe === null).map((own) => own.watchedInCurve)).toEqual(Array(6).fill(143));
    expect(check(trial).problems.map(({ code, found }) => [code, found])).toEqual([['ripening-not-recorded', 'p15']]);
  });
  it('is watched only in a season in which somebody looked', () => {
    const list = ripenings(
      seenIn(
        folder({
          plantings: PLANTINGS,
          more: { '2026/observations.csv': 'date,planting,event\n2026-07-29,p1,unripe\n2026-07-29,p2,first-flower\n' },
        }),
      ),
    );
    expect(list.map(({ unit }) => unit.id)).toEqual(['p1', 'p2']);
    const flowers = seenIn(
      folder({
        plantings: PLANTINGS,
        more: { '2026/observations.csv': 'date,planting,event\n2026-07-29,p2,first-flower\n' },
      }),
    );
    expect(ripenings(flowers)).toEqual([]);
    const totals = seenIn({
      'trial.yaml': SETTINGS,
      'varieties.csv': 'variety,class\none,a\ntwo,a\n',
      '2026/totals.csv':
        'variety,plants,weight_g,transplanted,first_ripe\none,4,1200,2026-05-20,2026-08-01\ntwo,3,900,2026-05-20,\n',
    });
    expect(ripenings(totals).map(({ unit, ripe }) => [unit.variety, ripe])).toEqual([['one', 73]]);
  });
  it('says why a median is missing', () => {
    const own = seenIn(folder({ plantings: PLANTINGS, harvests: `${HARVESTS}2026-08-03,p1,2,,,\n` })).varieties;
    expect(own[0]!.ripening).toMatchObject({ ripe: 1, unripe: 1, median: { n: 2 } });
    expect(own[1]!.ripening!.median).toEqual({ n: 1, estimate: null, low: null, high: null, reason: 'none-ripened' });
    const third = seenIn(
      folder({ plantings: 'planting,variety\np1,one\np2,one\np3,one\n', harvests: `${HARVESTS}2026-08-03,p1,2,,,\n` }),
    ).varieties[0]!;
    expect(third.ripening!.median).toMatchObject({ estimate: null, reason: 'fewer-than-half-ripened' });
  });
});

describe('the ripening model where the plants say too little', () => {
  const HARVESTS = 'date,planting,fruits\n';
  const model = (plantings: string, harvests: string, lookEvery = 0) =>
    ripeningModel(
      seenIn(
        folder({
          plantings,
          harvests: HARVESTS + harvests,
          settings: `seasons: {2026: {transplanted: 2026-05-20, harvests: complete, look_every: ${lookEvery}}}\n`,
        }),
      ),
    );

  it('is not there where nothing ripened', () => {
    expect(model(PLANTINGS, '')).toBeNull();
  });
  it('gives single plantings their day without an interval, unripe ones no day', () => {
    const own = model('planting,variety\np1,one\np3,two\n', '2026-08-03,p1,2\n')!;
    expect(own).toMatchObject({ residualDf: 0, dispersion: null, classes: [] });
    expect(own.estimates.get('one')).toEqual({
      n: 1,
      estimate: expect.closeTo(75, 9),
      low: null,
      high: null,
      reason: 'no-residual-df',
    });
    expect(own.estimates.get('two')).toEqual({ n: 1, estimate: null, low: null, high: null, reason: 'none-ripened' });
  });
  it('gives plantings ripe on one day that day, as the geometric mean, without a spread', () => {
    const own = model(PLANTINGS, '2026-08-03,p1,2\n2026-08-03,p2,2\n2026-08-09,p3,2\n')!;
    expect(own.residualDf).toBe(1);
    expect(own.estimates.get('one')).toEqual({
      n: 2,
      estimate: expect.closeTo(75, 9),
      low: null,
      high: null,
      reason: 'no-spread',
    });
    expect(own.f.size).toBe(0);
  });
  it('gives plantings that differ by less than the looks the interval that these allow', () => {
    const own = model(
      'planting,variety\np1,one\np2,one\np3,two\np4,two\n',
      '2026-08-03,p1,2\n2026-08-05,p2,2\n2026-08-24,p3,2\n2026-08-26,p4,2\n',
      7,
    )!;
    // Ripe 75 and 77 days after planting out, looked at every 7: both between 70 and 75.
    expect(own.estimates.get('one')).toEqual({
      n: 2,
      estimate: expect.closeTo(Math.sqrt(70 * 75), 9),
      low: 70,
      high: 75,
      reason: null,
    });
    expect(own.estimates.get('two')).toMatchObject({ low: 91, high: 96 });
    expect(own.dispersion).toBeNull();
    const { varieties, estimates, covariance } = own.classes[0]!;
    expect(varieties).toEqual(['one', 'two']);
    // Half the interval is t(0.975, 2) = 4.3027 standard errors.
    expect(Math.exp(estimates[0]! + 4.302653 * Math.sqrt(covariance[0]![0]!))).toBeCloseTo(75, 4);
  });
  it('counts a fruit ripe on the day of planting out as half a day', () => {
    const own = model('planting,variety\np1,one\np2,two\n', '2026-05-20,p1,2\n2026-08-03,p2,2\n')!;
    expect(own.estimates.get('one')!.estimate).toBeCloseTo(0.5, 12);
  });
});

describe('measures', () => {
  it('averages the fruits of a planting, and those measured under the name of a variety', () => {
    const seen = seenIn(
      folder({
        plantings: 'planting,variety,block,stands_in\np1,one,n,pot\np2,one,s,bed\np3,two,n,bed\np4,two,s,bed\n',
        more: {
          '2026/measurements.csv':
            'date,planting,variety,length_cm,rot_mm\n2026-08-01,p1,,10,\n2026-08-01,p1,,13,2\n2026-08-01,,two,7,\n2026-08-02,,two,9,\n2026-08-02,p2,,,4\n',
        },
      }),
    );
    const units = measureUnits(seen.season, 'length', (id) => `class of ${id}`);
    expect(
      units.map(({ planting, classId, y, plants }) => [
        planting.id,
        planting.variety,
        planting.block,
        planting.standsIn,
        classId,
        y,
        plants,
      ]),
    ).toEqual([
      ['p1', 'one', 'n', 'pot', 'class of one', 11.5, 1],
      ['two*', 'two', null, null, 'class of two', 8, 1],
    ]);
    expect(measureUnits(seen.season, 'rot', () => 'a').map(({ planting, y }) => [planting.id, y])).toEqual([
      ['p1', 2],
      ['p2', 4],
    ]);
    expect(measureUnits(seen.season, 'wall', () => 'a')).toEqual([]);
  });
  it('takes a measure out of totals', () => {
    const seen = seenIn({
      'trial.yaml': SETTINGS,
      'varieties.csv': 'variety,class\none,a\ntwo,a\n',
      '2026/totals.csv': 'variety,plants,length_cm,flavour\none,4,12,7\ntwo,3,,5\n',
    });
    expect(plantModel(seen, 'length')!.estimates.get('one')).toMatchObject({
      n: 1,
      estimate: 12,
      reason: 'no-residual-df',
    });
    expect(plantModel(seen, 'length')!.estimates.size).toBe(1);
    expect(ratingModel(seen, 'flavour')!.estimates.get('two')).toEqual({
      n: 1,
      tasters: 1,
      estimate: 5,
      low: null,
      high: null,
      reason: 'one-taster',
    });
    expect(ratingModel(seen, 'bitter') !== undefined).toBe(false);
    expect(ratingModel(seen, 'flavour')).toMatchObject({
      method: 'mean',
      tasters: 1,
      residualDf: 0,
      means: null,
      kendallW: null,
      dispersion: null,
    });
  });
});

describe('ratings', () => {
  const rated = (rows: readonly string[], trait = 'flavour', varieties = 'variety,class\none,a\ntwo,a\nthree,a\n') =>
    ratingModel(
      seenIn(
        folder({
          varieties,
          plantings: 'planting,variety\np1,one\np2,two\np3,three\n',
          more: {
            '2026/ratings.csv': `date,taster,variety,${trait}\n${rows.map((row) => `2026-09-${row}`).join('\n')}\n`,
          },
        }),
      ),
      trait,
    )!;

  it('of one taster take the date in the taster’s place, where dates and varieties hang together', () => {
    // Two evenings, the second 2 points kinder: least squares gives 5, 6, 8 less nothing: means over both evenings.
    const own = rated(['01,Ada,one,4', '01,Ada,two,6', '08,Ada,two,8', '08,Ada,three,9', '08,Ada,one,6']);
    expect(own).toMatchObject({ method: 'additive', tasters: 1, residualDf: 1, kendallW: null });
    expect([...own.estimates].map(([id, { estimate, n, tasters }]) => [id, estimate, n, tasters])).toEqual([
      ['one', expect.closeTo(5, 10), 2, 1],
      ['two', expect.closeTo(7, 10), 2, 1],
      ['three', expect.closeTo(8, 10), 1, 1],
    ]);
    expect([...own.estimates.values()].map(({ reason }) => reason)).toEqual(['no-spread', 'no-spread', 'no-spread']);
  });
  it('of one taster on evenings apart are plain means', () => {
    const own = rated(['01,Ada,one,4', '01,Ada,one,5', '08,Ada,two,8', '08,Ada,three,9']);
    expect(own.method).toBe('mean');
    expect([...own.estimates].map(([id, one]) => [id, one.estimate, one.reason])).toEqual([
      ['one', 4.5, 'one-taster'],
      ['two', 8, 'one-taster'],
      ['three', 9, 'one-taster'],
    ]);
  });
  it('of tasters who share no variety have no estimate', () => {
    const own = rated(['01,Ada,one,4', '01,Ben,two,6', '01,Ben,three,6']);
    expect(own).toMatchObject({ method: 'additive', tasters: 2, residualDf: 0, dispersion: null, means: null });
    expect(own.estimates.get('two')).toEqual({
      n: 1,
      tasters: 1,
      estimate: null,
      low: null,
      high: null,
      reason: 'not-connected',
    });
  });
  it('know a taster by name whatever its case, and average what one taster said twice', () => {
    const own = rated([
      '01,Ada,one,4',
      '02,ada,one,6',
      '01,Ben,one,7',
      '01,Ada,two,6',
      '01,Ben,two,9',
      '01,Ada,three,2',
      '01,Ben,three,5',
    ]);
    expect(own.tasters).toBe(2);
    expect(own.estimates.get('one')).toMatchObject({ n: 2, tasters: 2, estimate: expect.closeTo(6, 10) });
  });
  it('of one row of cells have no residual df', () => {
    const own = rated(['01,Ada,one,4', '01,Ben,one,6', '01,Ben,two,6']);
    expect(own.residualDf).toBe(0);
    expect(own.estimates.get('one')).toMatchObject({
      estimate: expect.closeTo(5, 10),
      low: null,
      reason: 'no-residual-df',
    });
  });
  it('cuts an interval to the scale', () => {
    const own = rated([
      '01,Ada,one,9',
      '01,Ben,one,9',
      '01,Ada,two,1',
      '01,Ben,two,2',
      '01,Ada,three,4',
      '01,Ben,three,1',
    ]);
    expect(own.estimates.get('one')!.high).toBe(9);
    expect(own.estimates.get('two')!.low).toBe(1);
    expect(own.estimates.get('three')!.low).toBe(1);
  });
  it('letters the lowest first where lower is better', () => {
    const rows = ['Ada', 'Ben', 'Cleo', 'Dov'].flatMap((taster, i) => [
      `01,${taster},one,${8 - (i % 2)}`,
      `01,${taster},two,${1 + (i % 2)}`,
      `01,${taster},three,${2 - (i % 2)}`,
    ]);
    const compared = (trait: string) =>
      comparedIn(
        folder({
          varieties: 'variety,class\none,a\ntwo,a\nthree,a\n',
          plantings: 'planting,variety\np1,one\np2,two\np3,three\n',
          more: {
            '2026/ratings.csv': `date,taster,variety,${trait}\n${rows.map((row) => `2026-09-${row}`).join('\n')}\n`,
          },
        }),
      )
        .get(trait)!
        .get('a')!;
    expect(Object.fromEntries(compared('bitter').letters)).toEqual({ one: 'b', two: 'a', three: 'a' });
    expect(Object.fromEntries(compared('flavour').letters)).toEqual({ one: 'a', two: 'b', three: 'b' });
    // Additive scores: a difference, not a ratio, of the means 7.5 and 1.5.
    const { againstCheck } = compared('flavour');
    expect(againstCheck!.varieties.map(({ variety, estimate }) => [variety, Math.round(estimate * 1e9) / 1e9])).toEqual(
      [
        ['two', -6],
        ['three', -6],
      ],
    );
  });
});

describe('the least significant difference', () => {
  const lsd = (two: number, plants = '1', settings = 'classes:\n  a: {scale: difference}\n') => {
    const rows = [1, 2, 3].flatMap((i) => [`a${i},one,1`, `b${i},two,${i === 3 ? plants : 1}`]);
    const grams = (row: string): number => {
      const [id, variety, n] = row.split(',') as [string, string, string];
      return Number(n) * ((variety === 'one' ? 500 : two) + [0, 30, 60][Number(id.slice(1)) - 1]!);
    };
    return plantModel(
      seenIn({
        'trial.yaml': `title: LSD\n${settings}spot_correlation: 0\n${SEASON}`,
        'varieties.csv': 'variety,class\none,a\ntwo,a\n',
        '2026/plantings.csv': `planting,variety,plants\n${rows.join('\n')}\n`,
        '2026/harvests.csv': `date,planting,weight_g\n${rows.map((row) => `2026-08-01,${row.split(',')[0]},${grams(row)}`).join('\n')}\n`,
      }),
      'yield',
    )!;
  };
  it('is t √(2 MS / r) where every variety has as many plantings and F is significant', () => {
    // Mean square 900 on 4 df; t by R, qt(0.975, 4).
    expect(lsd(900).lsd.get('a')).toBeCloseTo(2.776445105198 * Math.sqrt(600), 6);
  });
  it('is left out where F is not significant, or plantings differ in their plants', () => {
    expect(lsd(510).f.get('a')!.p).toBeGreaterThan(0.05);
    expect(lsd(510).lsd.get('a')).toBeNull();
    expect(lsd(900, '2').f.get('a')!.p).toBeLessThan(0.05);
    expect(lsd(900, '2').lsd.get('a')).toBeNull();
  });
  it('is not there on the ratio scale', () => {
    expect(lsd(900, '1', 'classes:\n  a: {}\n').lsd.get('a')).toBeNull();
  });
});

describe('what is known of ripening', () => {
  const ripening = (harvests: string, more: Folder = {}) =>
    ripenings(
      seenIn(
        folder({
          settings: 'seasons: {2026: {transplanted: 2026-05-20}}\n',
          plantings: PLANTINGS,
          harvests: `date,planting,fruits,weight_g,stage\n2026-08-01,p1,4,300,ripe\n${harvests}`,
          more,
        }),
      ),
    ).map(({ unit, ripe }) => [unit.id, ripe]);
  it('is nothing of a planting without any record', () => {
    expect(ripening('')).toEqual([['p1', 73]]);
  });
  it('is nothing of ripe fruit without a date; green fruit was seen unripe', () => {
    expect(ripening(',p2,5,400,ripe\n2026-08-03,p3,2,100,green\n')).toEqual([
      ['p1', 73],
      ['p3', null],
    ]);
    expect(ripening(',p2,5,400,ripe\n2026-08-09,p2,5,400,ripe\n')).toEqual([
      ['p1', 73],
      ['p2', 81],
    ]);
  });
  it('is that it was unripe where it was looked at, lost, or every picking was recorded', () => {
    const events = { '2026/observations.csv': 'date,planting,event\n2026-08-09,p2,unripe\n2026-07-01,p3,lost\n' };
    expect(ripening('', events)).toEqual([
      ['p1', 73],
      ['p2', null],
      ['p3', null],
    ]);
    const dated = { '2026/observations.csv': 'date,planting,event\n2026-08-05,p2,first-ripe\n' };
    expect(ripening(',p2,5,400,ripe\n', dated)).toEqual([
      ['p1', 73],
      ['p2', 77],
    ]);
  });
});

describe('how plantings stand', () => {
  const layout = (
    rows: readonly string[],
    settings = 'seasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n',
  ) =>
    plantModel(
      seenIn(
        folder({
          settings,
          plantings: `planting,variety,bed,row,column\n${rows.join('\n')}\n`,
          harvests: `date,planting,weight_g\n${rows.map((row, i) => `2026-08-01,${row.split(',')[0]},${100 + 7 * i * i}`).join('\n')}\n`,
        }),
      ),
      'yield',
    )!.layouts.get('a');

  it('is spread where no two of a variety stand beside each other', () => {
    expect(layout(['p1,one,x,1,1', 'p2,two,x,1,2', 'p3,one,x,1,3', 'p4,two,x,2,1'])).toBe('spread');
    expect(layout(['p1,one,x,1,1', 'p2,two,x,1,2', 'p3,one,x,2,2', 'p4,two,x,3,3'])).toBe('spread');
  });
  it('is together where two do, along a row or down a column', () => {
    expect(layout(['p1,one,x,1,1', 'p2,one,x,1,2', 'p3,two,x,1,4', 'p4,two,x,1,6'])).toBe('together');
    expect(layout(['p1,one,x,1,1', 'p2,two,x,1,3', 'p3,one,x,2,1', 'p4,two,x,1,6'])).toBe('together');
  });
  it('does not count neighbours in other beds', () => {
    expect(layout(['p1,one,x,1,1', 'p2,one,y,1,2', 'p3,two,x,1,4', 'p4,two,x,1,6'])).toBe('spread');
  });
  it('is together where a place is missing or nothing can be compared', () => {
    expect(layout(['p1,one,x,1,1', 'p2,one,x,,3', 'p3,two,x,1,5', 'p4,two,x,1,7'])).toBe('together');
    expect(layout(['p1,one,x,1,1', 'p2,one,x,3,', 'p3,two,x,1,5', 'p4,two,x,1,7'])).toBe('together');
    expect(layout(['p1,one,x,1,1', 'p3,two,x,1,5'])).toBe('together');
  });
  /** Two classes of two varieties, two plantings each; class a in two blocks. */
  const blocked = (blockOfB: string, season = SEASON) => {
    const rows = ['one', 'two', 'three', 'four'].flatMap((id, v) =>
      [1, 2].map((i) => `${id}${i},${id},${v < 2 ? `north ${i}` : blockOfB}`),
    );
    return seenIn({
      'trial.yaml': `title: Blocks\nclasses:\n  a: {}\n  b: {}\n${season}`,
      'varieties.csv': 'variety,class\none,a\ntwo,a\nthree,b\nfour,b\n',
      '2026/plantings.csv': `planting,variety,block\n${rows.join('\n')}\n`,
      '2026/harvests.csv': `date,planting,fruits,weight_g\n${rows.map((row, i) => `2026-08-0${1 + i},${row.split(',')[0]},${3 + i},${100 + 7 * i * i}`).join('\n')}\n`,
    });
  };
  it('is told class by class: blocks count where a class has two and more', () => {
    const seen = blocked('south');
    const model = plantModel(seen, 'yield')!;
    expect(model.factor).toBe('block');
    for (const { layouts } of [model, ripeningModel(seen)!])
      expect([...layouts]).toEqual([
        ['a', 'spread'],
        ['b', 'together'],
      ]);
    // Together, se² is 1 + 2·0.2/0.8 = 1.5 times what it is where plants are spread.
    const spread = 'seasons: {2026: {transplanted: 2026-05-20, harvests: complete, layout: spread}}\n';
    const plain = plantModel(blocked('south', spread), 'yield')!;
    [1, 1.5].forEach((factor, c) =>
      expect(model.classes[c]!.covariance[0]![0]! / plain.classes[c]!.covariance[0]![0]!).toBeCloseTo(factor, 12),
    );
  });
  it('counts the blocks of a class though another class has none', () => {
    const model = plantModel(blocked(''), 'yield')!;
    expect(model.factor).toBe('none');
    expect([...model.layouts.values()]).toEqual(['spread', 'together']);
  });
  it('is what the settings say before all', () => {
    const set = (word: string) => `seasons: {2026: {transplanted: 2026-05-20, harvests: complete, layout: ${word}}}\n`;
    expect(layout(['p1,one,x,1,1', 'p2,one,x,1,9'], set('together'))).toBe('together');
    expect(layout(['p1,one,x,1,1', 'p2,one,x,1,2'], set('spread'))).toBe('spread');
  });
});

describe('degree days', () => {
  const settings = (method: 1 | 2, capC: number | null = 30) => ({ baseC: 10, capC, method });
  // McMaster & Wilhelm (1997): method 1 compares the mean with the base, method 2 each temperature before.
  it('sets a cold night to the base in method 2 alone', () => {
    expect(degreeDaysOf(4, 20, settings(1))).toBe(2);
    expect(degreeDaysOf(4, 20, settings(2))).toBe(5);
    expect(degreeDaysOf(2, 8, settings(1))).toBe(0);
    expect(degreeDaysOf(2, 8, settings(2))).toBe(0);
  });
  it('caps the mean in method 1, each temperature in method 2, and nothing without a cap', () => {
    expect(degreeDaysOf(20, 36, settings(1))).toBe(18);
    expect(degreeDaysOf(20, 36, settings(2))).toBe(15);
    expect(degreeDaysOf(28, 38, settings(1))).toBe(20);
    expect(degreeDaysOf(20, 36, settings(2, null))).toBe(18);
    expect(degreeDaysOf(32, 38, settings(1, null))).toBe(25);
  });
  const days = (list: readonly (readonly [number, number])[]) =>
    list.map(([day, tmaxC]) => ({ day: day as Day, tminC: 10, tmaxC, rainMm: null, soilC: null }));
  it('adds from the first day to the last, the last not counted', () => {
    const clock = degreeDayClock(
      days([
        [1, 12],
        [2, 14],
        [3, 16],
      ]),
      settings(2),
    )!;
    expect([clock(1, 3), clock(1, 4), clock(2, 2), clock(0, 2), clock(2, 5)]).toEqual([3, 6, 0, null, null]);
  });
  it('bridges three days without weather in a straight line, not four', () => {
    const clock = (to: number) =>
      degreeDayClock(
        days([
          [1, 12],
          [to, 20],
        ]),
        settings(2),
      )!;
    expect(clock(5)(1, 6)).toBeCloseTo(1 + 2 + 3 + 4 + 5, 12);
    expect(clock(3)(2, 3)).toBeCloseTo(3, 12);
    expect(clock(6)(1, 3)).toBeNull();
    expect(clock(6)(6, 7)).toBe(5);
  });
  it('has no clock without weather', () => {
    expect(degreeDayClock([], settings(2))).toBeNull();
  });
  it('has no curve in degree days where the weather does not reach', () => {
    const weather = (from: number, to: number): string =>
      `date,tmin_c,tmax_c\n${Array.from({ length: to - from }, (_, i) => `${new Date(Date.UTC(2026, 4, from + i)).toISOString().slice(0, 10)},10,20`).join('\n')}\n`;
    const own = (text: string) =>
      seenIn(
        folder({
          plantings: PLANTINGS,
          harvests: 'date,planting,fruits\n2026-06-09,p1,2\n2026-06-19,p2,2\n',
          more: { '2026/weather.csv': text },
        }),
      ).varieties.map(({ ripeningDegreeDays }) => ripeningDegreeDays?.median.estimate ?? null);
    // 20 and 30 days at 5 degree days each: S is 1/2 from 100 to 150, its middle; the second variety never ripens.
    expect(own(weather(20, 220))).toEqual([125, null]);
    expect(own(weather(20, 60))).toEqual([125, null]);
    expect(own(weather(20, 45))).toEqual([null, null]);
    expect(own(weather(25, 220))).toEqual([null, null]);
  });
});

describe('a season as a whole', () => {
  it('calls new what was first grown this year, by the list or by the seasons on file', () => {
    const seen = seenIn({
      'trial.yaml': `${SETTINGS}seasons: {2025: {transplanted: 2025-05-20}, 2026: {transplanted: 2026-05-20}}\n`,
      'varieties.csv': 'variety,class,first_grown\none,a,\ntwo,a,2024\nthree,a,\nfour,a,2026\nfive,a,\n',
      '2025/plantings.csv': 'planting,variety\np1,one\n',
      '2026/plantings.csv':
        'planting,variety,plants,removed,cause\np1,one,2,,\np2,two,1,2026-07-01,accident\np3,three,3,,\np4,four,1,,\np5,three,1,,\n',
    });
    expect(
      seen.varieties.map((own) => [own.variety.id, own.status, own.plantsSetOut, own.plantings, own.plantingsExcluded]),
    ).toEqual([
      ['one', 'returning', 2, 1, 0],
      ['two', 'returning', 1, 1, 1],
      ['three', 'new', 4, 2, 0],
      ['four', 'new', 1, 1, 0],
    ]);
    expect(ripeningModel(seen)).toBeNull();
    expect(plantModels(seen).map(([key]) => key)).toEqual([]);
    expect(seen.varieties.map(({ ripening, ripeningDegreeDays }) => [ripening, ripeningDegreeDays])).toEqual(
      seen.varieties.map(() => [null, null]),
    );
  });
  it('counts cropped and ripe only over single plants that were not lost by accident', () => {
    const { shares } = seenIn(
      folder({
        plantings:
          'planting,variety,plants,removed,cause\np1,one,1,,\np2,one,1,2026-07-01,pest\np3,one,4,,\np4,one,1,2026-07-01,accident\n',
        harvests: 'date,planting,fruits,weight_g\n2026-08-01,p1,,30\n2026-08-01,p3,9,900\n',
      }),
    ).varieties[0]!;
    expect(shares.cropped).toMatchObject({ k: 1, n: 2 });
    expect(shares.ripe_by_end).toMatchObject({ k: 1, n: 2 });
    expect(Object.keys(shares)).toEqual(['cropped', 'ripe_by_end']);
  });
  it('adds up what was counted hot or off-type, of so many', () => {
    const { shares } = seenIn(
      folder({
        plantings: PLANTINGS,
        more: {
          '2026/observations.csv':
            'date,planting,event,count,of\n2026-08-01,p1,hot,2,10\n2026-08-02,p2,hot,1,5\n2026-08-02,p3,hot,4,4\n2026-08-03,p1,first-set,3,9\n2026-08-04,p2,off-type,,\n',
        },
      }),
    ).varieties[0]!;
    expect(shares.hot).toMatchObject({ k: 3, n: 15 });
    expect(shares.off_type).toMatchObject({ k: 1, n: 1 });
  });
});
