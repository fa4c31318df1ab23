import { foldHeader } from '../../terms/names.ts';
import { isoDate } from '../../terms/day.ts';
import type { DateOrder } from '../../terms/settings.ts';
import type { SourceFile } from '../../read/decode.ts';
import type { RawRow } from '../../read/records.ts';
import { openTable } from '../../read/table.ts';
import { dateReader } from '../cells/dates.ts';
import type { DateReader } from '../cells/dates.ts';
import { bare, isNothing, questionsOf, tidy } from './columnCells.ts';
import type { AdoptedTrait, ColumnProposal, Question } from './columnCells.ts';
import { DAY_COLUMNS, KINDS, meaningOf } from './meanings.ts';

/** What the grower says of columns, by title; null leaves a column as it is. */
export type Said = ReadonlyMap<string, string | AdoptedTrait | null>;

export interface AdoptOptions {
  readonly said: Said;
  readonly table: string | null;
  readonly season: number | null;
  readonly order: DateOrder | null;
  readonly language: string;
  /** Keys of traits that the trial has declared already. */
  readonly traits: ReadonlyMap<string, 'rating' | 'measure'>;
}

export interface Proposal {
  readonly table: string | null;
  readonly order: DateOrder;
  readonly columns: readonly ColumnProposal[];
  readonly questions: readonly Question[];
  readonly rows: number;
  /** The tables in the contract's form, header first, by season; null for what belongs to none. */
  readonly tables: ReadonlyMap<number | null, readonly (readonly string[])[]>;
  readonly traits: readonly AdoptedTrait[];
}

/** The day that a title names, what is counted after it; null for any other title. */
function dayIn(title: string, read: DateReader): string | null {
  for (const text of [title, title.replace(/[\s_]+[([]?[^\s\d()[\]]+[)\]]?$/, '')]) {
    const result = read(text.trim());
    if (result.kind === 'day') return isoDate(result.day);
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
  if (!meaning && dayIn(title, read) !== null) return { title, header: title, trait: null, why: 'day' };
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
    return key === undefined ? [] : [options.traits.get(key)!];
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
  read: DateReader,
): readonly (number | null)[] {
  const yearIn = (text: string | undefined): number | null => {
    const year = /^(\d{4})-\d{2}-\d{2}/.exec(text ?? '')?.[1];
    return year === undefined ? null : Number(year);
  };
  const dated = columns.findIndex(({ header }) => header === 'date');
  if (said !== null) return rows.map(() => said);
  if (dated >= 0) return rows.map((row) => yearIn(row[dated]));
  const days = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const heads = columns.flatMap(({ title, why }) => (why === 'day' ? [dayIn(title, read)] : []));
  const years = new Set([
    ...rows.flatMap((row) => days.flatMap((i) => yearIn(row[i]) ?? [])),
    ...heads.flatMap((day) => yearIn(day ?? '') ?? []),
  ]);
  return rows.map(() => (years.size === 1 ? [...years][0]! : null));
}

/** Tables that have columns of declared traits. */
const TRAIT_TABLES = new Set(['ratings', 'measurements', 'season', 'totals']);

const NOTHING: Omit<Proposal, 'questions'> = {
  table: null,
  order: 'iso',
  columns: [],
  rows: 0,
  tables: new Map(),
  traits: [],
};

/**
 * Looks at a sheet that is not of the contract and says what its columns are. Nothing is guessed from figures alone:
 * a title that is not known is left, a unit, a scale, an order of day and month that cannot be seen is asked for.
 *
 * @param source   the file, or a sheet of a workbook
 * @param options  what the grower says of it
 */
export function proposeTable(source: SourceFile, options: AdoptOptions): Proposal {
  const titleReader = dateReader(options.language, options.order ?? 'iso');
  const isHeader = (titles: readonly string[]): boolean =>
    titles.filter((title) => columnOf(title, options, titleReader).header !== null).length >= 2;
  const table = openTable(source, isHeader);
  if ('kind' in table) return { ...NOTHING, questions: [{ kind: 'unreadable' }] };
  const columns = table.titles.map((title) => columnOf(title, options, titleReader));
  const rows = [...table.rows()].filter((row): row is RawRow => !('kind' in row));
  const cellsOf = (i: number) => rows.map((row) => ({ text: tidy(row.cells[i] ?? ''), line: row.line }));
  const daysOf = (i: number): readonly string[] => cellsOf(i).flatMap(({ text }) => (isNothing(text) ? [] : [text]));
  const dayColumns = columns.flatMap(({ header }, i) => (header !== null && DAY_COLUMNS.has(header) ? [i] : []));
  const seen = orderIn(dayColumns.flatMap(daysOf));
  const order = options.order ?? seen;
  const read = dateReader(options.language, order ?? 'day-first');
  const kind = kindOf(columns, options);
  const questions: Question[] = [];
  for (const name of options.said.keys())
    if (!table.titles.some((title) => foldHeader(title) === foldHeader(name)))
      questions.push({ kind: 'no-such-column', title: name, found: table.titles.join(', ') });
  if (kind === null) questions.push({ kind: 'which-table' });
  const misplaced = columns.find(({ trait }) => trait !== null);
  if (misplaced && kind !== null && !TRAIT_TABLES.has(kind))
    questions.push({ kind: 'trait-elsewhere', title: misplaced.title, found: `${kind}.csv` });
  const twice = columns.find(
    ({ header }, i) => header !== null && columns.findIndex((one) => one.header === header) < i,
  );
  if (twice) questions.push({ kind: 'twice', title: twice.title, found: twice.header!, line: null });
  if (order === null)
    questions.push({
      kind: 'date-order',
      title: columns[dayColumns[0]!]!.title,
      found: daysOf(dayColumns[0]!)[0]!,
      line: null,
    });
  else columns.forEach((column, i) => questions.push(...questionsOf(column, cellsOf(i), read)));
  const written = rows.map((row) =>
    columns.map(({ header }, i) => {
      const text = tidy(row.cells[i] ?? '');
      const day = header !== null && DAY_COLUMNS.has(header) ? read(text) : null;
      return day?.kind === 'day' ? isoDate(day.day) : text;
    }),
  );
  const seasons: readonly (number | null)[] =
    kind === 'varieties' ? rows.map(() => null) : seasonsOf(written, columns, options.season, titleReader);
  if (kind !== 'varieties' && order !== null && seasons.includes(null)) questions.push({ kind: 'no-season' });
  const head = columns.map(({ header, title }) => header ?? title);
  const tables = new Map<number | null, (readonly string[])[]>();
  written.forEach(
    (row, i) => void (tables.get(seasons[i]!) ?? tables.set(seasons[i]!, [head]).get(seasons[i]!)!).push(row),
  );
  return {
    table: kind,
    order: order ?? 'iso',
    columns,
    questions,
    rows: rows.length,
    tables,
    traits: columns.flatMap(({ trait }) => (trait ? [trait] : [])),
  };
}
