import { csvText, unformula } from '../terms/csv.ts';
import type { Words } from './words/en/index.ts';

export type DataWords = Words['data'];

export type Cell = string | number | null;

export interface Download {
  /** Address from the site's root. */
  readonly path: string;
  readonly title: string;
  readonly columns: readonly (readonly [name: string, meaning: string])[];
  readonly rows: readonly (readonly Cell[])[];
}

/** RFC 4180 text of a download; nothing recorded is an empty cell. */
export function downloadText({ columns, rows }: Download): string {
  const text = (value: Cell): string => (typeof value === 'string' ? unformula(value) : String(value ?? ''));
  return csvText([columns.map(([name]) => name), ...rows.map((row) => row.map(text))], '\r\n');
}

/** Columns with their meanings. */
export function named(columns: readonly string[], say: DataWords): Download['columns'] {
  return columns.map((name) => [name, say.meanings[name] ?? name]);
}
