const number = { type: 'number' };
const orNull = (type: object): object => ({ anyOf: [type, { type: 'null' }] });
const text = { type: 'string' };
const whole = { type: 'integer', minimum: 0 };
const fraction = { type: 'number', minimum: 0, maximum: 1 };
const map = (values: object): object => ({ type: 'object', additionalProperties: values });
const object = (properties: Record<string, object>, required = Object.keys(properties)): object => ({
  type: 'object',
  properties,
  required,
});
const list = (items: object): object => ({ type: 'array', items });

const figure = object(
  {
    unit: text,
    n: whole,
    estimate: orNull(number),
    median: orNull(number),
    low: orNull(number),
    high: orNull(number),
    method: text,
  },
  ['unit', 'n', 'low', 'high', 'method'],
);

const variety = object(
  {
    variety: text,
    name: text,
    class: text,
    status: { enum: ['new', 'returning'] },
    plants_set_out: whole,
    plantings: whole,
    plantings_excluded: whole,
    shares: map(object({ k: number, n: number, low: orNull(fraction), high: orNull(fraction) })),
    traits: map(figure),
  },
  ['variety', 'name', 'class', 'status', 'plants_set_out', 'plantings', 'plantings_excluded', 'shares', 'traits'],
);

const contrast = object({ estimate: number, low: orNull(number), high: orNull(number), p: fraction });

const comparison = object(
  {
    method: text,
    scale: { enum: ['ratio', 'difference'] },
    residual_df: { type: 'integer' },
    dispersion: orNull(number),
    dispersion_by_class: map(number),
    layout: map({ enum: ['together', 'spread'] }),
    cv_percent: orNull(number),
    f: map(orNull(object({ value: number, df1: number, df2: number, p: fraction }))),
    lsd: map(orNull(number)),
    letters: map(orNull(text)),
    kendall_w: orNull(fraction),
    against_check: map(orNull(object({ check_variety: text, varieties: list(contrast) }))),
    new_against_returning: map(orNull(contrast)),
  },
  ['method', 'scale', 'residual_df', 'letters', 'against_check', 'new_against_returning'],
);

const advised = object(
  {
    variety: text,
    verdict: { enum: ['keep', 'drop', 'no-room', 'try-again'] },
    share: fraction,
    above_bar: fraction,
    expected: map(
      object({
        estimate: number,
        low: orNull(number),
        high: orNull(number),
        unit: text,
        assumed_se: { type: 'boolean' },
      }),
    ),
    reasons: list(object({ trait: text, effect: number, text })),
  },
  ['variety', 'verdict', 'share', 'above_bar', 'expected', 'reasons'],
);

const nextSeason = object({
  season: whole,
  simulations: whole,
  spread: map(object({ between_varieties: number, variety_by_season: number })),
  classes: map(object({ spots: whole, list: list(text), expected_right: number, varieties: list(advised) })),
});

/** JSON Schema of results.json. @source JSON Schema, draft 2020-12 */
export const resultsSchema = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'keeprow-results/1',
  ...object({
    format: { const: 'keeprow-results/1' },
    trial: object({ title: text, interval: fraction }),
    seasons: list(
      object({
        season: whole,
        varieties: list(variety),
        plantings: list(object({ planting: text, variety: text, traits: map(orNull(number)) })),
        comparisons: map(comparison),
      }),
    ),
    next_season: orNull(nextSeason),
  }),
};
