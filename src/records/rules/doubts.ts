import { grouped } from '../../terms/groups.ts';
import { median, medianSorted } from 'simple-statistics';
import { fileOnly } from '../../terms/place.ts';
import type { Place } from '../../terms/place.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { eachPicked } from '../draft.ts';
import type { PlantingDraft } from '../draft.ts';
import { reportOften, reportOneDay } from './pickedDays.ts';
import { nth } from '../../numerics/element.ts';

// What looks like a slip of the pen: warned about with its reason, and counted as it stands.
// How far is too far: common practice, no source.

/** A picking is doubtful at so many times the median of the planting's others, and far over the largest of them. */
const TIMES = 10;
const OVER_LARGEST = 3;
const FEW_FRUITS = 3;
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
/** A fruit so many times as heavy as the middle one of its variety, or as light, is none of it. */
const TOO_HEAVY = 6;
const TOO_LIGHT = 8;
/** Fruits of wild peppers weigh a tenth of a gram and more; lighter ones are no fruits [g]. */
const LIGHTEST = 0.1;

const isLike = (a: number, b: number): boolean => a / b < ALIKE && b / a < ALIKE;
const isUnlike = (a: number, b: number): boolean => a / b > UNLIKE || b / a > UNLIKE;

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

/** True for a fruit's weight that is like the others' only if fruits and grams are read the other way round. */
function isExchanged(each: number, middle: number): boolean {
  const other = 1 / each / middle;
  return isUnlike(each, middle) && other < UNIT_TOLERANCE && other > 1 / UNIT_TOLERANCE;
}

/**
 * False where no fruit's weight can be a slip: nearly always, so that millions of rows need no further look.
 *
 * @param least       smallest weight of a fruit, in the unit of `middle`
 * @param middleMost  largest that the median may be
 * @param middleLeast smallest that the median may be
 * @param most        largest weight of a fruit
 */
function isDoubtful(least: number, middleMost: number, middleLeast: number, most: number): boolean {
  const isUnit = most / middleLeast > TOO_HEAVY || middleMost / least > TOO_LIGHT;
  const mayBeExchanged = least * middleLeast < UNIT_TOLERANCE && most / least > UNLIKE;
  return isUnit || mayBeExchanged;
}

/** Rows of a variety whose fruits seem weighed in another unit, or whose figures stand in each other's column. */
function reportUnits(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): ReadonlySet<number> {
  const slipped = new Set<number>();
  let [weighed, least, most] = [0, Infinity, 0];
  for (const { record } of drafts)
    eachPicked(record, (fruits, grams) => {
      if (fruits === 0 || grams === 0) return;
      weighed++;
      least = Math.min(least, grams / fruits);
      most = Math.max(most, grams / fruits);
    });
  if (weighed < 4 || !isDoubtful(least, most, least, most)) return slipped;
  const weights = new Float64Array(weighed);
  let next = 0;
  for (const { record } of drafts)
    eachPicked(record, (fruits, grams) => {
      if (fruits > 0 && grams > 0) weights[next++] = grams / fruits;
    });
  const middle = medianSorted(weights.toSorted() as unknown as number[]);
  if (!isDoubtful(least, middle, middle, most)) return slipped;
  for (const { record } of drafts)
    eachPicked(record, (fruits, grams, line) => {
      if (fruits === 0 || grams === 0) return;
      if (isExchanged(grams / fruits, middle)) {
        slipped.add(line);
        reportExchanged(fruits, grams, { file, line, column: 1 }, log);
        return;
      }
      const times = grams / fruits / middle;
      const slip = unitSlip(times);
      if (!slip) {
        if (times < TOO_HEAVY && times > 1 / TOO_LIGHT) return;
        slipped.add(line);
        const found = `${rounded(grams)} g`;
        log.add('fruit-unlike-others', { file, line, column: 1 }, found, { times: rounded(times) });
        return;
      }
      slipped.add(line);
      const facts = { factor: rounded(slip.factor), units: slip.units };
      log.add('unit-seems-wrong', { file, line, column: 1 }, `${rounded(grams)} g`, facts);
    });
  return slipped;
}

/** The largest ripe picking of a planting where it dwarfs the others; green fruit is cleared in one go. */
function largestOf(draft: PlantingDraft, key: 'grams' | 'fruits') {
  let [largest, second, line, count] = [0, 0, 0, 0];
  eachPicked(draft.record, (fruits, grams, at, _, isGreen) => {
    const value = key === 'grams' ? grams : fruits;
    if (value === 0 || isGreen) return;
    count++;
    if (value > largest) [largest, second, line] = [value, largest, at];
    else if (value > second) second = value;
  });
  if (count < 4 || largest < OVER_LARGEST * second) return null;
  const values: number[] = [];
  const counted: number[] = [];
  eachPicked(draft.record, (fruits, grams, at, _, isGreen) => {
    const value = key === 'grams' ? grams : fruits;
    if (value > 0 && !isGreen) values.push(value);
    if (fruits > 0 && !isGreen && at !== line) counted.push(fruits);
  });
  // After one fruit or two a flush of many is nothing odd.
  if (counted.length > 0 && median(counted) < FEW_FRUITS) return null;
  const others = values.toSorted((a, b) => a - b).slice(0, -1);
  const times = largest / median(others);
  return times >= TIMES ? { largest, line, times } : null;
}

/** Pickings that dwarf the planting's others. */
function reportSize(draft: PlantingDraft, file: string, known: ReadonlySet<number>, { log }: CheckContext): void {
  for (const key of ['grams', 'fruits'] as const) {
    const doubtful = largestOf(draft, key);
    if (!doubtful || known.has(doubtful.line)) continue;
    const { largest, line, times } = doubtful;
    const found = key === 'grams' ? `${rounded(largest)} g` : String(largest);
    log.add('picking-unlike-others', { file, line, column: 1 }, found, { times: rounded(times) });
    return;
  }
}

interface Mean {
  readonly draft: PlantingDraft;
  readonly each: number;
}

function fruitMeans(drafts: readonly PlantingDraft[]): readonly Mean[] {
  return drafts.flatMap((draft) => {
    let [count, total] = [0, 0];
    eachPicked(draft.record, (fruits, grams) => {
      if (fruits === 0 || grams === 0) return;
      count += fruits;
      total += grams;
    });
    return count >= 4 ? [{ draft, each: total / count }] : [];
  });
}

/** Median of sorted values without one of them; null where nothing is left. */
function medianWithout(sorted: readonly number[], index: number): number | null {
  const n = sorted.length - 1;
  if (n === 0) return null;
  const at = (i: number): number => nth(sorted, i < index ? i : i + 1);
  return n % 2 === 1 ? at((n - 1) / 2) : (at(n / 2 - 1) + at(n / 2)) / 2;
}

/** Pairs of plantings of which each has fruits like the other's variety, and unlike its own. */
function reportSwaps(byVariety: ReadonlyMap<string, readonly PlantingDraft[]>, { log }: CheckContext): void {
  const means = [...byVariety].map(([variety, drafts]) => ({ variety, list: fruitMeans(drafts) }));
  const strangers = means.flatMap(({ variety, list }) => {
    const sorted = list.map(({ each }) => each).toSorted((a, b) => a - b);
    return list.flatMap((own) => {
      const usual = medianWithout(sorted, sorted.indexOf(own.each));
      return usual !== null && isUnlike(own.each, usual) ? [{ ...own, variety, usual }] : [];
    });
  });
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

function reportExchanged(fruits: number, grams: number, place: Place, log: CheckContext['log']): void {
  const facts = { fruits: rounded(fruits), grams: rounded(grams) };
  log.add('fruits-and-weight-swapped', place, `${rounded(grams)} g`, facts);
}

/** A season in which fruits weigh less than any that is grown: the two columns have each other's head. */
function reportHeads(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): void {
  let [rows, tiny, count, total] = [0, 0, 0, 0];
  for (const { record } of drafts)
    eachPicked(record, (fruits, grams) => {
      if (fruits === 0 || grams === 0) return;
      rows++;
      count += fruits;
      total += grams;
      if (grams < LIGHTEST * fruits) tiny++;
    });
  if (rows >= 4 && 2 * tiny > rows) reportExchanged(count, total, fileOnly(file), log);
}

/**
 * Warns of pickings of a season that look like slips.
 *
 * @param file  the table that they stand in
 */
export function reportDoubtfulPickings(drafts: readonly PlantingDraft[], file: string, context: CheckContext): void {
  const planted = drafts.filter(({ fields, record }) => fields.totals === null && record.used > 0);
  const byVariety = grouped(planted, ({ fields }) => fields.variety);
  for (const own of byVariety.values()) {
    const slipped = reportUnits(own, file, context);
    for (const draft of own) {
      reportSize(draft, file, slipped, context);
      reportOften(draft, file, context);
    }
  }
  reportSwaps(byVariety, context);
  reportOneDay(planted, file, context);
  reportHeads(planted, file, context);
}
