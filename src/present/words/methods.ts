/** One method: in words, with what it assumes, where it fails and where it comes from. */
export interface Method {
  readonly id: string;
  readonly title: string;
  readonly words: readonly string[];
  readonly assumes: string;
  readonly limits: string;
  readonly source: string;
}

/** A variable of a formula in italics, with index and power. */
export const variable = (name: string, index = '', power = ''): string =>
  `<var>${name}</var>${index === '' ? '' : `<sub>${index}</sub>`}${power === '' ? '' : `<sup>${power}</sup>`}`;
