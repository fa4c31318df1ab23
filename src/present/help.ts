/** Help of the command, examples first. */
export const HELP = `Examples
  keeprow new my-trial       make a trial folder with an example season
  keeprow check              check the trial in this folder
  keeprow check club --json  check the trial in the folder club, for another program
  keeprow build              check, compute, write the site to _site
  keeprow build --out ../web write it elsewhere
  keeprow view               build, show on this machine, follow changes
  keeprow adopt club.xlsx    say what the columns of another sheet are

Keeprow reads the record sheets of a variety trial.

Commands
  new DIR       make a trial folder with commented settings and an example season
  check [DIR]   read everything, print every problem, write nothing
  build [DIR]   check, compute, write the site (--out DIR: elsewhere than _site;
                --pdf: print the handout too, where a Chromium is found;
                --drop-addresses: addresses published before may go;
                --keep-addresses: note the pages' addresses in data/addresses.csv
                though the site lies outside the trial folder)
  view [DIR]    build, serve on localhost, rebuild and reload on a change (--port N)
  adopt FILE    look at a sheet of another form (CSV, .xlsx, .ods) and say what its
                columns are; --into DIR writes the tables of a trial folder from it
                (--column "Title=weight_g" says what one is, "Title=-" leaves it,
                "Title=rating flavour 1 9" or "Title=measure length cm" declares a
                trait; --season YEAR, --table NAME, --sheet NAME,
                --dates day-first or month-first)

Options
  --json     machine-readable messages on stdout
  --strict   warnings count as errors
  --quiet    print nothing
  --help     this page
  --version  the version

Exit codes: 0 done; 1 the records have errors; 2 wrong usage; 3 a fault of the program.
`;
