/** Help of the command, examples first. */
export const HELP = `Examples
  keeprow check              check the trial in this folder
  keeprow check club --json  check the trial in the folder club, for another program
  keeprow build              check, compute, write the site to _site
  keeprow build --out ../web write it elsewhere

Keeprow reads the record sheets of a variety trial.

Commands
  check [DIR]   read everything, print every problem, write nothing
  build [DIR]   check, compute, write the site (--out DIR: elsewhere than _site)

Options
  --json     machine-readable messages on stdout
  --strict   warnings count as errors
  --quiet    print nothing
  --help     this page
  --version  the version

Exit codes: 0 done; 1 the records have errors; 2 wrong usage; 3 a fault of the program.
`;
