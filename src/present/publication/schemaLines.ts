import { fraction, list, map, number, object, oneOf, orNull, text, whole } from './fields.ts';
import { variety } from './schemaWords.ts';

const limits = {
  low: fraction('Lower limit of the interval'),
  high: fraction('Upper limit of the interval'),
};

const plant = object('A plant of the newest family', {
  planting: text('Its id in its season'),
  season: whole('Year in which it stood', 'year'),
  states: map('What it showed, by trait', text('A state')),
  breeds_true: map(
    'Chance among the gene models that it breeds true for its state, by trait; null where its genes are not told',
    orNull(fraction('Chance')),
  ),
  wanted_share: orNull(fraction('Share of its selfed offspring with every wanted state; null where none is wanted')),
  wanted_chance: orNull(fraction('Chance of at least one such among the plants that a line gets')),
  passed_on: map(
    'Part of its deviation from its sisters that is expected to be passed on, by trait',
    number('Deviation', 'logarithm of the trait, or the unit of a measure'),
  ),
  among_best_three: orNull(fraction('Chance to be truly among the best three; null without a measured goal')),
  carry: oneOf('Whether its seed is worth sowing', ['yes', 'no']),
});

/** A cross with its newest family. */
export const line = object('A cross, followed from generation to generation', {
  line: text('Its id, as in the address of its page'),
  name: text('Its name'),
  families: list('Its families, by generation', variety),
  generation: orNull(whole('Filial generation of the newest family; null where it is not known', 'generation')),
  mixed: orNull(fraction('Share of the genes in which the parents differ that is still mixed, on average, if selfed')),
  mixed_at_most: orNull(
    fraction('The same with as much foreign pollen as the species takes; null where none could come'),
  ),
  ratios: map(
    'Ratios of the F2 that are not ruled out, by trait, parts in the order of the states; null where none can be asked about',
    orNull(list('Ratios', object('A ratio', { ratio: text('Its parts'), p: fraction('Exact P-value') }))),
  ),
  models: map(
    'Shares left to the gene models by all that was seen, by trait, ratios added up; null where nothing can be told',
    orNull(map('Shares by ratio', fraction('Share'))),
  ),
  plants: list('Plants of the newest family that stood by themselves, best first', plant),
  off_types: map(
    'Plants of the newest family that differ from the rest, by trait',
    object('Counts', {
      k: whole('Plants that differ', 'plants'),
      n: whole('Plants looked at', 'plants'),
      at_most: fraction('Upper limit of their share, one-sided, 95 %'),
    }),
  ),
  spread: map(
    'Variance of its plants beside that of fixed varieties, by trait; null without fixed varieties',
    orNull(
      object('A ratio of variances', {
        ratio: number('Ratio', 'ratio of variances'),
        low: number('Lower limit', 'ratio of variances'),
        high: number('Upper limit', 'ratio of variances'),
      }),
    ),
  ),
  outlook: orNull(oneOf('What is to become of it', ['stop', 'drop', 'settled', 'go-on'])),
});

/** Seed put by. */
export const seedLot = object('A seed lot', {
  lot: text('Its id'),
  variety: orNull(text('Id of what grows from it; null where no row says it')),
  age: orNull(number('Age at next spring’s sowing; null without its year', 'years')),
  left: orNull(whole('Seeds left; null where they were not counted', 'seeds')),
  germinated: orNull(
    object('Sowings that were counted, all together', {
      k: whole('Seeds that came up', 'seeds'),
      n: whole('Seeds sown', 'seeds'),
      ...limits,
    }),
  ),
  expected: object('Germination expected at next spring’s sowing', { mean: fraction('Mean'), ...limits }),
  plants: whole('Plants that are wanted', 'plants'),
  seeds: orNull(whole('Seeds to sow for them; null where 200 are not enough', 'seeds')),
  act: oneOf('What to do', ['sow', 'test', 'save', 'gone']),
});

/** When to sow. */
export const sowing = object('A class’s days of planting out and sowing next year', {
  class: text('Key of the class'),
  frost_chance: fraction('Chance of a frost after the day'),
  plant_out: orNull(text('Day (ISO 8601); null where too few springs show their last frost')),
  sow: orNull(text('Day (ISO 8601)')),
  soil_warm: orNull(text('Day by which the soil is warm enough, but for the same chance (ISO 8601)')),
});
