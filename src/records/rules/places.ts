import type { PlantingDraft, PlantingFields } from '../draft.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { nearPairs } from './nearNames.ts';
import type { Spelling } from './nearNames.ts';

function spellings(drafts: readonly PlantingDraft[], of: (fields: PlantingFields) => string | null): Spelling[] {
  const known = new Map<string, Spelling>();
  for (const { fields } of drafts) {
    const name = of(fields);
    if (name !== null && !known.has(name)) known.set(name, { name, place: fields.place });
  }
  return [...known.values()];
}

/** True for a planting that stood there after the other, or before it. */
function isAfter(a: PlantingFields, b: PlantingFields): boolean {
  const from = (own: PlantingFields) => own.transplanted ?? own.sown;
  const gone = (early: PlantingFields, late: PlantingFields): boolean =>
    early.removed !== null && (from(late) === null || early.removed <= from(late)!);
  return gone(a, b) || gone(b, a);
}

/** Warns of spellings that seem to be one bed or block, and of two plantings on one spot. */
export function reportPlaces(drafts: readonly PlantingDraft[], { log }: CheckContext): void {
  for (const [code, of] of [
    ['bed-near', ({ bed }: PlantingFields) => bed],
    ['block-near', ({ block }: PlantingFields) => block],
  ] as const)
    for (const [a, b] of nearPairs(spellings(drafts, of), false)) log.add(code, b.place, b.name, { near: a.name });
  const spots = new Map<string, PlantingFields[]>();
  for (const { fields } of drafts) {
    const { bed, row, column } = fields;
    if (row === null || column === null) continue;
    const spot = JSON.stringify([bed, row, column]);
    const others = spots.get(spot) ?? [];
    const other = others.find((own) => !isAfter(own, fields));
    if (other) {
      const facts = { other: other.id, row: String(row), column: String(column) };
      log.add('spot-twice', [fields.place, other.place], fields.id, facts);
    }
    spots.set(spot, [...others, fields]);
  }
}
