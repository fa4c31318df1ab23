/** Help of the command, examples first. */
export const HELP = `Examples
  keeprow new my-trial       make a trial folder with an example season
  keeprow adopt club.xlsx    say what the columns of a sheet of your own are
  keeprow check              check the trial in this folder
  keeprow build              check, compute, write the site to _site
  keeprow view               build, show on this machine, follow changes
  keeprow plan               next season: who, how many, where, when; sheets to print

Keeprow reads the record sheets of a variety trial.

Commands (keeprow help COMMAND tells more of each)
  new DIR          make a trial folder with commented settings and an example season
  adopt FILE       make the tables of a trial from a sheet of another form
  check [DIR]      read everything, print every problem, write nothing
  build [DIR]      check, compute, write the site
  view [DIR]       build, serve on this machine, rebuild on a change
  plan [DIR]       next season’s plan and sheets to _plan
  share [DIR]      show, and write, the sheet that a garden sends its club
  gather FILE …    check members’ sheets, file them, say who is missing
  totals           sums of very many pickings, from large tables or a database, as season.csv
  columns [TABLE]  every table, column and setting that there is
  help [COMMAND]   this page, or a command's

Options of all
  --json     machine-readable messages on stdout
  --strict   warnings count as errors
  --quiet    print nothing
  --help     this page
  --version  the version

Exit codes: 0 done; 1 the records have errors; 2 wrong usage; 3 a fault of the program.
`;

/** Help of each command: what it does, an example, its own options. */
export const COMMAND_HELP: Readonly<Record<string, string>> = {
  new: `keeprow new DIR [--from FILE]
Makes a trial folder with commented settings and an example season, which builds as it is.

  keeprow new my-trial
  keeprow new my-trial --from names.csv   no example: varieties.csv from the names in FILE

  --from FILE   a sheet (CSV, .xlsx, .ods) with a column of varieties; nothing else of it is taken
`,
  adopt: `keeprow adopt FILE [--into DIR] [answers]
Says what the columns of a sheet of another form are (CSV, .xlsx, .ods), and asks what no cell can tell.
With --into it writes the tables of a trial folder, or adds to them what is new; no row that stands there changes.

  keeprow adopt notebook.csv
  keeprow adopt 2026.csv --into my-trial --picked g

  --into DIR            write into this trial folder
  --column "Title=..."  what a column is: weight_g (any name that keeprow columns tells), - (leave it out),
                        rating flavour 1 9 higher, or measure fruit_length cm
  --picked UNIT         what bare numbers under days are: g, kg, oz, lb or fruits
  --season YEAR         the season of rows that do not tell it
  --dates ORDER         day-first or month-first
  --sheet NAME          the sheet of a workbook
  --table NAME          the table, where the columns do not tell it
`,
  check: `keeprow check [DIR]
Reads everything, prints every problem with its place and its cure, writes nothing.

  keeprow check club
  keeprow check club --json   for another program
`,
  build: `keeprow build [DIR] [--out DIR]
Checks, computes, and writes the site to _site in the trial folder.

  keeprow build
  keeprow build club --out ../web

  --out DIR         write the site elsewhere
  --pdf             print the handout too, where a Chromium is found
  --garden CODE     only one garden’s own page, a file by itself in _gardens, to be sent to its grower
  --drop-addresses  addresses published before may go
  --keep-addresses  note the pages' addresses in data/addresses.csv though the site lies outside the trial folder
`,
  view: `keeprow view [DIR] [--port N]
Builds, serves the site on this machine, rebuilds and reloads it on every change. Ends with Ctrl-C.

  keeprow view club

  --port N   another port than 4690; 0 for any that is free
`,
  plan: `keeprow plan [DIR] [--take]
Plans next season from the records, data/places.csv and data/YEAR/wishes.csv: plants, places, dates, seed, a tasting.
Writes a page, sheets to print and the season's tables to _plan.

  keeprow plan
  keeprow plan club --take

  --take         put the tables into data/YEAR; rows that stand there stay as they are
  --season YEAR  another season than the next; one that has begun gets its sheets alone
  --out DIR      write elsewhere
`,
  share: `keeprow share [DIR] [--garden CODE] [--season YEAR]
Shows the sheet that a garden would send its club: variety, plants, sums, the first day, mean scores, again.
No picking, taster, note, photo or place is in it.

  keeprow share
  keeprow share --season 2026 --out g07.csv

  --garden CODE  another garden of the records than the trial’s own
  --season YEAR  another season than the last
  --out FILE     write what was shown; the file’s name is to be the garden’s code in the club
`,
  gather: `keeprow gather FILE … [--into DIR] [--season YEAR]
Checks members’ sheets (CSV, .xlsx, .ods), puts them into data/YEAR/gardens, and says which gardens are missing.
A file’s name is its garden’s code. A sheet with errors is refused; one that stands there is never written over.

  keeprow gather mail/g07.csv mail/g12.ods
  keeprow gather mail/*.csv --into club --season 2026

  --into DIR     the trial folder; this one where it is left out
  --season YEAR  another season than the last in the folder
`,
  totals: `keeprow totals --from FILE … --plantings FILE [--into DIR]
keeprow totals --from postgres://… --plantings FILE [--into DIR]
Adds up pickings (region, garden, season, planting, date, fruits, weight_g or weight_mg) and writes data/YEAR/season.csv.
Large tables are read by DuckDB where @duckdb/node-api is installed, Parquet only by it; a database needs pg.

  keeprow totals --from harvests.parquet --plantings plantings.csv
  keeprow totals --from postgres://club@north.example/trial --plantings plantings.csv --into network

  --plantings FILE  what each planting is: garden, planting, variety, plants; season where it differs by year
  --into DIR        the trial folder; this one where it is left out
`,
  columns: `keeprow columns [TABLE]
Every table, column, event, trait and setting in a line with an example; those of one table where it is named.

  keeprow columns
  keeprow columns harvests
`,
  help: `keeprow help [COMMAND]
`,
};

/** The commands there are. */
export const COMMANDS: readonly string[] = Object.keys(COMMAND_HELP);
