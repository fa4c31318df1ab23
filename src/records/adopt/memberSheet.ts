import { recordedTraits } from '../../terms/traits.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openTable } from '../../read/table.ts';
import { csvText } from '../../terms/csv.ts';
import type { Settings } from '../../terms/settings.ts';
import { meaningOf, RATED } from './meanings.ts';

/** A member's sheet with the columns of the contract, and what its own titles were read as. */
export interface ReadSheet {
  readonly csv: string;
  readonly titles: readonly (readonly [title: string, column: string])[];
}

/** The trait of the trial that goes by one of the words for a rating; null without one. */
function traitCalled(meaning: string, { traits }: Settings): string | null {
  const keys = recordedTraits(traits).map(({ key }) => key);
  return keys.find((key) => key === meaning || meaningOf(key)?.name === meaning) ?? null;
}

function columnOf(title: string, settings: Settings): string | null {
  const meaning = meaningOf(title);
  if (!meaning) return null;
  const { name, unit } = meaning;
  if (RATED.has(name)) return traitCalled(name, settings);
  return unit === null ? name : `${name}_${unit}`;
}

/**
 * A sheet in whose titles no column of the contract is called variety, but something that means it, such as `Sorte`.
 *
 * @returns  the sheet with those titles that are known replaced, every cell as it was; null for any other sheet
 */
export function readMemberSheet(source: SourceFile, settings: Settings): ReadSheet | null {
  const isVariety = (title: string): boolean => columnOf(title, settings) === 'variety';
  const table = openTable(source, (columns) => columns.some(isVariety));
  if ('kind' in table || table.columns.includes('variety') || !table.titles.some(isVariety)) return null;
  const titles = table.titles.map((title) => [title, columnOf(title, settings) ?? title] as const);
  const columns = titles.map(([, column]) => column);
  // Two titles of one meaning: which of them counts is for the member to say.
  if (new Set(columns).size < columns.length) return null;
  const rows: (readonly string[])[] = [columns];
  for (const row of table.rows()) {
    if ('kind' in row) return null;
    rows.push(row.cells);
  }
  return { csv: csvText(rows), titles: titles.filter(([title, column]) => title !== column) };
}
