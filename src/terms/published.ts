import { foldHeader } from './names.ts';

/**
 * Columns of the grower's own that are to be published, each with its cell: "weather: rain".
 *
 * @param columns  cells by the titles of their columns, none empty
 * @param show     what `publish.show` names
 */
export function shownColumns(columns: ReadonlyMap<string, string>, show: readonly string[]): readonly string[] {
  if (columns.size === 0 || show.length === 0) return [];
  const names = new Set(show.map(foldHeader));
  return [...columns].flatMap(([title, cell]) => (names.has(foldHeader(title)) ? [`${title}: ${cell}`] : []));
}
