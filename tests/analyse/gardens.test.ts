import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plantModel, ratioModel, ratingModel, ripeningModel, answersTo } from '../../src/analyse/traitsSeen.ts';
import { clubSeen } from '../../src/analyse/club/clubSeen.ts';
import { memberSheet } from '../../src/present/memberSheet.ts';
import { isoDate } from '../../src/terms/day.ts';
import { returnsOf } from '../../src/analyse/club/returns.ts';
import { reference, referenceRows } from '../reference/read.ts';
import { check, codes, comparedIn, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const close = (value: number, expected: number, relative: number): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

const o1 = (path: string): string =>
  readFileSync(new URL(`../reference/gardens/o1_meat_gardens/data/${path}`, import.meta.url), 'utf8');

describe('o1 as a trial folder: from the sheet to estimates, F and the table of differences', () => {
  const { difference, ratio } = reference('gardens/o1_meat_gardens');
  const folder: Folder = {
    'trial.yaml': o1('trial.yaml'),
    'varieties.csv': o1('varieties.csv'),
    '2026/season.csv': o1('2026/season.csv'),
  };
  it.each([
    ['ratio', ratio, 'estimate'],
    ['difference', difference, 'mean'],
  ] as const)('%s', (scale, results, figure) => {
    const own = { ...folder, 'trial.yaml': folder['trial.yaml']!.replace('scale: ratio', `scale: ${scale}`) };
    const model = plantModel(seenIn(own), 'yield')!;
    expect(model.factor).toBe('garden');
    expect(model.residualDf).toBe(results.residual_df);
    for (const expected of results.varieties) {
      const { estimate, low, high, n } = model.estimates.get(expected.variety)!;
      expect(n).toBe(5);
      close(estimate!, expected[figure], 1e-8);
      if (scale === 'ratio') {
        close(low!, expected.low, 1e-8);
        close(high!, expected.high, 1e-8);
      }
    }
    if (scale === 'difference') close(model.f.get('all')!.value, difference.f.value, 1e-8);
  });
  it('the order of rows changes nothing', () => {
    const [header = '', ...rows] = folder['2026/season.csv']!.trim().split('\n');
    const turned = { ...folder, '2026/season.csv': [header, ...rows.toReversed()].join('\n') };
    const estimates = (own: Folder) => [...plantModel(seenIn(own), 'yield')!.estimates].toSorted();
    for (const [i, [id, { estimate }]] of estimates(turned).entries()) {
      expect(id).toBe(estimates(folder)[i]![0]);
      close(estimate!, estimates(folder)[i]![1].estimate!, 1e-10);
    }
  });
  it('members’ sheets give what one table gives', () => {
    const sheets: Record<string, string> = {};
    for (const row of referenceRows('gardens/o1_meat_gardens')) {
      const path = `2026/gardens/${row['garden']}.csv`;
      sheets[path] =
        `${sheets[path] ?? 'variety,plants,weight_g\n'}${row['variety']},${row['plants']},${row['weight_g']}\n`;
    }
    const { '2026/season.csv': _, ...rest } = folder;
    const model = (own: Folder) => plantModel(seenIn(own), 'yield')!;
    const [a, b] = [model({ ...rest, ...sheets }), model(folder)];
    for (const [id, { estimate }] of b.estimates) close(a.estimates.get(id)!.estimate!, estimate!, 1e-10);
    close(a.dispersion!, b.dispersion!, 1e-9);
  });
  it('a garden with one variety more changes no contrast', () => {
    const more = { ...folder, '2026/season.csv': `${folder['2026/season.csv']!.trim()}\ng99,s00,3,400\n` };
    const [a, b] = [ratioModel(seenIn(more), 'yield')!, ratioModel(seenIn(folder), 'yield')!];
    expect(a.leftOut!.get('all')).toEqual({ lone: 1, empty: 0 });
    for (const [id, { estimate }] of b.estimates) close(a.estimates.get(id)!.estimate!, estimate!, 1e-10);
  });
});

describe('o6 as a trial folder: two parts', () => {
  const results = reference('gardens/o6_parts');
  const rows = referenceRows('gardens/o6_parts').map(
    (row) => `${row['garden']},${row['variety']},${row['plants']},${row['weight_g']}`,
  );
  const folder: Folder = {
    'trial.yaml': 'title: Parts\ngarden_correlation: 0\nclasses: {all: {name: All, check_variety: m}}\n',
    'varieties.csv': 'variety,first_grown\nm,2020\np,2020\ns,2026\nt,2020\nv,2026\n',
    '2026/season.csv': `garden,variety,plants,weight_g\n${rows.join('\n')}\n`,
  };
  it('one dispersion, nothing compared across', () => {
    const model = ratioModel(seenIn(folder), 'yield')!;
    expect(model.residualDf).toBe(results.residual_df);
    // Two plants each, uncorrelated: the dispersion of a plant is twice that of the garden's mean.
    close(model.dispersion!, 2 * results.dispersion, 1e-7);
    expect(model.parts!.get('all')).toEqual(results.parts);
    const { letters, againstCheck, newAgainstReturning } = comparedIn(folder).get('yield')!.get('all')!;
    expect(againstCheck!.varieties.map(({ variety }) => variety).toSorted()).toEqual(['p', 's']);
    expect([...letters].filter(([, own]) => own.startsWith('2')).map(([id]) => id)).toEqual(['t', 'v']);
    const log = (a: string, b: string): number =>
      Math.log(model.estimates.get(a)!.estimate! / model.estimates.get(b)!.estimate!);
    close(log('s', 'm'), results.part_1.log_ratio_to_first.varietys, 1e-7);
    close(log('v', 't'), results.part_2.log_ratio_to_first.varietyv, 1e-7);
    const { varietys: s, varietyp: p } = results.part_1.log_ratio_to_first;
    close(newAgainstReturning!.estimate, Math.exp(s - p / 2), 1e-7);
  });
});

describe('members’ sheets', () => {
  const base: Folder = {
    'trial.yaml': 'title: Club\ngardens: {least: 3}\ntraits: {taste: {kind: rating, from: 1, to: 9, better: higher}}\n',
    'varieties.csv': 'variety\na\nb\nc\n',
    'gardens.csv': 'garden,region,setting\ng01,hill,open\ng02,hill,cover\ng03,dale,open\n',
  };
  const sheet = (...rows: string[]): string => `variety,plants,weight_g,first_ripe,taste,again\n${rows.join('\n')}\n`;
  const sheets: Folder = {
    ...base,
    '2026/gardens/g01.csv': sheet('a,2,1000,2026-08-01,7,yes', 'b,2,800,2026-08-08,5,no', 'c,2,900,2026-08-11,6,yes'),
    '2026/gardens/g02.csv': sheet('a,3,2400,2026-07-20,8,yes', 'b,3,1500,2026-07-29,6,no'),
    '2026/gardens/g03.csv': sheet('b,1,300,2026-08-15,4,yes', 'c,1,380,2026-08-20,6,yes', 'a,1,420,2026-08-05,6,yes'),
  };
  it('yield, days, ratings and shares over gardens', () => {
    const withStart = {
      ...sheets,
      'trial.yaml': `${sheets['trial.yaml']}seasons: {2026: {transplanted: 2026-05-20}}\n`,
    };
    const seen = seenIn(withStart);
    expect(seen.season.gardens).toEqual(['g01', 'g02', 'g03']);
    expect(ratioModel(seen, 'yield')!.residualDf).toBe(8 - 3 - 3 + 1);
    expect(ripeningModel(seen)!.estimates.get('a')!.estimate!).toBeLessThan(
      ripeningModel(seen)!.estimates.get('b')!.estimate!,
    );
    expect(ratingModel(seen, 'taste')!.tasters).toBe(3);
    expect(answersTo(seen, 'again')!.get('b')).toMatchObject({ k: 1, n: 3 });
    expect(seen.varieties.find(({ variety }) => variety.id === 'a')!.shares.ripe_by_end).toMatchObject({ k: 3, n: 3 });
  });
  it('full records of a garden join the sheets, its plants one unit', () => {
    const full = {
      ...sheets,
      '2026/gardens/g03.csv': sheet('b,1,300,2026-08-15,4,yes', 'c,1,380,2026-08-20,6,yes'),
      '2026/plantings.csv': 'planting,variety,garden\np1,a,\np2,a,\np3,b,\np1,c,g03\n',
      '2026/harvests.csv':
        'date,planting,garden,weight_g\n2026-08-01,p1,,200\n2026-08-03,p2,,300\n2026-08-03,p3,,250\n2026-08-09,p1,g03,310\n',
    };
    const { problems } = check(full);
    // c stands in g03's sheet and in plantings.csv.
    expect(problems.map(({ code }) => code)).toContain('garden-twice');
    const sound = {
      ...full,
      '2026/plantings.csv': 'planting,variety\np1,a\np2,a\np3,b\n',
      '2026/harvests.csv': 'date,planting,weight_g\n2026-08-01,p1,200\n2026-08-03,p2,300\n2026-08-03,p3,250\n',
    };
    const seen = seenIn(sound);
    expect(seen.season.gardens).toEqual(['g01', 'g02', 'g03', 'home']);
    const home = seen.season.yieldUnits.filter(({ garden }) => garden === 'home');
    expect(home.map(({ variety, plants }) => [variety, plants])).toEqual([
      ['a', 2],
      ['b', 1],
    ]);
    expect(seen.yields.get(home[0]!.id)!.grams).toBe(500);
  });
  it.each([
    [
      'a code that is not listed',
      { '2026/gardens/g71.csv': sheet('a,1,5,,,', 'b,1,6,,,') },
      'garden-unknown 2026/gardens/g71.csv:-:-',
    ],
    [
      'a garden column with one',
      { '2026/season.csv': 'garden,variety,plants,weight_g\ng13,a,1,5\n' },
      'garden-unknown 2026/season.csv:2:1',
    ],
    [
      'a person’s column',
      { '2026/gardens/g03.csv': 'variety,plants,weight_g,e-mail\na,1,5,x@y.example\nb,1,5,x@y.example\n' },
      'garden-person 2026/gardens/g03.csv:1:25',
    ],
    ['a place', { 'gardens.csv': 'garden,postcode\ng01,AB1 2CD\n' }, 'garden-person gardens.csv:1:8'],
    [
      'a name for a code',
      { '2026/gardens/Ann Miller.csv': sheet('a,1,5,,,', 'b,1,6,,,') },
      'garden-not-a-code 2026/gardens/Ann Miller.csv:-:-',
    ],
    ['a garden listed twice', { 'gardens.csv': 'garden\ng01\ng02\ng03\nG01\n' }, 'garden-listed-twice gardens.csv:5:1'],
    [
      'two sheets alike',
      { '2026/gardens/g02.csv': sheets['2026/gardens/g01.csv']! },
      'sheets-alike 2026/gardens/g02.csv:2:1',
    ],
    [
      'two places for one garden',
      { '2026/season.csv': 'garden,variety,plants,weight_g\ng01,a,1,5\n' },
      'garden-twice 2026/season.csv:2:5',
    ],
  ])('%s', (_, files, expected) => {
    const found = codes({ ...sheets, ...files });
    expect(found.join('\n')).toContain(expected);
  });
  it('no value of a person’s column is told again', () => {
    const { problems } = check({
      ...sheets,
      'gardens.csv': 'garden,e-mail\ng01,ann@post.example\n',
    });
    expect(JSON.stringify(problems)).not.toContain('ann@post.example');
  });
});

describe('o7: n of n sent (Wilson 1927, Manski 1989)', () => {
  it.each(reference('gardens/o7_returns').rows as readonly Record<string, number>[])('%o', (row) => {
    const { again, outer } = returnsOf(row['sent']!, row['received']!, row['again_yes']!, row['received']!, 0.95);
    expect(again!.low).toBeCloseTo(row['low']!, 9);
    expect(again!.high).toBeCloseTo(row['high']!, 9);
    const isEnough = row['received']! >= 0.8 * row['sent']!;
    expect(outer).toEqual(
      isEnough
        ? null
        : [expect.closeTo(row['if_all_silent_say_no']!, 9), expect.closeTo(row['if_all_silent_say_yes']!, 9)],
    );
  });
});

describe('a club of which little can be told', () => {
  const base = (rows: readonly string[], more: Folder = {}): Folder => ({
    'trial.yaml':
      'title: Club\ntraits: {taste: {kind: rating, from: 1, to: 9, better: higher}}\nseasons: {2026: {transplanted: 2026-05-20}}\n',
    'varieties.csv': 'variety\na\nb\nc\nd\n',
    '2026/season.csv': `garden,variety,plants,weight_g,first_ripe,taste,again\n${rows.join('\n')}\n`,
    ...more,
  });
  it('zeros that leave a fit without a maximum: no figure in place of a crash', () => {
    const rows = [
      'g1,a,1,0,,,',
      'g1,b,1,500,,,',
      'g2,a,1,300,,,',
      'g2,c,1,600,,,',
      'g3,c,1,0,,,',
      'g3,b,1,400,,,',
      'g3,d,1,0,,,',
      'g4,d,1,50,,,',
      'g4,a,1,0,,,',
    ];
    const { estimates } = ratioModel(seenIn(base(rows)), 'yield')!;
    for (const { estimate, reason } of estimates.values()) expect(estimate === null ? reason : estimate).toBeTruthy();
  });
  it('a region’s figure does not rest on gardens that the fit left out', () => {
    const gardens = ['n1', 'n2', 'n3', 'n4', 'n5', 's1', 's2', 's3', 's4', 's5'];
    const rows = gardens.flatMap((g, i) =>
      // In the north only n1 grows another variety beside a.
      g[0] === 'n'
        ? [`${g},a,2,${400 + i},,,`, ...(g === 'n1' ? [`${g},b,2,500,,,`] : [])]
        : [`${g},a,2,${700 + i},,,`, `${g},b,2,${600 + i},,,`],
    );
    const folder = base(rows, {
      'gardens.csv': `garden,region\n${gardens.map((g) => `${g},${g[0] === 'n' ? 'north' : 'south'}`).join('\n')}\n`,
    });
    const { trial } = check(folder);
    const club = clubSeen(trial!, seenIn(folder))!;
    const north = club.classes[0]!.groups.find(({ kind }) => kind === 'region')?.groups.find(
      ({ name }) => name === 'north',
    );
    expect(north?.estimates.size ?? 0).toBe(0);
  });
  it('a variety on two rows: plants and weights added, the first day, the mean score', () => {
    const rows = [
      'g1,a,2,400,2026-08-10,4,no',
      'g1,a,1,300,2026-08-01,8,no',
      'g1,b,1,300,2026-08-05,5,yes',
      'g2,a,1,200,2026-08-06,6,yes',
      'g2,b,1,250,2026-08-07,6,yes',
    ];
    const folder = base(rows);
    const seen = seenIn(folder);
    const unit = seen.season.yieldUnits.find(({ garden, variety }) => garden === 'g1' && variety === 'a')!;
    expect(unit.plants).toBe(3);
    expect(seen.yields.get(unit.id)!.grams).toBe(700);
    expect(unit.record.kind === 'totals' && isoDate(unit.record.firstRipe!)).toBe('2026-08-01');
    expect(unit.record.kind === 'totals' && unit.record.traits.get('taste')).toBe(6);
    expect(memberSheet(check(folder).trial!, seen, 'g1')).toContain('a,3,700,,2026-08-01,6,no');
  });
  it('those who taste in the trial’s own garden are one taster among the gardens', () => {
    const rows = [
      'home,a,1,300,,,',
      'home,b,1,200,,,',
      ...['g1', 'g2', 'g3', 'g4'].flatMap((g) => [`${g},a,1,300,,7,yes`, `${g},b,1,200,,5,no`]),
    ];
    const ratings = ['Ann', 'Bob', 'Cid'].flatMap((t) => [`2026-09-01,${t},a,8,yes`, `2026-09-01,${t},b,4,yes`]);
    const seen = seenIn(base(rows, { '2026/ratings.csv': `date,taster,variety,taste,again\n${ratings.join('\n')}\n` }));
    expect(ratingModel(seen, 'taste')!.tasters).toBe(5);
    expect(answersTo(seen, 'again')!.get('a')).toMatchObject({ k: 5, n: 5 });
  });
  it('answers and curves of fewer gardens than may be told of are left out', () => {
    const rows = ['g1', 'g2', 'g3'].flatMap((g) => [`${g},a,1,300,2026-08-01,7,yes`, `${g},b,1,200,2026-08-09,5,no`]);
    const seen = seenIn(base(rows));
    expect(answersTo(seen, 'again')!.size).toBe(0);
    expect(seen.varieties.every(({ ripening, shares }) => ripening === null && shares.ripe_by_end === undefined)).toBe(
      true,
    );
  });
  it('one garden alone is a trial of one garden, whatever its records are called', () => {
    const rows = [
      'a,1,300,2026-08-01,7,yes',
      'a,1,340,2026-08-03,6,yes',
      'b,1,200,2026-08-09,5,no',
      'b,1,260,2026-08-05,5,no',
    ];
    const plain = base([], {
      '2026/season.csv': `variety,plants,weight_g,first_ripe,taste,again\n${rows.join('\n')}\n`,
    });
    const named = base(rows.map((row) => `home,${row}`));
    const figures = (folder: Folder) => {
      const { traits } = seenIn(folder);
      const { estimates, factor, parts, residualDf } = ratioModel({ traits }, 'yield')!;
      return { estimates: [...estimates], factor, parts, residualDf, again: [...answersTo({ traits }, 'again')!] };
    };
    expect(figures(named)).toEqual(figures(plain));
    expect(figures(plain).factor).toBe('none');
  });
  it('a season of one garden that did not agree is an error, of one that did a trial', () => {
    const rows = ['qz1,a,1,300,,,', 'qz1,b,1,200,,,'];
    expect(codes(base(rows)).join()).toContain('garden-alone 2026');
    expect(codes(base(rows, { 'gardens.csv': 'garden,publish\nqz1,yes\n' })).join()).not.toContain('garden-alone');
  });
  it('two sheets of one garden are told, however its code is written', () => {
    const sheet = 'variety,plants,weight_g\na,1,5\nb,1,6\n';
    const found = codes({
      ...base([]),
      '2026/season.csv': 'variety,plants,weight_g\na,1,9\n',
      '2026/gardens/g1.csv': sheet,
      '2026/gardens/G1.csv': sheet,
    });
    expect(found.join()).toContain('garden-twice 2026/gardens/g1.csv');
  });
});
