import type { ProblemCode } from '../../../terms/problemCodes.ts';

/** Texts of every problem: what is wrong, what was expected, how to mend it. */
export type ProblemTexts = Readonly<Record<ProblemCode, readonly [problem: string, expected: string, mend: string]>>;

export const problems = {
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
  'outside-folder': [
    'a link leads out of the trial folder',
    'files inside the folder',
    'copy the file into the folder in place of the link',
  ],
  'file-changed': [
    'the file changed while it was read',
    'a file that keeps still',
    'run the command again once the file is saved',
  ],
  'file-twice': ['the table is there twice, also as {other}', 'each table once', 'keep one of them'],
  'workbook-unreadable': [
    'the workbook cannot be read: {detail}',
    'a workbook as .xlsx or .ods without a password',
    'open it in the spreadsheet program and save it again, or save its sheets as CSV',
  ],
  'sheet-unknown': [
    'the sheet is none of the tables and was left alone',
    'a sheet named {tables}, in a workbook of its season (data/2026.xlsx) or with its year (2026 harvests)',
    'rename the sheet if it holds one of them',
  ],
  'not-text': [
    'the file is not text',
    'a table saved as CSV',
    'open it in the program that made it and save it as CSV, UTF-8',
  ],
  'read-as-windows': [
    'the text is not UTF-8 and was read as Windows-1252',
    'UTF-8',
    'look whether letters with accents are right, and save the file as UTF-8',
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
  'rows-before-header': [
    'rows above the header were left out',
    'the header in the first row',
    'look whether nothing of the table is among them, or remove them',
  ],
  'header-repeated': [
    'the header stands again among the rows; it was left out',
    'the header once, at the top',
    'remove the second header',
  ],
  'units-row': [
    'the row below the header was read as units',
    'a unit in the header, as weight_g',
    'write the units into the header if this is not what is meant',
  ],
  'units-differ': [
    'the header and the row below it name different units',
    'one unit for a column',
    'correct the one that is wrong',
  ],
  'unit-unlike-heading': [
    'the cell says its own unit, which is not that of the heading',
    "the unit of the heading, or the cell's own where it is meant",
    "nothing, if the unit is meant: the cell's own counts",
  ],
  'total-row': [
    'the row looks like a total and was left out',
    'records only, no sums of them',
    'remove it; name what it is about if it is a record',
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
  'table-without-rows': [
    'the table has a header and no records',
    'a row a record',
    'add the records, or delete the file where there are none',
  ],
  'last-line-open': [
    'the last line has no end: the file may have been cut short',
    'a line end after the last record',
    'look whether the last record is whole, and save the file again',
  ],
  'letter-lost': [
    'a letter was lost when the file passed from one encoding to another',
    'the letter itself where � stands',
    'write the letter again and save as UTF-8',
  ],
  'control-character': [
    'the cell holds a character that no one sees and no one types',
    'letters, digits and marks',
    'delete the cell and type it again',
  ],
  'backslash-in-cell': [
    'the cell holds a backslash, as some programs write before a comma or quotation mark',
    'the value alone; a cell with a comma stands in quotation marks',
    'delete the backslash',
  ],
  'quote-in-cell': [
    'a quotation mark stands alone in a word',
    'none, or one before and one after the words',
    'delete it',
  ],
  'scripts-mixed': [
    'a word is written with letters of two scripts, some of which only look alike',
    'one script in a word',
    'type the word again',
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
  'spreadsheet-error': [
    'the cell holds an error of a spreadsheet, not a value',
    'a value',
    'mend the cell in the spreadsheet and save the table again',
  ],
  'column-too-narrow': [
    'the cell was saved as number signs: its column was too narrow to show the value',
    'the value itself',
    'widen the column in the spreadsheet and save the table again',
  ],
  'cell-formula': [
    'the cell holds a formula, not its result',
    'the result',
    'save the table with results in place of formulas',
  ],
  'number-scientific': [
    'the number was shortened by a spreadsheet; its last digits may be lost',
    'the number with all its digits',
    'format the column as a plain number or as text and save the table again',
  ],
  'became-a-date': [
    'this is a date where {column} stands: a spreadsheet may have made it from a fraction or a code',
    '{column}',
    'write the value again and format the column as text before saving',
  ],
  'date-serial': [
    'this is a day number of a spreadsheet, not a date',
    'a date such as 2026-08-03; the number would be {first} if days are counted from 1900, {second} if from 1904',
    'format the column as a date, year first, and save the table again',
  ],
  'date-column-unit': [
    'a column headed by a day holds bare numbers: fruits or a weight?',
    'fruits or a unit after the day, as "{title} fruits" or "{title} g", or the unit in the cell',
    'say in the heads of these columns what was counted or weighed',
  ],
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
  'value-below': [
    '{column} is given as below a limit; half the limit is counted',
    'a number',
    'write the value if it is known',
  ],
  'value-trace': [
    '{column} is given as a trace; it counts as picked, with nothing added',
    'a number',
    'write the value if it is known',
  ],
  'value-above': [
    '{column} is given as over a limit; what it came to is unknown, so the planting leaves that figure',
    'a number',
    'write the value if it is known',
  ],
  'bound-unused': [
    '{column} is given as a limit or a trace; it is kept, but no mean is made with it',
    'a number',
    'write the value if it is known',
  ],
  'plants-zero': ['a number of plants or seeds is 0', '1 or more', 'correct the number, or remove the row'],
  'word-unknown': ['{column} has a word that is not one of its words', '{words}', 'write one of the words expected'],
  'plants-all-one': [
    'every variety has one plant here, in {year} most had {plants}: if their numbers were left out, every yield a plant is too high',
    'a column plants',
    'write how many plants each row stands for; nothing to do if it was one',
  ],
  'trait-undeclared': [
    'this column looks like a measure that trial.yaml does not declare; its figures are not used',
    'a declared trait',
    'write into trial.yaml: {line}',
  ],
  'day-columns-unused': [
    'days are the titles of columns here, and nothing under them would be used',
    'days as columns in harvests.csv, or this sheet made into tables',
    'move the file out of the folder and run: keeprow adopt {file} --into (the trial’s folder)',
  ],
  'score-taken-as': [
    'the score is no single number: a range is taken as its middle, a number with a plus or minus as that number',
    'a number of the scale',
    'nothing to do if that is meant; else write the number',
  ],
  'answer-left-out': [
    'this says neither yes nor no, and no score; it is left out',
    'yes or no, or a number of the scale; an empty cell where nobody can tell',
    'write what is meant, or leave the cell empty',
  ],
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
    'correct the name, or add the variety to varieties.csv (an id that it had before to its former_ids)',
  ],
  'planting-twice': [
    'a planting id stands twice in the season',
    'each id once (first on line {line})',
    'give one of them another id',
  ],
  'spot-twice': [
    '{other} stands in row {row}, column {column} too, at the same time',
    'one planting on a spot, or the first one removed before',
    'correct row or column, or enter when the first was removed',
  ],
  'bed-near': [
    'this bed is named almost like another: {near}',
    'one spelling for one bed',
    'write {near}, if it is the same bed',
  ],
  'block-near': [
    'this block is named almost like another: {near}',
    'one spelling for one block; two spellings are two blocks to the comparison',
    'write {near}, if it is the same block',
  ],
  'taster-near': [
    'this taster is named almost like another: {near}',
    'one spelling for one person; two spellings count as two tasters',
    'write {near}, if it is the same person',
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
  'date-unlike-neighbours': [
    'the date is {days} days from those of the rows around it, in a table that goes by date',
    "a date between its neighbours'",
    'look whether day, month or year slipped; it counts as it stands',
  ],
  'date-missing': [
    'a picking without a date, where others have one',
    'a date in each row, also where several pickings were on one day',
    'enter the date; until then the picking counts in the totals and not for ripening',
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
  'weather-half': [
    'a day of the weather without its {column}',
    'the lowest and the highest temperature of the day',
    'enter {column}; until then the day counts as missing',
  ],
  'weather-of-other-year': [
    "weather of a day that is not in the season's year",
    'days from {from} to {to}',
    'move the rows into the season of their year',
  ],
  'weather-gap': [
    '{days} days of the weather are missing, from {from} to {to}',
    'every day from planting out to the last picking; up to three missing ones are filled in',
    'enter the days; until then degree days across them are not known',
  ],
  'weather-unlikely': [
    'half of the days while plants stood out had their highest temperature on one side of this',
    'days of a growing season, in the unit of the heading',
    'look at the unit in the heading: tmax_c or tmax_f',
  ],
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
  'picking-unlike-others': [
    "the picking is {times} times the median of the planting's others",
    'pickings of one planting that are more alike',
    'look whether a digit or a unit slipped; it counts as it stands',
  ],
  'fruit-unlike-others': [
    'a fruit of this picking weighs {times} times the usual one of its variety',
    'about as much weight for each fruit as in the other pickings',
    'look at the number and at the decimal point; a figure that is right may stay',
  ],
  'picked-often-a-day': [
    'the planting was picked three times or more on one day, one row after the other',
    'a row a picking',
    'look whether the name of the planting, or the date, was drawn down over others',
  ],
  'filled-down': [
    '{rows} rows from here have the same figure in {column}',
    'figures as they were read off',
    'look whether the cell was drawn down over others',
  ],
  'filled-series': [
    'the figures of {column} go on by equal steps over {rows} rows from here',
    'figures as they were read off',
    'look whether a series was drawn down over others',
  ],
  'records-swapped': [
    'the fruits of {first} weigh what those of {secondVariety} do, and those of {second} what those of {firstVariety} do',
    "fruits that resemble their own variety's",
    'look whether the records of the two plantings were swapped; they count as they stand',
  ],
  'unit-seems-wrong': [
    'a fruit of this picking weighs about {factor} times the median of the variety: {units}',
    'fruits that resemble the others of the variety',
    'look whether the weight is in another unit; it counts as it stands',
  ],
  'figure-absurd': [
    'no plant bears so much',
    'at most {fruit} a fruit and {plant} a plant',
    'look at the unit in the heading and at the decimal point; where gourds or melons were grown, enter their species in varieties.csv',
  ],
  'figure-unlikely': [
    'hardly any plant bears so much',
    'a {of} as heavy as it was',
    'look at the unit in the heading and at the decimal point; where gourds or melons were grown, enter their species in varieties.csv',
  ],
  'weights-unlike-seasons': [
    'fruit of the same varieties weigh {times} times what they weighed in {others}',
    'fruit of one variety of about one weight every season',
    'look at the unit in the heading of the weights, of {season} and of {others}: 28 is an ounce, 454 a pound, 1,000 a kilogram',
  ],
  'weights-unlike-size': [
    'the fruit weigh {density} g for each cubic centimetre of their measured length and width',
    'about 0.2 g for hollow pods to 1 g for tomatoes',
    'look at the units in the headings of weight, length and width',
  ],
  'weights-not-of-fruits': [
    'weights and numbers of fruit do not go together',
    'more weight where more fruit were picked',
    'look whether one column has slipped by a row, or was sorted without the others',
  ],
  'fruits-not-of-variety': [
    'fruit of one variety are of all sizes, as if the varieties were mixed up',
    'fruit of one variety of about one weight',
    'look whether the column of plantings has slipped by a row, or was sorted without the others',
  ],
  'measure-zero': [
    'a {trait} of nothing was hardly measured',
    'the value, or NA where it was not measured',
    'write NA, or the value',
  ],
  'measure-absurd': [
    'nothing in a bed is so large ({trait})',
    'a value as it was measured',
    'look at the unit in the heading and at the decimal point',
  ],
  'measure-unlike-others': [
    '{times} times the usual {trait} of this variety or class',
    'a value like those of other fruit',
    'look at the decimal point and the unit; a value that is right may stay',
  ],
  'measures-unlike-seasons': [
    '{trait} of the same varieties is {times} times what it was in {others}',
    'values of one variety of about one size every season',
    'look at the unit in the heading, of {season} and of {others}: 2.5 is an inch, 10 a millimetre or a lost decimal point',
  ],
  'measures-not-of-variety': [
    'values of {trait} of one variety are of all sizes, as if the varieties were mixed up',
    'values of one variety of about one size',
    'look whether a column has slipped by a row, or was sorted without the others',
  ],
  'fruits-and-weight-swapped': [
    'fruits and weight look exchanged: {fruits} fruits of {grams} g together',
    'a weight in grams and a number of fruits, each in its column',
    "look whether the two stand in each other's column; they count as they stand",
  ],
  'all-on-one-day': [
    'every picking of the season is on one day',
    'the day of each picking',
    'look whether the day is that of picking and not of writing; first ripe fruit rests on it',
  ],
  'generation-unknown': [
    'the generation cannot be read',
    'F1, F2, F3 …, or BC1',
    'write the generation as F and a number',
  ],
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
  'season-ongoing': [
    'this season is taken as not over: its last record is of {last}, its last day is {end}; it is shown as it stands, and nothing of it enters a verdict',
    'a record at the season’s end, or {line} in trial.yaml',
    'if it is over, write {line} (or its last day as end) into trial.yaml',
  ],
  'yield-not-recorded': [
    'nothing was picked and nothing says why; the yield counts as not recorded',
    'a picking, an event nothing-picked or lost, or harvests: complete for the season',
    'record what happened; it is not taken as 0',
  ],
  'ripening-not-dated': [
    'ripe fruit was picked, but without a date: when it ripened is not known',
    'a date beside a ripe picking, or an event first-ripe',
    'write the date of the first ripe fruit, or leave its ripening out',
  ],
  'ripening-not-recorded': [
    'nothing is recorded of this planting, in a season in which ripening was',
    'a first ripe day, a look, or when and why it was removed',
    'add what is known; until then it does not enter the days to first ripe fruit',
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
  'taster-one-score': [
    'one taster gave {scores} varieties the same score for {trait}',
    'scores that tell varieties apart',
    'look whether a column was filled down; the scores count as they stand',
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
  'totals-and-harvests': [
    '{planting} has totals and pickings: they would count twice',
    'either a total or dated pickings of a planting',
    'take the planting out of totals.csv or season.csv into plantings.csv, or take its pickings out',
  ],
  'yaml-unreadable': [
    'the settings cannot be read: {detail}',
    'YAML',
    'check indentation, colons and quotation marks near this place',
  ],
  'setting-unknown': ['an unknown setting', '{keys}', 'correct the name'],
  'setting-missing': ['the setting {setting} is missing', 'a value', 'add it'],
  'language-unknown': [
    'there are no pages in this language',
    'one of {languages}, with a region where you like: en-GB',
    'choose one of them; a new language is welcome, and DEVELOPERS.md says how it is added',
  ],
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
  'front-matter': [
    'the page starts with a block of settings, which is not read and never run',
    'words in Markdown from the first line on',
    'remove the block between its marks',
  ],
  'content-unused': [
    'a text belongs to no page',
    'content/index.md, content/seasons/YEAR.md, content/varieties/ID.md or content/pages/NAME.md',
    'rename it',
  ],
  'live-unknown': [
    'a live figure names “{said}”, which the records do not have',
    '{names}',
    'correct the name, or write the sentence without the live figure',
  ],
  'photo-missing': [
    'there is no such photo',
    'a file of content/photos, as in ![what it shows](photos/bed.jpg)',
    'put the photo into content/photos, or correct its name',
  ],
  'photo-unreadable': [
    'a photo cannot be read: {reason}',
    'a JPEG, PNG, WebP, AVIF, TIFF or GIF',
    'save it again as JPEG, or remove it',
  ],
  'photo-without-text': [
    'a photo has no words for those who cannot see it',
    'what it shows, between the square brackets',
    'write ![what it shows](photos/name.jpg)',
  ],
  'address-lost': [
    'an address published before would lead nowhere: {address}',
    'the page it had, or a variety that names it in former_ids',
    'put the variety or season back, add its id to former_ids of its successor, or delete the line of data/addresses.csv',
  ],
  'address-unfit': [
    'this is not the address of a page',
    'an address as a build wrote it, such as /2026/',
    'put the address back as it was, or delete the line',
  ],
  'state-unknown': [
    'the word is none of the states of {trait}',
    'one of {states}',
    'correct the word, or add it to the states in trial.yaml',
  ],
  'state-changed': [
    'the plant was found {before} before: two states of {trait}',
    'one state of a plant',
    'nothing, if it changed; the later row counts',
  ],
  'plants-over-planting': [
    'more plants were found in a state of {trait} than the planting has',
    'at most {plants}',
    'correct plants, here or in plantings.csv',
  ],
  'seedlings-fewer': [
    'fewer seedlings were counted as {state} than plants of that state were set out',
    'at least {plants}: the plants set out are among the seedlings',
    'count all of them, or remove the row',
  ],
  'plants-not-single': [
    'states of a group of plants: they are counted, and nothing is advised of single plants',
    'a planting for each plant, plants 1',
    'nothing to do; next year a row for each plant shows more',
  ],
  'offspring-unexpected': [
    'a state of {trait} that seed of {mother} hardly gives',
    'a state that its mother can pass on',
    'look at the label and the plant again; it may be from a crossed seed',
  ],
  'family-unlike': [
    'the family is unlike its mother {mother} in every state',
    'plants that take after their mother',
    'see whether two labels were exchanged',
  ],
  'lot-twice': [
    'the seed lot stands twice',
    'an id of its own for each lot (first: line {line})',
    'give one of them another id',
  ],
  'unknown-lot': [
    'the seed lot is not in data/seeds.csv',
    'a lot of seeds.csv',
    'correct the name, or add a row to seeds.csv',
  ],
  'lot-of-other': [
    'the lot grows {variety}, not what the row says',
    'a lot of the same variety, or saved from the plant in its from',
    'correct lot or variety',
  ],
  'lot-from-unlike': [
    'the lot is mixed from plants of different crosses',
    'plants of one cross',
    'nothing to do if the seed was mixed so; no family is made of it',
  ],
  'lot-overdrawn': [
    'more seed of the lot was sown than was put by',
    'at most {seeds}',
    'correct seeds, here or in germination.csv',
  ],
  'lot-crossed': [
    'the flowers were pollinated by {father}: what grows is a new cross, not the next generation, and is only counted',
    'father: the plant itself, where it was selfed by hand',
    'nothing to do; or give what grows a row of its own with mother and father',
  ],
  'lot-gone': [
    'the lot was gone in {gone}, and is sown later',
    'a year up to {gone}, or another lot',
    'correct gone in seeds.csv, or the lot',
  ],
  'test-before-saved': [
    'the seed was sown before it was saved',
    'a day after {saved}',
    'correct one of the two days, or the lot',
  ],
  'saved-before-ripe': [
    'the seed was saved before the plant’s first ripe fruit',
    'a day after {ripe}',
    'correct saved, or first ripe',
  ],
  'lot-undated': [
    'a lot without its year: nothing is said of its age',
    'saved: the day or the year, on a packet its year',
    'fill in saved if it is known',
  ],
  'treated-lot': [
    'treated seed: it is not food; wear gloves, keep it from children',
    'gloves when it is sown',
    'nothing to do',
  ],
  'tests-disagree': [
    'sowings of one lot came up too differently to be one lot under like conditions: {counts}',
    'sowings that agree',
    'see whether the lots were exchanged or one tray failed; both count',
  ],
  'good-not-a-state': ['a wanted state that the trait does not have', 'one of {states}', 'correct good or states'],
  'goal-on-state-without-good': [
    'a goal on a state, and nothing says which is wanted',
    'the wanted state: {class}: good: … below the trait ({state})',
    'add good to the trait, or take the goal away',
  ],
  'too-few-checks': [
    'too few single plants of fixed varieties stood there, so that nothing is said of how much of {trait} is passed on',
    '2 single plants of 3 fixed varieties beside a line',
    'nothing to do; next year grow some',
  ],
  'frost-years-few': [
    'too few years of weather for a chance of frost: {years}',
    'three springs from 14 days before the last frost on',
    'nothing to do; the dates are shown as they are',
  ],
} as ProblemTexts;
