import { describe, expect, it } from 'vitest';
import { english } from '../../src/present/words/en/index.ts';
import { german } from '../../src/present/words/de/index.ts';
import { problemWords } from '../../src/present/words/problems.ts';
import { factNames } from '../../src/terms/problemFacts.ts';
import type { ProblemCode } from '../../src/terms/problemCodes.ts';

describe('the words of problems', () => {
  for (const [language, { problems }] of Object.entries({ english, german }))
    it(`name no fact that a report does not carry, in ${language}`, () => {
      const strange = (Object.keys(problems) as ProblemCode[]).flatMap((code) => {
        const known: readonly string[] = code in factNames ? factNames[code as keyof typeof factNames] : [];
        return [...problems[code].join(' ').matchAll(/\{(\w+)\}/g)]
          .map(([, fact]) => fact!)
          .filter((fact) => !known.includes(fact))
          .map((fact) => `${code}: ${fact}`);
      });
      expect(strange).toEqual([]);
    });
  it('stop where a fact is missing, and never print a gap', () => {
    expect(() => problemWords('setting-unfit', { setting: 'interval' })).toThrow('without its expected');
    expect(problemWords('setting-unfit', { setting: 'interval', expected: 'a number' }).problem).toBe(
      'the setting interval cannot be used',
    );
  });
});
