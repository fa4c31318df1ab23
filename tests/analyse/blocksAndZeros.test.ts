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
    [...seenIn(folder).models.get('yield')!.estimates].map(([id, { estimate }]) => [
      id,
      estimate === null ? null : Math.round(estimate * 1e6) / 1e6,
    ]),
  );

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
    expect(seenIn(trial(whole)).models.get('yield')!.factor).toBe('block');
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
