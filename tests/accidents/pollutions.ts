import type { Chance } from './sheets.ts';

/** A way in which a CSV file's form comes to harm, whatever stands in it. */
export interface Pollution {
  readonly kind: string;
  readonly pollute: (text: string, chance: Chance) => string | Uint8Array;
}

const lines = (text: string): string[] => text.replace(/\n$/, '').split('\n');
const joined = (own: readonly string[]): string => `${own.join('\n')}\n`;

/** One row changed; the header is row 0. */
function oneRow(text: string, { below }: Chance, change: (row: string) => string): string {
  const all = lines(text);
  const at = 1 + below(all.length - 1);
  return joined(all.map((row, i) => (i === at ? change(row) : row)));
}

const everyRow = (text: string, change: (row: string, i: number) => string): string => joined(lines(text).map(change));

/** Where the nth of a mark stands, with the places of all. */
function marks(row: string, mark: string): readonly number[] {
  return [...row].flatMap((char, i) => (char === mark ? [i] : []));
}

const at = (row: string, index: number, put: string, remove = 0): string =>
  row.slice(0, index) + put + row.slice(index + remove);

/** Every kind; the delimiter is a comma and nothing is quoted before. */
export const POLLUTIONS: readonly Pollution[] = [
  { kind: 'semicolons between cells', pollute: (text) => text.replaceAll(',', ';') },
  { kind: 'tabs between cells', pollute: (text) => text.replaceAll(',', '\t') },
  { kind: 'a blank after each comma', pollute: (text) => text.replaceAll(',', ', ') },
  { kind: 'another delimiter, tildes', pollute: (text) => text.replaceAll(',', '~') },
  {
    kind: 'semicolons in one row',
    pollute: (text, chance) => oneRow(text, chance, (row) => row.replaceAll(',', ';')),
  },
  { kind: 'tabs in one row', pollute: (text, chance) => oneRow(text, chance, (row) => row.replaceAll(',', '\t')) },
  {
    kind: 'one mark of a row is another',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) => at(row, chance.pick(marks(row, ',')), chance.pick([';', '\t', '.', ' ']), 1)),
  },
  {
    kind: 'one mark too many in a row',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.pick(marks(row, ',')), ',')),
  },
  {
    kind: 'two marks too many in a row',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.pick(marks(row, ',')), ',,')),
  },
  { kind: 'a mark before a row', pollute: (text, chance) => oneRow(text, chance, (row) => `,${row}`) },
  { kind: 'a mark after a row', pollute: (text, chance) => oneRow(text, chance, (row) => `${row},`) },
  {
    kind: 'a mark too few in a row',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.pick(marks(row, ',')), '', 1)),
  },
  {
    kind: 'a cell gone with its mark',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) => {
        const cells = row.split(',');
        cells.splice(chance.below(cells.length), 1);
        return cells.join(',');
      }),
  },
  { kind: 'a mark after every row', pollute: (text) => everyRow(text, (row) => `${row},`) },
  {
    kind: 'a mark after every row but the header',
    pollute: (text) => everyRow(text, (row, i) => (i ? `${row},` : row)),
  },
  { kind: 'a mark after the header alone', pollute: (text) => everyRow(text, (row, i) => (i ? row : `${row},`)) },
  {
    kind: 'a mark before every row but the header',
    pollute: (text) => everyRow(text, (row, i) => (i ? `,${row}` : row)),
  },
  {
    kind: 'all cells quoted',
    pollute: (text) =>
      everyRow(text, (row) =>
        row
          .split(',')
          .map((cell) => `"${cell}"`)
          .join(','),
      ),
  },
  {
    kind: 'cells in single quotes in one row',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) =>
        row
          .split(',')
          .map((cell) => `'${cell}'`)
          .join(','),
      ),
  },
  {
    kind: 'all cells in single quotes',
    pollute: (text) =>
      everyRow(text, (row) =>
        row
          .split(',')
          .map((cell) => `'${cell}'`)
          .join(','),
      ),
  },
  {
    kind: 'a row quoted as one cell',
    pollute: (text, chance) => oneRow(text, chance, (row) => `"${row}"`),
  },
  { kind: 'every row quoted as one cell', pollute: (text) => everyRow(text, (row) => `"${row}"`) },
  {
    kind: 'a quote in a cell',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, 1 + chance.below(row.length - 1), '"')),
  },
  {
    kind: 'a quote opened before a cell',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, 1 + chance.pick(marks(row, ',')), '"')),
  },
  {
    kind: 'a quoted cell with words behind its end',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) => {
        const cells = row.split(',');
        const i = chance.below(cells.length);
        cells[i] = `"${cells[i]}"x`;
        return cells.join(',');
      }),
  },
  {
    kind: 'quotes escaped by backslashes',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) => {
        const cells = row.split(',');
        const i = chance.below(cells.length);
        cells[i] = `"\\"${cells[i]}\\""`;
        return cells.join(',');
      }),
  },
  {
    kind: 'marks escaped by backslashes',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.pick(marks(row, ',')), '\\')),
  },
  {
    kind: 'typographic quotes around a cell',
    pollute: (text, chance) =>
      oneRow(text, chance, (row) => {
        const cells = row.split(',');
        const i = chance.below(cells.length);
        cells[i] = `“${cells[i]}”`;
        return cells.join(',');
      }),
  },
  { kind: 'line ends of Windows', pollute: (text) => text.replaceAll('\n', '\r\n') },
  { kind: 'line ends of old machines', pollute: (text) => text.replaceAll('\n', '\r') },
  {
    kind: 'line ends mixed',
    pollute: (text, { pick }) => text.replaceAll('\n', () => pick(['\n', '\r\n', '\r'])),
  },
  { kind: 'line ends of Unicode', pollute: (text, { pick }) => text.replaceAll('\n', pick(['\u2028', '\u0085'])) },
  {
    kind: 'a row broken in two',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, 1 + chance.below(row.length - 1), '\n')),
  },
  {
    kind: 'two rows run together',
    pollute: (text, { below }) => {
      const all = lines(text);
      const first = 1 + below(all.length - 2);
      return joined([...all.slice(0, first), all[first]! + all[first + 1]!, ...all.slice(first + 2)]);
    },
  },
  { kind: 'no end to the last line', pollute: (text) => text.replace(/\n$/, '') },
  { kind: 'empty lines at the end', pollute: (text) => `${text}\n\n` },
  { kind: 'an empty line in the middle', pollute: (text, chance) => oneRow(text, chance, (row) => `\n${row}`) },
  {
    kind: 'a row of marks in the middle',
    pollute: (text, chance) => oneRow(text, chance, (row) => `${row.replaceAll(/[^,]/g, '')}\n${row}`),
  },
  { kind: 'no header', pollute: (text) => joined(lines(text).slice(1)) },
  { kind: 'the header alone', pollute: (text) => joined(lines(text).slice(0, 1)) },
  { kind: 'nothing', pollute: () => '' },
  { kind: 'the header twice', pollute: (text) => `${lines(text)[0]}\n${text}` },
  {
    kind: 'the header again in the middle',
    pollute: (text, chance) => oneRow(text, chance, (row) => `${lines(text)[0]}\n${row}`),
  },
  {
    kind: 'a header over the header',
    pollute: (text) =>
      `${lines(text)[0]!
        .split(',')
        .map((_, i) => (i === 0 ? 'Records' : ''))
        .join(',')}\n${text}`,
  },
  {
    kind: 'capitals and blanks in the header',
    pollute: (text) => everyRow(text, (row, i) => (i ? row : row.toUpperCase().replaceAll('_', ' '))),
  },
  {
    kind: 'a word of the header gone',
    pollute: (text, { below }) =>
      everyRow(text, (row, i) => {
        if (i > 0) return row;
        const cells = row.split(',');
        cells[below(cells.length)] = '';
        return cells.join(',');
      }),
  },
  {
    kind: 'a word of the header twice',
    pollute: (text, { below }) =>
      everyRow(text, (row, i) => {
        if (i > 0) return row;
        const cells = row.split(',');
        cells[below(cells.length)] = cells[below(cells.length)]!;
        return cells.join(',');
      }),
  },
  {
    kind: 'a letter of the header changed',
    pollute: (text, chance) =>
      everyRow(text, (row, i) => (i ? row : at(row, chance.below(row.length), chance.pick([...'abcxyz_']), 1))),
  },
  { kind: 'lines above the table', pollute: (text) => `Marrowdale\nRecords of the season\n\n${text}` },
  {
    kind: 'comments with a number sign',
    pollute: (text, chance) => oneRow(text, chance, (row) => `# checked\n${row}`),
  },
  { kind: 'a note below the table', pollute: (text) => `${text}\nWeighed on the kitchen scales by two of us\n` },
  {
    kind: 'another table below',
    pollute: (text) => `${text}\nname,telephone\nthe shed,12\nthe gate,7\n`,
  },
  {
    kind: 'the same table again below',
    pollute: (text) => `${text}${text}`,
  },
  {
    kind: 'another table beside',
    pollute: (text, { pick }) => everyRow(text, (row, i) => `${row},,${i ? pick(['4', '', 'x']) : 'total'}`),
  },
  {
    kind: 'a byte order mark in the middle',
    pollute: (text, chance) => oneRow(text, chance, (row) => `\ufeff${row}`),
  },
  { kind: 'UTF-16', pollute: (text) => Buffer.from(`\ufeff${text}`, 'utf16le') },
  { kind: 'UTF-16 without its mark', pollute: (text) => Buffer.from(text, 'utf16le') },
  {
    kind: 'a null in a row',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.below(row.length), '\0')),
  },
  {
    kind: 'a control character in a row',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.below(row.length), '\u0007')),
  },
  {
    kind: 'blanks around the cells',
    pollute: (text) =>
      everyRow(text, (row) =>
        row
          .split(',')
          .map((cell) => ` ${cell}  `)
          .join(','),
      ),
  },
  {
    kind: 'hard blanks around the cells',
    pollute: (text) =>
      everyRow(text, (row) =>
        row
          .split(',')
          .map((cell) => `\u00a0${cell}`)
          .join(','),
      ),
  },
  {
    kind: 'a letter lost to another encoding',
    pollute: (text, chance) => oneRow(text, chance, (row) => at(row, chance.below(row.length), '\ufffd', 1)),
  },
  {
    kind: 'decimal commas without quotes',
    pollute: (text) => text.replaceAll(/(\d)\.(\d)/g, '$1,$2'),
  },
  {
    kind: 'decimal commas between semicolons',
    pollute: (text) => text.replaceAll(',', ';').replaceAll(/(\d)\.(\d)/g, '$1,$2'),
  },
  { kind: 'a line that names the mark', pollute: (text) => `sep=,\n${text}` },
  { kind: 'a line that names another mark', pollute: (text) => `sep=;\n${text}` },
  {
    kind: 'the last line cut',
    pollute: (text, { below }) => {
      const all = lines(text);
      const last = all.at(-1)!;
      return [...all.slice(0, -1), last.slice(0, 1 + below(last.length - 1))].join('\n');
    },
  },
];
