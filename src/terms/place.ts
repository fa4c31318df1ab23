/** Where something stands in the records: a file of the trial folder, and a line and character in it (both from 1). */
export interface Place {
  readonly file: string;
  readonly line: number | null;
  readonly column: number | null;
}

/** The place of a whole file or folder. */
export function fileOnly(file: string): Place {
  return { file, line: null, column: null };
}
