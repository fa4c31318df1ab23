import type { AdoptedTrait, ColumnProposal, Question } from '../records/adopt/columnCells.ts';
import type { Proposal } from '../records/adopt/propose.ts';
import { harmless } from './problems.ts';
import { quantityDimension } from '../records/adopt/meanings.ts';
import { parseQuantity } from '../sheet/cells/quantity.ts';
import { unitOf } from '../sheet/cells/units.ts';
import { nth } from '../numerics/element.ts';

const UNKNOWN: Readonly<Partial<Record<ColumnProposal['why'], string>>> = {
  said: 'left out',
  scale: 'scores, of a scale to be said',
  'day-unclear': 'a day, of an order to be said',
};

/** What was made of a column, in words. */
function columnLine({ title, header, trait, why }: ColumnProposal, width: number): string {
  const is =
    header === null
      ? (UNKNOWN[why] ?? 'not known; kept as it is')
      : trait
        ? `${trait.kind} ${trait.key}`
        : why === 'day'
          ? 'what was picked that day'
          : header;
  return `  ${(title === '' ? '(no title)' : title).padEnd(width)}  ${is}`;
}

const QUESTIONS: Readonly<Record<Question['kind'], string>> = {
  unreadable: 'This is no table that can be read: save it as CSV with a header, or as .xlsx or .ods.',
  'which-table':
    'Which table is it? The columns do not say. Give --table harvests (or plantings, season, totals, ratings, measurements, observations, germination, weather, varieties), or say what columns are: --column "Title=variety".',
  'no-season': 'Of which season is it? Some rows have no date. Give --season 2026.',
  'date-order': '"{title}" holds days such as {found}: give --dates day-first or --dates month-first.',
  'no-unit':
    '"{title}" holds bare numbers such as {found}: in which unit? Give --column "{title}=weight_g" (or _kg, _oz, _lb).',
  twice: 'Two columns seem to be {found}: say what "{title}" is, as --column "{title}=-" to leave it.',
  number:
    '"{title}" has "{found}" in row {line}, which is no number of that kind: correct it, or --column "{title}=-" to leave the column.',
  answer:
    '"{title}" has "{found}" in row {line}, which is neither yes nor no: write yes, no or ?, or --column "{title}=-" to leave the column.',
  date: '"{title}" has "{found}" in row {line}, which is no date: correct it, or --column "{title}=-" to leave the column.',
  scale:
    '"{title}" holds scores such as {found}: on which scale? Give --column "{title}=rating flavour 1 9 higher" (name, ends of the scale, which end is better).',
  direction:
    'Is more of "{title}" better? Put higher, lower or none behind its scale: --column "{title}=rating name 1 9 higher".',
  unused:
    '"{title}" holds figures such as {found} that no table has a place for: --column "{title}=rating name 1 9 higher", "{title}=measure name cm" or "{title}=-" to leave it out.',
  'days-unit':
    'Under days such as "{title}" stand bare numbers such as {found}: what are they? Give --picked g (or kg, oz, lb, fruits).',
  plants:
    'No column says how many plants a row stands for: --column "{title}=plants" if it is "{title}", --column "{title}=-" if each row is one plant.',
  'trait-needed':
    '"{title}" holds scores: of what, and on which scale? Give --column "{title}=rating flavour 1 9 higher".',
  'two-weights': 'A row has two weights: leave one with --column "{title}=-", or add them up first.',
  thousands: '"{title}" has {found}: a decimal, or one of thousands? Write it without the mark or with other digits.',
  fault:
    'Row {line} cannot be read: a quotation mark is open or stands alone. Close it, or write "" for a mark in the text.',
  'too-long': 'Row {line} has more cells than the header: {found}. Give them a title, or remove them.',
  'trait-elsewhere': 'A trait has no place in {found}: adopt it from a sheet of ratings or measurements.',
  'no-such-column': 'There is no column "{title}"; there are {found}.',
};

/** So many lines of cells with the same fault are named. */
const MOST_LINES = 12;

function questionText(question: Question): string {
  const facts = question as unknown as Record<string, string | number | null>;
  const text = QUESTIONS[question.kind].replaceAll(/\{(\w+)\}/g, (_, name: string) => String(facts[name] ?? '?'));
  const more = 'more' in question && question.kind !== 'no-unit' ? (question.more ?? []) : [];
  const rest = more.length > MOST_LINES ? ` and ${more.length - MOST_LINES} more` : '';
  return more.length === 0 ? text : `${text} So it is in row ${more.slice(0, MOST_LINES).join(', ')}${rest}.`;
}

/** A question with its words, for another program. */
export const asked = (question: Question) => ({ ...question, text: questionText(question) });

/** A cell as it will be read: quantities in grams and degrees. */
function sampleCell(header: string, text: string): string {
  const name = ['unusable_weight', 'weight', 'tmin', 'tmax', 'rain'].find(
    (own) => header === own || header.startsWith(`${own}_`),
  );
  const dimension = name === undefined ? null : quantityDimension(name);
  if (!dimension || name === undefined) return `${header} ${text}`;
  const unit = header === name ? null : unitOf(dimension, header.slice(name.length + 1));
  const result = parseQuantity(text, dimension, unit, !/\d\.\d/.test(text));
  const shown = { mass: 'g', temperature: '°C', depth: 'mm', length: 'cm', area: 'm²', volume: 'l' }[dimension];
  return result.kind === 'value' ? `${name} ${Number(result.value.toPrecision(12))} ${shown}` : `${name} ${text}`;
}

function samples({ tables }: Proposal): readonly string[] {
  const head = [...tables.values()][0]?.[0] ?? [];
  const rows = [...tables.values()].flatMap((table) => table.slice(1)).slice(0, 3);
  return rows.map((row) => {
    const cells = row.flatMap((text, i) => (text === '' ? [] : [sampleCell(nth(head, i), text)]));
    return `  ${cells.join(', ')}`;
  });
}

/** What was made of a sheet, for a terminal; questions where something must be said before it can be adopted. */
export function adoptionText(file: string, proposal: Proposal): string {
  const { table, columns, questions, rows, leftOut, tables, beside } = proposal;
  const width = Math.max(...columns.map(({ title }) => title.length), 10);
  const years = [...tables.keys()].filter((year) => year !== null);
  const of = years.length > 0 ? ` of ${years.join(', ')}` : '';
  const lines = [
    `${file}: ${rows} rows${table === null ? '' : ` for ${[table, ...beside.keys()].map((name) => `${name}.csv`).join(', ')}${of}`}`,
    '',
    ...columns.map((column) => columnLine(column, width)),
  ];
  if (leftOut.length > 0)
    lines.push('', `No records, left out: rows ${leftOut.join(', ')} (totals, units or the header again)`);
  if (rows > 0) lines.push('', 'Read that way, the first rows are', ...samples(proposal));
  if (questions.length > 0) lines.push('', 'To be said first', ...questions.map((own) => `  ${questionText(own)}`));
  return `${lines.map(harmless).join('\n')}\n`;
}

/** Which end of a rating everyone takes as the better one; heat is a matter of taste. */
const DIRECTIONS: Readonly<Record<string, string>> = {
  flavour: 'higher',
  sweetness: 'higher',
  crunch: 'higher',
  vigour: 'higher',
  health: 'higher',
};

/** Traits as settings; empty where there are none. */
export function traitLines(traits: readonly AdoptedTrait[]): string {
  const lines = traits.map(({ kind, key, from, to, unit, better }) =>
    kind === 'rating'
      ? `  ${key}: {kind: rating, from: ${from}, to: ${to}, better: ${better ?? DIRECTIONS[key] ?? 'none'}}`
      : `  ${key}: {kind: measure, unit: ${JSON.stringify(unit)}, better: ${better ?? 'none'}}`,
  );
  return lines.length > 0 ? `traits:\n${lines.join('\n')}\n` : '';
}

/** Settings for a folder that has none. */
export function adoptedSettings(title: string, traits: readonly AdoptedTrait[]): string {
  return `title: ${JSON.stringify(title)}\n${traitLines(traits)}`;
}
