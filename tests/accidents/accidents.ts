import type { Chance, Sheet, Sheets } from './sheets.ts';

/** An accident that befalls records in a spreadsheet. */
export interface Accident {
  readonly kind: string;
  /** True where a careful reader of the sheets, who was not there, would notice. */
  readonly isSeen: boolean;
  /** The table that it befalls, of any season that has it. */
  readonly table: string;
  /** Changes the table in place; false where this one cannot have such an accident. */
  readonly befall: (sheet: Sheet, chance: Chance) => boolean | void;
}

const at = (sheet: Sheet, name: string): number => sheet[0]!.indexOf(name);
const rowOf = (sheet: Sheet, { below }: Chance): number => 1 + below(sheet.length - 1);

/** A row with something in a column. */
function filledRow(sheet: Sheet, name: string, chance: Chance): number {
  const i = at(sheet, name);
  const rows = sheet.flatMap((row, r) => (r > 0 && row[i] ? [r] : []));
  return rows.length === 0 ? -1 : chance.pick(rows);
}

const number = (cell: string): number => Number(cell || NaN);

/** One cell of a column changed. */
const cell =
  (name: string, change: (text: string, chance: Chance) => string) =>
  (sheet: Sheet, chance: Chance): boolean => {
    const r = filledRow(sheet, name, chance);
    if (r < 0) return false;
    const i = at(sheet, name);
    sheet[r]![i] = change(sheet[r]![i]!, chance);
    return true;
  };

/** A whole column changed at once. */
const column =
  (name: string, change: (values: string[], chance: Chance) => string[]) =>
  (sheet: Sheet, chance: Chance): boolean => {
    const i = at(sheet, name);
    if (i < 0) return false;
    const values = change(
      sheet.slice(1).map((row) => row[i]!),
      chance,
    );
    sheet.slice(1).forEach((row, r) => (row[i] = values[r] ?? ''));
    return true;
  };

const sorted = (values: string[]): string[] =>
  values.toSorted((a, b) =>
    Number.isNaN(number(a) - number(b)) ? (a < b ? -1 : a > b ? 1 : 0) : number(a) - number(b),
  );
const shiftedDown = (values: string[]): string[] => [values[0]!, ...values.slice(0, -1)];
const shiftedUp = (values: string[]): string[] => [...values.slice(1), ''];

/** A cell drawn down over some rows, as itself or as a series. */
const drawn =
  (step: (text: string, by: number) => string, least = 8, most = 20) =>
  (values: string[], { below }: Chance): string[] => {
    const length = Math.min(values.length - 1, least + below(most - least + 1));
    const start = below(values.length - length);
    return values.map((value, i) => (i >= start && i < start + length ? step(values[start]!, i - start) : value));
  };
const itself = (text: string): string => text;
const series = (text: string, by: number): string => String(Math.round((number(text) + by) * 100) / 100);

const heading =
  (name: string, as: string) =>
  (sheet: Sheet): boolean => {
    const i = at(sheet, name);
    if (i < 0) return false;
    sheet[0]![i] = as;
    return true;
  };

const times =
  (factor: number, digits = 2) =>
  (text: string): string => {
    const value = number(text) * factor;
    return String(Number(value.toFixed(digits)));
  };

const swapped = (sheet: Sheet, a: string, b: string, rows: readonly number[]): boolean => {
  const [i, j] = [at(sheet, a), at(sheet, b)];
  if (i < 0 || j < 0) return false;
  for (const r of rows) [sheet[r]![i], sheet[r]![j]] = [sheet[r]![j]!, sheet[r]![i]!];
  return true;
};

/** Some rows of one name get another spelling. */
const respelled =
  (name: string, spell: (text: string) => string, share: number) =>
  (sheet: Sheet, chance: Chance): boolean => {
    const i = at(sheet, name);
    const names = [...new Set(sheet.slice(1).map((row) => row[i]!))].filter((own) => own && spell(own) !== own);
    if (names.length === 0) return false;
    const own = chance.pick(names);
    const rows = sheet.filter((row, r) => r > 0 && row[i] === own);
    const first = chance.below(rows.length);
    rows.forEach((row, r) => {
      if (r === first || chance.uniform() < share) row[i] = spell(own);
    });
    return rows.length > 1;
  };

const lookalike = (text: string): string =>
  text.replace(/[aeopc]/, (letter) => ({ a: 'а', e: 'е', o: 'о', p: 'р', c: 'с' })[letter]!);
const moved = (text: string, days: number): string =>
  new Date(Date.parse(text) + days * 86_400_000).toISOString().slice(0, 10);

/** Two letters in the middle of a word exchanged. */
function slip(text: string, { below }: Chance): string {
  const i = 1 + below(Math.max(1, text.length - 3));
  return text.slice(0, i) + (text[i + 1] ?? '') + text[i]! + text.slice(i + 2);
}

const HARVESTS: readonly Omit<Accident, 'table'>[] = [
  { kind: 'weights sorted by themselves', isSeen: true, befall: column('weight_g', sorted) },
  { kind: 'numbers sorted by themselves', isSeen: true, befall: column('fruits', sorted) },
  { kind: 'plantings sorted by themselves', isSeen: true, befall: column('planting', sorted) },
  { kind: 'weights a row too low', isSeen: true, befall: column('weight_g', shiftedDown) },
  { kind: 'numbers a row too high', isSeen: true, befall: column('fruits', shiftedUp) },
  { kind: 'plantings a row too low', isSeen: true, befall: column('planting', shiftedDown) },
  { kind: 'dates a row too low', isSeen: false, befall: column('date', shiftedDown) },
  { kind: 'a weight drawn down', isSeen: true, befall: column('weight_g', drawn(itself)) },
  { kind: 'a weight drawn down as a series', isSeen: true, befall: column('weight_g', drawn(series)) },
  { kind: 'a number drawn down', isSeen: false, befall: column('fruits', drawn(itself)) },
  { kind: 'a number drawn down as a series', isSeen: true, befall: column('fruits', drawn(series)) },
  { kind: 'a planting drawn down', isSeen: true, befall: column('planting', drawn(itself)) },
  { kind: 'a date drawn down', isSeen: false, befall: column('date', drawn(itself)) },
  { kind: 'kilograms over grams', isSeen: true, befall: heading('weight_g', 'weight_kg') },
  { kind: 'ounces over grams', isSeen: true, befall: heading('weight_g', 'weight_oz') },
  { kind: 'pounds over grams', isSeen: true, befall: heading('weight_g', 'weight_lb') },
  {
    kind: 'grams over kilograms',
    isSeen: true,
    befall: column('weight_g', (values) => values.map((value) => (value ? times(0.001, 3)(value) : ''))),
  },
  { kind: 'no unit over the weights', isSeen: true, befall: heading('weight_g', 'weight') },
  { kind: 'a weight ten times', isSeen: false, befall: cell('weight_g', times(10)) },
  { kind: 'a weight a hundred times', isSeen: true, befall: cell('weight_g', times(100)) },
  { kind: 'a weight a tenth', isSeen: false, befall: cell('weight_g', times(0.1)) },
  {
    kind: 'a weight with a mark of thousands',
    isSeen: true,
    befall: cell('weight_g', (text) => `${text[0]},${text.slice(1).padEnd(3, '0')}`),
  },
  { kind: 'a weight lost', isSeen: true, befall: cell('weight_g', () => '') },
  { kind: 'a weight with a sign', isSeen: true, befall: cell('weight_g', (text) => `-${text}`) },
  { kind: 'a weight in doubt', isSeen: true, befall: cell('weight_g', (text) => `${text}?`) },
  { kind: 'a broken reference', isSeen: true, befall: cell('weight_g', () => '#REF!') },
  { kind: 'a formula in place of its value', isSeen: true, befall: cell('weight_g', () => '=D4+D5') },
  { kind: 'a weight as a date', isSeen: true, befall: cell('weight_g', () => '12-Mar') },
  {
    kind: 'number and weight exchanged in a row',
    isSeen: true,
    befall: (sheet, chance) => swapped(sheet, 'fruits', 'weight_g', [filledRow(sheet, 'weight_g', chance)]),
  },
  {
    kind: 'the heads of number and weight exchanged',
    isSeen: true,
    befall: (sheet) => swapped(sheet, 'fruits', 'weight_g', [0]),
  },
  {
    kind: 'a date of last year',
    isSeen: true,
    befall: cell('date', (text) => `${Number(text.slice(0, 4)) - 1}${text.slice(4)}`),
  },
  {
    kind: 'a date two months off',
    isSeen: true,
    befall: cell('date', (text, { pick }) => moved(text, pick([-61, 61]))),
  },
  {
    kind: 'a date ten days off',
    isSeen: false,
    befall: cell('date', (text, { pick }) => moved(text, pick([-10, 10]))),
  },
  {
    kind: 'a date as a day number',
    isSeen: true,
    befall: cell('date', (text) => String(Date.parse(text) / 86_400_000 + 25_569)),
  },
  { kind: 'a date with slashes', isSeen: true, befall: cell('date', (text) => text.split('-').toReversed().join('/')) },
  { kind: 'a date lost', isSeen: true, befall: cell('date', () => '') },
  {
    kind: 'cells of one date taken apart',
    isSeen: true,
    befall: column('date', (values) => values.map((value, i) => (i > 0 && value === values[i - 1] ? '' : value))),
  },
  { kind: 'a slip in a planting’s name', isSeen: true, befall: cell('planting', slip) },
  {
    kind: 'a planting for another',
    isSeen: false,
    befall: (sheet, chance) => {
      const i = at(sheet, 'planting');
      sheet[rowOf(sheet, chance)]![i] = sheet[rowOf(sheet, chance)]![i]!;
    },
  },
  {
    kind: 'a row pasted twice',
    isSeen: true,
    befall: (sheet, chance) => {
      const r = rowOf(sheet, chance);
      sheet.splice(r, 0, [...sheet[r]!]);
    },
  },
  {
    kind: 'a block of rows pasted twice',
    isSeen: true,
    befall: (sheet, chance) => {
      const r = rowOf(sheet, chance);
      sheet.push(...sheet.slice(r, r + 10).map((row) => [...row]));
    },
  },
  {
    kind: 'rows deleted',
    isSeen: false,
    befall: (sheet, chance) => void sheet.splice(rowOf(sheet, chance), 5),
  },
  {
    kind: 'a row of totals below',
    isSeen: true,
    befall: (sheet) =>
      void sheet.push(sheet[0]!.map((name) => (name === 'date' ? 'Total' : name === 'weight_g' ? '98765' : ''))),
  },
  {
    kind: 'the first column deleted',
    isSeen: true,
    befall: (sheet) => sheet.forEach((row) => row.shift()),
  },
  {
    kind: 'a column put in without a head',
    isSeen: true,
    befall: (sheet) => sheet.forEach((row, r) => row.splice(2, 0, r === 0 ? '' : 'x')),
  },
  { kind: 'a stage that is none', isSeen: true, befall: cell('stage', () => 'half') },
];

const MEASUREMENTS: readonly Omit<Accident, 'table'>[] = [
  ...(['fruit_length_cm', 'wall_mm'] as const).flatMap((name) => [
    { kind: `a decimal point lost in ${name}`, isSeen: true, befall: cell(name, times(10)) },
    { kind: `two digits slipped in ${name}`, isSeen: true, befall: cell(name, times(100)) },
    { kind: `nothing in ${name}`, isSeen: true, befall: cell(name, () => '0') },
    {
      kind: `decimal points lost in all of ${name}`,
      isSeen: true,
      befall: column(name, (values) => values.map((value) => value.replace('.', ''))),
    },
    { kind: `${name} drawn down`, isSeen: true, befall: column(name, drawn(itself, 10)) },
    { kind: `${name} drawn down as a series`, isSeen: true, befall: column(name, drawn(series, 10)) },
  ]),
  { kind: 'inches over centimetres', isSeen: true, befall: heading('fruit_length_cm', 'fruit_length_in') },
  { kind: 'millimetres over centimetres', isSeen: true, befall: heading('fruit_length_cm', 'fruit_length_mm') },
  { kind: 'lengths sorted by themselves', isSeen: true, befall: column('fruit_length_cm', sorted) },
  { kind: 'plantings of measures a row too low', isSeen: false, befall: column('planting', shiftedDown) },
];

const RATINGS: readonly Omit<Accident, 'table'>[] = [
  { kind: 'a taster by the first name', isSeen: true, befall: respelled('taster', (name) => name.split(' ')[0]!, 0.3) },
  {
    kind: 'a taster by initial and surname',
    isSeen: true,
    befall: respelled('taster', (name) => `${name[0]} ${name.split(' ')[1]}`, 0.3),
  },
  {
    kind: 'a taster by initial with a stop',
    isSeen: true,
    befall: respelled('taster', (name) => `${name[0]}. ${name.split(' ')[1]}`, 0.3),
  },
  { kind: 'a stop behind a taster', isSeen: true, befall: respelled('taster', (name) => `${name}.`, 0.3) },
  { kind: 'a lookalike letter in a taster', isSeen: true, befall: respelled('taster', lookalike, 0.3) },
  {
    kind: 'a slip in a taster',
    isSeen: true,
    befall: respelled('taster', (name) => name.replace(/(.)(.)$/, '$2$1'), 0.1),
  },
  { kind: 'a score over its scale', isSeen: true, befall: cell('flavour', () => '77') },
  { kind: 'a score of another taster', isSeen: false, befall: cell('flavour', (_, { below }) => String(1 + below(9))) },
  {
    kind: 'scores drawn down as a series',
    isSeen: true,
    befall: column('flavour', (values, chance) =>
      drawn(series, 9, 9)(['1', ...values.slice(1)], { ...chance, below: () => 0 }),
    ),
  },
  { kind: 'an answer that is none', isSeen: true, befall: cell('again', () => 'perhaps') },
];

const PLANTINGS: readonly Omit<Accident, 'table'>[] = [
  { kind: 'round quotes about a block', isSeen: true, befall: respelled('block', (name) => `“${name}”`, 0.3) },
  { kind: 'a lookalike letter in a block', isSeen: true, befall: respelled('block', lookalike, 0.3) },
  { kind: 'a stop behind a block', isSeen: true, befall: respelled('block', (name) => `${name}.`, 0.3) },
  {
    kind: 'a slip in a bed',
    isSeen: true,
    befall: respelled('bed', (name) => name.replace(/(.)(.)(.)/, '$1$3$2'), 0.3),
  },
  {
    kind: 'a letter lost in a bed',
    isSeen: true,
    befall: respelled('bed', (name) => name.replace(/.$/, '\ufffd'), 0.3),
  },
  {
    kind: 'two plantings on one spot',
    isSeen: true,
    befall: (sheet, chance) => {
      const [a, b] = [rowOf(sheet, chance), rowOf(sheet, chance)];
      if (sheet[a] === sheet[b]) return false;
      for (const name of ['bed', 'row', 'column']) sheet[a]![at(sheet, name)] = sheet[b]![at(sheet, name)]!;
      return true;
    },
  },
  {
    kind: 'removed before it was set out',
    isSeen: true,
    befall: cell('removed', (text) => `${text.slice(0, 4)}-04-01`),
  },
  { kind: 'a cause without a day', isSeen: true, befall: cell('removed', () => '') },
  { kind: 'a cause that is none', isSeen: true, befall: cell('cause', () => 'gone') },
];

const days =
  (rows: number) =>
  (values: string[], { below }: Chance) => {
    const start = below(values.length - rows);
    return (i: number): boolean => i >= start && i < start + rows;
  };

const WEATHER: readonly Omit<Accident, 'table'>[] = [
  {
    kind: 'weather of last year',
    isSeen: true,
    befall: column('date', (values) => values.map((text) => `${Number(text.slice(0, 4)) - 1}${text.slice(4)}`)),
  },
  {
    kind: 'a month of weather missing',
    isSeen: true,
    befall: (sheet, { below }) => void sheet.splice(30 + below(90), 30),
  },
  {
    kind: 'three weeks without the lowest temperature',
    isSeen: true,
    befall: column('tmin_c', (values, chance) => {
      const isIn = days(21)(values, chance);
      return values.map((value, i) => (isIn(i) ? '' : value));
    }),
  },
  { kind: 'a day of weather drawn down', isSeen: true, befall: column('tmax_c', drawn(itself, 21, 21)) },
  { kind: 'a temperature drawn down as a series', isSeen: true, befall: column('tmin_c', drawn(series, 8, 12)) },
  {
    kind: 'the heads of lowest and highest exchanged',
    isSeen: true,
    befall: (sheet) => swapped(sheet, 'tmin_c', 'tmax_c', [0]),
  },
  {
    kind: 'Fahrenheit over Celsius',
    isSeen: true,
    befall: (sheet) => heading('tmin_c', 'tmin_f')(sheet) && heading('tmax_c', 'tmax_f')(sheet),
  },
  { kind: 'a decimal point lost in a temperature', isSeen: true, befall: cell('tmax_c', times(10)) },
];

const OTHERS: readonly Accident[] = [
  { kind: 'more came up than were sown', table: 'germination.csv', isSeen: true, befall: cell('germinated', times(3)) },
  { kind: 'seeds ten times', table: 'germination.csv', isSeen: false, befall: cell('seeds', times(10)) },
  { kind: 'a slip in an event', table: 'observations.csv', isSeen: true, befall: cell('event', slip) },
  {
    kind: 'an event of last year',
    table: 'observations.csv',
    isSeen: true,
    befall: cell('date', (text) => `${Number(text.slice(0, 4)) - 1}${text.slice(4)}`),
  },
  {
    kind: 'a letter lost in a variety',
    table: 'varieties.csv',
    isSeen: true,
    befall: cell('name', (name) => name.replace(/.$/, '\ufffd')),
  },
  { kind: 'a lookalike letter in a variety', table: 'varieties.csv', isSeen: true, befall: cell('name', lookalike) },
  { kind: 'a slip in a class', table: 'varieties.csv', isSeen: true, befall: cell('class', slip) },
  {
    kind: 'claims the wrong way round',
    table: 'varieties.csv',
    isSeen: true,
    befall: cell('claim_days_max', () => '9'),
  },
];

/** Every kind of accident. */
export const ACCIDENTS: readonly Accident[] = [
  ...(
    [
      ['harvests.csv', HARVESTS],
      ['measurements.csv', MEASUREMENTS],
      ['ratings.csv', RATINGS],
      ['plantings.csv', PLANTINGS],
      ['weather.csv', WEATHER],
    ] as const
  ).flatMap(([table, list]) => list.map((own) => ({ ...own, table }))),
  ...OTHERS,
];

/** The tables after an accident to one of them; null where it could not happen. */
export function after(
  { table, befall }: Accident,
  sheets: Sheets,
  chance: Chance,
): { readonly sheets: Sheets; readonly path: string } | null {
  const path = chance.pick([...sheets.keys()].filter((own) => own === table || own.endsWith(`/${table}`)));
  const sheet = sheets.get(path)!.map((row) => [...row]);
  if (befall(sheet, chance) === false) return null;
  return { sheets: new Map(sheets).set(path, sheet), path };
}
