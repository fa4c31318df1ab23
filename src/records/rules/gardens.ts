import { fileOnly } from '../../terms/place.ts';
import type { CheckContext } from '../../sheet/context.ts';
import type { PlantingDraft } from '../draft.ts';
import { gardenOf } from '../gardenIn.ts';
import type { SeasonTable, Tables } from '../seasonDrafts.ts';

/** Gardens that sent tables of their own, in order of their codes; a code that gardens.csv does not have is reported. */
export function sortedGardens(
  year: number,
  written: ReadonlyMap<string, Tables>,
  context: CheckContext,
): ReadonlyMap<string, Tables> {
  const gardens = new Map<string, Tables>();
  for (const [name, tables] of [...written].toSorted(([a], [b]) => (a < b ? -1 : 1))) {
    const path = [...tables.values()][0]?.path ?? `data/${year}/gardens/${name}`;
    const code = gardenOf(name, fileOnly(path), context);
    if (code === null) continue;
    const known = gardens.get(code);
    if (known) context.log.add('garden-twice', fileOnly(path), code, { other: [...known.values()][0]?.path ?? '' });
    else gardens.set(code, tables);
  }
  return gardens;
}

/** What a sheet says of every planting, to find two that are the same. */
function figuresOf(drafts: readonly PlantingDraft[]): string {
  return drafts
    .map(({ fields, record }) => {
      const { variety, plants, totals } = fields;
      const picked = Array.from(record.rows.slice(0, record.used), (own, i) => (i % 6 === 1 ? 0 : own));
      return [variety, plants, totals?.firstRipe, ...(totals?.traits.values() ?? []), ...picked].join(' ');
    })
    .join('; ');
}

/** Rows below which two gardens may well have the same figures by chance. */
const FEWEST_ALIKE = 2;

/** Reports gardens that stand in two places, and sheets that are the same to the last figure. */
export function reportGardens(
  year: number,
  gardens: ReadonlyMap<string, Tables>,
  drafts: readonly PlantingDraft[],
  { log, gardens: { own } }: CheckContext,
): void {
  const table = (name: SeasonTable): string => `data/${year}/${name}`;
  const main = new Set(['plantings.csv', 'season.csv', 'totals.csv'].map((name) => table(name as SeasonTable)));
  const byGarden = new Map<string, PlantingDraft[]>();
  const twice = new Set<string>();
  for (const draft of drafts) {
    const { garden, place } = draft.fields;
    const list = byGarden.get(garden);
    if (list) list.push(draft);
    else byGarden.set(garden, [draft]);
    const sent = gardens.get(garden);
    if (!sent || !main.has(place.file) || twice.has(garden)) continue;
    twice.add(garden);
    log.add('garden-twice', place, garden, { other: [...sent.values()][0]?.path ?? '' });
  }
  const seen = new Map<string, string>();
  for (const [garden, list] of byGarden) {
    if (list.length < FEWEST_ALIKE || (garden === own && !gardens.has(own))) continue;
    const figures = figuresOf(list);
    const other = seen.get(figures);
    const path = list[0]!.fields.place;
    if (other !== undefined) log.add('sheets-alike', path, garden, { other });
    else seen.set(figures, garden);
  }
}
