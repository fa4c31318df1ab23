import { plantingId, varietyId } from '../../terms/ids.ts';
import { foldId } from '../../terms/names.ts';
import type { Day } from '../../terms/day.ts';
import { fileOnly } from '../../terms/place.ts';
import type { SourceFile } from '../../read/decode.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { KnownTable, QuantityColumn } from '../../sheet/knownTable.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { emptyRecord } from '../draft.ts';
import type { PlantingDraft } from '../draft.ts';
import { gardenIn, inGarden } from '../gardenIn.ts';
import { varietyIn } from '../registry.ts';
import type { VarietyRegistry } from '../registry.ts';
import { countIn, dayIn, neededIn, placeIn, quantityIn, textIn, unknownIn } from '../../sheet/row.ts';
import { wordIn, yesNoIn } from '../../sheet/wordCells.ts';
import type { Row } from '../../sheet/row.ts';
import { lotIn } from './seeds.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { oneSpelling } from '../rules/nearNames.ts';

export const PLANTING_COLUMNS = [
  'garden',
  'planting',
  'variety',
  'plants',
  'bed',
  'block',
  'row',
  'column',
  'sown',
  'transplanted',
  'removed',
  'cause',
  'stands_in',
  'topped',
  'lot',
  'notes',
];
export const PLANTING_QUANTITIES: readonly QuantityColumn[] = [
  { name: 'area', dimension: 'area', bareUnit: unitOf('area', 'm2') },
  { name: 'container', dimension: 'volume', bareUnit: unitOf('volume', 'l') },
];
const CAUSES = ['season-end', 'frost', 'disease', 'pest', 'weak', 'accident', 'other'] as const;
const PLACES = ['ground', 'bed', 'pot', 'bag'] as const;

/** Whether a planting was topped; the day on which it was says yes. */
function toppedIn(row: Row, { dates }: CheckContext): boolean | null {
  const text = textIn(row, 'topped');
  return text !== null && dates(text).kind === 'day' ? true : yesNoIn(row, 'topped');
}

/** Days that hold for rows which give none. */
export interface SeasonDays {
  readonly sown: Day | null;
  readonly transplanted: Day | null;
}

function reportOrder(
  row: Row,
  days: { sown: Day | null; transplanted: Day | null; removed: Day | null },
  { log }: CheckContext,
): void {
  const { sown, transplanted, removed } = days;
  const reversed = (column: string, before: string, wrong: boolean): void => {
    if (wrong) log.add('dates-out-of-order', placeIn(row, column), textIn(row, column) ?? '', { column, before });
  };
  reversed(
    textIn(row, 'transplanted') === null ? 'sown' : 'transplanted',
    'sown',
    sown !== null && transplanted !== null && transplanted < sown,
  );
  reversed('removed', 'transplanted', removed !== null && transplanted !== null && removed < transplanted);
  reversed('removed', 'sown', removed !== null && transplanted === null && sown !== null && removed < sown);
}

/** The fields that plantings.csv and totals.csv share. Null where the row cannot be used. */
export function plantingIn(
  row: Row,
  days: SeasonDays,
  registry: VarietyRegistry,
  context: CheckContext,
): PlantingDraft | null {
  if (neededIn(row, 'variety') === null) return null;
  const variety = varietyIn(row, 'variety', registry, context);
  const garden = gardenIn(row, context);
  const plants = textIn(row, 'plants') === null ? 1 : countIn(row, 'plants');
  if (plants === 0) context.log.add('plants-zero', placeIn(row, 'plants'), '0');
  const removed = dayIn(row, 'removed', context);
  const cause = wordIn(row, 'cause', CAUSES);
  if (cause !== null && removed === null && textIn(row, 'removed') === null) {
    context.log.add('cause-without-removal', placeIn(row, 'cause'), cause);
  }
  const sown = dayIn(row, 'sown', context) ?? days.sown;
  const transplanted = dayIn(row, 'transplanted', context) ?? days.transplanted;
  reportOrder(row, { sown, transplanted, removed }, context);
  const fields = {
    id: plantingId(textIn(row, 'planting') ?? ''),
    garden: garden ?? context.gardens.own,
    variety: variety?.id ?? varietyId(''),
    plants: plants ?? 1,
    bed: textIn(row, 'bed'),
    block: textIn(row, 'block'),
    row: countIn(row, 'row'),
    column: countIn(row, 'column'),
    sown,
    transplanted,
    removed,
    cause,
    areaM2: quantityIn(row, 'area'),
    containerL: quantityIn(row, 'container'),
    standsIn: wordIn(row, 'stands_in', PLACES),
    topped: toppedIn(row, context),
    lot: lotIn(row, context)?.id ?? null,
    notes: textIn(row, 'notes'),
    unknownColumns: unknownIn(row),
    totals: null,
    place: placeIn(row, row.from.index.has('planting') ? 'planting' : 'variety'),
  };
  return variety && garden !== null && plants !== null && plants > 0 ? { fields, record: emptyRecord() } : null;
}

/** Gives plantings without an id the id of their variety, then -2, -3; reports an id that stands twice. */
export function withIds(drafts: readonly PlantingDraft[], { log, gardens }: CheckContext): readonly PlantingDraft[] {
  const taken = new Map<string, PlantingDraft>();
  const within = (id: string, garden: string): string => inGarden(id, garden, gardens.own);
  for (const draft of drafts) {
    const { id, garden, place } = draft.fields;
    if (id === '') continue;
    const key = foldId(within(id, garden));
    const other = taken.get(key);
    if (other) log.add('planting-twice', place, id, { line: String(other.fields.place.line ?? '') });
    else taken.set(key, draft);
  }
  return drafts.map((draft) => {
    const { variety, garden } = draft.fields;
    if (draft.fields.id !== '')
      return { ...draft, fields: { ...draft.fields, id: plantingId(within(draft.fields.id, garden)) } };
    let id = within(variety, garden);
    for (let i = 2; taken.has(foldId(id)); i++) id = within(`${variety}-${i}`, garden);
    const named = { ...draft, fields: { ...draft.fields, id: plantingId(id) } };
    taken.set(foldId(id), named);
    return named;
  });
}

/** Beds and blocks by one of the spellings that name each. */
export function oneSpelledPlaces(drafts: readonly PlantingDraft[]): readonly PlantingDraft[] {
  const named = (of: 'bed' | 'block') => oneSpelling(drafts.flatMap(({ fields }) => fields[of] ?? []));
  const [bedOf, blockOf] = [named('bed'), named('block')];
  return drafts.map(({ fields, record }) => {
    const { bed, block } = fields;
    return {
      fields: { ...fields, bed: bed === null ? null : bedOf(bed), block: block === null ? null : blockOf(block) },
      record,
    };
  });
}

/** Checks plantings.csv. */
export function checkPlantings(
  source: SourceFile,
  days: SeasonDays,
  registry: VarietyRegistry,
  context: CheckContext,
): readonly PlantingDraft[] {
  const spec = { required: [['variety']], columns: PLANTING_COLUMNS, quantities: PLANTING_QUANTITIES };
  const known: KnownTable | null = openKnown(source, spec, context);
  if (!known) return [];
  const drafts = [...rowsOf(known)]
    .map((row) => plantingIn(row, days, registry, context))
    .filter((draft) => draft !== null);
  if (drafts.length === 0 && [...known.table.rows()].length === 0)
    context.log.add('empty-table', fileOnly(source.path));
  return oneSpelledPlaces(drafts);
}
