import { needed, row } from './listedTable.ts';
import type { Listed } from './listedTable.ts';

/** Events of observations.csv. */
export const EVENT_LIST: readonly Listed[] = [
  row('first-flower', 'the first open flower'),
  row('first-set', 'the first fruit set'),
  row('unripe', 'looked at, nothing ripe yet'),
  row('first-ripe', 'the first ripe fruit'),
  row('topped', 'its tip was taken'),
  row('lost', 'it died or was taken'),
  row('nothing-picked', 'it gave nothing that could be used'),
  row('off-type', 'it is not what its packet says (count, of)'),
  row('hot', 'fruit of a mild variety that burned (count, of)'),
];

/** Settings of data/trial.yaml. */
export const SETTING_LIST: readonly Listed[] = [
  needed('title', 'the trial’s name', 'Slope trial'),
  row('place', 'shown on the site', 'Upper allotments'),
  row('language', 'of numbers, dates and the site: en-GB, de', 'en-GB'),
  row('units', 'what the site shows first: metric, us', 'metric'),
  row('dates', 'how 03/08/2026 is read: iso, day-first, month-first', 'day-first'),
  row('interval', 'level of every interval', '0.95'),
  row('degree_days', 'base, cap, and which of two ways to count', '{base_c: 10, cap_c: 30, method: 2}'),
  row('first_ripe_from', 'days are counted from: transplanted, sown', 'transplanted'),
  row('spot_correlation', 'how alike plants in one place are, 0 to 0.95', '0.2'),
  row('garden', 'the code of the trial’s own garden, where members of a club keep records too', 'home'),
  row('garden_correlation', 'how alike plants of a variety in one garden are, 0 to 0.95', '0.4'),
  row('gardens', 'least: so many gardens stand behind a group’s figure', '{least: 5}'),
  row('regions', 'regions that must answer where totals are asked of an engine', '[north, south]'),
  row('season_end', 'the last day of recording, month-day', '10-31'),
  row(
    'seasons',
    'of a year: end, sown, transplanted, look_every, layout, harvests, early_until, finished',
    '{2026: {finished: yes}}',
  ),
  row(
    'classes',
    'what competes: name, check_variety, spots, bar, scale, lines, line_plants, sow_weeks_before, soil_min_c, places, newcomers',
    '{sweet: {name: Sweet peppers, spots: 3}}',
  ),
  row(
    'traits',
    'ratings (from, to), measures (unit), with better: higher, lower, none; states (states, good, called_wrong), ranking',
    '{flavour: {kind: rating, from: 1, to: 9, better: higher}}',
  ),
  row('goals', 'what counts in a class, and how much', '{sweet: {yield: 3, flavour: 4}}'),
  row('must', 'limits that no kept variety may miss', '{sweet: {heat: {at_most: 0}}}'),
  row('certainty', 'with which the wanted plants are to be had', '0.9'),
  row('frost_c', 'a night of so much or less is a frost', '0'),
  row('outcrossing', 'seed of foreign pollen by species, least and most', '{Capsicum annuum: [0.012, 0.42]}'),
  row('verdicts', 'keep_from, drop_below, simulations, seed', '{keep_from: 0.8}'),
  row(
    'plan',
    'of next season: season, seed, layout, plants, keep_apart, plant_out, raise_weeks, last_frost, frost_risk, tasting, paper, label_mm, newcomer_plants',
    '{keep_apart: [[hot, sweet]], plant_out: 05-20}',
  ),
  row('publish', 'url, licence, show, hide, people', '{show: [notes], people: codes}'),
];
