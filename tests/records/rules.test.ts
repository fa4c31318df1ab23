import { pickingsOf } from '../../src/terms/record.ts';
import { describe, expect, it } from 'vitest';
import { severities } from '../../src/terms/problemCodes.ts';
import { problemWords } from '../../src/present/words/problems.ts';
import { check, codes } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const SOUND: Folder = {
  'trial.yaml':
    'title: Slope\nclasses:\n  sweet: {name: Sweet, check_variety: ridge-apron}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  fruit_length: {kind: measure, unit: cm}\n',
  'varieties.csv': 'variety,name,class\nridge-apron,Ridge Apron,sweet\nmoss-apron,Moss Apron,sweet\n',
  '2026/plantings.csv':
    'planting,variety,plants,sown,transplanted,removed,cause\np1,ridge-apron,1,2026-03-01,2026-05-20,,\np2,moss-apron,2,2026-03-01,2026-05-20,2026-09-30,frost\n',
  '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-03,p1,3,120\n2026-08-10,p2,2,90\n',
};

/** [what was done, the changed tables, the problem with its file, line and character] */
const CASES: readonly (readonly [string, Folder, string])[] = [
  ['a settings file is missing a title', { 'trial.yaml': 'place: Slope\n' }, 'setting-missing trial.yaml:1:1'],
  ['a setting is misspelt', { 'trial.yaml': 'title: A\nlanguge: de\n' }, 'setting-unknown trial.yaml:2:1'],
  [
    'there are no words of a language',
    { 'trial.yaml': 'title: A\nlanguage: fr\n' },
    'language-unknown trial.yaml:2:11',
  ],
  ['a setting has an unfit value', { 'trial.yaml': 'title: A\ninterval: 95\n' }, 'setting-unfit trial.yaml:2:11'],
  ['the settings are not YAML', { 'trial.yaml': 'title: "A\n' }, 'yaml-unreadable trial.yaml:2:1'],
  [
    'two scales are mixed',
    { 'trial.yaml': 'title: A\nclasses:\n  sweet: {scale: ratio}\n  hot: {scale: difference}\n' },
    'scales-mixed trial.yaml:4:16',
  ],
  [
    'a goal names no trait',
    { 'trial.yaml': 'title: A\nclasses: {sweet: {}}\ngoals: {sweet: {flavor: 1}}\n' },
    'trait-unknown-in-goals trial.yaml:3:17',
  ],
  [
    'a goal has no direction',
    {
      'trial.yaml':
        'title: A\nclasses: {sweet: {}}\ntraits: {heat: {kind: rating, from: 0, to: 9, better: none}}\ngoals: {sweet: {heat: 1}}\n',
    },
    'goal-without-direction trial.yaml:4:17',
  ],
  [
    'a check variety is of another class',
    {
      'varieties.csv': 'variety,class\nridge-apron,sweet\nmoss-apron,hot\n',
      'trial.yaml': 'title: A\nclasses: {sweet: {check_variety: moss-apron}, hot: {}}\n',
    },
    'check-variety-elsewhere trial.yaml:-:-',
  ],
  [
    'a setting is for a season that is not there',
    { 'trial.yaml': 'title: A\nclasses: {sweet: {}}\nseasons: {2019: {look_every: 3}}\n' },
    'season-setting-unused trial.yaml:-:-',
  ],
  [
    'a variety stands twice',
    { 'varieties.csv': 'variety,class\nridge-apron,sweet\nmoss-apron,sweet\nridge-apron,sweet\n' },
    'variety-twice varieties.csv:4:1',
  ],
  [
    'two names differ only in case',
    { 'varieties.csv': 'variety,name,class\nridge-apron,Same,sweet\nmoss-apron,SAME,sweet\n' },
    'variety-name-twice varieties.csv:3:12',
  ],
  [
    'an id cannot be an address',
    { 'varieties.csv': 'variety,class\nridge-apron,sweet\nmoss-apron,sweet\nA/b,sweet\n' },
    'id-unfit varieties.csv:4:1',
  ],
  [
    'a device name is an id',
    { 'varieties.csv': 'variety,class\nridge-apron,sweet\nmoss-apron,sweet\ncon,sweet\n' },
    'id-unfit varieties.csv:4:1',
  ],
  [
    'a class is unknown',
    { 'varieties.csv': 'variety,class\nridge-apron,swet\nmoss-apron,sweet\n' },
    'unknown-class varieties.csv:2:13',
  ],
  [
    'a mother is unknown',
    { 'varieties.csv': 'variety,class,mother\nridge-apron,sweet,nobody\nmoss-apron,sweet,\n' },
    'unknown-variety varieties.csv:2:1',
  ],
  [
    'a variety descends from itself',
    { 'varieties.csv': 'variety,class,mother\nridge-apron,sweet,moss-apron\nmoss-apron,sweet,ridge-apron\n' },
    'parent-loop varieties.csv:2:1',
  ],
  [
    'a generation is no generation',
    { 'varieties.csv': 'variety,class,generation\nridge-apron,sweet,\nmoss-apron,sweet,two\n' },
    'generation-unknown varieties.csv:3:18',
  ],
  [
    'a generation does not follow',
    { 'varieties.csv': 'variety,class,generation,from\nridge-apron,sweet,F2,\nmoss-apron,sweet,F4,2026/p1\n' },
    'generation-order varieties.csv:3:1',
  ],
  [
    'seed came from no planting',
    { 'varieties.csv': 'variety,class,from\nridge-apron,sweet,\nmoss-apron,sweet,2026/p9\n' },
    'from-unknown varieties.csv:3:1',
  ],
  [
    'a year is no year',
    { 'varieties.csv': 'variety,class,first_grown\nridge-apron,sweet,last\nmoss-apron,sweet,\n' },
    'year-unreadable varieties.csv:2:19',
  ],
  [
    'a colour is unknown',
    { 'varieties.csv': 'variety,class,colour_ripe\nridge-apron,sweet,sunsetty\nmoss-apron,sweet,\n' },
    'colour-unknown varieties.csv:2:19',
  ],
  [
    'claims are reversed',
    { 'varieties.csv': 'variety,class,claim_days,claim_days_max\nridge-apron,sweet,80,70\nmoss-apron,sweet,,\n' },
    'claim-reversed varieties.csv:2:22',
  ],
  [
    'a former id is in use',
    { 'varieties.csv': 'variety,class,former_ids\nridge-apron,sweet,moss-apron\nmoss-apron,sweet,\n' },
    'former-id-taken varieties.csv:2:19',
  ],
  [
    'a planting stands twice',
    { '2026/plantings.csv': 'planting,variety\np1,ridge-apron\np2,moss-apron\nP1,moss-apron\n' },
    'planting-twice 2026/plantings.csv:4:1',
  ],
  [
    'a planting has no plants',
    { '2026/plantings.csv': 'planting,variety,plants\np1,ridge-apron,0\np2,moss-apron,1\n' },
    'plants-zero 2026/plantings.csv:2:16',
  ],
  [
    'plants are not whole',
    { '2026/plantings.csv': 'planting,variety,plants\np1,ridge-apron,1.5\np2,moss-apron,1\n' },
    'not-whole 2026/plantings.csv:2:16',
  ],
  [
    'a word is not one of its words',
    { '2026/plantings.csv': 'planting,variety,cause\np1,ridge-apron,blight\np2,moss-apron,\n' },
    'word-unknown 2026/plantings.csv:2:16',
  ],
  [
    'dates are out of order',
    {
      '2026/plantings.csv':
        'planting,variety,sown,transplanted\np1,ridge-apron,2026-06-01,2026-05-20\np2,moss-apron,,\n',
    },
    'dates-out-of-order 2026/plantings.csv:2:27',
  ],
  [
    'a date can be read in two ways',
    { '2026/harvests.csv': 'date,planting,fruits\n03/08/2026,p1,3\n' },
    'date-ambiguous 2026/harvests.csv:2:1',
  ],
  [
    'a day does not exist',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-06-31,p1,3\n' },
    'date-impossible 2026/harvests.csv:2:1',
  ],
  [
    'a date is a word',
    { '2026/harvests.csv': 'date,planting,fruits\nsoon,p1,3\n' },
    'date-unreadable 2026/harvests.csv:2:1',
  ],
  [
    'a picking is before planting out',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-05-01,p1,3\n' },
    'picked-before-transplanting 2026/harvests.csv:2:1',
  ],
  [
    'a picking is after removal',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-10-05,p2,3\n' },
    'picked-after-removal 2026/harvests.csv:2:1',
  ],
  [
    'a picking is outside the season',
    { '2026/harvests.csv': 'date,planting,fruits\n2027-01-05,p1,3\n' },
    'outside-season 2026/harvests.csv:2:1',
  ],
  [
    'a planting is unknown',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p9,3\n' },
    'unknown-planting 2026/harvests.csv:2:12',
  ],
  [
    'a planting is of another season',
    {
      '2025/plantings.csv': 'planting,variety\nold1,ridge-apron\n',
      '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,old1,3\n',
    },
    'planting-of-other-season 2026/harvests.csv:2:12',
  ],
  [
    'planting and variety differ',
    { '2026/harvests.csv': 'date,planting,variety,fruits\n2026-08-01,p1,moss apron,3\n' },
    'planting-and-variety-differ 2026/harvests.csv:2:15',
  ],
  [
    'a row names nothing',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,,3\n' },
    'neither-planting-nor-variety 2026/harvests.csv:2:12',
  ],
  [
    'a weight has no unit',
    { '2026/harvests.csv': 'date,planting,weight\n2026-08-01,p1,30\n' },
    'unit-missing 2026/harvests.csv:2:15',
  ],
  [
    'a weight is a word',
    { '2026/harvests.csv': 'date,planting,weight_g\n2026-08-01,p1,lots\n' },
    'quantity-unreadable 2026/harvests.csv:2:15',
  ],
  [
    'two weights stand in a row',
    { '2026/harvests.csv': 'date,planting,weight_g,weight_oz\n2026-08-01,p1,30,2\n' },
    'quantity-twice 2026/harvests.csv:2:18',
  ],
  [
    'a title has an unknown unit',
    { '2026/harvests.csv': 'date,planting,weight_stone\n2026-08-01,p1,30\n' },
    'unit-unknown 2026/harvests.csv:1:15',
  ],
  [
    'a weight is below zero',
    { '2026/harvests.csv': 'date,planting,weight_g\n2026-08-01,p1,-3\n' },
    'number-negative 2026/harvests.csv:2:15',
  ],
  [
    'fruits are a word',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p1,many\n' },
    'number-unreadable 2026/harvests.csv:2:15',
  ],
  [
    'a thousand or a decimal',
    { '2026/harvests.csv': 'date;planting;weight_g\n2026-08-01;p1;1,234\n' },
    'number-ambiguous 2026/harvests.csv:2:15',
  ],
  [
    'the same picking stands twice',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p1,3\n2026-08-01,p1,3\n' },
    'row-twice 2026/harvests.csv:3:1',
  ],
  [
    'a row is too short',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p1\n' },
    'row-too-short 2026/harvests.csv:2:12',
  ],
  [
    'a row is too long',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p1,3,4\n' },
    'row-too-long 2026/harvests.csv:2:17',
  ],
  [
    'a quotation is left open',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,"p1,3\n' },
    'quote-open 2026/harvests.csv:2:1',
  ],
  [
    'a quotation mark is stray',
    { '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,"p1"x,3\n' },
    'quote-stray 2026/harvests.csv:2:1',
  ],
  [
    'two columns have one title',
    { '2026/harvests.csv': 'date,planting,fruits,Fruits\n2026-08-01,p1,3,3\n' },
    'header-twice 2026/harvests.csv:1:22',
  ],
  [
    'a column is missing',
    { '2026/harvests.csv': 'date,fruits\n2026-08-01,3\n' },
    'column-missing 2026/harvests.csv:1:1',
  ],
  [
    'a column is nearly known',
    { '2026/harvests.csv': 'date,planting,fruits,stag\n2026-08-01,p1,3,ripe\n' },
    'column-near 2026/harvests.csv:1:22',
  ],
  [
    'a column is unknown',
    { '2026/harvests.csv': 'date,planting,fruits,mood\n2026-08-01,p1,3,good\n' },
    'column-unknown 2026/harvests.csv:1:22',
  ],
  [
    'an untitled column is filled',
    { '2026/harvests.csv': 'date,planting,fruits,\n2026-08-01,p1,3,x\n' },
    'header-empty 2026/harvests.csv:2:17',
  ],
  ['a table is empty', { '2026/harvests.csv': '\n\n' }, 'empty-table 2026/harvests.csv:-:-'],
  ['a table is binary', { '2026/harvests.csv': 'PK\u0000\u0001' }, 'not-text 2026/harvests.csv:-:-'],
  [
    'a score is outside its scale',
    { '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,Ada,Ridge Apron,12\n' },
    'score-outside-scale 2026/ratings.csv:2:28',
  ],
  [
    'a trait is unknown',
    { '2026/ratings.csv': 'date,taster,variety,trait,score\n2026-09-01,Ada,Ridge Apron,flavor,7\n' },
    'unknown-trait 2026/ratings.csv:2:28',
  ],
  [
    'a taster is missing',
    { '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,,Ridge Apron,7\n' },
    'value-missing 2026/ratings.csv:2:12',
  ],
  [
    'more germinated than sown',
    { '2026/germination.csv': 'variety,sown,seeds,germinated\nridge-apron,2026-03-01,10,11\n' },
    'germinated-over-seeds 2026/germination.csv:2:27',
  ],
  [
    'the lowest is over the highest',
    { '2026/weather.csv': 'date,tmin_c,tmax_c\n2026-07-01,20,12\n' },
    'tmin-over-tmax 2026/weather.csv:2:12',
  ],
  [
    'a weather day stands twice',
    { '2026/weather.csv': 'date,tmin_c,tmax_c\n2026-07-01,10,12\n2026-07-01,10,12\n' },
    'weather-day-twice 2026/weather.csv:3:1',
  ],
  [
    'a temperature is not of this earth',
    { '2026/weather.csv': 'date,tmin_c,tmax_c\n2026-07-01,58,86\n' },
    'temperature-implausible 2026/weather.csv:2:15',
  ],
  [
    'an event is nearly known',
    { '2026/observations.csv': 'date,planting,event\n2026-07-01,p1,first-rip\n' },
    'event-near 2026/observations.csv:2:15',
  ],
  [
    'an event is a note',
    { '2026/observations.csv': 'date,planting,event\n2026-07-01,p1,hailstorm\n' },
    'event-unknown 2026/observations.csv:2:15',
  ],
  [
    'more off-types than plants',
    { '2026/observations.csv': 'date,planting,event,count,of\n2026-07-01,p1,off-type,3,2\n' },
    'count-over-of 2026/observations.csv:2:24',
  ],
  ['a table is misnamed', { '2026/observation.csv': 'date\n' }, 'file-name-near 2026/observation.csv:-:-'],
  ['a season is not a year', { 'summer/plantings.csv': 'variety\n' }, 'not-a-year summer:-:-'],
  [
    'one person gave all scores',
    { '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,Ada,Ridge Apron,7\n' },
    'scores-by-one-taster 2026/ratings.csv:-:-',
  ],
  [
    'totals have scores beside ratings',
    {
      '2026/plantings.csv': 'planting,variety\np1,ridge-apron\np2,ridge-apron\n',
      '2026/totals.csv': 'variety,plants,flavour\nmoss-apron,2,6\n',
      '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,Ada,Ridge Apron,7\n',
      '2026/harvests.csv': 'date,planting,fruits\n2026-08-01,p1,3\n',
    },
    'totals-and-ratings 2026/totals.csv:2:1',
  ],
  [
    'a text belongs to no page',
    { '../content/varieties/red-lanter.md': 'Red.' },
    'content-unused content/varieties/red-lanter.md:-:-',
  ],
  [
    'totals stand beside plantings',
    { '2026/totals.csv': 'variety,plants,weight_g\nridge-apron,2,500\n' },
    'totals-and-plantings 2026/totals.csv:2:1',
  ],
];

describe('records with a mistake', () => {
  it('start from a sound folder', () => {
    expect(codes(SOUND)).toEqual([]);
  });
  it.each(CASES)('are told that %s', (_, change, expected) => {
    const folder = { ...SOUND, ...change };
    expect(codes(folder)).toContain(expected);
    const severity = severities[expected.split(' ')[0] as keyof typeof severities];
    expect(check(folder).trial === null).toBe(
      severity === 'error' || check(folder).problems.some(({ code }) => severities[code] === 'error'),
    );
  });
  it('count a quoted line end in the line of a later problem', () => {
    const folder = {
      ...SOUND,
      '2026/harvests.csv': 'date,planting,fruits,notes\n2026-08-03,p1,3,"wet\nmorning"\n2026-08-10,p9,2,\n',
    };
    expect(codes(folder)).toContain('unknown-planting 2026/harvests.csv:4:12');
  });
  it('report one mistake in many rows once, with every place', () => {
    const rows = Array.from({ length: 30 }, (_, i) => `2026-08-${String(i + 1).padStart(2, '0')},p9,3`);
    const { problems } = check({ ...SOUND, '2026/harvests.csv': `date,planting,fruits\n${rows.join('\n')}\n` });
    expect(problems.filter(({ code }) => code === 'unknown-planting').map(({ places }) => places.length)).toEqual([30]);
  });
});

describe('messages', () => {
  it.each(Object.keys(severities) as (keyof typeof severities)[])('have words for %s', (code) => {
    const { problem, expected, mend } = problemWords(
      code,
      new Proxy({}, { get: (_, key) => (key === 'near' ? 'nearby' : String(key)) }),
    );
    for (const text of [problem, expected, mend]) expect(text).toMatch(/^\S.*[^.\s]$/);
  });
});

describe('values', () => {
  it('are read in the unit of the cell before that of the title', () => {
    const { trial } = check({
      ...SOUND,
      '2026/harvests.csv': 'date,planting,weight_oz\n2026-08-03,p1,500 g\n2026-08-10,p2,1 lb 3 oz\n',
    });
    const grams = trial!.seasons[0]!.plantings.map((planting) => pickingsOf(planting)[0]!.ripe.grams);
    // 1 lb = 453.59237 g, 1 oz = 28.349523125 g by definition (NIST SP 811)
    expect(grams).toEqual([500, 453.59237 + 3 * 28.349523125]);
  });
  it('have a decimal comma where the whole column shows it', () => {
    const { trial } = check({
      ...SOUND,
      '2026/harvests.csv': 'date;planting;weight_kg\n2026-08-03;p1;0,5\n2026-08-10;p2;1,25\n',
    });
    expect(trial!.seasons[0]!.plantings.map((planting) => pickingsOf(planting)[0]!.ripe.grams)).toEqual([500, 1250]);
  });
});
