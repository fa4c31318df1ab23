/** Help of the command, examples first. */
export const HELP = `Examples
  keeprow check              check the trial in this folder
  keeprow check club --json  check the trial in the folder club, for another program

Keeprow reads the record sheets of a variety trial.

Commands
  check [DIR]   read everything, print every problem, write nothing

Options
  --json     machine-readable messages on stdout
  --strict   warnings count as errors
  --quiet    print nothing
  --help     this page
  --version  the version

Exit codes: 0 done; 1 the records have errors; 2 wrong usage; 3 a fault of the program.
`;
