/** One method: in words, in mathematics, with what it assumes, where it fails and where it comes from. */
export interface Method {
  readonly id: string;
  readonly title: string;
  readonly words: readonly string[];
  /** Formulas as HTML of our own: variables in italics, indices as sub- and superscripts. */
  readonly formulas: readonly string[];
  readonly assumes: string;
  readonly limits: string;
  readonly source: string;
}

/** A variable of a formula in italics, with index and power. */
export const variable = (name: string, index = '', power = ''): string =>
  `<var>${name}</var>${index === '' ? '' : `<sub>${index}</sub>`}${power === '' ? '' : `<sup>${power}</sup>`}`;
