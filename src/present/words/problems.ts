import { severities } from '../../terms/problemCodes.ts';
import type { ProblemCode } from '../../terms/problemCodes.ts';

/** Words of a problem: what is wrong, what was expected, how to mend it. {facts} are filled in. */
export interface ProblemWords {
  readonly problem: string;
  readonly expected: string;
  readonly mend: string;
}

type Words = readonly [problem: string, expected: string, mend: string];

const WORDS: Readonly<Record<ProblemCode, Words>> = {
  'no-data-folder': [
    'there is no data folder here',
    'a folder data/ with trial.yaml and varieties.csv',
    'start one with: keeprow new DIR',
  ],
  'missing-settings': [
    'the settings file is missing',
    'data/trial.yaml with at least a title',
    'write a file data/trial.yaml with a line such as title: Our trial',
  ],
  'missing-varieties': [
    'the table of varieties is missing',
    'data/varieties.csv with a column variety',
    'write one row for each variety ever grown',
  ],
  'no-seasons': [
    'there is no season',
    'a folder data/2026 (its year) with plantings.csv or totals.csv',
    'make a folder named by the year and put the tables of the season in it',
  ],
  'missing-plantings': [
    'the season has neither plantings nor totals',
    'plantings.csv or totals.csv',
    'write plantings.csv with a row a planting, or totals.csv with a row a variety',
  ],
  'not-a-year': [
    'a season folder is not named by a year',
    'a folder name of four digits, such as 2026',
    'rename the folder to the year of the season',
  ],
  'file-name-near': [
    'a file is named nearly like a table, and was not read',
    '{near}',
    'rename it to {near}, or leave it if it is not meant',
  ],
  'file-unreadable': [
    'the file cannot be read: {reason}',
    'a file that this user may read',
    'check the rights of the file',
  ],
  'not-text': [
    'the file is not text',
    'a table saved as CSV',
    'open it in the program that made it and save it as CSV, UTF-8',
  ],
  'not-utf8': ['the text is not UTF-8', 'UTF-8', 'save the table again and choose UTF-8 as its encoding'],
  'empty-table': ['the table has no rows', 'a header and at least one row', 'fill in the table, or remove the file'],
  'quote-open': [
    'a quotation mark is opened and never closed',
    'a closing " before the end of the cell',
    'close the quotation, or write "" for a mark that belongs to the text',
  ],
  'quote-stray': [
    'a quotation mark stands where none can be',
    'a cell wholly inside quotation marks, or without them at its start',
    'put the whole cell into quotation marks and double those inside',
  ],
  'cell-too-large': [
    'a row is over a million characters long',
    'a row of a record sheet',
    'look for a quotation mark that is never closed, or a file that is not a table',
  ],
  'too-many-columns': ['the table has too many columns', 'at most 1,000 columns', 'check how the table was exported'],
  'header-empty': [
    'a column without a title has values in it, which were not used',
    'a title in the header',
    'give the column a title, or empty it',
  ],
  'header-twice': ['two columns have the same title', 'each title once', 'rename or remove one of them'],
  'column-missing': [
    'a column is missing',
    'a column {column}',
    'add the column {column}; the header found is shown above',
  ],
  'column-near': [
    'a column has a title nearly like a known one, and was not used',
    '{near}',
    'rename it to {near}, or leave it if it is not meant',
  ],
  'column-unknown': [
    'columns that are not part of the records were left alone',
    'known columns',
    'nothing to do; publish.show in trial.yaml can publish them',
  ],
  'unit-unknown': [
    'the unit in the title is not known',
    'one of {units} after the name',
    'write the title with a known unit, such as weight_g',
  ],
  'row-too-long': [
    'the row has more cells than the header ({cells} for {columns})',
    '{columns} cells',
    'put text with commas into quotation marks, or add a column',
  ],
  'row-too-short': [
    'the row has fewer cells than the header ({cells} for {columns})',
    '{columns} cells',
    'fill up the row with empty cells, and check that its last value is whole',
  ],
  'value-missing': ['{column} is empty', 'a value', 'fill in {column}'],
  'date-unreadable': [
    '{column} is not a date',
    'a date such as 2026-08-03 or 3 Aug 2026',
    'write the date as year-month-day',
  ],
  'date-ambiguous': [
    'the date can be read in two ways: {dayFirst} or {monthFirst}',
    'a date such as 2026-08-03',
    'write it as year-month-day, or set dates: day-first or dates: month-first in trial.yaml',
  ],
  'date-impossible': ['there is no such day', 'a day of the calendar', 'correct the date'],
  'number-unreadable': [
    '{column} is not a number',
    'digits with at most one decimal point, such as 4.2',
    'write the number without words, blanks or thousands marks',
  ],
  'number-ambiguous': [
    'a comma may be a decimal mark or part of a thousand',
    'a number such as 1.234 or 1234',
    'write thousands without a mark, and decimals with a point',
  ],
  'quantity-unreadable': [
    '{quantity} cannot be read',
    'a number, with a unit of {units} if it differs from the header',
    'write it such as 340, 340 g or 1 lb 3 oz; NA if it was not taken',
  ],
  'unit-missing': [
    '{quantity} has no unit',
    'a unit in the title or in the cell: {units}',
    'write the unit into the title, such as weight_g',
  ],
  'quantity-twice': ['{quantity} is given twice in a row', 'one of its columns filled', 'empty one of the two'],
  'number-negative': ['{column} is below 0', '0 or more', 'correct the number'],
  'not-whole': ['{column} is not a whole number', 'a whole number', 'correct the number'],
  'plants-zero': ['a number of plants or seeds is 0', '1 or more', 'correct the number, or remove the row'],
  'word-unknown': ['{column} has a word that is not one of its words', '{words}', 'write one of the words expected'],
  'year-unreadable': ['{column} is not a year', 'a year of four digits', 'write the year, such as 2024'],
  'id-unfit': [
    'the id cannot stand in a page address',
    'lower-case letters, digits and single hyphens, at most 80, no device name',
    'choose another id and write the full name in the column name',
  ],
  'colour-unknown': [
    '{column} is not a colour that can be drawn',
    'a colour word such as red or dark green, or #c0281f',
    'write a colour word',
  ],
  'variety-twice': [
    'a variety stands twice',
    'each id once (first on line {line})',
    'remove one row, or give one of them another id',
  ],
  'variety-name-twice': [
    'two varieties have the same name but for case, blanks or accents',
    'names that differ from those of {other}',
    'rename one of them',
  ],
  'unknown-variety': [
    'no variety has this name',
    'an id or name of varieties.csv',
    'correct the name, or add the variety to varieties.csv',
  ],
  'planting-twice': [
    'a planting id stands twice in the season',
    'each id once (first on line {line})',
    'give one of them another id',
  ],
  'unknown-planting': ['no planting of this season has this id', 'an id of plantings.csv', 'correct the id'],
  'planting-of-other-season': [
    'the planting belongs to season {season}',
    'a planting of this season',
    'move the row to season {season}, or correct the id',
  ],
  'planting-and-variety-differ': [
    'the planting {planting} is of another variety',
    '{variety}',
    'correct the planting or the variety',
  ],
  'neither-planting-nor-variety': [
    'the row names neither a planting nor a variety',
    'one of the two',
    'fill in planting or variety',
  ],
  'variety-not-in-season': [
    'the variety was not grown in this season',
    'a variety of plantings.csv or totals.csv',
    'add the planting, or correct the name',
  ],
  'unknown-class': [
    'the class is not one of the settings',
    '{classes}',
    'correct the class, or add it to classes in trial.yaml',
  ],
  'unknown-trait': ['the trait is not declared', '{traits}', 'correct the name, or declare the trait in trial.yaml'],
  'row-twice': [
    'the same row stands twice in {table}; both count',
    'each record once',
    'remove one of them if it was written twice',
  ],
  'former-id-taken': ['a former id is in use', 'an id that no other variety has', 'remove it, or correct it'],
  'outside-season': [
    'the date lies outside its season',
    'a day from {from} to {to}',
    'correct the date, or set the end of the season in trial.yaml',
  ],
  'outside-season-note': [
    'the date lies outside its season',
    'a day from {from} to {to}',
    'nothing to do if it is right',
  ],
  'sown-earlier-year': [
    'sown in an earlier year',
    'a sowing in the year of the season',
    'nothing to do for overwintered plants',
  ],
  'picked-before-transplanting': [
    'the date is before the planting was set out',
    'a day from {transplanted}',
    'correct one of the two dates',
  ],
  'picked-after-removal': [
    'the date is after the planting was removed',
    'a day up to {removed}',
    'correct one of the two dates',
  ],
  'dates-out-of-order': ['{column} comes before {before}', 'dates in order', 'correct one of the two dates'],
  'score-outside-scale': [
    'the score of {trait} lies outside its scale',
    'a number from {from} to {to}',
    'correct the score, or the scale in trial.yaml',
  ],
  'germinated-over-seeds': ['more germinated than were sown', 'at most {seeds}', 'correct one of the two numbers'],
  'count-over-of': ['more were counted than there were', 'at most {of}', 'correct count or of'],
  'tmin-over-tmax': ['the lowest temperature is over the highest', 'at most {tmax}', 'correct one of the two'],
  'weather-day-twice': ['a day stands twice in the weather', 'each day once', 'remove one of the rows'],
  'temperature-implausible': [
    'no air is that warm or cold (°C)',
    '-90 to 60 °C',
    'check the unit in the title: tmax_c or tmax_f',
  ],
  'claim-reversed': ['the upper claim is below the lower', '{low} or more', 'swap the two'],
  'cause-without-removal': [
    'a cause without the date of removal',
    'a date in removed',
    'fill in removed, or empty cause',
  ],
  'weight-and-fruits-disagree': [
    'one of fruits and weight is 0, the other is not; the 0 was taken as not recorded',
    'both 0 or neither',
    'write NA for what was not recorded',
  ],
  'picking-empty': [
    'a picking without any figure was left out',
    'fruits, a weight, or both',
    'fill it in; 0 if nothing was found',
  ],
  'generation-unknown': ['the generation cannot be read', 'F1, F2, F3 …', 'write the generation as F and a number'],
  'generation-order': [
    'the generation does not follow that of its parent {parent}',
    '{expected}',
    'correct generation or from',
  ],
  'parent-loop': ['a variety descends from itself', 'parents that are older: {loop}', 'correct mother, father or from'],
  'line-without-generation': ['a line has no generation', 'F1, F2, F3 …', 'fill in generation'],
  'from-unknown': [
    'the planting that the seed came from is not known',
    'season/planting, such as 2025/p17',
    'correct from',
  ],
  'first-grown-after-season': [
    'first_grown is later than a season in which it grew',
    '{season} or earlier',
    'correct first_grown',
  ],
  'event-unknown': [
    'an event that has no meaning to the figures is kept as a note',
    'first-ripe, unripe, lost …',
    'nothing to do',
  ],
  'event-near': [
    'an event is written nearly like a known one, and was kept as a note',
    '{near}',
    'write {near} if that is meant',
  ],
  'yield-not-recorded': [
    'nothing was picked and nothing says why; the yield counts as not recorded',
    'a picking, an event nothing-picked or lost, or harvests: complete for the season',
    'record what happened; it is not taken as 0',
  ],
  'fruits-not-recorded': [
    'some pickings were weighed but not counted; the planting has no number of fruits',
    'fruits in every picking',
    'fill in fruits where it is known',
  ],
  'unweighed-fruits': [
    '{unweighed} of {fruits} fruits were not weighed; the mean fruit weight was used',
    'a weight in every picking',
    'nothing to do',
  ],
  'too-many-unweighed': [
    '{unweighed} of {fruits} fruits were not weighed ({percent} %); the planting has no yield',
    'at most a quarter unweighed',
    'fill in weights where they are known',
  ],
  'no-start-date': [
    'days to first ripe fruit cannot be counted without {column}',
    'a date in {column}',
    'fill it in, or give one for the season in trial.yaml',
  ],
  'block-left-out': [
    'the blocks were left out of the analysis',
    'a block for every planting, and varieties that share blocks within each class',
    'fill in block for every planting',
  ],
  'scores-by-one-taster': [
    'all scores are by one taster',
    'two tasters or more',
    'nothing to do; it is one person’s taste',
  ],
  'totals-and-plantings': [
    'a variety is in plantings.csv and in totals.csv',
    'one of the two',
    'remove it from one of them',
  ],
  'totals-and-ratings': [
    'scores in totals.csv stand beside ratings.csv',
    'one of the two',
    'move the scores to ratings.csv',
  ],
  'yaml-unreadable': [
    'the settings cannot be read: {detail}',
    'YAML',
    'check indentation, colons and quotation marks near this place',
  ],
  'setting-unknown': ['an unknown setting', '{keys}', 'correct the name'],
  'setting-missing': ['the setting {setting} is missing', 'a value', 'add it'],
  'setting-unfit': ['the setting {setting} cannot be used', '{expected}', 'correct the value'],
  'trait-unknown-in-goals': [
    '{setting} names a trait that is not declared',
    '{traits}',
    'correct the name, or declare the trait under traits',
  ],
  'goal-without-direction': [
    'a goal is set for a trait without a good direction',
    'better: higher, lower or between',
    'give the trait a direction, or remove the goal',
  ],
  'scales-mixed': ['classes have different scales', 'one scale for all classes', 'write the same scale everywhere'],
  'check-variety-elsewhere': [
    'the check variety of {class} is of class {other}',
    'a variety of class {class}',
    'correct check_variety',
  ],
  'range-cuts-off': [
    'the range of {trait} in class {class} cuts off {percent} % of the expected values',
    'good and bad far enough apart that most values fall between them',
    'widen good and bad of {trait}, or leave them out: they are then worked out from the class',
  ],
  'season-setting-unused': [
    'settings are given for a season without a folder',
    'a folder data/ of that year',
    'correct the year, or remove the setting',
  ],
  'content-unreadable': ['the text cannot be read', 'Markdown in UTF-8', 'save it again as UTF-8'],
  'content-unused': [
    'a text belongs to no page',
    'content/index.md, content/seasons/YEAR.md or content/varieties/ID.md',
    'rename it',
  ],
};

/** Words of a code with the facts of a problem filled in. */
export function problemWords(code: ProblemCode, facts: Readonly<Record<string, string>>): ProblemWords {
  const fill = (text: string): string => text.replace(/\{(\w+)\}/g, (_, key: string) => facts[key] ?? '?');
  const [problem, expected, mend] = WORDS[code];
  const near = facts['near'];
  const offer = near === undefined || code.endsWith('-near') ? '' : `${near}, perhaps; else `;
  return { problem: fill(problem), expected: offer + fill(expected), mend: fill(mend) };
}

/** Every problem with its words, facts shown as an ellipsis, for the page that explains them. */
export function problemGuide(): readonly {
  readonly code: ProblemCode;
  readonly severity: string;
  readonly words: ProblemWords;
}[] {
  const plain = (text: string): string => text.replace(/\{\w+\}/g, '…');
  return (Object.keys(WORDS) as ProblemCode[]).map((code) => {
    const [problem, expected, mend] = WORDS[code];
    return {
      code,
      severity: severities[code],
      words: { problem: plain(problem), expected: plain(expected), mend: plain(mend) },
    };
  });
}
