import { foldHeader } from '../../terms/names.ts';
import { isoDate } from '../../terms/day.ts';
import type { DateOrder } from '../../terms/settings.ts';
import type { SourceFile } from '../../read/decode.ts';
import type { RawRow } from '../../read/records.ts';
import { openTable } from '../../read/table.ts';
import { dateReader } from '../../sheet/cells/dates.ts';
import { bare, isNothing, questionsOf, tidy } from './columnCells.ts';
import type { AdoptedTrait, ColumnProposal, Question } from './columnCells.ts';
import { DAY_COLUMNS, isNoteTitle, KINDS } from './meanings.ts';
import type { AdoptOptions, Said } from './options.ts';
import { readerIn, seasonsOf, yearsOf } from './seasons.ts';
import type { ReadIn } from './seasons.ts';
import { columnOf, titledDays, yearNamed } from './titles.ts';
import type { Titles } from './titles.ts';
import { collected, wideTables } from './wide.ts';
import { traitKind, wideQuestions } from './wideCells.ts';
import type { BySeason } from './wide.ts';
import { sheetQuestions } from './sheetQuestions.ts';
import { sheetRows } from './sheetRows.ts';
import { keyed, nth } from '../../numerics/element.ts';

export interface Proposal {
  readonly table: string | null;
  readonly order: DateOrder;
  readonly columns: readonly ColumnProposal[];
  readonly questions: readonly Question[];
  readonly rows: number;
  /** Lines of totals, repeated headers and units. */
  readonly leftOut: readonly number[];
  /** The tables in the contract's form, header first, by season; null for what belongs to none. */
  readonly tables: BySeason;
  /** Further tables that the sheet becomes, by their names. */
  readonly beside: ReadonlyMap<string, BySeason>;
  readonly traits: readonly AdoptedTrait[];
}

/** The order of day and month that every written day of the sheet allows; null where both do. */
function orderIn(days: readonly string[]): DateOrder | null {
  let [dayFirst, monthFirst] = [true, true];
  let slashed = false;
  for (const day of days) {
    const parts = /^(\d{1,2})[/.-](\d{1,2})[/.-]\d{4}$/.exec(day);
    if (!parts) continue;
    slashed = true;
    if (Number(parts[2]) > 12) dayFirst = false;
    if (Number(parts[1]) > 12) monthFirst = false;
  }
  if (!slashed) return 'iso';
  return dayFirst === monthFirst ? null : dayFirst ? 'day-first' : 'month-first';
}

function kindOf(columns: readonly ColumnProposal[], options: AdoptOptions): string | null {
  const isDaily = columns.some(({ why }) => why === 'day' || why === 'day-unclear');
  if (options.table !== null) return options.table === 'season' && isDaily ? 'plantings' : options.table;
  const has = new Set(columns.flatMap(({ header }) => (header === null ? [] : [bare(header)])));
  const traitKinds = columns.flatMap(({ header, trait }) => {
    if (trait) return [trait.kind];
    const key = [...options.traits.keys()].find((name) => header?.startsWith(foldHeader(name)));
    return key === undefined ? [] : [keyed(options.traits, key)];
  });
  if (traitKinds.includes('rating')) has.add('a rating');
  if (traitKinds.includes('measure')) has.add('a measure');
  if (columns.some(({ why }) => why === 'day' || why === 'day-unclear')) has.add('a day');
  const isWide = has.has('a day') && has.has('variety') && !has.has('date') && !has.has('taster');
  if (
    isWide &&
    (['plants', 'bed', 'sown', 'transplanted'].some((name) => has.has(name)) ||
      columns.some((own) => traitKind(own, options.traits) !== null))
  )
    return 'plantings';
  const names = has.has('variety') || has.has('planting');
  const fit = KINDS.filter(
    ({ table, all, any, none }) =>
      (names || table === 'weather') &&
      all.every((name) => has.has(name)) &&
      (any.length === 0 || any.some((name) => has.has(name))) &&
      !none.some((name) => has.has(name)),
  );
  return fit[0]?.table ?? null;
}

const NOTHING: Omit<Proposal, 'questions'> = {
  table: null,
  order: 'iso',
  columns: [],
  rows: 0,
  leftOut: [],
  tables: new Map(),
  beside: new Map(),
  traits: [],
};

/** A column called Note is one of grades where it holds nothing but numbers, else one of remarks. */
function noteColumn(column: ColumnProposal, texts: readonly string[]): ColumnProposal {
  if (column.why !== 'unknown' || !isNoteTitle(column.title)) return column;
  const filled = texts.filter((text) => !isNothing(text));
  const isGrades = filled.length > 0 && filled.every((text) => /^\d+(?:[.,]\d+)?$/.test(text));
  return { ...column, header: isGrades ? 'score' : 'notes', why: 'name' };
}

/** The rows of a sheet in the contract's form: days year first, what the grower leaves out left out. */
function adopted(rows: readonly RawRow[], columns: readonly ColumnProposal[], read: ReadIn) {
  return rows.map((row, r) =>
    columns.map(({ header }, i) => {
      const text = tidy(row.cells[i] ?? '');
      const day = header !== null && DAY_COLUMNS.has(header) ? read(text, r) : null;
      return day?.kind === 'day' ? isoDate(day.day) : text;
    }),
  );
}

/** The tables by season, without the columns that the grower leaves out. */
function bySeason(
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
): BySeason {
  const isKept = (_: unknown, i: number): boolean =>
    nth(columns, i).header !== 'season' && (nth(columns, i).header !== null || nth(columns, i).why !== 'said');
  const head = columns.map(({ header, title }) => header ?? title).filter(isKept);
  return collected(
    rows.map((row, i) => [nth(seasons, i), row.filter(isKept)]),
    head,
  );
}

/** How a sheet's titles are read: by the days in titles and cells that have but one reading. */
function titlesOf(source: SourceFile, options: AdoptOptions): Titles {
  const year = options.season ?? yearNamed(source.path);
  const peek = openTable(source);
  const titled = 'kind' in peek ? [] : titledDays(peek.titles, year);
  const order = options.order ?? orderIn(titled) ?? 'iso';
  return { read: dateReader(options.languages, order), year };
}

/** Questions about titles: columns said that are not there, days and scales that no cell can tell. */
function titleQuestions(
  titles: readonly string[],
  columns: readonly ColumnProposal[],
  said: Said,
  year: number | null,
): readonly Question[] {
  const isThere = (name: string): boolean => titles.some((title) => foldHeader(title) === foldHeader(name));
  const unclear = columns.find(({ why }) => why === 'day-unclear');
  return [
    ...[...said.keys()]
      .filter((name) => !isThere(name))
      .map((name) => ({ kind: 'no-such-column' as const, title: name, found: titles.join(', ') })),
    ...(unclear && year === null ? [{ kind: 'no-season' as const }] : []),
    ...(unclear && year !== null
      ? [{ kind: 'date-order' as const, title: unclear.title, found: unclear.title, line: null }]
      : []),
  ];
}

/** The tables that a sheet becomes. */
function tablesOf(
  kind: string | null,
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
  options: AdoptOptions,
): Pick<Proposal, 'tables' | 'beside'> {
  if (
    kind !== 'plantings' ||
    !columns.some((column) => column.why === 'day' || traitKind(column, options.traits) !== null)
  )
    return { tables: bySeason(rows, seasons, columns), beside: new Map() };
  const { plantings, ...others } = wideTables(rows, seasons, columns, options);
  return { tables: plantings, beside: new Map(Object.entries(others).filter(([, table]) => table.size > 0)) };
}

const orderQuestion = (title: string, found: string): Question => ({ kind: 'date-order', title, found, line: null });

/** Questions about cells that do not fit their column. */
function cellQuestions(
  rows: readonly RawRow[],
  columns: readonly ColumnProposal[],
  read: ReadIn,
  options: AdoptOptions,
): readonly Question[] {
  return columns.flatMap((column, i) => {
    const cells = rows.map((own, row) => ({ text: tidy(own.cells[i] ?? ''), line: own.line, row }));
    return [...questionsOf(column, cells, read), ...wideQuestions(column, cells, options)];
  });
}

/**
 * Looks at a sheet that is not of the contract and says what its columns are. Nothing is guessed from figures alone, and
 * no figure is left behind without a word: a unit, a scale, an order of day and month that cannot be seen is asked for.
 *
 * @param source   the file, or a sheet of a workbook
 * @param options  what the grower says of it
 */
export function proposeTable(source: SourceFile, options: AdoptOptions): Proposal {
  const titles = titlesOf(source, options);
  const isHeader = (names: readonly string[]): boolean =>
    names.filter((title) => columnOf(title, options, titles).why !== 'unknown').length >= 2;
  const table = openTable(source, isHeader);
  if ('kind' in table) return { ...NOTHING, questions: [{ kind: 'unreadable' }] };
  const sheet = sheetRows(
    table,
    table.titles.map((title) => columnOf(title, options, titles)),
  );
  const { rows, leftOut } = sheet;
  const textsOf = (i: number): readonly string[] => rows.map((row) => tidy(row.cells[i] ?? ''));
  const columns = sheet.columns.map((column, i) => noteColumn(column, textsOf(i)));
  const dayColumns = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const cellDays = dayColumns.flatMap(textsOf).filter((text) => !isNothing(text));
  const days = [...cellDays, ...titledDays(cellDays, titles.year)];
  const order = options.order ?? orderIn([...days, ...titledDays(table.titles, titles.year)]);
  const read = dateReader(options.languages, order ?? 'day-first');
  const readIn = readerIn(read, yearsOf(columns, rows, titles.year));
  const kind = kindOf(columns, options);
  const questions: Question[] = [
    ...sheet.questions,
    ...titleQuestions(table.titles, columns, options.said, titles.year),
    ...sheetQuestions(kind, columns, textsOf, options.picked),
  ];
  const isUnclear = order === null && orderIn(days) === null;
  const lacksSeason = questions.some((own) => own.kind === 'no-season');
  if (isUnclear) questions.push(orderQuestion(nth(columns, nth(dayColumns, 0)).title, nth(days, 0)));
  else if (!lacksSeason) questions.push(...cellQuestions(rows, columns, readIn, options));
  const written = adopted(rows, columns, readIn);
  const seasons =
    kind === 'varieties' ? rows.map(() => null) : seasonsOf(written, columns, options.season, titles.year);
  if (kind !== null && kind !== 'varieties' && !isUnclear && !lacksSeason && seasons.includes(null))
    questions.push({ kind: 'no-season' });
  return {
    table: kind,
    order: order ?? 'iso',
    columns,
    questions,
    rows: rows.length,
    leftOut,
    ...tablesOf(kind, written, seasons, columns, options),
    traits: columns.flatMap(({ trait }) => (trait ? [trait] : [])),
  };
}
