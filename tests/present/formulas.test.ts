import { describe, expect, it } from 'vitest';
import { english } from '../../src/present/words/en/index.ts';
import { formulasOf } from '../../src/present/words/formulas.ts';
import { german } from '../../src/present/words/de/index.ts';
import { check } from '../sites/folder.ts';

const { trial } = check({
  'trial.yaml': 'title: Formulas\n',
  'varieties.csv': 'variety\nx\n',
  '2026/plantings.csv': 'planting,variety\np1,x\n',
});
const plain = trial!.settings;

describe('the formulas of the methods page', () => {
  for (const scale of ['ratio', 'difference'] as const)
    for (const method of [1, 2] as const) {
      const settings = { ...plain, scale, degreeDays: { ...plain.degreeDays, method } };
      it(`have every word in every language (${scale}, degree days ${method})`, () => {
        for (const { methods } of [english, german])
          for (const { id } of methods.all(settings))
            for (const formula of formulasOf(id, settings, '95 %', methods.formulas))
              expect(formula).not.toMatch(/\[[a-z]|undefined/i);
      });
      it(`are of the same mathematics in every language (${scale}, degree days ${method})`, () => {
        const ids = english.methods.all(settings).map(({ id }) => id);
        expect(german.methods.all(settings).map(({ id }) => id)).toEqual(ids);
        // With no words at all what is left is mathematics; a method without formulas has none in any language.
        const bare = new Proxy({}, { get: () => '' });
        const left = ids.map((id) =>
          formulasOf(id, settings, '', bare)
            .join(' ')
            .replace(/<[^>]*>|&nbsp;|\s/g, ''),
        );
        expect(
          left.every((formula) => !/[a-z]{4,}/i.test(formula.replace(/exp|log|max|min|Var|Cov|sed|tr/g, ''))),
        ).toBe(true);
        expect(left.filter((formula) => formula !== '').length).toBe(13);
      });
    }
  it('name a word that a language lacks', () => {
    expect(() => formulasOf('verdicts', plain, '95 %', {})).toThrow('no word for points');
  });
});
