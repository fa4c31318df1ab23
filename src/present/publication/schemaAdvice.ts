import { either, flag, fraction, list, map, number, object, oneOf, optional, orNull, text, whole } from './fields.ts';
import type { Of } from './fields.ts';
import { UNIT, variety, WORKING } from './schemaWords.ts';

const VERDICTS = ['keep', 'drop', 'no-room', 'try-again'] as const;

const limit = (meaning: string) =>
  either(number(meaning, UNIT), list(`${meaning}: both ends of the best range`, number('An end', UNIT)));

const expected = object('What is expected of a variety in an average season', {
  estimate: number('Expected value', UNIT),
  low: orNull(number('Lower limit of the interval', UNIT)),
  high: orNull(number('Upper limit of the interval', UNIT)),
  unit: text('Unit of the figures'),
  assumed_se: flag('True where a standard error was borrowed or assumed'),
  own_share: fraction('Weight of its own results, the rest is its class'),
  seasons: list(
    'The results it rests on',
    object('A season', {
      season: whole('Year', 'year'),
      value: number('Result of the season', WORKING),
      se: number('Its standard error', WORKING),
      mark: oneOf('Where the result and its error come from', [
        'own',
        'borrowed',
        'assumed',
        'nothing-picked',
        'later-than',
      ]),
    }),
  ),
});

const advised = object('Advice on a variety', {
  variety,
  verdict: oneOf('The advice', VERDICTS),
  share: fraction('Share of simulated seasons in which it earns a spot'),
  above_bar: fraction('Share of simulated seasons in which it is above the bar'),
  on_the_edge: flag('True where another seed of the simulation could turn the verdict'),
  leans: orNull(oneOf('Try again: the limit that is nearer', ['up', 'down'])),
  settles: list(
    'Try again: chance that one more season settles it',
    object('With so many plants', { plants: whole('Plants', 'plants'), chance: fraction('Chance') }),
  ),
  fragile: list(
    'Goals whose weight, halved or doubled, turns the verdict',
    object('A goal', {
      trait: text('Key of the trait'),
      factor: number('Factor of its weight', 'factor'),
      verdict: oneOf('The verdict then', VERDICTS),
    }),
  ),
  untested: flag('True where a limit was never tested'),
  decided_by_limit: flag('True where a limit decided'),
  wanted: flag('True where all who were asked want it again'),
  seasons: whole('Seasons it was grown', 'seasons'),
  last_grown: whole('Year it was last grown', 'year'),
  expected: map('Expected values by goal', expected),
  reasons: list(
    'What speaks for it and against it',
    object('A reason', {
      trait: text('Key of the trait'),
      effect: number('Effect on the score; more is better', 'points of 100'),
      text: text('The reason in words'),
    }),
  ),
});

const kept = object('How advice fared', {
  advised: list('Varieties advised', variety),
  grown: list('Those that were grown', variety),
  earned: list('Those that earned a spot', variety),
});

const classAdvice = object('Advice on a class', {
  spots: whole('Places for varieties', 'varieties'),
  bar: oneOf('What a variety has to beat', ['newcomer', 'check']),
  goals: list(
    'What counts',
    object('A goal', {
      trait: text('Key of the trait'),
      weight: number('Its weight', 'weight'),
      bad: limit('Gives no points'),
      good: limit('Gives all points'),
      given: flag('True where the range was given in trial.yaml'),
      part_of_variance: number('Its part of the variance of the score', 'fraction'),
      cut_off: fraction('Share of the draws outside the range'),
    }),
  ),
  goals_are_default: flag('True where no goals were given'),
  fruits_for_yield: flag('True where fruit numbers stand in for weights'),
  list: list('Varieties advised for the spots, best first', variety),
  expected_right: number('How many of the list are expected to earn their spot', 'varieties'),
  newcomer_spots: whole('Spots that the list leaves to newcomers', 'varieties'),
  gain: orNull(number('What the list gives above as many newcomers', 'points of 100')),
  not_competing: list(
    'Varieties without advice',
    object('A variety', {
      variety,
      why: oneOf('Why', ['retired', 'early-line', 'followed-by-descendant', 'untried']),
    }),
  ),
  last_winter: orNull(
    object('Last winter’s advice, checked', { season: whole('Year it was for', 'year'), keeps: kept, list: kept }),
  ),
  varieties: list('In order of share', advised),
});

/** Schema of `next_season` in results.json. */
export const nextSeason = object('What is expected and advised', {
  season: whole('Year', 'year'),
  simulations: whole('Simulated seasons', 'seasons'),
  spread: map(
    'How much varieties and seasons differ, by trait',
    object('Posterior means', {
      between_varieties: number('SD between varieties', WORKING),
      variety_by_season: number('SD of a variety between seasons', WORKING),
      variety_by_garden: optional(number('SD of a variety between gardens', WORKING)),
      rest: optional(number('SD of a variety in a garden and season beside them', WORKING)),
      working_scale: oneOf('The working scale', ['log', 'as it is', 'log worth']),
      prior_scale: number('Scale of the priors of both', WORKING),
    }),
  ),
  classes: map('Advice by class', classAdvice),
  gardens: optional(
    list(
      'Gardens of a club that show their page',
      object('A garden', {
        garden: text('Its code'),
        classes: map(
          'Advice for it by class',
          list(
            'In order of share',
            object('A variety', {
              variety,
              verdict: oneOf('Verdict for this garden', VERDICTS),
              share: fraction('Share of simulated seasons in which it earns a spot there'),
              club_verdict: oneOf('Verdict for the club', VERDICTS),
              club_share: fraction('The same share in the club'),
            }),
          ),
        ),
      }),
    ),
  ),
  gardens_needed: optional(
    map(
      'Gardens that a variety of a class needs to see a difference of yield in one season, by class',
      object('Numbers of gardens', {
        now: number('Gardens of a variety in the last season, on average', 'gardens'),
        for_fifth: whole('For a difference of a fifth', 'gardens'),
        for_two_fifths: whole('For a difference of two fifths', 'gardens'),
      }),
    ),
  ),
});

export type NextSeasonDocument = Of<typeof nextSeason>;
export type ClassAdviceDocument = Of<typeof classAdvice>;
export type AdvisedDocument = Of<typeof advised>;
