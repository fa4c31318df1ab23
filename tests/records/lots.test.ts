import { describe, expect, it } from 'vitest';
import { check, codes } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

const SETTINGS =
  'title: Slope\nclasses: {hot: {name: Hot}}\ntraits: {leaf: {kind: state, states: [green, dark], hot: {good: dark}}}\ngoals: {hot: {leaf: 2, yield: 1}}\n';
const folder = (more: Folder = {}): Folder => ({
  'trial.yaml': SETTINGS,
  'varieties.csv':
    'variety,class,kind,mother,father,from,generation\na,hot,,,,,\nb,hot,,,,,\nx1,hot,line,a,b,,\nx2,hot,line,,,2024/x1,\nx3,hot,line,,,2025/x2-2,\nodd,hot,line,,,2025/a-2,\nbulk,hot,line,,,2025/x2-1;2025/x2-2,\n',
  '2024/plantings.csv': 'planting,variety\nx1,x1\na,a\nb,b\n',
  '2025/plantings.csv': 'planting,variety,plants,lot\nx2-1,x2,1,\nx2-2,x2,1,\na-1,a,1,\na-2,a,1,\ngroup,b,4,\n',
  '2025/measurements.csv': 'date,planting,variety,plants,leaf\n2025-08-20,x2-1,,,dark\n2025-08-20,x2-2,,,Green\n',
  '2026/plantings.csv': 'planting,variety,lot\nx3,x3,s1\n',
  'seeds.csv': 'lot,variety,from,saved,seeds,pollination,treated\ns1,x3,2025/x2-2,2025-09-20,40,bagged,\n',
  ...more,
});
const told = (more: Folder): readonly string[] => codes(folder(more)).map((own) => own.split(' ')[0]!);

describe('lines', () => {
  it('have the generation of their seed plants, 2 from an odd plant, 1 from two parents', () => {
    const { trial, problems } = check(folder());
    expect(problems.filter(({ code }) => !/recorded|dated|start|all-one/.test(code))).toEqual([]);
    expect(trial!.varieties.map(({ id, generation }) => `${id} ${generation}`)).toEqual([
      'a null',
      'b null',
      'x1 1',
      'x2 2',
      'x3 3',
      'odd 2',
      'bulk 3',
    ]);
  });
  it('states are known whatever their case, one a plant', () => {
    const { trial } = check(folder());
    expect(trial!.seasons[1]!.states.map(({ planting, state, plants }) => `${planting} ${state} ${plants}`)).toEqual([
      'x2-1 dark 1',
      'x2-2 green 1',
    ]);
  });
});

describe('what cannot be is told in its place', () => {
  const states = (rows: string): Folder => ({ '2025/measurements.csv': `date,planting,variety,plants,leaf\n${rows}` });
  it.each([
    ['state-unknown', states('2025-08-20,x2-1,,,drak\n')],
    ['state-changed', states('2025-08-01,x2-1,,,dark\n2025-08-20,x2-1,,,green\n')],
    ['plants-over-planting', states('2025-08-20,x2-1,,2,dark\n')],
    ['plants-not-single', states('2025-08-20,group,,3,dark\n')],
    ['seedlings-fewer', states('2025-08-20,x2-1,,,dark\n2025-08-20,x2-2,,,dark\n2025-04-20,,x2,1,dark\n')],
    ['value-missing', states('2025-04-20,,x2,,dark\n')],
    ['lot-twice', { 'seeds.csv': 'lot,variety,saved\ns1,x3,2025\ns1,x3,2025\n' }],
    ['unknown-lot', { 'seeds.csv': 'lot,variety,saved\ns2,x3,2025\n' }],
    ['lot-of-other', { 'seeds.csv': 'lot,variety,saved\ns1,a,2025\n' }],
    ['lot-from-unlike', { 'seeds.csv': 'lot,from,saved\ns1,2025/x2-2;2025/a-1,2025\n' }],
    ['lot-undated', { 'seeds.csv': 'lot,variety,saved\ns1,x3,\n' }],
    ['treated-lot', { 'seeds.csv': 'lot,variety,saved,treated\ns1,x3,2025,yes\n' }],
    ['from-unknown', { 'seeds.csv': 'lot,from,saved\ns1,2025/nobody,2025\n' }],
    ['lot-overdrawn', { '2026/germination.csv': 'lot,sown,seeds,germinated\ns1,2026-03-01,60,50\n' }],
    ['test-before-saved', { '2025/germination.csv': 'lot,sown,seeds,germinated\ns1,2025-03-01,6,5\n' }],
    ['lot-crossed', { 'seeds.csv': 'lot,from,saved,pollination,father\ns1,2025/x2-2,2025,hand,a\n' }],
    ['lot-gone', { 'seeds.csv': 'lot,variety,saved,gone\ns1,x3,2024,2025\n' }],
    ['saved-before-ripe', { '2025/observations.csv': 'date,planting,event\n2025-09-25,x2-2,first-ripe\n' }],
    ['good-not-a-state', { 'trial.yaml': SETTINGS.replace('good: dark', 'good: drak') }],
    ['goal-on-state-without-good', { 'trial.yaml': SETTINGS.replace(', hot: {good: dark}', '') }],
  ] as const)('%s', (code, more) => {
    expect(told(more)).toContain(code);
  });
});
