import { foldHeader } from '../../terms/names.ts';
import { isoDate } from '../../terms/day.ts';
import { nth } from '../../numerics/element.ts';
import type { DateReader } from '../../sheet/cells/dates.ts';
import { waysToRead } from '../tables/pickedByDay.ts';
import type { ColumnProposal } from './columnCells.ts';
import { meaningOf, RATED } from './meanings.ts';
import type { AdoptOptions } from './options.ts';

/** For titles of which the year is not known yet: a leap year. */
const ANY_YEAR = 2024;

/** The day that a title names, and what is counted after it; null for any other title. */
function dayIn(title: string, { read, year }: Titles): { readonly day: string | null; readonly rest: string } | null {
  const parts = /^(.*\d.*?)([\s_]+[([]?[^\s\d()[\]]+[)\]]?)$/.exec(title);
  const splits = [[title, ''], ...(parts ? [[nth(parts, 1), nth(parts, 2)]] : [])] as [string, string][];
  let isUnclear = false;
  for (const [text, rest] of splits) {
    for (const written of waysToRead(text, year ?? ANY_YEAR)) {
      const result = read(written);
      // A day that is one only in some year waits for the season.
      if (result.kind === 'day' && year === null && written !== text.trim()) isUnclear = true;
      else if (result.kind === 'day') return { day: isoDate(result.day), rest };
      isUnclear ||= result.kind === 'ambiguous';
    }
  }
  return isUnclear ? { day: null, rest: '' } : null;
}

/** How titles are read: by the sheet's order of day and month, in the season that its name or the grower says. */
export interface Titles {
  readonly read: DateReader;
  readonly year: number | null;
}

/** What a title says its column is. */
export function columnOf(title: string, { said, traits }: AdoptOptions, titles: Titles): ColumnProposal {
  const own = [...said].find(([name]) => foldHeader(name) === foldHeader(title))?.[1];
  if (own === null) return { title, header: null, trait: null, why: 'said' };
  if (typeof own === 'string') return { title, header: foldHeader(own), trait: null, why: 'said' };
  if (own) return { title, header: own.key, trait: own, why: 'said' };
  const key = [...traits.keys()].find(
    (name) => foldHeader(title).replace(/_(?:cm|mm|in|g|oz)$/, '') === foldHeader(name),
  );
  if (key !== undefined) return { title, header: foldHeader(title), trait: null, why: 'trait' };
  const meaning = meaningOf(title);
  const day = meaning ? null : dayIn(title, titles);
  if (day?.day === null) return { title, header: null, trait: null, why: 'day-unclear' };
  if (day) return { title, header: `${day.day}${day.rest}`, trait: null, why: 'day' };
  if (meaning && RATED.has(meaning.name)) {
    const declared = [...traits.keys()].find((name) => meaningOf(name)?.name === meaning.name);
    if (declared !== undefined) return { title, header: foldHeader(declared), trait: null, why: 'trait' };
    return { title, header: null, trait: null, why: 'scale' };
  }
  if (!meaning) return { title, header: null, trait: null, why: 'unknown' };
  return {
    title,
    header: meaning.unit === null ? meaning.name : `${meaning.name}_${meaning.unit}`,
    trait: null,
    why: 'name',
  };
}

/** Days in titles that have no year, with one: their order tells that of all. */
export function titledDays(titles: readonly string[], year: number | null): readonly string[] {
  return titles.flatMap((title) => {
    const parts = /^(?:\D*\s)?(\d{1,2})[/.-](\d{1,2})(?:[/.-](\d{2,4})?)?(?:[\s_(].*)?$/.exec(title.trim());
    return parts ? [`${parts[1]}/${parts[2]}/${year ?? 2000}`] : [];
  });
}

/** The year in a file's or a sheet's name, such as `tomatoes 2026.csv`; null where it has none, or several. */
export function yearNamed(path: string): number | null {
  const name = path.split(/[/\\]/).at(-1) ?? '';
  const years = new Set([...name.matchAll(/(?<!\d)(?:19|20)\d{2}(?!\d)/g)].map(([year]) => Number(year)));
  return years.size === 1 ? nth([...years], 0) : null;
}
