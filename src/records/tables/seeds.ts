import { dayOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { plantingId } from '../../terms/ids.ts';
import { POLLINATIONS } from '../../terms/lines.ts';
import type { SeedLot, SeedPlant } from '../../terms/lines.ts';
import { foldId } from '../../terms/names.ts';
import { nth } from '../../numerics/element.ts';
import type { SourceFile } from '../../read/decode.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { countIn, dayIn, neededIn, placeIn, quantityIn, textIn } from '../../sheet/row.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { wordIn, yesNoIn } from '../../sheet/wordCells.ts';
import { varietyIn } from '../registry.ts';
import type { VarietyRegistry } from '../registry.ts';

const SPEC = {
  required: [['lot'], ['variety', 'from']],
  columns: [
    'lot',
    'variety',
    'from',
    'saved',
    'seeds',
    'pollination',
    'father',
    'stored',
    'treated',
    'gone',
    'source',
    'notes',
  ],
  quantities: [{ name: 'weight', dimension: 'mass' }],
} as const;

/** Month in which seed of a year alone is taken to be saved. Common practice, no source. */
const HARVEST_MONTH = 10;

/** Plantings that seed was saved from, parted by semicolons or commas; one that cannot be read is reported. */
export function seedPlantsIn(row: Row, { log }: Pick<CheckContext, 'log'>): readonly SeedPlant[] {
  return (textIn(row, 'from') ?? '')
    .split(/[;,]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .flatMap((part) => {
      const match = /^(\d{4})\/(.+)$/.exec(part);
      if (match) return [{ season: Number(match[1]), planting: plantingId(nth(match, 2)), variety: null }];
      log.add('from-unknown', placeIn(row, 'from'), part);
      return [];
    });
}

function savedIn(row: Row, context: CheckContext): Day | null {
  const text = textIn(row, 'saved');
  if (text === null) return null;
  return /^\d{4}$/.test(text) ? dayOf(Number(text), HARVEST_MONTH, 1) : dayIn(row, 'saved', context);
}

/** The year in which a lot was used up; null where none is written. */
function goneIn(row: Row): number | null {
  const text = textIn(row, 'gone') ?? '';
  return /^\d{4}$/.test(text) ? Number(text) : null;
}

/** Checks seeds.csv: lots by their folded ids. */
export function checkSeeds(
  source: SourceFile,
  registry: VarietyRegistry,
  context: CheckContext,
): ReadonlyMap<string, SeedLot> {
  const lots = new Map<string, SeedLot>();
  const known = openKnown(source, SPEC, context);
  if (!known) return lots;
  for (const row of rowsOf(known)) {
    const id = neededIn(row, 'lot');
    const variety = varietyIn(row, 'variety', registry, context);
    const from = seedPlantsIn(row, context);
    if (id === null) continue;
    const place = placeIn(row, 'lot');
    if (textIn(row, 'variety') === null && textIn(row, 'from') === null) neededIn(row, 'variety');
    const other = lots.get(foldId(id));
    if (other) {
      context.log.add('lot-twice', place, id, { line: String(other.place.line ?? '') });
      continue;
    }
    const lot: SeedLot = {
      id,
      variety: variety?.id ?? null,
      from,
      saved: savedIn(row, context),
      seeds: countIn(row, 'seeds'),
      grams: quantityIn(row, 'weight'),
      pollination: wordIn(row, 'pollination', POLLINATIONS) ?? 'unknown',
      stored: wordIn(row, 'stored', ['room', 'cold'] as const) ?? 'room',
      isTreated: yesNoIn(row, 'treated') === true,
      father: textIn(row, 'father'),
      isGone: goneIn(row) !== null || yesNoIn(row, 'gone') === true,
      goneIn: goneIn(row),
      source: textIn(row, 'source'),
      notes: textIn(row, 'notes'),
      place,
    };
    if (lot.saved === null && textIn(row, 'saved') === null && !lot.isGone) context.log.add('lot-undated', place, id);
    if (lot.isTreated) context.log.add('treated-lot', place, id);
    lots.set(foldId(id), lot);
  }
  return lots;
}

/** The lot that a row names; null for none, or one that is not known, which is reported. */
export function lotIn(row: Row, { lots, log }: Pick<CheckContext, 'lots' | 'log'>): SeedLot | null {
  const text = textIn(row, 'lot');
  if (text === null) return null;
  const lot = lots.get(foldId(text));
  if (lot) return lot;
  log.add('unknown-lot', placeIn(row, 'lot'), text);
  return null;
}
