/** A column, event or setting: its name, what it is in a line, an example. */
export interface Listed {
  readonly name: string;
  readonly is: string;
  readonly example: string;
  readonly isNeeded?: true;
}

export interface ListedTable {
  readonly name: string;
  readonly is: string;
  readonly entries: readonly Listed[];
}

/** An entry that may be left out. */
export const row = (name: string, is: string, example = ''): Listed => ({ name, is, example });
/** An entry that must be there. */
export const needed = (name: string, is: string, example = ''): Listed => ({ name, is, example, isNeeded: true });
