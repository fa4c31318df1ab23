import { recordedTraits } from '../../terms/traits.ts';
import { isoDate } from '../../terms/day.ts';
import type { SourceFile } from '../../read/decode.ts';
import { wideColumns } from '../../sheet/cells/traitColumns.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { addPicked } from '../draft.ts';
import type { PlantingDraft } from '../draft.ts';
import type { VarietyRegistry } from '../registry.ts';
import { countIn, dayIn, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { nth } from '../../numerics/element.ts';
import type { KnownTable } from '../../sheet/knownTable.ts';
import { waysToRead, withoutContent } from './pickedByDay.ts';
import { wideValuesIn } from '../../sheet/traitValues.ts';
import { oneSpelledPlaces, PLANTING_COLUMNS, PLANTING_QUANTITIES, plantingIn } from './plantings.ts';
import type { SeasonDays } from './plantings.ts';

/** Titles that are days: a sheet of pickings that was saved as one of totals, of which no picking would be used. */
function reportDayColumns(source: SourceFile, { table, unknown }: KnownTable, { dates, log }: CheckContext): void {
  const year = Number(/(?:19|20)\d{2}/.exec(source.path)?.[0] ?? 2000);
  const days = unknown.filter(({ title }) => {
    return (
      /\d/.test(title) &&
      waysToRead(withoutContent(title), year).some((way) => /^(?:day|ambiguous)$/.test(dates(way).kind))
    );
  });
  if (days.length === 0) return;
  const file = source.path.split('/').at(-1) ?? source.path;
  const titles = days.map(({ title }) => title).join(', ');
  log.add('day-columns-unused', table.placeOf(table.header, nth(days, 0).index), titles, { file });
}

/** Reports what a member's sheet should not have: a variety twice, or without a yield. */
function reportSheetRow(
  row: Row,
  { fields: { variety, place } }: PlantingDraft,
  isWithout: boolean,
  seen: Map<string, number>,
  { log }: CheckContext,
): void {
  const before = seen.get(variety);
  if (before !== undefined) log.add('sheet-variety-twice', place, variety, { line: String(before) });
  seen.set(variety, row.raw.line);
  if (isWithout && row.marred.length === 0) log.add('sheet-without-yield', place, variety);
}

/**
 * Checks totals.csv, a row a variety (or a planting) for seasons known only from a notebook, and season.csv, the same
 * with a row a planting.
 */
export function checkTotals(
  source: SourceFile,
  days: SeasonDays & { readonly isByPlanting: boolean },
  registry: VarietyRegistry,
  context: CheckContext,
): readonly PlantingDraft[] {
  const traits = recordedTraits(context.settings.traits);
  const wide = wideColumns(traits);
  const { isByPlanting } = days;
  const names = [...wide.columns, ...wide.quantities.map(({ name }) => name)];
  const spec = {
    takesTraits: true,
    isMembers: context.garden !== null,
    required: isByPlanting ? [['variety'], ['weight', 'fruits', 'first_ripe', ...names]] : [['variety'], ['plants']],
    columns: [...PLANTING_COLUMNS, 'fruits', 'first_ripe', ...wide.columns],
    quantities: [...PLANTING_QUANTITIES, { name: 'weight', dimension: 'mass' as const }, ...wide.quantities],
  };
  const known = openKnown(source, spec, context);
  if (!known) return [];
  reportDayColumns(source, known, context);
  const drafts: PlantingDraft[] = [];
  const seen = new Map<string, number>();
  for (const row of rowsOf(known)) {
    if (!isByPlanting) neededIn(row, 'plants');
    const draft = plantingIn(row, days, registry, context);
    const fruits = countIn(row, 'fruits');
    const grams = quantityIn(row, 'weight');
    const firstRipe = dayIn(row, 'first_ripe', context);
    const values = wideValuesIn(row, traits, context);
    if (!draft) continue;
    const start = draft.fields.transplanted ?? draft.fields.sown;
    if (firstRipe !== null && start !== null && firstRipe < start) {
      const facts = { transplanted: isoDate(start) };
      context.log.add(
        'picked-before-transplanting',
        placeIn(row, 'first_ripe'),
        textIn(row, 'first_ripe') ?? '',
        facts,
      );
    }
    if (context.garden !== null) reportSheetRow(row, draft, fruits === null && grams === null, seen, context);
    if (fruits !== null || grams !== null) {
      const { line } = row.raw;
      addPicked(draft.record, { day: null, stage: 'ripe', fruits, grams, cullFruits: null, cullGrams: null, line });
    }
    const totals = { firstRipe, traits: new Map(values.map(({ trait, value }) => [trait.key, value])) };
    drafts.push({ ...draft, fields: { ...draft.fields, totals } });
  }
  return oneSpelledPlaces(drafts);
}
