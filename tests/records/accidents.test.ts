import { describe, expect, it } from 'vitest';
import { ACCIDENTS, after } from '../accidents/accidents.ts';
import { cleanGarden } from '../accidents/gardens.ts';
import { POLLUTIONS } from '../accidents/pollutions.ts';
import { chanceOf, demoFiles, fateOf, filesOf, outcomeOf, sheetsOf } from '../accidents/sheets.ts';

// A small part of npm run bench:accidents: the last two seasons of the demo, a few cases of each kind.

const files = demoFiles(2025);
const clean = outcomeOf(files);
const sheets = sheetsOf(files);
/** Seasons that the demo's settings name and these files lack. */
const KNOWN = ['season-setting-unused', 'from-unknown', 'parent-loop', 'treated-lot', 'lot-undated'];

describe('accidents in a spreadsheet that a careful reader would notice', () => {
  it.each(ACCIDENTS.filter(({ isSeen }) => isSeen))('$kind is told', (accident) => {
    const fates = [0, 1, 2, 3, 4].flatMap((i) => {
      const changed = after(accident, sheets, chanceOf(`${accident.kind} ${i}`));
      return changed ? [fateOf(filesOf(changed.sheets, files), clean)] : [];
    });
    expect(fates.length).toBeGreaterThan(0);
    // Of a hundred in the benchmark at least 95 are told; of a few, all but one.
    expect(fates.filter((fate) => fate === 'silent').length).toBeLessThanOrEqual(1);
  });
});

describe('a table whose form was hurt', () => {
  it.each(POLLUTIONS)('$kind: told, or nothing changes', ({ kind, pollute }) => {
    for (let i = 0; i < 2; i++) {
      const chance = chanceOf(`${kind} ${i}`);
      const path = chance.pick([...sheets.keys()]);
      const changed = new Map<string, string | Uint8Array>(files).set(path, pollute(files.get(path)!, chance));
      expect(fateOf(changed, clean), `${path} ${i}`).not.toBe('silent');
    }
  });
});

describe('gardens without a slip', () => {
  it('have no problem told', () => {
    for (let i = 0; i < 40; i++) expect(outcomeOf(cleanGarden(i)).problems, `garden ${i}`).toEqual([]);
  });
  it('the demo among them', () => {
    expect(clean.problems.filter(({ code }) => !KNOWN.includes(code))).toEqual([]);
  });
});
