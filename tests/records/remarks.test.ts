import { expect, it } from 'vitest';
import { remarksOf } from '../../src/present/pages/remarks.ts';
import { check } from '../sites/folder.ts';

const folder = (show: string) => ({
  'trial.yaml': `title: Slope\ntraits: {flavour: {kind: rating, from: 1, to: 9}, length: {kind: measure, unit: cm}}\npublish: {show: [${show}]}\n`,
  'varieties.csv': 'variety,name\na,Aldersop\nb,Bramscar\n',
  '2026/plantings.csv': 'planting,variety,plants,notes,Soil\np1,a,1,by the wall,clay\np2,b,1,,\n',
  '2026/harvests.csv':
    'date,planting,fruits,weight_g,notes,Sky\n2026-08-03,p1,3,120,split,rain\n2026-08-10,p1,2,80,,\n',
  '2026/observations.csv': 'date,planting,event,notes\n2026-07-30,p1,first-ripe,early\n',
  '2026/ratings.csv': 'date,taster,planting,flavour,notes\n2026-09-01,Ann,p2,7,thin skin\n',
  '2026/measurements.csv': 'date,planting,length,Tool\n2026-08-05,p1,9,calliper\n',
});
const told = (show: string) => {
  const { trial } = check(folder(show));
  return remarksOf(trial!.seasons[0]!, trial!).map(({ planting, text }) => `${planting}: ${text}`);
};

it('nothing is published that the grower did not name', () => {
  expect(told('source')).toEqual([]);
});

it('notes of every table are published where they are named, of plantings first, then by day', () => {
  expect(told('notes')).toEqual(['p1: by the wall', 'p1: early', 'p1: split', 'p2: thin skin']);
});

it('columns of the grower’s own are published from every table that has them', () => {
  expect(told('notes, sky, tool, soil')).toEqual([
    'p1: by the wall; Soil: clay',
    'p1: early',
    'p1: split; Sky: rain',
    'p1: Tool: calliper',
    'p2: thin skin',
  ]);
});
