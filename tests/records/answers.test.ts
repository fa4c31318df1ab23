import { describe, expect, it } from 'vitest';
import { rankingsSeen } from '../../src/analyse/rankingsSeen.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { rankingWords } from '../../src/present/pages/rankings.ts';
import { barValue, expectedIn, whenceOf } from '../../src/present/nextSeason/source.ts';
import type { AdviceSource } from '../../src/present/nextSeason/source.ts';
import type { Trial } from '../../src/terms/trial.ts';
import { weightsOf } from '../../src/decide/goals.ts';
import { advisedIn, check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const members = ['g01', 'g02', 'g03', 'g04', 'g05', 'g06'];
const sent = members
  .flatMap((garden, i) => ['a', 'b', 'c'].map((variety, k) => `${garden},${variety},${'xyz'[(i + k) % 3]}`))
  .join('\n');
const folder = (answers: string, more: Folder = {}): Folder => ({
  'trial.yaml': 'title: Club\nclasses: {all: {spots: 1}}\ntraits: {choice: {kind: ranking}}\n',
  'varieties.csv': 'variety,name,class\na,Aldersop,all\nb,Bramscar,all\nc,Corvane,all\n',
  '2026/totals.csv': 'variety,plants,weight_g\na,2,900\nb,2,700\nc,2,400\n',
  '2026/sent.csv': `garden,variety,label\n${sent}\n`,
  '2026/answers.csv': `garden,choice_best,choice_worst\n${answers}`,
  ...more,
});
const codes = (own: Folder): readonly string[] => check(own).problems.map(({ code }) => code);

describe('what members preferred as a goal', () => {
  const own = (more: string): Folder =>
    folder('g01,a,c\ng02,Aldersop,Corvane\ng03,a=b,c\ng04,a,b=c\ng05,b,c\n', {
      'trial.yaml': `title: Club\nclasses: {all: {spots: 1}}\ntraits: {choice: {kind: ranking}}\n${more}`,
    });
  it('counts in points of the share in which it is before a middling one', () => {
    const folderOf = own('goals: {all: {choice: 1}}\nmust: {all: {choice: {at_least: 0.1}}}\n');
    const next = advisedIn(folderOf);
    const [outcome] = next.classes;
    expect(outcome!.advice!.goals).toEqual([
      expect.objectContaining({ trait: 'choice', range: { good: 1, bad: 0 }, weight: 1 }),
    ]);
    const { expected, values } = next.forecasts.get('choice')!;
    expect(values).toMatchObject({ scale: 'worth', priorScale: 1 });
    const found = expectedIn(next, 'choice', 'all', 'a')!;
    expect(found.estimate).toBeCloseTo(1 / (1 + Math.exp(-expected.classes[0]!.varieties[0]!.mean)), 12);
    expect(found.low).toBeGreaterThan(0);
    expect(found.high).toBeLessThan(1);
    expect(outcome!.advice!.varieties.map(({ variety }) => variety)).toEqual(['a', 'b', 'c']);
    // The bar is a newcomer in the middle of the class.
    const { classMean } = expected.classes[0]!;
    expect(barValue({ next } as AdviceSource, outcome!, 'choice')).toBeCloseTo(1 / (1 + Math.exp(-classMean)), 12);
  });
  it('has the ends of its scale where trial.yaml has none', () => {
    const next = advisedIn(own('goals: {all: {choice: 1}}\n'));
    const { settings } = check(own('')).trial!;
    const ranges = new Map([['choice', new Map([['all', { good: 0.8, bad: null }]])]]);
    const set = { settings: { ...settings, ranges } } as unknown as Trial;
    const goal = next.classes[0]!.advice!.goals[0]!;
    const bare = { settings } as unknown as Trial;
    expect((['good', 'bad'] as const).map((end) => whenceOf(bare, 'all', goal, end))).toEqual(['scale', 'scale']);
    expect((['good', 'bad'] as const).map((end) => whenceOf(set, 'all', goal, end))).toEqual(['set', 'scale']);
    expect(whenceOf(bare, 'all', { ...goal, good: null }, 'good')).toBe('class');
  });
  it('is no goal unless it is named, and no column of other tables', () => {
    expect(codes({ ...own(''), '2026/ratings.csv': 'variety,choice\na,5\n' })).toContain('column-unknown');
    expect(weightsOf('all', check(own('')).trial!.settings).weights.has('choice')).toBe(false);
  });
});

describe('what members preferred', () => {
  it('is read by name or label, with ties, and ordered by worth', () => {
    const own = folder('g01,a,c\ng02,Aldersop,Corvane\ng03,a=b,c\ng04,a,b=c\ng05,same,\n');
    const { trial, problems } = check(own);
    expect(problems.filter(({ code }) => code.startsWith('answer'))).toEqual([]);
    const [season] = trial!.seasons;
    expect(season!.answers.map(({ order }) => order)).toEqual([
      [['a'], ['b'], ['c']],
      [['a'], ['b'], ['c']],
      [['a', 'b'], ['c']],
      [['a'], ['b', 'c']],
      [['a', 'b', 'c']],
    ]);
    const [seen] = rankingsSeen(season!, trial!);
    expect(seen).toMatchObject({ trait: 'choice', classId: 'all', members: 5, sent: 6 });
    expect(seen!.varieties.map(({ variety }) => variety)).toEqual(['a', 'b', 'c']);
    expect(seen!.varieties.reduce((sum, { logWorth }) => sum + logWorth, 0)).toBeCloseTo(0, 9);
    for (const language of ['en-GB', 'de'] as const) {
      const words = rankingWords(seen!, trial!, writingOf({ ...trial!.settings, language }));
      expect(words.sentences.join(' ')).toMatch(/^5 (?:of the|der) 6 /);
      expect(words.rows).toHaveLength(3);
    }
  });
  it('label z of g01 is its own: labels are a member’s', () => {
    const { trial } = check(folder('g01,z,x\ng02,z,x\n'));
    expect(trial!.seasons[0]!.answers.map(({ order }) => order[0])).toEqual([['c'], ['b']]);
  });
  it('is not told of fewer than five', () => {
    const { trial } = check(folder('g01,a,c\ng02,a,c\ng03,a,b\ng04,b,c\n'));
    const [seen] = rankingsSeen(trial!.seasons[0]!, trial!);
    expect(seen!.varieties).toEqual([]);
    expect(rankingWords(seen!, trial!, writingOf(trial!.settings)).sentences.join(' ')).toContain('Fewer than five');
  });
  it.each([
    ['answer-not-given', folder('g01,q,c\n')],
    ['answer-both', folder('g01,a,a\n')],
    ['answer-twice', folder('g01,a,c\nG01,a,b\n')],
    ['garden-person', folder('', { '2026/answers.csv': 'garden,e-mail,choice_best\ng01,someone,a\n' })],
  ] as const)('%s', (code, own) => {
    expect(codes(own)).toContain(code);
    for (const problem of check(own).problems) expect(JSON.stringify(problem)).not.toContain('someone');
  });
});
