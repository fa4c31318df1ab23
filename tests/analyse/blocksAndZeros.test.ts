import { plantModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { classCautions } from '../../src/analyse/cautions.ts';
import { check, comparedIn, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

/** Rows `variety,block,grams`, a plant each; every picking was recorded. */
function trial(rows: readonly string[], scale = 'ratio'): Folder {
  const plants = rows.map((row, i) => [`p${i + 1}`, ...row.split(',')] as [string, string, string, string]);
  const varieties = [...new Set(plants.map(([, variety]) => variety))];
  return {
    'trial.yaml': `title: Blocks\nclasses: {a: {scale: ${scale}, check_variety: ${varieties[0]}}}\nseasons: {2026: {harvests: complete}}\n`,
    'varieties.csv': `variety,class\n${varieties.map((id) => `${id},a`).join('\n')}\n`,
    '2026/plantings.csv': `planting,variety,block\n${plants.map(([id, variety, block]) => `${id},${variety},${block}`).join('\n')}\n`,
    '2026/harvests.csv': `date,planting,weight_g\n${plants
      .filter(([, , , grams]) => grams !== '0')
      .map(([id, , , grams]) => `2026-08-01,${id},${grams}`)
      .join('\n')}\n`,
  };
}

const withoutBlocks = (folder: Folder): boolean => {
  const { trial: own } = check(folder);
  return classCautions(own!, seenIn(folder), 'a').some(({ kind }) => kind === 'without-blocks');
};

const estimates = (folder: Folder) =>
  Object.fromEntries(
    [...plantModel(seenIn(folder), 'yield')!.estimates].map(([id, { estimate }]) => [
      id,
      estimate === null ? null : Math.round(estimate * 1e6) / 1e6,
    ]),
  );

describe('an estimate of one planting', () => {
  it('has the interval that the pooled error gives it, also where nothing is a ratio', () => {
    const folder: Folder = {
      'trial.yaml':
        'title: One\nclasses: {a: {}}\ntraits: {length: {kind: measure, unit: cm, better: none}}\nseasons: {2026: {layout: spread}}\n',
      'varieties.csv': 'variety,class\nx,a\ny,a\n',
      '2026/plantings.csv': 'planting,variety\np1,x\np2,y\np3,y\np4,y\n',
      '2026/measurements.csv':
        'date,planting,length_cm\n2026-08-20,p1,5\n2026-08-20,p2,7\n2026-08-20,p3,8\n2026-08-20,p4,9\n',
    };
    // By hand: the error's variance is 1 with 2 df, so that x is 5 ± 4.3027 (R: qt(0.975, 2)).
    const { estimate, low, high } = plantModel(seenIn(folder), 'length')!.estimates.get('x')!;
    expect([estimate, low, high].map((value) => Math.round(value! * 1e4) / 1e4)).toEqual([5, 0.6973, 9.3027]);
  });
});

describe('on the ratio scale blocks are left out of a class in which a planting gave nothing', () => {
  const lost = ['x,1,300', 'x,2,320', 'x,3,0', 'y,1,200', 'y,2,240', 'y,3,0', 'z,1,500', 'z,2,460', 'z,3,0'];
  it('where a whole block was lost: each figure is total over plants', () => {
    expect(estimates(trial(lost))).toEqual({ x: 206.666667, y: 146.666667, z: 320 });
    expect(withoutBlocks(trial(lost))).toBe(true);
  });
  it('where two varieties in overlapping blocks lost one plant', () => {
    const folder = trial(['x,1,300', 'x,2,280', 'y,2,190', 'y,3,0', 'z,1,410', 'z,3,430']);
    expect(estimates(folder)).toEqual({ x: 290, y: 95, z: 420 });
    expect(withoutBlocks(folder)).toBe(true);
  });
  it('and nowhere else', () => {
    const whole = lost.map((row) => row.replace(/,0$/, ',250'));
    expect(withoutBlocks(trial(whole))).toBe(false);
    expect(plantModel(seenIn(trial(whole)), 'yield')!.factor).toBe('block');
    expect(withoutBlocks(trial(lost, 'difference'))).toBe(false);
  });
  it('so that no letter, ratio or limit stands on an effect that was never seen', () => {
    const compared = comparedIn(trial(lost)).get('yield')!.get('a')!;
    for (const { estimate, low, high } of compared.againstCheck!.varieties) {
      expect(estimate).toBeLessThan(5);
      expect(low === null || low > 1e-4).toBe(true);
      expect(high === null || high < 1e4).toBe(true);
    }
  });
});
