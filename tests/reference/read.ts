import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';

const at = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');

/** Results of a reference case, as its script wrote them. */
// oxlint-disable-next-line typescript/no-explicit-any -- the cases differ in shape; each test names the fields it reads
export function reference(name: string): any {
  return JSON.parse(at(`./${name}.json`)).results;
}

/** A part of a case's results. */
export type Results = ReturnType<typeof reference>;

/** Rows of a reference table. */
export function referenceRows(name: string): readonly Record<string, string>[] {
  return parse<Record<string, string>>(at(`./${name}.csv`), { columns: true });
}

/** Numbers for levels, in order of first sight. */
export function indexed(values: readonly string[]): { readonly levels: readonly string[]; readonly index: readonly number[] } {
  const levels = [...new Set(values)];
  return { levels, index: values.map((value) => levels.indexOf(value)) };
}
