import { foldName } from '../../terms/names.ts';

/** Names that some systems keep for devices; a page's folder must not be called so. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** An id that can stand in a page's address for ever: lower-case letters, digits, hyphens; at most 80 characters. */
export function isFitId(id: string): boolean {
  return /^[a-z0-9]+(?:-+[a-z0-9]+)*$/.test(id) && id.length <= 80 && !DEVICE.test(id);
}

/**
 * An id for a variety's name, for tables that have none; two names never share one.
 *
 * @param taken  ids given already; the new one is added
 */
export function idFrom(name: string, taken: Set<string>): string {
  const folded = foldName(name.replaceAll(/[\s_]+/g, '\u0001'))
    .replaceAll('\u0001', '-')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
  const base = isFitId(folded) ? folded : 'variety';
  let id = base;
  for (let i = 2; taken.has(id); i++) id = `${base}-${i}`;
  taken.add(id);
  return id;
}
