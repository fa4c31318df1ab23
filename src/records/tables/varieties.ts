import { recordedTraits } from '../../terms/traits.ts';
import { classKey, varietyId } from '../../terms/ids.ts';
import type { VarietyId } from '../../terms/ids.ts';
import { foldName, nearestName } from '../../terms/names.ts';
import type { MeasureTrait } from '../../terms/traits.ts';
import { SHAPES } from '../../terms/trial.ts';
import type { Variety } from '../../terms/trial.ts';
import type { SourceFile } from '../../read/decode.ts';
import { cssColour } from '../../sheet/cells/colours.ts';
import { idFrom, isFitId } from '../../sheet/cells/ids.ts';
import { measureDimension } from '../../sheet/cells/traitColumns.ts';
import { openKnown } from '../../sheet/columns.ts';
import type { TableSpec } from '../../sheet/knownTable.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { neededIn, numberIn, placeIn, quantityIn, textIn, unknownIn } from '../../sheet/row.ts';
import { wordIn } from '../../sheet/wordCells.ts';
import type { Row } from '../../sheet/row.ts';
import { rowsOf } from '../../sheet/rows.ts';
import { seedPlantsIn } from './seeds.ts';

const COLUMNS = [
  'variety',
  'name',
  'class',
  'species',
  'kind',
  'generation',
  'mother',
  'father',
  'from',
  'source',
  'first_grown',
  'retired',
  'claim_days',
  'claim_days_max',
  'claim_heat_min',
  'claim_heat_max',
  'colour_unripe',
  'colour_ripe',
  'shape',
  'former_ids',
  'also_known_as',
  'notes',
];
const KINDS = ['open-pollinated', 'hybrid', 'line', 'unknown'] as const;

function measures({ settings }: CheckContext): readonly MeasureTrait[] {
  return recordedTraits(settings.traits).filter((trait) => trait.kind === 'measure');
}

function spec(context: CheckContext): TableSpec {
  const withUnits = measures(context).flatMap((trait) => {
    const dimension = measureDimension(trait);
    return dimension ? [{ name: `claim_${trait.key}`, ...dimension }] : [];
  });
  const plain = measures(context)
    .filter((trait) => !measureDimension(trait))
    .map((trait) => `claim_${trait.key}`);
  return { required: [['variety', 'name']], columns: [...COLUMNS, ...plain], quantities: withUnits };
}

function yearIn(row: Row, column: string, { log }: CheckContext): number | null {
  const text = textIn(row, column);
  if (text === null) return null;
  if (/^(1[89]|20|21)\d\d$/.test(text)) return Number(text);
  log.add('year-unreadable', placeIn(row, column), text, { column });
  return null;
}

function retiredIn(row: Row, context: CheckContext): boolean | number {
  const text = textIn(row, 'retired')?.toLowerCase() ?? 'no';
  if (text === 'yes' || text === 'no') return text === 'yes';
  return yearIn(row, 'retired', context) ?? false;
}

function generationIn(row: Row, { log }: CheckContext): number | null {
  const text = textIn(row, 'generation');
  if (text === null || /^bc\s*1$/i.test(text)) return null;
  const match = /^f\s*(\d{1,2})$/i.exec(text);
  if (match && Number(match[1]) >= 1) return Number(match[1]);
  log.add('generation-unknown', placeIn(row, 'generation'), text);
  return null;
}

function namesIn(row: Row, column: string): readonly string[] {
  return (textIn(row, column) ?? '')
    .split(';')
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

function colourIn(row: Row, column: string, { log }: CheckContext): string | null {
  const text = textIn(row, column);
  if (text === null) return null;
  const colour = cssColour(text);
  if (colour === null) log.add('colour-unknown', placeIn(row, column), text, { column });
  return colour;
}

function classIn(row: Row, species: string | null, { log, settings }: CheckContext): string {
  const text = textIn(row, 'class');
  if (text === null) return species === null ? 'all' : species.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');
  const key = [...settings.classes.keys()].find((id) => foldName(id) === foldName(text));
  if (key !== undefined) return key;
  if (settings.classes.size === 0) return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');
  const near = nearestName(text, settings.classes.keys());
  const facts = { classes: [...settings.classes.keys()].join(', '), ...(near === null ? {} : { near }) };
  log.add('unknown-class', placeIn(row, 'class'), text, facts);
  return 'all';
}

/** Lower and upper claim; a single one stands for both ends of the days, and leaves the other end of the heat open. */
function pairIn(
  row: Row,
  low: string,
  high: string,
  { log }: CheckContext,
): readonly [number | null, number | null] | null {
  const [from, to] = [numberIn(row, low), numberIn(row, high)];
  if (from === null && to === null) return null;
  if (from !== null && to !== null && from > to) {
    log.add('claim-reversed', placeIn(row, high), textIn(row, high) ?? '', { low: textIn(row, low) ?? '' });
    return null;
  }
  return [from, to];
}

function claimMeasuresIn(row: Row, context: CheckContext): ReadonlyMap<string, number> {
  const claims = new Map<string, number>();
  for (const trait of measures(context)) {
    const column = `claim_${trait.key}`;
    const dimension = measureDimension(trait);
    const value = dimension ? quantityIn(row, column) : numberIn(row, column);
    if (value !== null) claims.set(trait.key, dimension ? value * dimension.toTrait : value);
  }
  return claims;
}

/** A parent as it was written; `parents` finds out which variety that is. */
function parentIn(row: Row, column: string): VarietyId | null {
  const text = textIn(row, column);
  return text === null || text.toLowerCase() === 'unknown' ? null : varietyId(text);
}

function varietyOf(row: Row, context: CheckContext, taken: Set<string>): Variety | null {
  const column = row.from.index.has('variety') ? 'variety' : 'name';
  const written = neededIn(row, column);
  const id = written !== null && column === 'name' ? idFrom(written, taken) : written;
  if (id === null) return null;
  if (!isFitId(id)) {
    context.log.add('id-unfit', placeIn(row, 'variety'), id);
    return null;
  }
  const species = textIn(row, 'species');
  const days = pairIn(row, 'claim_days', 'claim_days_max', context);
  return {
    id: varietyId(id),
    name: textIn(row, 'name') ?? id,
    classId: classKey(classIn(row, species, context)),
    species,
    kind: wordIn(row, 'kind', KINDS) ?? 'unknown',
    generation: generationIn(row, context),
    mother: parentIn(row, 'mother'),
    father: parentIn(row, 'father'),
    isBackcross: /^bc\s*1$/i.test(textIn(row, 'generation') ?? ''),
    from: seedPlantsIn(row, context),
    source: textIn(row, 'source'),
    firstGrown: yearIn(row, 'first_grown', context),
    retired: retiredIn(row, context),
    claimDays: days ? [(days[0] ?? days[1])!, (days[1] ?? days[0])!] : null,
    claimHeat: pairIn(row, 'claim_heat_min', 'claim_heat_max', context),
    claimMeasures: claimMeasuresIn(row, context),
    colourUnripe: colourIn(row, 'colour_unripe', context),
    colourRipe: colourIn(row, 'colour_ripe', context),
    shape: wordIn(row, 'shape', SHAPES),
    formerIds: namesIn(row, 'former_ids'),
    alsoKnownAs: namesIn(row, 'also_known_as'),
    notes: textIn(row, 'notes'),
    unknownColumns: unknownIn(row),
    place: placeIn(row, column),
  };
}

/** Reports ids, names and former ids that two varieties share. */
function reportSharedNames(
  rows: readonly { readonly variety: Variety; readonly row: Row }[],
  { log }: CheckContext,
): void {
  const owner = new Map<string, Variety>();
  for (const { variety, row } of rows) {
    const names = [
      ['variety', variety.id],
      ['name', variety.name],
      ...variety.alsoKnownAs.map((name) => ['also_known_as', name]),
    ] as const;
    for (const [column, name] of names) {
      const fold = foldName(name);
      const other = owner.get(fold);
      if (other === undefined) owner.set(fold, variety);
      else if (other !== variety) {
        const code = column === 'variety' && other.id === variety.id ? 'variety-twice' : 'variety-name-twice';
        log.add(code, placeIn(row, column), name, { other: other.id, line: String(other.place.line ?? '') });
        if (code === 'variety-twice') break;
      }
    }
  }
  for (const { variety, row } of rows) {
    for (const id of variety.formerIds) {
      const other = owner.get(foldName(id));
      if (!isFitId(id)) log.add('id-unfit', placeIn(row, 'former_ids'), id);
      else if (other) log.add('former-id-taken', placeIn(row, 'former_ids'), id, { other: other.id });
      else owner.set(foldName(id), variety);
    }
  }
}

/** Checks varieties.csv. */
export function checkVarieties(source: SourceFile, context: CheckContext): readonly Variety[] {
  const known = openKnown(source, spec(context), context);
  if (!known) return [];
  const rows: { variety: Variety; row: Row }[] = [];
  const taken = new Set<string>();
  for (const row of rowsOf(known)) {
    const variety = varietyOf(row, context, taken);
    if (variety) rows.push({ variety, row });
  }
  reportSharedNames(rows, context);
  const seen = new Set<string>();
  return rows.map(({ variety }) => variety).filter(({ id }) => !seen.has(id) && seen.add(id));
}
