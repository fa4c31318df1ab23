import { describe, expect, it } from 'vitest';
import { classCautions } from '../../src/analyse/cautions.ts';
import type { Caution } from '../../src/analyse/cautions.ts';
import { judgeClaim } from '../../src/analyse/claims.ts';
import { check, seenIn } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// Which caution belongs to which record is methods page D and facts of the trade; the gardens here are invented.

interface Row {
  readonly variety: string;
  readonly grams: number;
  readonly bed?: string;
  readonly stands?: string;
  readonly topped?: string;
  readonly plants?: number;
  readonly cause?: string;
}

function garden(rows: readonly Row[], more: Folder = {}, scale = 'ratio'): Folder {
  const ids = [...new Set(rows.map(({ variety }) => variety))];
  const line = ({ variety, bed, stands, topped, plants, cause }: Row, i: number): string =>
    `p${i},${variety},${bed ?? ''},${stands ?? ''},${topped ?? ''},${plants ?? 1},${cause ? '2026-07-01' : ''},${cause ?? ''}`;
  return {
    'trial.yaml': `title: Cautions\nclasses:\n  a: {scale: ${scale}}\n  b: {scale: ${scale}}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\nseasons: {2026: {transplanted: 2026-05-20, harvests: complete}}\n`,
    'varieties.csv': `variety,class\n${ids.map((id) => `${id},${id.startsWith('big') ? 'b' : 'a'}`).join('\n')}\n`,
    '2026/plantings.csv': `planting,variety,bed,stands_in,topped,plants,removed,cause\n${rows.map(line).join('\n')}\n`,
    '2026/harvests.csv': `date,planting,fruits,weight_g\n${rows.flatMap(({ grams, cause }, i) => (cause ? [] : [`2026-08-1${i % 10},p${i},3,${grams}`])).join('\n')}\n`,
    ...more,
  };
}

function cautions(folder: Folder, classId = 'a'): readonly Caution[] {
  return classCautions(check(folder).trial!, seenIn(folder), classId);
}
const kinds = (folder: Folder, classId = 'a'): readonly string[] => cautions(folder, classId).map(({ kind }) => kind);

/** Four plantings with little spread, nothing to be cautious about. */
const CALM: readonly Row[] = [
  { variety: 'one', grams: 500 },
  { variety: 'one', grams: 520 },
  { variety: 'two', grams: 400 },
  { variety: 'two', grams: 410 },
];
const withEach = (more: readonly Partial<Row>[]): readonly Row[] => CALM.map((row, i) => ({ ...row, ...more[i] }));

describe('cautions', () => {
  it('has none where nothing is confounded, and none for a class without plantings', () => {
    expect(cautions(garden(CALM))).toEqual([]);
    expect(cautions(garden(CALM), 'b')).toEqual([]);
  });
  it('says where nothing gives a spread, and which varieties stand alone where something does', () => {
    expect(cautions(garden([CALM[0]!, CALM[2]!]))).toEqual([{ kind: 'no-residual-df' }]);
    expect(cautions(garden([CALM[0]!, CALM[1]!, CALM[2]!]))).toEqual([
      { kind: 'single-plantings', varieties: ['two'] },
    ]);
  });
  it('names the varieties that stand in one bed, only where there are several beds, all named', () => {
    const beds = (names: readonly string[]) => garden(withEach(names.map((bed) => (bed === '' ? {} : { bed }))));
    expect(cautions(beds(['x', 'x', 'y', 'z']))).toEqual([{ kind: 'one-bed', varieties: ['one'] }]);
    expect(cautions(beds(['x', 'x', 'y', 'y']))).toEqual([{ kind: 'one-bed', varieties: ['one', 'two'] }]);
    expect(cautions(beds(['x', 'y', 'x', 'y']))).toEqual([]);
    expect(cautions(beds(['x', 'x', 'x', 'x']))).toEqual([]);
    expect(cautions(beds(['x', 'x', 'y', '']))).toEqual([]);
  });
  it('does not blame a single planting for standing in one bed', () => {
    expect(kinds(garden(withEach([{ bed: 'x' }, { bed: 'y' }, { bed: 'x' }]).slice(0, 3)))).toEqual([
      'single-plantings',
    ]);
  });
  it('tells topped plants mixed with others from a class topped throughout', () => {
    const topped = (words: readonly string[]) =>
      kinds(garden(withEach(words.map((word) => (word === '' ? {} : { topped: word })))));
    expect(topped(['yes', 'no', 'no', 'no'])).toEqual(['mixed-topped']);
    expect(topped(['yes', 'yes', 'yes', 'yes'])).toEqual(['only-topped']);
    expect(topped(['yes', 'yes', 'yes', ''])).toEqual([]);
    expect(topped(['no', 'no', 'no', 'no'])).toEqual([]);
  });
  it('tells pots mixed with open ground, adjusted or not, from a class in containers throughout', () => {
    const stands = (words: readonly string[]) =>
      cautions(garden(withEach(words.map((word) => (word === '' ? {} : { stands: word })))));
    expect(stands(['pot', 'ground', 'pot', 'ground'])).toEqual([{ kind: 'mixed-stands', adjusted: true }]);
    expect(stands(['pot', 'pot', 'ground', 'ground'])).toEqual([{ kind: 'mixed-stands', adjusted: false }]);
    expect(stands(['pot', 'pot', 'pot', 'pot'])).toEqual([{ kind: 'only-pots' }]);
    expect(stands(['bag', 'bag', 'bag', 'bag'])).toEqual([{ kind: 'only-pots' }]);
    expect(stands(['bag', 'bag', 'bag', ''])).toEqual([]);
    expect(stands(['bed', 'bed', 'bed', 'bed'])).toEqual([]);
  });
  it('says where plantings differ in their number of plants', () => {
    expect(kinds(garden(withEach([{ plants: 2, grams: 1000 }])))).toEqual(['unequal-plantings']);
    expect(kinds(garden(withEach(CALM.map(({ grams }) => ({ plants: 2, grams: 2 * grams })))))).toEqual([]);
  });
  it('says where the spread is high: over 50 % a plant, over 30 % a planting of four', () => {
    // Two plantings at 1 ± d: quasi-gamma with one df each way; together CV = √(Σ (y/μ - 1)² / df).
    const spread = (d: number, plants = 1) =>
      garden(
        [1 - d, 1 + d, 1 - d, 1 + d].map((part, i) => ({
          variety: i < 2 ? 'one' : 'two',
          grams: 1000 * plants * part,
          plants,
        })),
      );
    // CV = d·√(4/2) = 1.414 d for single plants; four plants that stand together have half of it.
    expect(kinds(spread(0.35))).toEqual([]);
    expect(cautions(spread(0.36))).toEqual([{ kind: 'high-cv', cv: expect.closeTo(50.91, 2) }]);
    // A planting of four differs by CV / 2 = 1.414 d.
    expect(kinds(spread(0.21, 4))).toEqual([]);
    expect(kinds(spread(0.22, 4))).toEqual(['high-cv']);
    // Three plants are not yet a group: 1.414 · 0.35 · √3 = 86 %.
    expect(kinds(spread(0.35, 3))).toEqual(['high-cv']);
  });
  it('says where one mean square pools classes of very different size, on the difference scale only', () => {
    const two = (factor: number): readonly Row[] => [
      ...CALM,
      { variety: 'big', grams: 455 * factor },
      { variety: 'big', grams: 460 * factor },
    ];
    expect(kinds(garden(two(2.9), {}, 'difference'))).toEqual([]);
    expect(kinds(garden(two(3.1), {}, 'difference'))).toEqual(['class-sizes-differ']);
    expect(kinds(garden(two(3.1), {}, 'difference'), 'b')).toEqual(['class-sizes-differ']);
    expect(kinds(garden(two(0.3), {}, 'difference'))).toEqual(['class-sizes-differ']);
    expect(kinds(garden(two(3.1)))).toEqual([]);
  });
  it('counts the scores whose taster knew the variety, of the class alone', () => {
    const rows = [...CALM, { variety: 'big', grams: 450 }, { variety: 'big', grams: 455 }];
    const scored = (lines: readonly string[]): Folder =>
      garden(rows, { '2026/ratings.csv': `date,taster,variety,flavour,blind\n${lines.join('\n')}\n` });
    const day = '2026-09-01';
    expect(
      cautions(scored([`${day},Ada,one,6,yes`, `${day},Ada,two,5,no`, `${day},Ben,one,7,`, `${day},Ada,big,7,no`])),
    ).toEqual([{ kind: 'not-blind', known: 2, scores: 3 }]);
    expect(cautions(scored([`${day},Ada,one,6,yes`, `${day},Ada,big,7,no`]))).toEqual([]);
  });
  it('leaves plantings lost by accident out of all of it', () => {
    expect(
      kinds(
        garden([
          ...withEach([{ stands: 'bed' }, { stands: 'bed' }, { stands: 'bed' }, { stands: 'bed' }]),
          { variety: 'one', grams: 1, stands: 'pot', cause: 'accident' },
        ]),
      ),
    ).toEqual([]);
  });
  it('keeps the order in which a reader should know them', () => {
    const rows: readonly Row[] = [
      { variety: 'one', grams: 100, bed: 'x', stands: 'pot', topped: 'yes' },
      { variety: 'one', grams: 900, bed: 'x', stands: 'pot', topped: 'no', plants: 2 },
      { variety: 'two', grams: 500, bed: 'y', stands: 'ground', topped: 'no' },
    ];
    const ratings = { '2026/ratings.csv': 'date,taster,variety,flavour\n2026-09-01,Ada,one,6\n' };
    expect(kinds(garden(rows, ratings))).toEqual([
      'single-plantings',
      'one-bed',
      'mixed-topped',
      'mixed-stands',
      'unequal-plantings',
      'high-cv',
      'not-blind',
    ]);
  });
});

describe("the packet's claim against an interval", () => {
  const seen = (estimate: number | null, low: number | null, high: number | null) => ({ estimate, low, high });
  it('is outside only where the whole interval is', () => {
    expect(judgeClaim([70, 80], seen(90, 81, 99))).toBe('seen-higher');
    expect(judgeClaim([70, 80], seen(60, 51, 69))).toBe('seen-lower');
    expect(judgeClaim([70, 80], seen(90, 80, 99))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(60, 51, 70))).toBe('cannot-tell');
    expect(judgeClaim([75, 75], seen(80, 75.1, 84))).toBe('seen-higher');
  });
  it('is as claimed where the whole interval lies within it, or a tenth beyond', () => {
    expect(judgeClaim([70, 80], seen(75, 71, 79))).toBe('inside');
    expect(judgeClaim([70, 80], seen(75, 63, 88))).toBe('inside');
    expect(judgeClaim([70, 80], seen(75, 62.9, 80))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(75, 70, 88.1))).toBe('cannot-tell');
    expect(judgeClaim([75, 75], seen(74.6, 70, 79))).toBe('inside');
    // All of it a little below, but within a tenth: more plants do not turn a claim borne out into one that is not.
    expect(judgeClaim([75, 75], seen(72, 70, 74))).toBe('inside');
    expect(judgeClaim([75, 75], seen(75, 60, 90))).toBe('cannot-tell');
  });
  it('cannot tell without an estimate or an interval, unless the limit there is says enough', () => {
    expect(judgeClaim([70, 80], seen(null, 90, 99))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(75, null, null))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(75, 70, null))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(75, null, 85))).toBe('cannot-tell');
    expect(judgeClaim([70, 80], seen(95, 85, null))).toBe('seen-higher');
    expect(judgeClaim([70, 80], seen(60, null, 65))).toBe('seen-lower');
  });
});
