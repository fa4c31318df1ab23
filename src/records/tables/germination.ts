import { partsOf } from '../../terms/day.ts';
import type { SeedBatch } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { varietyIn } from '../registry.ts';
import type { VarietyRegistry } from '../registry.ts';
import { countIn, dayIn, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';

const SPEC = {
  required: [['variety'], ['sown'], ['seeds'], ['germinated']],
  columns: ['variety', 'sown', 'seeds', 'germinated', 'checked', 'notes'],
  quantities: [{ name: 'temperature', dimension: 'temperature', bareUnit: unitOf('temperature', 'c') }],
} as const;

/** Checks germination.csv. */
export function checkGermination(
  source: SourceFile,
  year: number,
  registry: VarietyRegistry,
  context: CheckContext,
): readonly SeedBatch[] {
  const known = openKnown(source, SPEC, context);
  if (!known) return [];
  const batches: SeedBatch[] = [];
  const seen = new Set<string>();
  for (const row of rowsOf(known)) {
    if (neededIn(row, 'variety') === null) continue;
    const variety = varietyIn(row, 'variety', registry, context);
    const sown = neededIn(row, 'sown') === null ? null : dayIn(row, 'sown', context);
    const seeds = neededIn(row, 'seeds') === null ? null : countIn(row, 'seeds');
    const germinated = neededIn(row, 'germinated') === null ? null : countIn(row, 'germinated');
    const checked = dayIn(row, 'checked', context);
    const temperatureC = quantityIn(row, 'temperature', true);
    if (!variety || sown === null || seeds === null || germinated === null) continue;
    if (germinated > seeds) {
      context.log.add('germinated-over-seeds', placeIn(row, 'germinated'), String(germinated), {
        seeds: String(seeds),
      });
      continue;
    }
    if (seeds === 0) {
      context.log.add('plants-zero', placeIn(row, 'seeds'), '0');
      continue;
    }
    if (checked !== null && checked < sown) {
      const facts = { column: 'checked', before: 'sown' };
      context.log.add('dates-out-of-order', placeIn(row, 'checked'), textIn(row, 'checked') ?? '', facts);
    }
    if (partsOf(sown).year !== year)
      context.log.add('sown-earlier-year', placeIn(row, 'sown'), textIn(row, 'sown') ?? '');
    const sign = [variety.id, ...row.raw.cells].join('|');
    if (seen.has(sign))
      context.log.add('row-twice', placeIn(row, 'sown'), textIn(row, 'sown') ?? '', { table: 'germination.csv' });
    seen.add(sign);
    batches.push({ variety: variety.id, sown, seeds, germinated, checked, temperatureC });
  }
  return batches;
}
