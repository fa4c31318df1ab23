import { fraction, list, map, number, object, oneOf, optional, orNull, text, whole } from './fields.ts';
import type { Of } from './fields.ts';
import { line, seedLot, sowing } from './schemaLines.ts';
import { nextSeason } from './schemaAdvice.ts';
import { UNIT, variety } from './schemaWords.ts';

const SCALE = 'a ratio or a difference in the unit of the trait, as `scale` says';

const low = (unit: string) => orNull(number('Lower limit of the interval; null where there is none', unit));
const high = (unit: string) => orNull(number('Upper limit of the interval; null where there is none', unit));
const n = whole('Units that the figure rests on: plantings, or scores', 'units');

const share = object('k of n with its interval (Wilson)', {
  k: number('Those for which it is so', 'plants, seeds or people'),
  n: number('Those asked or counted', 'plants, seeds or people'),
  low: low('fraction'),
  high: high('fraction'),
});

const figure = object('What was seen of a trait', {
  unit: text('Unit of the figures'),
  n,
  estimate: optional(orNull(number('Best estimate; null where there is none', UNIT))),
  median: optional(orNull(number('First ripe fruit: the Kaplan-Meier median', 'd'))),
  low: low(UNIT),
  high: high(UNIT),
  method: text('Method of the estimate, named on the methods page'),
  reason: optional(text('Why there is no estimate, or no interval')),
  tasters: optional(whole('People who scored', 'people')),
  ripe: optional(whole('Plantings with ripe fruit', 'plantings')),
  unripe: optional(whole('Plantings without', 'plantings')),
  k: optional(number('Answers: those who said yes', 'people')),
  model: optional(
    orNull(
      object('First ripe fruit by the log-normal model, beside the median', {
        n,
        estimate: orNull(number('Median of a typical planting', 'd')),
        low: low('d'),
        high: high('d'),
        method: text('Method of the estimate'),
        reason: optional(text('Why there is no interval')),
      }),
    ),
  ),
  degree_days: optional(
    orNull(
      object('The median on the clock of degree days', {
        median: orNull(number('Degree days to the first ripe fruit', '°C d')),
        low: low('°C d'),
        high: high('°C d'),
        base_c: number('Below this it is too cold to count', '°C'),
        cap_c: orNull(number('Above this it counts no more; null without a cap', '°C')),
        method: number('How a day is counted, 1 or 2, as the methods page names them', 'number of the method'),
      }),
    ),
  ),
});

const seen = object('A variety in the season', {
  variety,
  name: text('Its name'),
  class: text('Key of its class'),
  status: oneOf('Whether it was grown in an earlier season', ['new', 'returning']),
  plants_set_out: whole('Plants set out, accidents too', 'plants'),
  plantings: whole('Plantings set out', 'plantings'),
  plantings_excluded: whole('Plantings lost by accident, left out of the yields', 'plantings'),
  shares: object('Shares of seeds and plants', {
    germinated: optional(share),
    cropped: optional(share),
    ripe_by_end: optional(share),
    off_type: optional(share),
    hot: optional(share),
  }),
  culls: orNull(
    object('Unusable fruit; null where none was recorded', {
      fruits: number('Unusable fruits', 'fruits/plant'),
      weight: number('Their weight', 'g/plant'),
    }),
  ),
  traits: map('Figures by trait', figure),
});

const planting = object('A planting, or plantings recorded together', {
  planting: text('Its id'),
  variety,
  plants: whole('Plants set out', 'plants'),
  traits: object('Its own values', {
    yield: orNull(number('Usable weight', 'g/plant')),
    fruits: orNull(number('Usable fruits', 'fruits/plant')),
    first_ripe: orNull(number('Days to its first ripe fruit; null where it never ripened, or when is not known', 'd')),
  }),
});

const p = fraction('Probability of a difference as large by chance, adjusted for all comparisons of its kind');
const contrast = {
  estimate: number('The difference', SCALE),
  low: low(SCALE),
  high: high(SCALE),
  p,
};

const comparison = object('The varieties of a season compared in one trait', {
  method: text('Method of the model'),
  scale: oneOf('Whether differences are ratios', ['ratio', 'difference']),
  residual_df: number('Degrees of freedom of the error', 'degrees of freedom'),
  dispersion: orNull(number('Dispersion, or the variance of the error', 'squared working scale')),
  dispersion_by_class: optional(map('Dispersion by class', number('Its dispersion', 'squared working scale'))),
  cv_percent: orNull(number('Coefficient of variation between plants of a variety', 'per cent')),
  layout: optional(map('How plants of a variety stood, by class', oneOf('Layout', ['together', 'spread']))),
  blocks: optional(oneOf('What stands for likeness of place in the model', ['block', 'stands-in', 'none'])),
  factor: optional(oneOf('What stands between plants and varieties in a season of several gardens', ['garden'])),
  parts: optional(
    map(
      'Varieties that gardens join, by class: nothing compares those of different parts',
      list('Part', list('Variety', text('Id'))),
    ),
  ),
  f: optional(
    map(
      'Test of equal varieties, by class',
      orNull(
        object('F test', {
          value: number('F', 'ratio of variances'),
          df1: number('Degrees of freedom of the varieties', 'degrees of freedom'),
          df2: number('Degrees of freedom of the error', 'degrees of freedom'),
          p: fraction('Probability of an F as large by chance'),
        }),
      ),
    ),
  ),
  lsd: optional(
    map(
      'Least significant difference by class; scale `difference` with equal replication only',
      orNull(number('LSD', UNIT)),
    ),
  ),
  kendall_w: orNull(fraction('Agreement of the tasters: 0 none, 1 all alike; ratings only')),
  letters: map('Letters of the varieties: two with one in common are not separated', orNull(text('Letters'))),
  against_check: map(
    'Every variety against the check of its class (Dunnett)',
    orNull(
      object('Comparisons of a class', {
        check_variety: variety,
        varieties: list('Every other variety', object('A comparison', { variety, ...contrast })),
      }),
    ),
  ),
  new_against_returning: map(
    'New varieties against returning ones, by class',
    orNull(object('A comparison', contrast)),
  ),
});

const ranking = object('Answers of members about what they were sent', {
  trait: text('Key of the trait'),
  class: text('Key of the class'),
  method: oneOf('How worths were found', ['plackett-luce']),
  members: whole('Members who answered', 'members'),
  sent: whole('Members who were asked', 'members'),
  ties: list(
    'Worth of a tie of two, three … beside a single one’s; 1,000,000 where it has no end',
    number('Worth', 'ratio'),
  ),
  worst_error: fraction('Largest relative error of a standard error of a difference by quasi-variances'),
  varieties: list(
    'Varieties, the most preferred first; empty where fewer than five members answered',
    object('A variety', {
      variety,
      answers: whole('Members who had it', 'members'),
      log_worth: number('Logarithm of its worth; they add up to 0', 'log'),
      quasi_variance: number('Variance that stands for it in any comparison', 'log²'),
      before_middle: fraction('Share in which it is before one of worth 1'),
      low: fraction('Lower end of its interval'),
      high: fraction('Upper end of its interval'),
    }),
  ),
});

const results = object('Figures of a variety trial', {
  format: oneOf('Name and version of this format', ['keeprow-results/1']),
  trial: object('The trial', { title: text('Its title'), interval: fraction('Level of every interval') }),
  seasons: list(
    'Seasons, oldest first',
    object('A season', {
      season: whole('Year', 'year'),
      gardens: optional(
        object('Gardens of a club', {
          sent: whole('That were sent anything, or sent records', 'gardens'),
          received: whole('Of which records came', 'gardens'),
          counted: whole('That grew two varieties of a class or more', 'gardens'),
        }),
      ),
      varieties: list('Varieties grown', seen),
      plantings: list('Plantings', planting),
      comparisons: map('Comparisons by trait', comparison),
      rankings: list('What members of a club preferred', ranking),
    }),
  ),
  ongoing: orNull(
    object('The season that is not over: what was recorded to date, in no other figure; null where all are over', {
      season: whole('Year', 'year'),
      varieties: list(
        'Varieties that stand',
        object('A variety', {
          variety,
          plants: whole('Plants set out', 'plants'),
          first_ripe: orNull(text('Date of the first ripe fruit (ISO 8601); null before')),
          fruits: number('Usable fruits picked to date, of all its plants', 'fruits'),
          weight: number('Usable weight picked to date, of all its plants', 'g'),
        }),
      ),
    }),
  ),
  lines: list('Crosses, followed from generation to generation', line),
  seed_lots: list('Seed put by; empty where it is not published', seedLot),
  sowing: list('When to plant out and sow; empty with fewer than three springs of weather', sowing),
  next_season: orNull(nextSeason),
});

/** results.json as it is written. */
export type Results = Of<typeof results>;
export type Figure = Of<typeof figure>;
export type ComparisonDocument = Of<typeof comparison>;
export type PlantingDocument = Of<typeof planting>;

/** JSON Schema of results.json. @source JSON Schema, draft 2020-12 */
export const resultsSchema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'keeprow-results/1',
  ...results.schema,
};
