import { needed, row } from './listedTable.ts';
import type { ListedTable } from './listedTable.ts';

const VARIETY = needed('variety', 'its id, or its name', 'red-bell');
const NOTES = row('notes', 'remarks; never published', 'answered by post');

/** Tables of a club whose members keep records. */
export const CLUB_TABLES: readonly ListedTable[] = [
  {
    name: 'gardens',
    is: 'data/gardens.csv: the gardens of a club, a row a garden; with it no other code is taken',
    entries: [
      needed('garden', 'a code, nothing of the person', 'g07'),
      row('region', 'where it lies, as wide as five gardens', 'hill'),
      row('setting', 'open or cover', 'cover'),
      row('publish', 'yes: its page and rows may be seen by everyone', 'yes'),
      NOTES,
    ],
  },
  {
    name: 'sheet',
    is: 'data/2026/gardens/g07.csv: a member’s sheet, a row a variety; the file’s name is the garden',
    entries: [
      VARIETY,
      needed('plants', 'how many plants', '2'),
      row('weight_g', 'what was picked, all of it together (weight_kg)', '1840'),
      row('fruits', 'or how many fruits', '23'),
      row('first_ripe', 'the day of the first ripe fruit', '2026-07-30'),
      row('flavour', 'a score of a declared rating', '7'),
      row('again', 'yes or no', 'yes'),
    ],
  },
  {
    name: 'sent',
    is: 'data/2026/sent.csv: what members of a club were sent to compare',
    entries: [
      needed('garden', 'a code, nothing of the person', 'g07'),
      VARIETY,
      row('label', 'as it stands on the packet', 'b'),
      NOTES,
    ],
  },
  {
    name: 'answers',
    is: 'data/2026/answers.csv: a row a member, for every trait of kind ranking',
    entries: [
      needed('garden', 'its code', 'g07'),
      row('choice_best', 'the best of what was sent: variety or label; a=b, or same', 'b'),
      row('choice_worst', 'the worst of it', 'c'),
      NOTES,
    ],
  },
];
