import { median } from 'simple-statistics';
import { foldName } from '../../terms/names.ts';
import { fileOnly } from '../../terms/place.ts';
import type { Place } from '../../terms/place.ts';
import type { Score } from '../../terms/trial.ts';
import type { CheckContext } from '../context.ts';
import { pickedRows } from '../draft.ts';
import type { KeptRow, PlantingDraft } from '../draft.ts';

// What looks like a slip of the pen: warned about with its reason, and counted as it stands.
// How far is too far: common practice, no source.

/** A picking is doubtful at so many times the median of the planting's others, and far over the largest of them. */
const TIMES = 10;
const OVER_LARGEST = 3;
/** A planting is like a variety within this factor, unlike it beyond the other. */
const ALIKE = 1.5;
const UNLIKE = 2.5;
/** Units that are mistaken for each other: grams for ounces, for pounds, for kilograms. */
const UNIT_FACTORS = [
  [28.349523125, 'g, oz'],
  [453.59237, 'g, lb'],
  [1000, 'g, kg'],
] as const;
const UNIT_TOLERANCE = 1.6;

interface Weighed extends KeptRow {
  /** Grams of a fruit. */
  readonly each: number;
}

function weighedRows(draft: PlantingDraft): readonly Weighed[] {
  return pickedRows(draft.record).flatMap((row) =>
    row.fruits > 0 && row.grams > 0 ? [{ ...row, each: row.grams / row.fruits }] : [],
  );
}

function rounded(value: number): string {
  return value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
}

/** The unit that a fruit's weight seems to be in; null where it is like the others of its variety. */
function unitSlip(ratio: number): { readonly factor: number; readonly units: string } | null {
  for (const [factor, units] of UNIT_FACTORS) {
    for (const wanted of [factor, 1 / factor]) {
      const off = ratio / wanted;
      if (off > 1 / UNIT_TOLERANCE && off < UNIT_TOLERANCE) return { factor: ratio, units };
    }
  }
  return null;
}

/** Rows of a variety whose fruits seem weighed in another unit. */
function reportUnits(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): ReadonlySet<number> {
  const slipped = new Set<number>();
  const rows = drafts.flatMap(weighedRows);
  if (rows.length < 4) return slipped;
  const middle = median(rows.map(({ each }) => each));
  for (const { each, grams, line } of rows) {
    const slip = unitSlip(each / middle);
    if (!slip) continue;
    slipped.add(line);
    const facts = { factor: rounded(slip.factor), units: slip.units };
    log.add('unit-seems-wrong', { file, line, column: 1 }, `${rounded(grams)} g`, facts);
  }
  return slipped;
}

/** Pickings that dwarf the planting's others. */
function reportSize(draft: PlantingDraft, file: string, known: ReadonlySet<number>, { log }: CheckContext): void {
  const rows = pickedRows(draft.record);
  for (const key of ['grams', 'fruits'] as const) {
    const own = rows.filter((row) => row[key] > 0);
    if (own.length < 4) continue;
    const values = own.map((row) => row[key]).toSorted((a, b) => a - b);
    const largest = own.find((row) => row[key] === values.at(-1))!;
    const others = values.slice(0, -1);
    const middle = median(others);
    const doubtful = largest[key] >= TIMES * middle && largest[key] >= OVER_LARGEST * others.at(-1)!;
    if (!doubtful || known.has(largest.line)) continue;
    const found = key === 'grams' ? `${rounded(largest.grams)} g` : String(largest.fruits);
    log.add('picking-unlike-others', { file, line: largest.line, column: 1 }, found, {
      times: rounded(largest[key] / middle),
    });
    return;
  }
}

interface Mean {
  readonly draft: PlantingDraft;
  readonly each: number;
}

function fruitMeans(drafts: readonly PlantingDraft[]): readonly Mean[] {
  return drafts.flatMap((draft) => {
    const rows = weighedRows(draft);
    const fruits = rows.reduce((sum, row) => sum + row.fruits, 0);
    return fruits >= 4 ? [{ draft, each: rows.reduce((sum, row) => sum + row.grams, 0) / fruits }] : [];
  });
}

const isLike = (a: number, b: number): boolean => a / b < ALIKE && b / a < ALIKE;
const isUnlike = (a: number, b: number): boolean => a / b > UNLIKE || b / a > UNLIKE;

/** Pairs of plantings of which each has fruits like the other's variety, and unlike its own. */
function reportSwaps(byVariety: ReadonlyMap<string, readonly PlantingDraft[]>, { log }: CheckContext): void {
  const means = [...byVariety].map(([variety, drafts]) => ({ variety, list: fruitMeans(drafts) }));
  const strangers = means.flatMap(({ variety, list }) =>
    list.flatMap((own) => {
      const others = list.filter((other) => other !== own).map(({ each }) => each);
      return others.length > 0 && isUnlike(own.each, median(others))
        ? [{ ...own, variety, usual: median(others) }]
        : [];
    }),
  );
  // Where two varieties have two plantings each it cannot be told which pair was swapped: one warning is enough.
  const told = new Set<string>();
  for (const [i, a] of strangers.entries()) {
    for (const b of strangers.slice(i + 1)) {
      const pair = `${a.variety} ${b.variety}`;
      if (a.variety === b.variety || told.has(pair) || !isLike(a.each, b.usual) || !isLike(b.each, a.usual)) continue;
      told.add(pair);
      const facts = {
        first: a.draft.fields.id,
        firstVariety: a.variety,
        second: b.draft.fields.id,
        secondVariety: b.variety,
      };
      log.add('records-swapped', [a.draft.fields.place, b.draft.fields.place], a.draft.fields.id, facts);
    }
  }
}

/** Every dated picking of a season on one day. */
function reportOneDay(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): void {
  const rows = drafts.map((draft) => pickedRows(draft.record).filter(({ day }) => day !== null));
  const days = new Set(rows.flat().map(({ day }) => day));
  if (days.size === 1 && rows.flat().length >= 6 && rows.filter((own) => own.length > 0).length >= 3)
    log.add('all-on-one-day', fileOnly(file));
}

/** Warns of pickings of a season that look like slips. */
export function reportDoubtfulPickings(drafts: readonly PlantingDraft[], year: number, context: CheckContext): void {
  const file = `data/${year}/harvests.csv`;
  const planted = drafts.filter(({ fields, record }) => fields.totals === null && record.used > 0);
  const byVariety = new Map<string, PlantingDraft[]>();
  for (const draft of planted) {
    const own = byVariety.get(draft.fields.variety);
    if (own) own.push(draft);
    else byVariety.set(draft.fields.variety, [draft]);
  }
  for (const own of byVariety.values()) {
    const slipped = reportUnits(own, file, context);
    for (const draft of own) reportSize(draft, file, slipped, context);
  }
  reportSwaps(byVariety, context);
  reportOneDay(planted, file, context);
}

const MANY_VARIETIES = 6;

/** Warns of a taster who gave one score to many varieties that others tell apart, or one away from the scale's ends. */
export function reportSameScores(scores: readonly Score[], year: number, { log, settings }: CheckContext): void {
  const place: Place = fileOnly(`data/${year}/ratings.csv`);
  for (const trait of settings.traits.values()) {
    if (trait.kind !== 'rating') continue;
    const own = scores.filter((score) => score.trait === trait.key);
    for (const taster of new Set(own.map((score) => foldName(score.taster)))) {
      const list = own.filter((score) => foldName(score.taster) === taster);
      const varieties = new Set(list.map(({ variety }) => variety));
      const value = list[0]!.score;
      if (varieties.size < MANY_VARIETIES || list.some(({ score }) => score !== value)) continue;
      const others = own.filter((score) => foldName(score.taster) !== taster && varieties.has(score.variety));
      const differ = new Set(others.map(({ score }) => score)).size >= 3;
      if (differ || (others.length === 0 && value > trait.from && value < trait.to)) {
        const facts = { scores: String(varieties.size), trait: trait.key };
        log.add('taster-one-score', place, String(value), facts);
      }
    }
  }
}

const FAR = 30;
const CLOSE = 21;

/**
 * Warns of a date far from those of the rows beside it, in a table that goes by date.
 *
 * @param days   the dates in the order of their rows
 * @param lines  the lines on which they stand
 */
export function reportLoneDates(
  days: readonly number[],
  lines: readonly number[],
  file: string,
  { log }: Pick<CheckContext, 'log'>,
): void {
  if (days.length < 6) return;
  let falls = 0;
  for (let i = 1; i < days.length; i++) if (days[i]! < days[i - 1]!) falls++;
  // Each lone date makes at most one fall; a table by planting or by variety falls far more often.
  if (falls > Math.max(1, days.length / 20)) return;
  for (let i = 1; i + 1 < days.length; i++) {
    const [before, day, after] = [days[i - 1]!, days[i]!, days[i + 1]!];
    if (after < before || after - before > CLOSE) continue;
    const off = day < before ? before - day : day > after ? day - after : 0;
    if (off > FAR) log.add('date-unlike-neighbours', { file, line: lines[i]!, column: 1 }, '', { days: String(off) });
  }
}
