/** A cell of a table: text, or text that leads to a page of the site. */
export type Cell = string | { readonly text: string; readonly page: string };

/** A table of the site, in words. */
export interface TableWords {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Mean, CV, F and so on, under a rule of its own. */
  readonly foot?: readonly string[];
}

/** A drawing in two sizes, with its words and the same figures as a table. */
/** A drawing for a wide screen and for a phone, SVG text. */
export interface Drawn {
  readonly wide: string;
  readonly narrow: string;
}

export interface PictureWords {
  readonly id: string;
  readonly title: string;
  readonly measure: string;
  /** Draws it; where that is cheap, when it is asked for. */
  readonly drawn: () => Drawn;
  /** The same in the other system of units; null where it does not differ from the first. */
  readonly other?: (own: Drawn) => Drawn | null;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}
