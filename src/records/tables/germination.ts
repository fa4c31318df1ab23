import { isoDate, partsOf } from '../../terms/day.ts';
import type { SeedBatch } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { unitOf } from '../../sheet/cells/units.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { varietyIn } from '../registry.ts';
import type { VarietyRegistry } from '../registry.ts';
import { countIn, dayIn, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { wordIn } from '../../sheet/wordCells.ts';
import { lotIn } from './seeds.ts';

const SPEC = {
  required: [['variety', 'lot'], ['sown'], ['seeds'], ['germinated']],
  columns: ['variety', 'lot', 'method', 'sown', 'seeds', 'germinated', 'checked', 'notes'],
  quantities: [{ name: 'temperature', dimension: 'temperature', bareUnit: unitOf('temperature', 'c') }],
} as const;

/** What a row is about: a variety, a lot, or both; null where that was reported. */
function grownIn(row: Row, registry: VarietyRegistry, context: CheckContext) {
  const lot = lotIn(row, context);
  if (textIn(row, 'lot') === null && neededIn(row, 'variety') === null) return null;
  const named = varietyIn(row, 'variety', registry, context);
  const isUnknown = (textIn(row, 'variety') !== null && !named) || (textIn(row, 'lot') !== null && !lot);
  if (isUnknown) return null;
  if (named && lot && lot.variety !== null && lot.variety !== named.id)
    context.log.add('lot-of-other', placeIn(row, 'lot'), lot.id, { variety: lot.variety });
  return { variety: named?.id ?? lot?.variety ?? null, lot };
}

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
    const grown = grownIn(row, registry, context);
    if (!grown) continue;
    const { variety, lot } = grown;
    const sown = neededIn(row, 'sown') === null ? null : dayIn(row, 'sown', context);
    const seeds = neededIn(row, 'seeds') === null ? null : countIn(row, 'seeds');
    // Blank: not yet counted.
    const germinated = countIn(row, 'germinated');
    const checked = dayIn(row, 'checked', context);
    const temperatureC = quantityIn(row, 'temperature', true);
    if (sown === null || seeds === null || germinated === null) continue;
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
    const saved = lot?.saved ?? null;
    if (saved !== null && sown < saved)
      context.log.add('test-before-saved', placeIn(row, 'sown'), textIn(row, 'sown') ?? '', { saved: isoDate(saved) });
    const sign = [variety ?? '', ...row.raw.cells].join('|');
    if (seen.has(sign))
      context.log.add('row-twice', placeIn(row, 'sown'), textIn(row, 'sown') ?? '', { table: 'germination.csv' });
    seen.add(sign);
    const method = wordIn(row, 'method', ['paper', 'soil'] as const);
    batches.push({ variety, lot: lot?.id ?? null, method, sown, seeds, germinated, checked, temperatureC });
  }
  return batches;
}
