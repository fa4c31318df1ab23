import { foldHeader } from '../../terms/names.ts';
import { isoDate } from '../../terms/day.ts';
import type { DateOrder } from '../../terms/settings.ts';
import type { SourceFile } from '../../read/decode.ts';
import type { RawRow } from '../../read/records.ts';
import { openTable } from '../../read/table.ts';
import { dateReader } from '../../sheet/cells/dates.ts';
import type { DateReader } from '../../sheet/cells/dates.ts';
import { bare, isNothing, questionsOf, tidy } from './columnCells.ts';
import type { AdoptedTrait, ColumnProposal, Question } from './columnCells.ts';
import { DAY_COLUMNS, isNoteTitle, KINDS, meaningOf } from './meanings.ts';
import { sheetQuestions } from './sheetQuestions.ts';
import { sheetRows } from './sheetRows.ts';
import { keyed, nth } from '../../numerics/element.ts';

/** What the grower says of columns, by title; null leaves a column as it is. */
export type Said = ReadonlyMap<string, string | AdoptedTrait | null>;

export interface AdoptOptions {
  readonly said: Said;
  readonly table: string | null;
  readonly season: number | null;
  readonly order: DateOrder | null;
  /** The trial's language, or all there are where there is no trial yet: for names of months. */
  readonly languages: readonly string[];
  /** Keys of traits that the trial has declared already. */
  readonly traits: ReadonlyMap<string, 'rating' | 'measure'>;
}

export interface Proposal {
  readonly table: string | null;
  readonly order: DateOrder;
  readonly columns: readonly ColumnProposal[];
  readonly questions: readonly Question[];
  readonly rows: number;
  /** Lines of totals, repeated headers and units. */
  readonly leftOut: readonly number[];
  /** The tables in the contract's form, header first, by season; null for what belongs to none. */
  readonly tables: ReadonlyMap<number | null, readonly (readonly string[])[]>;
  readonly traits: readonly AdoptedTrait[];
}

/** The day that a title names, and what is counted after it; null for any other title. */
function dayIn(title: string, read: DateReader): { readonly day: string; readonly rest: string } | null {
  const parts = /^(.*\d.*?)([\s_]+[([]?[^\s\d()[\]]+[)\]]?)$/.exec(title);
  for (const [text, rest] of [[title, ''], ...(parts ? [[nth(parts, 1), nth(parts, 2)]] : [])] as [string, string][]) {
    const result = read(text.trim());
    if (result.kind === 'day') return { day: isoDate(result.day), rest };
  }
  return null;
}

function columnOf(title: string, { said, traits }: AdoptOptions, read: DateReader): ColumnProposal {
  const own = [...said].find(([name]) => foldHeader(name) === foldHeader(title))?.[1];
  if (own === null) return { title, header: null, trait: null, why: 'said' };
  if (typeof own === 'string') return { title, header: foldHeader(own), trait: null, why: 'said' };
  if (own) return { title, header: own.key, trait: own, why: 'said' };
  const key = [...traits.keys()].find(
    (name) => foldHeader(title).replace(/_(?:cm|mm|in|g|oz)$/, '') === foldHeader(name),
  );
  if (key !== undefined) return { title, header: foldHeader(title), trait: null, why: 'trait' };
  const meaning = meaningOf(title);
  const day = meaning ? null : dayIn(title, read);
  if (day) return { title, header: `${day.day}${day.rest}`, trait: null, why: 'day' };
  if (!meaning) return { title, header: null, trait: null, why: 'unknown' };
  return {
    title,
    header: meaning.unit === null ? meaning.name : `${meaning.name}_${meaning.unit}`,
    trait: null,
    why: 'name',
  };
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
  if (options.table !== null) return options.table;
  const has = new Set(columns.flatMap(({ header }) => (header === null ? [] : [bare(header)])));
  const traitKinds = columns.flatMap(({ header, trait }) => {
    if (trait) return [trait.kind];
    const key = [...options.traits.keys()].find((name) => header?.startsWith(foldHeader(name)));
    return key === undefined ? [] : [keyed(options.traits, key)];
  });
  if (traitKinds.includes('rating')) has.add('a rating');
  if (traitKinds.includes('measure')) has.add('a measure');
  if (columns.some(({ why }) => why === 'day')) has.add('a day');
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

/** The season of each row: the one that was said, else the year of its date, else the only year of the sheet. */
function seasonsOf(
  rows: readonly (readonly string[])[],
  columns: readonly ColumnProposal[],
  said: number | null,
): readonly (number | null)[] {
  const yearIn = (text: string | undefined): number | null => {
    const year = /^(\d{4})-\d{2}-\d{2}/.exec(text ?? '')?.[1];
    return year === undefined ? null : Number(year);
  };
  const dated = columns.findIndex(({ header }) => header === 'date');
  if (said !== null) return rows.map(() => said);
  if (dated >= 0) return rows.map((row) => yearIn(row[dated]));
  const days = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const heads = columns.flatMap(({ header, why }) => (why === 'day' ? [header] : []));
  const years = new Set([
    ...rows.flatMap((row) => days.flatMap((i) => yearIn(row[i]) ?? [])),
    ...heads.flatMap((day) => yearIn(day ?? '') ?? []),
  ]);
  return rows.map(() => (years.size === 1 ? nth([...years], 0) : null));
}

const NOTHING: Omit<Proposal, 'questions'> = {
  table: null,
  order: 'iso',
  columns: [],
  rows: 0,
  leftOut: [],
  tables: new Map(),
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
function adopted(rows: readonly RawRow[], columns: readonly ColumnProposal[], read: DateReader) {
  return rows.map((row) =>
    columns.map(({ header }, i) => {
      const text = tidy(row.cells[i] ?? '');
      const day = header !== null && DAY_COLUMNS.has(header) ? read(text) : null;
      return day?.kind === 'day' ? isoDate(day.day) : text;
    }),
  );
}

/** The tables by season, without the columns that the grower leaves out. */
function bySeason(
  rows: readonly (readonly string[])[],
  seasons: readonly (number | null)[],
  columns: readonly ColumnProposal[],
): Proposal['tables'] {
  const isKept = (_: unknown, i: number): boolean => nth(columns, i).header !== null || nth(columns, i).why !== 'said';
  const head = columns.map(({ header, title }) => header ?? title).filter(isKept);
  const tables = new Map<number | null, (readonly string[])[]>();
  rows.forEach((row, i) => {
    const own = tables.get(nth(seasons, i)) ?? [head];
    own.push(row.filter(isKept));
    tables.set(nth(seasons, i), own);
  });
  return tables;
}

/**
 * Looks at a sheet that is not of the contract and says what its columns are. Nothing is guessed from figures alone:
 * a title that is not known is left, a unit, a scale, an order of day and month that cannot be seen is asked for.
 *
 * @param source   the file, or a sheet of a workbook
 * @param options  what the grower says of it
 */
export function proposeTable(source: SourceFile, options: AdoptOptions): Proposal {
  const titleReader = dateReader(options.languages, options.order ?? 'iso');
  const isHeader = (titles: readonly string[]): boolean =>
    titles.filter((title) => columnOf(title, options, titleReader).header !== null).length >= 2;
  const table = openTable(source, isHeader);
  if ('kind' in table) return { ...NOTHING, questions: [{ kind: 'unreadable' }] };
  const sheet = sheetRows(
    table,
    table.titles.map((title) => columnOf(title, options, titleReader)),
  );
  const { rows, leftOut } = sheet;
  const textsOf = (i: number): readonly string[] => rows.map((row) => tidy(row.cells[i] ?? ''));
  const columns = sheet.columns.map((column, i) => noteColumn(column, textsOf(i)));
  const dayColumns = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const days = dayColumns.flatMap(textsOf).filter((text) => !isNothing(text));
  const order = options.order ?? orderIn(days);
  const read = dateReader(options.languages, order ?? 'day-first');
  const kind = kindOf(columns, options);
  const questions: Question[] = [...sheet.questions];
  for (const name of options.said.keys())
    if (!table.titles.some((title) => foldHeader(title) === foldHeader(name)))
      questions.push({ kind: 'no-such-column', title: name, found: table.titles.join(', ') });
  questions.push(...sheetQuestions(kind, columns, textsOf));
  if (order === null)
    questions.push({
      kind: 'date-order',
      title: nth(columns, nth(dayColumns, 0)).title,
      found: nth(days, 0),
      line: null,
    });
  else
    columns.forEach((column, i) => {
      const cells = textsOf(i).map((text, r) => ({ text, line: nth(rows, r).line }));
      questions.push(...questionsOf(column, cells, read));
    });
  const written = adopted(rows, columns, read);
  const seasons = kind === 'varieties' ? rows.map(() => null) : seasonsOf(written, columns, options.season);
  if (kind !== 'varieties' && order !== null && seasons.includes(null)) questions.push({ kind: 'no-season' });
  return {
    table: kind,
    order: order ?? 'iso',
    columns,
    questions,
    rows: rows.length,
    leftOut,
    tables: bySeason(written, seasons, columns),
    traits: columns.flatMap(({ trait }) => (trait ? [trait] : [])),
  };
}
