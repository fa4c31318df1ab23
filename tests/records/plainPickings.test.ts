import { describe, expect, it } from 'vitest';
import { nth } from '../../src/numerics/element.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { decimalAt, openWords, wholeAt } from '../../src/read/plainCells.ts';
import { pickingsOf } from '../../src/terms/record.ts';
import { check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// Plain rows of a long table are taken from its text; a quotation mark anywhere in a block sends all of it the usual way.

const IDS = ['p1', 'p2', 'E12', 'n1', 'na', 'total', 'Bed-3', 'p4'];

/** A cell as it mostly is, or with something about it. */
function cellOf(pick: (of: readonly string[]) => string, usual: readonly string[], odd: readonly string[]): string {
  return pick(Array.from({ length: 12 }, (_, i) => (i < 11 || odd.length === 0 ? pick(usual) : pick(odd))));
}

function harvests(seed: number, columns: readonly string[], more: string, isSound: boolean): string {
  const { uniform } = randomStream(`plain ${seed}`);
  const pick = (of: readonly string[]): string => nth(of, Math.floor(uniform() * of.length));
  const odd = (those: readonly string[]): readonly string[] => (isSound ? [] : those);
  const cells: Readonly<Record<string, () => string>> = {
    date: () =>
      cellOf(
        pick,
        ['2026-07-20', '2026-07-27', '2026-08-03'],
        odd([
          '',
          '2026-02-30',
          '27.7.2026',
          '2025-07-20',
          '2026-05-01',
          '2026-11-30',
          '45000',
          ' 2026-08-03',
          '2026-8-3',
        ]),
      ),
    planting: () =>
      cellOf(
        pick,
        isSound ? IDS.filter((id) => id !== 'na' && id !== 'p4') : IDS,
        isSound ? ['P1', 'bed-3'] : ['', 'P1', 'p9', 'bed-3', ' p2', 'w1', '=A1', 'p1x'],
      ),
    fruits: () =>
      cellOf(
        pick,
        isSound ? ['1', '3', '12'] : ['1', '3', '12', ''],
        isSound ? ['0', '007', '<5'] : ['0', '-2', '1.5', '<5', '1,5', '007', '1e3', 'x', '1234567890'],
      ),
    weight: () =>
      cellOf(
        pick,
        ['120', '80.5', '1040', ''],
        isSound
          ? ['340 g', '1/2', 'trace', '12 oz']
          : ['0', '340 g', '1/2', '>2', 'trace', '.5', '5.', '1.250', '#REF!', '12 oz'],
      ),
    stage: () => cellOf(pick, ['', 'ripe', 'green'], isSound ? ['Ripe'] : ['Ripe', 'grn', 'tot']),
    notes: () => cellOf(pick, [''], ['after rain', '  ', 'NA']),
  };
  const head = columns.map((name) => (name === 'weight' ? 'weight_g' : name)).join(',');
  const rows = Array.from({ length: 60 }, () => {
    const row = columns.map((name) => cells[name]!()).join(',');
    const kind = uniform();
    if (kind > 0.98) return head;
    if (kind > 0.97) return columns.map((_, i) => (i === 0 ? 'Total' : '')).join(',');
    if (kind > 0.95) return '';
    if (kind > 0.93) return `${row},`;
    return kind > 0.92 && !isSound ? row.slice(0, row.lastIndexOf(',')) : row;
  });
  return [head, ...rows, more].join(uniform() < 0.3 ? '\r\n' : '\n');
}

function folder(table: string, settings: string): Folder {
  return {
    'trial.yaml': `title: T\nseasons: {2026: {sown: 2026-03-01, transplanted: 2026-05-20}}\n${settings}`,
    'varieties.csv': 'variety\na\nb\n',
    '2026/plantings.csv': `planting,variety,plants,removed\n${IDS.map((id, i) => `${id},${'ab'[i % 2]},1,${i === 7 ? '2026-07-25' : ''}`).join('\n')}\nw1,a,1,\n`,
    '2026/harvests.csv': table,
  };
}

const seenOf = (own: Folder) => {
  const { trial, problems } = check(own);
  const season = trial?.seasons[0] ?? trial?.ongoing;
  return { problems, pickings: season?.plantings.map((planting) => pickingsOf(planting)), remarks: season?.remarks };
};

describe('plain rows of pickings', () => {
  const columns = [
    ['date', 'planting', 'fruits', 'weight', 'stage', 'notes'],
    ['planting', 'weight', 'date'],
    ['stage', 'fruits', 'planting', 'notes', 'date', 'weight'],
  ];
  it.each([
    ['', 40],
    ['publish: {show: [notes]}\n', 10],
    ['dates: month-first\nlanguage: de\n', 10],
  ])('are what the usual way makes of them (%j)', (settings, runs) => {
    let sound = 0;
    for (let seed = 0; seed < runs; seed++) {
      const own = nth(columns, seed % 3);
      const last = (cell: string): string =>
        own.map((name) => ({ date: '2026-08-10', planting: cell, fruits: '2', weight: '90' })[name] ?? '').join(',');
      for (const isSound of [true, false]) {
        const plain = seenOf(folder(harvests(seed, own, last('p1'), isSound), settings));
        const usual = seenOf(folder(harvests(seed, own, last('"p1"'), isSound), settings));
        expect(plain, `seed ${seed}`).toEqual(usual);
        if ((plain.pickings?.flat().length ?? 0) > 10) sound++;
      }
    }
    // Records are compared too, not their problems alone.
    expect(sound).toBeGreaterThan(runs / 8);
  });
  it('that stand there twice are told with what is written', () => {
    const table = 'date,planting,fruits,weight_g\n2026-07-20,p1,3,120\n2026-07-20,p1,3,120\n';
    const twice = seenOf(folder(table, '')).problems.filter(({ code }) => code === 'row-twice');
    expect(twice).toMatchObject([{ found: '2026-07-20', places: [{ line: 3, column: 1 }] }]);
  });
});

describe('cells in their text', () => {
  it('numbers are those that JavaScript reads, to the last bit', () => {
    const { uniform } = randomStream('numbers');
    for (let i = 0; i < 5000; i++) {
      const digits = (most: number): string =>
        Array.from({ length: 1 + Math.floor(uniform() * most) }, () => String(Math.floor(uniform() * 10))).join('');
      const text = uniform() < 0.5 ? digits(9) : `${digits(7)}.${digits(7)}`;
      expect(decimalAt(`a${text}b`, 1, 1 + text.length)).toBe(Number(text));
      expect(wholeAt(text, 0, text.length)).toBe(text.includes('.') ? -1 : Number(text));
    }
    for (const odd of ['', '.5', '5.', '-1', '1e3', '1,5', ' 1', '1.2.3', '1234567890123456'])
      expect(decimalAt(odd, 0, odd.length)).toBe(-1);
  });
  it('words are found where they stand whole', () => {
    const words = Array.from({ length: 500 }, (_, i) => `p${i}`);
    const find = openWords(words);
    words.forEach((word, i) => expect(find(`x,${word},y`, 2, 2 + word.length)).toBe(i));
    for (const odd of ['', 'p', 'p500', 'P1', 'p01']) expect(find(odd, 0, odd.length)).toBe(-1);
  });
});
