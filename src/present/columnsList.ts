import { EVENT_LIST, SETTING_LIST } from './settingsList.ts';
import { CLUB_TABLES } from './clubTables.ts';
import { needed, row } from './listedTable.ts';
import type { Listed, ListedTable } from './listedTable.ts';

const VARIETY = needed('variety', 'its id, or its name', 'red-bell');
const EITHER = 'its id; the name of a variety stands for all its plants';
/** Whose record it is, where members of a club keep some. */
const GARDEN = row('garden', 'a code, where several gardens keep records; the trial’s own where it is left out', 'g07');
/** What a record is about, where it may be a plant or all of a variety's. */
const SUBJECT: readonly Listed[] = [
  GARDEN,
  needed('planting', `or variety: ${EITHER}`, 'p7'),
  row('variety', 'instead of the planting', 'red-bell'),
];
const DATE = needed('date', 'the day', '2026-08-03');
const NOTES = row('notes', 'remarks; published where publish: show: [notes]', 'split in the rain');

const STANDS: readonly Listed[] = [
  row('bed', 'where it stands', 'south bed'),
  row('block', 'its block, where plants were set out in blocks', '2'),
  row('row', 'its row in the bed', '1'),
  row('column', 'its place in the row', '3'),
  row('sown', 'the day it was sown', '2026-03-01'),
  row('transplanted', 'the day it was planted out', '2026-05-20'),
  row('removed', 'the day it was taken out', '2026-10-12'),
  row('cause', 'why: season-end, frost, disease, pest, weak, accident, other', 'frost'),
  row('stands_in', 'ground, bed, pot or bag', 'pot'),
  row('container_l', 'the size of its pot', '12'),
  row('area_m2', 'the room it has', '0.25'),
  row('topped', 'whether its tip was taken: yes, no', 'yes'),
  row('lot', 'the seed lot it was sown from', 'sc-4'),
  NOTES,
];

/** Every table of a trial folder with its columns. */
export const TABLES: readonly ListedTable[] = [
  {
    name: 'varieties',
    is: 'data/varieties.csv: what is grown, a row a variety',
    entries: [
      needed(
        'variety',
        'an id for addresses: lower case, digits, hyphens; without it one is made from the name',
        'red-bell',
      ),
      row('name', 'its full name; enough without an id', 'Red Bell'),
      row('class', 'what it competes with', 'sweet'),
      row('species', 'its botanical name', 'Capsicum annuum'),
      row('kind', 'open-pollinated, hybrid, line, unknown', 'hybrid'),
      row('generation', 'of a line: F2, F3, BC1; found from its plants where it is left out', 'F3'),
      row('mother', 'of a line: an id, or a planting', 'red-bell'),
      row('father', 'of a line: an id, or a planting', 'unknown'),
      row('from', 'the plant whose seed it is: season/planting; several, parted by ;, were mixed', '2025/p7'),
      row('source', 'where the seed came from', 'swap'),
      row('first_grown', 'the year it was first grown', '2019'),
      row('retired', 'yes, or the year', '2024'),
      row('claim_days', 'days to ripe fruit on its packet', '75'),
      row('claim_days_max', 'the upper end of them', '85'),
      row('claim_heat_min', 'heat on its packet, Scoville', '2500'),
      row('claim_heat_max', 'the upper end of it', '8000'),
      row('colour_unripe', 'a CSS colour', 'green'),
      row('colour_ripe', 'a CSS colour', '#c33'),
      row('shape', 'block, horn, round, plum, cluster, long, pear', 'block'),
      row('former_ids', 'ids it had before, parted by ;', 'red-bel'),
      row('also_known_as', 'other names in the records, parted by ;', 'Bell;RB'),
      NOTES,
    ],
  },
  {
    name: 'plantings',
    is: 'data/2026/plantings.csv: what stands, a row a plant or a group recorded together',
    entries: [
      row('planting', 'an id of your own; the variety where it is left out', 'p7'),
      GARDEN,
      VARIETY,
      row('plants', 'how many plants it is; 1 where it is left out', '3'),
      ...STANDS,
    ],
  },
  {
    name: 'harvests',
    is: 'data/2026/harvests.csv: what was picked; days may also be the columns of the sheet',
    entries: [
      DATE,
      needed('planting', `${EITHER}, in a column variety`, 'p7'),
      row('variety', 'instead of the planting', 'red-bell'),
      row('fruits', 'usable fruits', '4'),
      row('weight_g', 'their weight (weight_kg, weight_oz, weight_lb, or a unit in the cell)', '310'),
      row('stage', 'ripe, green', 'ripe'),
      row('unusable_fruits', 'fruits that nobody would eat', '1'),
      row('unusable_weight_g', 'their weight', '60'),
      NOTES,
    ],
  },
  {
    name: 'totals',
    is: 'data/2024/totals.csv: a season known from a notebook, a row a variety, instead of the tables above',
    entries: [
      VARIETY,
      needed('plants', 'how many plants', '3'),
      row('fruits', 'usable fruits of all of them', '42'),
      row('weight_g', 'their weight', '3100'),
      row('first_ripe', 'the day of the first ripe fruit', '2024-08-09'),
      row('again', 'would you grow it again: yes, no', 'yes'),
      ...STANDS,
    ],
  },
  {
    name: 'ratings',
    is: 'data/2026/ratings.csv: scores, a column a trait (or columns trait and score)',
    entries: [
      row('date', 'the day; without the column the season', '2026-09-05'),
      row('taster', 'who tasted; without the column one grower', 'Ann'),
      needed('variety', `or planting: ${EITHER}`, 'red-bell'),
      row('planting', 'instead of the variety', 'p7'),
      row('again', 'would you grow it again: yes, no', 'yes'),
      row('trait', 'the key of a declared trait, with its value in score', 'flavour'),
      row('score', 'its score', '7'),
      row('blind', 'tasted without the name: yes, no', 'yes'),
      NOTES,
    ],
  },
  {
    name: 'measurements',
    is: 'data/2026/measurements.csv: lengths, weights and the like, a column a declared trait (or trait and value)',
    entries: [
      row('date', 'the day; without it the season', '2026-08-03'),
      ...SUBJECT,
      row('trait', 'the key of a declared measure or state, with its value in value', 'fruit_length'),
      row('value', 'its value', '9.5'),
      row('plants', 'how many were alike, of a state; needed with variety', '22'),
      NOTES,
    ],
  },
  {
    name: 'observations',
    is: 'data/2026/observations.csv: what happened to a plant',
    entries: [
      DATE,
      ...SUBJECT,
      needed('event', 'see events below', 'first-ripe'),
      row('count', 'plants or fruits it is true of', '2'),
      row('of', 'of how many', '3'),
      NOTES,
    ],
  },
  {
    name: 'germination',
    is: 'data/2026/germination.csv: seed sown and come up',
    entries: [
      VARIETY,
      row('lot', 'the seed lot, instead of the variety', 'sc-4'),
      row('method', 'paper, soil', 'soil'),
      needed('sown', 'the day', '2026-03-01'),
      needed('seeds', 'how many', '12'),
      needed('germinated', 'how many came up', '10'),
      row('checked', 'the day they were counted', '2026-03-14'),
      row('temperature_c', 'of the soil', '24'),
      NOTES,
    ],
  },
  {
    name: 'weather',
    is: 'data/2026/weather.csv: a row a day, for degree days',
    entries: [
      DATE,
      needed('tmin_c', 'the lowest temperature (tmin_f)', '9.5'),
      needed('tmax_c', 'the highest (tmax_f)', '23'),
      row('rain_mm', 'rain (rain_in)', '4'),
      row('soil_c', 'of the soil (soil_f)', '14'),
    ],
  },
  {
    name: 'seeds',
    is: 'data/seeds.csv: seed put by, a row a lot',
    entries: [
      needed('lot', 'an id as it stands on the packet', 'sc-4'),
      needed('variety', 'what will grow; or from instead', 'red-bell'),
      row('from', 'season/planting; several, parted by ;, were mixed', '2025/p7'),
      row('saved', 'the day or year of harvest; bought: the packet’s year', '2025-09-28'),
      row('seeds', 'how many were put by', '90'),
      row('weight_g', 'their weight', '0.6'),
      row('pollination', 'open, bagged, caged, hand, unknown', 'bagged'),
      row('father', 'of a hand-made cross', 'red-bell'),
      row('stored', 'room, cold', 'cold'),
      row('treated', 'yes: gloves, and no food', 'yes'),
      row('gone', 'yes, or the year it was used up', '2026'),
      row('source', 'where it came from', 'swap'),
      NOTES,
    ],
  },
  {
    name: 'places',
    is: 'data/places.csv: beds and groups of pots, for next season’s plan',
    entries: [
      needed('bed', 'its name, as in plantings.csv', 'south bed'),
      needed('rows', 'places across it', '3'),
      needed('columns', 'places along it', '16'),
      row('stands_in', 'ground, bed, pot or bag', 'bed'),
      row('container_l', 'the size of its pots', '12'),
      row('classes', 'those that alone stand here, parted by ;', 'sweet;hot'),
      row('leave_out', 'places that stay empty, row:column parted by ;', '2:7;2:8'),
      row('north', 'the side of the map that lies to the north: top, bottom, left, right', 'top'),
      NOTES,
    ],
  },
  ...CLUB_TABLES,
  {
    name: 'wishes',
    is: 'data/2027/wishes.csv: what is asked of varieties in next season’s plan',
    entries: [
      VARIETY,
      row('grow', 'no leaves it out', 'no'),
      row('plants', 'exactly so many', '4'),
      row('at_least', 'so many or more', '2'),
      row('at_most', 'no more than', '6'),
      row('bed', 'where it is to stand', 'south bed'),
      row('tall', 'yes: on the north side', 'yes'),
      row('seeds', 'seeds at hand', '12'),
      row('save_seed', 'yes: in the middle of its class', 'yes'),
      NOTES,
    ],
  },
];

const OTHERS: readonly ListedTable[] = [
  { name: 'events', is: 'events of observations.csv', entries: EVENT_LIST },
  { name: 'settings', is: 'settings of data/trial.yaml', entries: SETTING_LIST },
];

/** Names by which a list can be asked for. */
export const LISTS: readonly ListedTable[] = [...TABLES, ...OTHERS];
