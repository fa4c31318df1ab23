import type { FactsOf } from '../../terms/problemFacts.ts';
import { fileOnly } from '../../terms/place.ts';
import type { Variety } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { grouped } from '../../terms/groups.ts';
import { eachPicked } from '../draft.ts';
import type { PlantingDraft } from '../draft.ts';
import type { VarietyRegistry } from '../registry.ts';
import { middle, spreadOf, unlikeOthers } from './groups.ts';
import type { LogGroups, SeasonLogs } from './groups.ts';

// Sizes of fruit that no crop has, that another season contradicts, or that fit neither number nor variety.
// Limits: from memory, rounded well outward.

/** Nothing that is grown for its fruit gives more: a fruit, a plant [g]. */
const ABSURD = { fruit: 5000, plant: 100_000 };
/** Larger ones there are, and they are seldom [g]. */
const UNLIKELY = { fruit: 2000, plant: 40_000 };
/** Of gourds and melons. */
const ABSURD_GOURD = { fruit: 1_500_000, plant: 3_000_000 };
const GOURDS = /^(?:cucurbita|citrullus|cucumis|lagenaria|benincasa|sechium|momordica|luffa|trichosanthes)\b/i;

/** Fruit weights of the same varieties differ from season to season, never by so much. */
const TIMES_BETWEEN_SEASONS = 4;
/** Fruit of a planting spread by a third or so about their variety's weight [SD of logs]; a mix of varieties by more. */
const MIXED = 0.55;
const FEWEST_ROWS = 20;

interface Limits {
  readonly fruit: number;
  readonly plant: number;
}

function limitsOf(variety: Variety | null): { readonly absurd: Limits; readonly unlikely: Limits | null } {
  const isGourd = GOURDS.test(variety?.species ?? '');
  return isGourd ? { absurd: ABSURD_GOURD, unlikely: null } : { absurd: ABSURD, unlikely: UNLIKELY };
}

const kilograms = (grams: number): string => `${Number((grams / 1000).toPrecision(3))} kg`;

/** Reports fruit and plants heavier than any. */
export function reportHeavy(
  drafts: readonly PlantingDraft[],
  file: string,
  registry: VarietyRegistry,
  { log }: CheckContext,
): void {
  for (const { fields, record } of drafts) {
    const { absurd, unlikely } = limitsOf(registry.find(fields.variety));
    let [total, heaviest, heaviestLine] = [0, 0, 0];
    const absurdLines: number[] = [];
    const source = fields.totals === null ? file : fields.place.file;
    eachPicked(record, (fruits, grams, line) => {
      total += grams;
      const each = fruits > 0 ? grams / fruits : 0;
      if (each > absurd.fruit) absurdLines.push(line);
      if (each > heaviest) [heaviest, heaviestLine] = [each, line];
    });
    const facts = { fruit: kilograms(absurd.fruit), plant: kilograms(absurd.plant) };
    const places = absurdLines.map((line) => ({ file: source, line, column: 1 }));
    if (places.length > 0) log.add('figure-absurd', places, '', facts);
    else if (total / fields.plants > absurd.plant) log.add('figure-absurd', fields.place, '', facts);
    else if (unlikely && heaviest > unlikely.fruit)
      log.add('figure-unlikely', { file: source, line: heaviestLine, column: 1 }, kilograms(heaviest), { of: 'fruit' });
    else if (unlikely && total / fields.plants > unlikely.plant)
      log.add('figure-unlikely', fields.place, kilograms(total / fields.plants), { of: 'plant' });
  }
}

interface Logs {
  readonly weights: LogGroups;
  readonly counts: LogGroups;
  readonly each: LogGroups;
}

/** Logs of weight, number and weight of a fruit of every row that has both, by variety. */
function logsOf(drafts: readonly PlantingDraft[]): Logs {
  const logs = {
    weights: new Map<string, Float64Array>(),
    counts: new Map<string, Float64Array>(),
    each: new Map<string, Float64Array>(),
  };
  for (const [variety, own] of grouped(drafts, ({ fields }) => fields.variety)) {
    let rows = 0;
    for (const { record } of own)
      eachPicked(record, (fruits, grams) => {
        if (fruits > 0 && grams > 0) rows++;
      });
    if (rows === 0) continue;
    const [weights, counts, each] = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
    let at = 0;
    for (const { record } of own)
      eachPicked(record, (fruits, grams) => {
        if (fruits === 0 || grams === 0) return;
        weights[at] = Math.log(grams);
        counts[at] = Math.log(fruits);
        each[at++] = Math.log(grams / fruits);
      });
    logs.weights.set(variety, weights);
    logs.counts.set(variety, counts);
    logs.each.set(variety, each);
  }
  return logs;
}

/** The middle one of the fruit weights of each variety in a season, the only one that seasons are compared by. */
export function fruitWeights(year: number, drafts: readonly PlantingDraft[], file: string): SeasonLogs {
  const { each } = logsOf(drafts);
  return { year, file, groups: new Map([...each].map(([variety, own]) => [variety, Float64Array.of(middle(own))])) };
}

/**
 * Warns where one column of the pickings has slipped against the others: then fruit of one variety are of all sizes, or
 * weights do not go with numbers.
 */
export function reportScrambled(drafts: readonly PlantingDraft[], file: string, { log }: CheckContext): void {
  const { weights, counts, each } = logsOf(drafts.filter(({ fields }) => fields.totals === null));
  const size = spreadOf(each);
  if (!size || size.values < FEWEST_ROWS || size.within <= MIXED) return;
  const [weight, count] = [spreadOf(weights), spreadOf(counts)];
  if (!weight || !count) return;
  // Where numbers and weights go together, a fruit's weight spreads less than the weights do.
  if (count.within > 0.25 && size.within > weight.within) {
    log.add('weights-not-of-fruits', fileOnly(file));
  } else if (size.groups >= 4 && size.chance > 0.01) {
    log.add('fruits-not-of-variety', fileOnly(file));
  }
}

/** Warns of a season in which the fruit of the same varieties are many times as heavy as in the others. */
export function reportWeightsUnlikeSeasons(seasons: readonly SeasonLogs[], { log }: CheckContext): void {
  const doubtful = unlikeOthers(seasons, TIMES_BETWEEN_SEASONS);
  if (!doubtful) return;
  const { season, times, others } = doubtful;
  const facts = timesFacts(times, season, others);
  log.add('weights-unlike-seasons', fileOnly(season.file), String(season.year), facts);
}

/** A number of times, or its inverse, in words that any language can take. */
export function timesFacts(
  times: number,
  season: SeasonLogs,
  others: readonly SeasonLogs[],
): FactsOf<'weights-unlike-seasons'> {
  const shown = (value: number): string => String(Number(value.toPrecision(value >= 10 ? 3 : 2)));
  return {
    times: shown(times),
    season: String(season.year),
    others: others.map(({ year }) => year).join(', '),
  };
}

/** How much of the ellipsoid of a fruit's length and width it weighs [g/cm³]: hollow pods a fifth, tomatoes all. */
const DENSITY = [0.05, 4] as const;

/** Warns where fruit weigh many times, or a small part of, what their measured length and width hold. */
export function reportWeightAgainstSize(
  season: SeasonLogs,
  lengths: LogGroups,
  widths: LogGroups,
  { log }: CheckContext,
): void {
  const densities = [...season.groups].flatMap(([variety, each]) => {
    const [length, width] = [lengths.get(variety), widths.get(variety)];
    if (!length || !width) return [];
    return [middle(each) - Math.log(Math.PI / 6) - middle(length) - 2 * middle(width)];
  });
  if (densities.length < 3) return;
  const density = Math.exp(middle(densities));
  if (density > DENSITY[0] && density < DENSITY[1]) return;
  log.add('weights-unlike-size', fileOnly(season.file), '', { density: String(Number(density.toPrecision(2))) });
}
