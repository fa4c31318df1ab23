import type { Garden } from '../../terms/gardens.ts';
import { foldName, nearestName } from '../../terms/names.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext, GardenRegistry } from '../../sheet/context.ts';
import { neededIn, placeIn, textIn } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { wordIn, yesNoIn } from '../../sheet/wordCells.ts';

const SPEC = {
  required: [['garden']],
  columns: ['garden', 'region', 'setting', 'publish', 'notes'],
  quantities: [],
} as const;

const SETTINGS = ['open', 'cover'] as const;

/** Checks gardens.csv: the gardens of a club by their codes; null where it cannot be used. */
export function checkGardens(
  source: SourceFile,
  context: Pick<CheckContext, 'log' | 'limited' | 'settings'>,
): ReadonlyMap<string, Garden> | null {
  const gardens = new Map<string, Garden>();
  const known = openKnown(source, SPEC, context);
  if (!known) return null;
  const folds = new Map<string, number>();
  for (const row of rowsOf(known)) {
    const code = neededIn(row, 'garden');
    if (code === null) continue;
    const place = placeIn(row, 'garden');
    const before = folds.get(foldName(code));
    if (before !== undefined) context.log.add('garden-listed-twice', place, code, { line: String(before) });
    folds.set(foldName(code), row.raw.line);
    gardens.set(code, {
      code,
      region: textIn(row, 'region'),
      setting: wordIn(row, 'setting', SETTINGS),
      isPublished: yesNoIn(row, 'publish'),
      place,
    });
  }
  return gardens;
}

/** Gardens by their codes: those of gardens.csv, or without it each as it is first written. */
export function gardenRegistry(own: string, listed: ReadonlyMap<string, Garden> | null): GardenRegistry {
  const codes = new Map<string, string>([[foldName(own), own]]);
  for (const code of listed?.keys() ?? []) codes.set(foldName(code), code);
  return {
    own,
    find(text) {
      const fold = foldName(text);
      const known = codes.get(fold);
      if (known !== undefined || listed) return known ?? null;
      codes.set(fold, text);
      return text;
    },
    nearest: (text) => nearestName(text, codes.values()),
  };
}
